"""What stays behind in tubing, what a flush does, and whether hanging heights let the secondary run alone."""

from decimal import Decimal
from fractions import Fraction

from assistant.dosing.amount import Amount
from assistant.dosing.result import Measure, Result, conclude, take, tell, tell_exact
from assistant.dosing.rounding import TENTH, THOUSANDTH, Rounding
from assistant.errors import QuantityError


def share_delivered(
    volume: Measure, tubing: Measure, *, flush: Measure | None = None, rounding: Rounding = TENTH
) -> Result:
    """Share of a dose, in percent, that reaches the patient when the bag side has run dry.

    Args:
        volume: the bag's whole volume, drug included.
        tubing: what the secondary tubing holds (its residual volume); zero is allowed.
        flush: fluid sent through that tubing afterwards; it pushes out its own volume at most.
        rounding: tenths of a percent by default.

    Raises:
        QuantityError: an input is of another kind or negative, or the tubing holds more than the bag.

    Source: ISMP, Hidden medication loss when using a primary administration set for small-volume intermittent
    infusions: 25 mL of 50 mL left behind is half the dose. That a flush pushes the drug ahead of it without
    mixing is the best case; common practice, no source.
    """
    share, lines, inputs, cautions = _share(volume, tubing, flush)
    exact = share * 100
    lines.append(f"{tell_exact(exact, '%')} delivered")
    return conclude("share-delivered", inputs, exact, "%", rounding, tuple(lines), cautions)


def dose_left_behind(
    dose: Measure,
    volume: Measure,
    tubing: Measure,
    *,
    flush: Measure | None = None,
    rounding: Rounding = THOUSANDTH,
) -> Result:
    """Dose that stays in the tubing, in the dose's own unit.

    Args:
        dose: for example 1,000 mg.
        volume: the bag's whole volume, drug included.
        tubing: what the secondary tubing holds.
        flush: fluid sent through that tubing afterwards.
        rounding: thousandths by default.

    Raises:
        QuantityError: as in `share_delivered`, or `dose` is no dose.

    Source: as in `share_delivered`.
    """
    take("dose", dose, "dose")
    share, lines, inputs, cautions = _share(volume, tubing, flush)
    exact = dose.in_unit(dose.unit) * (1 - share)
    lines.append(f"{tell(dose)} \u00d7 {tell_exact((1 - share) * 100, '%')} = {tell_exact(exact, dose.unit)} left")
    return conclude("dose-left-behind", {"dose": dose, **inputs}, exact, dose.unit, rounding, tuple(lines), cautions)


def _share(
    volume: Measure, tubing: Measure, flush: Measure | None
) -> tuple[Fraction, list[str], dict[str, Measure | str], tuple[str, ...]]:
    whole, held = take("volume", volume, "volume"), take("tubing", tubing, "volume", zero=True)
    inputs: dict[str, Measure | str] = {"volume": volume, "tubing": tubing}
    if held > whole:
        raise QuantityError(
            f"The tubing cannot hold {tell(tubing)} of a bag of {tell(volume)}.", "Look at the two volumes."
        )
    left = held
    lines: list[str] = []
    cautions: tuple[str, ...] = ()
    if flush is not None:
        inputs["flush"] = flush
        pushed = min(held, take("flush", flush, "volume", zero=True))
        left = held - pushed
        lines.append(
            f"{tell(tubing)} \u2212 {tell_exact(pushed, 'mL')} flushed = {tell_exact(left, 'mL')} left in the tubing"
        )
        cautions = ("A flush that mixes with the drug leaves more behind than this.",)
    lines.append(f"({tell(volume)} \u2212 {tell_exact(left, 'mL')}) \u00f7 {tell(volume)}")
    if left * 20 > whole:
        cautions = (
            *cautions,
            "More than one part in twenty of the dose stays in the tubing: use a short set or flush it.",
        )
    return (whole - left) / whole, lines, inputs, cautions


HEAD_MARGIN = Amount(Decimal(20), "cm")
"""How much higher the secondary's fluid must stand; common practice, no source: the maker's figure goes first."""

_GRAVITY = Fraction("9.80665")
"""Standard acceleration of free fall, m/s2: NIST Special Publication 811, Appendix B (from memory)."""


def head_difference(
    secondary: Measure, primary: Measure, *, falls: Measure | None = None, margin: Measure = HEAD_MARGIN
) -> Result:
    """How much higher the secondary's fluid stands than the primary's, in cm, when it stands lowest.

    Args:
        secondary: height of the fluid in the secondary bag above the pump, bag full.
        primary: height of the fluid in the primary bag above the pump.
        falls: how far the secondary's fluid falls until its bag is empty.
        margin: the difference that is wanted.

    Returns:
        The difference; below zero where the primary stands higher. A caution says where the secondary will
        not run alone.

    Raises:
        QuantityError: an input is no length or negative.

    Source: BCcampus, Clinical Procedures for Safer Patient Care, section 7.7 (the greater head stops the
    primary); hydrostatic pressure is density times g times height.
    """
    high, low = take("secondary", secondary, "length", zero=True), take("primary", primary, "length", zero=True)
    wanted = take("margin", margin, "length", zero=True)
    inputs: dict[str, Measure | str] = {"secondary": secondary, "primary": primary, "margin": margin}
    lines = []
    if falls is not None:
        inputs["falls"] = falls
        drop = take("falls", falls, "length", zero=True)
        lines.append(f"{tell(secondary)} \u2212 {tell(falls)} = {tell_exact(high - drop, 'cm')} when nearly empty")
        high -= drop
    exact = high - low
    lines.append(f"{tell_exact(high, 'cm')} \u2212 {tell_exact(low, 'cm')} = {tell_exact(exact, 'cm')}")
    kilopascal = TENTH.apply(exact * _GRAVITY / 100)
    lines.append(f"as pressure of water: about {kilopascal} kPa")
    cautions: tuple[str, ...] = ()
    if exact <= 0:
        cautions = (
            "The primary stands as high or higher: both bags will run, or the primary alone. Lower the primary.",
        )
    elif exact < wanted:
        cautions = (f"Less than {tell(margin)} of difference: the primary may run along. Lower the primary.",)
    value = TENTH.apply(exact)
    # A difference may be nothing or below zero, so it does not go through the check against rounding to zero.
    return Result("head-difference", inputs, exact, value, "cm", TENTH, tuple(lines), cautions)
