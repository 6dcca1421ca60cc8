"""What somebody was told, in English: "I told her I'll be back in ten minutes" tells when the learner will be back.

At a line that wants the patient told something, the words that were told are not the learner's own: a "will" or an
"if" among them doubts nothing. They are left out where they speak of what was to be told, and hold no denial; "told
her" is what stays.
"""

import re

from assistant.spoken.english.bench_words import DENIALS, TURNING, UNREAL
from assistant.spoken.english.framing import asks_at_its_end
from assistant.spoken.english.lines import Line
from assistant.spoken.statement import Tokens

_AUDIENCE = r"(?:him|her|them|the patient|my patient|the client|mister \w+|mrs \w+|miss \w+|ms \w+|mum|dad)"


def _set(text: str) -> frozenset[str]:
    return frozenset(text.split())


_TOLD = re.compile(
    rf"\b((?:told|informed|reminded|let|explained(?: it)? to|said to|warned) {_AUDIENCE}(?: know)?)"
    r" (?:that |about )?(.+)$"
)
_SAID = re.compile(r"\b(?:said|mentioned) (?:that )?(?=i )")
_SAID_TO = re.compile(rf"\bsaid to ({_AUDIENCE})")
_KNOWS = re.compile(
    r"\b(?:she|he|they|patient|the patient|my patient|mum) (?:now |already )?(?:knows|know|is aware|"
    r"understands) (?:that |about )?(?=i |when |the |we )"
)
"""Who knows what was to be told was told."""
_SOMETHING = re.compile(r"\b(?:knows|know|told (?:her|him|them)) (?:that )?((?:when )?(?:i am|i have|i was|my)\b.*)")
_EXPLAINED = re.compile(rf"\b(?:explained|mentioned) (?!it\b|to\b)((?:\w+ ){{1,5}})(to|for) ({_AUDIENCE})$")
_WE = r"(?:i|we)(?: (?:will|would|am|are|should|can|shall))?"
_CONTENT = {
    "back": re.compile(
        rf"\b{_WE} (?:be |come |coming |going to (?:be|come) |get |getting |look |looking |check |pop |popping |see )*"
        rf"(?:back|again|returning|return|be in|check on)\b|^back (?:in|at|by|around)\b|^(?:my return|"
        rf"in \w+ minutes?)\b"
        r"|^when$"
    ),
    "changed": re.compile(
        r"\b(?:changed?|changes|different|new|now|instead of|faster|slower|up to|down to|gone up|gone down|goes up|"
        r"goes down|up|down|more|less|rate|dose)\b"
    ),
    "watch": re.compile(
        r"\b(?:watch|look)(?:ing)?(?: out)? for\b|\b(?:pain|swelling|redness|bleeding|burning|numbness|tingling|"
        r"wetness|"
        r"signs|symptoms|warning signs|itching|stinging|puffiness|leaking)\b"
    ),
    "call": re.compile(
        r"\b(?:call|ring|press|buzz|shout|bell)(?: \w+)* (?:for|if|when|with)\b|\bwhat to (?:call|ring) for\b"
    ),
}
"""By a word of the line: how what was told speaks of it."""
_NOT_TOLD = re.compile(
    r"\b(?:not|never|nothing|no|forgot|but|except|half(?! an hour| past| hour| a)|some of|most of|"
    r"almost|part of|maybe|later|soon|wrong|nobody|something|somewhere|sometime|"
    r"told|who"
    r"|think|guess|hope|kidding|joking|(?:the|a|an|my|about|new) if)\b|"
    r"^(?:if|should|would|could|might|may|must|needs?)\b|(?<!back) in an? (?:minute|moment|while|bit|second)\b|"
    r"(?<!back )tomorrow\b|^(?:that )?(?:i|we) (?:will|would) be back$"
)
_IN_WHAT_IS_TOLD = _set("""
    will or would if when should can going must need needs may might could more less until while before after
    instead was were had your you what
""")
"""Words that turn a statement of one's own round, and not what somebody was told."""
_READ_OUT = re.compile(
    r"(?:okay |so |now |i see )*(?:(?:it|the (?:screen|display|message|alert|pump|alarm)|message|alert) )?(?:is )?"
    r"(?:says?|reads|saying|showing|reading|shows?)(?: here| that)? (?P<message>\w+(?: \w+){0,7})"
)
_NO_MESSAGE = _set("""
    something nothing what that this it press confirm check silence you error wait
""")
_LEFT_ALONE = re.compile(
    r" (?:and )?(?:i )?(?:have )?(?:not|did not|have not) (?:touched|touch|pressed|press)"
    r"(?: (?:anything|it|a thing))?(?: yet)?$"
)
_OF_CONTENT = _set("""
    was were had in at then half while when since because after before last next other another
""")
_NOT_CONTENT = _set("""
    i you let me us do does did what which who how can could think know ask tell forget sure hold hang see look not
""")
_HOURS = "one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen"
_AT_THE_TIME = re.compile(
    r"(?:and |so )?i (?:will|am going to) (?:look|check|come back|be back|return|count|have a look|recheck)"
    r"(?: (?:again|back|it|on it|the arm|the site|her|him))* (?:at|around|by) "
    rf"(?:(?:half|quarter) (?:past|to)|(?:(?:half|quarter|five|ten|twenty)(?: past| to)? )?(?:{_HOURS}|\d+))"
    r"(?: (?:oclock|thirty|fifteen|forty five))?"
)
_CLOCK = (
    rf"(?:(?:half|quarter|five|ten|twenty|twenty five) (?:past|to) (?:{_HOURS})|"
    rf"(?:{_HOURS})(?: oclock| thirty| fifteen)?)"
)
_SET_FOR = re.compile(
    rf"(?:i )?(?:have )?(?:set|put) (?:it|(?:the|my|an|a) (?:timer|alarm|reminder|clock|watch|"
    rf"phone))(?: on)? for {_CLOCK}"
    rf"|(?:the |my )?(?:timer|alarm|reminder)(?: is|s) (?:set|on) for {_CLOCK}"
)
_ALLERGEN = (
    r"(?:penicillin|amoxicillin|cephalosporins?|cefalosporins?|sulfa|sulpha|sulfonamides?|sulphonamides?|latex|iodine|"
    r"contrast|chlorhexidine|aspirin|ibuprofen|codeine|morphine|paracetamol|vancomycin|gentamicin|"
    r"erythromycin|tetracycline|"
    r"heparin|peanuts?|nuts|tree nuts|shellfish|fish|prawns|eggs?|milk|dairy|soya?|wheat|gluten|"
    r"bananas?|strawberries|kiwi|"
    r"plasters|adhesive|adhesives|tape|elastoplast|nickel|bee stings|wasp stings|pollen|dust|cats|dogs|anaesthetics?)"
)
_ALLERGIC = re.compile(
    rf"(?:(?:she|he|they|patient|the patient|my patient|it) (?:is|has|are|have) )?(?:got )?(?:only )?"
    rf"(?:allergic to |an? allergy to |allergy to |allergies to |allergies are )?(?:just |only )?"
    rf"{_ALLERGEN}(?:(?: and| plus| also)? {_ALLERGEN}){{0,4}}"
    r"(?: (?:only|only this|allergy|allergies|nothing else|no others|no other|and that is all|"
    r"and nothing else|that is all|"
    r"that is the only one|and that is the only one|and that is it))?"
)
"""Things that people are allergic to (common practice, no source)."""
_CONTENT_VERBS = frozenset({"say", "name"})
_TELLS = frozenset({"tell", "inform", "say"})


def without_what_was_told(tokens: Tokens, line: Line) -> Tokens:
    """The words without what was told, where that is what the line wants told; else as they are."""
    if not line.deeds or line.deeds[0].verb.base not in _TELLS or "patient" not in line.words:
        return tokens
    if asks_at_its_end(tokens):
        return tokens
    text = _KNOWS.sub("told him ", _EXPLAINED.sub(r"told \3 \1", _SAID.sub("told him ", " ".join(tokens))))
    text = _SAID_TO.sub(r"told \1", text)
    found = _TOLD.search(text)
    wanted = [known for word, known in _CONTENT.items() if word in line.words]
    if (
        found is None
        or not wanted
        or _NOT_TOLD.search(found[2])
        or (TURNING - _IN_WHAT_IS_TOLD) & set(found[2].split())
    ):
        return tokens
    if len(line.deeds) > 1 or not all(known.search(found[2]) for known in wanted):
        return tokens
    return tuple(text[: found.end(1)].split())


def tells_another(tokens: Tokens, line: Line) -> bool:
    """Whether somebody was told, or knows, another thing than what the line wants told: "she knows I'm here"."""
    if not line.deeds or line.deeds[0].verb.base not in _TELLS or "patient" not in line.words or len(line.deeds) > 1:
        return False
    wanted = [known for word, known in _CONTENT.items() if word in line.words]
    found = _SOMETHING.search(" ".join(tokens))
    return bool(wanted) and found is not None and not all(known.search(found[1]) for known in wanted)


def reads_out(tokens: Tokens, line: Line) -> bool:
    """Whether the words are a message that a line wants read aloud: "it says air in line"."""
    wanted = {"read", "aloud"} <= set(line.words) and line.deeds[-1:] != () and line.deeds[-1].verb.base == "read"
    if not wanted:
        return False
    text = _LEFT_ALONE.sub("", " ".join(tokens))
    found = _READ_OUT.fullmatch(text)
    if found is None:
        return False
    message = set(found["message"].split())
    return not message & (
        _NO_MESSAGE | (TURNING - {"above", "more", "less", "far"}) | line.unsaid | UNREAL | (DENIALS | {"but", "can"})
    )


def sets_a_time(tokens: Tokens, line: Line) -> bool:
    """Whether the words name the time that a learner was to set: "I'll look again at four"."""
    text = " ".join(tokens)
    set_ = line.words[:1] == ("set",) and "time" in line.words
    return set_ and any(known.fullmatch(text) for known in (_AT_THE_TIME, _SET_FOR))


def names_allergies(tokens: Tokens, line: Line) -> bool:
    """Whether the words name what a patient is allergic to, where a line wants it named: "penicillin and latex"."""
    wanted = line.words[:1] == ("name",) and "allergies" in line.words
    return wanted and _ALLERGIC.fullmatch(" ".join(tokens)) is not None


def tells_content(tokens: Tokens, line: Line) -> bool:
    """Whether the words may be what a line wants said itself: "there was a kink", at "Say what has gone wrong"."""
    says = line.deeds[:1] != () and line.deeds[0].verb.base in _CONTENT_VERBS and "nothing" not in line.words
    return says and not set(tokens) & ((TURNING - _OF_CONTENT) | _NOT_CONTENT)
