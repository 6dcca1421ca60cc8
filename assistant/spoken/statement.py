"""What a statement of the learner's says about the step that was asked: the port that a language fills."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Protocol

from assistant.spoken.meaning import Command, Trouble

Tokens = tuple[str, ...]
"""The pieces of an utterance, as `assistant.spoken.tokens` gives them, without hesitations and courtesies."""


class Sense(StrEnum):
    """What a statement says. Only `GOOD` can close a step, and nothing is ever guessed towards it."""

    GOOD = "good"  # it is done; the answer to the question is yes
    BAD = "bad"  # it is not done; the answer to the question is no
    ASKED = "asked"  # a question, whatever it is about
    UNSURE = "unsure"  # unfinished, intended, doubted: "almost", "I think so", "about to"
    ACKNOWLEDGED = "acknowledged"  # "okay": heard, and nothing said about it; or only a part was reported


class Want(StrEnum):
    """What sort of answer a line asks for."""

    DONE = "done"  # something is to be done
    START = "start"  # something timed is to begin: the learner says when
    ANSWER = "answer"  # a question, answered by yes or no


@dataclass(frozen=True)
class Asked:
    """What was asked, as far as it helps to understand the answer.

    Attributes:
        line: the line that was read aloud: "Close the roller clamp." or "Is the line free of air?".
        want: what sort of answer it asks for.
        good, bad: the author's own words for it, each as it is said.
    """

    line: str
    want: Want
    good: tuple[str, ...] = ()
    bad: tuple[str, ...] = ()


class Statements(Protocol):
    """How a language understands statements. It must refuse (None) whatever holds a word that it does not know."""

    def sense(self, tokens: Tokens, asked: Asked, parts: tuple[Tokens, ...] = ()) -> Sense | None:
        """What the words say about what was asked; None where they say nothing that is understood.

        Args:
            tokens: the words.
            asked: what was asked.
            parts: the words as marks such as commas part them; none where nothing was written.
        """

    def chosen(
        self,
        tokens: Tokens,
        choices: Tokens,
        sayings: tuple[tuple[str, str], ...],
        line: str,
        parts: tuple[Tokens, ...] = (),
    ) -> str | None:
        """The one of several alternatives that the words say, in words of their own: "murky" of "cloudy".

        Args:
            tokens: the words.
            choices: the alternatives.
            sayings: an author's other ways to say one of them: the words, and the alternative.
            line: what was asked, "" where it is not known.
            parts: the words as marks such as commas part them; none where nothing was written.
        """

    def trouble(self, tokens: Tokens) -> Trouble | None:
        """The trouble that the words report, whatever was asked; None where they report none."""

    def aside(self, tokens: Tokens) -> Command | None:
        """The command that words amount to which are understood as nothing else; never one that answers a step."""

    def takes_back(self, tokens: Tokens, line: str, choices: Tokens) -> bool:
        """Whether words ask which, take back what they say, say it for others, or tell of another amount.

        Args:
            tokens: the words.
            line: what was asked.
            choices: its alternatives; none where something is to be done or is so.
        """

    def sayings(self, asked: Asked) -> tuple[tuple[str, Sense], ...]:
        """Finite sentences that are likely here, with what each says, for recognisers.

        Beside the good and the bad ones they hold what is easily misheard as a good one: its negations, its
        questions, its unfinished forms. A recogniser that does not know these hears the good one in their place.
        """

    def opposed(self, saying: str) -> tuple[str, ...]:
        """What is easily misheard as one of several choices: its negations, its questions, its doubts."""

    def words_for(self, asked: Asked) -> tuple[str, str]:
        """The two short answers that the assistant offers, good and bad: ("closed", "still open")."""
