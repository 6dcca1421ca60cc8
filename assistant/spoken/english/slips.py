"""What is wrong with a number, in English: with both numbers for practice, without any hint for a check-off."""

from fractions import Fraction

from assistant.dosing import Amount, CannotCheck, Disagrees, Slip, show, show_number

_MULTIPLES = {
    Fraction(10): "ten times",
    Fraction(100): "one hundred times",
    Fraction(1000): "one thousand times",
    Fraction(1, 10): "a tenth of",
    Fraction(1, 100): "a hundredth of",
    Fraction(1, 1000): "a thousandth of",
    Fraction(2): "twice",
    Fraction(1, 2): "half of",
    Fraction(60): "sixty times",
    Fraction(1, 60): "a sixtieth of",
}


def not_needed(stated: Amount) -> str:
    """That a number is wrong, without the right one or any way to it."""
    return f"{show(stated)} is not what your order needs."


def different_things(verdict: CannotCheck) -> str:
    """Why two amounts cannot be compared."""
    return f"{verdict.stated.unit} and {verdict.expected.unit} measure different things."


def explained(verdict: Disagrees) -> str:
    """What is wrong with a number, and the likeliest reason; gives the right one away."""
    stated, expected, match = verdict.stated, verdict.expected, verdict.match
    if expected is None:
        return f"{show(stated)} cannot be right here."
    if match.slip is Slip.OTHER:
        return f"{show(stated)} is not the {show(expected)} that follows from the order."
    same_unit = stated.unit == expected.unit
    heard = show_number(stated.value) if same_unit else show(stated)
    follows = f"the {show_number(expected.value) if same_unit else show(expected)} that follows from the order"
    match match.slip:
        case Slip.SWAPPED:
            return f"{heard} is {_named(match.other)}, not {follows}."
        case Slip.TEEN_TY:
            return f"{heard} sounds like {follows}."
        case Slip.TRANSPOSED:
            return f"{heard} has two digits exchanged of {follows}."
        case Slip.TIME_UNIT:
            about = "" if match.exact else "about "
            return f"{heard} is {about}{_multiple(match.factor)} {follows}: hours and minutes are mixed up."
        case Slip.PLACE:
            return f"{heard} is {follows}, rounded to another place."
        case Slip.POUNDS:
            return f"{heard} is not {follows}: pounds and kilograms are mixed up."
        case Slip.DROP_FACTOR:
            return f"{heard} is what a set of {match.other} needs, not {follows}: look at the set's package."
        case Slip.WEIGHT:
            return f"{heard} is the rate for one kilogram, not {follows}: the weight was left out."
        case Slip.DIGIT:
            return f"{heard} is {follows}, with a digit {'lost' if match.other == 'lost' else 'written twice'}."
        case Slip.TENFOLD | Slip.THOUSANDFOLD | Slip.DOUBLE if not match.exact:
            return f"{heard} is about {_multiple(match.factor)} {follows}."
        case Slip.DECIMAL_POINT if match.factor is None:
            return f"{heard} has the digits of {follows}, with the decimal point moved."
    return f"{heard} is {_multiple(match.factor)} {follows}."


def _multiple(factor: Fraction | None) -> str:
    if factor is None:
        raise TypeError("a multiple without its factor")
    times = f"{factor.numerator:,} times" if factor > 1 else f"one part in {factor.denominator:,} of"
    return _MULTIPLES.get(factor, times)


def _named(key: str) -> str:
    """A number of the order in words: ``primary.bag_volume`` is "the primary's bag volume"."""
    line, _, name = key.rpartition(".")
    return f"the {(line or 'order').replace('_', ' ')}'s {name.replace('_', ' ').replace('vtbi', 'VTBI')}"
