"""What the reader of answers learns from: rows of what learners say, and what chance makes of them.

A row is a line, the words of a learner and what they mean there; an example is a line, one of its meanings, some words
and whether they clearly mean it.
"""

import hashlib
import re
from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from random import Random

MEANINGS = {"done": ("done",), "wait": ("started",), "question": ("yes", "no")}
"""What may be meant where a line names no alternatives; `assistant.spoken.weighing.MEANINGS` by other names."""
_WRITTEN = {"start": "started"}
_CHOICE = "choice "

AROUND = (
    *("{}", "okay {}", "okay, {}", "yeah {}", "yep, {}", "alright, {}", "right, {}", "so {}", "um {}", "well, {}"),
    *("{} now", "{}, all good", "{}, thanks", "there we go, {}", "good, {}", "uh {}", "and {}", "got it, {}"),
    *(
        "let me see. {}",
        "{}, yes",
        "{} I'd say that's it",
        "hm, {}",
        "oh good, {}",
        "{}, next one please",
        "lovely, {}",
    ),
)
"""What changes nothing of an answer, and mends nothing of a near miss."""
AGAINST = (
    *("is it {}", "should I say {}", "I think {}", "I hope {}", "maybe {}", "almost {}", "about to be {}", "not {}"),
    *(
        "I'm not sure {}",
        "I doubt {}",
        "as if {}",
        "I forgot whether {}",
        "in case {}",
        "if {}",
        "until {}",
        "nearly {}",
    ),
    *("{} or not", "{} I think", "{} maybe", "{} I hope", "{} I guess", "{} tomorrow", "{} soon", "{} later", "{} not"),
    *("{} not yet", "{} in a minute", "{} just kidding", "{}?", "{}, or is it?", "{} wait no", "{} scratch that"),
    *("{} hang on, no", "{} my foot", "{} if only", "{} but it isn't", "{} once I've looked", "pretend {}", "{}, not"),
    *("let's say {}", "I'd love to say {}", "nobody said {}", "what do you mean, {}", "{} would be nice", "I guess {}"),
    *("probably {}", "sort of {}", "partly {}", "{} in theory", "they told me {}", "everyone says {}", "she says {}"),
    *("no way {}", "I can't tell if {}", "whether {} I don't know", "I haven't looked but {}", "read me {} again"),
    *("you said {}", "the line says {}", "it used to be {}", "I bet {}", "{} in my head", "allegedly {}", "when {}"),
    *(
        "{}, or so she says",
        "before {}",
        "I'll get it so that {}",
        "make sure {}",
        "can you check {}",
        "it looks like {}",
    ),
    *(
        "{} on the other one",
        "the last patient's was {}",
        "{}, no, that's the other one",
        "tell me when {}",
        "{} nearly",
    ),
    *("{} apart from one", "all but one {}", "I'd rather {}", "yesterday {}", "my partner says {}", "unless {}"),
    *("I can't say {}", "it isn't true that {}", "don't tell me {}", "imagine {}", "{} they reckon", "supposedly {}"),
)
"""What takes an answer away: questions, doubts, wishes, hearsay, other times and things."""


@dataclass(frozen=True)
class Row:
    """What was said at a line, and what it means there.

    Attributes:
        line: as it is read aloud.
        meanings: all that may be meant.
        words: the learner's.
        means: one of the meanings; "" where they clearly mean none of them.
        whole: whether a doubt may be put round it: "no" and "not done" turn into anything.
    """

    line: str
    meanings: tuple[str, ...]
    words: str
    means: str


@dataclass(frozen=True)
class Example:
    """A line, one of its meanings, some words, and whether they clearly mean it."""

    line: str
    meaning: str
    words: str
    so: bool


def rows_of(path: Path) -> Iterator[Row]:
    """The rows of a table as `tests/data/answers` has them, at lines of the kinds that are read."""
    for text in path.read_text(encoding="utf-8").splitlines()[2:]:
        kind, line, words, means = text.split("\t")
        alternatives = kind.removeprefix(_CHOICE).split(" | ") if kind.startswith(_CHOICE) else ()
        meanings = MEANINGS.get(kind, tuple(alternatives))
        if meanings:
            said = _WRITTEN.get(means, means)
            yield Row(line, meanings, words, said if said in meanings else "")


def part_of(name: str, parts: int) -> int:
    """The part of the rows that a line, or a table of one writer, belongs to: all its rows are in the same one."""
    return int.from_bytes(hashlib.sha256(name.lower().encode()).digest()[:4], "big") % parts


class Lessons:
    """Examples in an order that chance chooses, with more that follow from the rows.

    Args:
        rows: what was said.
        seed: of what is drawn.
    """

    def __init__(self, rows: Iterable[Row], seed: int) -> None:
        self._rows = list(rows)
        self._chance = Random(seed)  # noqa: S311 - no secret
        self._clear: dict[str, dict[str, list[str]]] = defaultdict(lambda: defaultdict(list))
        for row in self._rows:
            if row.means and row.means != "no":
                self._clear[row.line][row.means].append(row.words)
        self._lines = {row.line: row.meanings for row in self._rows}
        self._content = {line: _content(line, *meanings) for line, meanings in self._lines.items()}

    def epoch(self) -> list[Example]:
        """Every row once, as it is or dressed, and what follows from some of them."""
        found = [example for row in self._rows for one in self._made(row) for example in _examples(one)]
        self._chance.shuffle(found)
        return found

    def _made(self, row: Row) -> Iterator[Row]:
        chance = self._chance
        frame = chance.choice(AROUND) if chance.random() < 0.3 else "{}"
        yield self._said(row, frame.format(row.words), row.means)
        if not row.means or row.means == "no":
            return
        bare = row.words.rstrip(".!?")
        if chance.random() < 0.3:
            yield self._said(row, chance.choice(AGAINST).format(bare), "")
        same = self._clear[row.line][row.means]
        if chance.random() < 0.12 and len(same) > 1:
            yield self._said(
                row, f"{bare}{chance.choice((', ', '. ', ', and ', ' and '))}{chance.choice(same)}", row.means
            )
        others = [means for means in self._clear[row.line] if means != row.means]
        if others and chance.random() < 0.15:
            other = chance.choice(self._clear[row.line][chance.choice(others)])
            yield self._said(row, f"{bare}{chance.choice((' or ', ' and ', ', ', ', no, ', ' but '))}{other}", "")
        if chance.random() < 0.12:
            elsewhere = self._elsewhere(row)
            if elsewhere:
                yield self._said(elsewhere, elsewhere.words, "")

    def _elsewhere(self, row: Row) -> Row | None:
        """The same words at another line, where they speak of something that it does not name."""
        said = _content(row.words)
        for _ in range(5):
            line = self._chance.choice(list(self._lines))
            own = self._content[row.line] & said
            if len(said) >= 2 and own - self._content[line] and len(self._content[line] & said) <= len(own) - 1:
                return Row(line, self._lines[line], row.words, "")
        return None

    def _said(self, row: Row, words: str, means: str) -> Row:
        chance = self._chance
        if chance.random() < 0.4:
            words = re.sub(r"[.,;:!]+(?=\s|$)", "", words)
        if chance.random() < 0.05 and len(words) > 8:
            at = chance.randrange(len(words) - 2)
            words = words[:at] + words[at + 1] + words[at] + words[at + 2 :]
        return Row(row.line, row.meanings, words, means)


def _examples(row: Row) -> Iterator[Example]:
    return (Example(row.line, meaning, row.words, meaning == row.means) for meaning in row.meanings)


_NO_NAMES = """
    the a an it is are and or of to in on at for with by this that until say done start both each any all your you what
    does do has have be still yet its as out off up down from into once more again now not no
"""
_EMPTY = frozenset(_NO_NAMES.split())


def _content(*texts: str) -> frozenset[str]:
    """Words that name something, without their endings."""
    words = re.findall(r"[a-z]+", " ".join(texts).lower())
    return frozenset(re.sub(r"(?:ing|ed|es|s)$", "", word) for word in words if word not in _EMPTY)
