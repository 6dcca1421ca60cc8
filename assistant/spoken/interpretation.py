"""Words and what is expected: the one way from an utterance to its meaning.

The whole utterance must have a meaning; nothing is spotted inside other words, and nothing that only comes
near is accepted. Typed words come the same way.
"""

import re
from functools import lru_cache

from assistant.spoken.aloud import Aloud
from assistant.spoken.expect import (
    AnyExpected,
    ChoiceExpected,
    ConfirmExpected,
    Expect,
    NameExpected,
    NumberExpected,
    TextExpected,
)
from assistant.spoken.figures import written_badly
from assistant.spoken.listing import Listing
from assistant.spoken.meaning import Answer, Kind, Meaning, NoMatch, Reason
from assistant.spoken.names import NameWords
from assistant.spoken.quantities import NumberAnswers, Quantities
from assistant.spoken.statement import Sense
from assistant.spoken.tables import Tables
from assistant.spoken.tokens import LONGEST, Sentence, Tokeniser, clean_text, glued, printable
from assistant.spoken.units import UnitWords

_ACKNOWLEDGED = "acknowledged"
_MIXED = "mixed"
_HEARD = Answer(Kind.ACKNOWLEDGED, "acknowledged")
_MARKS = re.compile(r"[,;:.!?](?=\s|$)|\s[-\u2013\u2014]+\s")
"""What parts clauses where it is written."""
_MOST_TOKENS = 60
"""Words of an utterance that can still be an answer; free text may be longer."""


class Interpreter:
    """What words mean in a language.

    Args:
        tables: the language.
        tokeniser, units, quantities, names, aloud, listing: its parts.
    """

    def __init__(
        self,
        tables: Tables,
        tokeniser: Tokeniser,
        units: UnitWords,
        quantities: Quantities,
        names: NameWords,
        aloud: Aloud,
        listing: Listing,
    ) -> None:
        self._tokens_of = tokeniser.tokens_of
        self._numbers = NumberAnswers(tables, units, quantities)
        self._readings = quantities.readings
        self._find_name = names.find
        self._speech = aloud.speech
        self._said_of = lru_cache(maxsize=256)(self._sayings_of)
        phrases = tables.phrases
        self._commands = {phrase: command for command, known in phrases.commands.items() for phrase in known}
        self._confirmations = {
            tuple(phrase.split()): label
            for label, known in (
                (_ACKNOWLEDGED, phrases.beside_an_answer),
                ("yes", phrases.yes),
                ("no", phrases.no),
                ("done", (*phrases.done, *phrases.also_done)),
            )
            for phrase in known
        }
        self._longest_confirmation = max(map(len, self._confirmations))
        self._hesitations = tables.writing.hesitations
        self._courtesies = tuple(tuple(words.split()) for words in tables.writing.courtesies)
        self._at_either_end = frozenset(word for words in self._courtesies for word in (words[0], words[-1]))
        self._names = Sentence(phrases.before_names, phrases.behind_names)
        self._carriers = tuple(tuple(words.split()) for words, kind in phrases.carriers.items() if kind is None)
        self._acknowledged = frozenset(tuple(phrase.split()) for phrase in phrases.acknowledged)
        self._statements = tables.statements
        self._corrections = tuple(
            sorted((tuple(words.split()) for words in phrases.corrections), key=len, reverse=True)
        )

    def interpret(self, words: str, expect: Expect, *, heard: bool = False) -> Meaning:
        """What the words mean where `expect` is expected.

        Args:
            words: as typed, or as a recogniser wrote them.
            expect: the frame.
            heard: the words come from a recogniser: a number in figures ("125") then does not show how it was
                said, so it does not count as said digit by digit. Typed figures do.

        Returns:
            `Answer`, `Ambiguous` or `NoMatch` with the reason.
        """
        if len(words) > LONGEST:
            return NoMatch(Reason.TOO_LONG)
        tokens = self._tokens_of(words)
        bare = self._without_courtesies(tuple(t for t in tokens if t not in self._hesitations))
        if not bare:
            return NoMatch(Reason.EMPTY)
        command = self._commands.get(" ".join(bare)) or self._commands.get(" ".join(tokens))
        if command is not None:
            return Answer(Kind.COMMAND, command)
        if isinstance(expect, TextExpected):
            if not printable(words):
                return NoMatch(Reason.UNKNOWN_WORDS)
            return Answer(Kind.TEXT, clean_text(words))
        if len(bare) > _MOST_TOKENS:
            return NoMatch(Reason.TOO_LONG)
        if isinstance(expect, NumberExpected) and (glued(words) if heard else written_badly(words)):
            return NoMatch(Reason.NOT_A_NUMBER if heard else Reason.BADLY_WRITTEN)
        if words.rstrip().endswith("?") and not isinstance(expect, NumberExpected | AnyExpected):
            # A number is read back; everything else would be taken at once.
            return NoMatch(Reason.QUESTION)
        if words.rstrip().endswith(("...", "\u2026")) and isinstance(expect, ConfirmExpected):
            return NoMatch(Reason.UNSURE)
        return self._answer(words, tokens, bare, expect, heard)

    def _parts_of(self, words: str) -> tuple[tuple[str, ...], ...]:
        """The words as commas and the like part them, without hesitations and courtesies."""
        pieces = (self._tokens_of(piece) for piece in _MARKS.split(words))
        bare = (self._without_courtesies(tuple(t for t in piece if t not in self._hesitations)) for piece in pieces)
        return tuple(filter(None, bare))

    def _answer(
        self, words: str, tokens: tuple[str, ...], bare: tuple[str, ...], expect: Expect, heard: bool
    ) -> Meaning:
        meaning = self._in_frame(words, tokens, bare, expect, heard)
        if not isinstance(meaning, NoMatch) or isinstance(expect, AnyExpected) or self._statements is None:
            return meaning
        trouble = None if meaning.reason is Reason.QUESTION else self._statements.trouble(bare)
        if trouble is not None:
            return Answer(Kind.TROUBLE, trouble)
        command = self._statements.aside(bare)
        return meaning if command is None else Answer(Kind.COMMAND, command)

    def _in_frame(
        self, words: str, tokens: tuple[str, ...], bare: tuple[str, ...], expect: Expect, heard: bool
    ) -> Meaning:
        label = self._confirmation(bare)
        match expect:
            case ConfirmExpected():
                return self._confirm(words, bare, label, expect, heard)
            case NumberExpected():
                if label is not None:
                    return NoMatch(Reason.NOT_AN_ANSWER_HERE)
                return self._numbers.number(tokens, bare, expect, heard)
            case NameExpected(names=expected):
                name = self._name(bare, expected)
                if name is not None:
                    return Answer(Kind.NAME, name)
                if label is not None or self._readings(bare):
                    return NoMatch(Reason.NOT_AN_ANSWER_HERE)
                return NoMatch(Reason.UNKNOWN_WORDS)
            case ChoiceExpected():
                ways = (bare, self._after_carrier(bare), self._with_its_end(tokens, bare))
                parts = self._parts_of(words)
                choice = next((found for way in ways if (found := self._choice(way, expect, parts))), None)
                if choice is not None:
                    return Answer(Kind.CHOICE, choice)
                if label is not None or self._readings(bare):
                    return NoMatch(Reason.NOT_AN_ANSWER_HERE)
                return NoMatch(Reason.UNKNOWN_WORDS)
            case AnyExpected():
                if label in ("yes", "no"):
                    return Answer(Kind.CONFIRM, label)
                if label == "done":
                    return Answer(Kind.DONE, "done")
                if label is not None:
                    return NoMatch(Reason.NOT_AN_ANSWER_HERE)
                return self._numbers.number(tokens, bare, None, heard)
            case TextExpected():  # pragma: no cover - answered before
                raise AssertionError("free words are answered before this")

    def _confirm(
        self, words: str, bare: tuple[str, ...], label: str | None, expect: ConfirmExpected, heard: bool
    ) -> Meaning:
        """A yes, a no, a done; or what the line's own words amount to."""
        asked = expect.asked
        if asked is None:
            return self._of_read_back(bare, label, expect, heard)
        if bare in self._acknowledged and bare not in map(self._tokens_of, asked.good):
            return _HEARD
        if label == _MIXED:
            return NoMatch(Reason.NOT_AN_ANSWER_HERE)
        if label == "done" and expect.done_is_yes and expect.bare:
            return self._good(expect)
        sense = None if self._statements is None else self._statements.sense(bare, asked, self._parts_of(words))
        if sense is Sense.ACKNOWLEDGED:
            # "No" to "Is it free of air?" may mean that there is none.
            return _HEARD
        if label == "no" or (label is not None and sense is Sense.BAD):
            # "Yes, there is", of air that ought to be gone, is a no.
            return Answer(Kind.CONFIRM, "no")
        if label == "yes" or (label == "done" and expect.done_is_yes):
            # Where the line's own words are wanted, a bare yes is none of them; "all set" may be.
            if sense is Sense.GOOD and label == "yes" and not expect.done_is_yes and self._is_done_beside_yes(bare):
                return self._good(expect)
            return self._confirmed(bare, label, expect) if expect.bare else _HEARD
        match sense:
            case Sense.GOOD:
                return self._good(expect)
            case Sense.BAD:
                return Answer(Kind.CONFIRM, "no")
            case Sense.ASKED:
                return NoMatch(Reason.QUESTION)
            case Sense.UNSURE:
                return NoMatch(Reason.UNSURE)
        return self._confirmed(bare, label, expect)

    def _of_read_back(self, bare: tuple[str, ...], label: str | None, expect: ConfirmExpected, heard: bool) -> Meaning:
        """A yes or a no to what was read back, alone or with the number itself."""
        if label is None and expect.number_unit:
            corrects = next((lead for lead in self._corrections if bare[: len(lead)] == lead), ())
            if corrects and (instead := self._instead(bare[len(corrects) :], expect.number_unit, heard)):
                return Answer(Kind.CONFIRM, "no", instead=instead)
            if self._confirmation(bare[:1]) == "yes":
                repeated = self._instead(bare[1:], expect.number_unit, heard)
                same = repeated is not None and (repeated.value, repeated.unit) == (expect.number, expect.number_unit)
                return Answer(Kind.CONFIRM, "yes") if same else NoMatch(Reason.NOT_AN_ANSWER_HERE)
        if label is None and expect.repeated:
            said = bare[1:] if self._confirmation(bare[:1]) == "yes" else bare
            if said == self._tokens_of(expect.repeated):
                return Answer(Kind.CONFIRM, "yes")
        return self._confirmed(bare, label, expect)

    def _confirmed(self, bare: tuple[str, ...], label: str | None, expect: ConfirmExpected) -> Meaning:
        """What the phrases that mean something by themselves amount to."""
        if label in ("yes", "no"):
            return Answer(Kind.CONFIRM, label)
        if label == "done" and expect.done_is_yes:
            return Answer(Kind.DONE, "done")
        if label is not None or self._readings(bare):
            return NoMatch(Reason.NOT_AN_ANSWER_HERE)
        return NoMatch(Reason.UNKNOWN_WORDS)

    def _instead(self, rest: tuple[str, ...], unit: str, heard: bool) -> Answer | None:
        """The number that was said in one breath with a no; it is read back in its turn."""
        for words in (rest, *(rest[len(lead) :] for lead in self._corrections if rest[: len(lead)] == lead)):
            found = self._numbers.number(words, words, NumberExpected(unit), heard) if words else None
            if isinstance(found, Answer):
                return found
        return None

    def _is_done_beside_yes(self, bare: tuple[str, ...]) -> bool:
        """Whether a yes has words beside it that also stand alone: "yes, all set"."""
        rest = tuple(word for word in bare if word != "yes")
        return rest != bare and self._confirmation(rest) == "done"

    @staticmethod
    def _good(expect: ConfirmExpected) -> Answer:
        return Answer(Kind.DONE, "done") if expect.done_is_yes else Answer(Kind.CONFIRM, "yes")

    def _name(self, bare: tuple[str, ...], expected: tuple[str, ...]) -> str | None:
        """The name that these words are, alone or in a sentence: "it's a bag of normal saline"; None for none."""
        name = self._find_name(bare, expected) or self._find_name(self._after_carrier(bare), expected)
        return name or next(
            (found for words in self._names.inside(bare) if (found := self._find_name(words, expected))), None
        )

    def _choice(self, bare: tuple[str, ...], expect: ChoiceExpected, parts: tuple[tuple[str, ...], ...]) -> str | None:
        """The choice that these words are, written or spoken, or in a sentence of its own; None for none."""
        choice = self._said_of(expect).get(bare) if bare else None
        if choice is not None or self._statements is None:
            return choice
        return self._statements.chosen(bare, expect.choices, expect.phrases, expect.line, parts)

    def _sayings_of(self, expect: ChoiceExpected) -> dict[tuple[str, ...], str]:
        """What each saying of a choice means, written or spoken; the first counts."""
        found: dict[tuple[str, ...], str] = {}
        for saying, choice in expect.sayings():
            for said in (saying, self._speech(saying)):
                found.setdefault(self._tokens_of(said), choice)
        return found

    def _confirmation(self, bare: tuple[str, ...]) -> str | None:
        """What the words confirm: "yes", "no", "done", or "mixed" where they contradict themselves."""
        # Every way to cut the words into phrases, as the kinds of phrase that it takes.
        reached: dict[int, set[frozenset[str]]] = {0: {frozenset()}}
        for at in range(len(bare)):
            if at not in reached:
                continue
            for end in range(at + 1, min(at + self._longest_confirmation, len(bare)) + 1):
                label = self._confirmations.get(bare[at:end])
                if label is not None:
                    reached.setdefault(end, set()).update(kinds | {label} for kinds in reached[at])
        # "Okay, done" is a done: what only says that something was heard changes nothing beside an answer.
        ways = {kinds - {_ACKNOWLEDGED} or kinds for kinds in reached.get(len(bare), set())}
        if not ways:
            return _ACKNOWLEDGED if bare in self._acknowledged else None
        if ways == {frozenset({_ACKNOWLEDGED})}:
            return _ACKNOWLEDGED
        if ways == {frozenset({"done"})}:
            return "done"
        if all(kinds <= {"yes", "done"} for kinds in ways):
            return "yes"
        # "it is not right" is also "it is not" and "right": a no that can be read as one is one.
        pure_no = frozenset({"no"}) in ways and not any(kinds <= {"yes", "done"} for kinds in ways)
        return "no" if pure_no else _MIXED

    def _after_carrier(self, bare: tuple[str, ...]) -> tuple[str, ...]:
        """The words after "it is" or "the label says"; none where nothing of the kind stands before them."""
        for words in self._carriers:
            if bare[: len(words)] == words:
                return bare[len(words) :]
        return ()

    def _with_its_end(self, tokens: tuple[str, ...], bare: tuple[str, ...]) -> tuple[str, ...]:
        """The words with what may be no courtesy at their end: "not well"; none where nothing was dropped there."""
        said = tuple(t for t in tokens if t not in self._hesitations)
        at = next((at for at in range(len(said)) if said[at : at + len(bare)] == bare), len(said))
        return said[at:] if said[at:] != bare else ()

    def _without_courtesies(self, tokens: tuple[str, ...]) -> tuple[str, ...]:
        """The words without "please" and its like at either end; all of them where nothing else is left."""
        bare = tokens
        changed = True
        while changed and bare and (bare[0] in self._at_either_end or bare[-1] in self._at_either_end):
            changed = False
            for words in self._courtesies:
                if bare[: len(words)] == words:
                    bare, changed = bare[len(words) :], True
                elif bare[-len(words) :] == words:
                    bare, changed = bare[: -len(words)], True
        return bare
