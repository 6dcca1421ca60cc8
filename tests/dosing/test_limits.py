"""Limits: within, soft, hard, unknown; and the project's own table."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from assistant.dosing import parse_amount, parse_concentration
from assistant.dosing.limits import Kind, Level, Limits, worst
from assistant.dosing.limits_file import limits_from
from assistant.errors import QuantityError

_FILE = Path(__file__).parents[2] / "checklists" / "limits.toml"


@pytest.fixture(scope="module")
def limits() -> Limits:
    """The project's own table."""
    return limits_from(tomllib.loads(_FILE.read_text(encoding="utf-8")))


CHECKS: list[tuple[str, dict[str, str], Level, str]] = [
    # FDA label text, vancomycin: 10 mg/min at most, 60 min at least, 5 mg/mL (10 where fluid is restricted).
    ("vancomycin", {"dose": "1 g", "duration": "100 min"}, Level.WITHIN, "keeps the limit"),
    ("Vancomycin", {"dose": "1 g", "duration": "60 min"}, Level.HARD, "16.6667 mg/min for Vancomycin is above"),
    ("vancomycin", {"dose": "500 mg", "duration": "59 min"}, Level.HARD, "below the limit of 60 min"),
    ("vancomycin", {"dose": "500 mg", "duration": "60 min"}, Level.WITHIN, ""),
    ("vancomycin", {"concentration": "1 g in 200 mL"}, Level.WITHIN, ""),
    ("vancomycin", {"concentration": "1 g in 199 mL"}, Level.SOFT, "it needs a reason"),
    ("vancomycin", {"concentration": "1 g in 99 mL"}, Level.HARD, "it is refused"),
    ("vancomycin", {"dose": "20 g", "duration": "2,000 min"}, Level.SOFT, "above the limit of 2 g"),
    ("vancomycin", {"rate": "200 mL/h"}, Level.UNKNOWN, "does not make it safe"),
    # FDA label text, dopamine in dextrose: 50 mcg/kg/min at most.
    ("dopamine", {"dose_rate": "5 mcg/kg/min"}, Level.WITHIN, ""),
    ("dopamine", {"dose_rate": "51 mcg/kg/min"}, Level.HARD, ""),
    ("dopamine", {"dose_rate": "0.05 mg/kg/min"}, Level.SOFT, "that is 50 mcg/kg/min"),
    ("dopamine", {"dose_rate": "3.6 mg/min", "weight": "70 kg"}, Level.HARD, "51.4286 mcg/kg/min"),
    ("dopamine", {"dose_rate": "1 mg/min", "weight": "154 lb"}, Level.WITHIN, ""),
    ("dopamine", {"dose_rate": "1 mg/min"}, Level.UNKNOWN, "needs the body weight"),
    ("dopamine", {"dose_rate": "5 units/h"}, Level.UNKNOWN, "cannot be compared"),
    # FDA label text, potassium chloride injection: 10 mEq/h, 40 mEq/h in urgent need.
    ("potassium chloride", {"dose": "20 mEq", "duration": "2 h"}, Level.WITHIN, "keeps"),
    ("potassium chloride", {"dose_rate": "20 mEq/h"}, Level.SOFT, ""),
    ("potassium chloride", {"dose_rate": "41 mEq/h"}, Level.HARD, ""),
    ("potassium chloride", {"dose_rate": "10 mmol/h"}, Level.UNKNOWN, "cannot be compared"),
    ("sodium chloride 0.9 %", {"rate": "125 mL/h"}, Level.WITHIN, ""),
    ("Sodium  chloride 0.9 %", {"rate": "300 mL/h"}, Level.SOFT, ""),
    ("sodium chloride 0.9 %", {"rate": "1,000 mL/h"}, Level.HARD, ""),
    ("sodium chloride 0.9 %", {"rate": "5 mL/h"}, Level.SOFT, "below the limit"),
    ("moonlight", {"rate": "5 mL/h"}, Level.UNKNOWN, "No limit for the rate of moonlight is known"),
]


@pytest.mark.parametrize(("name", "given", "level", "words"), CHECKS)
def test_checks_against_the_limits(limits: Limits, name: str, given: dict[str, str], level: Level, words: str) -> None:
    """The gravest finding comes first; a bound itself is within; no limit is unknown and never safe."""
    measures = {
        key: parse_concentration(text) if key == "concentration" else parse_amount(text) for key, text in given.items()
    }
    findings = limits.check(name, **measures)  # type: ignore[arg-type]
    relevant = [finding for finding in findings if finding.level is not Level.UNKNOWN] or list(findings)
    assert worst(relevant) is level
    assert any(words in finding.sentence and finding.level is level for finding in findings)
    assert all(finding.source for finding in findings if finding.level in (Level.SOFT, Level.HARD, Level.WITHIN))


@pytest.mark.parametrize(
    ("one", "other", "level"),
    [
        ("ceftriaxone", "calcium gluconate", Level.HARD),  # FDA label text, ceftriaxone (from memory)
        ("Calcium Gluconate", "ceftriaxone", Level.HARD),
        ("phenytoin", "dextrose 5 %", Level.HARD),  # FDA label text, phenytoin (from memory)
        ("ceftriaxone", "sodium chloride 0.9 %", Level.UNKNOWN),
    ],
)
def test_knows_what_must_not_share_a_line(limits: Limits, one: str, other: str, level: Level) -> None:
    """What is known not to go together is refused both ways round; the rest is unknown, not allowed."""
    (finding,) = limits.check(one, together_with=[other])
    assert finding.level is level


def test_nothing_asked_is_unknown() -> None:
    """Without a question there is no finding, and the worst of none is unknown."""
    assert Limits({}, {}).check("anything") == ()
    assert worst(()) is Level.UNKNOWN


def test_the_table_names_a_source_on_each_line() -> None:
    """Each limit of the project's own table stands on one line, with its source."""
    lines = [line for line in _FILE.read_text(encoding="utf-8").splitlines() if "value =" in line or "names =" in line]
    inline = [line for line in lines if "{" in line]
    assert len(inline) > 25
    assert all('source = "' in line for line in inline)
    assert len(lines) - len(inline) == _FILE.read_text(encoding="utf-8").count("[policy.")


def test_the_table_holds_the_policies(limits: Limits) -> None:
    """Hang times and set changes are policy values with their sources."""
    assert str(limits.policies["set change, continuous"].value) == "96 h"  # CDC 2011
    assert "CDC" in limits.policies["set change, continuous"].source
    assert all(policy.source for policy in limits.policies.values())


ROW = {"value": "10 mg/min", "level": "hard", "source": "a label"}
WRONG: list[tuple[dict[str, Any], str]] = [
    ({"herb": {}}, 'no part "herb"'),
    ({"drug": 5}, "drug must be a table"),
    ({"drug": {"x": 5}}, "x must be a table"),
    ({"drug": {"x": {"highest_dose_rate": 5}}}, "x, highest_dose_rate must be a table"),
    ({"drug": {"x": {"top": ROW}}}, "x, top is no limit known here"),
    ({"drug": {"x": {"highest_dose_rate": ROW | {"level": "firm"}}}}, "level must be soft or hard"),
    ({"drug": {"x": {"highest_dose_rate": ROW | {"source": ""}}}}, "lacks source"),
    ({"drug": {"x": {"highest_dose_rate": ROW | {"value": "10"}}}}, "came without a unit"),
    ({"drug": {"x": {"highest_dose_rate": ROW | {"value": 10}}}}, "lacks value"),
    ({"drug": {"x": {"highest_dose_rate": ROW | {"value": "10 mL/h"}}}}, "must be a dose rate above zero"),
    ({"drug": {"x": {"highest_dose_rate": ROW | {"value": "0 mg/min"}}}}, "must be a dose rate above zero"),
    ({"drug": {"x": {"highest_dose_rate": ROW | {"note": "hm"}}}}, 'has no field "note"'),
    ({"drug": {"x": {"not_in_one_line_with": ROW}}}, "names must be a list"),
    ({"policy": {"x": {"value": "5 mL", "source": "a"}}}, "must be a duration above zero"),
    ({"policy": {"x": {"value": "5 h"}}}, "lacks source"),
]


@pytest.mark.parametrize(("table", "words"), WRONG)
def test_refuses_a_wrong_table(table: dict[str, Any], words: str) -> None:
    """A wrong table is refused in one line that names the place."""
    with pytest.raises(QuantityError) as refused:
        limits_from(table)
    assert words in str(refused.value)


def test_every_kind_of_limit_can_be_read() -> None:
    """Each kind takes a value in the unit that it bounds."""
    values = {
        Kind.HIGHEST_RATE: "100 mL/h",
        Kind.LOWEST_RATE: "10 mL/h",
        Kind.HIGHEST_DOSE_RATE: "10 mcg/kg/min",
        Kind.SHORTEST_TIME: "30 min",
        Kind.HIGHEST_CONCENTRATION: "10 units/mL",
        Kind.HIGHEST_DOSE: "10 units",
        Kind.LOWEST_DOSE: "1 mg",
    }
    assert set(values) == set(Kind)
    drug = {kind.value: ROW | {"value": text} for kind, text in values.items()}
    entry = limits_from({"drug": {"X": drug}}).entry("x")
    assert entry is not None
    assert {limit.kind: str(limit.value) for limit in entry.limits} == values


def test_a_fluid_has_several_names() -> None:
    """What a fluid is also called finds the same limits, and the same enemies in one line."""
    table = limits_from(
        {
            "drug": {"a": {"not_in_one_line_with": {"names": ["b"], "level": "hard", "source": "made up"}}},
            "fluid": {
                "b": {"also": ["B water", "old b"], "highest_rate": {"value": "5 mL/h", "level": "soft", "source": "x"}}
            },
        }
    )
    for name in ("b", "B Water", "old  b"):
        assert worst(table.check("a", together_with=[name])) is Level.HARD
        assert worst(table.check(name, together_with=["a"])) is Level.HARD
        assert worst(table.check(name, rate=parse_amount("6 mL/h"))) is Level.SOFT
    assert worst(table.check("a", together_with=["c"])) is Level.UNKNOWN


@pytest.mark.parametrize(
    ("also", "says"),
    [("b", "must be a list"), ([""], "must be a list"), ([1], "must be a list"), (["B"], 'name "b" twice')],
)
def test_other_names_are_checked(also: object, says: str) -> None:
    """A name that is none, or that stands for two things, is refused."""
    with pytest.raises(QuantityError, match=says):
        limits_from({"fluid": {"b": {"also": also}}})


@pytest.mark.parametrize("names", [[], "b", [""], [1], None])
def test_enemies_in_a_line_are_a_list_of_names(names: object) -> None:
    """A list with nothing in it, or with what is no name, is refused: it would say that all is well."""
    row = {"names": names, "level": "hard", "source": "made up"}
    with pytest.raises(QuantityError, match="names must be a list of texts"):
        limits_from({"drug": {"a": {"not_in_one_line_with": row}}})
