"""How a statement is framed, in English: whether its end asks, whether it is put off, what only leads to it."""

import re

from assistant.spoken.english.bench_words import ASKING_ENDS
from assistant.spoken.statement import Tokens

_CONDITIONS = frozenset({"until", "till", "when", "while", "before", "after", "if", "unless", "once"})
_PUT_OFF = re.compile(
    r" in (?:a|an|one|two|another|just a|half a) (?:bit|while|tick|minutes?|moments?|seconds?|secs?|mins?|hours?|few) "
    r"| (?:one|another) (?:moment|second|minute|sec|min) | going to "
    r"| once (?:it|the|she|he|they|we|i|that|you|everything) "
)
_LOOK_OUT = re.compile(r"\b(look|watch) out for\b")
_RIGHT_PLACE = re.compile(r"\b(in(?:to)? the) (?:right|proper|correct) (bin|trash|waste|container|place)\b")
_AT_A_TIME = re.compile(
    r"\b(?:at )?(?:half|quarter|five|ten|twenty|twenty five) (?:past|to) "
    r"(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b"
)
_OVER_MINUTES = re.compile(
    r"\bover (?:about )?(?:two|three|four|five|ten|fifteen|twenty|thirty|2|3|4|5|10|15|20|30) minutes\b"
)
_UNTIL_FIRM = re.compile(
    r" (?:until|till) it (?:stopped|clicked|snapped|locked|latched|would not (?:go|turn|move)(?: any)?(?: further|"
    r" more)?"
    r"|(?:was|is|felt) (?:snug|tight|firm)) "
)
_WHERE_REACHED = re.compile(r"\bwhere (?=(?:he|she|they) can (?:reach|get|grab)\b)")
_UNTIL_IT_WAS = re.compile(
    r" (?:until|till) (?=(?:it|they|there|everything|i|all|no|the \w+|the \w+ \w+)(?: all)? "
    r"(?:was|were|had|went|came|saw|got|left|reached|dripped)\b)"
)
_WAS = re.compile(r"\b(was|were|had)\b")
_NOW = {"was": "is", "were": "are", "had": "has"}
_FITS_RIGHT = (("fits", "right"), ("sits", "right"), ("works", "right"))
"""Where the last word tells how, and does not ask."""
_AS_FAR_AS = re.compile(
    r"\b(?:until|till|up to|right to|down to|as far as) (?=(?:the )?(?:tip|end|mark|line|top|brim)\b)"
)
_ENDS = frozenset(map(len, ASKING_ENDS))
"""How long they are."""


_TOUCH = re.compile(
    r"\bslightly\b|\b(?:just )?an? (?:touch|crack|sliver|tad|smidge|smidgen|hair|notch|fraction|"
    r"(?:wee|tiny|little) bit|bit)\b"
)


def a_little(tokens: Tokens) -> Tokens:
    """The words with one word for a little, where a line wants a little: "opened it a touch"."""
    return tuple(_TOUCH.sub("a little", " ".join(tokens)).split())


def asks_at_its_end(tokens: Tokens) -> bool:
    """Whether an end makes a question of a statement: "it's closed, right"."""
    if tokens[-2:] in _FITS_RIGHT:
        return False
    return any(tokens[-length:] in ASKING_ENDS for length in _ENDS if length < len(tokens))


def is_put_off(tokens: Tokens) -> bool:
    """Whether words say that it will be so: "in a minute", "going to", or "until it is full" at their beginning."""
    text = f" {' '.join(tokens)} "
    return tokens[0] in _CONDITIONS or _PUT_OFF.search(text) is not None


def written_out(tokens: Tokens) -> Tokens:
    """Without what only leads to what is seen: "I can see a drop"."""
    tokens = tuple(_OVER_MINUTES.sub("", " ".join(tokens)).split()) or tokens
    text = _WHERE_REACHED.sub("", _UNTIL_FIRM.sub(" ", f"{_AT_A_TIME.sub('', ' '.join(tokens))} ")).rstrip()
    text = _AS_FAR_AS.sub("to ", text)
    until = _UNTIL_IT_WAS.search(text)
    if until is not None:
        # "Ran it until the air was gone": so it is now.
        text = f"{text[: until.start()]} {_WAS.sub(lambda found: _NOW[found[1]], text[until.end() :])}"
    text = _LOOK_OUT.sub(r"\1 for", _RIGHT_PLACE.sub(r"\1 \2", text))
    tokens = tuple(text.split())
    kept = [
        word
        for at, word in enumerate(tokens)
        if not (word == "can" and tokens[at + 1 : at + 2] in (("see",), ("feel",), ("hear",), ("reach",), ("move",)))
    ]
    return tuple("and" if word == "n" and kept[at + 1 : at + 2] != ["s"] else word for at, word in enumerate(kept))
