"""What follows from a drug that is given by hand: what is drawn up, and how much of it goes in each minute."""

from dataclasses import replace

from assistant.dosing import EXACT, HUNDREDTH, flow_rate
from assistant.dosing.body import convert
from assistant.dosing.dose import volume_for_dose
from assistant.dosing.result import Measure, Result
from assistant.orders.lines import Push


def drawn_up(push: Push, strength: Measure) -> Result:
    """Volume in mL that holds the dose, as a syringe shows it.

    Args:
        push: what is ordered.
        strength: of the vial.
    """
    return volume_for_dose(push.dose, strength)


def each_minute(push: Push, drawn: Result) -> Result:
    """Speed in mL/min at which the syringe is emptied in the ordered time, in hundredths.

    Args:
        push: what is ordered.
        drawn: what is in the syringe, as `drawn_up` gives it.
    """
    hourly = flow_rate(drawn.amount, push.over, rounding=EXACT)
    speed = convert(hourly, "mL/min", rounding=HUNDREDTH)
    return replace(speed, working=(*hourly.working, *speed.working))
