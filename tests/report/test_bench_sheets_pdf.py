"""The sheets for the bench as they are printed: their text read back by poppler, their letters measured by pikepdf."""

import functools
import io
import itertools
import re
import subprocess
from datetime import date

import pikepdf
import pytest

from assistant.dosing.amount import show, show_number
from assistant.orders.laid_out import LABELS
from assistant.orders.model import ILLEGIBLE
from assistant.orders.plausible import table
from assistant.orders.sheet import in_words, value_of
from assistant.orders.solve import answer_key
from assistant.orders.truth import truth_of
from assistant.report.bench_labels import another_patient, band_of, labels_of
from assistant.report.bench_sheets import instructors_sheet, labels_page, learners_pages
from assistant.report.bench_sheets_pdf import Sheets, sheets_pdf
from assistant.report.paper import Size
from assistant.spoken import ENGLISH
from tests.orders.many import KINDS
from tests.report.benches import busy, drawn, every_bench, long_names
from tests.report.marked import MARKED, leaves, not_data

WORDS = ENGLISH.report
BOTH = ("primary", "secondary")
TODAY = date(2026, 11, 28)
LEAST_PT = 12
"""Clear print has 12 points or more (RNIB and UKAAF clear print guidance, from memory)."""
CLASS = 40


@functools.cache
def document(kind: Sheets, size: Size = Size.A4) -> bytes:
    """All benches in one document; on the other paper, which is wider and lower, every third one."""
    return sheets_pdf(kind, every_bench()[:: 1 if size is Size.A4 else 3], WORDS, TODAY, size)


@functools.cache
def printed(kind: Sheets) -> tuple[str, ...]:
    """The text of each of its pages."""
    return pages(document(kind))


def pages(pdf: bytes) -> tuple[str, ...]:
    """The text of each page, its blanks made single and its invisible letters left out."""
    done = subprocess.run(["pdftotext", "-raw", "-", "-"], input=pdf, capture_output=True, check=True)
    text = done.stdout.decode().replace("\u200b", "").removesuffix("\f")
    return tuple(" ".join(page.split()) for page in text.split("\f"))


def by_order(kind: Sheets) -> list[str]:
    """The text of each order's pages, without their feet: a page whose count begins again is another order's."""
    found: list[str] = []
    for page in printed(kind):
        text, _, foot = page.rpartition("Training only. People,")
        if re.search(r" 1 of \d+$", foot):
            found.append("")
        found[-1] += text
    return found if len(found) == len(every_bench()) else found[1:]


def stands(text: str, number: str) -> bool:
    """Whether a number stands there by itself, not inside a longer one."""
    return re.search(rf"(?<![\d.,]){re.escape(number)}(?![\d]|[.,]\d)", text) is not None


# The learner's pages.


def test_nothing_of_the_truth_is_on_a_learners_page():
    """In every bench with every kind of fault: no answer, no state, no word of faults, no label that differs."""
    looked = {"numbers": 0, "states": 0, "labels": 0}
    for order, text in zip(every_bench(), by_order(Sheets.LEARNERS), strict=True):
        stated = order.sentence()
        assert re.search(r"fault|wrong|expired|planted|laid out|cannot be read", text, re.IGNORECASE) is None
        assert not order.teaching or order.teaching not in text
        assert order.title not in text
        for entry in answer_key(order).values():
            if isinstance(entry.value, str) or stands(stated, show_number(entry.value)):
                continue
            looked["numbers"] += 1
            assert not stands(text, show_number(entry.value)), (order.code, entry.name, entry.value)
        for fault in truth_of(order, table()).faults:
            if not fault.container or fault.fact.endswith(".bag"):
                looked["states"] += 1
                assert re.search(rf"\b{re.escape(str(fault.state))}\b", text) is None, (order.code, fault)
            elif (says := fault.state if isinstance(fault.state, str) else show(fault.state)) not in stated:
                looked["labels"] += 1
                assert says not in text, (order.code, fault)
        other = another_patient(order)
        assert other.name not in text
        assert other.number not in text
        for label in labels_of(order, WORDS, TODAY):
            assert not label.use_by or label.use_by not in text or label.use_by in stated
    assert min(looked.values()) > 20, looked


def test_a_speed_that_cannot_be_read_is_not_there():
    """Neither to the eye nor to a program that reads the text."""
    count = 0
    for order, text in zip(every_bench(), by_order(Sheets.LEARNERS), strict=True):
        for part in order.illegible:
            hidden = order.dose.ordered if part == "dose" else (o := getattr(order, part)).over or o.rate
            others = order.sentence()
            if show(hidden) not in others:
                count += 1
                assert show(hidden) not in text
    assert count > 5


def test_the_learner_gets_all_of_the_order():
    """Patient, allergies, weight, and each line with everything that can be read."""
    for order, text in zip(every_bench(), by_order(Sheets.LEARNERS), strict=True):
        wanted = learners_pages(order, WORDS)
        head = wanted.about
        assert text.count(f"Allergies: {head.allergies} Weight: {head.weight}") == 2  # on the order and on the chart
        assert text.count(f"{head.name} Born {head.born} Number {head.number}") == 2
        for line in wanted.lines:
            for piece in (f"{line.kind} {line.what}", *line.how):
                if piece == ILLEGIBLE:
                    continue
                assert piece.strip(", ") in text, (order.code, piece)
        assert f"Ordered by {order.ordered_by}" in text


# Labels.


def test_every_label_says_what_is_laid_out():
    """Name, amounts and date as laid out, on the labels of each order; nothing says that something is not right."""
    for order, text in zip(every_bench(), by_order(Sheets.LABELS), strict=True):
        for label in labels_of(order, WORDS, TODAY):
            said = " ".join((label.kind, order.code, label.name, *label.amounts))
            said += f" Use by {label.use_by}" if label.use_by else ""
            assert f"{said} For training only. Not for human use." in text, (order.code, label)
        band = band_of(order, WORDS)
        assert f"{band.name} {order.code} Born {band.born} Number {band.number} Allergies: {band.allergies}" in text
        assert re.search(r"fault|wrong|cloudy|leaking|another|planted", text, re.IGNORECASE) is None
        assert not order.teaching or order.teaching not in text


def test_what_is_not_laid_out_is_on_no_label():
    """Where another bag hangs, no label bears what is ordered."""
    count = 0
    for order, text in zip(every_bench(), by_order(Sheets.LABELS), strict=True):
        said = {str(value) for value in order.labels().values()}
        for part in LABELS:
            for field in ("drug", "fluid"):
                ordered = getattr(getattr(order, part), field, "")
                if ordered and not any(ordered in one for one in said):
                    count += 1
                    assert ordered not in text, (order.code, ordered)
    assert count > 5


# The instructor's sheet.


def test_the_instructor_gets_everything():
    """Each fault with its number, each value of the key with its unit, what is said and when, what it teaches."""
    for order, text in zip(every_bench(), by_order(Sheets.INSTRUCTOR), strict=True):
        text = text.replace("- ", "-")  # a line may end after a hyphen
        for number, fault in enumerate(truth_of(order, table()).faults, 1):
            assert f"Fault {number} {fault.what}" in text
            assert f"Would reach the patient: {fault.reaches}" in text
            assert fault.say in text
        for entry in answer_key(order).values():
            assert f"{in_words(entry.name)} {value_of(entry)}" in text
        assert order.teaching in text


# All three.


@pytest.mark.parametrize("kind", Sheets)
def test_a_dropped_pile_can_be_sorted(kind):
    """Every page has its order's code, which document it is of, which of how many it is, and the caution."""
    name = {"instructor": "Instructor\u2019s sheet", "labels": "Labels", "learners": "Learner\u2019s pages"}[kind]
    codes = [order.code for order in every_bench()]
    at, before = -1, (0, 0)
    if kind is Sheets.INSTRUCTOR:
        codes.insert(0, f"{codes[0]} to {codes[-1]}")
    for page in printed(kind):
        assert "Training only. People, orders and lab are invented" in page
        assert "no advice for treatment. Local policy comes first." in page
        foot = re.search(rf"(\S+(?: to \S+)?) {name} (\d+) of (\d+)$", page)
        assert foot, page
        number, of = int(foot[2]), int(foot[3])
        at += number == 1
        assert (foot[1].removeprefix("first. "), number) == (codes[at], 1 if number == 1 else before[0] + 1)
        assert number > 1 or before[0] == before[1]
        before = (number, of)
    assert (at, before[0]) == (len(codes) - 1, before[1])


@pytest.mark.parametrize("size", Size)
@pytest.mark.parametrize("kind", Sheets)
def test_no_letter_is_small(kind, size):
    """12 points at the least, and the running text in 16."""
    with pikepdf.open(io.BytesIO(sheets_pdf(kind, [busy()], WORDS, TODAY, size))) as pdf:
        sizes = {
            float(one.operands[1])
            for page in pdf.pages
            for one in pikepdf.parse_content_stream(page)
            if str(one.operator) == "Tf"
        }
        matrices = {
            tuple(abs(float(scale)) for scale in one.operands[:4])
            for page in pdf.pages
            for one in pikepdf.parse_content_stream(page)
            if str(one.operator) == "Tm"
        }
    assert min(sizes) >= LEAST_PT
    assert kind is Sheets.LABELS or 16 in sizes
    assert matrices <= {(1, 0, 0, 1)}  # a size is what it says: no text is scaled


def boxes(pdf: bytes):
    """Of each page its width and height in points, and left, top, right and bottom of each of its words."""
    done = subprocess.run(["pdftotext", "-bbox", "-", "-"], input=pdf, capture_output=True, check=True)
    for page in done.stdout.decode().split("<page ")[1:]:
        width, height = (float(edge) for edge in re.findall(r'(?:width|height)="([\d.]+)"', page)[:2])
        found = re.findall(r'xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)"', page)
        yield width, height, [tuple(map(float, box)) for box in found]


@pytest.mark.parametrize("kind", Sheets)
@pytest.mark.parametrize("size", Size)
def test_nothing_is_cut(kind, size):
    """Every word of every bench lies inside its page, 5 mm from its edges or more, at its sides 12 mm."""
    words = 0
    for width, height, found in boxes(document(kind, size)):
        for left, top, right, bottom in found:
            words += 1
            assert 34 <= left <= right <= width - 34
            assert 14 <= top <= bottom <= height - 14
    assert words > 1000


@pytest.mark.parametrize("kind", Sheets)
@pytest.mark.parametrize("size", Size)
@pytest.mark.parametrize("large_print", [False, True])
def test_nothing_overlaps(kind, size, large_print):
    """No word covers another one, on full sheets and where every name is as long as an order may have it."""
    orders = [every_bench()[-2], busy(), long_names()]
    for _, _, found in boxes(sheets_pdf(kind, orders, WORDS, TODAY, size, large_print=large_print)):
        # The upper and lower fifth of a line's box are room for accents: lines share it.
        inner = [(left, top + 0.2 * (low - top), right, low - 0.2 * (low - top)) for left, top, right, low in found]
        for one, other in itertools.combinations(inner, 2):
            wide = min(one[2], other[2]) - max(one[0], other[0])
            high = min(one[3], other[3]) - max(one[1], other[1])
            assert wide <= 0.5 or high <= 0.5, (one, other)


@pytest.mark.parametrize("count", [1, 2, 3])
def test_one_document_for_one_and_for_many(count):
    """One order needs no list of all; any number of labels is placed."""
    orders = drawn("wrong-bag", BOTH)[:count]
    for kind in Sheets:
        found = pages(sheets_pdf(kind, orders, WORDS, TODAY))
        assert ("All orders" in found[0]) is (count > 1 and kind is Sheets.INSTRUCTOR)


@pytest.mark.parametrize("size", Size)
@pytest.mark.parametrize("parts", KINDS)
def test_a_drawn_order_takes_two_sheets_of_the_learners(parts, size):
    """The order on one page and the chart on the other, to be printed back to back; its labels are on one page."""
    orders = drawn("wrong-bag", parts)
    assert len(pages(sheets_pdf(Sheets.LEARNERS, orders, WORDS, TODAY, size))) == 2 * len(orders)
    assert len(pages(sheets_pdf(Sheets.LABELS, orders, WORDS, TODAY, size))) == len(orders)


def test_a_class_of_forty():
    """A page of labels and two of the learner's for each, in one call."""
    orders = drawn("wrong-bag", BOTH, CLASS)
    assert len(pages(sheets_pdf(Sheets.LABELS, orders, WORDS, TODAY))) == CLASS
    assert len(pages(sheets_pdf(Sheets.LEARNERS, orders, WORDS, TODAY))) == 2 * CLASS
    whole = pages(sheets_pdf(Sheets.INSTRUCTOR, orders, WORDS, TODAY))
    assert all(any(order.code in page for page in whole[:4]) for order in orders)


def test_the_same_order_is_the_same_file():
    """Byte for byte."""
    for kind in Sheets:
        assert sheets_pdf(kind, [busy()], WORDS, TODAY) == sheets_pdf(kind, [busy()], WORDS, TODAY)


@pytest.mark.parametrize("kind", Sheets)
def test_every_text_comes_from_the_language(kind):
    """What is neither marked as the language's nor stands in the order, its labels or its key is in the templates."""
    order = busy()
    data = {*order.sentences(), *leaves(order.model_dump(mode="json")), *leaves(_content(order))}
    text = " ".join(pages(sheets_pdf(kind, [order], MARKED, TODAY)))
    assert not_data(text, data) == ""


def _content(order):
    """All that the plain sheets say in words of the rooms below."""
    return [
        instructors_sheet(order, WORDS, TODAY).model_dump(mode="json"),
        labels_page(order, WORDS, TODAY).model_dump(mode="json"),
        learners_pages(order, WORDS).model_dump(mode="json"),
    ]
