"""What a step can expect, when it applies, and parts that stand in several checklists."""

from decimal import Decimal
from pathlib import Path

import pytest

from assistant.checklist.load import load, load_sheet
from assistant.checklist.model import Checklist, ChoiceAsked, Condition, DoubleCheckAsked, Expiry, NumberAsked
from assistant.checklist.rehearsal import rehearse
from assistant.dosing import Amount
from assistant.errors import ChecklistError
from assistant.spoken import ENGLISH
from tests.checklist.papers import changed, written

SAY = 'say = "Start the pump."\n'
KEY = {
    "primary.rate": Amount(Decimal(125), "mL/h"),
    "primary.fluid": "0.9 % sodium chloride",
    "secondary.dose": Amount(Decimal("1.5"), "mg"),
}
ANSWERS = {"return": "no", "colour": "clear"}


def with_step(tmp_path: Path, fields: str) -> Checklist:
    return load(written(tmp_path, changed(SAY, SAY + fields + "\n")))


@pytest.mark.parametrize(
    "fields",
    [
        'expect = { kind = "choice", choices = ["clear", "cloudy"], right = "clear" }',
        'expect = { kind = "choice", choices = ["left arm", "right arm"] }',
        'expect = { kind = "note" }\npause_s = 1.5',
        'expect = { kind = "observation" }',
        'expect = { kind = "double-check", of = "rate" }',
        'expect = { kind = "number", unit = "gtt/min", lowest = 1, highest = 60 }',
        'expect = { kind = "number", unit = "mL/h", key = "primary.rate", within = 2 }',
        'tries = 2\ntries_spent = "Call the instructor."',
        'hint = "Look."\nstronger = ["Look at the pump.", "Press start."]',
        'applies = [{ key = "secondary.drug" }, { step = "look", answer = ["yes"] }]',
    ],
)
def test_every_new_field_loads_and_rehearses(tmp_path: Path, fields: str) -> None:
    """A checklist with the field loads, and can be read through."""
    assert len(rehearse(with_step(tmp_path, fields))) == 3


@pytest.mark.parametrize(
    ("fields", "says"),
    [
        ('expect = { kind = "choice", choices = ["one"] }', "choices"),
        ('expect = { kind = "choice", choices = ["a", "b"], right = "c" }', '"c" is not one of the choices'),
        ('expect = { kind = "choice", choices = ["a", "b"], advice = { c = "No." } }', '"c" is not one of the choices'),
        ('expect = { kind = "number", unit = "mL/h" }', "compared with nothing"),
        ('expect = { kind = "double-check", of = "look" }', '"look" asks for no number'),
        ('expect = { kind = "double-check", of = "rat" }', "no step has that id"),
        ('applies = [{ key = "a", step = "look" }]', "about the order, about an earlier step, or about the lab"),
        ('applies = [{ step = "look" }]', "names its answer"),
        ('applies = [{ key = "primary.rate", above = 100 }]', "a number with its unit"),
        ('applies = [{ key = "primary.rate", above = "100 furlong" }]', "not a unit"),
        ('applies = [{ key = "primary.rate", above = "100 mL/h", present = false }]', "compares a value"),
        ('applies = [{ step = "loook", answer = "yes" }]', "no step has that id"),
        ("tries = 0", '"tries" must be at least 1'),
        ("pause_s = 10", '"pause_s" must be at most 5'),
    ],
)
def test_what_makes_no_sense_is_refused_at_its_line(tmp_path: Path, fields: str, says: str) -> None:
    """Each fault names the line of its field and what to do."""
    with pytest.raises(ChecklistError) as refused:
        with_step(tmp_path, fields)
    assert says in refused.value.what
    assert "line 31" in refused.value.what
    assert refused.value.remedy


@pytest.mark.parametrize(
    ("condition", "met", "reason"),
    [
        ({"key": "primary.rate"}, True, "the order has no primary.rate"),
        ({"key": "secondary.drug"}, False, "the order has no secondary.drug"),
        ({"key": "secondary.drug", "present": False}, True, "the order has secondary.drug"),
        ({"key": "primary.rate", "above": "100 mL/h"}, True, "primary.rate is not above 100 mL/h"),
        ({"key": "primary.rate", "above": "125 mL/h"}, False, "primary.rate is not above 125 mL/h"),
        ({"key": "primary.rate", "below": "125 mL/h"}, False, "primary.rate is not below 125 mL/h"),
        ({"key": "primary.rate", "above": "2 mL/min"}, True, "primary.rate is not above 2 mL/min"),
        ({"key": "primary.rate", "above": "100 mL/h", "below": "0.2 L/h"}, True, ""),
        ({"key": "primary.rate", "equals": "125 mL/h"}, True, "primary.rate is not 125 mL/h"),
        ({"key": "primary.rate", "above": "100 mg"}, False, ""),
        ({"key": "secondary.dose", "equals": "1,500 mcg"}, True, ""),
        ({"key": "primary.fluid", "equals": "0.9 % Sodium Chloride"}, True, ""),
        ({"key": "primary.fluid", "equals": "5 % dextrose in water"}, False, ""),
        ({"key": "primary.fluid", "above": "1 mL"}, False, ""),
        ({"step": "return", "answer": "no"}, True, "step return was not answered with no"),
        ({"step": "colour", "answer": ("cloudy", "clear")}, True, "step colour was not answered with cloudy or clear"),
        ({"step": "not-reached", "answer": "yes"}, False, ""),
    ],
)
def test_a_condition_is_met_or_gives_its_reason(condition: dict[str, object], met: bool, reason: str) -> None:
    """Presence, equality and both comparisons, across units, and earlier answers."""
    read = Condition.model_validate(condition)
    assert read.met(KEY, ANSWERS) is met
    if reason:
        assert read.unmet_reason(ENGLISH.sentences) == reason


PART = """\
title = "Scrub and dry"
abbreviations = { PPE = "gloves and gown" }

[[steps]]
id = "scrub"
part = "Scrubbing"
say = "Scrub the hub."

[[steps]]
id = "dry"
part = "Scrubbing"
say = "Let it dry."
after = ["scrub"]
expect = { kind = "wait", seconds = 30 }
"""


def with_part(tmp_path: Path, entry: str, part: str = PART) -> str:
    (tmp_path / "parts").mkdir(exist_ok=True)
    written(tmp_path / "parts", part, "scrub-and-dry")
    return written(tmp_path, changed('[[steps]]\nid = "start"', f'{entry}\n[[steps]]\nid = "start"'))


HUB = '[[steps]]\ninclude = "parts/scrub-and-dry"\nprefix = "hub"\npart = "At the hub"\nafter = ["rate"]\n'


def test_a_part_stands_in_place_of_its_entry(tmp_path: Path) -> None:
    """Ids and what they name get the prefix; heading, conditions and what comes first are those of the entry."""
    entry = HUB + 'applies = [{ step = "look", answer = "yes" }]\n'
    checklist = load(with_part(tmp_path, entry))
    assert [step.id for step in checklist.steps] == ["look", "rate", "hub-scrub", "hub-dry", "start"]
    scrub, dry = checklist.step("hub-scrub"), checklist.step("hub-dry")
    assert (scrub.part, dry.part) == ("At the hub", "At the hub")
    assert (scrub.after, dry.after) == (("rate",), ("hub-scrub",))
    assert scrub.applies == dry.applies == (Condition(step="look", answer=("yes",)),)
    assert checklist.aloud("Put on PPE.") == "Put on gloves and gown."


def test_what_runs_out_inside_a_part_has_its_prefix(tmp_path: Path) -> None:
    """The steps that are opened again when settings are lost are those of the same part."""
    expiring = PART + '[steps.expires]\nafter_s = 60\nreopen = ["scrub"]\nsay = "It is no longer clean."\n'
    dry = load(with_part(tmp_path, HUB, expiring)).step("hub-dry")
    assert dry.expires == Expiry(after_s=60, reopen=("hub-scrub",), say="It is no longer clean.")


def test_a_part_stands_twice_under_two_prefixes(tmp_path: Path) -> None:
    """The same part again needs a prefix; without one its own name is the prefix."""
    plain = '[[steps]]\ninclude = "parts/scrub-and-dry"\n'
    checklist = load(with_part(tmp_path, plain + HUB))
    assert [step.id for step in checklist.steps][2:6] == [
        "scrub-and-dry-scrub",
        "scrub-and-dry-dry",
        "hub-scrub",
        "hub-dry",
    ]
    with pytest.raises(ChecklistError, match='under the prefix "hub" already'):
        load(with_part(tmp_path, HUB + HUB))


def test_a_changed_part_changes_the_digest(tmp_path: Path) -> None:
    """A record pins what was included, too."""
    before = load(with_part(tmp_path, HUB)).digest
    assert load(with_part(tmp_path, HUB, PART.replace("30", "31"))).digest != before


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("parts/../flow", "names no part"),
        ("../flow", "names no part"),
        ("/etc/passwd", "names no part"),
        ("flow", "names no part"),
        ("parts/scrub-and-dri", 'Did you mean "parts/scrub-and-dry"'),
        ("parts/out", "outside the folder"),
        ("parts/loop", "includes itself"),
        ("parts/mutual", "includes itself"),
    ],
)
def test_no_part_leads_out_or_round(tmp_path: Path, name: str, says: str) -> None:
    """Names, links and circles are refused at the line of the entry."""
    path = with_part(tmp_path, f'[[steps]]\ninclude = "{name}"\n')
    outside = tmp_path.parent / f"{tmp_path.name}-outside.toml"
    outside.write_text(PART, encoding="utf-8")
    (tmp_path / "parts" / "out.toml").symlink_to(outside)
    for part, other in (("loop", "loop"), ("mutual", "back"), ("back", "mutual")):
        written(tmp_path / "parts", f'[[steps]]\ninclude = "parts/{other}"\n', part)
    with pytest.raises(ChecklistError) as refused:
        load(path)
    assert says in str(refused.value)


def test_parts_that_double_do_not_grow_without_bound(tmp_path: Path) -> None:
    """Each part includes the next one twice: the number of files is limited, not only the depth."""
    (tmp_path / "parts").mkdir()
    entries = "".join(f'[[steps]]\ninclude = "parts/p{{}}"\nprefix = "{letter}"\n' for letter in "abcdefgh")
    for number in range(4):
        inner = entries.replace("{}", str(number + 1)) if number < 3 else PART[PART.index("[[steps]]") :]
        written(tmp_path / "parts", inner, f"p{number}")
    with pytest.raises(ChecklistError, match="more than 50 files"):
        load(
            written(
                tmp_path, changed('[[steps]]\nid = "start"', '[[steps]]\ninclude = "parts/p0"\n[[steps]]\nid = "start"')
            )
        )


def test_a_part_is_looked_at_but_not_run(tmp_path: Path) -> None:
    """A part can be read by itself for the linter; an attempt needs a checklist."""
    with_part(tmp_path, HUB)
    path = str(tmp_path / "parts" / "scrub-and-dry.toml")
    assert load_sheet(path).is_part
    with pytest.raises(ChecklistError, match="is a part"):
        load(path)


def test_a_double_check_asks_for_what_the_learner_gave(tmp_path: Path) -> None:
    """Unit and key of the second person's number are those of the learner's."""
    checklist = with_step(tmp_path, 'expect = { kind = "double-check", of = "rate" }')
    assert isinstance(checklist.step("start").expect, DoubleCheckAsked)
    asked = checklist.number_asked(checklist.step("start"))
    assert isinstance(asked, NumberAsked)
    assert (asked.unit, asked.key) == ("mL/h", "primary.rate")
    assert checklist.number_asked(checklist.step("look")) is None


def test_a_choice_takes_other_ways_to_say_it(tmp_path: Path) -> None:
    """Phrases and advice stand by the choice that they belong to."""
    fields = (
        '[steps.expect]\nkind = "choice"\nchoices = ["clear", "cloudy"]\nright = "clear"\n'
        'phrases = { clear = ["it is clear"] }\nadvice = { cloudy = "Take another bag." }'
    )
    text = changed("\n[steps.expires]", f"{fields}\n[steps.expires]")
    asked = load(written(tmp_path, text)).step("start").expect
    assert isinstance(asked, ChoiceAsked)
    assert asked.phrases["clear"] == ("it is clear",)
    assert asked.advice == {"cloudy": "Take another bag."}
