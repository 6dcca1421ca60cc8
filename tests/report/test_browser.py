"""The pages in Debian's chromium: axe-core finds nothing, nothing runs, nothing is fetched, everything fits."""

import shutil

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import sync_playwright

from assistant.checklist.load import load
from assistant.cli.report import report_of
from assistant.orders.load import load_order
from assistant.report.form import form_of
from assistant.report.html import form_html, report_html
from assistant.report.paper import Paper
from assistant.spoken import ENGLISH
from tests.report import attempts
from tests.report.hostile import LONG, WORDS

pytestmark = pytest.mark.slow

TENFOLD = ("primary-line", "--mode", "check-off", "--slip", "tenfold", "--seed", "2")
ALL_RULES = {"resultTypes": ["violations"], "runOnly": {"type": "tag", "values": [
    "wcag2a", "wcag2aa", "wcag2aaa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice",
]}}  # fmt: skip
"""WCAG 2.2, level AAA where axe-core knows rules of it, and its best practices."""
WIDE, ZOOMED = 1280, 640
"""A window of 1,280 points, and the same at 200 % zoom: half as many CSS pixels (WCAG 2.2, 1.4.4 and 1.4.10)."""


@pytest.fixture(scope="module")
def browser():
    """The browser, started once."""
    program = shutil.which("chromium")
    assert program, "tests/run installs chromium"
    with sync_playwright() as playwright:
        # Root, as in a container, has no use for the sandbox.
        started = playwright.chromium.launch(executable_path=program, args=["--no-sandbox"])
        yield started
        started.close()


@pytest.fixture(scope="module")
def pages(tmp_path_factory):
    """Files by name: a whole report, shorter ones of several kinds, a whole form and a short one."""
    folder = tmp_path_factory.mktemp("pages")
    record = attempts.attempt(folder, *TENFOLD)
    torn = attempts.torn(attempts.copied(record, folder / "torn.jsonl"))
    hostile = attempts.written(folder / "hostile.jsonl", "\n".join([*WORDS.values(), LONG["one long word"][:20_000]]))
    whole = report_of(record, str(folder))
    form = form_of(load("primary-line"), ENGLISH.report, load_order("oh-101"))
    made = {
        "report": report_html(whole, ENGLISH.report, Paper()),
        "short": report_html(_short(whole), ENGLISH.report, Paper()),
        "large": report_html(_short(whole), ENGLISH.report, Paper(large_print=True)),
        "torn": report_html(_short(report_of(torn, str(folder))), ENGLISH.report, Paper()),
        "hostile": report_html(report_of(hostile, str(folder)), ENGLISH.report, Paper()),
        "form": form_html(form, ENGLISH.report, Paper()),
        "short form": form_html(form.model_copy(update={"parts": form.parts[2:3]}), ENGLISH.report, Paper()),
    }
    for name, page in made.items():
        (folder / f"{name}.html").write_text(page, encoding="utf-8")
    return folder


def _short(report):
    """The same with fewer rows of each kind, the slip among them: quicker to look at in several lights."""
    steps = [line for line in report.steps if line.needs_a_look or line.gate][:6]
    return report.model_copy(update={"steps": tuple(steps), "happenings": report.happenings[:5]})


def opened(browser, path, width=WIDE, **media):
    """A page with this file, and all that it asked the network for."""
    page = browser.new_page(viewport={"width": width, "height": 900})
    asked = []
    page.on("request", lambda request: asked.append(request.url))
    page.on("dialog", lambda dialog: pytest.fail(f"a dialog: {dialog.message}"))
    if media:
        page.emulate_media(**media)
    page.goto(path.as_uri())
    return page, asked


SEEN = [
    ("report", {}),
    ("short", {"color_scheme": "dark"}),
    ("short", {"media": "print"}),
    ("large", {}),
    ("torn", {}),
    ("hostile", {}),
    ("short form", {}),
    ("short form", {"color_scheme": "dark"}),
]


@pytest.mark.parametrize(("name", "media"), SEEN)
def test_axe_core_finds_nothing(browser, pages, name, media):
    """No violation of any rule, light, dark and as printed."""
    page, _ = opened(browser, pages / f"{name}.html", **media)
    found = Axe().run(page, options=ALL_RULES)
    page.close()
    assert [
        (violation["id"], [node["html"][:200] for node in violation["nodes"]][:3])
        for violation in found.response["violations"]
    ] == []


@pytest.mark.parametrize("name", ["report", "hostile", "form"])
def test_nothing_runs_and_nothing_is_fetched(browser, pages, name):
    """One file is all that is asked for; there is no script, no frame and no image from elsewhere in it."""
    page, asked = opened(browser, pages / f"{name}.html")
    assert asked == [(pages / f"{name}.html").as_uri()]
    assert page.locator("script, iframe, object, embed, img, link, base, form, [onerror], [onload]").count() == 0
    page.close()


@pytest.mark.parametrize("name", ["report", "large", "torn", "hostile", "form"])
def test_it_fits_at_two_hundred_percent(browser, pages, name):
    """Nothing is wider than the window at 200 % zoom; a wide picture scrolls by itself and can be reached by key."""
    page, _ = opened(browser, pages / f"{name}.html", width=ZOOMED)
    assert page.evaluate("document.documentElement.scrollWidth") <= ZOOMED
    wide = page.locator(".picture").evaluate_all(
        "all => all.filter(one => one.scrollWidth > one.clientWidth && one.tabIndex !== 0).length"
    )
    assert wide == 0
    page.close()


def test_forced_colours_leave_the_words(browser, pages):
    """With the reader's own colours the result still stands there in words, with a border around it."""
    page, _ = opened(browser, pages / "report.html", forced_colors="active")
    outcome = page.locator(".outcome")
    assert "Not passed" in outcome.inner_text()
    assert page.evaluate("matchMedia('(forced-colors: active)').matches")
    assert outcome.evaluate("one => parseFloat(getComputedStyle(one).borderTopWidth)") >= 1
    page.close()


def test_the_picture_is_named(browser, pages):
    """A screen reader hears the course in place of the picture."""
    page, _ = opened(browser, pages / "report.html")
    assert "mL in all" in page.get_by_role("img").last.aria_snapshot()
    strips = [one.aria_snapshot() for one in page.locator(".strip").get_by_role("img").all()]
    assert len(strips) == 7
    assert "Setting the pump: 4 of 5 done unaided; step 24 corrected by the learner." in strips[2]
    page.close()


def test_the_headline_leads_to_its_step(browser, pages):
    """It says what decided the attempt, and one step of the keyboard away is the row that tells all of it."""
    page, _ = opened(browser, pages / "report.html")
    page.get_by_role("link", name="Not passed: a wrong answer (tenfold) at step 24").press("Enter")
    assert page.locator("tr:target").inner_text().startswith("24")
    assert page.locator("tr:target").is_visible()
    page.close()


def test_a_wrong_number_has_both_answers(browser, pages):
    """The first one large beside what follows from the order, and what it was in the end."""
    page, _ = opened(browser, pages / "report.html")
    pair = page.locator(".pair").inner_text()
    assert "833 mL/h" in pair
    assert "first 833 mL/h, then 83.3 mL/h" in pair
    page.close()


def test_what_went_well_is_folded_and_printed(browser, pages):
    """On the screen it takes a line, on paper nothing is missing."""
    page, _ = opened(browser, pages / "report.html")
    folded = page.get_by_text("Take the set out of its package").or_(page.get_by_text("Put on clean gloves."))
    assert not any(one.is_visible() for one in folded.all())
    page.emulate_media(media="print")
    assert any(one.is_visible() for one in folded.all())
    page.close()


def test_practice_never_looks_like_a_pass(tmp_path_factory, browser):
    """Neither by its word nor by its colour."""
    folder = tmp_path_factory.mktemp("practice")
    report = report_of(attempts.attempt(folder, "saline-lock"), str(folder))
    path = folder / "practice.html"
    path.write_text(report_html(report, ENGLISH.report, Paper()), encoding="utf-8")
    page, _ = opened(browser, path)
    word = page.locator(".outcome .word")
    assert word.inner_text() == "Practice completed"
    assert word.evaluate("one => getComputedStyle(one).color === getComputedStyle(document.body).color")
    assert page.title().startswith("Practice completed: ")
    page.close()


def test_the_warning_comes_first(browser, pages):
    """What must be known before reading on stands before the result, as text."""
    page, _ = opened(browser, pages / "torn.html")
    text = page.locator("body").inner_text()
    assert "The end of this record is torn" in text
    assert text.index("Read this first") < text.index("The end of this record is torn") < text.index("Interrupted")
    page.close()


def test_a_long_title_pushes_no_warning_away(browser, pages):
    """However long a title is, the warning is on the first screen."""
    page, _ = opened(browser, pages / "hostile.html")
    assert page.locator("#warnings").bounding_box()["y"] < 450
    page.close()


def test_hostile_words_show_as_typed(browser, pages):
    """The browser shows the very letters, tags and braces included."""
    page, _ = opened(browser, pages / "hostile.html")
    shown = page.locator("dl.pairs").first.inner_text()
    for name in ("script", "end of everything", "entity", "template", "scripts", "formula"):
        assert WORDS[name] in shown, name
    assert "[U+202E]" in shown
    page.close()
