"""The sheets that an order is laid out by: what stands on the instructor's, on the labels and on the learner's pages.

Pure: an order in, texts out. `pdf` sets them.
"""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date

from assistant.checklist.facts import WRISTBAND
from assistant.dosing import show
from assistant.orders.fault import Fault
from assistant.orders.lines import ByDoseRate, Primary, Secondary
from assistant.orders.model import ILLEGIBLE, Order
from assistant.orders.plausible import table
from assistant.orders.reading import day_in_words
from assistant.orders.sheet import CAUTION, in_words, value_of
from assistant.orders.solve import answer_key
from assistant.orders.truth import truth_of
from assistant.report.bench_labels import Band, Label, band_of, labels_of
from assistant.report.content import Part
from assistant.spoken.language import ReportWords


class Head(Part):
    """What every page of an order says of it."""

    code: str
    heading: str
    caution: str
    name: str
    born: str
    number: str
    allergies: str
    weight: str


class Line(Part):
    """One line of an order.

    Attributes:
        kind: what kind of line it is.
        what: fluid or drug, with its amount.
        how: the rest in pieces; one that is `ILLEGIBLE` is to be ink in which nothing can be read.
    """

    kind: str
    what: str
    how: tuple[str, ...]


class LearnersPages(Part):
    """The order and the chart, as a learner gets them: nothing that follows from them, nothing of what is laid out."""

    about: Head
    lines: tuple[Line, ...]
    ordered_by: str
    written: str
    history: tuple[str, ...]


class LabelsPage(Part):
    """What is cut out and taped on."""

    about: Head
    labels: tuple[Label, ...]
    band: Band


class Place(Part):
    """One thing at the bench.

    Attributes:
        what: the thing.
        how: how it is laid out.
        faults: the numbers of its faults, in words; none where it is as ordered.
    """

    what: str
    how: tuple[str, ...]
    faults: tuple[str, ...] = ()


class FaultLine(Part):
    """A fault, what would reach the patient, and where it is so ("": from beginning to end)."""

    number: str
    what: str
    reaches: str
    at: str
    say: str


class InstructorsSheet(Part):
    """Everything, faults and answers among it."""

    about: Head
    title: str
    sentences: tuple[str, ...]
    places: tuple[Place, ...]
    faults: tuple[FaultLine, ...]
    key: tuple[tuple[str, str], ...]
    teaching: str
    sources: tuple[str, ...]


def learners_pages(order: Order, words: ReportWords) -> LearnersPages:
    """The learner's pages of an order."""
    return LearnersPages(
        about=_head(order, words),
        lines=tuple(_lines(order, words)),
        ordered_by=order.ordered_by,
        written=day_in_words(order.written) if order.written else "",
        history=(words.running_for(show(order.running.since)),) if order.running is not None else (),
    )


def labels_page(order: Order, words: ReportWords, today: date) -> LabelsPage:
    """The labels and the wristband of an order; `today` as for `labels_of`."""
    return LabelsPage(about=_head(order, words), labels=labels_of(order, words, today), band=band_of(order, words))


def instructors_sheet(order: Order, words: ReportWords, today: date) -> InstructorsSheet:
    """The instructor's sheet of an order; `today` as for `labels_of`.

    Raises:
        QuantityError: a formula refuses the order's numbers.
    """
    faults = truth_of(order, table()).faults
    return InstructorsSheet(
        about=_head(order, words),
        title=order.title,
        sentences=order.sentences(),
        places=tuple(_places(order, faults, words, today)),
        faults=tuple(
            FaultLine(number=words.fault_number(number), what=one.what, reaches=one.reaches, at=one.at, say=one.say)
            for number, one in enumerate(faults, 1)
        ),
        key=tuple((in_words(entry.name), value_of(entry)) for entry in answer_key(order).values()),
        teaching=order.teaching,
        sources=order.sources,
    )


def _head(order: Order, words: ReportWords) -> Head:
    patient = order.patient
    return Head(
        code=order.code,
        heading=words.order_named(order.code),
        caution=CAUTION,
        name=patient.name,
        born=day_in_words(patient.born),
        number=patient.number,
        allergies=", ".join(patient.allergies) or words.NONE_KNOWN,
        weight=show(patient.weight) if patient.weight is not None else words.NOT_NOTED,
    )


# The learner's pages.


def _lines(order: Order, words: ReportWords) -> Iterator[Line]:
    kinds = words.ORDER_KINDS
    if order.primary is not None:
        yield _primary(order.primary, "primary" in order.illegible, words)
    if order.gravity is not None:
        yield Line(kind=kinds["gravity"], what=words.with_a_set(show(order.gravity.drop_factor)), how=())
    if order.change is not None:
        yield Line(kind=kinds["change"], what=order.change.sentence(), how=())
    if order.secondary is not None:
        kind = "secondary" if order.primary is not None else "intermittent"
        yield _secondary(kinds[kind], order.secondary, "secondary" in order.illegible, words)
    if order.second_secondary is not None:
        yield _secondary(kinds["second_secondary"], order.second_secondary, False, words)
    if order.dose is not None:
        dose = order.dose
        pace = words.at_rate(ILLEGIBLE if "dose" in order.illegible else show(dose.ordered))
        yield Line(
            kind=kinds["dose"],
            what=f"{dose.drug} {words.held_in(show(dose.amount), show(dose.volume))}",
            how=_how(pace, dose, words),
        )
    if order.protocol is not None:
        yield Line(kind=kinds["protocol"], what=order.protocol.sentence(), how=())
    if order.syringe is not None:
        yield Line(kind=kinds["syringe"], what=words.in_a_syringe(show(order.syringe.size)), how=())
    if order.push is not None:
        push = order.push
        vial = words.from_a_vial(words.held_in(show(push.amount), show(push.volume)))
        yield Line(
            kind=kinds["push"],
            what=f"{push.drug} {show(push.dose)}, {vial}",
            how=(words.in_time(show(push.over)), push.route, push.frequency),
        )
    if order.flush is not None:
        what = f"{order.flush.fluid}, {show(order.flush.volume)}"
        yield Line(kind=kinds["flush"], what=what, how=(order.flush.frequency,))


def _primary(primary: Primary, illegible: bool, words: ReportWords) -> Line:
    bag = show(primary.bag_volume)
    volume = words.from_a_bag(show(primary.volume), bag) if primary.volume is not None else bag
    return Line(
        kind=words.ORDER_KINDS["primary"],
        what=f"{primary.fluid}, {volume}",
        how=_how(primary.speed(ILLEGIBLE if illegible else ""), primary, words),
    )


def _secondary(kind: str, secondary: Secondary, illegible: bool, words: ReportWords) -> Line:
    return Line(
        kind=kind,
        what=f"{secondary.drug} {words.held_in(show(secondary.dose), show(secondary.volume))}",
        how=_how(secondary.speed(ILLEGIBLE if illegible else ""), secondary, words),
    )


def _how(pace: str, given: Primary | Secondary | ByDoseRate, words: ReportWords) -> tuple[str, ...]:
    kept = (words.kept_back(show(given.reserve)),) if given.reserve.value else ()
    before, scrawled, after = ", ".join((pace, given.route, given.frequency, *kept)).partition(ILLEGIBLE)
    return tuple(one for one in (before, scrawled, after) if one)


# The instructor's sheet.


def _places(order: Order, faults: Sequence[Fault], words: ReportWords, today: date) -> Iterator[Place]:
    """Everything that is laid out: bags and syringes first, then the patient and what is around, then the rest."""
    numbers = _numbers(faults, words)
    for label in labels_of(order, words, today):
        state = getattr(getattr(order.laid_out, label.part), "state", None)
        yield Place(
            what=label.place,
            how=(*label.lines(words), *((words.BAG_STATES[state],) if state is not None else ())),
            faults=numbers.get(label.part, ()),
        )
    if order.running is not None:
        yield Place(what=words.WHEN_IT_BEGINS, how=(words.running_for(show(order.running.since)),))
    if order.change is not None:
        yield Place(what=words.WHEN_IT_BEGINS, how=(words.running_at(show(order.change.before)),))
    band = band_of(order, words)
    says = words.band_says(band.name, band.born, band.number, band.allergies)
    found = dict(order.laid_out.found)
    state = found.pop(WRISTBAND, "")
    yield Place(
        what=words.BENCH_THINGS[WRISTBAND],
        how=(*((words.as_found(state),) if state else ()), says),
        faults=numbers.get(WRISTBAND, ()),
    )
    for word, usual in words.NOTHING_WRONG.items():
        if word == "pump" and order.gravity is not None:
            continue
        here = [thing for thing in found if word in thing]
        how = [words.as_found(found[thing]) for thing in here] or [usual]
        if word == "pump":
            how.append(words.pump_takes(str(order.rounding)))
        yield Place(
            what=words.BENCH_THINGS[word] if here in ([], [word]) else ", ".join(map(_name_of, here)),
            how=tuple(how),
            faults=tuple(number for thing in here for number in numbers.get(thing, ())),
        )
        for thing in here:
            del found[thing]
    for thing, how_it_is in found.items():
        yield Place(what=_name_of(thing), how=(words.as_found(how_it_is),), faults=numbers.get(thing, ()))


def _numbers(faults: Sequence[Fault], words: ReportWords) -> Mapping[str, tuple[str, ...]]:
    """The numbers of the faults from beginning to end, by the part of the order or the thing that they concern."""
    found: dict[str, tuple[str, ...]] = {}
    for number, fault in enumerate(faults, 1):
        laid_out = fault.container or fault.fact
        if not fault.at:
            found[laid_out] = (*found.get(laid_out, ()), words.fault_number(number))
    return found


def _name_of(thing: str) -> str:
    return f"{thing[:1].upper()}{thing[1:]}"
