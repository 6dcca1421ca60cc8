"""The parts of an order beside primary and secondary: gravity, dose rate, flush, a running line, faults on paper."""

from decimal import Decimal
from pathlib import Path

import pytest

from assistant.errors import OrderError
from assistant.orders.load import load_order
from assistant.orders.solve import answer_key
from tests.orders.papers import GOOD, written

HEAD = GOOD.split("[primary]")[0]
PRIMARY = "[primary]\n" + GOOD.split("[primary]\n")[1].split("[secondary]")[0]
SECONDARY = "[secondary]\n" + GOOD.split("[secondary]\n")[1]
WEIGHED = HEAD + 'weight = "{weight}"\n\n[dose]\ndrug = "{drug}"\nordered = "{ordered}"\n'


def keyed(folder: Path, text: str) -> dict[str, str]:
    """The key of an order with this text: names, and values with their units."""
    key = answer_key(load_order(written(folder, text)))
    return {name: f"{entry.value} {entry.unit}" if entry.unit else str(entry.value) for name, entry in key.items()}


def test_gravity_drops(tmp_path: Path) -> None:
    """Open RN, Nursing Skills, section 5.14: mL/h x drops/mL / 60; a count of 15 s is a quarter, in whole drops."""
    text = HEAD + '[primary]\nfluid = "5 % dextrose in water"\nbag_volume = "1 L"\nover = "8 h"\n'
    key = keyed(tmp_path, text + '[gravity]\ndrop_factor = "15 gtt/mL"\n')
    assert key["gravity.drop_factor"] == "15 gtt/mL"
    assert key["gravity.drops_per_minute"] == "31 gtt/min"  # 125 x 15 / 60 = 31.25
    assert key["gravity.drops_in_15_seconds"] == "8 gtt"  # 7.8125
    assert key["gravity.drops_in_30_seconds"] == "16 gtt"  # 15.625


def test_by_weight(tmp_path: Path) -> None:
    """FDA label text, dopamine: 5 mcg/kg/min, 1,600 mcg/mL; 70 kg x 5 x 60 / 1,600 = 13.125 mL/h."""
    text = WEIGHED.format(weight="70 kg", drug="dopamine", ordered="5 mcg/kg/min")
    key = keyed(tmp_path, text + 'amount = "400 mg"\nvolume = "250 mL"\nreserve = "10 mL"\n')
    assert key["patient.weight"] == "70 kg"
    assert key["dose.ordered"] == "5 mcg/kg/min"
    assert key["dose.amount"] == "400 mg"
    assert key["dose.concentration"] == "1.6 mg/mL"
    assert key["dose.hourly"] == "21 mg/h"
    assert key["dose.rate"] == "13.1 mL/h"
    assert key["dose.vtbi"] == "240 mL"
    assert key["dose.duration"] == "1099 min"  # 240 / 13.1 h


def test_units_by_weight_in_pounds(tmp_path: Path) -> None:
    """18 units/kg/h (common teaching example, no source) at 25,000 units in 500 mL, 154 lb = 69.85 kg.

    The rate follows from the 69.9 kg that were agreed on: 18 x 69.9 = 1,258.2 units/h, at 50 units/mL 25.164 mL/h.
    """
    text = WEIGHED.format(weight="154 lb", drug="heparin", ordered="18 units/kg/h")
    key = keyed(tmp_path, text + 'amount = "25,000 units"\nvolume = "500 mL"\n')
    assert key["patient.weight"] == "69.9 kg"
    assert key["dose.concentration"] == "50 units/mL"
    assert key["dose.rate"] == "25.2 mL/h"
    assert key["dose.hourly"] == "1258.2 units/h"


def test_a_weight_in_pounds_is_rounded_once_and_used_on(tmp_path: Path) -> None:
    """102 lb is 46.3 kg; 10 mcg/kg/min of 1.6 mg/mL is then 17.3625 mL/h, where 46.2664 kg would give 17.3."""
    text = WEIGHED.format(weight="102 lb", drug="dopamine", ordered="10 mcg/kg/min")
    key = keyed(tmp_path, text + 'amount = "400 mg"\nvolume = "250 mL"\n')
    assert (key["patient.weight"], key["dose.rate"]) == ("46.3 kg", "17.4 mL/h")


def test_every_number_of_a_key_can_be_said(tmp_path: Path) -> None:
    """500 mg in 300 mL is 1.67 mg/mL, and what follows from it follows from that."""
    text = WEIGHED.format(weight="72 kg", drug="dopamine", ordered="5 mcg/kg/min")
    key = keyed(tmp_path, text + 'amount = "500 mg"\nvolume = "300 mL"\n')
    assert (key["dose.concentration"], key["dose.hourly"], key["dose.rate"]) == ("1.67 mg/mL", "21.6 mg/h", "12.9 mL/h")
    text = WEIGHED.format(weight="154 lb", drug="dopamine", ordered="7 mcg/kg/min")
    hourly = keyed(tmp_path, text + 'amount = "400 mg"\nvolume = "250 mL"\n')["dose.hourly"]
    assert hourly == "29.358 mg/h"


def test_a_dose_rate_without_weight(tmp_path: Path) -> None:
    """10 mg/h at 1 mg/mL is 10 mL/h; no weight is asked for."""
    text = HEAD + '[dose]\ndrug = "diltiazem"\nordered = "10 mg/h"\namount = "125 mg"\nvolume = "125 mL"\n'
    key = keyed(tmp_path, text)
    assert key["dose.rate"] == "10 mL/h"
    assert key["dose.hourly"] == "10 mg/h"
    assert "patient.weight" not in key


def test_through_a_saline_lock(tmp_path: Path) -> None:
    """An intermittent infusion by itself keeps the names of a secondary, and says that it is one by itself."""
    path = written(tmp_path, HEAD + SECONDARY + '[flush]\nvolume = "10 mL"\n')
    order = load_order(path)
    key = answer_key(order)
    assert [name for name in key if name.startswith("primary")] == []
    assert key["secondary.rate"].value == Decimal(150)
    assert key["flush.fluid"].value == "0.9 % sodium chloride"
    assert key["flush.volume"].value == Decimal(10)
    assert "Intermittent: famotidine 20 mg in 50 mL over 20 min" in order.sentence()
    assert "Flush: 0.9 % sodium chloride 10 mL, before and after each use." in order.sentence()
    assert set(order.labels()) >= {"secondary.drug", "flush.fluid"}


def test_a_running_line(tmp_path: Path) -> None:
    """950 mL at 83.3 mL/h for 3 h: 249.9 mL in, 700.1 mL to come, 504 min to go."""
    key = keyed(tmp_path, HEAD + PRIMARY + '[running]\nsince = "3 h"\n')
    assert (key["running.infused"], key["running.remaining"]) == ("249.9 mL", "700.1 mL")
    assert key["running.time_left"] == "504 min"


def test_a_line_that_has_run_out(tmp_path: Path) -> None:
    """What is infused never passes what was to be infused; no time is left to be asked for."""
    key = keyed(tmp_path, HEAD + PRIMARY + '[running]\nsince = "13 h"\n')
    assert (key["running.infused"], key["running.remaining"]) == ("950 mL", "0 mL")
    assert "running.time_left" not in key


def test_a_second_piggyback(tmp_path: Path) -> None:
    """A second drug through the same secondary set has names of its own."""
    second = SECONDARY.replace("[secondary]", "[second_secondary]").replace("famotidine", "cefazolin")
    order = load_order(written(tmp_path, GOOD + second.replace('"20 mg"', '"1 g"').replace("20 min", "30 min")))
    key = answer_key(order)
    assert key["secondary.drug"].value == "famotidine"
    assert key["second_secondary.drug"].value == "cefazolin"
    assert key["second_secondary.rate"].value == Decimal(100)
    assert {"famotidine", "cefazolin"} <= set(key["secondary.drug"].choices)
    assert "Then: cefazolin 1 g in 50 mL" in order.sentence()


LAID_OUT = "[laid_out.primary]\nexpires = 2026-01-31\n[laid_out.secondary]\nexpires = 2027-02-28\n"


def test_faults_on_paper_and_on_the_stand(tmp_path: Path) -> None:
    """An illegible speed and a date on a label are shown as they stand; the key still holds the number."""
    text = GOOD.replace('code = "T-1"', 'code = "T-1"\nillegible = ["secondary"]')
    order = load_order(written(tmp_path, text + LAID_OUT))
    assert "famotidine 20 mg in 50 mL over [cannot be read], intravenous" in order.sentence()
    assert "20 min" not in order.sentence()
    assert answer_key(order)["secondary.rate"].value == Decimal(150)
    assert order.labels()["primary.expires"] == "31 January 2026"
    assert order.labels()["secondary.expires"] == "28 February 2027"


REFUSED = [
    (HEAD, "The order orders nothing"),
    (HEAD + SECONDARY + '[gravity]\ndrop_factor = "20 gtt/mL"\n', "gravity] needs a primary"),
    (HEAD + SECONDARY + '[running]\nsince = "1 h"\n', "running] needs a primary"),
    (HEAD + SECONDARY + '[laid_out.primary]\nfluid = "5 % dextrose in water"\n', "the order has no primary"),
    (HEAD + PRIMARY + SECONDARY.replace("[sec", "[second_sec"), "needs a first one"),
    (HEAD + '[dose]\ndrug = "a"\nordered = "5 mcg/kg/min"\namount = "1 g"\nvolume = "1 L"\n', "the patient has none"),
    (HEAD + '[dose]\ndrug = "a"\nordered = "5 mL/h"\namount = "1 g"\nvolume = "1 L"\n', "where a dose rate belongs"),
    (HEAD.replace('code = "T-1"', 'code = "T-1"\nillegible = ["dose"]') + PRIMARY, "no dose that could be illegible"),
    (HEAD + PRIMARY + '[gravity]\ndrop_factor = "20 mL"\n', "where a drop factor belongs"),
]


@pytest.mark.parametrize(("text", "says"), REFUSED)
def test_what_does_not_hold_together(tmp_path: Path, text: str, says: str) -> None:
    """A part without what it belongs to is refused with its reason."""
    with pytest.raises(OrderError, match=says):
        load_order(written(tmp_path, text))
