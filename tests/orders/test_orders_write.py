"""What is laid out, written and loaded again: every field, in every combination, with any words."""

from datetime import date
from decimal import Decimal
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.dosing import Amount
from assistant.orders.laid_out import (
    Happening,
    LaidOut,
    LaidOutByRate,
    LaidOutDrug,
    LaidOutFluid,
    LaidOutSet,
    LaidOutSyringe,
)
from assistant.orders.load import load_order
from assistant.orders.plausible import table
from assistant.orders.truth import truth_of
from assistant.orders.write import text_of

EVERYTHING = Path(__file__).with_name("everything.toml")
# Any text that a file may hold: no control character, mark of direction, or separator of lines; not blank.
WORDS = st.text(st.characters(categories=("L", "M", "N", "P", "S"), include_characters=" "), min_size=1, max_size=30)
PHRASES = WORDS.map(str.strip).filter(bool)
THINGS = st.from_regex(r"[a-z][a-z -]{0,20}[a-z]", fullmatch=True)
STEPS = st.from_regex(r"[a-z][a-z0-9-]{0,12}", fullmatch=True)
NUMBERS = st.decimals(Decimal("0.001"), Decimal(5000), places=3).map(lambda number: number.normalize() + 0)


def amounts(*units: str) -> st.SearchStrategy[Amount | None]:
    return st.none() | st.builds(Amount, NUMBERS, st.sampled_from(units))


HOW = {
    "expires": st.none() | st.dates(date(2000, 1, 1), date(2099, 12, 31)),
    "state": st.sampled_from((None, "cloudy", "leaking", "expired")),
}
NAMES = st.none() | PHRASES
HAPPENINGS = st.builds(Happening, at=STEPS, thing=THINGS, state=PHRASES, say=st.just("") | PHRASES)
DRUGS = st.builds(LaidOutDrug, drug=NAMES, dose=amounts("mg", "g", "units"), volume=amounts("mL", "L"), **HOW)
BENCHES = st.builds(
    LaidOut,
    primary=st.builds(LaidOutFluid, fluid=NAMES, bag_volume=amounts("mL", "L"), **HOW),
    secondary=DRUGS,
    second_secondary=DRUGS,
    dose=st.builds(LaidOutByRate, drug=NAMES, amount=amounts("mg", "mcg", "units"), volume=amounts("mL"), **HOW),
    flush=st.builds(LaidOutSyringe, fluid=NAMES, volume=amounts("mL"), **HOW),
    gravity=st.builds(LaidOutSet, drop_factor=amounts("gtt/mL")),
    found=st.dictionaries(THINGS, PHRASES, max_size=4),
    happens=st.lists(HAPPENINGS, max_size=3, unique_by=lambda one: (one.at, one.thing)).map(tuple),
    on_purpose=st.lists(st.sampled_from(("allergy", "limits", "pair")), unique=True).map(tuple),
)


@settings(max_examples=50, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(bench=BENCHES)
def test_a_bench_is_loaded_as_it_was_written(tmp_path: Path, bench: LaidOut) -> None:
    """Nothing of it is lost, added or moved; the truth is the same, and can always be worked out."""
    order = load_order(str(EVERYTHING)).model_copy(update={"laid_out": bench})
    path = tmp_path / "everything.toml"
    path.write_text(text_of(order), encoding="utf-8")
    again = load_order(str(path))
    assert again.laid_out == bench
    assert again.model_copy(update={"digest": order.digest}) == order
    truth = truth_of(again, table())
    assert truth == truth_of(order, table())
    assert len({fault.key for fault in truth.faults}) == len(truth.faults)
