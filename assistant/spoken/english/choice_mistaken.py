"""What sounds like an alternative and is said of another thing, or of what the learner did, in English.

"I stopped it" says nothing of how the pump was found, "the bag is far above" nothing of the pump, and "I feel dizzy"
nothing of the patient.
"""

import re

from assistant.spoken.english.bench_words import NOUNS, PREPOSITIONS
from assistant.spoken.english.choices import PAST
from assistant.spoken.statement import Tokens

_TOLD_OF_DEEDS = PAST | {
    *("a slip", "as ordered", "rinse it in", "leave it", "runs freely", "it stays", "it comes out", "due")
}
"""Alternatives that may be told as what was done: "I typed it in"."""
_DID = re.compile(
    r"\b(?:i|we) (?:have |just |only |then |already |had )*(?:opened|closed|shut|stopped|started|changed|cleared|"
    r"took|removed|put|"
    r"moved|hung|freed|tore|torn|undid|unplugged|plugged|raised|lowered|wiped|flicked|tapped|cut|pinched|broke|"
    r"straightened|"
    r"tightened|loosened|paused|silenced|restarted|swapped|fixed|cleaned|dried)\b"
)
_IDIOMS = re.compile(
    r"\b(?:on the whole|torn between|quiet please|from here|mind the gap|a sound from|good for you|says allergies|"
    r"hurts? me|on the (?:left|right)(?= |$)(?! (?:hand|arm|side|one)))\b|^(?:put|place) (?:the|a|"
    r"on)\b|"
    r"\ballergic to (?:cats?|dogs?|nuts?|peanuts?|pollen|dust|bees?|eggs?|fish|shellfish|milk|grass|work|hospitals)\b"
)
_GENERALLY = re.compile(
    r"\b(?:early|late) in the \w+|\btoo (?:early|late|soon) for (?!this|it|that|the|another|a|her|him|dose)|"
    r"\b(?:went|came) in whole\b|\b(?:have|has|got|is) (?:got )?(?:large|small|big|tiny) veins\b|"
    r"\bthat is (?:only |just |really )?the (?!same|one|only|case|problem|trouble|reason)\w+(?: \w+)?$"
)
"""What sounds like an alternative and is said of the day, of all veins, or of what it turned out to be."""
_WILL = re.compile(r"\b(?:i|we) will (?!say|call|go with|leave|rinse|flush|keep|take)")
_PAPER_SAYS = re.compile(
    r"\b(?:book|policy|order|guide|chart|protocol|formulary|leaflet|handbook|table)s? (?:says?|shows?|states?|reads?)\b"
)
_LOOKED_UP = re.compile(r"\b(?:read|look up|chart|policy|label|order|entry|allergies|range|result|inspect|check)\b")
_MADE_HERE = frozenset(
    {"here", "ward", "us", "we", "i", "unit", "myself", "room", "nurse", "ourselves", "colleague", "locally", "shift"}
    | {"staff", "somebody", "someone", "label"}
)
_AT_A_LENGTH = re.compile(r"\b(?:less|more|over|under) (?:than )?(?:an?|half an?|\w+) (?:hours?|minutes?|days?)\b")
_OWN_STATE = frozenset({"dizzy", "feeling fine", "in pain", "itching", "short of breath", "comfortable", "burning"})
_SUBJECTS = {
    "it has moved": {"patient", "pole", "arm", "bed", "bag", "pump", "hand"},
    "patent": {"checklist", "patient", "pump"},
    "out of range": {"pump", "phone", "volume", "bag"},
    "within range": {"pump", "phone", "volume", "bag"},
    "far above": {"bag", "bags", "screen", "hook", "stand"},
    "level": {"bag", "bags", "bed", "screen", "pole"},
    "changed": {"dressing", "glove", "gloves", "bag", "rate", "gauze", "tape"},
    "a kink": {"arm", "elbow", "wrist", "hand", "needle"},
    "same fluid": {"patient", "rate", "drug", "volume", "time", "nurse", "colour"},
    "something else": {"patient", "rate", "volume", "time", "nurse", "label"},
    "held firmly": {"door", "pole", "arm"},
    "small vein": {"cannula", "catheter", "bag", "needle", "syringe", "arm", "hand", "patient"},
    "large vein": {"cannula", "catheter", "bag", "needle", "syringe", "arm", "hand", "patient"},
    "run in": {"patient", "pump", "primary"},
    "whole": {"bag", "set", "dressing", "box"},
    "piece missing": {"cap", "label", "tape", "dressing", "clamp"},
    "soft": {"skin", "pillow", "bed", "hand", "finger"},
    "hard cord": {"bed", "pillow", "skin", "table"},
}
"""By the alternative: things that it is not asked of, where one of them is what something is said of."""
_BESIDE = {
    "the battery": {"full", "fine", "good", "okay", "charged", "charging", "not"},
    "its battery": {"full", "fine", "good", "okay", "charged", "charging"},
    "the door": {"closed", "somebody", "someone"},
    "comes out": {"came", "may", "might"},
    "it comes out": {"came", "may", "might"},
    "stays in": {"may", "might", "i", "bag"},
    "it stays": {"may", "might", "bag", "i"},
    "none": {"warfarin", "aspirin", "heparin"},
    "safe to give": {"band", "wristband"},
    "pain": {"knee", "tooth", "head", "hip", "foot", "thumb"},
    "hanging too long": {"tonight", "tomorrow", "later", "soon"},
    "overdue": {"tonight", "tomorrow", "later", "soon"},
    "some left": {"big", "main", "primary"},
}
"""By the alternative: words beside which it is not meant."""
_WITH_A_PLACE = frozenset({"in", "into", "at", "on"})


def is_turned_by(tokens: Tokens, choices: Tokens, line: str) -> bool:
    """Whether the words tell what the learner did or what a book wants, speak of a length of time, or are an idiom."""
    text = " ".join(tokens)
    if _WILL.search(text) or (_PAPER_SAYS.search(text) and not _LOOKED_UP.search(line.lower())):
        return True
    if _GENERALLY.search(text):
        return True
    if _IDIOMS.search(text) or (_DID.search(text) and not _TOLD_OF_DEEDS & set(choices)):
        return True
    return bool({"too much", "within range", "too little"} & set(choices)) and _AT_A_LENGTH.search(text) is not None


def is_mistaken(tokens: Tokens, found: str, choices: Tokens) -> bool:
    """Whether what was found is said of another thing than is asked about."""
    words = set(tokens)
    if words & _BESIDE.get(found, set()):
        return True
    if found in _OWN_STATE and tokens[:2] in (("i", "feel"), ("i", "am"), ("i", "have")):
        return True
    if found in (*_OWN_STATE, "swelling", "pain", "painful", "red", "swollen") and words & {"may", "might"}:
        return True
    if found == "mixed on this ward" and (not words & _MADE_HERE or tokens[:2] == ("label", "says")):
        return True  # "mixed up the bags"
    if found == "something missing" and tokens[:2] == ("i", "forgot") and "all there" in choices:
        return True
    if found == "something wrong" and tokens[:2] == ("i", "said"):
        return True  # "I said the wrong rate": so did not the colleague
    if (
        found in ("share one set", "another line", "apart")
        and tokens[:2] in (("i", "have"), ("we", "have"))
        and "got" not in words
    ):
        return True
    if found in ("the secondary", "the primary"):
        other = {"drips", "dripping", "hung"} if "both level" in choices else {"full", "empty", "lower", "higher", "up"}
        return bool(words & other)
    if found == "leave it" and re.search(r"\bfor (?:now|later)\b|\bto you\b", " ".join(tokens)):
        return True
    places = (at for at, word in enumerate(tokens) if word in NOUNS or word == "checklist")
    subject = next((tokens[at] for at in places if not PREPOSITIONS & set(tokens[max(at - 2, 0) : at])), "")
    return subject in _SUBJECTS.get(found, set()) and not (found.endswith("vein") and words & _WITH_A_PLACE)
