"""Orders from files: what loads, what each broken file is told, how an order is worded."""

import re
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.dosing import Amount, show
from assistant.errors import OrderError
from assistant.orders.fault import container_of
from assistant.orders.load import available_orders, load_order
from assistant.orders.plausible import table
from assistant.orders.solve import answer_key
from assistant.orders.truth import truth_of
from tests.orders.papers import GOOD, changed, written


def test_a_good_file_gives_the_whole_order(tmp_path: Path) -> None:
    """Nothing that is written is lost or changed."""
    order = load_order(written(tmp_path))
    assert order.name == "bag"
    assert order.patient.born == date(1990, 2, 28)
    assert order.primary is not None
    assert order.primary.bag_volume == Amount(Decimal(1000), "mL")
    assert order.primary.over == Amount(Decimal(12), "h")
    assert order.secondary is not None
    assert order.secondary.reserve == Amount(Decimal(0), "mL")
    assert order.labels()["primary.fluid"] == "lactated Ringer's solution"


BROKEN = [
    ('title = "A bag"\n', "", 1, '"title" is missing', "Add title"),
    ("[patient]", "[pateint]", 5, '"pateint" is not a field here', 'Did you mean "patient"?'),
    ("born = 1990-02-28", 'born = "yesterday"', 7, '"born" must be a date', "1961-03-14"),
    ("born = 1990-02-28", "born = 1990-02-30", 7, "this is not TOML", "Compare the line"),
    ('number = "00-0001"', "number = 1", 8, '"number" must be a text', "quotation marks"),
    ('allergies = ["latex"]', 'allergies = "latex"', 9, '"allergies" must be a list', "square brackets"),
    ('bag_volume = "1,000 mL"', 'bag_volume = "1,000"', 13, "came without a unit", "Write the unit"),
    ('bag_volume = "1,000 mL"', "bag_volume = 1000", 13, "a number with its unit", "mL"),
    ('bag_volume = "1,000 mL"', 'bag_volume = "1.000,5 mL"', 13, "Expected a number", "digits"),
    ('bag_volume = "1,000 mL"', 'bag_volume = "1,000 mg"', 13, "is a mass where a volume belongs", "mL"),
    ('bag_volume = "1,000 mL"', 'bag_volume = "0 mL"', 13, "is too little", "above zero"),
    ('bag_volume = "1,000 mL"', 'bag_volume = "1,000 cc"', 13, "easily misread", 'Write "mL"'),
    ('over = "12 h"', 'over = "12 mL"', 14, "is a volume where a duration belongs", "min or h"),
    ('over = "12 h"\n', "", 11, "either over or rate", "Write one of them"),
    ('over = "12 h"', 'over = "12 h"\nrate = "75 mL/h"', 11, "either over or rate", "Write one of them"),
    ('over = "12 h"', 'over = "12 h"\nspeed = "75 mL/h"', 15, '"speed" is not a field here', "Known are: over"),
    ('over = "12 h"', 'over = "12 h"\nvolume = "960 mL"', 11, "does not hold", "Give less volume"),
    ('reserve = "50 mL"', 'reserve = "1,000 mL"', 11, "as large as the bag", "smaller reserve"),
    ('reserve = "50 mL"', 'reserve = "-5 mL"', 15, "is too little", "above zero"),
    ('dose = "20 mg"', 'dose = "20 mL"', 19, "is a volume where a dose belongs", "mg"),
    ('frequency = "every 12 hours"\n', "", 17, '"frequency" is missing', "Add frequency"),
    ("[patient]", "[laid_out.primary]\ncolour = 4\n[patient]", 6, '"colour" is not a field here', "Known are: expires"),
    ("[patient]", "[laid_out.tea]\nmilk = 4\n[patient]", 5, '"tea" is not a field here', "Known are: primary"),
    ("[patient]", "[laid_out.primary]\nfluid = 4\n[patient]", 6, '"fluid" must be a text', "quotation marks"),
    ("[patient]", '[laid_out.primary]\nstate = "torn"\n[patient]', 6, '"torn" is no state', "'cloudy', 'leaking'"),
    ("[patient]", '[laid_out.flush]\nvolume = "3 mg"\n[patient]', 6, "is a mass where a volume belongs", "mL"),
    ("[patient]", '[laid_out]\non_purpose = ["tea"]\n[patient]', 6, '"tea" is no on_purpose', "'allergy', 'limits'"),
    ("[patient]", '[laid_out.found]\nSite = "red"\n[patient]', 6, '"Site" makes no name', "small letters"),
    ("[patient]", '[laid_out.found]\nsite = ""\n[patient]', 6, '"site" is empty', "what it should say"),
    (
        "[patient]",
        '[[laid_out.happens]]\nat = "a"\nthing = "site"\nstate = "red"\n'
        '[[laid_out.happens]]\nat = "B"\nthing = "site"\nstate = "red"\n[patient]',
        10,
        '"B" makes no at',
        "small letters",
    ),
    ("[patient]", '[[laid_out.happens]]\nat = "a"\nthing = "site"\n[patient]', 5, '"state" is missing', "Add state"),
    ('code = "T-1"', 'code = "T-1"\nrounding = "roughly"', 3, "is not a rounding rule", "whole"),
    ('code = "T-1"', 'code = "T-1"\ndigest = "abc"', 3, "is not written in the file", "Take the line out"),
    ('code = "T-1"', 'code = "T\\u0007"', 2, "control character", "Take it out"),
]


@pytest.mark.parametrize(("old", "new", "line", "says", "remedy"), BROKEN)
def test_a_broken_order_is_told_where_and_what_to_do(
    tmp_path: Path, old: str, new: str, line: int, says: str, remedy: str
) -> None:
    """Every fault is named with the file and its line, in one sentence, with a remedy."""
    path = written(tmp_path, changed(old, new))
    with pytest.raises(OrderError) as caught:
        load_order(path)
    assert re.match(rf"{re.escape(path)}, line {line}\b", caught.value.what), caught.value.what
    assert says in caught.value.what
    assert remedy in caught.value.remedy
    assert "\n" not in str(caught.value)


HEAD = GOOD.split("[primary]")[0]
PRIMARY = "[primary]" + GOOD.split("[primary]")[1].split("[secondary]")[0]
SECONDARY = "[secondary]" + GOOD.split("[secondary]")[1]
DOSE = '[dose]\ndrug = "dopamine"\nordered = "5 mcg/kg/min"\namount = "400 mg"\nvolume = "250 mL"\n'
NEITHER = ('"primary": An infusion has either over or rate.', 'Write one of them: over = "12 h" or rate = "75 mL/h".')
TOO_SMALL = (
    '"primary": The bag of 1,000 mL does not hold what is to be infused and kept back.',
    "Give less volume, a smaller reserve or a larger bag.",
)
FULL = "The reserve is as large as the bag."
SMALLER = "Give a smaller reserve."
BAG = 'bag_volume = "1,000 mL"'
TWELVE = 'over = "12 h"'
WHOLE = [
    # the file, line, what is wrong, what to do
    (HEAD, 1, "The order orders nothing.", "Add [primary], [secondary], [dose], [push] or [flush]."),
    *(
        (
            f"{HEAD}{SECONDARY}[{part}]\n{line}",
            1,
            f"[{part}] needs a primary.",
            f"Add [primary], or take [{part}] out.",
        )
        for part, line in (("gravity", 'drop_factor = "15 gtt/mL"'), ("running", 'since = "2 h"'))
    ),
    *(
        (
            f"{HEAD}{rest}[laid_out.{part}]\n{line}",
            1,
            f"[laid_out.{part}] is there, but the order has no {part}.",
            f"Add [{part}], or take [laid_out.{part}] out.",
        )
        for part, rest, line in (
            ("primary", SECONDARY, 'fluid = "tea"'),
            ("primary", SECONDARY, 'bag_volume = "1 L"'),
            ("primary", SECONDARY, "expires = 2026-01-01"),
            ("secondary", PRIMARY, 'drug = "tea"'),
            ("secondary", PRIMARY, 'dose = "1 g"'),
            ("secondary", PRIMARY, "expires = 2026-01-01"),
            ("second_secondary", PRIMARY + SECONDARY, 'state = "cloudy"'),
            ("dose", PRIMARY, 'amount = "1 g"'),
            ("flush", PRIMARY, 'volume = "1 mL"'),
            ("gravity", PRIMARY, 'drop_factor = "15 gtt/mL"'),
        )
    ),
    (
        f"{HEAD}{PRIMARY}" + '[[laid_out.happens]]\nat = "a"\nthing = "site"\nstate = "red"\n' * 2,
        17,
        '"laid_out": Two things happen to the site at the step a.',
        "Leave one of them out.",
    ),
    (
        HEAD + PRIMARY + SECONDARY.replace("[secondary]", "[second_secondary]"),
        1,
        "A second secondary needs a first one.",
        "Write it as [secondary].",
    ),
    (HEAD + DOSE, 1, "The dose is ordered by weight, but the patient has none.", 'Add weight = "70 kg".'),
    *(
        (
            f'illegible = ["{part}"]\n{HEAD}{rest}',
            1,
            f"There is no {part} that could be illegible.",
            "Take it out of illegible.",
        )
        for part, rest in (("secondary", PRIMARY), ("dose", PRIMARY), ("primary", SECONDARY))
    ),
    (changed('reserve = "50 mL"', 'reserve = "1,000 mL"'), 11, f'"primary": {FULL}', SMALLER),
    (changed('volume = "50 mL"', 'volume = "50 mL"\nreserve = "50 mL"'), 17, f'"secondary": {FULL}', SMALLER),
    (changed(TWELVE, f'{TWELVE}\nvolume = "951 mL"'), 11, *TOO_SMALL),
    (changed(f"{TWELVE}\n", ""), 11, *NEITHER),
    (changed(TWELVE, f'{TWELVE}\nrate = "75 mL/h"'), 11, *NEITHER),
    (
        changed(BAG, "bag_volume = 3"),
        13,
        '"bag_volume": An amount is a number with its unit.',
        'Write it like "20 mL".',
    ),
    (changed(BAG, 'bag_volume = "0 mL"'), 13, '"bag_volume": 0 mL is too little.', "Write an amount above zero."),
    (HEAD + DOSE.replace("5 m", "-5 m"), 13, '"ordered": -5 mcg/kg/min is too little.', "Write an amount above zero."),
    *(
        (text, line, f'"{field}": {shown} is a {kind} where a {wanted} belongs.', f"Use a unit such as {unit}.")
        for text, line, field, shown, kind, wanted, unit in (
            (changed(BAG, 'bag_volume = "3 mg"'), 13, "bag_volume", "3 mg", "mass", "volume", "mL"),
            (changed('dose = "20 mg"', 'dose = "3 mL"'), 19, "dose", "3 mL", "volume", "dose", "mg or units"),
            (changed(TWELVE, 'rate = "3 mL"'), 14, "rate", "3 mL", "volume", "rate", "mL/h"),
            (changed(TWELVE, 'over = "3 mL"'), 14, "over", "3 mL", "volume", "duration", "min or h"),
            (
                *(HEAD + DOSE.replace("5 mcg/kg/min", "3 mL"), 13),
                *("ordered", "3 mL", "volume", "dose rate", "mg/h or units/h"),
            ),
            (
                *(f'{HEAD}{PRIMARY}[gravity]\ndrop_factor = "3 mL"', 18),
                *("drop_factor", "3 mL", "volume", "drop factor", "gtt/mL"),
            ),
            (
                *(changed('number = "00-0001"', 'number = "00-0001"\nweight = "3 mL"'), 9),
                *("weight", "3 mL", "volume", "mass", "kg"),
            ),
        )
    ),
    *(
        (
            changed('code = "T-1"', f'code = "T-1"\nrounding = {rule}'),
            3,
            f'"rounding": "{shown}" is not a rounding rule.',
            "Use exact, whole, tenth, hundredth, thousandth or 10 mL syringe; with up or down.",
        )
        for rule, shown in (('"roughly"', "roughly"), ("7", "7"))
    ),
]


@pytest.mark.parametrize(("text", "line", "what", "remedy"), WHOLE)
def test_what_does_not_hold_together_is_told_in_full(
    tmp_path: Path, text: str, line: int, what: str, remedy: str
) -> None:
    """The whole sentence and the whole remedy, as an author reads them."""
    path = written(tmp_path, text)
    with pytest.raises(OrderError) as caught:
        load_order(path)
    assert (caught.value.what, caught.value.remedy) == (f"{path}, line {line}: {what}", remedy)


def test_what_just_holds_together_is_taken(tmp_path: Path) -> None:
    """A bag that holds exactly what is infused and kept back; another drug where only a dose is ordered."""
    full = load_order(written(tmp_path, changed(TWELVE, f'{TWELVE}\nvolume = "950 mL"')))
    assert full.primary is not None and full.primary.volume == Amount(Decimal(950), "mL")
    weighed = HEAD.replace("number =", 'weight = "70 kg"\nnumber =') + DOSE
    laid_out = '[laid_out.dose]\ndrug = "tea"\n'
    assert load_order(written(tmp_path, weighed + laid_out)).labels()["dose.drug"] == "tea"
    by_time = weighed.replace('weight = "70 kg"\n', "").replace("/kg", "")
    assert load_order(written(tmp_path, by_time)).patient.weight is None


def test_an_unknown_name_gets_the_nearest_ones() -> None:
    """A misspelt order is answered with the names that are near."""
    with pytest.raises(OrderError, match=r'There is no order called "oh-1O1"\. Did you mean "oh-1'):
        load_order("oh-1O1")


def test_the_users_folder_comes_first(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """An order of the user is found by name, in the folder orders below the user's own."""
    monkeypatch.setenv("CHECKOFF_CHECKLISTS", str(tmp_path))
    (tmp_path / "orders").mkdir()
    written(tmp_path / "orders", name="oh-101")
    assert load_order("oh-101").code == "T-1"
    assert load_order("oh-102").code == "OH-102"


def test_the_order_in_sentences(tmp_path: Path) -> None:
    """The order is told as it is written: patient, allergies, what, how much, how fast, by whom."""
    assert load_order(written(tmp_path)).sentences() == (
        "Order T-1 for Wilhelmina Test, born 28 February 1990, number 00-0001.",
        "Allergies: latex.",
        "Primary: lactated Ringer's solution, 1,000 mL over 12 h, intravenous, continuous. Reserve 50 mL.",
        "Secondary: famotidine 20 mg in 50 mL over 20 min, intravenous, every 12 hours.",
        "Ordered by Dr Nobody (fictional), signed.",
    )


def test_weight_part_volume_and_rate_are_told_too(tmp_path: Path) -> None:
    """What is optional is told where it is written."""
    text = changed('over = "12 h"', 'rate = "62.5 mL/h"\nvolume = "500 mL"').replace(
        'number = "00-0001"', 'number = "00-0001"\nweight = "70.5 kg"'
    )
    sentence = load_order(written(tmp_path, text)).sentence()
    assert "Allergies: latex. Weight 70.5 kg." in sentence
    assert "500 mL from a bag of 1,000 mL at 62.5 mL/h" in sentence


@pytest.mark.parametrize("name", list(available_orders()))
def test_no_order_tells_a_computed_answer(name: str) -> None:
    """Asking for the order gives what it states, never a number that the learner has to work out."""
    order = load_order(name)
    stated = order.sentence()
    for entry in answer_key(order).values():
        if entry.formula:
            assert not re.search(rf"(?<![\d.,]){entry.value:,f} {re.escape(entry.unit or '')}\b", stated), entry


@pytest.mark.parametrize("name", list(available_orders()))
def test_the_wrong_label_is_not_told(name: str) -> None:
    """What is laid out wrongly on purpose, and what the order teaches, is not in what the learner hears."""
    order = load_order(name)
    assert order.teaching
    assert order.teaching not in order.sentence()
    for fault in truth_of(order, table()).faults:
        assert fault.what not in order.sentence() and fault.reaches not in order.sentence()
        if container_of(fault.fact):
            state = fault.state if isinstance(fault.state, str) else show(fault.state)
            assert state not in order.sentence()
            if not fault.fact.endswith(".bag"):
                assert order.labels()[fault.fact] == fault.state


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(at=st.integers(0, len(GOOD)), length=st.integers(0, 20), put=st.text(max_size=10))
def test_no_damage_escapes_the_loader(tmp_path: Path, at: int, length: int, put: str) -> None:
    """Whatever happens to a file, it loads or ends in the project's own error, in one line."""
    path = tmp_path / "damaged.toml"
    path.write_text(GOOD[:at] + put + GOOD[at + length :], encoding="utf-8", errors="surrogatepass")
    try:
        load_order(str(path))
    except OrderError as error:
        assert "\n" not in str(error)
