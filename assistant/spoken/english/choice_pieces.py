"""Which of several alternatives the clauses of a statement say of which not all are understood, in English."""

from assistant.spoken.english.bench_words import (
    AUXILIARIES,
    FAULTS,
    NOUNS,
    OTHER_PLACES,
    TOLD_APART,
    UNFINISHED_ENDS,
    WHERE_OR_BY_WHAT,
)
from assistant.spoken.english.choice_claims import DENIALS, Claims, one_of
from assistant.spoken.english.choice_reading import TURNS, ChoiceReading
from assistant.spoken.english.choices import OF_A_PART
from assistant.spoken.english.clauses import tells_what_was_done
from assistant.spoken.english.deeds import cut
from assistant.spoken.english.troubles import trouble_of
from assistant.spoken.statement import Tokens

_MOST_PIECES = 6


def of_pieces(pieces: list[Tokens], claims: Claims, choices: Tokens, line: str) -> str | None:
    """The alternative that the clauses of a statement say which are understood, where no other one turns it round."""
    if not 1 < len(pieces) <= _MOST_PIECES:
        return None
    understood: list[ChoiceReading] = []
    beside: list[Tokens] = []
    for piece in pieces:
        reading = ChoiceReading(piece, claims, line)
        if reading.read():
            understood.append(reading)
        else:
            beside.append(piece)
    if not understood:
        return None
    whole = ChoiceReading(tuple(word for reading in understood for word in reading.tokens), claims, line)
    for reading in understood:
        whole.take_in(reading)
    found = whole.choice(choices)
    if found is None or any(may_turn(piece, found, claims, line) for piece in beside):
        return None
    name = " ".join(cut(found))
    named = " " in name and any(name in " ".join(reading.tokens) for reading in understood)
    return found if named or found in OF_A_PART or all(tells_what_was_done(piece) for piece in beside) else None


def may_turn(piece: Tokens, found: str, claims: Claims, line: str) -> bool:
    """Whether a clause that is not understood may turn round what is said beside it, or say another alternative."""
    words = set(piece)
    if not piece:
        return False
    if words & (TURNS | DENIALS) or piece[0] in AUXILIARIES or piece[-1] in UNFINISHED_ENDS:
        return True
    things = {one_of(word) for word in words} & NOUNS - WHERE_OR_BY_WHAT
    if found not in OF_A_PART and (words & FAULTS or things or trouble_of(piece) is not None):
        return True
    said = [claim for at in range(len(piece)) for _length, claim in claims.listed(piece, at)]
    if any(choice != found for claim in said for choice, _part in claim.so | claim.not_so):
        return True
    return any(
        word in TOLD_APART or OTHER_PLACES.get(word, frozenset()) & set(cut(line)) for word in words - set(cut(line))
    )
