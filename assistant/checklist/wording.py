"""What authored text must not hold: error-prone abbreviations and dose designations, and what no voice can say.

Sources: ISMP, List of Error-Prone Abbreviations, Symbols, and Dose Designations (as republished); The Joint
Commission, official Do Not Use list. Entries marked "from memory" were recalled, not read.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from assistant.dosing.units import unit
from assistant.errors import QuantityError
from assistant.spoken import speech


class Designation(NamedTuple):
    """One entry of the lists: how it is found, why it is error-prone, what to write, where that stands."""

    pattern: str
    reason: str
    mend: str
    source: str


ISMP = "ISMP, List of Error-Prone Abbreviations, Symbols, and Dose Designations (as republished)"
JOINT_COMMISSION = "The Joint Commission, official Do Not Use list"
_MEMORY = f"{ISMP} (from memory)"
_UNITS = r"(?:mL|mg|mcg|g|kg|mEq|mmol|units|min|h|cm)"

ERROR_PRONE: tuple[Designation, ...] = (
    Designation(r"\d\s?[Uu]\b", "is misread as 0, 4 or cc", "Write units.", JOINT_COMMISSION),
    Designation(r"\b(?:IU|iu|I\.U\.)(?!\w)", "is misread as IV or 10", "Write units.", JOINT_COMMISSION),
    Designation(
        r"\b(?:QD|qd|Q\.D\.|q\.d\.|QOD|qod|Q\.O\.D\.|q\.o\.d\.)(?!\w)",
        "is misread as another frequency",
        "Write daily or every other day.",
        JOINT_COMMISSION,
    ),
    Designation(
        r"\b(?:MSO4|MgSO4|MS)\b",
        "can mean morphine sulfate or magnesium sulfate",
        "Write the drug's name in full.",
        JOINT_COMMISSION,
    ),
    Designation(
        r"(?<![\d.])\d+(?:,\d{3})*\.0+(?!\d|\.\d)",
        "is misread as ten times as much",
        "Leave the trailing zero out.",
        ISMP,
    ),
    Designation(r"(?<![\d.])\.\d", "is misread as ten times as much", "Write a zero before the point.", ISMP),
    Designation(r"[\u00b5\u03bc]g\b|(?<![A-Za-z])ug\b", "is misread as mg", "Write mcg.", ISMP),
    Designation(r"\b(?:cc|CC)\b", "is misread as units or 00", "Write mL.", ISMP),
    Designation(rf"\d{_UNITS}\b", "runs number and unit together", "Put a space between number and unit.", ISMP),
    # A year, a time of day and the number of a room or an order are no quantities.
    Designation(
        rf"(?<![\d.,])(?!0)(?!(?:19|20)\d\d(?!\d)(?!\s?(?:{_UNITS}|%)))"
        r"(?<!room )(?<!Room )(?<!order )(?<!number )(?<!call )(?<!at )\d{4,}(?![\d,])",
        "is misread by a factor of ten",
        "Use commas from 1,000 up.",
        ISMP,
    ),
    Designation(
        rf"(?:(?<=\d)|(?<=\d\s)){_UNITS}\.(?=\s+[a-z])",
        "can be read with a 1 at its end",
        "Leave the full stop out.",
        ISMP,
    ),
    Designation(r"(?<=\s)[@&](?=\s)", "is misread as 2", "Write at or and.", _MEMORY),
    Designation(r"[<>]\s*\d", "is misread as its opposite, 4 or 7", "Write less than or more than.", _MEMORY),
    Designation(r"\b(?:HS|hs|q\.?h\.?s\.?)\b", "can mean half-strength or bedtime", "Write what is meant.", _MEMORY),
    Designation(
        r"\b(?:SC|SQ|s\.c\.|s\.q\.|[Ss]ub-? ?[Qq])(?!\w)",
        "is misread as SL or 5 every",
        "Write subcutaneously.",
        _MEMORY,
    ),
    Designation(r"\b(?:D/C|DC|d/c)\b", "can mean discharge or discontinue", "Write which is meant.", _MEMORY),
    Designation(r"\b(?:TIW|tiw|BIW|biw)\b", "is misread as a day's doses", "Write times weekly.", _MEMORY),
    Designation(r"\b(?:OD|OS|OU|AD|AU)\b", "is misread as another organ", "Write which eye or ear.", _MEMORY),
    Designation(r"\b(?:UD|q\.?n\.?|q1d|qhs|BT)\b", "is misread as another time", "Write it in words.", _MEMORY),
    Designation(r"\d\s?(?:K|M|MM)\b", "is misread as another thousand", "Write thousand or million.", _MEMORY),
    Designation(
        rf"(?<![\d.,])\d+\.\d*[1-9]0+(?=\s?{_UNITS}\b)",
        "is misread as ten times as much or more",
        "Leave the trailing zero out.",
        _MEMORY,
    ),
    Designation(
        rf"(?<![\d.,])\d+,\d{{1,2}}(?=\s?{_UNITS}\b)",
        "can be a decimal or a thousand",
        "Write a decimal point.",
        f"{ISMP}: commas part thousands",
    ),
    Designation(r"\d\s?(?:mgs|mcgs|mLs|mls|gms?)\b", "is no unit", "Write the unit without s.", _MEMORY),
    Designation(r"\d\s?ml\b", "ends in a letter that is misread as 1", "Write mL.", _MEMORY),
    Designation(
        r"\b(?:HCT|HCTZ|MTX|AZT|CPZ|PTU|TNK|ZnSO4|IV [Vv]anc|[Nn]itro drip)\b",
        "can mean another drug",
        "Write the drug's name in full.",
        _MEMORY,
    ),
    Designation(r"(?<=\w )\+(?= \w)", "is misread as 4", "Write and.", _MEMORY),
    Designation(r"\bq\s?\d+\s?\u00b0", "is misread as a zero", "Write hours.", _MEMORY),
    Designation(r"\bx\s?\d+\s?d\b", "can mean doses or days", "Write for so many days or doses.", _MEMORY),
    Designation(r"(?<![x\d]\s)(?<!x)\b\d+\s?d\b", "can mean doses or days", "Write days or doses.", _MEMORY),
    Designation(
        r"\b(?:(?:bid|tid|qid|BID|TID|QID|PRN|prn|STAT|NPO)\b|[btq]\.i\.d\.)",
        "is no word that is heard",
        "Write it in words.",
        _MEMORY,
    ),
)
"""The entries that are looked for, in the order of the lists."""

_UNSPEAKABLE: tuple[tuple[str, str, str], ...] = (
    (r"\{[^}]*\}?|\}", "looks like a place to be filled in", "Write the text as it is to be said."),
    (r"[*_#`~^|\\\[\]]+", "is markup and cannot be said", "Take it out."),
    (r"</?[A-Za-z][^>]*>|&[a-z]+;", "is markup and cannot be said", "Take it out."),
    (r"[\u2190-\u21ff\u2500-\u27bf\U0001f000-\U0001faff]+", "is a sign that cannot be said", "Write it in words."),
    (
        r"(?i:\b(?:pts?|hx|dx|rx|tx|abx|q\d+ ?h(?:rs?)?|w/o?|b/c|s/p)(?![\w/]))",
        "is a short form that is not said as it is meant",
        "Write it in words.",
    ),
    (r"https?:\S*|www\.", "is an address and cannot be said", "Put it into sources."),
    (r"[^\s/]+(?:/[^\s/]+)+", "is read out as slash", "Write or, per, or and."),
    (
        r"\b(?:[A-Z]{2,}|[A-Z]\d+[A-Z])\b",
        "is an abbreviation that cannot be said",
        "Write it in words, or give its spoken form in abbreviations.",
    ),
)


@dataclass(frozen=True)
class Slip:
    """A place in a text: what was found, what is wrong with it, what to do."""

    found: str
    reason: str
    mend: str


def error_prone(text: str) -> Iterator[Slip]:
    """Every error-prone abbreviation and dose designation in a text."""
    for designation in ERROR_PRONE:
        for match in re.finditer(designation.pattern, text):
            yield Slip(match[0].strip(), designation.reason, designation.mend)


def unspeakable(text: str) -> Iterator[Slip]:
    """Everything in a text that a voice cannot say as it is meant."""
    for pattern, reason, mend in _UNSPEAKABLE:
        for found in dict.fromkeys(match[0] for match in re.finditer(pattern, text)):
            if not _is_unit(found.strip(".,;:?!()\"'")) and not _is_said(found):
                yield Slip(found, reason, mend)


def _is_unit(word: str) -> bool:
    """Units such as mL/h are turned into words before they are said."""
    try:
        return unit(word).name == word
    except QuantityError:
        return False


_WORDS = frozenset(
    (
        *("ALL", "ALWAYS", "AND", "DO", "EACH", "IN", "MUST", "NEVER", "NO", "NOT", "OFF", "ON", "ONLY", "OR"),
        *("STOP", "UP", "YES", "AM", "ID", "OK", "PM", "TV", "UV"),
    )
)
"""Words that are written in capitals for weight, and short forms that are said as they are spelt."""


def _is_said(word: str) -> bool:
    """Capitals that are a word or a numeral, or have a spoken form of their own."""
    if not word.isupper() or not word.isalnum():
        return False
    return word in _WORDS or set(word) <= set("IVX") or speech(word) != word
