"""What a line asks for, in English: the deeds of an instruction, the points of a question."""

import re
from dataclasses import dataclass
from functools import lru_cache

from assistant.spoken.english.answered import answered_of
from assistant.spoken.english.deeds import Deed, cut, deeds_of
from assistant.spoken.english.questions import Point, read_question
from assistant.spoken.english.repeats import meanwhile_of, unsaid_of, untouched_of
from assistant.spoken.english.terms import Kept, also_said_of, kept_of, told_of
from assistant.spoken.statement import Asked, Tokens, Want


@dataclass(frozen=True)
class Line:
    """What a line asks for.

    Attributes:
        want: what sort of answer.
        words: the words of the line.
        deeds: of an instruction.
        points: of a question.
        things: what a question is about.
        joined: what it joins, each by its words: an answer that names some of them says nothing of the rest.
        asked_at_once: the parts of a question that commas and "and" join.
        either: any one of the points makes the answer a yes ("redness or swelling").
        asks: the verb with which a question begins, as it may be taken up: "is", "do", "did".
        absent: the question asks for something to be absent, so that a bare no may mean either.
        kept: how an instruction wants something to be left.
        answered: what an instruction wants to have come about.
        instead: what may be said instead: "none are known".
        text: the line of an instruction, as it is written.
        meanwhile: how what goes on meanwhile, or is to be left alone, may be repeated.
        told: what is to be said, each by its words: whoever names some of it has not said the rest.
        unsaid: what is to be left alone, by the words that say that it was not: "pressed".
    """

    want: Want
    words: Tokens
    deeds: tuple[Deed, ...] = ()
    points: tuple[Point, ...] = ()
    things: tuple[str, ...] = ()
    joined: tuple[frozenset[str], ...] = ()
    asked_at_once: tuple[str, ...] = ()
    either: bool = False
    asks: str = ""
    absent: bool = False
    kept: Kept | None = None
    answered: frozenset[str] = frozenset()
    instead: frozenset[str] = frozenset()
    text: str = ""
    meanwhile: tuple[Tokens, ...] = ()
    unsaid: frozenset[str] = frozenset()
    told: tuple[frozenset[str], ...] = ()


@lru_cache(maxsize=512)
def read_line(asked: Asked) -> Line:
    """What the line asks for."""
    if asked.want is not Want.ANSWER:
        deeds = deeds_of(asked.line)
        return Line(
            asked.want,
            cut(asked.line),
            deeds=deeds,
            told=told_of(asked.line, deeds),
            kept=kept_of(asked.line),
            answered=answered_of(asked.line),
            instead=also_said_of(asked.line),
            text=asked.line,
            unsaid=unsaid_of(asked.line),
            meanwhile=(*meanwhile_of(asked.line), *untouched_of(asked.line)),
        )
    read = read_question(asked.line)
    return Line(
        asked.want,
        cut(asked.line),
        points=read.points,
        asked_at_once=tuple(re.split(r", and |, | and ", re.split(r"(?<=[.:]) ", asked.line)[-1])),
        things=read.things,
        joined=read.joined,
        either=read.either,
        asks=read.asks,
        absent=read.absent,
    )
