"""Orders of earlier versions: `[hung]` and `planted` mean what is laid out now, or are refused with what to do."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.checklist.finding import Severity
from assistant.errors import OrderError
from assistant.orders.checked import findings_of_order
from assistant.orders.load import load_order
from assistant.orders.model import Order
from assistant.orders.plausible import table
from assistant.orders.truth import truth_of
from assistant.orders.write import text_of
from tests.orders.papers import GOOD, written

HEAD = GOOD.split("[primary]")[0].replace('"00-0001"', '"00-0001"\nweight = "70 kg"')
PRIMARY = "[primary]" + GOOD.split("[primary]")[1].split("[secondary]")[0]
SECONDARY = "[secondary]" + GOOD.split("[secondary]")[1]
DOSE = """
[dose]
drug = "dopamine"
ordered = "5 mcg/kg/min"
amount = "400 mg"
volume = "250 mL"
"""
ALL = HEAD + PRIMARY + SECONDARY
DAY = "written = 2026-02-01\n"
MOVED = [
    # the parts of the order, a line of [hung], the part and the line that it is now, what it is a fault of
    (ALL, 'fluid = "5 % dextrose in water"', "primary", 'fluid = "5 % dextrose in water"', "primary.fluid"),
    (ALL, 'bag_volume = "500 mL"', "primary", 'bag_volume = "500 mL"', "primary.bag_volume"),
    (ALL, "expires = 2026-01-31", "primary", "expires = 2026-01-31", "primary.bag"),
    (ALL, 'drug = "cefazolin"', "secondary", 'drug = "cefazolin"', "secondary.drug"),
    (ALL, 'dose = "40 mg"', "secondary", 'dose = "40 mg"', "secondary.dose"),
    (ALL, "drug_expires = 2026-01-31", "secondary", "expires = 2026-01-31", "secondary.bag"),
    # Where a dose is ordered too, the small bag held the drug of the secondary.
    (ALL + DOSE, 'drug = "cefazolin"', "secondary", 'drug = "cefazolin"', "secondary.drug"),
    (HEAD + DOSE, 'drug = "dobutamine"', "dose", 'drug = "dobutamine"', "dose.drug"),
    (HEAD + DOSE, 'dose = "800 mg"', "dose", 'amount = "800 mg"', "dose.amount"),
    (HEAD + DOSE, "drug_expires = 2026-01-31", "dose", "expires = 2026-01-31", "dose.bag"),
    # A date that has not passed, and a label that says what is ordered, are no faults.
    (ALL, "expires = 2026-02-01", "primary", "expires = 2026-02-01", ""),
    (ALL, 'drug = "famotidine"', "secondary", 'drug = "famotidine"', ""),
]


def facts(order: Order) -> list[str]:
    return [fault.fact for fault in truth_of(order, table()).faults]


def alike(one: Order, other: Order) -> bool:
    """Whether two orders are the same but for the file that they came from."""
    return one == other.model_copy(update={"name": one.name, "digest": one.digest})


@pytest.mark.parametrize(("parts", "line", "part", "now", "fact"), MOVED)
def test_what_hung_is_laid_out(tmp_path: Path, parts: str, line: str, part: str, now: str, fact: str) -> None:
    """Each line of `[hung]` is the same order as its new form, has the same fault, and is written in the new form."""
    older = load_order(written(tmp_path, f"{DAY}{parts}[hung]\n{line}\n", "older"))
    newer = load_order(written(tmp_path, f"{DAY}{parts}[laid_out.{part}]\n{now}\n", "newer"))
    assert alike(older, newer)
    assert facts(older) == ([fact] if fact else [])
    assert "[hung]" not in text_of(older) and f"[laid_out.{part}]\n{now}\n" in text_of(older)
    assert alike(load_order(written(tmp_path, text_of(older), "again")), older)


CEFTRIAXONE = ALL.replace("famotidine", "ceftriaxone").replace('"20 mg"', '"1 g"').replace('"20 min"', '"30 min"')
PLANTED = [
    # planted, the rest of the old file, what it is now, its faults
    ("wrong-bag", f'{ALL}[hung]\nfluid = "5 % dextrose in water"\n', (), ["primary.fluid"]),
    ("wrong-bag", f'{ALL}[hung]\nbag_volume = "250 mL"\n', (), ["primary.bag_volume"]),
    ("wrong-concentration", f'{ALL}[hung]\ndose = "40 mg"\n', (), ["secondary.dose"]),
    ("expired-bag", f"{DAY}{ALL}[hung]\nexpires = 2027-01-01\ndrug_expires = 2026-01-31\n", (), ["secondary.bag"]),
    ("illegible-rate", f'illegible = ["primary"]\n{ALL}', (), ["primary.paper"]),
    ("allergy", ALL.replace('["latex"]', '["famotidine"]'), ("allergy",), ["secondary.allergy"]),
    ("over-limit", ALL.replace('"20 min"', '"5 min"'), ("limits",), ["secondary.limits"]),
    ("incompatible-pair", CEFTRIAXONE, ("pair",), ["secondary.pair"]),
]


@pytest.mark.parametrize(("planted", "rest", "on_purpose", "expected"), PLANTED)
def test_what_was_planted_is_there(
    tmp_path: Path, planted: str, rest: str, on_purpose: tuple[str, ...], expected: list[str]
) -> None:
    """Each word of old is a fault of the order, and on purpose where it is in the order itself; it lints as before."""
    told = 'teaching = "Planted."\nsources = ["common practice, no source"]\n'
    path = written(tmp_path, f'planted = "{planted}"\n{told}{rest}')
    order = load_order(path)
    assert facts(order) == expected
    assert order.laid_out.on_purpose == on_purpose
    findings = findings_of_order(path)
    assert findings is not None
    assert {finding.rule for finding in findings} == {"order-older"}
    assert "planted" not in text_of(order).replace("Planted", "")
    assert alike(load_order(written(tmp_path, text_of(order), "again")), order)


@pytest.mark.parametrize("planted", [planted for planted, *_ in PLANTED])
def test_what_was_planted_and_is_not_there_is_an_error(tmp_path: Path, planted: str) -> None:
    """An old file that claims a fault which it does not have loads as it always did, and the linter names it."""
    path = written(tmp_path, f'{DAY}planted = "{planted}"\n{ALL}')
    assert facts(load_order(path)) == []
    findings = findings_of_order(path)
    assert findings is not None
    (error,) = [finding for finding in findings if finding.severity is Severity.ERROR]
    assert (error.rule, error.line) == ("order-on-purpose", 2)
    assert error.what == f"planted says {planted}, but nothing of that kind is in the file."
    assert error.mend == "Put the fault into the file, or take planted out."


def refused() -> Iterator[tuple[str, int, str, str]]:
    """Files, the line that is named, what is wrong with it, what to do."""
    for line in ('fluid = "tea"', 'bag_volume = "1 L"', "expires = 2026-01-01"):
        name = line.split(" ")[0]
        what = f"{name} is on a label, but the order has no primary."
        yield f"{HEAD}{SECONDARY}[hung]\n{line}\n", 19, what, f"Add [primary], or take {name} out."
    for line in ('drug = "tea"', 'dose = "1 g"', "drug_expires = 2026-01-01"):
        name = line.split(" ")[0]
        what = f"{name} is on a label, but the order has no secondary."
        yield f"{HEAD}{PRIMARY}[hung]\n{line}\n", 19, what, f"Add [secondary], or take {name} out."
    yield (
        f"{ALL}[hung]\ncolour = 4\n",
        25,
        '"colour" is not a field here.',
        "Known are: fluid, bag_volume, drug, dose, expires, drug_expires.",
    )
    yield f"{ALL}[hung]\nfluid = 4\n", 25, '"fluid" must be a text.', "Put it in quotation marks."
    yield (
        f'{ALL}[hung]\ndose = "3 mL"\n',
        25,
        '"dose": 3 mL is a volume where a dose belongs.',
        "Use a unit such as mg or units.",
    )
    yield f'{ALL}[hung]\nexpires = "soon"\n', 25, '"expires" must be a date.', "Write it like expires = 1961-03-14."
    yield f"hung = 3\n{ALL}", 1, '"hung" must be a table.', 'Write it in braces, such as hung = { kind = "done" }.'
    yield (
        f'planted = "tea"\n{ALL}',
        1,
        '"tea" is no planted.',
        "It can be 'wrong-bag', 'expired-bag', 'wrong-concentration', 'over-limit', 'illegible-rate', 'allergy' or"
        " 'incompatible-pair'.",
    )
    yield (
        f'planted = "expired-bag"\n{ALL}[hung]\nexpires = 2026-01-01\n',
        1,
        "planted says expired-bag, but the order has no day, so nobody can tell which date has passed.",
        "Add written = 2026-11-25 (the day of the order), and the date under [hung].",
    )
    for name, text in (
        ("hung", f'{ALL}[hung]\nfluid = "tea"\n[laid_out.flush]\n'),
        ("planted", f'planted = "allergy"\n{ALL}[laid_out.flush]\n'),
    ):
        what = f"{name} is how earlier versions wrote what is laid out."
        yield text, text.split(name)[0].count("\n") + 1, what, "Write all of it under [laid_out]."


@pytest.mark.parametrize(("text", "line", "what", "remedy"), list(refused()))
def test_what_cannot_be_moved_is_refused(tmp_path: Path, text: str, line: int, what: str, remedy: str) -> None:
    """In the words of the old file and at its line, with what to do."""
    path = written(tmp_path, text)
    with pytest.raises(OrderError) as caught:
        load_order(path)
    assert (caught.value.what, caught.value.remedy) == (f"{path}, line {line}: {what}", remedy)


# Three orders as the library had them, word for word but for sources and teaching.
LIBRARY = [
    (
        """\
title = "Dextrose over ten hours, with a drug against nausea"
code = "OH-104"
ordered_by = "Dr Pascoe Lindqvane (fictional), signed"

[patient]
name = "Anselm Thornquay"
born = 1989-01-19
number = "L-41457"
allergies = ["penicillin"]

[primary]
fluid = "5 % dextrose in water"
bag_volume = "500 mL"
over = "10 h"
reserve = "25 mL"

[secondary]
drug = "ondansetron"
dose = "8 mg"
volume = "50 mL"
over = "15 min"
frequency = "every 8 hours"

[hung]
fluid = "0.9 % sodium chloride"
""",
        {"primary.fluid": "0.9 % sodium chloride"},
    ),
    (
        """\
title = "Another antibiotic through a saline lock"
code = "OH-114"
ordered_by = "Dr Pascoe Lindqvane (fictional), signed"
planted = "allergy"

[patient]
name = "Clementina Vossberg"
born = 1990-12-18
number = "L-42702"
allergies = ["penicillin"]

[secondary]
drug = "ampicillin"
dose = "1 g"
volume = "50 mL"
over = "30 min"
frequency = "every 6 hours"

[flush]
volume = "5 mL"
""",
        {"secondary.allergy": "allergic"},
    ),
    (
        """\
title = "A strong drug by weight, for a lighter patient"
code = "OH-116"
ordered_by = "Dr Pascoe Lindqvane (fictional), signed"

[patient]
name = "Wilhelmina Strand-Eckley"
born = 1962-07-21
number = "L-42946"
allergies = ["latex"]
weight = "65 kg"

[dose]
drug = "dopamine"
ordered = "4 mcg/kg/min"
amount = "400 mg"
volume = "250 mL"
reserve = "20 mL"

[hung]
drug = "dobutamine"
""",
        {"dose.drug": "dobutamine"},
    ),
]


@pytest.mark.parametrize(("text", "expected"), LIBRARY)
def test_old_orders_of_the_library(tmp_path: Path, text: str, expected: dict[str, str]) -> None:
    """They load, and have the fault that their instructors knew."""
    order = load_order(written(tmp_path, text))
    assert {fault.fact: fault.state for fault in truth_of(order, table()).faults} == expected
    assert alike(load_order(written(tmp_path, text_of(order), "again")), order)
