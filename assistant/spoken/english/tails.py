"""Clauses that turn nothing round, in English: "not a drop wasted", "I checked the label", "so it won't come off".

Beside a clause that says that it is done they need not be understood word by word: that nothing went wrong, that
somebody looked, what it was for. Words of every day (common practice, no source).
"""

import re

from assistant.spoken.english.bench_words import (
    ARTICLES,
    DENIALS,
    NOUNS,
    PREPOSITIONS,
    PRONOUNS,
    TURNING,
    UNREAL,
)
from assistant.spoken.english.known import Known
from assistant.spoken.statement import Tokens


def _set(text: str) -> frozenset[str]:
    return frozenset(text.split())


_HARM = _set("""
    leak leaks leaking leaked spill spills spilled spilt spilling waste wastes wasted wasting lose losing lost touch
    touched touching kink kinks kinked kinking twist twists twisted twisting loose wobble wobbles wobbled wobbling
    wobbly splash splashed splashing fall falls fell falling slip slips slipped slipping stick sticks stuck sticking
    fuss bother trouble problem problems issue issues drama mess hassle struggle contamination contaminated brushed
    brushing dropped dropping tangled tangle tangles resistance resisted pulling pulls pulled tug tugs tugging move
    moves moved moving budge budges budged shift shifts shifted rush rushed rushing skip skipped skipping complaint
    complaints complained complain complaining flinch flinched hurt hurts wrong damage damaged tear tears torn crease
    creases wrinkle wrinkles hesitation delay mistake mistakes error errors bubbles bubble air gap gaps
""")
"""What may go wrong: a denial before it denies nothing else."""
_DONE_ON_PURPOSE = _set("""
    stick stuck sticking pull pulled pulling tug tugged tugging twist twisted twisting shift shifted move moved moving
""")
"""What a learner may have been asked to do."""
_SMALL = ARTICLES | PRONOUNS | PREPOSITIONS | DENIALS | NOUNS
_SMALL |= _set("""
    is are am has have do does did and or nor single one bit anything any some more all once ever even me him them
    us got been being gone come coming came off out loose over there anywhere along way left thing whole time itself
    each other either both ones going go
""")
"""What may stand beside it."""
_LOOKED = re.compile(
    r"(?:and )?(?:i |we )?(?:have )?(?:also |just |even |already |then )?(?:double |triple )?"
    r"(?:checked|looked|felt|watched|read|counted|compared|listened|inspected|traced|followed|"
    r"verified|confirmed|tested|"
    r"wiggled|tugged|(?:gave|given) (?:it|them|her|each one) a (?:(?:wee|little|quick|good|gentle|light) )*"
    r"(?:tug|wiggle|shake|look|pull|feel|twist)|made sure|had a (?:(?:wee|little|quick|good) )*(?:look|feel|listen)|"
    r"was (?:watching|counting|timing|checking|feeling|listening|looking)|kept (?:an|my|one) eye on|"
    r"(?:can )?(?:feel|see|hear|felt|saw|heard) (?!that$)\w+|asked (?:him|her|them|the patient))\b(?: .*)?"
)
_NODS = re.compile(
    r"(?:and )?(?:she|he|they|the patient|my colleague|colleague|my partner|the nurse) (?:all |both |"
    r"just |also )*(?:has |have )?"
    r"(?:understood|understands|understand|nodded|nods|agreed|agrees|agree|confirmed|confirms|confirmed it|confirms it|"
    r"smiled|thanked me|said (?:okay|thanks|thank you|fine|yes)|is (?:happy|fine|okay|comfortable|comfy|settled)|"
    r"is feeling (?:okay|fine|well|good)|feels (?:okay|fine|well|good)|did not mind)"
    r"(?: with (?:it|that|me)| about (?:it|that)| too| as well| now)*"
)
_SINGLE = r"(?:a|an|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|"
_SINGLE += r"seventeen|eighteen|nineteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|\d+|oh|o)"
_MONTHS = r"(?:january|february|march|april|may|june|july|august|september|october|november|december)"
_DAYS = (
    r"(?:first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|eleventh|twelfth|"
    r"thirteenth|fourteenth|fifteenth|"
    r"sixteenth|seventeenth|eighteenth|nineteenth|twentieth|thirtieth|twenty \w+|thirty first|\d+(?:st|nd|rd|th)?)"
)
_WHEN = re.compile(
    rf"(?:(?:at|on|the|today|todays|date|time|and|with|since|by|around) )*(?:(?:half|quarter|ten|five|"
    rf"twenty|twenty five) "
    rf"(?:past|to) {_SINGLE}|{_SINGLE} (?:oclock|am|pm|hundred hours|hundred)|{_SINGLE}(?: {_SINGLE}){{1,3}}|\d{{3,4}}"
    rf"|(?:the )?{_DAYS}(?: of)? {_MONTHS}(?: (?:{_SINGLE} ?)+)?|"
    rf"{_MONTHS}(?: the)? {_DAYS}(?: (?:{_SINGLE} ?)+)?|today)"
    r"(?: (?:oclock|am|pm|today|this morning|tonight|in the morning|in the afternoon))*"
)
"""A time or a date, by itself."""
_WHERE = re.compile(
    r"(?:the |her |his |in the |on the )*(?:left|right) (?:upper |lower |inner )?(?:arm|forearm|hand|wrist|side|elbow)"
)
_LISTED_BY = frozenset({"document", "chart", "record", "write", "note", "report", "say", "tell", "label"})
_BESIDE_A_LIST = _set(
    "the a an and both all two three four five six seven eight nine ten too also included including as well "
    "plus with first second last old new "
    "each every everything lot whole right down through his her my our its of to from i did "
    "is in was it been left why how long what when who reason cause happened went"
)
"""What may stand among the names of things that were written down, or told."""
_IN_THE_AIR = re.compile(
    r"\b(?:up in the air|in the air|in mid air|off the bed|away from everything|clear of everything)\b"
)
_STILL_SO = re.compile(
    r"\bstill (?=(?:there|in place|sitting|sealed|sterile|clean|untouched|disconnected|tight|tightly|"
    r"secure|covered|capped|"
    r"closed and|sound|well)\b)"
)
_WAS = re.compile(
    r"(?:(?:the|my|her|his|its|its) )?(?:\w+ )?(\w+) (?:was|were|had)\b (?!to\b|not\b|about\b|"
    r"going\b|the\b)(?:\w+ ?){1,5}"
)
_CAN_NOT = re.compile(
    r"(?:and |so |that )*(?:it|they|nothing|that|everything|she|he) (?:is not |are not )?"
    r"(?:will not|can not|does not|do not|is not going to|would not|going to|will|can) "
    r"(flow|get|go|run|move|come|fall|slip|leak|budge|pull|slide|pop|drip|shift|wobble|touch|kink|catch|turn|work)\b"
    r"(?: \w+){0,4}"
)
_PURPOSE = re.compile(
    r" (?:just )?(?:so as )?to (?:be (?:safe|sure|on the safe side)|keep|make sure|avoid|prevent|stop|help|save) "
    r"(?!trying)(?:\w+ ?){0,6}$"
)
_PUT_IN_DOUBT = (TURNING | DENIALS | UNREAL | {"but", "only", "except"}) - {"before"}
_POWERS = frozenset({"will", "can", "would", "going"})


def is_harmless(clause: Tokens, known: Known) -> bool:
    """Whether a clause only says that nothing went wrong, that somebody looked, or what cannot happen now."""
    text = " ".join(clause)
    words = set(clause)
    if _WHEN.fullmatch(text) or _is_listed(clause, known):
        return True
    if _NODS.fullmatch(text) and not words & (TURNING | DENIALS - {"not"}):
        return True
    if _LOOKED.fullmatch(text):
        return not words & (_PUT_IN_DOUBT - {"can", "was"})
    could = _CAN_NOT.fullmatch(text)
    if could is not None:
        if words & (_PUT_IN_DOUBT - DENIALS - _POWERS):
            return False
        return could[1] not in {deed.verb.base for deed in known.line.deeds} and not words & known.spoken & _HARM
    harm = words & _HARM
    if words & {"i", "we", "have"} and words & _DONE_ON_PURPOSE:
        return False  # "I haven't stuck the strip on"
    denied = [at for at, word in enumerate(clause) if word in DENIALS]
    return (
        len(denied) == 1
        and bool(harm)
        and not harm & known.spoken
        and words <= _HARM | _SMALL
        and all(at > denied[0] for at, word in enumerate(clause) if word in _HARM)
    )


def _is_listed(clause: Tokens, known: Known) -> bool:
    """Whether a clause only names what a line wants written down or told, once more: "the block, why, how long"."""
    deeds = known.line.deeds
    if not deeds or deeds[0].verb.base not in _LISTED_BY:
        return False
    if _WHERE.fullmatch(" ".join(clause)):
        return True
    names = known.named | known.things
    own = {word for word in clause if word in names or word.removesuffix("s") in names}
    asks = bool({"what", "who", "how", "why", "when"} & set(clause))
    if asks and not own - _BESIDE_A_LIST and not set(clause) & set(known.line.words) & {"what", "how", "when", "whom"}:
        return False
    return set(clause) <= own | _BESIDE_A_LIST and bool(own) and clause[-1] not in ("to", "of", "is", "it")


def as_it_stands(clause: Tokens) -> Tokens:
    """A clause without words that only seem to turn something round: "still there", "up in the air", "tip was up"."""
    text = _STILL_SO.sub("", _IN_THE_AIR.sub("up", " ".join(clause)))
    told = _WAS.fullmatch(text)
    if told is not None and (told[1] in NOUNS or told[1].removesuffix("s") in NOUNS):
        text = re.sub(r"\b(?:was|were|had)\b", "is", text, count=1)
    words = text.split()
    kept = [
        word
        for at, word in enumerate(words)
        if not (word in _KEEPS and words[at + 1 : at + 2] and words[at + 1] in _KEPT)
        and not (word == "let" and at == 1 and words[0] in ("i", "we"))
    ]
    return tuple(kept) or clause


_KEEPS = frozenset({"keep", "keeps", "keeping"})
_KEPT = ARTICLES | {"it", "them", "that", "this", "everything", "hold", "both", "one"}


def without_purpose(tokens: Tokens, known: Known) -> Tokens:
    """The words without what it was done for at their end: "taped it down to keep it still"."""
    text = " ".join(tokens)
    found = _PURPOSE.search(text)
    if found is None or any(deed.verb.base in ("keep", "stop", "hold") for deed in known.line.deeds):
        return tokens
    if (_PUT_IN_DOUBT - {"keep"}) & set(found[0].split()) or " ".join(known.line.words).endswith(found[0].strip()):
        return tokens
    return tuple(text[: found.start()].split()) or tokens
