"""The sums: units, flow, drops, dose, course, limits, working."""

from assistant.dosing.amount import Amount, parse_amount, parse_number, show, show_number
from assistant.dosing.compare import Agrees, CannotCheck, Disagrees, Match, Slip, Verdict, compare
from assistant.dosing.flow import duration, flow_rate, lasts, piggyback_rate, remaining, volume, vtbi
from assistant.dosing.result import Measure, Result
from assistant.dosing.rounding import EXACT, HUNDREDTH, TENTH, WHOLE, Rounding, parse_rounding
from assistant.dosing.strength import as_concentration, concentration, parse_concentration

__all__ = [
    "EXACT",
    "HUNDREDTH",
    "TENTH",
    "WHOLE",
    "Agrees",
    "Amount",
    "CannotCheck",
    "Disagrees",
    "Match",
    "Measure",
    "Result",
    "Rounding",
    "Slip",
    "Verdict",
    "as_concentration",
    "compare",
    "concentration",
    "duration",
    "flow_rate",
    "lasts",
    "parse_amount",
    "parse_concentration",
    "parse_number",
    "parse_rounding",
    "piggyback_rate",
    "remaining",
    "show",
    "show_number",
    "volume",
    "vtbi",
]
