"""The instructor's desk in Debian's chromium: how it reads, how it is worked by keyboard, and what attacks come to."""

import hashlib
import http.client
import json
import re
import socket
import ssl
import threading
import time
from urllib.parse import urlsplit

import pytest
from axe_playwright_python.sync_playwright import Axe

from assistant.link.messages import Mark, Start
from assistant.record.file import RecordFile
from tests.desk.lab import PASSPHRASE, ready, stations
from tests.desk.pages import CONTRASTS, chromium
from tests.report import attempts
from tests.report.hostile import WORDS
from tests.report.test_browser import ALL_RULES

pytestmark = pytest.mark.slow
LIMIT_S = 30
CHECK_OFF = ("primary-line", "--mode", "check-off", "--slip", "tenfold", "--seed", "2", "--typed")
LEAST_CONTRAST = 7
"""WCAG 2.2, 1.4.6 (AAA) for all text."""
LEAST_TARGET = 44
"""CSS pixels of everything that is pressed: WCAG 2.2, 2.5.5 (AAA)."""
LEAST_LETTER = 18
TO_MARK = 6
"""Entries after which the hand rub is done and nobody has seen it."""


ERRORS = []
"""What went wrong on pages, and dialogs that nobody asked for."""


@pytest.fixture(autouse=True)
def no_errors():
    """No page's script may fail, and nothing that was typed may run."""
    yield
    found = [str(error) for error in ERRORS]
    ERRORS.clear()
    assert found == []


@pytest.fixture(scope="module")
def browser():
    with chromium() as started:
        yield started


@pytest.fixture
def lab(tmp_path):
    with stations(tmp_path) as one:
        yield one


@pytest.fixture(scope="module")
def full(tmp_path_factory):
    """A desk with a station in every condition; nothing is changed there."""
    with stations(tmp_path_factory.mktemp("full"), lab=("127.0.0.1", 0)) as one:
        one.filled()
        yield one


def opened(browser, address, width=1280, height=900, **media):
    page = browser.new_page(viewport={"width": width, "height": height})
    page.on("pageerror", lambda error: ERRORS.append(error))
    page.on("dialog", lambda dialog: ERRORS.append(dialog.message))
    if media:
        page.emulate_media(**media)
    page.goto(address)
    ready(page)
    return page


# How it reads.


@pytest.mark.parametrize(
    ("width", "media", "names"),
    [
        (1280, {"color_scheme": "light"}, ("board", "attempt", "sign")),
        (375, {"color_scheme": "dark"}, ("attempt", "start", "records")),
        (1920, {"color_scheme": "light", "contrast": "more"}, ("board", "stations")),
    ],
)
def test_axe_core_finds_nothing_and_everything_can_be_read_and_pressed(browser, full, width, media, names):
    page = opened(browser, full.address, width, **media)
    for name in names:
        page.goto(full.address + full.pages[name])
        ready(page)
        page.evaluate("document.querySelectorAll('main details').forEach((one) => { one.open = true; })")
        found = Axe().run(page, options=ALL_RULES).response["violations"]
        assert [(one["id"], [node["html"][:200] for node in one["nodes"]][:3]) for one in found] == [], name
        assert min(page.evaluate(CONTRASTS)) >= LEAST_CONTRAST, name
        assert page.evaluate(SMALL, [LEAST_LETTER, LEAST_TARGET]) == [], name
        assert page.evaluate("document.documentElement.scrollWidth") <= width, name
    page.close()


SMALL = """([letter, target]) => [...document.querySelectorAll("body *")].filter((one) => {
    const box = one.getBoundingClientRect();
    if (box.width < 2 || one.closest("svg, .unseen, .skip, noscript, dialog:not([open])")) { return false; }
    const own = [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim());
    if (own && parseFloat(getComputedStyle(one).fontSize) < letter) { return true; }
    const boxes = "input:not([type=radio], [type=checkbox])";
    const pressed = one.matches(`button, select, summary, textarea, nav a, .button, ${boxes}`);
    return pressed && (box.height < target - .5 || box.width < target - .5);
}).map((one) => one.outerHTML.slice(0, 160))"""
"""What is written in smaller letters or has a smaller target; links within sentences are excepted (WCAG 2.5.5)."""


def test_nothing_is_cut_at_four_hundred_per_cent(browser, full):
    """320 by 256 is 1280 by 1024 at 400 % (WCAG 2.2, 1.4.10)."""
    page = opened(browser, full.address, 320, 256)
    for name in full.pages:
        page.goto(full.address + full.pages[name])
        ready(page)
        assert page.evaluate("document.documentElement.scrollWidth") <= 320, name
    page.close()


def test_shapes_stay_with_forced_colours(browser, full):
    page = opened(browser, full.address, forced_colors="active")
    shape = page.locator(".shape .full").first
    assert shape.evaluate("one => getComputedStyle(one).fill") != page.evaluate(
        "getComputedStyle(document.documentElement).backgroundColor"
    )
    page.close()


def test_who_needs_the_instructor_comes_first(browser, full):
    page = opened(browser, full.address)
    words = page.locator("#rows > li .word, #rows > li .quiet").evaluate_all(
        "all => all.map((one) => one.matches('.word') ? one.innerText.trim() : '')"
    )
    assert words[:4] == ["Unsafe", "Trouble", "Calls you", "Hold"]
    assert words[-1] == "Free"
    assert page.title().startswith("(")
    page.close()


# By keyboard.


def pressed(page, lab, station, *keys, count=1):
    """Press keys; return the order that reached the station."""
    before = len(lab.orders(station))
    for key in keys:
        page.keyboard.press(key)
    end = time.monotonic() + LIMIT_S
    while len(lab.orders(station)) < before + count and time.monotonic() < end:
        page.wait_for_timeout(20)
    return lab.orders(station)[-1]


def test_marks_by_keyboard_alone(browser, lab):
    attempt = lab.begins("Station 1", *CHECK_OFF, upto=TO_MARK)
    page = opened(browser, lab.address)
    page.keyboard.press("j")
    page.wait_for_timeout(800)
    seen = pressed(page, lab, "Station 1", "s")
    assert (seen.mark, seen.step, seen.attempt) == ("seen", "p-hand-rub", attempt)
    page.wait_for_function("() => document.getElementById('rows')?.innerText.includes('1 sent')")
    lab.answers("Station 1", seen)
    lab.reports(attempt, kind="marked", mark="seen", step="p-hand-rub", order=seen.id, verdict="seen")
    page.wait_for_function("() => document.querySelector('.target')?.textContent.startsWith('No step')")
    page.keyboard.press("s")
    page.wait_for_function("() => document.getElementById('lost')?.textContent.startsWith('No step')")
    assert lab.orders("Station 1") == []
    page.keyboard.press("o")
    page.keyboard.type("Seen on the label.")
    page.keyboard.press("Tab")
    overruled = pressed(page, lab, "Station 1", "Enter")
    assert (overruled.mark, overruled.step, overruled.words) == ("overrule", "p-fluid", "Seen on the label.")
    page.keyboard.press("u")
    page.keyboard.press("Escape")
    assert pressed(page, lab, "Station 1", "c").mark == "cue"
    page.keyboard.press("Enter")
    page.wait_for_selector("#log li")
    page.keyboard.press("t")
    page.keyboard.type("c" * 20)
    page.keyboard.press("Tab")
    assert pressed(page, lab, "Station 1", "Enter").words == "c" * 20
    page.locator("#keys").click()
    page.keyboard.press("c")
    assert [order.mark for order in lab.orders("Station 1")] == ["overrule", "cue", "note"]
    page.close()


def test_one_attempt_is_marked_undone_and_directed(browser, lab):
    attempt = lab.begins("Station 1", *CHECK_OFF, upto=TO_MARK)
    page = opened(browser, f"{lab.address}attempt/{attempt}", 375, 812)
    page.wait_for_timeout(800)
    page.locator("#see-p-hand-rub [data-mark=seen]").click()
    page.wait_for_function("() => document.getElementById('state-p-hand-rub')?.innerText.includes('not yet on record')")
    (order,) = lab.orders("Station 1")
    lab.answers("Station 1", order)
    lab.reports(attempt, kind="marked", mark="seen", step="p-hand-rub", order=order.id, verdict="seen")
    page.locator("#state-p-hand-rub [data-undo]").click()
    page.wait_for_function("() => document.getElementById('marks')?.innerText.includes('not yet on record')")
    (undo,) = lab.orders("Station 1")
    assert (undo.mark, undo.undoes) == ("undo", order.id)
    lab.answers("Station 1", undo, "The attempt is over.")
    page.wait_for_function("() => document.getElementById('marks')?.innerText.includes('The attempt is over.')")
    page.locator("#see-p-prime [data-mark=seen]").click()
    page.wait_for_function("() => document.getElementById('lost')?.textContent.includes('has not reported this step')")
    page.get_by_role("button", name="Let something happen").click()
    page.get_by_label("Something else, in your words").check()
    page.get_by_role("button", name="Send").click()
    assert page.locator("#ask-problem").inner_text() == "Some words are needed here."
    page.keyboard.type("The bag is empty.")
    page.get_by_role("button", name="Send").click()
    page.get_by_role("button", name="Pause").click()
    page.wait_for_timeout(200)
    happen, pause = lab.orders("Station 1")
    assert (happen.kind, happen.what, happen.words) == ("happen", "other", "The bag is empty.")
    assert (pause.kind, pause.what) == ("direct", "pause")
    page.close()


def test_rows_move_around_the_focus(browser, lab):
    """The row that is worked with stays focused, chosen and where it is seen, whatever happens elsewhere."""
    for number in range(1, 8):
        lab.begins(f"Station {number}", *CHECK_OFF, upto=TO_MARK, learner=f"A{number}")
    page = opened(browser, lab.address, 1280, 500)
    for _ in range(4):
        page.keyboard.press("j")
    top = "document.activeElement.getBoundingClientRect().top"
    before = page.evaluate(top)
    attempt = lab.hub.stations["Station 7"].attempt
    lab.reports(
        attempt, kind="typed", words="it leaks", trouble={"kind": "a leak", "words": "it leaks"}, verdict="trouble"
    )
    page.wait_for_function("() => document.querySelector('#rows > li')?.innerText.includes('Station 7')")
    assert page.evaluate("document.activeElement.closest('li').fact.name") == "Station 4"
    assert abs(page.evaluate(top) - before) <= 1
    assert "Station 7" in page.locator("#said").inner_text()
    page.close()


def test_a_button_whose_step_has_just_changed_marks_nothing(browser, lab):
    attempt = lab.begins("Station 1", *CHECK_OFF, upto=TO_MARK - 1)
    page = opened(browser, lab.address)
    page.keyboard.press("j")
    page.wait_for_timeout(800)
    lab.reports(attempt, kind="time is up", step="p-hand-rub", state="waiting", verdict="waited")
    page.wait_for_function("() => document.querySelector('.target')?.textContent.includes('hand rub')")
    page.keyboard.press("s")
    page.wait_for_function("() => document.getElementById('lost')?.textContent.includes('just changed')")
    assert lab.orders("Station 1") == []
    page.close()


def test_a_phone_marks_over_tls_once_it_is_paired(browser, tmp_path):
    """The same pages at the bench: by the code that the desk shows, and by nothing else."""
    with stations(tmp_path, lab=("127.0.0.1", 0)) as lab:
        attempt = lab.begins("Station 1", *CHECK_OFF, upto=TO_MARK)
        desk = opened(browser, f"{lab.address}stations")
        desk.get_by_role("button", name="A code for a phone or tablet").click()
        desk.wait_for_function("() => document.getElementById('code')?.textContent")
        phone = browser.new_page(viewport={"width": 375, "height": 812}, ignore_https_errors=True)
        phone.on("pageerror", lambda error: ERRORS.append(error))
        phone.goto(f"https://127.0.0.1:{lab.doors.lab_port}/")
        phone.get_by_label("Code").fill(desk.locator("#code").inner_text())
        phone.get_by_role("button", name="Pair").click()
        phone.wait_for_selector("#rows > li .cells")
        phone.get_by_role("link", name="Station 1 A17").click()
        phone.locator("#see > li[data-state=due]").get_by_role("button", name="Seen", exact=True).click()
        phone.wait_for_function("() => document.getElementById('marks')?.innerText.includes('not yet on record')")
        (order,) = lab.orders("Station 1")
        assert (order.mark, order.step, order.attempt) == ("seen", "p-hand-rub", attempt)
        told = desk.locator(".fingerprint").inner_text().replace(" ", "").replace("\n", "").lower()
        # As the phone's browser shows it: the digest of the certificate that it was sent (RFC 5280's DER).
        assert told == hashlib.sha256(certificate_at(lab.doors.lab_port)).hexdigest()
        the_phone_only_marks_until_the_desk_allows_more(desk, phone, lab, attempt)
        phone.close()
        desk.goto(f"{lab.address}stations")
        desk.get_by_role("button", name="Unpair").click()
        desk.wait_for_function("() => document.getElementById('notice')?.textContent.includes('not paired any more')")
        desk.close()


def certificate_at(port):
    trusting = ssl.create_default_context()
    trusting.check_hostname, trusting.verify_mode = False, ssl.CERT_NONE
    with trusting.wrap_socket(socket.create_connection(("127.0.0.1", port))) as one:
        return one.getpeercert(binary_form=True)


SENT = """async ([path, fields]) => {
    const sent = { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(fields) };
    return (await fetch(`/desk/${path}`, sent)).status;
}"""


def the_phone_only_marks_until_the_desk_allows_more(desk, phone, lab, attempt):
    """Off by default; pairing and allowing are never the phone's."""

    def sent(path, **fields):
        return phone.evaluate(SENT, [path, fields])

    of_attempt = f"attempt/{attempt}"
    start = {"station": "Station 1", "checklist": "primary-line", "learner": "A17", "mode": "practice"}
    more = [
        ("start", start),
        ("codes", {"codes": "A1"}),
        ("take-up", {}),
        ("day", {}),
        ("records/x.jsonl/sign", {}),
        (f"{of_attempt}/direct", {"id": "b" * 32, "what": "say", "words": "seen"}),
        (f"{of_attempt}/happen", {"id": "c" * 32, "what": "pain"}),
    ]
    desks = [("pair", {"kind": "browser"}), ("unpair", {}), ("allow", {"name": "x", "signs": "yes"})]
    before = lab.orders("Station 1")
    assert {sent(path, **fields) for path, fields in more + desks} == {403}
    assert lab.orders("Station 1") == before
    assert sent(f"{of_attempt}/direct", id="d" * 32, what="pause") == 204
    marks = ("seen", "not seen", "cue", "unsafe", "not applicable", "overrule", "note", "undo")
    assert {sent(f"{of_attempt}/mark", id=str(number) * 32, mark=mark) for number, mark in enumerate(marks)} == {204}
    assert phone.get_by_role("link", name="Start").or_(phone.get_by_role("button", name="Say")).count() == 0
    desk.goto(f"{lab.address}stations")
    desk.get_by_role("button", name="Let it sign and start").click()
    desk.wait_for_function("() => document.getElementById('notice')?.textContent.includes('sign and start')")
    assert 403 not in {sent(path, **fields) for path, fields in more}
    assert {sent(path, **fields) for path, fields in desks} == {403}
    phone.reload()
    assert phone.get_by_role("link", name="Start").count() == 1


# Starting, and signing.


def test_six_clicks_from_the_first_page_to_the_order_to_begin(browser, lab):
    lab.hello("Station 1", sound=True)
    lab.class_list.keep("A17\nA18\n")
    page = opened(browser, lab.address)
    clicks = 0

    def click(where):
        nonlocal clicks
        clicks += 1
        where.click()

    click(page.get_by_role("link", name="Start an attempt at Station 1"))
    page.wait_for_url("**/start?**")
    ready(page)
    assert page.get_by_label("Learner's code").input_value() == "A17"
    click(page.get_by_label("Check-off"))
    click(page.get_by_label("Drawn for this learner"))
    page.wait_for_selector("#drawing:not([hidden])")
    click(page.get_by_role("button", name="Start", exact=True))
    page.wait_for_selector("#rows > li")
    (start,) = lab.orders("Station 1")
    assert isinstance(start, Start)
    assert (start.checklist, start.learner, start.mode, start.typed) == ("primary-line", "A17", "check-off", False)
    assert "[primary]" in start.order_text
    assert clicks <= 6
    page.close()


def test_what_cannot_be_drawn_is_told_before_the_start(browser, lab):
    lab.hello("Station 1", sound=True)
    page = opened(browser, f"{lab.address}start")
    page.get_by_label("Drawn for this learner").check()
    page.get_by_label("With a fault").select_option("incompatible-pair")
    page.get_by_label("Checklist", exact=True).select_option("hourly-round")
    page.wait_for_function("() => document.getElementById('problem')?.textContent")
    page.get_by_label("Learner's code").fill("Mrs X")
    page.get_by_role("button", name="Start", exact=True).click()
    assert lab.orders("Station 1") == []
    page.close()


def test_nothing_waits_for_a_station_that_is_away(lab):
    """An attempt that begins when the station is back would begin when nobody expects it."""
    lab.hello("Station 1", sound=True)
    lab.passes(60)
    status, body = posted(lab, "start", station="Station 1", checklist="primary-line", learner="A17", mode="practice")
    assert (status, lab.orders("Station 1")) == (409, [])
    assert b"not connected" in body
    lab.hello("Station 1", sound=True)
    status, _ = posted(lab, "start", station="Station 1", checklist="primary-line", learner="A17", mode="practice")
    assert (status, len(lab.orders("Station 1"))) == (200, 1)


def test_the_sheets_are_for_one_of_them_each(lab):
    """The learner's PDF is not the instructor's; what stands in each is the matter of the tests of the sheets."""
    drawn = "checklist=primary-line&drawn=yes&level=1&seed=7&fault=expired-bag&day=2026-11-28"
    sheets = [asked(lab, f"sheets/{kind}.pdf?{drawn}") for kind in ("instructor", "labels", "learners")]
    assert all(status == 200 and body.startswith(b"%PDF") for status, body in sheets)
    assert len({body for _, body in sheets}) == 3
    assert asked(lab, f"sheets/all.pdf?{drawn}")[0] == 404


def test_a_sign_off_takes_reason_and_passphrase(browser, lab):
    attempts.attempt(lab.folder / "records", *CHECK_OFF, name="A17.jsonl")
    lab.new_key("lindqvist", PASSPHRASE)
    page = opened(browser, f"{lab.address}records/A17.jsonl/sign")
    assert "A simulated learner did this." in page.locator("main").inner_text()
    page.get_by_label("Not passed").check()
    page.get_by_label("Passphrase of the key").fill("wrong")
    page.get_by_role("button", name="Sign").click()
    page.wait_for_function("() => document.querySelector('.problem')?.textContent.includes('needs a reason')")
    assert page.get_by_label("Passphrase of the key").input_value() == ""
    page.get_by_label("Reason").fill("The rate was ten times too high.")
    page.get_by_label("Passphrase of the key").fill("wrong")
    page.get_by_role("button", name="Sign").click()
    page.wait_for_function("() => document.querySelector('.problem')?.textContent.includes('passphrase')")
    page.get_by_label("Passphrase of the key").fill(PASSPHRASE)
    page.get_by_role("button", name="Sign").click()
    page.wait_for_function("() => document.getElementById('notice')?.textContent.includes('is signed: not-passed')")
    page.goto(f"{lab.address}records")
    assert "not-passed" in page.locator("tbody tr").inner_text()
    page.goto(f"{lab.address}records/A17.jsonl/report")
    assert "The rate was ten times too high." in page.locator("body").inner_text()
    assert page.evaluate("getComputedStyle(document.querySelector('main')).maxWidth") != "none"
    page.close()


def test_a_class_list_holds_codes_and_no_names(lab):
    assert posted(lab, "codes", codes="A17,Group 1\nA18\n\nA17\n")[0] == 200
    assert lab.class_list.codes() == ["A17", "A18"]
    status, body = posted(lab, "codes", codes="Marit Quillfeather\n")
    assert (status, lab.class_list.codes()) == (409, ["A17", "A18"])
    assert b"no code" in body


# Attacks.


def asked(lab, path, method="GET", body=None, **headers):
    where = urlsplit(lab.address)
    connection = http.client.HTTPConnection(where.hostname, where.port, timeout=LIMIT_S)
    names = {name.replace("_", "-"): value for name, value in headers.items()}
    try:
        connection.request(method, where.path + path, body, names)
        answer = connection.getresponse()
        return answer.status, answer.read()
    finally:
        connection.close()


def posted(lab, path, origin=None, **fields):
    where = urlsplit(lab.address)
    origin = f"http://{where.netloc}" if origin is None else origin
    return asked(lab, path, "POST", json.dumps(fields), Origin=origin, Content_Type="application/json")


def test_hostile_texts_are_text(browser, lab):
    attempt = lab.begins(WORDS["script"][:64], *CHECK_OFF, upto=TO_MARK, learner=WORDS["script"])
    for words in WORDS.values():
        lab.reports(attempt, kind="typed", words=words, verdict="not understood", step="p-fluid")
        lab.reports(attempt, kind="marked", mark="note", words=words, order="1" * 32, verdict="noted")
    lab.reports(attempt, kind="marked", mark="unsafe", words=WORDS["attribute"], order="2" * 32, verdict="held")
    page = opened(browser, lab.address)
    assert WORDS["script"] in page.locator("#rows").inner_text()
    page.goto(f"{lab.address}attempt/{attempt}")
    ready(page)
    page.wait_for_timeout(300)
    assert page.locator("main img, main script").count() == 0
    assert page.locator("main [style], main [onmouseover]").count() == 0
    assert WORDS["entity"] in page.locator("#marks").inner_text()
    for name in ("start", "stations", "records"):
        page.goto(lab.address + name)
    page.close()


def test_too_much_and_from_elsewhere_is_refused_plainly(lab):
    attempt = lab.begins("Station 1", *CHECK_OFF, upto=TO_MARK)
    mark = {"id": "a" * 32, "mark": "note", "words": "x" * 70_000}
    assert posted(lab, f"attempt/{attempt}/mark", **mark) == (413, b"That is too long.\n")
    own = {"Origin": f"http://{urlsplit(lab.address).netloc}", "Content_Type": "application/json"}
    doors = "start", "codes", "take-up", "pair", "unpair", "day", "records/x.jsonl/sign"
    for path in (f"attempt/{attempt}/mark", *doors):
        # The second one comes in chunks, of no told length.
        for body in (b"x" * 10_000_000, iter([b"x" * 1_000_000] * 10)):
            refused = asked(lab, path, "POST", body, **own)
            assert refused in ((413, b"That is too long.\n"), (404, b"There is no such record.\n"))
    status, body = posted(lab, f"attempt/{attempt}/mark", **{**mark, "words": "x" * 1_001})
    assert status == 400
    assert b"Words" in body
    for origin in ("http://example.org", "null", ""):
        status, _ = posted(lab, f"attempt/{attempt}/mark", origin=origin, id="a" * 32, mark="cue")
        assert status == 403
    assert asked(lab, f"attempt/{attempt}/mark", "POST", "{}", Content_Type="application/json")[0] == 403
    assert asked(lab, "", Host="desk.example.org")[0] == 421
    assert asked(lab, "", Origin="http://example.org")[0] == 403
    assert posted(lab, f"attempt/{'0' * 64}/mark", id="a" * 32, mark="cue")[0] == 404
    assert posted(lab, f"attempt/{attempt}/mark", id="a" * 32, mark="passed")[0] == 400
    assert posted(lab, f"attempt/{attempt}/start", id="a" * 32)[0] == 404
    for name in ("../keys/x", "%2e%2e%2fclass-list.txt", "nothing.jsonl"):
        assert asked(lab, f"records/{name}/sign")[0] == 404
    assert lab.orders("Station 1") == []


def test_an_order_that_is_sent_twice_is_given_once(lab):
    attempt = lab.begins("Station 1", *CHECK_OFF, upto=TO_MARK)
    for _ in range(2):
        assert posted(lab, f"attempt/{attempt}/mark", id="a" * 32, mark="cue")[0] == 204
    assert [type(order) for order in lab.orders("Station 1")] == [Mark]


def test_a_page_that_reads_nothing_delays_nobody(browser, lab):
    attempt = lab.begins("Station 1", *CHECK_OFF, upto=TO_MARK)
    where = urlsplit(lab.address)
    slow = socket.create_connection((where.hostname, where.port))
    slow.sendall(f"GET {where.path}attempt/{attempt}/events HTTP/1.1\r\nHost: {where.netloc}\r\n\r\n".encode())
    page = opened(browser, f"{lab.address}attempt/{attempt}")
    for count in range(300):
        lab.reports(attempt, kind="typed", words=f"{count} " + "x" * 900, verdict="not understood", step="p-fluid")
    page.wait_for_function("() => document.querySelector('#log li')?.innerText.includes('299 ')")
    assert page.locator("#log li").count() == TO_MARK - 1 + 300
    slow.close()
    page.close()


def test_a_page_says_that_it_has_lost_the_desk(browser, lab):
    lab.begins("Station 1", *CHECK_OFF, upto=TO_MARK)
    page = opened(browser, lab.address)
    threading.Thread(target=lab.close).start()
    page.wait_for_function("() => document.getElementById('lost')?.textContent.startsWith('No connection to the desk')")
    page.close()


def test_no_page_brings_anything_from_elsewhere(lab):
    lab.begins("Station 1", *CHECK_OFF, upto=TO_MARK)
    for path in ("", "start", "records", "stations", f"attempt/{lab.hub.stations['Station 1'].attempt}"):
        status, body = asked(lab, path)
        assert status == 200
        assert re.findall(rb"(?:src|href|action)=\"(?:https?:)?//", body) == []
        assert b"<style" not in body
        assert re.findall(rb"<script(?! src=)", body) == []


def test_a_record_in_use_is_not_signed(lab):
    """A record that its station still writes stays as it is."""
    path = lab.folder / "records" / "B01.jsonl"
    lab.new_key("lindqvist", PASSPHRASE)
    with RecordFile.create(
        path, {"kind": "opened", "at": attempts.at(0), "learner": "B01", "mode": "practice"}
    ) as record:
        record.append({"kind": "typed", "at": attempts.at(5), "words": "yes"})
        before = path.read_bytes()
        fields = {
            "decision": "not-passed",
            "reason": "Left.",
            "close": "yes",
            "passphrase": PASSPHRASE,
        }
        status, body = posted(lab, "records/B01.jsonl/sign", **fields)
        assert status == 409, body
        assert path.read_bytes() == before
