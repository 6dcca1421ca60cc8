"""The display as it is served, a browser to look at it, and every state that it has."""

import shutil
from contextlib import contextmanager
from datetime import UTC, datetime
from decimal import Decimal

from playwright.sync_api import sync_playwright

from assistant.desk.display import Display
from assistant.desk.server import LocalServer
from assistant.desk.shown import Kind, Middle, Shown
from assistant.dosing.amount import Amount, show
from assistant.guide.effects import Say, StepLine, Tone
from assistant.guide.events import EarLost, Opened, Typed
from assistant.orders.load import load_order
from assistant.orders.solve import answer_key
from assistant.report.infusion import infusion_course
from assistant.spoken import ENGLISH
from tests.report.hostile import LONG

AT = datetime(2026, 11, 28, 9, tzinfo=UTC)


CONTRASTS = """() => {
  const parts = (colour) => colour.match(/[\\d.]+/g).map(Number);
  const light = (colour) => { const [r, g, b] = parts(colour).map((v) => v / 255)
      .map((v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
  const ground = (one) => { for (let at = one; at; at = at.parentElement) {
      const colour = getComputedStyle(at).backgroundColor;
      if (!/^rgba.*, 0\\)$/.test(colour)) { return colour; } } return "rgb(255, 255, 255)"; };
  const texts = "h1, h2, h3, p, b, a, q, li, td, th, label, legend, span, button, input, select, textarea, summary";
  return [...document.querySelectorAll(texts)].map((one) => {
    const [a, b] = [light(getComputedStyle(one).color), light(ground(one))].sort((x, y) => y - x);
    return (a + 0.05) / (b + 0.05); });
}"""
"""Contrast ratios of all texts. Source: WCAG 2.2, relative luminance and contrast ratio (from memory)."""


class Settable(Display):
    """A display that can be put into any state."""

    def put(self, shown):
        self._put(shown)


@contextmanager
def chromium():
    """Debian's browser."""
    program = shutil.which("chromium")
    assert program, "tests/run installs chromium"
    with sync_playwright() as playwright:
        # Root, as in a container, has no use for the sandbox.
        started = playwright.chromium.launch(executable_path=program, args=["--no-sandbox"])
        try:
            yield started
        finally:
            started.close()


@contextmanager
def served():
    """A display and its server."""
    display = Settable()
    server = LocalServer(display.app)
    try:
        yield display, server
    finally:
        display.close()
        server.close()


def settled(page, shown):
    """Wait until a page shows this state."""
    state = [shown.middle.kind.value, shown.whose.value, shown.said, shown.middle.lines[:1]]
    page.wait_for_function(
        """([kind, whose, said, lines]) => document.body.dataset.kind === kind && document.body.dataset.whose === whose
            && document.getElementById("turn").innerText.includes(whose === "wait" || whose === "over" ? "" : said)""",
        arg=state,
    )


def step(number, line, *, critical=False, part="Setting the pump", count=40):
    """A step that is asked for."""
    place = StepLine(number, count, critical, part, line)
    return Say(f"Step {number} of {count}. {line}", line, Tone.STEP, place)


def say(text, tone=Tone.NOTICE, **facts):
    """A sentence."""
    return Say(text, text, tone, **facts)


def number(value, unit):
    """A number that is read back."""
    amount = Amount(Decimal(value), unit)
    return say(f"{show(amount)}: is that right?", Tone.READ_BACK, number=amount)


def after(shown, *sentences, words=None):
    """What is shown after these words and sentences."""
    if words is not None:
        shown = shown.took(Typed(AT, words))
    for sentence in sentences:
        shown = shown.told(sentence)
    return shown.asks(paused=False)


ORDER = (
    "Order OH-101 for Marit Quillfeather, born 14 March 1961, number L-40719. Allergies: none known. Primary: lactated "
    "Ringer's solution, 1,000 mL over 12 h, intravenous, continuous. Reserve 50 mL. Ordered by Dr Ilse Vantongeren "
    "(fictional), signed."
)
COURSE = infusion_course(load_order("oh-101"), answer_key(load_order("oh-101")), ENGLISH.report).picture
BEGUN = Shown()
for _number in range(1, 18):
    BEGUN = BEGUN.told(step(_number, "Close the roller clamp again."))
ASKED = after(
    BEGUN,
    say("Matches the order.", Tone.AGREES),
    step(18, "Enter the rate. How many millilitres an hour does the pump show?", critical=True),
    words="yes",
)
HELD = after(
    ASKED,
    say("833 mL/h does not match the order. Compare the pump with the order, and say what it shows now.", Tone.HOLD),
    words="833 mL/h",
)
WAITING = after(
    BEGUN, say("20 seconds, from now."), step(12, "Scrub the hub for 15 seconds with a fresh wipe."), words="start"
)
STATES = {
    "idle": Shown(middle=Middle(Kind.IDLE)),
    "starting": Shown(),
    "step": ASKED,
    "listening": ASKED.hears(),
    "speaking": ASKED.sounds(sounds=True),
    "deaf": ASKED.took(EarLost(AT, "gone")).told(say("I cannot hear you. Please type.")).asks(paused=False),
    "number": after(ASKED, number("1083.5", "mL/h"), words="1083.5 mL/h").hears(),
    "number-long": after(ASKED, number("123456.25", "mcg/kg/min"), words="123456.25"),
    "unclear": after(
        ASKED, say("I did not understand that.", Tone.UNCLEAR), say("Say a number in mL/h.", Tone.UNCLEAR), words="<b>?"
    ),
    "hold": HELD.hears(),
    "help": after(
        ASKED,
        say("The rate is the volume divided by the hours: 1,000 mL over 12 h is 83.3 mL/h.", Tone.CUE),
        ASKED.place and step(18, ASKED.place.line, critical=True),
        words="I need help",
    ),
    "order": after(ASKED, say(ORDER, order=True), words="what is my order"),
    "wait": WAITING.counts(20).counts(14),
    "paused": after(ASKED, say("Paused. Say go on when you are ready."), words="pause").asks(paused=True),
    "covered": ASKED.covered().asks(paused=False),
    "long": after(BEGUN, step(19, " ".join([ORDER, ORDER])), words=LONG["one long word"][:200]),
    "opened": Shown().took(Opened(AT)).told(say("Primary line.")).told(step(1, "Read the order.")).asks(paused=False),
    "result": (
        after(ASKED, words="done")
        .told(say("Not passed.", Tone.RESULT))
        .told(say("38 of 40 steps were done without help.", Tone.RESULT))
        .told(say("Step 18 was wrong at first: the rate was ten times too high.", Tone.RESULT))
        .told(say("Practise: enter the rate, scrub the hub.", Tone.RESULT))
        .ended("750 387 245 517 150 999 829 718", COURSE)
    ),
}
"""Every state of the display by its name."""
