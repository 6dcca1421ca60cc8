"""A second reader beside the rules: it weighs what an answer means, and says whether the rules are to be believed.

The rules read an answer word by word and refuse what they do not know. What they refuse for that alone is weighed: by
how much likelier than not do the words clearly mean this alternative, or that it is done? Weighing is a guess. So it
closes nothing by itself that matters: what is weighed heavily is marked as such, and the guide asks before it counts.
Where the rules take what weighs nothing, the guide asks as well. What asks outright stays refused, however heavily it
is weighed.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Protocol

from assistant.spoken.expect import ChoiceExpected, ConfirmExpected, Expect
from assistant.spoken.meaning import Answer, Kind, Meaning, NoMatch, Reason, Surety
from assistant.spoken.statement import Want
from assistant.spoken.tables import Tables
from assistant.spoken.tokens import Tokeniser


class Weigher(Protocol):
    """Weighs answers; it has no say in what becomes of them."""

    def weigh(self, line: str, meanings: tuple[str, ...], words: str) -> tuple[float, ...]:
        """By how much likelier than not the words clearly mean each of the meanings at the line.

        Args:
            line: as it is read aloud.
            meanings: the line's alternatives, or those of `MEANINGS`.
            words: as they were typed, or as a recogniser wrote them.

        Returns:
            Natural logarithms of odds, one for each meaning: 0 is undecided. None (empty) where it cannot tell.
        """


MEANINGS = {Want.DONE: ("done",), Want.START: ("started",), Want.ANSWER: ("yes", "no")}
"""What a line without alternatives may be answered with."""


@dataclass(frozen=True)
class Limits:
    """From which weight on something follows; chosen on lines that the reader had not learnt (the model's card).

    Attributes:
        sure: taken as it is, where nothing critical hangs on it.
        likely: the learner is asked whether it is meant.
        heard: the same of what a recogniser wrote without limits.
        believed: what the rules take is asked about below it.
        no_trouble: what the rules take for a report of trouble may all the same answer the line ("it dropped into
            place").
        not_taken_back: the same of what they hold to be taken back, to ask for something, or to tell another amount.
        apart: by how much an alternative has to outweigh the next one.
    """

    sure: float = 4.4
    likely: float = 0.0
    heard: float = 2.0
    believed: float = 0.0
    no_trouble: float = 3.0
    not_taken_back: float = 2.0
    apart: float = 2.0


LIMITS = Limits()
_NOT_KNOWN = NoMatch(Reason.UNKNOWN_WORDS)
_MAY_BE_CLEAR = frozenset({Reason.UNKNOWN_WORDS, Reason.UNSURE, Reason.QUESTION, Reason.NOT_AN_ANSWER_HERE})
"""Why the rules may have refused a clear answer: "I told him what to watch for" asks nothing."""
_Interpret = Callable[..., Meaning]


class Weighed:
    """From words to their meaning, by the rules of a language and a second reader.

    Args:
        rules: the language's `interpret`.
        tables: the language.
        weigher: the second reader.
        limits: from where on it counts.
    """

    def __init__(self, rules: _Interpret, tables: Tables, weigher: Weigher, limits: Limits = LIMITS) -> None:
        self._rules = rules
        self._weigh = weigher.weigh
        self._limits = limits
        self._statements = tables.statements
        self._tokens_of = Tokeniser(tables.writing).tokens_of
        phrases = tables.phrases
        said = (phrases.yes, phrases.no, phrases.done, phrases.also_done, phrases.acknowledged)
        self._alone = frozenset(tuple(phrase.split()) for known in said for phrase in known)

    def interpret(self, words: str, expect: Expect, *, heard: bool = False) -> Meaning:
        """As `Interpreter.interpret`; of what a recogniser heard nothing is weighed that the rules understand."""
        meaning = self._rules(words, expect, heard=heard)
        settled = heard and isinstance(meaning, Answer) and meaning.kind is not Kind.ACKNOWLEDGED
        meanings = () if settled else _meanings(expect)
        asks = words.rstrip().endswith("?")
        if not meanings or asks or not _is_to_be_weighed(meaning) or self._is_plain(words, expect):
            return meaning
        weights = dict(zip(meanings, self._weigh(_line(expect), meanings, words), strict=False))
        if not weights:
            return meaning
        if isinstance(meaning, Answer) and meaning.kind not in (Kind.ACKNOWLEDGED, Kind.TROUBLE):
            believed = weights[_said(meaning, expect)] >= self._limits.believed
            return meaning if believed else replace(meaning, surety=Surety.LIKELY)
        heaviest = max(weights, key=weights.__getitem__)
        is_back = self._takes_back(words, expect)
        surety = None if heard and is_back else self._surety(heaviest, weights, meaning, heard=heard, is_back=is_back)
        if surety is None or heaviest == "no":
            return meaning
        return replace(_answer(heaviest, expect), surety=surety)

    def _surety(
        self, heaviest: str, weights: Mapping[str, float], meaning: Meaning, *, heard: bool, is_back: bool
    ) -> Surety | None:
        """How surely it is the heaviest of them, where the rules have understood something else; None where it is not.

        Only what was typed and they do not know at all can be sure: of other words they hold that only a part was
        reported, that it is doubted or taken back, or that something is wrong; and a recogniser may have written other
        words than were said.
        """
        limits, weight = self._limits, weights[heaviest]
        apart = min((weight - other for name, other in weights.items() if name != heaviest), default=math.inf)
        is_trouble = isinstance(meaning, Answer) and meaning.kind is Kind.TROUBLE
        special = ((is_trouble, limits.no_trouble), (is_back, limits.not_taken_back), (heard, limits.heard))
        least = max((limits.likely, *(least for applies, least in special if applies)))
        if weight < least or apart < limits.apart * (1 if heard else 0.5):
            return None
        can_be_sure = meaning == _NOT_KNOWN and not (is_back or heard)
        return Surety.SURE if can_be_sure and weight >= limits.sure and apart >= limits.apart else Surety.LIKELY

    def _is_plain(self, words: str, expect: Expect) -> bool:
        """Whether the words stand alone or are an author's own: what they mean is settled."""
        tokens = self._tokens_of(words)
        if isinstance(expect, ChoiceExpected):
            own = [saying for saying, _ in expect.sayings()]
        else:
            asked = expect.asked if isinstance(expect, ConfirmExpected) else None
            own = [*asked.good, *asked.bad] if asked else []
        return tokens in self._alone or any(tokens == self._tokens_of(saying) for saying in own)

    def _takes_back(self, words: str, expect: Expect) -> bool:
        choices = expect.choices if isinstance(expect, ChoiceExpected) else ()
        tokens = self._tokens_of(words)
        return self._statements is not None and self._statements.takes_back(tokens, _line(expect), choices)


def _is_to_be_weighed(meaning: Meaning) -> bool:
    """Whether it closes something, or was understood as nothing that does for words that may be harmless."""
    match meaning:
        case (
            Answer(kind=Kind.DONE | Kind.CHOICE | Kind.ACKNOWLEDGED | Kind.TROUBLE)
            | Answer(kind=Kind.CONFIRM, value="yes")
        ):
            return True
        case NoMatch(reason=reason):
            return reason in _MAY_BE_CLEAR
    return False


def _meanings(expect: Expect) -> tuple[str, ...]:
    if " " not in _line(expect):
        return ()  # a single word tells nothing of what is asked
    match expect:
        case ConfirmExpected(asked=asked) if asked is not None:
            return MEANINGS[asked.want]
        case ChoiceExpected(choices=choices):
            return choices
    return ()


def _line(expect: Expect) -> str:
    if isinstance(expect, ConfirmExpected) and expect.asked is not None:
        return expect.asked.line
    return expect.line if isinstance(expect, ChoiceExpected) else ""


def _said(answer: Answer, expect: Expect) -> str:
    """Which of the meanings an answer is."""
    if answer.kind is Kind.CHOICE:
        return str(answer.value)
    return _meanings(expect)[0]


def _answer(meaning: str, expect: Expect) -> Answer:
    match expect:
        case ChoiceExpected():
            return Answer(Kind.CHOICE, meaning)
        case ConfirmExpected(done_is_yes=True):
            return Answer(Kind.DONE, "done")
    return Answer(Kind.CONFIRM, meaning)
