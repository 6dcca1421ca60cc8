"""A number against what follows from the order, or against its range."""

from decimal import Decimal
from fractions import Fraction

from assistant import dosing
from assistant.checklist.model import ChoiceAsked, NameAsked, NumberAsked, QuestionAsked, Step
from assistant.dosing.units import same_dimension
from assistant.guide.given import Given

_DECIMALS = 6
"""Decimals of a difference between units whose quotient does not end, far below any clinical meaning."""


def number_of(given: Given, step: Step) -> NumberAsked | None:
    """The number that a step asks for, of the learner or of a second person; None where it asks for none."""
    return given.checklist.number_asked(step)


def compare(given: Given, asked: NumberAsked, stated: dosing.Amount) -> dosing.Verdict:
    """The cross-check of a stated number: with the key (and its allowance), then with the range."""
    verdict: dosing.Verdict = dosing.Agrees()
    if asked.key:
        verdict = dosing.compare(stated, given.amount(asked.key), given.other_amounts(asked.key))
        if isinstance(verdict, dosing.Disagrees) and _is_within(given, asked, stated):
            verdict = dosing.Agrees()
    if isinstance(verdict, dosing.Agrees) and not _is_in_range(asked, stated):
        return dosing.Disagrees(stated, None, dosing.Match(dosing.Slip.OTHER))
    return verdict


def _is_within(given: Given, asked: NumberAsked, stated: dosing.Amount) -> bool:
    apart = stated.in_unit(asked.unit) - given.amount(asked.key).in_unit(asked.unit)
    return abs(apart) <= Fraction(asked.within)


def _is_in_range(asked: NumberAsked, stated: dosing.Amount) -> bool:
    if asked.lowest is None and asked.highest is None:
        return True
    if not same_dimension(stated.unit, asked.unit):
        return False
    value = stated.in_unit(asked.unit)
    return (asked.lowest is None or value >= Fraction(asked.lowest)) and (
        asked.highest is None or value <= Fraction(asked.highest)
    )


def expected(given: Given, step: Step) -> str:
    """What the answer is compared with, as shown; empty where it is compared with nothing, or never asked."""
    match step.expect:
        case QuestionAsked(right=right) | ChoiceAsked(right=right):
            return right
        case NameAsked(key=key):
            return str(given.key[key].value) if key in given.key else ""
    asked = number_of(given, step)
    if asked is None or (asked.key and asked.key not in given.key):
        return ""
    if asked.key:
        within = f" within {dosing.show(dosing.Amount(asked.within, asked.unit))}" if asked.within else ""
        return f"{dosing.show(given.amount(asked.key))}{within}"
    lowest, highest = (
        "" if bound is None else dosing.show(dosing.Amount(bound, asked.unit))
        for bound in (asked.lowest, asked.highest)
    )
    return f"{lowest} to {highest}" if lowest and highest else f"at least {lowest}" if lowest else f"at most {highest}"


def difference(given: Given, step: Step, stated: dosing.Amount | None) -> str:
    """The stated number less the expected one, with its sign, in the unit of the key; empty where there is none."""
    asked = number_of(given, step)
    if asked is None or stated is None or not asked.key:
        return ""
    right = given.amount(asked.key)
    if not same_dimension(stated.unit, right.unit):
        return ""
    apart = stated.in_unit(right.unit) - right.ratio
    value = (Decimal(apart.numerator) / Decimal(apart.denominator)).quantize(Decimal(1).scaleb(-_DECIMALS))
    shown = dosing.show(dosing.Amount(abs(value), right.unit))
    return f"-{shown}" if value < 0 else f"+{shown}" if value else shown
