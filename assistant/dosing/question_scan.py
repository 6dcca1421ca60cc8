"""A question in a line, taken apart: its amounts, the words around them, and what is asked for.

The amounts themselves are read by `parse_amount` and `parse_concentration` and nothing else; here it is only found
where in the line each of them begins and ends.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from assistant.dosing import question_words as words
from assistant.dosing import units
from assistant.dosing.amount import Amount, parse_amount, parse_number, show, two_units
from assistant.dosing.result import Measure
from assistant.dosing.strength import concentration, parse_concentration
from assistant.dosing.unit_table import ERROR_PRONE
from assistant.errors import QuantityError
from assistant.text import quoted

_LONGEST = 400
_NUMBER = re.compile(r"(?<![\w.,^])[-\u2212]?[.,]?\d+(?:[.,/\u2009\u202f\u00a0]+\d+)*(?: \d+(?:[.,/]+\d+)*)*", re.ASCII)
_RATIO = re.compile(r"\b1 ?: ?(?:\d{1,3}(?:[ ,]\d{3})+|\d{3,7})(?!\d)", re.ASCII)
_CLOCK = re.compile(
    r"\b(?:\d{1,2}:\d{2}(?: ?[ap]\.?m\b\.?)?(?: ?(?:h|hrs?|hours)\b)?(?![\d/])|\d{1,2} ?[ap]\.?m\b\.?"
    r"|(?:at|start\w*|from|by|since|hung|began|before) [0-2]\d[0-5]\d(?: ?(?:h|hrs?|hours)\b)?"
    r"(?=\s*(?:$|[,.?;)]|(?:and|when|what|how|start|with|at|run\w*|is|to|it|will|over|finish\w*)\b)))",
    re.ASCII | re.IGNORECASE,
)
_SIGNS = ("+", "\u00b1", "~", "<", ">", "\u2264", "\u2265", "-", "#", "$", "\u2248", "*", "^", "\u20ac")
"""What may not stand right before a number."""
_ALSO_WORDS = ("in", "pt", "dose", "drop", "drops", "gtt", "unit", "grain")
"""Units that may stand behind an amount as words: "in 30 s drop factor 20", "5 mcg/kg/min pt is 70 kg"."""
_BELOW = ("per", "a", "an", "each", "every")
"""Before a unit these make it what something is per."""
_MOST_WORDS = 6
"""Words of the longest unit: "mcg per kilo per minute"."""
_SETS = {"microdrip": 60, "microdrop": 60, "minidrip": 60}
"""Drops per mL of a set that goes by its name: Open RN, Nursing Skills, section 5.14."""


@dataclass(frozen=True)
class Taken:
    """One thing that the line states.

    Attributes:
        kind: a key of `units.QUANTITIES`, or "bag", "interval", "start", "weight".
        value: what a formula takes for it.
        text: as it is shown.
        at, end: where it stands in the line.
        bag: of a bag, its dose and its volume.
        cue: the words just before it, in small letters.
        behind: the words just behind it, in small letters.
    """

    kind: str
    value: Measure | str
    text: str
    at: int
    end: int
    bag: tuple[Amount, Amount] | None = None
    cue: str = ""
    behind: str = ""


@dataclass(frozen=True)
class Line:
    """A line, taken apart.

    Attributes:
        takens: what it states, in order.
        left: the words that belong to no amount, in small letters, with a mark where an amount stood.
        wanted: the unit that is asked for, if one is.
        rounding: the rule that is asked for, if one is.
        unread: words that nothing is known of; names of drugs, mostly.
    """

    takens: tuple[Taken, ...]
    left: str
    wanted: str | None
    rounding: str | None
    unread: tuple[str, ...]


def scan(text: str) -> Line:
    """Take a line apart.

    Raises:
        QuantityError: a number without a unit, or one that could be read in two ways.
    """
    # Narrow spaces stay: within a number they part thousands.
    line = re.sub(r"[ \t\r\n]+", " ", text.replace("\u2192", " -> ")).strip()
    if line.count("(") != line.count(")"):
        raise QuantityError("A bracket is left open.", "Ask without brackets.")
    if len(line) > _LONGEST:
        raise QuantityError(
            "A question in one line was expected, but the text is too long.", "Ask one thing at a time."
        )
    for pattern, plain in words.PLAINER:
        line = pattern.sub(plain, line)
    line, rounding = _without_rounding(line)
    takens = list(_amounts(line))
    takens = _bags(line, takens)
    takens = [_told_by_words(line, takens, place) for place in range(len(takens))]
    takens = _sets_by_name(line, takens)
    left = _left(line, takens)
    wanted, left = _wanted(left)
    return Line(tuple(takens), left, wanted, rounding, _unread(left))


def _without_rounding(line: str) -> tuple[str, str | None]:
    found = words.ROUNDING.search(line)
    if found is None:
        return line, None
    place = next(name for name in ("whole", "hundredth", "thousandth", "tenth") if name in found.group(0).lower())
    return f"{line[: found.start()]} {line[found.end() :]}".strip(), place


def _amounts(line: str) -> Iterator[Taken]:
    at = 0
    while (number := _NUMBER.search(line, at)) is not None or at == 0:
        clock, ratio = _CLOCK.search(line, at), _RATIO.search(line, at)
        first = min((m.start() for m in (number, clock, ratio) if m is not None), default=None)
        if first is None:
            return
        if ratio is not None and ratio.start() == first:
            taken = Taken("concentration", parse_concentration(ratio.group(0)), ratio.group(0), first, ratio.end())
        elif clock is not None and clock.start() == first:
            taken = _clock(clock)
        elif number is None:
            return
        else:
            taken = _amount(line, number)
        yield taken
        at = taken.end


def _clock(found: re.Match[str]) -> Taken:
    word = re.match(r"[a-z]+ ", found.group(0), re.IGNORECASE)
    start = found.start() + (word.end() if word else 0)
    text = re.sub(r" ?(?:h|hrs?|hours)$", "", found.group(0)[start - found.start() :], flags=re.IGNORECASE)
    return Taken("start", text.replace(".", ""), text, start, found.end())


def _amount(line: str, number: re.Match[str]) -> Taken:
    start = number.start()
    if line[:start].endswith(_SIGNS) or line[:start].lower().endswith(("ca. ", "about ", "approx. ")):
        raise QuantityError(
            f"{quoted(line[max(0, start - 3) : number.end()])} is no plain number.", "Write the number alone."
        )
    if (end := two_units(line, start)) is not None:
        text = line[start:end]
        return _as_taken(parse_amount(text), text, start, end)
    after = number.end()
    digits = number.group(0)
    rest = re.match(r"[^\d;,()?=]*", line[after:])
    tokens = re.findall(r"\s*\S+", rest.group(0) if rest else "")[:_MOST_WORDS]
    for count in range(len(tokens), 0, -1):
        whole = "".join(tokens[:count])
        bare = whole.rstrip(" .:/")
        if not bare.strip():
            continue
        try:
            units.unit(bare.strip())
        except QuantityError:
            continue
        behind = line[after + len(bare) :]
        if re.match(r"\s*/(?!\s*\d)", behind):
            raise QuantityError(f"{quoted(bare.strip() + '/')} is not a unit.", "Write what it is per, such as mL/h.")
        text = f"{digits} {bare.strip()}"
        return _as_taken(parse_amount(text), text, start, after + len(bare))
    first = tokens[0].strip(" .:") if tokens else ""
    return _without_unit(line, digits, first, start, after)


def _without_unit(line: str, digits: str, first: str, start: int, after: int) -> Taken:
    """A number whose unit stands in the words before it, as "drop factor of 15" has it; else it has none.

    Raises:
        QuantityError: it has none, or one that is easily misread.
    """
    if re.search(words.DROP_FACTOR_OF, line[:start].lower()):
        value = Amount(parse_number(digits), "gtt/mL")
        return Taken("drop factor", value, show(value), start, after)
    alone = first.split("/")[0]
    if first and (first in ERROR_PRONE or alone in ERROR_PRONE or any(p in ERROR_PRONE for p in first.split("/"))):
        parse_amount(f"{digits} {first}")
    if first and first.lower() in words.COUNTED:
        raise QuantityError(f"{first} are not worked out here.", "Ask for a dose or for a volume.")
    parse_amount(f"{digits} mL")  # a number that can be read in two ways is refused as such
    if re.fullmatch(r"[/\w\u00b5\u03bc%.]{1,14}", first) and first.lower() not in words.KNOWN:
        parse_amount(f"{digits} {first}")
    raise QuantityError(f"{quoted(digits)} came without a unit.", 'Write the unit too, like "100 mL".')


def _as_taken(value: Amount, text: str, at: int, end: int) -> Taken:
    kind = units.unit(value.unit).kind
    if kind == "mass":
        kind = "weight" if value.unit in ("kg", "lb") else "dose"
    if kind == "percentage":
        kind, strength = "concentration", parse_concentration(text)
        return Taken(kind, strength, text, at, end)
    return Taken(kind, value, show(value), at, end)


def _bags(line: str, takens: list[Taken]) -> list[Taken]:
    """Join "400 mg in 250 mL", and "250 mL with 400 mg", to one thing: a bag with its dose."""
    found: list[Taken] = []
    for taken in takens:
        before = found[-1] if found else None
        if before is not None:
            between = line[before.end : taken.at].lower()
            container = not between.strip() and words.CONTAINER.match(line[taken.end :].lower())
            if (
                before.kind == "dose"
                and taken.kind == "volume"
                and (container or words.DOSE_IN_VOLUME.fullmatch(between))
            ):
                found[-1] = _bag(before, taken)
                continue
            if before.kind == "volume" and taken.kind == "dose" and words.VOLUME_WITH_DOSE.fullmatch(between):
                found[-1] = replace(_bag(taken, before), at=before.at, end=taken.end)
                continue
        found.append(taken)
    return found


def _bag(dose: Taken, volume: Taken) -> Taken:
    if not isinstance(dose.value, Amount) or not isinstance(volume.value, Amount):
        raise TypeError("a bag is made of two amounts")
    strength = concentration(dose.value, volume.value)
    return Taken("bag", strength, f"{dose.text} in {volume.text}", dose.at, volume.end, bag=(dose.value, volume.value))


def _told_by_words(line: str, takens: list[Taken], place: int) -> Taken:
    """What the words around an amount make of it: a time between doses, a set, a body weight."""
    taken = takens[place]
    since = takens[place - 1].end if place else 0
    until = takens[place + 1].at if place + 1 < len(takens) else len(line)
    cue, behind = line[since : taken.at].lower(), line[taken.end : until].lower()
    taken = replace(taken, cue=cue, behind=behind)
    if taken.kind == "duration" and re.search(r"(?:\bevery|\beach|\bq\.?)\s*$", cue):
        return replace(taken, kind="interval")
    if taken.kind == "drops" and re.match(r"\s*(?:\w+\s+)?(?:set|tubing|factor|giving set|admin\w*)\b", behind):
        value = Amount(Decimal(str(taken.value).split(" ", maxsplit=1)[0]), "gtt/mL")
        return replace(taken, kind="drop factor", value=value, text=show(value))
    if (
        taken.kind == "dose"
        and isinstance(taken.value, Amount)
        and taken.value.unit == "g"
        and words.WEIGHS.search(cue)
    ):
        return replace(taken, kind="weight")
    if taken.kind == "start" and re.search(words.UNTIL, line[since : taken.end].lower()):
        return replace(taken, kind="end")
    if taken.kind == "concentration" and words.FLUID.match(behind):
        return replace(taken, kind="fluid")
    return taken


def _sets_by_name(line: str, takens: list[Taken]) -> list[Taken]:
    found = re.search(r"\b(micro|mini)[- ]?(?:drip|drop)\w*\b", line, re.IGNORECASE)
    if found is None or any(taken.kind == "drop factor" for taken in takens):
        return takens
    value = Amount(Decimal(_SETS["microdrip"]), "gtt/mL")
    return [*takens, Taken("drop factor", value, f"{show(value)} (a microdrip set)", found.start(), found.end())]


def _left(line: str, takens: list[Taken]) -> str:
    parts, at = [], 0
    for taken in sorted(takens, key=lambda one: one.at):
        parts.append(line[at : taken.at])
        parts.append(" # ")
        at = max(at, taken.end)
    parts.append(line[at:])
    return "".join(parts)


def _wanted(left: str) -> tuple[str | None, str]:
    """The unit that is asked for, and the line in small letters without it.

    Raises:
        QuantityError: two different ones are asked for.
    """
    found: list[str] = []
    tokens = left.split()
    kept: list[str] = []
    at = 0
    while at < len(tokens):
        count, name = _unit_at(tokens, at)
        if count and _asks_for_unit(tokens, at, count, name):
            if name not in found:
                found.append(name)
            kept.append("\u00a7")
            at += count
        elif count and at and tokens[at - 1] == "#" and len(tokens[at]) > 1 and tokens[at].lower() not in _ALSO_WORDS:
            raise QuantityError(
                f"{quoted(tokens[at])} stands behind an amount that has a unit already.",
                'Write a unit such as mg/mL with its line, or "in" before the unit that is asked for.',
            )
        else:
            kept.append(tokens[at])
            at += 1
    if len({units.unit(name).signature for name in found}) > 1:
        raise QuantityError(f"Two things are asked for: {' and '.join(found)}.", "Ask for one at a time.")
    return (found[-1] if found else None), " ".join(kept).lower()


def _unit_at(tokens: list[str], at: int) -> tuple[int, str]:
    for count in range(min(_MOST_WORDS, len(tokens) - at), 0, -1):
        text = " ".join(tokens[at : at + count]).rstrip("?.,;:!)").lstrip("(")
        try:
            return count, units.unit(text).name.removesuffix("/dose")
        except QuantityError:
            continue
    bare = tokens[at].rstrip("?.,;:!)")
    asked_for = at > 0 and tokens[at - 1].lower() in ("in", "many", "to", "into")
    # "u" and "gr" may be words elsewhere; with a line they are units, and these never are words.
    plainly = "/" in bare or bare in ("cc", "CC", "ccs", "IU", "mU")
    if (asked_for or plainly) and any(part in ERROR_PRONE for part in bare.split("/")):
        units.unit(bare)
    return 0, ""


def _asks_for_unit(tokens: list[str], at: int, count: int, name: str) -> bool:
    """Whether a unit without a number is what is asked for: "in mL/h", "how many mL", "mL/h?"."""
    before = tokens[at - 1].lower().rstrip(",:") if at else ""
    if tokens[at].lower() in ("in", "a", "cup") or name == "dose" or before in _BELOW:
        return False
    if "/" in name or " per " in name:
        return True
    if before in ("in", "into", "to", "many", "much", "what", "which", "=", "->", "as", "total"):
        return True
    last = at + count == len(tokens) and len(tokens[at]) > 1
    return tokens[at + count - 1].endswith("?") or last or (at + count == len(tokens) and before in ("#", "?", ""))


def _unread(left: str) -> tuple[str, ...]:
    found = re.findall(r"[^\W\d_][\w'\u2019-]*", left)
    return tuple(
        dict.fromkeys(word for word in found if word.rstrip("'s") not in words.KNOWN and word not in words.KNOWN)
    )
