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
    r"(?:checked|looked|felt|watched|read|counted|compared|listened|inspected|traced|followed|verified|confirmed|tested|"
    r"wiggled|tugged|gave it a (?:tug|wiggle|shake|look)|made sure|had a (?:look|feel|listen))\b(?: .*)?"
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
    if _LOOKED.fullmatch(text):
        return not words & _PUT_IN_DOUBT
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


def without_purpose(tokens: Tokens, known: Known) -> Tokens:
    """The words without what it was done for at their end: "taped it down to keep it still"."""
    text = " ".join(tokens)
    found = _PURPOSE.search(text)
    if found is None or any(deed.verb.base in ("keep", "stop", "hold") for deed in known.line.deeds):
        return tokens
    if (_PUT_IN_DOUBT - {"keep"}) & set(found[0].split()) or " ".join(known.line.words).endswith(found[0].strip()):
        return tokens
    return tuple(text[: found.start()].split()) or tokens
