"""The display in Debian's chromium, and the server under attack; an attempt goes on whatever becomes of either."""

import http.client
import json
import os
import socket
import subprocess
import sys
import threading
import time
from urllib.parse import urlsplit

import pytest
from axe_playwright_python.sync_playwright import Axe

from assistant.desk import server as desk_server
from assistant.desk.shown import Shown
from assistant.guide.events import Typed
from assistant.record.verify import verify
from tests.attempt.program import here
from tests.desk.pages import ASKED, AT, CONTRASTS, STATES, chromium, served, settled
from tests.report.test_browser import ALL_RULES

pytestmark = pytest.mark.slow
LIMIT_S = 30
LEAST_CONTRAST = 12
"""Darker to lighter, of all text on the display (WCAG 2.2 asks for 7 at level AAA; 12 is the project's own)."""


@pytest.fixture(scope="module")
def browser():
    with chromium() as started:
        yield started


@pytest.fixture
def display():
    with served() as (shown, server):
        yield shown, server


def opened(browser, server, width=1280, height=800, **media):
    page = browser.new_page(viewport={"width": width, "height": height})
    page.on("pageerror", lambda error: pytest.fail(str(error)))
    page.on("dialog", lambda dialog: pytest.fail(dialog.message))
    page.emulate_media(**media)
    page.goto(server.address)
    return page


def put(display, page, name):
    display.put(STATES[name])
    settled(page, STATES[name])


@pytest.mark.parametrize(
    ("width", "height", "media"),
    [
        (1280, 800, {"color_scheme": "light"}),
        (1920, 1080, {"color_scheme": "dark"}),
        (375, 812, {"color_scheme": "light", "contrast": "more"}),
    ],
)
def test_axe_core_finds_nothing_and_contrast_is_high(browser, display, width, height, media):
    shown, server = display
    page = opened(browser, server, width, height, **media)
    for name in ("hold", "result" if width == 375 else "number"):
        put(shown, page, name)
        found = Axe().run(page, options=ALL_RULES).response["violations"]
        assert [(one["id"], [node["html"][:200] for node in one["nodes"]][:3]) for one in found] == [], name
        assert min(page.evaluate(CONTRASTS)) >= LEAST_CONTRAST, name
    page.close()


@pytest.mark.parametrize(("width", "height"), [(1920, 1080), (1024, 768), (375, 812), (320, 256)])
def test_nothing_is_cut_and_nothing_scrolls_sideways(browser, display, width, height):
    """320 by 256 is 1280 by 1024 at 400 % (WCAG 2.2, 1.4.10); on a display's own sizes nothing scrolls at all."""
    shown, server = display
    page = opened(browser, server, width, height)
    for name in ("step", "number-long", "hold", "order", "wait", "long"):
        put(shown, page, name)
        assert page.evaluate("document.documentElement.scrollWidth") <= width, name
        cut = page.evaluate(
            """() => [...document.querySelectorAll("h1, h2, p:not(.unseen), button")].filter((one) => {
                const box = one.getBoundingClientRect();
                const whole = Math.max(innerHeight, document.documentElement.scrollHeight);
                return box.height && (box.left < -1 || box.right > innerWidth + 1 || box.bottom > whole + 1); })
                .map((one) => one.textContent)"""
        )
        assert cut == [], name
        if width >= 1024 and name != "long":
            assert page.evaluate("document.documentElement.scrollHeight") <= height, name
            least = page.evaluate(
                """() => Math.min(...[...document.querySelectorAll("h1, h2, p:not(.unseen), b, button, input")]
                    .map((one) => parseFloat(getComputedStyle(one).fontSize)))"""
            )
            assert least >= 0.049 * min(height, 0.66 * width), name
    page.close()


def test_forced_colours_leave_word_shape_and_frame(browser, display):
    shown, server = display
    page = opened(browser, server, forced_colors="active")
    put(shown, page, "hold")
    assert page.locator("main h2").inner_text() == "Hold"
    assert page.evaluate("parseFloat(getComputedStyle(document.querySelector('main')).borderTopWidth)") >= 3
    assert page.locator("#turn svg .open").evaluate("one => getComputedStyle(one).stroke") != "none"
    page.close()


def test_the_ring_shows_that_sound_comes_in_and_stays_still_where_motion_is_not_wanted(browser, display):
    shown, server = display
    pages = {motion: opened(browser, server, reduced_motion=motion) for motion in ("no-preference", "reduce")}
    for page in pages.values():
        put(shown, page, "listening")
    shown.level(4)
    pages["no-preference"].wait_for_function("() => document.getElementById('level')?.getAttribute('r') === '5'")
    assert pages["reduce"].locator("#level").get_attribute("r") == "0"
    put(shown, pages["no-preference"], "speaking")
    shown.listening()
    put(shown, pages["no-preference"], "listening")
    assert pages["no-preference"].locator("#level").get_attribute("r") == "0"
    for page in pages.values():
        page.close()


def test_a_screen_reader_is_left_alone_while_the_voice_speaks(browser, display):
    shown, server = display
    page = opened(browser, server)
    put(shown, page, "hold")
    assert "does not match" in page.locator("#live").inner_text()
    put(shown, page, "speaking")
    assert page.locator("#live").inner_text() == ""
    page.close()


def test_hostile_words_are_shown_as_typed(browser, display):
    shown, server = display
    page = opened(browser, server)
    put(shown, page, "unclear")
    assert page.locator(".said q").inner_text() == "<b>?"
    assert page.locator(".said b").count() == 0
    page.close()


# The server.


def asked_of(server, method="GET", path="", body=None, **headers):
    """Status and text of one request; headers in place of the ones that a browser sends."""
    where = urlsplit(server.address)
    connection = http.client.HTTPConnection(where.hostname, where.port, timeout=LIMIT_S)
    sent = {"Host": where.netloc, **{name.replace("_", "-"): value for name, value in headers.items()}}
    try:
        connection.request(method, where.path + path, body, sent)
        answer = connection.getresponse()
        return answer.status, answer.read().decode(), dict(answer.getheaders())
    finally:
        connection.close()


def test_attacks_are_refused_in_plain_words(display):
    """Another host, another site, a wrong token, a large body, odd bodies: refused; no word reaches the attempt."""
    shown, server = display
    given = []
    shown.takes(given.append)
    own = {"Origin": server.address.rsplit("/", 2)[0], "Content_Type": "application/json"}
    words = json.dumps({"words": "yes", "events": 0})
    assert asked_of(server, Host="evil.example")[0] == 421
    assert asked_of(server, Host=f"localhost:{urlsplit(server.address).port}")[0] == 421
    assert asked_of(server, Origin="http://evil.example")[0] == 403
    assert asked_of(server, Sec_Fetch_Site="cross-site")[0] == 403
    assert asked_of(server, "POST", "words", words, **{**own, "Origin": "http://evil.example"})[0] == 403
    assert asked_of(server, "POST", "words", words, Content_Type="application/json")[0] == 403
    assert asked_of(server, "POST", "words", words, **{**own, "Content_Type": "text/plain"})[0] == 415
    assert asked_of(server, "POST", "words", "[" * 5_000, **own)[0] == 400
    assert asked_of(server, "POST", "words", json.dumps({"words": "yes", "events": 0, "more": 1}), **own)[0] == 400
    assert asked_of(server, path="../other/")[0] == 404
    assert asked_of(server, path="display.py")[0] == 404
    for long in (b"x" * 10_000_000, iter([b"x" * 1_000_000] * 10)):  # the second one comes in chunks, of no told length
        status, text, _ = asked_of(server, "POST", "words", long, **own)
        assert (status, text) == (413, "That is too long for one line.\n")
    assert given == []
    status, _, headers = asked_of(server)
    assert status == 200
    assert "default-src 'none'" in headers["content-security-policy"]
    assert asked_of(server, "POST", "words", words, **own)[0] == 204
    assert given == ["yes"]


def test_a_key_pressed_twice_answers_one_question(display):
    """A second yes is refused until the first is on record, and so is an answer to a question that has gone."""
    shown, server = display
    given = []
    shown.takes(given.append)
    own = {"Origin": server.address.rsplit("/", 2)[0], "Content_Type": "application/json"}

    def sent(words, events):
        return asked_of(server, "POST", "words", json.dumps({"words": words, "events": events}), **own)[0]

    assert [sent("yes", 0), sent("yes", 0), sent("", 0)] == [204, 409, 204]
    shown.taken(Typed(AT, "yes"))
    assert [sent("yes", 0), sent("a\nb", 1)] == [409, 204]
    assert given == ["yes", "", "a"]


def test_many_connections_and_a_slow_reader_hold_nothing_up(display):
    """More than there may be are refused; a stream that nobody reads delays neither the station nor another page."""
    shown, server = display
    where = urlsplit(server.address)
    slow = socket.create_connection((where.hostname, where.port))
    slow.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 1024)
    slow.sendall(f"GET {where.path}events HTTP/1.1\r\nHost: {where.netloc}\r\n\r\n".encode())
    began = time.monotonic()
    for number in range(2_000):
        shown.put(ASKED.counts(number % 60 + 1))
    assert time.monotonic() - began < 2
    assert asked_of(server)[0] == 200
    many = [socket.create_connection((where.hostname, where.port)) for _ in range(desk_server.MOST_CONNECTIONS)]
    many[-1].settimeout(LIMIT_S)
    assert b"Too many connections" in many[-1].recv(1_000)
    for one in [slow, *many]:
        one.close()
    until = time.monotonic() + LIMIT_S
    while asked_of(server)[0] != 200:
        assert time.monotonic() < until
    server.close()
    shown.put(Shown())  # the server has ended: what is shown changes all the same


# A whole attempt.


def started(folder):
    """The real program with a display and nothing on its standard input; its lines, read as they come."""
    options = ["--typed", "--display", "--json", "--short-waits", "--records", str(folder)]
    program = subprocess.Popen(
        [sys.executable, "-m", "assistant", "run", "saline-lock", *options],
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        encoding="utf-8",
    )
    lines = []
    reader = threading.Thread(target=lambda: lines.extend(map(json.loads, program.stdout)), daemon=True)
    reader.start()
    address = next(line.split()[1] for line in program.stderr if line.startswith("Display: "))
    return program, reader, lines, address


def asks(line):
    """Whether a line of the program puts something into the middle of the display that is to be answered."""
    return line.get("tone") in ("step", "read-back")


def test_an_attempt_by_keyboard_alone(browser, capsys, tmp_path):
    """From the first step to the short head, typed on the page; the page shows what the terminal shows.

    Half way its browser is lost and another one opened: the attempt has not noticed.
    """
    lived = here(capsys, "demo", "saline-lock", "--json", "--records", str(tmp_path / "demo")).lines
    program, reader, lines, address = started(tmp_path / "run")
    page = browser.new_page()
    page.goto(address)
    asked = typed = 0
    for line in lived:
        asked += asks(line)
        if "typed" not in line:
            continue
        until = time.monotonic() + LIMIT_S
        while sum(map(asks, list(lines))) < asked:
            assert time.monotonic() < until, lines[-3:]
            time.sleep(0.02)
        if typed == 9:
            page.close()
            page = browser.new_page()
            page.goto(address)
        last = [one for one in list(lines) if asks(one)][-1]
        said = last["say"].partition(": " if last["tone"] == "read-back" else ". ")[2 if last["tone"] == "step" else 0]
        page.wait_for_function("said => document.getElementById('what').textContent.includes(said)", arg=said)
        page.keyboard.type(line["typed"])
        page.keyboard.press("Enter")
        typed += 1
    page.get_by_text("Short head: ").wait_for()
    assert program.wait(LIMIT_S) == 0
    reader.join(LIMIT_S)
    program.stdout.close()
    program.stderr.close()
    head = lines[-1]["short_head"]
    assert head in page.locator("main").inner_text()
    assert page.locator("#turn").inner_text() == "The attempt is over"
    assert lines[-1]["outcome"] == "passed"
    assert [one["typed"] for one in lines if "typed" in one] == [one["typed"] for one in lived if "typed" in one]
    assert verify(lines[-1]["record"]).ok
    page.close()


def test_space_and_enter_hush_only_where_nothing_is_typed(browser, display):
    shown, server = display
    given = []
    shown.takes(given.append)
    page = opened(browser, server)
    put(shown, page, "speaking")
    for keys in ("Space", "Enter"):
        with page.expect_response("**/words"):
            page.keyboard.press(keys)
    page.keyboard.type("go on")
    with page.expect_response("**/words"):
        page.keyboard.press("Enter")
    assert given == ["", "", "go on"]
    shown.taken(Typed(AT, "go on"))
    page.locator(".said", has_text="go on").wait_for()
    page.keyboard.press("Tab")
    with page.expect_response("**/words"):
        page.keyboard.press("Space")
    assert given[-1] == "yes"
    page.close()


def test_words_typed_before_the_first_event_are_taken(browser, display):
    """The page itself says which question it shows: its live stream may be slow to come."""
    shown, server = display
    given = []
    shown.takes(given.append)
    shown.put(ASKED)
    page = browser.new_page()
    page.route("**/events", lambda route: None)
    page.goto(server.address)
    page.keyboard.type("eighty three")
    with page.expect_response("**/words") as answer:
        page.keyboard.press("Enter")
    assert (answer.value.status, given) == (204, ["eighty three"])
    page.close()


def test_the_course_can_be_looked_at_once_it_is_over(browser, display):
    """Opened by keyboard, all of the picture is on the page; axe-core finds nothing in it."""
    shown, server = display
    page = opened(browser, server, 1280, 800)
    put(shown, page, "result")
    course = page.get_by_text("The course of the infusion")
    assert not page.locator(".course svg").is_visible()
    course.press("Enter")
    assert page.locator(".course svg").is_visible()
    assert page.evaluate("document.documentElement.scrollWidth") <= 1280
    found = Axe().run(page, options=ALL_RULES).response["violations"]
    assert [(one["id"], [node["html"][:200] for node in one["nodes"]][:3]) for one in found] == []
    if folder := os.environ.get("CHECKOFF_PICTURES"):
        page.screenshot(path=f"{folder}/course.png", full_page=True)
    page.close()


def test_letters_grow_and_nothing_is_lost(browser, display):
    shown, server = display
    page = opened(browser, server)
    put(shown, page, "hold")
    before = page.locator("header h1").evaluate("one => parseFloat(getComputedStyle(one).fontSize)")
    page.locator("summary").press("Enter")
    for _ in range(3):
        page.locator("#larger").press("Enter")
    assert page.locator("header h1").evaluate("one => parseFloat(getComputedStyle(one).fontSize)") > 1.5 * before
    assert page.evaluate("document.documentElement.scrollWidth") <= 1280
    page.locator("#theme").press("Enter")
    assert page.locator("#theme").inner_text() == "Dark"
    assert page.evaluate("getComputedStyle(document.documentElement).backgroundColor") == "rgb(18, 22, 27)"
    page.close()
