"""The words of a question in a line: how people ask, and what each way of asking is after."""

import re
from collections.abc import Mapping

_I = re.IGNORECASE
_TIME = r"hours?|hrs?|h|minutes?|mins?|min|days?"
_DOSE = r"mls?|millilit(?:re|er)s?|drops?|gtts?|units?|mgs?|milligrams?|mcgs?|micrograms?|grams?|g|mmol|meq"
_ONES = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_AFTER_COUNT = rf"(?:{_TIME}|lit(?:re|er)s?|doses?|equal|drops?|seconds?|mls?|mg|mcg|grams?|units?)"

PLAINER: tuple[tuple[re.Pattern[str], str], ...] = (
    (re.compile(r"(?<=[/ \d])m\^?2\b"), "m\u00b2"),
    (re.compile(r"\b4-2-1\b|\bmaint\b", _I), "maintenance"),
    # Names of fluids with figures in them: "D5 1/2 NS", "D5LR"
    (re.compile(r"\b(?:d\d+ ?)?1/2 ?(?:ns|normal saline)\b|\bd\d+ ?(?:lr|rl)\b", _I), "fluid"),
    # No formula here takes an age.
    (
        re.compile(
            r"\b\d{1,3}[ -]?(?:yrs?|years?|months?|mos?|weeks?|wks?|days?)[ -]old\b|\b\d{1,3} ?(?:yo\b|y/o\b)", _I
        ),
        "patient",
    ),
    (re.compile(r"\bchange (?=[\d.,]+ ?[a-z]+ (?:in)?to\b)", _I), "convert "),
    (re.compile(r"\bsq(?:uare)?\.? ?m(?:et(?:er|re)s?)?\b", _I), "m\u00b2"),
    # "mL an hour", "drops a minute", "mL every hour"
    (
        re.compile(rf"(?<![a-z])({_DOSE}|kg|kilos?)\s+(?:an?|each|every|in an?|in one)\s+({_TIME}|kg|kilo)\b", _I),
        r"\1/\2",
    ),
    (re.compile(r"(?<![a-z])(mls?)\s+hourly\b", _I), r"\1/h"),
    (
        re.compile(r"\b(?:an|one|1) hour and a half\b|\b1 ?1/2 (?:hours?|h|hrs?)\b|\bone and a half hours?\b", _I),
        "90 min",
    ),
    (re.compile(r"\bhalf (?:an )?hour\b|\bhalf-hour\b", _I), "30 min"),
    (re.compile(r"\b(?:a )?quarter of an hour\b", _I), "15 min"),
    (re.compile(r"\bthree quarters of an hour\b", _I), "45 min"),
    (
        re.compile(
            r"\b(get(?:ting|s)|receiv(?:ing|es)|given|deliver(?:ed|s)|infus(?:ing|es)) (?:an|each|every) hour\b", _I
        ),
        r"\1 per hour",
    ),
    (re.compile(r"\bhalf an? (gram|g|milligram|mg|ml|millilit(?:er|re)|unit)\b", _I), r"0.5 \1"),
    (re.compile(r"\bhalf a (?:lit(?:er|re))\b|\bhalf-lit(?:er|re)\b", _I), "500 mL"),
    (re.compile(r"(?<!per )(?<!/)\ban hour\b(?! and)", _I), "1 h"),
    (re.compile(r"\ba (?:lit(?:er|re))\b", _I), "1 L"),
    (re.compile(r"(?<!per )(?<!times )\b(?:over|in|for) a minute\b", _I), "over 1 min"),
    *((re.compile(rf"\b{name}(?=[ -]{_AFTER_COUNT}\b)", _I), str(number)) for number, name in enumerate(_ONES, 1)),
    (re.compile(r"\b(?:twenty[- ]?four)(?= (?:hours?|h)\b)", _I), "24"),
    (re.compile(r"\bq ?(\d+) ?(?:h|hrs?|hours?)\b", _I), r"every \1 h"),
    (re.compile(r"(\d) ?hourly\b", _I), r"every \1 h"),
    (re.compile(r"\bq\.?i\.?d\b\.?", _I), "in 4 doses a day"),
    (re.compile(r"\bt\.?i\.?d\b\.?", _I), "in 3 doses a day"),
    (re.compile(r"\bb\.?i\.?d\b\.?", _I), "in 2 doses a day"),
    (re.compile(r"\b(?:three|3) times (?:a|per) day\b", _I), "in 3 doses a day"),
    (re.compile(r"\b(?:four|4) times (?:a|per) day\b", _I), "in 4 doses a day"),
    (re.compile(r"\btwice (?:a day|daily)\b|\b(?:two|2) times (?:a|per) day\b", _I), "in 2 doses a day"),
    (re.compile(r"(\d) (?:equal|divided) doses", _I), r"\1 doses"),
    (
        re.compile(
            r"(\d)[- ](mls?|l|hours?|hrs?|h|minutes?|mins?|drops?|gtts?|mg|mcg|g|kg"
            r"|units?)\b(?!/)",
            _I,
        ),
        r"\1 \2",
    ),
)
"""Ways of writing that are put plainly before a line is taken apart; what is left as it is, is read as it stands."""

ROUNDING = re.compile(
    r",?\s*\(?\b(?:round(?:ed|ing)?(?: (?:it|off|up to|your answer|the answer))*(?: to)?|to)(?: the)? nearest "
    r"(?:whole(?: (?:number|drop|ml|mg|unit))?|tenth|hundredth|thousandth)s?\b\)?"
    r"|,?\s*\(?\brounded? to (?:a |the )?(?:whole(?: number)?|tenths?|hundredths?|thousandths?)\b\)?",
    _I,
)

UNTIL = r"\b(?:by|before|(?:finish|end|done|complete|over)\w* (?:by|at|before))\s*(?:[\d: apm.]+h?)?$"
"""The words before a time at which an infusion has to be over."""
DROP_FACTOR_OF = r"(?:drop|drip|calibration)[ -]?factor\s*(?:of|is|=|:)?\s*$"
_COUNTED = """
tab tabs tablet tablets cap caps capsule capsules pill pills vial vials ampule ampules ampoule ampoules bags bottles
syringes kcal calories
"""
COUNTED = frozenset(_COUNTED.split())
"""What is counted and not measured."""

_NAMES = (
    r"(?:(?:of|the|drug|each|every|which|is|comes?|it|mixed|diluted|dissolved|reconstituted|made up|added|put|supplied"
    r"|labell?ed|available)\s+)"
)
_ANY = r"(?:(?!(?:from|at|over|for|and|using|via|then|with|have|how|give|need|want)\b)[a-z][\w-]*\s+)"
DOSE_IN_VOLUME = re.compile(
    rf"\s*(?:/|per\b|\({{0,1}}in\b|,?\s*{_NAMES}*{_ANY}{{0,3}}{_NAMES}*(?:in(?:to)?|per|to|with)\b)"
    r"\s*(?:a|an|each|every|the|total of|final volume of)?\s*"
)
"""What stands between a dose and the volume that holds it: "400 mg dopamine in 250 mL"."""
CONTAINER = re.compile(r"\s*(?:premixed |iv )?(?:bag|bottle|vial|amp(?:o?ule)?|syringe)\b")
"""What follows a volume right after a dose: "50 mg 250 mL bottle"."""
VOLUME_WITH_DOSE = re.compile(
    r"\s*(?:[a-z][\w%-]*\s+){0,5}?\(?(?:contain(?:s|ing)?|with|w/?|has|having|holds?|holding)\s+(?:a |the |only )*"
)
"""What stands between a volume and the dose in it: "250 mL D5W containing 400 mg"."""
WEIGHS = re.compile(r"\b(?:weigh(?:s|ing|ed)?|weight|wt\.?)\b[^#]{0,12}$")
FLUID = re.compile(r"\s*(?:w/v )?\s*(?:of )?(?:normal saline|saline|sodium chloride|nacl|ns\b|dextrose|glucose|d5|kcl)")
"""What makes a percentage the name of a fluid: "0.9 % sodium chloride"."""

ASKED: tuple[tuple[str, frozenset[str]], ...] = (
    (
        r"\bdrip rate|drop rate|drops?/min|drops per|drops a min|gtt ?rate|gravity rate|how many (?:drops"
        r"|gtts?)|count the drops"
        r"|drops? (?:should|do|to count)|(?:number|amount) of drops|manual(?:ly)? regulat",
        frozenset({"drop rate"}),
    ),
    (
        r"dose rate|how much (?:drug|is he|is she|is the patient|are they) (?:getting|receiving)"
        r"|how many mcg/kg/min|what dose (?:rate|per)|getting what|what dose is (?:my|the|this|he|she"
        r"|our)[^#]* (?:getting|receiving|on)\b",
        frozenset({"dose rate", "dose rate per weight"}),
    ),
    (r"per (?:hour|hr|h|minute|min)\s*[?.]*$", frozenset({"rate", "dose rate", "drop rate"})),
    (
        r"how fast|(?:what|which|find|calculate|work out|calc|need|get|give me)(?: is| the| a| pump"
        r"| hourly| infusion| flow| iv| ivpb)* rate"
        r"|(?:infusion|flow|pump|iv|ivpb|piggyback|hourly) rate\s*(?:\?|$|please|in\b|=)"
        r"|set (?:the|a|my|your|this|it)\b|(?:what|which) (?:setting|speed)|pump setting"
        r"|program\w* (?:the|a|my|it)|^\s*rate\b|\brate\s*\?"
        r"|what (?:do|should|would|will) (?:i|we|you|the nurse) (?:set|run|program|infuse)|(?:run"
        r"|infuse) (?:it |this )?at what|rate (?:pls|plz|please)",
        frozenset({"rate", "drop rate"}),
    ),
    (
        r"how long|(?:remaining|left) time|time (?:left|remaining)|how many (?:hours|hrs|minutes|mins|min"
        r"|h)\b|infusion time|what duration|how much time|last how|run time|(?:time|duration)\s*\?"
        r"|time to (?:infuse|empty|run)|(?:shortest|least) time",
        frozenset({"duration"}),
    ),
    (
        r"\bwhen\b|what time|(?:completion|finish|end|stop)(?:ing)? time|time (?:of completion"
        r"|it finishes)|at what hour|done at|finish(?:es|ed)? at\s*\?",
        frozenset({"clock"}),
    ),
    (
        r"how many mls?\b|what volume|(?:remaining|left) volume|volume (?:left|remaining|remains)"
        r"|how much (?:volume|fluid|solution)|draw(?:n)? up|how many (?:cc|millilit)|volume\s*\?"
        r"|volume to (?:give|draw|inject)",
        frozenset({"volume"}),
    ),
    (
        r"how many (?:mg|mcg|milligram|microgram|units|grams|mmol|meq)|(?:what|which|find|calculate"
        r"|work out)(?: is| the| a| total| single| each| right)* dose\b|dose\s*\?|how much (?:drug"
        r"|medication|heparin|insulin)|each dose|total dose|per dose\s*\?",
        frozenset({"dose", "dose rate"}),
    ),
    (
        r"concentration\s*(?:\?|$|of the bag|please)|(?:what|which|find|calculate|work out)(?: is| the| a"
        r"| final)* (?:concentration|strength)|how strong|strength\s*\?|concentrated",
        frozenset({"concentration"}),
    ),
    (r"\bbsa\b|body surface|surface area", frozenset({"area"})),
)
"""What each way of asking is after: kinds of the answer. Every one that fits counts; see `after`."""
_HOW_MUCH = re.compile(r"how much\b(?! (?:volume|fluid|solution|drug|time))")
"""What may ask for anything, and counts where nothing else is asked for."""

SPECIAL: Mapping[str, str] = {
    "left": r"\bleft\b(?! behind)|\bremain(?:s|ing)?\b|still to",
    "reserve": r"\breserve\b|\bvtbi\b|leave .* in the bag|keep .* back|\bleav(?:e|ing)\b",
    "day": r"a day\b|per day|/day|daily|divided|in 24 ?h|each day",
    "most": r"no faster|not faster|max(?:imum)?\b|at most|no more than|fastest|shortest",
    "balance": r"\bintake\b|\boutput\b|\bbalance\b",
    "dilute": r"\bstock\b|\bdilut(?:e|ion)\b(?!d)|weaken|make (?:up )?(?:#|a)|\bprepare\b",
    "then": r"\bthen\b|\bfollowed by\b",
    "mix": r"\bmix(?:ing)? #[^#]*\b(?:and|with) #|\b(?:two|both) (?:stocks|strengths|solutions)\b|\balligation\b",
    "powder": r"\breconstitut\w+|powder|displacement",
    "maintenance": r"maintenance|4-2-1|100-50-20|holliday",
    "bsa": r"\bbsa\b|body surface|surface area",
    "tubing": r"tubing holds|priming volume|left behind|in the tubing|dead (?:space|volume)",
    "off": r"percent off|how far off|too (?:fast|slow)\b|\bdeviat",
    "until": (
        r"\bby #|(?:finish|end|done|over|complete)\w* (?:by|at|before) #|latest|have to start"
        r"|when to start|must start"
    ),
    "loading": r"\bloading\b|\bbolus\b",
}
"""Words that change which formula is meant; one that a formula does not know keeps it from being used."""

TURNING = re.compile(
    r"\bnot\b(?! faster| more)|\bno\b(?! (?:faster|more))|n't\b|\bwithout\b|\bexcept\b|\binstead\b"
    r"|\btwice\b|\bdoubl\w*|\btripl\w*|\bhalf\b"
    r"|\bhalv\w*|\bincreas\w*|\bdecreas\w*|\breduc\w*|\btitrat\w*|\bplus\b|\bminus\b|\bless\b"
    r"|\bthen\b|\balready\b|\bearlier\b|\blater\b"
    r"|\bafter\b|\bbehind\b|\bahead\b|\btimes\b|\bthird\b|\bquarters?\b|\brais\w*|\blower\w*"
    r"|\bchang\w*|\bby \d|\bextra\b|\badd\b|\btotal of both"
    r"|\beach of\b|\bboth\b|\bsecond (?:bag|dose)|\bgone\b|\binfused so far|\babsorbed\b|\bwasted?\b"
    r"|\bspill\w*|\bor\b|\bper cent more|\bfaster\b|\bslower\b"
    r"|\bideal\b|\blean\b|\badjusted\b|\bcrcl\b|\bclearance\b|\bcreatinine\b|\bosmol\w*|\bcalorie\w*"
    r"|\bkcal\b|\bparkland\b|\bburn\w*|\bapgar\b"
)
"""Words that turn a question round, and that no formula here knows: it is refused and not answered without them."""

COUNTS = re.compile(
    r"\b(?:two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|twenty|thirty|forty"
    r"|fifty|sixty|seventy|eighty|ninety"
    r"|hundred|thousand|couple|pair|dozen|several|few|once|zero|point)\b|(?<![a-z\d])(?!d\d+(?:w"
    r"|ns)?\b|h2o\b)[a-z]*\d[\w-]*"
)
"""Numbers that were not read as amounts: they may count bags, or begin a number that is spelled out."""
NOT_WORKED_OUT = re.compile(
    r"how many (tab\w*|cap\w*|pills?|vials?|amp\w*|bags?|doses?|syringes?|bottles?|kcal|calories)\b"
)

_KNOWN = """
a about above across adult after all also am amount an and answer any app are area as ask at available away baby
back bag bags balance balanced be been began begin beginning begins being body bolus both bottle bsa by calc
calculate calculation can cannula change chart child client cm come comes concentration contain containing
contains continuous control conversion convert converted could count counted daily day days deliver delivered
delivers delivery dilute diluted dissolved divided do doctor does dont dose doses dr draw drawn drip drop drops
drug dry each empty end ends equal equals even every factor fast feet figure final find finish finished finishes
finishing flow fluid followed foot for formula from full g gave get gets getting give given gives giving go goes going
gravity gtt gtts h had hand hang has have having he heavy height hello help her hey hi him his hold holds
hospital hour hourly hours how hr hrs hung i if ii in inches infant infuse infused infuses infusing infusion
infusions intake interval into intravenous is it its iv ivpb job just keep kg kid kilo kilogram kilograms kilos
know l label last lasts lb lbs leave left let line loading long look m macro macrodrip maintenance make makes
man manually many max maximum may mcg me med medication mg micro microdrip micrograms milligrams millilitres min
mine minute minutely minutes mix mixed ml mls mm more mosteller much my name nearest need needed needs new
newborn next nice no now number nurse of off ok okay old on once one only order ordered orders our out output
over pat patient patient's per physician piggyback please pls plz po pounds pour powder prescribed prescriber
prescription primary program programmed provider pt pump push put quick rate rated ready receive received
receives reconstitute reconstituted regulate remain remaining remains required reserve right round run running
runs s said same say says secondary see set sets setting she should show so solution solution's speed start
started starts stat stock strength sum supplied supply supposed surface syringe take takes tall tell tenth than
thank thanks that the their them then there these they thing this through time to today told total tube tubing units
until up us use used using v value via vial volume vtbi w want wanted wants was water we weigh weighing weighs
weight well what what's whats when which while who whole will with woman work would wt x yo you your
"""
KNOWN = frozenset(_KNOWN.split())
"""Words that say nothing that a formula needs, or that are read elsewhere."""


def after(left: str) -> frozenset[str]:
    """The kinds of quantity that a line asks for, by its words; empty where it does not say."""
    found: frozenset[str] = frozenset()
    for pattern, kinds in ASKED:
        if re.search(pattern, left):
            if found and "drop rate" in found and kinds == frozenset({"rate", "drop rate"}):
                continue
            found = (found & kinds) or (found | kinds)
    if not found and _HOW_MUCH.search(left):
        return frozenset({"dose", "volume", "rate"})
    return found


def specials(left: str) -> frozenset[str]:
    """The words of `SPECIAL` that a line has."""
    return frozenset(name for name, pattern in SPECIAL.items() if re.search(pattern, left))
