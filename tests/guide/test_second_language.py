"""A whole attempt in another language: guide, scoring and result say nothing but what that language says."""

from decimal import Decimal

import pytest

from assistant.checklist.model import Checklist, NameAsked, NoteAsked, NumberAsked, QuestionAsked, Step, WaitAsked
from assistant.guide import Guide, Mode, Opened, Outcome, Papers, State, Tone
from assistant.orders.key import KeyEntry
from assistant.report.results import lines
from tests.guide.lived import Lived
from tests.spoken.tiny import TINY
from tests.spoken.tiny.marked import unmarked

AUTHORED = ("Vask hond.", "Gryt pand.", "Zet strum?", "Tel min.", "Skriv brok.", "Grun zak.", "Zob.", "Nyk.", "Trub.")
WASH, GRAB, SEE, WAIT, NOTE, RATE, TITLE, PURPOSE, CAUTION = AUTHORED
CHECKLIST = Checklist(
    name="zob",
    title=TITLE,
    version="1",
    purpose=PURPOSE,
    cautions=(CAUTION,),
    digest="",
    steps=(
        Step(id="wash", part="Zob.", say=WASH, critical=True, hint="Nyk."),
        Step(id="grab", part="Zob.", say=GRAB),
        Step(id="see", part="Zob.", say=SEE, expect=QuestionAsked(kind="question"), if_wrong="Trub."),
        Step(id="wait", part="Zob.", say=WAIT, expect=WaitAsked(kind="wait", seconds=5)),
        Step(id="note", part="Zob.", say=NOTE, expect=NoteAsked(kind="note")),
        Step(
            id="rate",
            part="Zob.",
            say=RATE,
            critical=True,
            expect=NumberAsked(kind="number", unit="mL/h", key="primary.rate"),
        ),
    ),
)
KEY = {"primary.rate": KeyEntry("primary.rate", Decimal(125), "mL/h", ("1000 / 8 = 125",), "rate")}
DATA = {*AUTHORED, "grov snak"}
"""Texts of the author and of the learner, which no language touches."""


def lived(mode: Mode, **pins: str) -> Lived:
    one = Lived(Guide(Papers(CHECKLIST, "Zob.", KEY, TINY), mode, {"mode": mode.value, **pins}))
    one.give(Opened(one.at))
    return one


def left_over(text: str) -> str:
    """Letters of a text that came neither from the language nor from the data."""
    rest = unmarked(text)
    for known in sorted(DATA, key=len, reverse=True):
        rest = rest.replace(known.rstrip("."), "")
    return "".join(letter for letter in rest.replace("mL/h", "") if letter.isalpha())


@pytest.mark.parametrize("mode", list(Mode))
def test_a_whole_attempt(mode):
    """From the opening to the result, with a wrong number, a finding, help and what is not understood on the way."""
    one = lived(mode)
    one.type("suk mi", "ruk", "blub", "blub", "yes", "done")
    assert one.step == "wash"
    one.type("fert", "ova")
    assert one.step == "see"
    one.type("nek", "ova da", "fert")
    assert one.state is State.WAITING
    one.wait(5)
    one.type("grov snak", "nek", "grov snak", "ova")
    assert one.step == "rate"
    one.hear("sorn pesk")
    one.type("kaf bem telki", "kaf bem telki pri jar", "ova")
    assert one.step == "rate"
    one.hear("kaf bem pesk telki pri jar")
    assert one.says[-1].tone is Tone.READ_BACK
    one.hear("ova")
    assert one.outcome is (Outcome.PASSED if mode is Mode.PRACTICE else Outcome.NOT_PASSED)
    assert len(one.says) > 40
    assert [say.text for say in one.says if left_over(say.text)] == []
    results = one.guide.results()
    assert (results.failures != ()) is (mode is Mode.CHECK_OFF)
    assert [
        line for line in (*results.failures, *lines(results, one.outcome, mode, TINY.report)) if left_over(line)
    ] == []


def test_nothing_english_is_understood():
    """The words of the program's own language are noise in another one."""
    one = lived(Mode.PRACTICE)
    for words in ("yes", "done", "okay", "stop", "again", "help", "instructor here", "i need help"):
        one.type(words)
        assert one.entries[-1]["input"] == "not understood", words
    assert one.step == "wash"


def test_interruptions_and_devices():
    """Stop, consent and what a device lost are said in the language too."""
    one = lived(Mode.PRACTICE, sound="kept with consent")
    one.type("blub", "ova", "h\u00f8lt", "nek", "h\u00f8lt", "ova")
    assert one.outcome is Outcome.STOPPED
    assert [say.text for say in one.says if left_over(say.text)] == []


def test_a_name_from_a_label():
    """Names are read back and compared in the language."""
    labels = ("sal bem %", "zork")
    step = Step(id="name", part="Zob.", say=WASH, expect=NameAsked(kind="name", key="primary.fluid"))
    key = {"primary.fluid": KeyEntry("primary.fluid", "sal bem %", None, choices=labels)}
    checklist = CHECKLIST.model_copy(update={"steps": (step,)})
    one = Lived(Guide(Papers(checklist, "Zob.", key, TINY)))
    one.give(Opened(one.at))
    one.type("zork")
    one.hear("salva bem zentu")
    DATA.update(labels)
    assert [say.text for say in one.says if left_over(say.text)] == []
