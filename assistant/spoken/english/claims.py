"""The grammar of a statement, in English: which words make which claims about the points of a line.

A statement is a row of claims that leaves no word over. A claim has its own few shapes: "the clamp is closed", "clamp
closed", "I have closed it". What has none of them is not understood, so that no word can change it unnoticed.
"""

from dataclasses import dataclass
from functools import lru_cache

from assistant.spoken.english.lines import DETERMINERS, NUMBERS, Deed, Line, Point, read_line
from assistant.spoken.english.qualities import GOOD_FINDINGS
from assistant.spoken.grammar import Many, Opt, Parse, Rule, Words, alt, seq
from assistant.spoken.statement import Asked, Sense, Tokens, Want


@dataclass(frozen=True)
class Claim:
    """That some of the points are so, or are not.

    Attributes:
        about: the places of the points in their row; empty for filling words.
        so: whether they are so.
    """

    about: frozenset[int]
    so: bool = True


_NOTHING = Claim(frozenset())
_HOW = (
    *("now", "already", "fully", "completely", "properly", "firmly", "tightly", "securely", "all the way", "all"),
    *(
        "nice and tight",
        "nice and slow",
        "nice and slowly",
        "really well",
        "very well",
        "carefully",
        "slowly",
        "gently",
    ),
    *("all the way round", "all the way down", "all the way in", "to the end", "right to the end", "to the tip"),
    *("all the way to the tip", "well", "nicely", "fine", "up", "for you", "by hand", "just", "wide", "safely"),
    *("through to the end", "right up to the collar", "at all", "anywhere", "too", "again", "perfectly", "quite"),
)
_BEFORE = ("now", "already", "fully", "completely", "properly", "all", "just", "both", "wide", "nicely", "safely")
_JOIN = ("and", "so", "okay", "well", "then", "and then", "alright", "oh")
_FINISHED = (
    *(
        "done",
        "all done",
        "it is done",
        "that is done",
        "this is done",
        "i am done",
        "we are done",
        "all of it is done",
    ),
    *(
        "finished",
        "all finished",
        "it is finished",
        "i am finished",
        "complete",
        "completed",
        "it is complete",
        "all set",
    ),
    *(
        "sorted",
        "all sorted",
        "that is me done",
        "that is sorted",
        "everything is done",
        "i have done it",
        "i have done that",
    ),
    *("i did it", "i did that", "did it", "did that", "it is all done", "that is all done", "they are done", "done it"),
    *(
        "job done",
        "i have finished",
        "taken care of",
        "i took care of it",
        "that is finished",
        "both done",
        "i did both",
    ),
)
_UNFINISHED = (
    *("not done", "not yet", "i did not", "i have not", "i did not do it", "i have not done it", "it is not done"),
    *(
        "i have not done that",
        "i did not do that",
        "not finished",
        "not complete",
        "it is not complete",
        "nothing is done",
    ),
    *("not done yet", "it is not finished", "it is not", "not all of it", "not quite", "i still have to do it", "no"),
    *("i have not started", "have not started", "have not done that", "have not done it", "not ready", "not really"),
)
_PRONOUNS = ("it", "that", "this", "they", "them", "everything", "both", "these", "those", "all of it", "all of them")
_BE = (
    "is",
    "are",
    "has been",
    "have been",
    "is all",
    "are all",
    "are both",
    "is now",
    "are now",
    "got",
    "went",
    "looks",
)
_NOT_BE = (
    "is not",
    "are not",
    "has not been",
    "have not been",
    "was not",
    "is still not",
    "are still not",
    "does not look",
)
_HAVE = ("i", "we", "i have", "we have", "i have just", "i have already", "i just", "have", "and i", "i went and")
_HAVE_NOT = (
    "i have not",
    "i did not",
    "we have not",
    "we did not",
    "have not",
    "did not",
    "i never",
    "never",
    "i can not get",
)
_TAKEN_UP = {
    "is": ("is", "are"),
    "are": ("are", "is"),
    "do": ("do",),
    "does": ("does", "do"),
    "did": ("did",),
    "have": ("have",),
    "has": ("has", "have"),
}


def _words(*texts: str) -> Words:
    return Words(dict.fromkeys(texts))


def _row(claim: Claim, *rules: Rule) -> Rule:
    return seq(*rules, build=lambda *_: claim)


class _Shapes:
    """The shapes of claims about one line."""

    def __init__(self, line: Line) -> None:
        self._line = line
        self._everything = frozenset(range(len(line.deeds) or len(line.points) or 1))
        numbers = tuple(word for word in line.words if word.isdigit() or word in NUMBERS.values())
        counts = tuple({*numbers, *(NUMBERS.get(word, word) for word in numbers)})
        lasting = tuple(
            f"{lead}{count} {unit}"
            for count in counts
            for unit in ("seconds", "minutes")
            for lead in ("", "for ", "the full ", "all ", "for the full ")
        )
        self._how = Many(_words(*_HOW, *lasting), 0, 3)
        self._before = Many(_words(*_BEFORE), 0, 2)

    def whole(self) -> Rule:
        """The whole statement; its meanings are tuples of claims."""
        every = self._everything
        claims: list[Rule] = [_row(_NOTHING, _words(*_JOIN))]
        if self._line.want is Want.ANSWER:
            for at, point in enumerate(self._line.points):
                claims += self._point(at, point)
            claims += self._taken_up()
            claims.append(
                _row(Claim(every), _words("all good", "all fine", "everything is good", "everything is fine"))
            )
        else:
            claims.append(_row(Claim(every), self._before, _words(*_FINISHED), self._how))
            claims.append(_row(Claim(every, so=False), _words(*_UNFINISHED)))
            for deed in dict.fromkeys(self._line.deeds):
                claims += self._deed(deed)
        return Many(alt(*claims), 1, 7)

    def _named(self, things: tuple[str, ...]) -> tuple[Rule, Rule]:
        """A thing by its name: before a verb, and with its verb drawn together ("clamps closed" for "clamp's")."""
        both = {**dict.fromkeys(things), **{f"{thing}s": None for thing in things if not thing.endswith("s")}}
        article = Opt(_words(*DETERMINERS, "all the", "both the", "every one of the", "one", "old", "new"))
        if not both:
            return _words("it"), _words("it is")
        return seq(article, Words(both), build=lambda *_: True), _words(*both)

    def _deed(self, deed: Deed) -> list[Rule]:
        deeds = self._line.deeds
        mine = frozenset({deeds.index(deed)})
        same = frozenset(at for at, other in enumerate(deeds) if other.verb == deed.verb)
        rules: list[Rule] = []
        name, _short = self._named(deed.things)
        it = alt(_words(*_PRONOUNS))
        so, not_so = _words(*deed.so), _words(*(deed.not_so or {"undone"}))
        place = Opt(_words(*(deed.places or ("there",))))
        past = _words(*deed.verb.past, *(s for s in deed.so if s.split()[0] in {p.split()[0] for p in deed.verb.past}))
        base = _words(deed.verb.base, *(f"{deed.verb.base} {word}" for word in ("up", "on", "off", "down", "in")))
        particle = Opt(_words(*(state for state in deed.so if len(state.split()) == 1), "down", "up", "off", "in"))
        for thing, about in ((it, same), (name, mine if deed.things else same)):
            good, bad = Claim(about), Claim(about, so=False)
            rules += [
                _row(good, thing, _words(*_BE), self._before, so, place, self._how),
                _row(bad, thing, _words(*_NOT_BE), self._before, so, place, Opt(_words("yet"))),
                _row(bad, thing, _words(*_BE, "is still", "are still", "still"), self._before, not_so, place),
                _row(good, Opt(_words(*_HAVE)), past, thing, particle, place, self._how),
                _row(bad, _words(*_HAVE_NOT), alt(past, base), thing, particle, place, Opt(_words("yet"))),
                *(
                    _row(good, Opt(_words(*_HAVE)), _words(first), thing, _words(rest), place, self._how)
                    for first, _, rest in (said.partition(" ") for said in deed.verb.past)
                    if rest
                ),
                _row(good, _words("got", "i have got", "i have", "have got"), thing, so, place, self._how),
            ]
        rules += [
            _row(Claim(mine if deed.things else same), name, self._before, so, place, self._how),
            _row(Claim(same), self._before, so, place, self._how),
            _row(Claim(same), Opt(_words(*_HAVE)), past, place, self._how),
            _row(Claim(same, so=False), _words("not", "not all"), self._before, so, place, Opt(_words("yet"))),
            _row(Claim(same, so=False), _words("still"), not_so),
            _row(Claim(same, so=False), name, Opt(_words("still", "is still")), not_so),
            _row(Claim(same, so=False), not_so),
            _row(Claim(same), _words("that is the"), Words(dict.fromkeys(deed.things or ("it",))), so),
            _row(Claim(same), _words("finished", "i have finished"), _words(deed.verb.ing), Opt(it)),
        ]
        if self._line.want is Want.START:
            lead = Opt(_words("i am", "we are", "okay", "it is"))
            rules.append(_row(Claim(self._everything), lead, _words(deed.verb.ing), Opt(alt(it, name)), self._how))
            begun = (
                "start",
                "starting",
                "started",
                "begin",
                "go",
                "now",
                "start now",
                "starting now",
                "start the clock",
            )
            further = (
                *(
                    "start the timer",
                    "start counting",
                    "i am starting",
                    "i am starting now",
                    "i have started",
                    "let go",
                ),
                *(
                    "i have let go",
                    "i have let go of it",
                    "i let go",
                    "i have let go of it now",
                    "i am holding pressure now",
                ),
            )
            rules.append(_row(Claim(self._everything), _words(*begun, *further)))
        return rules

    def _point(self, at: int, point: Point) -> list[Rule]:
        good, bad = Claim(frozenset({at})), Claim(frozenset({at}), so=False)
        name, _short = self._named(self._line.things)
        if point.asked in ("match", "agree") and "and" in self._line.words:
            # "The name matches" says nothing of the birth date.
            further = Many(seq(_words("and"), name, build=lambda *_: True), 1, 4)
            name = seq(name, further, build=lambda *_: True)
        it = alt(_words(*_PRONOUNS, "she", "he", "the skin", "the site", "site"), name)
        very = Many(_words(*_BEFORE, "still", "really", "a bit", "very", "perfectly", "quite"), 0, 2)
        be = _words(*_BE, "looks", "look", "feels", "seems")
        rules: list[Rule] = []
        for claim, denial, states in ((good, bad, point.so), (bad, good, point.not_so)):
            if states:
                state = _words(*states)
                rules += [
                    _row(claim, Opt(it), Opt(be), very, state, self._how),
                    _row(denial, Opt(it), _words(*_NOT_BE, "not", "does not", "do not"), very, state, self._how),
                ]
        findings = ((good, bad, point.there), (bad, good, point.flaws))
        for claim, denial, nouns in findings:
            if nouns:
                noun = _words(*nouns)
                where = Opt(
                    seq(
                        _words("in", "at", "near", "around", "along", "on"),
                        Opt(_words("the", "my", "it", "there")),
                        Opt(_words("line", "tubing", "bag", "site", "port", "top", "chamber", "skin", "it")),
                        build=lambda *_: True,
                    )
                )
                some = Opt(
                    _words("a", "some", "one", "a little", "a bit of", "still some", "lots of", "a few", "good", "an")
                )
                seen = _words("there is", "there are", "i see", "i can see", "i have", "i have got", "i feel", "i got")
                none = _words(
                    "no",
                    "not a single",
                    "not any",
                    "there is no",
                    "there are no",
                    "i see no",
                    "i can see no",
                    "i do not see any",
                    "i can not see any",
                    "i do not see a",
                    "there is not any",
                    "without",
                    "free of",
                    "it is free of",
                    "i have no",
                    "she has no",
                    "he has no",
                    "i do not feel any",
                    "i feel no",
                    "no more",
                )
                rules += [
                    _row(claim, seen, some, noun, where),
                    _row(claim, _words("some", "a", "still some", "a few", "good"), noun, where),
                    _row(denial, none, noun, Opt(_words("left", "at all", "anywhere")), where, self._how),
                ]
        if self._line.asks == "did":
            things = (*self._line.things, *(f"the {thing}" for thing in self._line.things))
            base = {f"{point.asked} {rest}" for rest in ("it", "that", *things)}
            rules += [
                _row(good, _words("i did", "we did", "did"), _words(*base)),
                _row(bad, _words("i did not", "we did not", "did not"), _words(*base, point.asked)),
            ]
        absent = point.flaws if point.finding and self._line.absent else point.there
        if absent and not any(finding in point.asked for finding in GOOD_FINDINGS):
            every = Claim(self._everything, so=bool(self._line.absent))
            if all(other.finding for other in self._line.points):
                clear = (
                    _words("free", "clear", "fine", "normal", "healthy")
                    if self._line.absent
                    else _words("fine", "normal")
                )
                rules.append(_row(every, Opt(it), Opt(_words("is", "are", "looks", "feels")), very, clear))
            rules.append(
                _row(
                    good if self._line.absent else bad,
                    Opt(_words("it is")),
                    _words(*(f"{noun} free" for noun in absent)),
                )
            )
        return rules

    def _taken_up(self) -> list[Rule]:
        """The question's own verb, taken up: "they do", "it is not"."""
        verbs = _TAKEN_UP.get(self._line.asks)
        if not verbs:
            return []
        here = "there" in self._line.words[-12:] and not self._line.absent
        named = ("i", "we") if "you" in self._line.words else ("it", "they", "that", "everything", "both", "she", "he")
        subject = alt(_words(*named, *(("there",) if here else ())))
        every = self._everything
        # "It is" may be "it is not" cut short; "they do" answers at once where it was said that they do.
        good = [_row(Claim(every), subject, _words(*verbs))] if verbs[0] in ("do", "does", "did", "have") else []
        return [
            *good,
            _row(Claim(every, so=False), subject, _words(*(f"{verb} not" for verb in verbs))),
        ]


@lru_cache(maxsize=512)
def _rule(asked: Asked) -> Rule:
    return _Shapes(read_line(asked)).whole()


@lru_cache(maxsize=8192)
def claims(tokens: Tokens, asked: Asked) -> frozenset[tuple[Claim, ...]]:
    """Every way in which the words are a row of claims."""
    found = Parse(tokens).whole(_rule(asked))
    return frozenset(
        tuple(claim for claim in row if isinstance(claim, Claim)) for row in found if isinstance(row, tuple)
    )


def verdict(tokens: Tokens, asked: Asked) -> Sense | None:
    """What the words claim of all that is asked: good, bad, only a part of it (acknowledged), or nothing (None)."""
    line = read_line(asked)
    every = frozenset(range(len(line.deeds) or len(line.points) or 1))
    rows = claims(tokens, asked)
    # "It is half full" is also "it is half" and "full": the reading with the fewest claims is what was meant.
    fewest = min((len(row) for row in rows), default=0)
    found = {
        _of_row(row, every, either=line.either) for row in rows if len(row) == fewest and any(c.about for c in row)
    }
    if found == {Sense.GOOD, Sense.ACKNOWLEDGED}:
        return Sense.ACKNOWLEDGED
    return found.pop() if len(found) == 1 else None


def _of_row(row: tuple[Claim, ...], every: frozenset[int], *, either: bool) -> Sense | None:
    so = frozenset(at for claim in row if claim.so for at in claim.about)
    not_so = frozenset(at for claim in row if not claim.so for at in claim.about)
    if so & not_so:
        return None
    if either:
        return Sense.GOOD if so else Sense.BAD if not_so == every else Sense.ACKNOWLEDGED
    return Sense.BAD if not_so else Sense.GOOD if so == every else Sense.ACKNOWLEDGED
