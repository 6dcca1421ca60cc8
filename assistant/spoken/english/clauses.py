"""A statement of several clauses, in English: "it's closed, and the drops have stopped".

A clause that says that it is done may be followed by one with words that are not known, as long as that holds nothing
by which the first could be turned round: no doubt, no denial, no trouble, nobody's report, no deed that undoes it,
no other thing. Where such a clause leads, what follows may depend on it ("make sure it's closed"), and the learner
is asked; so too where one clause mixes known words with others.
"""

from collections.abc import Callable
from functools import lru_cache
from itertools import pairwise

from assistant.spoken.english.asides import aside_of
from assistant.spoken.english.bench_words import (
    ARTICLES,
    AUXILIARIES,
    DENIALS,
    FAULTS,
    LOOKED,
    NEUTRAL,
    NOUNS,
    OTHER_PLACES,
    OTHERS,
    PLAIN,
    PREPOSITIONS,
    REPORTS,
    SIDES,
    TOLD_APART,
    TURNING,
    TURNS_ONLY_GOOD,
    UNFINISHED_ENDS,
    UNREAL,
)
from assistant.spoken.english.bound import goes_astray
from assistant.spoken.english.framing import asks_at_its_end, is_put_off, written_out
from assistant.spoken.english.known import Known, known_of
from assistant.spoken.english.partly import of_a_part
from assistant.spoken.english.tails import as_it_stands, is_harmless
from assistant.spoken.english.telling import tells_another
from assistant.spoken.english.troubles import trouble_of
from assistant.spoken.english.verbs import VERBS
from assistant.spoken.statement import Asked, Sense, Tokens, Want

_JOINS = frozenset({"and", "so", "then"})
_SUBJECTS = frozenset({"it", "they", "she", "he", "we", "that", "this", "there", "everything", "both"})
_LEADS_ON = frozenset({"of", "to", "in", "on", "at", "with", "by", "from", "for", "into", "onto", "over", "than", "if"})
_SAYING = frozenset({"says", "shows", "went", "came", "goes", "looks", "feels", "stayed", "stays", "got"})
_DANGER = TURNING | TURNS_ONLY_GOOD | DENIALS | REPORTS | FAULTS | {"still", "again", "used"}
"""What turns round, or may: beside a clause that is understood nothing of it may stand."""
_PAST = frozenset(word for verb in VERBS.values() for past in verb.past for word in past.split()[:1])
_SPEAKING = frozenset({"screen", "display", "pump", "label", "it", "monitor", "message"})
_DOUBTS = frozenset(
    {"if", "whether", "maybe", "perhaps", "think", "guess", "sure", "tell", "might", "could", "should", "would", "or"}
    | {
        "probably",
        "supposed",
        "almost",
        "nearly",
        "but",
        "what",
        "how",
        "why",
        "who",
        "which",
        "unless",
        "until",
        "till",
    }
)
_OF_WHAT_IS_KNOWN = frozenset({"keep", "keeps", "when", "before", "after", "was", "were"})
"""What may turn a deed round, and says nothing against an answer that was got: "I know, they keep it open"."""
_ASKED_AFTER = frozenset({"who", "how", "when", "what"})
"""What was to be found out, as it may be repeated: "it's the nurse who decides"."""
_PUTS = frozenset({"put", "took", "back", "swapped", "changed", "turned", "unscrewed", "undid", "let", "restarted"})
"""Verbs of every day that may undo anything."""
_DID = frozenset(
    {
        "spoke",
        "rang",
        "phoned",
        "talked",
        "went",
        "took",
        "gave",
        "ran",
        "got",
        "used",
        "came",
        "worked",
        "started",
        "followed",
        "traced",
    }
)
_VERBS = _PAST | VERBS.keys()
_WORDS = NOUNS | NEUTRAL | PLAIN | AUXILIARIES | PREPOSITIONS | LOOKED
_NAMES_FAULTS = frozenset({"find", "document", "chart", "record", "say", "report", "name", "read"})
"""Where a fault is to be found, told or written down, one is named."""
_MOST_CLAUSES = 6
_STATES = frozenset({"is", "are", "has", "have", "got", "see", "feel", "hear", "start", "says"})
_OF_THE_MIND = frozenset(
    {"that", "hear", "heard", "read", "understand", "understood", "remember", "recall", "know", "knew", "feel", "felt"}
    | {"notice", "said", "says", "promise", "dreamt", "take", "was", "plan", "idea", "like", "believe", "gathered"}
)
"""What may end a clause on which the next one depends: "I have read | it is closed"."""

Gist = Callable[[Tokens, Asked], Sense | None]


def of_clauses(parts: tuple[Tokens, ...], asked: Asked, gist: Gist) -> Sense | None:
    """What a statement says of which not every clause is understood: good, or to be asked about; else None.

    Args:
        parts: its clauses; of all of them together `gist` has made nothing.
        asked: what was asked.
        gist: how one clause is read.
    """
    tokens = tuple(word for clause in parts for word in clause)
    if not 1 < len(parts) <= _MOST_CLAUSES or asks_at_its_end(tokens) or is_put_off(tokens):
        return None
    said = [(clause, gist(clause, asked)) for clause in parts]
    whole = any(sense is Sense.GOOD for _clause, sense in said)
    # Beside a clause that says all of it, what says a part of it, or says it loosely, need not be understood.
    said = [(clause, None if whole and sense is Sense.ACKNOWLEDGED else sense) for clause, sense in said]
    known = known_of(asked)
    if goes_astray(tokens, known) or tells_another(tokens, known.line) or UNREAL & set(tokens):
        return None
    unknown = [clause for clause, sense in said if sense is None and not is_harmless(clause, known)]
    senses = {sense for _clause, sense in said}
    if Sense.BAD in senses:
        # "They're not falling, and I've looked twice": a no with its reason.
        plain = Sense.GOOD not in senses and not _DOUBTS & set(tokens)
        return Sense.BAD if asked.want is Want.ANSWER and plain else None
    knows = (
        bool(known.line.answered)
        and said[0][1] is Sense.GOOD
        and not ((_DOUBTS | DENIALS | TURNING - _OF_WHAT_IS_KNOWN) - _ASKED_AFTER) & set(tokens)
    )
    if not knows and any(_may_turn(clause, asked) for clause in unknown):
        return None
    understood = tuple(word for clause, sense in said if sense is not None for word in clause)
    if not understood or gist(understood, asked) is not Sense.GOOD:
        return None
    at = next(at for at, (_clause, sense) in enumerate(said) if sense is not None)
    leads = any(
        clause in unknown and not (tells_what_was_done(clause) or _declares(clause)) for clause, _sense in said[:at]
    ) or (at > 0 and said[at][0][0] in ("that", "which"))  # "it's the cap | that's tight"
    if of_a_part(tokens, known.line):
        return Sense.ACKNOWLEDGED
    follows = (not leads or asked.want is Want.START) and not any(_acts(clause, asked) for clause in unknown)
    return Sense.GOOD if follows else Sense.ACKNOWLEDGED


def tells_what_was_done(clause: Tokens) -> bool:
    """Whether a clause tells what the learner did: "went along by feel"; nothing that follows depends on it."""
    words = tuple(word for word in clause if word not in ("i", "we", "have", "just"))
    return bool(words) and words[0] in _DID | _PAST - NOUNS


def _declares(clause: Tokens) -> bool:
    """Whether a clause is a sentence of its own, on which what follows does not depend: "the green light is on"."""
    subject = clause[0] in _SUBJECTS | ARTICLES | {"i", "we"} or clause[0].removesuffix("s") in NOUNS
    return len(clause) > 2 and subject and clause[-1] not in _OF_THE_MIND and bool(set(clause) & (_STATES | _PAST))


def core_of(tokens: Tokens, asked: Asked, gist: Gist) -> Sense | None:
    """To be asked about, where the words say that it is done once those that are not known are left out; else None."""
    known = known_of(asked)
    kept = tuple(word for word in tokens if _is_known(word, known))
    if kept == tokens or len(kept) < 2 or asks_at_its_end(tokens) or is_put_off(tokens) or _may_turn(tokens, asked):
        return None
    past = {word for deed in known.line.deeds for said in deed.verb.past for word in said.split()}
    if not set(kept) & ((known.things | known.named | past) - NEUTRAL - AUXILIARIES):
        return None  # "I am done with this nonsense": nothing of the line is spoken of
    return Sense.ACKNOWLEDGED if gist(kept, asked) in (Sense.GOOD, Sense.ACKNOWLEDGED) else None


def clauses(tokens: Tokens) -> tuple[Tokens, ...]:
    """The clauses, in their order; what joins them is left out."""
    found: list[list[str]] = [[]]
    for at, word in enumerate(tokens):
        if at and found[-1] and _begins(tokens, at):
            found.append([])
        if word not in _JOINS or found[-1]:
            found[-1].append(word)
    return tuple(tuple(clause) for clause in found if clause)


def _begins(tokens: Tokens, at: int) -> bool:
    """Whether a clause begins there."""
    word, before, follows = tokens[at], tokens[at - 1], tokens[at + 1 : at + 2]
    if word in _JOINS or word == "i":
        return True
    if before in _LEADS_ON or before in DENIALS:
        return False
    if word in _SUBJECTS:
        return bool(follows) and (follows[0] in AUXILIARIES or follows[0] in _SAYING)
    if word in DENIALS:
        return before not in AUXILIARIES
    return (
        word in ARTICLES
        and before not in _VERBS
        and any(
            one in NOUNS and (then in AUXILIARIES or then in _SAYING) for one, then in pairwise(tokens[at + 1 : at + 5])
        )
    )


def _may_turn(clause: Tokens, asked: Asked) -> bool:
    """Whether something in a clause may turn round what is said beside it."""
    known = known_of(asked)
    clause = as_it_stands(written_out(clause) or clause)
    words = set(_without_what_a_thing_says(clause))
    # "The red part" is nothing wrong where the redness is to be marked.
    asked_for = {word for word in words & FAULTS if any(other.startswith(word) for other in known.line.words)}
    if known.line.deeds and known.line.deeds[0].verb.base in _NAMES_FAULTS:
        asked_for = words & (FAULTS - UNREAL - TURNING)
    if words & (_DANGER - asked_for) or clause[0] in AUXILIARIES or clause[-1] in UNFINISHED_ENDS:
        return True
    if "next" in words and words & (known.named | known.things) & NOUNS:
        return True  # "the tape is next"
    if words & known.named & NOUNS and not words & (PREPOSITIONS | AUXILIARIES | _VERBS):
        return True  # "extension next": what is still to come
    names_faults = bool(known.line.deeds) and known.line.deeds[0].verb.base in _NAMES_FAULTS
    if (
        (trouble_of(("it", *clause)) is not None and not names_faults)
        or aside_of(clause) is not None
        or words & known.line.unsaid
    ):
        return True
    if any(word in TOLD_APART | SIDES | OTHER_PLACES.keys() and word not in known.named for word in clause):
        return True
    undone = {phrase[0] for phrase, says in known.table.items() if not says.so and len(phrase) == 1}
    leads = {one for one, then in pairwise(clause) if one in PREPOSITIONS and then in ARTICLES}
    return bool(words & (undone - leads))


def _without_what_a_thing_says(clause: Tokens) -> Tokens:
    """The words without "the screen says": what a person says may be another's word, what a screen says is seen."""
    return tuple(word for at, word in enumerate(clause) if word != "says" or clause[at - 1] not in _SPEAKING)


def _acts(clause: Tokens, asked: Asked) -> bool:
    """Whether it tells of something else that was done, which may undo it, or of what somebody else did."""
    finds = known_of(asked).line.words[:1] == ("find",)  # "he's lying on the tubing" is what was found
    return bool(set(clause) & (_undoing(asked) | (frozenset() if finds else OTHERS)))


@lru_cache(maxsize=512)
def _undoing(asked: Asked) -> frozenset[str]:
    """What verbs say that undo the deeds of a line: "took" where something was put on."""
    deeds = known_of(asked).line.deeds
    own = {word for deed in deeds for past in deed.verb.past for word in past.split()}
    undone = {word for deed in deeds for state in (*deed.not_so, *deed.verb.undone) for word in state.split()}
    so = {state for deed in deeds for state in deed.verb.states}
    if known_of(asked).line.kept:
        # What is only to be found is not to be put right yet.
        undone |= {
            word for base in ("free", "open", "release") for past in VERBS[base].past for word in past.split()[:1]
        }
    opposed = [verb for verb in VERBS.values() if undone & set(verb.states) or so & set(verb.undone)]
    words = {word for verb in opposed for past in verb.past for word in past.split()[:1]}
    words |= undone if known_of(asked).line.kept else set()
    return frozenset(words | {verb.ing for verb in opposed} | _PUTS) - own


def _is_known(word: str, known: Known) -> bool:
    singular = word.removesuffix("s")
    named = known.things | known.named
    return not {word, singular}.isdisjoint(_WORDS) or not {word, singular}.isdisjoint(named) or word in known.spoken
