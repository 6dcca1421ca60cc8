"""Every procedure of the library, typed: right path, wrong numbers, a critical step passed over, a planted fault."""

from pathlib import Path

import pytest

from assistant.checklist.lint import Known
from assistant.checklist.load import available
from assistant.checklist.model import ChoiceAsked
from assistant.cli.lint import findings_of
from assistant.guide.effects import Outcome, Tone
from assistant.guide.progress import Mode
from assistant.guide.result import Ending
from assistant.orders.load import available_orders
from assistant.orders.solve import KEY_UNITS, answer_key
from assistant.record.verify import verify
from tests.attempt.library import PROCEDURES, STOPS, Papers, Procedure, found_words, papers, walk, wrong_words
from tests.attempt.program import here

EACH = pytest.mark.parametrize("procedure", PROCEDURES, ids=lambda procedure: procedure.name)
BY_ITSELF = {Ending.UNAIDED}


def endings(lived) -> dict[str, Ending]:
    """How each step ended, by its id."""
    return {line.id: line.ending for line in lived.guide.results().steps}


def test_every_procedure_is_walked_through() -> None:
    """No checklist of the library is without its walks, and there are enough of them."""
    assert sorted(procedure.name for procedure in PROCEDURES) == sorted(available())


def test_readme_names_every_procedure() -> None:
    """A newcomer finds them all."""
    readme = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
    assert [procedure.name for procedure in PROCEDURES if f"`{procedure.name}`" not in readme] == []


@EACH
def test_lint_finds_nothing(procedure: Procedure) -> None:
    """Not even a warning."""
    assert findings_of(procedure.name, Known(KEY_UNITS, frozenset(available_orders()))) == ()


@EACH
def test_right_path(procedure: Procedure) -> None:
    """Everything done right passes a check-off, every step unaided."""
    lived = walk(papers(procedure.name), {}, Mode.CHECK_OFF)
    assert lived.outcome is Outcome.PASSED, lived.texts(Tone.RESULT)
    assert set(endings(lived).values()) <= BY_ITSELF | {Ending.NOT_APPLICABLE}


@pytest.mark.parametrize("procedure", PROCEDURES[3:], ids=lambda procedure: procedure.name)
def test_right_path_through_the_whole_program(capsys, tmp_path, procedure: Procedure) -> None:
    """The simulated learner passes, and the record holds (the first three are lived through in `test_typed`)."""
    ended = here(capsys, "demo", procedure.name, "--json", "--records", str(tmp_path))
    assert ended.code == 0
    assert verify(ended.last["record"]).ok


@EACH
def test_wrong_numbers(procedure: Procedure) -> None:
    """Every number, given ten times too large first, is held at its step; nothing else is disturbed."""
    given = papers(procedure.name)
    asked = [(step, given.checklist.number_asked(step)) for step in given.checklist.steps]
    numbers = [step for step, number in asked if number is not None and number.key in given.key]
    assert numbers
    lived = walk(given, {step.id: [wrong_words(step, given)] for step in numbers})
    assert lived.outcome is Outcome.PASSED
    ended = endings(lived)
    assert {ended[step.id] for step in numbers} <= {Ending.CORRECTED, Ending.NOT_APPLICABLE}
    assert set(ended.values()) <= {Ending.CORRECTED, Ending.NOT_APPLICABLE, Ending.UNAIDED}
    corrected = {name for name, ending in ended.items() if ending is Ending.CORRECTED}
    assert corrected <= {step.id for step in numbers}
    held = [say.text for say in lived.says if say.tone is Tone.HOLD]
    assert len(held) >= len(corrected)


def test_every_way_through() -> None:
    """Whatever is found, the steps that follow from it are asked, and only these; every way comes to its end."""
    ways = 0
    for name in ("occlusion", "site-gone-bad", "other-alarms"):
        given = papers(name)
        (asked,) = [
            step for step in given.checklist.steps if isinstance(step.expect, ChoiceAsked) and not step.expect.right
        ]
        assert isinstance(asked.expect, ChoiceAsked)
        for choice in asked.expect.choices:
            ways += 1
            lived = walk(given, {asked.id: [choice]}, Mode.CHECK_OFF)
            assert lived.outcome is Outcome.PASSED, lived.texts(Tone.RESULT)
            for step in given.checklist.steps:
                named = [choice in condition.answer for condition in step.applies if condition.step == asked.id]
                was_asked = any(step.say in say.text for say in lived.says)
                assert not named or was_asked is all(named), (choice, step.id)
    assert ways == 8


@pytest.mark.parametrize("kind", ["a soft limit", "a hard limit"])
@pytest.mark.parametrize("entry", ["as ordered", "a slip"])
def test_every_alert_has_its_answer(kind: str, entry: str) -> None:
    """A slip is entered anew; what is as ordered is asked about, for a reason (soft) or for a new order (hard)."""
    given = papers("library-alert")
    lived = walk(given, {"z-kind": [kind], "z-entry": [entry]}, Mode.CHECK_OFF)
    assert lived.outcome is Outcome.PASSED, lived.texts(Tone.RESULT)
    asked = {
        step.id
        for step in given.checklist.steps
        if step.id in ("z-clear", "z-ask", "z-reason", "z-never") and any(step.say in say.text for say in lived.says)
    }
    last = "z-reason" if kind == "a soft limit" else "z-never"
    assert asked == ({"z-clear"} if entry == "a slip" else {"z-ask", last})


@pytest.mark.parametrize(("order", "way"), [("oh-131", "lower"), ("oh-132", "hold")])
def test_a_new_order_asks_for_its_own_steps(order: str, way: str) -> None:
    """A rate that changes is entered and started; an infusion that is held is paused, and its catheter kept open."""
    given = papers("rate-change", order)
    lived = walk(given, {}, Mode.CHECK_OFF)
    assert lived.outcome is Outcome.PASSED, lived.texts(Tone.RESULT)
    asked = {step.id for step in given.checklist.steps if any(step.say in say.text for say in lived.says)}
    held, changed = {"c-pause", "c-keep", "c-until", "c-who"}, {"c-by", "c-rate", "c-confirm", "c-start"}
    assert (held | changed) & asked == (held if way == "hold" else changed)


@pytest.mark.parametrize(
    ("result", "steps"), [(52, {"u-by"}), (70, set()), (118, {"u-by", "u-pause", "u-time", "u-hold"})]
)
def test_every_row_of_the_table_has_its_steps(result: int, steps: set[str]) -> None:
    """A change is asked for where there is one, a hold where the row holds; the new rate always."""
    own = papers("heparin")
    assert own.order.protocol is not None
    changed = own.order.protocol.model_copy(update={"result": result})
    order = own.order.model_copy(update={"protocol": changed})
    lived = walk(Papers(own.checklist, order, answer_key(order)), {}, Mode.CHECK_OFF)
    assert lived.outcome is Outcome.PASSED, lived.texts(Tone.RESULT)
    asked = {step.id for step in own.checklist.steps if any(step.say in say.text for say in lived.says)}
    assert asked & {"u-by", "u-pause", "u-time", "u-hold"} == steps
    assert "u-rate" in asked


@EACH
def test_a_critical_step_passed_over(procedure: Procedure) -> None:
    """It is come back to before the end, and its mark stays in the result."""
    given = papers(procedure.name)
    assert given.checklist.step(procedure.passed_over).critical
    lived = walk(given, {procedure.passed_over: ["go on"]})
    assert lived.outcome is Outcome.PASSED
    asked = [say.text for say in lived.says if given.checklist.step(procedure.passed_over).say in say.text]
    assert len(asked) >= 2
    assert endings(lived)[procedure.passed_over] in (Ending.CUED, Ending.OUT_OF_ORDER, Ending.UNAIDED)
    # Passed over for good, it fails a check-off, or a gate keeps it from ending.
    lived = walk(given, {procedure.passed_over: ["go on", "go on", "go on", *STOPS]}, Mode.CHECK_OFF)
    assert lived.outcome in (Outcome.NOT_PASSED, Outcome.STOPPED)


@EACH
def test_a_fault_that_shows(procedure: Procedure) -> None:
    """What is found or read is not as it should be: the assistant holds, says what to do, and the learner stops.

    Where the fault is laid out that ends the attempt rightly; where it is not, the instructor judges.
    """
    given = papers(procedure.name, procedure.faulty_order)
    step = given.checklist.step(procedure.fault)
    lived = walk(given, {procedure.fault: [found_words(step, given), *STOPS]}, Mode.CHECK_OFF)
    held = [say.text.lower() for say in lived.says if say.tone is Tone.HOLD]
    assert any(procedure.advice in text for text in held), held
    if procedure.faulty_order:
        assert lived.outcome is Outcome.STOPPED_FOR_CAUSE, lived.texts(Tone.RESULT)
        assert endings(lived)[procedure.fault] is Ending.STOPPED_FOR
    else:
        assert lived.outcome is Outcome.STOPPED
        assert endings(lived)[procedure.fault] in (Ending.NOT_PUT_RIGHT, Ending.NOT_REACHED, Ending.WRONG)


def test_cautions_of_the_library() -> None:
    """Every one is for training, defers to local policy and the makers, and leaves decisions to the licensed."""
    for procedure in PROCEDURES:
        cautions = " ".join(papers(procedure.name).checklist.cautions).lower()
        for words in ("training", "no patient", "local policy", "makers' instructions", "licensed practitioner"):
            assert words in cautions, procedure.name
