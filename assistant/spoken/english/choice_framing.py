"""What stands around an answer among alternatives, in English: "I'd say cloudy", "too much, the bag only holds 500".

What only leads to it or is said behind it is left out, and a clause that gives nothing but its reason by figures, by
what was looked at, or by where it is written. Words of every day (common practice, no source).
"""

import re

from assistant.spoken.english.bench_words import AUXILIARIES, DENIALS, NEUTRAL, NOUNS, PREPOSITIONS
from assistant.spoken.english.deeds import cut
from assistant.spoken.statement import Tokens

_SOURCE = (
    r"(?:(?:the|this|my|our|local|hospital|ward|drug|pharmacy|new|pump|whole|little|set|bag) )*(?:book|chart|guide|"
    r"policy|order|"
    r"sheet|paper|app|table|reference|formulary|label|sticker|screen|display|message|monitor|list|leaflet|notes|"
    r"protocol|handbook|computer|result|text|readout|pump|limits)"
)
_SAYS = (
    r"(?:says?|shows?|reads?|states?|said|showed|is saying|is showing|tells me|has it down as|has it as|gives it as)"
)
_I = r"(?:i|we|you|i myself|we both|both of us|all of us)"
_LEADS = re.compile(
    rf"(?:(?:{_I} )?(?:would|will) (?:say|call (?:it|that|them)|go with)(?: that)?"
    rf"|(?:{_I} )?(?:can|could|do) (?:tell you|confirm|report|say)(?: that)?|{_I} (?:both )?(?:agree|confirm|"
    rf"report)(?: that)?"
    rf"|it is plain(?: that)?|{_SOURCE} {_SAYS}(?: (?:that|to|it|just|clearly|here|so))*|it (?:says|reads|"
    rf"shows)(?: here| that)+"
    r"|(?:my|the) answer is|answer(?= \w)|that is (?:a|an)(?= (?:no|yes|clear|definite))|oh dear|oh no|uh oh|dear me"
    r"|yes no(?= (?:it|that|this|they|he|she|there|we|i)\b)|(?:to be |being )?honest|to be fair|as it happens|"
    r"by the looks of it"
    r"|as far as i (?:can )?(?:see|tell)|from what i (?:can )?see|on (?:the )?(?:first|second) look|having looked"
    r"|definitely|clearly|obviously|absolutely|plainly) (?=\w)"
)
"""What only leads to an answer."""
_TRAILS = re.compile(
    rf" (?:(?:{_I} )?(?:would|will) say|if you ask me|(?:{_SOURCE} |it |"
    rf"that is what (?:the )?\w+ )?says so(?: (?:here|there|in|on)"
    rf"(?: \w+)*)?|(?:it says|{_SOURCE} says)(?: here)?|(?:according to|as per|going by|by|per) {_SOURCE}"
    r"|to me|for certain|for definite|no (?:doubt|question)(?: about (?:it|that))?|without a doubt|hands down|"
    r"by the looks of it"
    r"|as far as i (?:can )?(?:see|tell)|from what i (?:can )?see|(?:against|in|held up to|up to) the light"
    r"|(?:under|with|to|by|on) (?:my|the) (?:finger|thumb|fingers|fingertips|touch|eye)|when i (?:run|ran|slid|"
    r"slide) my \w+ "
    r"(?:over|along|down|round) it|no (?:bother|worries|drama|fuss|trouble)(?: at all)?|thank (?:god|goodness)|"
    r"unfortunately"
    r"|i am afraid|sorry|luckily|all good)$"
)
"""What is only said behind one."""
_NUMBER = (
    r"(?:\d+|zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|"
    r"seventeen|eighteen|nineteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|thousand|point|half|"
    r"oh|nought|a hundred|a thousand)"
)
_UNIT = (
    r"(?:mils?|ml|millilitres?|milliliters?|hours?|days?|minutes?|percent|millimoles?|units?|milligrams?|grams?|"
    r"micrograms?|"
    r"drops?|inch(?:es)?|an hour|per hour|a minute|per minute|a day|per day|per kilo|old|ago)"
)
_FIGURE = rf"(?:{_NUMBER}(?: and)? )*{_NUMBER}(?: {_UNIT})*"
_HOW = (
    r"(?:only|about|just|still|exactly|around|roughly|nearly|almost|over|under|at|to|for|up to|from|got|in|all of|"
    r"the)"
)
_BEHIND = (
    r"(?: (?:left|in it|in there|there|to go|in the bag|now|today|to run|in all|of it|still|already|max|at most|"
    r"to give))*"
)
_BY_FIGURES = re.compile(
    rf"(?:and |so |but |because |as |with )?(?:(?:it|that|this|there|they|i|we|he|she|{_SOURCE}|(?:the |small |"
    rf"old |this |my )*"
    r"(?:bag|volume|rate|dose|level|result|limit|range|usual|usual dose|usual rate|maximum|max|output|reading|"
    r"number|entry|"
    r"figure|chamber|patient|limits|vtbi))"
    r"(?: (?:only|just|still))? )?(?:(?:is|are|was|has|have|holds?|contains?|needs?|set|put|typed|entered|takes?|"
    r"goes|runs?|reads?"
    rf"|says?|shows?|wants?|asks|asked|got|gives?|made|measured|passed|ordered|starts|stops|set it|"
    rf"put it)(?: {_HOW})* )?"
    rf"(?:{_HOW} )*{_FIGURE}(?: (?:to|and|or|by) {_FIGURE})?{_BEHIND}"
)
_BY_SOURCE = re.compile(
    rf"(?:and |because |as )?(?:(?:it|{_SOURCE}) says (?:so|yes|that)(?: (?:here|there))?|says so(?: \w+){{0,4}}|"
    rf"according to"
    rf" {_SOURCE}|{_SOURCE} (?:agrees|confirms it)|it is (?:written|printed|marked|down)(?: (?:here|there|so|"
    rf"like that))?"
    r"|(?:he|she|they|patient|the patient) (?:says?|said)(?: so)?(?: (?:too|himself|herself))?"
    r"|as (?:it )?should be|as expected|as ordered|like before|as before|for this patient|for this one)"
)
_LOOKED = frozenset(
    [
        "checked",
        "looked",
        "traced",
        "followed",
        "felt",
        "read",
        "asked",
        "compared",
        "counted",
        "ran",
        "run",
        "watched",
        "inspected",
        "tipped",
        "swirled",
        "turned",
        "held",
        "searched",
        "scanned",
        "verified",
        "shook",
        "squeezed",
        "pressed",
        "touched",
        "tugged",
        "examined",
        "listened",
        "went",
    ]
)
_WHAT_IS_LOOKED_AT = (NEUTRAL | NOUNS | PREPOSITIONS | _LOOKED | frozenset({"finger", "every", "each", "hand"})) - {
    "no"
}
_BECAUSE = re.compile(r" (?:because|cause|cos|cuz|coz|seeing as|given that)(?= )")
_TELLS = re.compile(
    r"\b(?:(?:the |my |our )?(?:patient|fella|lady|gentleman|lad|client)|he|she|they) (?:tells? (?:me|us)|"
    r"told (?:me|us)|is telling "
    r"(?:me|us)|said|says|reports|is saying|reckons)(?: that)?\b"
)
_TO_COME = (
    r"(?:next \w+|tomorrow(?: \w+)?|tonight|(?:the )?(?:end of (?:the |this |next )?\w+)|(?:mon|tues|wednes|thurs|"
    r"fri|satur|sun)day"
    rf"(?: \w+)?|the weekend|this evening|this afternoon|midnight|noon|(?:another|a|one|two|three|four|five|six|"
    rf"a few|{_NUMBER})"
    r"(?: more)? (?:days?|weeks?|months?|years?|hours?)(?: (?:yet|more|from now|time))?)"
)
_GOOD_UNTIL = re.compile(
    rf"\b(?:in date|valid|good|fine|okay|fresh|lasts?|within date|current|in time)(?: (?:right|well|"
    rf"still))? (?:till|until|to|for|"
    rf"through(?: to)?) {_TO_COME}|\b(?:expires?|expiry(?: date)?(?: is)?|runs out|goes out|use by(?: date)?(?: is)?|"
    rf"expiring)(?: only| not)?(?: in| on| till| until)? {_TO_COME}"
)
_DUE_LATER = re.compile(
    rf"\bnot due (?:for (?:a )?(?:changing|change) )?(?:(?:till|until|on|in|for|again) )?{_TO_COME}"
)


_QUESTION_WORDS = frozenset({"what", "which", "who", "whom", "whose", "where", "why", "how", "whether"})
_RELATIVE_AFTER = frozenset(
    {
        "than",
        "as",
        "with",
        "exactly",
        "right",
        "just",
        "still",
        "matches",
        "match",
        "equals",
        "of",
        "leave",
        "in",
        "below",
    }
    | {
        "above",
        "over",
        "exceeds",
        "was",
        "stays",
        "stayed",
        "is",
        "fits",
        "covers",
        "like",
        "to",
        "not",
        "stands",
        "sits",
    }
)
"""Words behind which a "what" or "where" asks nothing: "more than what's in the bag", "right where it was"."""
_MODALS = frozenset({"must", "should", "can", "could", "will", "may"})
_SUBJECTS = frozenset(
    [
        "i",
        "we",
        "you",
        "it",
        "he",
        "she",
        "they",
        "this",
        "that",
        "these",
        "those",
        "there",
        "the",
        "my",
        "your",
        "everything",
        "all",
        "both",
        "any",
        "one",
        "his",
        "her",
    ]
)


def asks_which(tokens: Tokens) -> bool:
    """Whether the words ask, where alternatives are named: by a question word, or by a verb before its subject."""
    asked = [at for at, word in enumerate(tokens) if word in _QUESTION_WORDS]
    if any(at == 0 or tokens[at] not in ("what", "where") or tokens[at - 1] not in _RELATIVE_AFTER for at in asked):
        return tokens[:2] != ("where", "it")
    follows = tokens[1:2]
    if not follows or tokens[0] not in AUXILIARIES or follows[0] in DENIALS:
        return False
    return (tokens[0] not in _MODALS and follows[0] != "to") or follows[0] in _SUBJECTS


def plain(tokens: Tokens) -> Tokens:
    """The words of a statement, with what a patient tells and with times to come said in one way each."""
    text = _TELLS.sub("she says", " ".join(tokens))
    text = _DUE_LATER.sub("not due yet", _GOOD_UNTIL.sub("in date", text))
    return tuple(text.split())


def without_frame(tokens: Tokens) -> Tokens:
    """The words without what only leads to an answer, or is only said behind one."""
    text = " ".join(tokens)
    while (shorter := _TRAILS.sub("", _LEADS.sub("", text) if _LEADS.match(text) else text)) and shorter != text:
        text = shorter
    return tuple(text.split())


def is_reason(tokens: Tokens, line: str) -> bool:
    """Whether a clause only gives a reason: figures, what was looked at, or where it is written."""
    text = " ".join(tokens)
    if _BY_FIGURES.fullmatch(text) or _BY_SOURCE.fullmatch(text):
        return True
    words = [word for word in tokens if word not in ("i", "we", "have", "just", "both", "and", "so")]
    if not words or words[0] not in _LOOKED or not _WHAT_IS_LOOKED_AT.issuperset(words):
        return False
    things = NOUNS & {word for one in words for word in (one, one.removesuffix("s"), f"{one}s")}
    return not things & set(cut(line))  # "I read the date": what of the rest?


def without_because(tokens: Tokens) -> tuple[Tokens, Tokens]:
    """What is said, and the reason that is told behind a "because"; no words where there is none."""
    said, _, reason = _BECAUSE.sub(" because", f" {' '.join(tokens)} ").partition(" because ")
    return (tuple(said.split()), tuple(reason.split())) if said.strip() else (tokens, ())
