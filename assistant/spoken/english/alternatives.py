"""Which of several alternatives words say, in English: "not torn, in date" of "sealed and in date, torn or expired".

As in `gist`, every word has to be known, and whatever may turn the meaning round ends the reading. An alternative
of several parts is said where all its parts are; one may also be said by denying all others, and one of two that
leave nothing between them by denying the other.
"""

import re
from functools import lru_cache
from itertools import pairwise

from assistant.spoken.english.address import says_nothing, without_address
from assistant.spoken.english.bench_words import (
    AUXILIARIES,
    DETERMINERS,
    NOUNS,
    TURNING,
    TURNS_ONLY_GOOD,
    UNFINISHED_ENDS,
)
from assistant.spoken.english.bound import is_not_quite
from assistant.spoken.english.choice_claims import DENIALS, Claims, claims_of, content
from assistant.spoken.english.choice_framing import is_reason, plain, without_because, without_frame
from assistant.spoken.english.choice_mistaken import is_mistaken, is_turned_by
from assistant.spoken.english.choice_pieces import may_turn, of_pieces
from assistant.spoken.english.choice_reading import ChoiceReading
from assistant.spoken.english.choices import FELT, ways_of
from assistant.spoken.english.clauses import clauses
from assistant.spoken.english.comments import is_comment
from assistant.spoken.english.deeds import cut
from assistant.spoken.english.framing import asks_at_its_end, is_put_off
from assistant.spoken.statement import Tokens

_ONLY_HEARD = frozenset({"okay", "right", "alright", "all", "sure", "ready", "great", "yes"})
_BUT = re.compile(r" (?:apart from|aside from|except(?: for)?) ")
_TOUCHED = re.compile(r" when i (?:push|press|touch|feel|flush|move)(?: (?:on )?(?:it|there|the syringe))? ")
_ELSEWHERE = re.compile(
    r"\bnext (?:door|bed|bay|room|patient|station|bench)\b|\b(?:neither|none|both|one) of (?:us|you)\b"
)
_DENIED_BUT = re.compile(r"\b(?:not|never)\b.*\b(?:but|except|apart from)\b")
_OF_THE_LEARNER = re.compile(
    r"\bmy (?:\w+ )?(?:hands?|arms?|fingers?|wrists?|skin|bag|back|head|chest|side|thumbs?|foot|feet|knees?|throat|"
    r"eyes?|signature|pen|name|shirt|coat|badge|cup|lunch|gloves?|shoes?|phone)\b|\b(?:for|with) me\b"
)
"""What is the learner's own, where a patient or a thing is asked about: "my hand's swollen"."""
_OFF_OR_BACK = re.compile(r"\balarms? (?:is |are |has |was |now )*off\b|\bmoved back\b")
"""An alarm that is off may have gone off; what moved back is where it was."""

_DOUBTS = (TURNING | TURNS_ONLY_GOOD | {"if", "or"}) - frozenset(
    [
        "would",
        "need",
        "needs",
        "want",
        "wants",
        "was",
        "had",
        "about",
        "only",
        "what",
        "how",
        "roughly",
        "nearly",
        "almost",
        "you",
        "more",
        "just",
    ]
)
"""Words that may not go with what is left out around an answer: "it says so here, maybe"."""
_STILL_TO_DO = re.compile(
    r"\bstill (?:to|have to|need to|got to|has to|must|gotta) (?!run\b|go\b|come\b|infuse\b|drip\b)"
    r"|^(?:i |we )?(?:have not|did not) (?!see|seen|find|found|notice|spot|feel|felt|get|got|hear|heard|any|a\b|"
    r"the same)"
    r"|\b(?:i|we) (?:have not|did not) (?!see|seen|find|found|notice|spot|feel|felt|get|got|hear|heard|any|a\b|"
    r"have|use|need)"
)
"""What is not yet done: "I'm still to look up the time"."""
_HARD_TO = re.compile(
    r"\b(?:hard|difficult|tricky|impossible) to (?:feel|follow|reach|see|say|tell|know|judge|make|find|check)\b"
)
_ONLY_LOOKED = re.compile(
    r"(?:i |we )?(?:have |am |need to )?(?:just |also |already )?(?:looked|looking|look|checked|checking|read|"
    r"reading|"
    r"asked|asking|compared|inspected|felt|followed|traced|need|want)(?: at| up| for| about| over| through| along)?"
    r" (?:the|his|her|my|their|its|that|this|both)(?: \w+){1,3}"
)
_STILL = frozenset({"left", "there", "in", "go", "hanging", "bottom", "bag", "chamber", "fluid", "it"})
"""What a "yet" says no more of than "still": "there's a bit left yet"."""
_WHAT_IS_DONE = frozenset({"not sure", "stays in", "it stays", "comes out", "it comes out", "rinse it in", "leave it"})
"""What a learner says of what is to be done: "we're leaving it in"."""
_BEFORE_IS = frozenset({"neither", "both", "none", "only", "the", "just"})
_ASKED = re.compile(r"^ask\b|\bask how\b")
_SEEMS = re.compile(r"\b(?:looks?|seems?|appears?)\b(?! (?:after|at)\b)")


@lru_cache(maxsize=8192)
def chosen(
    tokens: Tokens, choices: Tokens, sayings: tuple[tuple[str, str], ...], line: str, parts: tuple[Tokens, ...] = ()
) -> str | None:
    """The alternative that the words say; None where they say none, more than one, or are not wholly understood.

    Args:
        tokens: the words.
        choices: the alternatives.
        sayings: an author's ways to say one: the words, and the alternative.
        line: what was asked, "" where it is not known.
        parts: the words as marks such as commas part them; none where nothing was written.
    """
    if not tokens or set(tokens) <= _ONLY_HEARD:
        return None
    if any(part[0] in AUXILIARIES and part[1:2] and part[1] not in DENIALS for part in parts[1:]):
        return None  # "no leaks, is that a bit cloudy"
    names_it = tokens[0] in ("the", "his", "her") and len(tokens) == 2 and tokens[1] in cut(line)
    if names_it and tokens not in {*map(cut, choices), *(cut(said) for said, _choice in sayings)}:
        return None  # "the allergies": what of them?
    exact = _listed(choices).get(tokens, frozenset())
    if len(exact) == 1:
        return next(iter(exact))
    claims = claims_of(choices, sayings)
    keep = _kept(choices, sayings)
    if is_turned_by(tokens, choices, line) or _is_turned(_bare(tokens, keep), claims, line):
        return None
    found = _read(
        _bare(tokens, keep),
        tuple(_bare(part, keep) for part in parts if not _is_beside(part, keep)),
        claims,
        choices,
        line,
    )
    if found is None:
        framed, reason = without_because(plain(tokens))
        said = [_unframed(part, keep) for part in (map(plain, parts) if len(parts) > 1 and not reason else (framed,))]
        said = [
            part for part in said if part and not _is_beside(part, keep) and (part in keep or not is_reason(part, line))
        ]
        framed = tuple(word for part in said for word in part)
        if (set(plain(tokens)) - set(framed) - set(reason)) & _DOUBTS:
            return None
        exact = _listed(choices).get(framed, frozenset())
        found = next(iter(exact)) if len(exact) == 1 and not reason else None
        if found is None and framed and framed != tokens:
            found = _read(framed, tuple(said), claims, choices, line)
        found = None if found is None or may_turn(reason, found, claims, line) else found
    if found is None or is_mistaken(tokens, found, choices) or _is_of_another(tokens, found, line):
        return None
    return found


def _read(tokens: Tokens, bare: tuple[Tokens, ...], claims: Claims, choices: Tokens, line: str) -> str | None:
    """What a statement says that is whole and plain, or its clauses together."""
    if len(bare) < 2 or not any(DENIALS & set(part) and not ChoiceReading(part, claims, line).read() for part in bare):
        reading = ChoiceReading(tokens, claims, line)
        found = reading.choice(choices) if reading.read() else None
        if found is not None:
            return found
    pieces = [piece for part in bare or (tokens,) for piece in clauses(part)]
    return of_pieces([piece for piece in pieces if not set(piece) <= _ONLY_HEARD], claims, choices, line)


def _unframed(part: Tokens, keep: frozenset[Tokens]) -> Tokens:
    """A part without what stands around an answer."""
    return part if part in keep else _bare(without_frame(_bare(part, keep)), keep)


@lru_cache(maxsize=256)
def _kept(choices: Tokens, sayings: tuple[tuple[str, str], ...]) -> frozenset[Tokens]:
    """What says something here, and is left whole."""
    return frozenset(claims_of(choices, sayings).table)


def _is_beside(part: Tokens, keep: frozenset[Tokens]) -> bool:
    """Whether a part only leads to the others, or says nothing."""
    return part in (("no",), ("yes",), ("yes", "no"), ("no", "no")) or (
        part not in keep and (says_nothing(part) or is_comment(part))
    )


def _bare(tokens: Tokens, keep: frozenset[Tokens]) -> Tokens:
    """The words without what says nothing of any alternative."""
    text = f" {' '.join(without_address(tokens, keep))} "
    tokens = without_address(tuple(_TOUCHED.sub(" ", _BUT.sub(" but ", text)).split()), keep)
    if len(tokens) > 1 and tokens[-1] in ("is", "are") and tokens[0] in _BEFORE_IS:
        tokens = tokens[:-1]  # "neither one is"
    still = set(tokens[-2:-1]) <= _STILL and not {"any", "all", "is", "has"} & set(tokens[:1])
    return tokens[:-1] if tokens[-1:] == ("yet",) and (set(tokens) & DENIALS or still) else tokens


def _is_turned(tokens: Tokens, claims: Claims, line: str) -> bool:
    """Whether the words are put off, ask, repeat the line, or say it of something else."""
    if not tokens or is_put_off(tokens) or tokens[-1] in UNFINISHED_ENDS or _asks(tokens, claims):
        return True
    if (
        tokens[0] == "a"
        and len(tokens) > 3
        and any(word.removesuffix("s") in NOUNS and word.removesuffix("s") in cut(line) for word in tokens[1:3])
    ):
        return True  # "a cloudy bag's no good": not this one
    if _repeats(tokens, cut(line)) or _goes_on(tokens) or ("looked", "like") in pairwise(tokens):
        return True
    for at, word in enumerate(tokens[:-3]):
        if word == "not" and tokens[at + 2] == "and" and tokens[at + 3 : at + 4] in claims:
            return True  # "not dry and hard": is it hard, or is it not?
    text = " ".join(tokens)
    # "It is not sound except a kink"; "the pump next door is alarming".
    if _ONLY_LOOKED.fullmatch(text):
        return True  # "I checked the fluid": what of it?
    turns = (_DENIED_BUT, _ELSEWHERE, _STILL_TO_DO, _OF_THE_LEARNER, _OFF_OR_BACK, _HARD_TO)
    return any(turned.search(text) for turned in turns) or is_not_quite(text)


def _is_of_another(tokens: Tokens, found: str, line: str) -> bool:
    """Whether what was found is said of another thing, or of the learner."""
    if _is_with_another(tokens, found, line):
        return True
    if tokens[:2] in (("i", "am"), ("we", "are")) and found not in _WHAT_IS_DONE:
        return True  # "I'm comfortable": it is not the learner who is asked about
    if found.startswith("a ") and tokens[:2] == ("this", "is") and len(tokens) == 3:
        return True  # "this is hard"
    if found in FELT and _ASKED.search(line.lower()) and _SEEMS.search(" ".join(tokens)):
        return True  # "she looks all right to me": it is for the patient to tell
    of_things = found.startswith("it has ") or found == "together"
    return of_things and bool({"i", "we"} & set(tokens))  # "I moved it", "we looked it up together"


def _is_with_another(tokens: Tokens, choice: str, line: str) -> bool:
    """Whether it is compared with another thing than the line names: "level with the pump"."""
    named = re.search(rf"\b{re.escape(choice.lower())} with the (\w+)", line.lower())
    told = re.search(r"\bwith (?:the |my |her |his )?(\w+)", " ".join(tokens))
    return named is not None and told is not None and told[1] in NOUNS and told[1] != named[1]


@lru_cache(maxsize=256)
def _listed(choices: Tokens) -> dict[Tokens, frozenset[str]]:
    """The alternatives that a listed way to say one means, by its words."""
    found: dict[Tokens, frozenset[str]] = {}
    for choice in choices:
        for way in ways_of(choice, choices):
            found[cut(way)] = found.get(cut(way), frozenset()) | {choice}
    return found


def _repeats(tokens: Tokens, line: Tokens) -> bool:
    """Whether it is a piece of the line, said after the assistant: "air in the set"."""
    return (
        len(tokens) > 1
        and tokens[-1] in NOUNS
        and any(line[at : at + len(tokens)] == tokens for at in range(len(line)))
    )


def _asks(tokens: Tokens, claims: Claims) -> bool:
    """Whether the end asks: "it's dry, right"; not in "complete and right"."""
    said = content(tokens)
    return asks_at_its_end(tokens) and not (
        (tokens[-1] == "no" and tokens[-2] in ("says", "said"))
        or (tokens[-1] == "right" and any(said[-length:] in claims for length in range(2, len(said) + 1)))
    )


def _goes_on(tokens: Tokens) -> bool:
    """Whether the end only names what comes next: "the bag's fine, now the set"."""
    bare = tuple(word for word in tokens if word not in DETERMINERS)
    return len(bare) > 1 and bare[-1] in NOUNS and bare[-2] in ("now", "then", "next")
