"""A small kit for written grammars: rules that read words, list their words and can be walked.

A rule gives every reading of a stretch of words, never the first one that fits: two readings are a
question for the speaker. Rules do not call themselves, so a grammar is finite in depth, and the work is
bounded by the number of words.
"""

from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

Reading = tuple[int, Hashable]
"""Where a reading ends, and what it means."""


@dataclass(frozen=True)
class Opening:
    """With what a rule can begin.

    Attributes:
        words: listed words.
        written: a word on no list, such as figures.
        nothing: the rule may be left out.
    """

    words: frozenset[str]
    written: bool = False
    nothing: bool = False

    def allows(self, token: str) -> bool:
        """Whether a reading can begin with this word."""
        return self.nothing or token in self.words or (self.written and not token.isalpha())


class Rule:
    """One rule of a grammar."""

    @cached_property
    def opening(self) -> Opening:
        """With what this rule can begin; only there is it worth reading."""
        return self.first()

    def first(self) -> Opening:
        """Work out `opening`."""
        raise NotImplementedError

    def ends(self, parse: "Parse", start: int) -> Iterable[Reading]:
        """Every reading that begins at word `start`."""
        raise NotImplementedError

    def parts(self) -> Sequence["Rule"]:
        """The rules that this one is made of."""
        return ()


class Parse:
    """The readings of one sequence of words; each rule is tried once at each place.

    Args:
        tokens: the words.
        wanting: also find out with which words they could go on; costs time.
    """

    def __init__(self, tokens: Sequence[str], *, wanting: bool = False) -> None:
        self.tokens = tuple(tokens)
        self.wanted: set[str] = set()
        """Words with which the words given could go on; filled by reading them, if asked for."""
        self.wants_written = False
        """Whether something that is only written, such as figures, could come next; likewise."""
        self._wanting = wanting
        self._known: list[dict[int, tuple[Reading, ...]]] = [{} for _ in range(len(self.tokens) + 1)]

    def at(self, rule: Rule, start: int) -> tuple[Reading, ...]:
        """Every reading of `rule` that begins at word `start`, each once."""
        known = self._known[start]
        found = known.get(id(rule))
        if found is None:
            opening = rule.opening
            if opening.nothing or (opening.allows(self.tokens[start]) if start < len(self.tokens) else self._wanting):
                found = tuple(dict.fromkeys(rule.ends(self, start)))
            else:
                found = ()
            known[id(rule)] = found
        return found

    def whole(self, rule: Rule) -> tuple[Hashable, ...]:
        """Every meaning of all the words together."""
        length = len(self.tokens)
        return tuple(dict.fromkeys(value for end, value in self.at(rule, 0) if end == length))

    def has(self, words: tuple[str, ...], start: int) -> bool:
        """Whether the words stand at `start`; where the text ends within them, the next one is wanted."""
        there = self.tokens[start : start + len(words)]
        if there == words:
            return True
        if start + len(there) == len(self.tokens) and there == words[: len(there)]:
            self.wanted.add(words[len(there)])
        return False


@dataclass(frozen=True, eq=False)
class Word(Rule):
    """One word, or a fixed run of words, with its meaning."""

    text: str
    value: Hashable = None
    _words: tuple[str, ...] = field(init=False, repr=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "_words", tuple(self.text.split()))

    @property
    def words(self) -> tuple[str, ...]:
        """The words one by one."""
        return self._words

    def first(self) -> Opening:
        """The first word."""
        return Opening(frozenset(self._words[:1]))

    def ends(self, parse: Parse, start: int) -> Iterator[Reading]:
        """The one reading, where the words are there."""
        if parse.has(self._words, start):
            yield start + len(self._words), self.value


@dataclass(frozen=True, eq=False)
class Words(Rule):
    """Any one of several words or runs of words, each with its meaning."""

    table: Mapping[str, Hashable]
    _by_first: dict[str, list[tuple[tuple[str, ...], Hashable]]] = field(init=False, repr=False)

    def __post_init__(self) -> None:
        by_first: dict[str, list[tuple[tuple[str, ...], Hashable]]] = {}
        for text, value in self.table.items():
            words = tuple(text.split())
            by_first.setdefault(words[0], []).append((words, value))
        object.__setattr__(self, "_by_first", by_first)

    def first(self) -> Opening:
        """The first word of every entry."""
        return Opening(frozenset(self._by_first))

    def ends(self, parse: Parse, start: int) -> Iterator[Reading]:
        """Every entry whose words are there."""
        if start == len(parse.tokens):
            parse.wanted.update(self._by_first)
            return
        for words, value in self._by_first.get(parse.tokens[start], ()):
            if parse.has(words, start):
                yield start + len(words), value


@dataclass(frozen=True, eq=False)
class Written(Rule):
    """A word that is not on any list, such as a number in figures; `read` gives its meanings."""

    name: str
    read: Callable[[str], Iterable[Hashable]]

    def first(self) -> Opening:
        """Whatever is not letters."""
        return Opening(frozenset(), written=True)

    def ends(self, parse: Parse, start: int) -> Iterator[Reading]:
        """The readings of this one word."""
        if start == len(parse.tokens):
            parse.wants_written = True
        else:
            for value in self.read(parse.tokens[start]):
                yield start + 1, value


@dataclass(frozen=True, eq=False)
class Seq(Rule):
    """One rule after the other; `build` makes one meaning of theirs, or None for "not like this"."""

    rules: tuple[Rule, ...]
    build: Callable[..., Hashable]

    def parts(self) -> Sequence[Rule]:
        """The rules in order."""
        return self.rules

    def first(self) -> Opening:
        """The openings up to the first rule that cannot be left out."""
        openings: list[Opening] = []
        for rule in self.rules:
            openings.append(rule.opening)
            if not rule.opening.nothing:
                return _any_of(openings, nothing=False)
        return _any_of(openings, nothing=True)

    def ends(self, parse: Parse, start: int) -> Iterator[Reading]:
        """Every way in which the rules follow each other."""
        stages: list[tuple[int, tuple[Hashable, ...]]] = [(start, ())]
        for rule in self.rules:
            stages = [(end, (*values, value)) for at, values in stages for end, value in parse.at(rule, at)]
            if not stages:
                return
        for end, values in stages:
            built = self.build(*values)
            if built is not None:
                yield end, built


@dataclass(frozen=True, eq=False)
class Alt(Rule):
    """One of several rules; all of them are tried."""

    rules: tuple[Rule, ...]
    _open_to: dict[str, tuple[Rule, ...]] = field(init=False, repr=False, default_factory=dict)

    def parts(self) -> Sequence[Rule]:
        """The rules to choose from."""
        return self.rules

    def first(self) -> Opening:
        """The openings of every rule."""
        openings = [rule.opening for rule in self.rules]
        return _any_of(openings, nothing=any(opening.nothing for opening in openings))

    def ends(self, parse: Parse, start: int) -> Iterator[Reading]:
        """The readings of every rule."""
        for rule in self._worth_reading(parse, start):
            yield from parse.at(rule, start)

    def _worth_reading(self, parse: Parse, start: int) -> tuple[Rule, ...]:
        """The rules that can begin with the word at `start`; remembered for listed words."""
        if start >= len(parse.tokens):
            return self.rules
        token = parse.tokens[start]
        rules = self._open_to.get(token)
        if rules is None:
            rules = tuple(rule for rule in self.rules if rule.opening.allows(token))
            if token in self.opening.words:
                self._open_to[token] = rules
        return rules


@dataclass(frozen=True, eq=False)
class Opt(Rule):
    """A rule that may be left out; then its meaning is `default`."""

    rule: Rule
    default: Hashable = None

    def parts(self) -> Sequence[Rule]:
        """The one rule."""
        return (self.rule,)

    def first(self) -> Opening:
        """The rule's own, or nothing."""
        return _any_of([self.rule.opening], nothing=True)

    def ends(self, parse: Parse, start: int) -> Iterator[Reading]:
        """Left out, or its readings."""
        yield start, self.default
        yield from parse.at(self.rule, start)


@dataclass(frozen=True, eq=False)
class Many(Rule):
    """A rule several times over; its meaning is the tuple of meanings."""

    rule: Rule
    least: int
    most: int

    def parts(self) -> Sequence[Rule]:
        """The one rule."""
        return (self.rule,)

    def first(self) -> Opening:
        """The rule's own, or nothing where it may be left out."""
        return _any_of([self.rule.opening], nothing=self.least == 0 or self.rule.opening.nothing)

    def ends(self, parse: Parse, start: int) -> Iterator[Reading]:
        """Every number of repetitions."""
        stages: list[tuple[int, tuple[Hashable, ...]]] = [(start, ())]
        for count in range(self.most + 1):
            if count >= self.least:
                yield from stages
            stages = [(end, (*values, value)) for at, values in stages for end, value in parse.at(self.rule, at)]
            if not stages:
                return


def _any_of(openings: Sequence[Opening], *, nothing: bool) -> Opening:
    return Opening(
        frozenset().union(*(opening.words for opening in openings)),
        any(opening.written for opening in openings),
        nothing,
    )


def seq(*rules: Rule, build: Callable[..., Hashable]) -> Seq:
    """One rule after the other."""
    return Seq(rules, build)


def alt(*rules: Rule) -> Alt:
    """One of several rules."""
    return Alt(rules)


def words_of(rule: Rule) -> tuple[str, ...]:
    """Every listed word of a grammar, each once, in an order that is always the same."""
    seen: dict[str, None] = {}
    done: set[int] = set()
    waiting = [rule]
    while waiting:
        here = waiting.pop(0)
        if id(here) in done:
            continue
        done.add(id(here))
        match here:
            case Word():
                seen.update(dict.fromkeys(here.words))
            case Words():
                seen.update(dict.fromkeys(word for text in here.table for word in text.split()))
        waiting.extend(here.parts())
    return tuple(seen)


def walk(rule: Rule, choose: Callable[[int], int]) -> tuple[str, ...] | None:
    """One way through a grammar, in words; None where it ends at something that is only written.

    A rule may still refuse to read what it is walked through: only reading tells what the words mean.

    Args:
        rule: where to begin.
        choose: picks one of so many ways, from 0.
    """
    match rule:
        case Word(text=text):
            return tuple(text.split())
        case Words(table=table):
            return tuple(list(table)[choose(len(table))].split())
        case Alt(rules=rules):
            return walk(rules[choose(len(rules))], choose)
        case Opt(rule=part):
            return walk(part, choose) if choose(2) else ()
        case Many(rule=part, least=least, most=most):
            # Short ones are as likely as all long ones together.
            count = least
            while count < most and choose(2):
                count += 1
            return _walk_all([part] * count, choose)
        case Seq(rules=rules):
            return _walk_all(rules, choose)
    return None


def _walk_all(rules: Sequence[Rule], choose: Callable[[int], int]) -> tuple[str, ...] | None:
    words: list[str] = []
    for rule in rules:
        more = walk(rule, choose)
        if more is None:
            return None
        words.extend(more)
    return tuple(words)
