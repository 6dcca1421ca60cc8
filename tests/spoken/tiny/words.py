"""The words of the tiny language: every one is invented, and none is English.

::

    number = tens | digits | decimal | figures       figures as in every language: "12", "8.5"
    tens   = [1..9] "dak" [1..9]                     "dak" is 10, "bem dak tiv" is 23
    digits = 0..9 ...                                "kaf bem pesk" is 125; so the assistant says all from 100 on
    decimal = (tens | digits) "pik" digits           "sep pik pesk" is 7.5
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from assistant.spoken.confusion import Confusion
from assistant.spoken.figures import FIGURES
from assistant.spoken.grammar import Many, Opt, Word, Words, alt, seq
from assistant.spoken.meaning import Command
from assistant.spoken.said import Said
from assistant.spoken.tables import Names, Numbers, Phrases, Shown, SpokenUnit, Tables, Units, Writing

DIGITS = ("n\u00f8l", "kaf", "bem", "tiv", "vur", "pesk", "sorn", "sep", "mok", "lim")
TEN, POINT, MINUS = "dak", "pik", "ned"

_DIGITS = Many(Words({word: str(digit) for digit, word in enumerate(DIGITS)}), 1, 6)
_ONE_TO_NINE = Words({word: digit for digit, word in enumerate(DIGITS) if digit})
_SPELLED = seq(_DIGITS, build=lambda digits: Said(Decimal("".join(digits)), digits=True))
_TENS = seq(
    Opt(_ONE_TO_NINE, 1), Word(TEN), Opt(_ONE_TO_NINE, 0), build=lambda tens, _, ones: Said(Decimal(10 * tens + ones))
)
_DECIMAL = seq(
    alt(_SPELLED, _TENS),
    Word(POINT),
    _DIGITS,
    build=lambda whole, _, digits: Said(Decimal(f"{whole.value}.{''.join(digits)}"), digits=whole.digits),
)


def cardinal(number: int) -> str:
    """A whole number; from 100 on digit by digit."""
    if number < 10 or number > 99:
        return " ".join(DIGITS[int(digit)] for digit in str(number))
    tens, ones = divmod(number, 10)
    return " ".join([*([DIGITS[tens]] if tens > 1 else []), TEN, *([DIGITS[ones]] if ones else [])])


def wordings(_value: Decimal, said: str, digits: str) -> tuple[str, ...]:
    """As a number and digit by digit; nothing else is said."""
    return said, digits


def changes(words: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], Confusion]]:
    """In this language "sorn" and "sep" sound alike, as fifteen and fifty do."""
    for at, word in enumerate(words):
        if word in ("sorn", "sep"):
            other = "sep" if word == "sorn" else "sorn"
            yield (*words[:at], other, *words[at + 1 :]), Confusion.TEEN_TY


TABLES = Tables(
    phrases=Phrases(
        commands={
            Command.AGAIN: ("ruk", "ruk da"),
            Command.GO_ON: ("pluv",),
            Command.STOP: ("h\u00f8lt",),
            Command.HELP: ("suk mi",),
        },
        yes=("ova", "ova da"),
        no=("nek",),
        done=("fert",),
        likely_answers=("ova", "fert", "nek"),
        carriers={"zi da": None, "zi tempa": "time"},
        corrections=("nek",),
        between_numbers=frozenset({"og"}),
    ),
    writing=Writing(
        letters="a-z\u00f8",
        contractions={"z'da": "zi da"},
        same_word={"nol": "n\u00f8l"},
        hesitations=frozenset({"mmf"}),
        courtesies=("bitar",),
        said_after=("bitar",),
    ),
    numbers=Numbers(
        number=alt(_SPELLED, _TENS, _DECIMAL, FIGURES),
        digits=DIGITS,
        point=POINT,
        minus=MINUS,
        cardinal=cardinal,
        wordings=wordings,
        changes=changes,
    ),
    units=Units(
        units=(
            SpokenUnit("mL", "volume", "telk", "telki", ("ml",)),
            SpokenUnit("h", "time", "jar", "jari", ("h",)),
        ),
        per="pri",
        joins=("pri", "/"),
        denominators=("h",),
        abbreviated=frozenset({"ml", "h"}),
    ),
    names=Names(known=(("sal bem %", "salva"),), one_word={"%": "zentu"}),
    shown=Shown(
        clock=lambda hour, minute: f"{cardinal(int(hour))} jar {cardinal(int(minute))}",
        to="ad",
        one_in="1 en",
        abbreviations=((re.compile(r"\bVTBI\b"), "volu"),),
        signs={"=": "eg", "%": "zentu"},
    ),
)
