"""What a statement says about a step, in English: "clamp's shut", "I didn't", "is it done?", "almost".

A statement is understood only where every word of it is known: small words, words of the line that was read, and
words for what is so when the thing is done or not done. One negation, one word for "not done", one sign of doubt or of
a question, and it is no good one any more; two that contradict each other, and it means nothing.
"""

import re
from dataclasses import dataclass, field
from functools import lru_cache

from assistant.spoken.english.claims import verdict
from assistant.spoken.english.lines import read_line
from assistant.spoken.english.sayings import sayings_of, words_of
from assistant.spoken.english.verbs import VERBS, Verb
from assistant.spoken.english.writing import CONTRACTIONS, SAME_WORD
from assistant.spoken.statement import Asked, Sense, Tokens, Want

NEGATIONS = frozenset(["not", "no", "never", "none", "nothing", "neither", "nor", "without", "nobody", "cannot"])
UNSURE = frozenset(
    [
        "almost",
        "nearly",
        "about",
        "trying",
        "try",
        "tried",
        "maybe",
        "perhaps",
        "probably",
        "possibly",
        "think",
        "guess",
        "hope",
        "believe",
        "suppose",
        "supposed",
        "should",
        "would",
        "could",
        "might",
        "may",
        "going",
        "gonna",
        "will",
        "shall",
        "must",
        "need",
        "needs",
        "want",
        "wants",
        "wait",
        "if",
        "unless",
        "until",
        "till",
        "when",
        "while",
        "before",
        "after",
        "seems",
        "seem",
        "seemingly",
        "half",
        "partly",
        "partially",
        "mostly",
        "somewhat",
        "kind",
        "sort",
        "bit",
        "except",
        "but",
        "or",
        "else",
        "only",
        "rather",
        "forgot",
        "forget",
        "forgotten",
        "wrong",
        "other",
        "another",
        "hardly",
        "barely",
        "soon",
        "later",
        "starting",
        "beginning",
        "bout",
        "unsure",
        "uncertain",
        "doubt",
        "let",
        "lets",
        "moment",
        "second",
        "minute",
        "sec",
        "enough",
        "supposedly",
        "apparently",
        "roughly",
        "approximately",
        "least",
        "most",
        "either",
        "tomorrow",
        "yesterday",
        "had",
        "was",
        "were",
        "been-to",
        "ought",
        "meant",
        "gotta",
        "better",
        "instead",
    ]
)
"""Words of doubt, of intention, of the past that is over, of an exception: with one of them nothing is done."""
QUESTION_WORDS = frozenset(["what", "which", "who", "whom", "whose", "where", "why", "how", "whether"])
_AUXILIARIES = frozenset(
    [
        "is",
        "are",
        "am",
        "do",
        "does",
        "did",
        "have",
        "has",
        "can",
        "could",
        "should",
        "shall",
        "will",
        "would",
        "may",
        "might",
        "must",
        "was",
        "were",
    ]
)
_SUBJECTS = frozenset(
    [
        "i",
        "we",
        "you",
        "it",
        "he",
        "she",
        "they",
        "this",
        "that",
        "these",
        "those",
        "there",
        "the",
        "my",
        "your",
        "everything",
        "all",
        "both",
    ]
)
SMALL = frozenset(
    [
        "a",
        "an",
        "the",
        "this",
        "that",
        "these",
        "those",
        "my",
        "our",
        "its",
        "their",
        "his",
        "her",
        "it",
        "they",
        "them",
        "he",
        "she",
        "there",
        "here",
        "i",
        "we",
        "us",
        "me",
        "both",
        "all",
        "everything",
        "every",
        "each",
        "everyone",
        "is",
        "are",
        "am",
        "has",
        "have",
        "been",
        "being",
        "to",
        "of",
        "on",
        "in",
        "at",
        "off",
        "for",
        "from",
        "with",
        "by",
        "up",
        "down",
        "out",
        "over",
        "into",
        "onto",
        "above",
        "below",
        "near",
        "along",
        "under",
        "as",
        "and",
        "so",
        "just",
        "now",
        "already",
        "again",
        "too",
        "also",
        "then",
        "okay",
        "alright",
        "right",
        "well",
        "great",
        "good",
        "perfect",
        "fine",
        "lovely",
        "brilliant",
        "cool",
        "nice",
        "yes",
        "sure",
        "fully",
        "completely",
        "properly",
        "correctly",
        "firmly",
        "tightly",
        "securely",
        "nicely",
        "safely",
        "totally",
        "entirely",
        "carefully",
        "certainly",
        "definitely",
        "absolutely",
        "indeed",
        "still",
        "yet",
        "really",
        "very",
        "quite",
        "pretty",
        "got",
        "gotten",
        "get",
        "two",
        "one",
        "side",
        "side's",
        "looks",
        "look",
        "looking",
        "feels",
        "feel",
        "like",
        "do",
        "does",
        "did",
        "can",
        "could",
        "be",
        "see",
        "say",
        "says",
        "any",
        "some",
        "own",
        "patient",
        "patient's",
        "nurse",
        "ma'am",
        "sir",
        "mate",
        "and",
    ]
)
"""Words that change nothing by themselves."""
LEADS_YES = frozenset(["yes"])
LEADS_NO = frozenset(["no"])
FINISHED = frozenset(["done", "finished", "complete", "completed", "sorted"])
"""What is said of anything that was done."""
_WHOLE = (
    ("all", "set"), ("all", "good"), ("good", "to", "go"), ("looks", "good"), ("looking", "good"), ("we", "are", "good"),
    ("taken", "care", "of"), ("took", "care", "of"), ("did", "it"), ("did", "that"), ("did", "so"), ("did", "them"),
    ("did", "this"), ("did", "both"), ("i", "did"), ("we", "did"), ("have", "done"), ("i", "have"), ("all", "there"),
    ("all", "in"), ("all", "sorted"), ("is", "good"), ("are", "good"), ("all", "right", "there"),
)  # fmt: skip
_ACKNOWLEDGEMENTS = frozenset(
    [
        "okay",
        "right",
        "alright",
        "sure",
        "fine",
        "good",
        "great",
        "ready",
        "understood",
        "gotcha",
        "copy",
        "roger",
        "cool",
        "perfect",
    ]
)
_WORD_AFTER_ACKNOWLEDGEMENT = frozenset(
    ["then", "now", "i", "am", "got", "it", "that", "so", "here", "go", "we", "there", "you", "understand", "sounds"]
)
_FINE = frozenset(["fine", "normal", "okay", "healthy", "good", "perfect", "great", "clean"])
_FREE = ("free of", "free from", "without", "clear of", "no ")
_OPPOSITES = {
    "clear": "cloudy murky discoloured discolored hazy dirty particles unclear",
    "open": "closed shut clamped",
    "closed": "open",
    "sealed": "open opened unsealed broken torn damaged",
    "whole": "torn broken leaking leaks damaged split punctured",
    "intact": "torn broken leaking leaks damaged split",
    "dry": "wet damp moist soaked",
    "wet": "dry",
    "clean": "dirty soiled",
    "full": "empty",
    "empty": "full",
    "complete": "incomplete missing unfinished",
    "right": "wrong",
    "correct": "wrong incorrect",
    "same": "different",
    "safe": "unsafe dangerous allergic",
    "compatible": "incompatible",
    "patent": "blocked occluded",
    "quiet": "alarming beeping",
    "firm": "loose",
    "tight": "loose",
    "secure": "loose",
    "higher": "lower",
    "lower": "higher",
    "signed": "unsigned",
    "date": "expired outdated",
    "dates": "expired outdated",
    "expiry": "expired outdated",
    "match": "different differ mismatch wrong",
    "agree": "different differ disagree",
    "plugged": "unplugged",
    "running": "stopped off alarming",
    "on": "off",
    "soft": "hard",
    "palpable": "impalpable",
    "warm": "cold cool",
    "flushed": "unflushed blocked",
    "leaks": "leaking leaks leak",
    "leak": "leaking leaks",
    "legible": "illegible",
    "comfortable": "uncomfortable",
}
_ALIKE = {
    "match": "same identical matches matching matched",
    "agree": "same identical agrees agreeing agreed match matches",
    "right": "correct",
    "correct": "right",
    "whole": "intact undamaged",
    "intact": "whole undamaged",
    "closed": "shut",
    "sealed": "intact unopened",
    "safe": "allergies",
    "patent": "open flushes flushing",
    "firm": "tight secure",
    "date": "expired-not",
    "falling": "dripping drips drops",
    "drip": "dripping drips",
    "fluid": "liquid",
    "redness": "red",
    "red": "redness",
    "swelling": "swollen puffy",
    "swollen": "swelling",
    "pain": "painful sore hurts tender pains",
    "leaks": "leak leaking leakage",
    "leak": "leaks leaking leakage",
    "bubbles": "air bubble",
    "air": "bubbles bubble",
    "kinks": "kink kinked",
    "allergies": "allergy allergic",
    "itching": "itchy",
    "expiry": "date dates",
}
_ADJECTIVES = frozenset(_OPPOSITES) | frozenset(
    ["compatible", "visible", "present", "available", "ready", "loud", "lower", "sterile"]
)
_STOP = re.compile(r"[.,;:!]")
_LATE = frozenset(["until", "after", "before", "till"])


@dataclass(frozen=True)
class _Frame:
    """What is known of a line.

    Attributes:
        words: every word that may be said about it.
        good, bad: runs of words that say that it is done or so, and that it is not.
        verbs: its verbs.
        objects: what they are done to.
        feared: what a question asks to be absent ("free of air"), or whether there is any.
        absent: the good answer to the question is that there is none of it.
        asks: the question's first word, as it may be taken up: "is", "do", "did", "has".
        several: more than one thing is to be done.
        last: words for the last of them.
    """

    words: frozenset[str]
    good: frozenset[Tokens]
    bad: frozenset[Tokens]
    verbs: tuple[Verb, ...] = ()
    objects: tuple[str, ...] = ()
    feared: frozenset[str] = frozenset()
    absent: bool = False
    asks: str = ""
    several: bool = False
    last: frozenset[Tokens] = field(default=frozenset())


def _tokens(text: str) -> Tokens:
    """A line, or an author's words, as an utterance is cut: small letters, short forms written out."""
    found: list[str] = []
    for word in re.findall(r"[a-z0-9]+(?:'[a-z]+)?", text.lower().replace("\u2019", "'")):
        found += CONTRACTIONS.get(word, SAME_WORD.get(word, word)).replace("'", "").split()
    return tuple(found)


_FORMS: dict[str, Verb] = {}
for _verb in VERBS.values():
    for _form in (_verb.base, *_verb.past, _verb.ing, f"{_verb.base}s", f"{_verb.base}es"):
        _FORMS.setdefault(_form, _verb)
_PARTICLES = frozenset(["on", "off", "up", "down", "in", "out", "away", "over", "together"])
_OPPOSITE_PARTICLE = {"on": "off", "off": "on", "up": "down", "down": "up", "in": "out", "out": "in"}
_PREPOSITIONS = frozenset(
    [
        "to",
        "into",
        "onto",
        "from",
        "with",
        "at",
        "above",
        "below",
        "near",
        "until",
        "for",
        "by",
        "of",
        "about",
        "along",
        "against",
        "beside",
    ]
)


@lru_cache(maxsize=512)
def _frame(asked: Asked) -> _Frame:
    """What is known of a line, worked out once."""
    authored = [_tokens(words) for words in (*asked.good, *asked.bad)]
    good = {_tokens(words) for words in asked.good}
    bad = {_tokens(words) for words in asked.bad}
    line = asked.line
    if asked.want is Want.ANSWER:
        *_, line = [part for part in re.split(r"(?<=[.!:])\s+", line.strip()) if part] or [""]
    words = set(_tokens(asked.line))
    words |= {alike for word in list(words) for alike in _ALIKE.get(word, "").split()}
    for word in list(words):
        words |= {f"{word}s", word.removesuffix("s")}
    frame = _question(line, words) if (asked.want is Want.ANSWER) else _task(line, words)
    known = frozenset({*frame.words, *words, *(word for run in (*authored, *frame.good, *frame.bad) for word in run)})
    return _Frame(
        known,
        frame.good | good,
        frame.bad | bad,
        frame.verbs,
        frame.objects,
        frame.feared,
        frame.absent,
        frame.asks,
        frame.several,
        frame.last,
    )


def _task(line: str, words: set[str]) -> _Frame:
    """Something to do: its verbs stand at the beginning of a clause."""
    clauses = [_tokens(part) for part in re.split(r"[.,;:]|\band\b|\bthen\b", line)]
    done: list[tuple[Verb, frozenset[Tokens], frozenset[Tokens], tuple[str, ...]]] = []
    for clause in clauses:
        starts = [
            word for word in clause if word not in ("now", "first", "gently", "slowly", "firmly", "fully", "again")
        ]
        verb = VERBS.get(starts[0]) if starts else None
        if verb is None:
            continue
        rest = starts[1:]
        particle = next((word for word in rest if word in _PARTICLES), "")
        states = {tuple(state.split()) for state in (*verb.past, *verb.states)}
        undone = {tuple(state.split()) for state in verb.undone}
        if particle and particle in (*rest[:1], *rest[-1:]):
            states.add((particle,))
            opposite = _OPPOSITE_PARTICLE.get(particle)
            undone = {run for run in undone if run != (particle,)} | ({(opposite,)} if opposite else set())
            states -= undone
        done.append((verb, frozenset(states), frozenset(undone), _objects(rest)))
    good = frozenset().union(*(one[1] for one in done))
    return _Frame(
        frozenset(words),
        good,
        frozenset().union(*(one[2] for one in done)) - good,
        tuple(one[0] for one in done),
        done[-1][3] if done else (),
        several=len(done) > 1,
        last=done[-1][1] if done else frozenset(),
    )


def _objects(rest: list[str]) -> tuple[str, ...]:
    """What a verb is done to, with its adjectives and without: "roller clamp", "clamp"."""
    noun: list[str] = []
    for word in rest:
        if word in _PREPOSITIONS or word in _PARTICLES:
            if noun:
                break
            continue
        if word not in SMALL and word not in ("both", "clean", "one"):
            noun.append(word)
        elif noun:
            break
    if not noun or len(noun) > 3:
        return ()
    return (" ".join(noun), noun[-1]) if len(noun) > 1 else (noun[0],)


def _question(line: str, words: set[str]) -> _Frame:
    """A question: what would be so, and what must be absent."""
    bare = line.strip().lower().rstrip("?")
    first = next(iter(_tokens(bare.rpartition(":")[2] or bare)), "")
    asks = first if first in _AUXILIARIES else ""
    mark = next((free for free in ("free of", "free from", "clear of", "without") if free in bare), "")
    feared: set[str] = set()
    if mark:
        feared = {word for word in _tokens(bare.partition(mark)[2]) if word not in SMALL and word not in _PREPOSITIONS}
    any_ = re.search(
        r"\b(?:do you (?:see|feel|hear|notice|find) (?:any )?|is there (?:any )?|are there (?:any )?)(.*)", bare
    )
    good: set[Tokens] = set()
    bad: set[Tokens] = set()
    if any_ and not mark:
        feared = {word for word in _tokens(any_[1]) if word not in SMALL and word not in _PREPOSITIONS}
    feared |= {alike for word in list(feared) for alike in _ALIKE.get(word, "").split()}
    feared |= {f"{word}s" for word in list(feared)} | {word.removesuffix("s") for word in list(feared)}
    for word in _tokens(bare):
        verb = _FORMS.get(word)
        if word in _ADJECTIVES and word not in feared:
            good |= {(word,), *((alike,) for alike in _ALIKE.get(word, "").split() if "-" not in alike)}
            bad |= {(opposite,) for opposite in _OPPOSITES.get(word, "").split()}
        elif verb is not None and word not in feared and word not in SMALL:
            good |= {tuple(state.split()) for state in (*verb.past, *verb.states)}
            bad |= {tuple(state.split()) for state in verb.undone}
            good |= {(word,), (verb.base,), (f"{verb.base}s",), (f"{verb.base}es",)}
    bad -= good
    return _Frame(
        frozenset({*words, *feared}),
        frozenset(good),
        frozenset(bad),
        feared=frozenset(feared),
        absent=bool(mark),
        asks=asks,
    )


def _holds(tokens: Tokens, runs: frozenset[Tokens]) -> bool:
    """Whether one of the runs of words stands among the tokens."""
    return any(tokens[at : at + len(run)] == run for run in runs if run for at in range(len(tokens) - len(run) + 1))


class EnglishStatements:
    """See `assistant.spoken.statement.Statements`."""

    def sense(self, tokens: Tokens, asked: Asked) -> Sense | None:
        """What the words say about what was asked."""
        frame = _frame(asked)
        lead_yes, lead_no, rest = _without_leads(tokens)
        if asked.want is not Want.ANSWER and set(tokens) > {"yes"} and set(tokens) <= {"yes", *_ACKNOWLEDGEMENTS}:
            return Sense.ACKNOWLEDGED
        if len(rest) > 1 and rest[-1] in (*LEADS_YES, *LEADS_NO):
            lead_yes, lead_no = lead_yes or rest[-1] in LEADS_YES, lead_no or rest[-1] in LEADS_NO
            rest = rest[:-1]
        if not rest:
            return Sense.ACKNOWLEDGED if lead_no and not lead_yes and read_line(asked).absent else None
        if _is_question(rest):
            return Sense.ASKED
        authored = _authored(rest, asked)
        if authored is not None:
            contradicts = lead_no if authored is Sense.GOOD and not frame.feared else False
            return None if contradicts else authored
        if _acknowledges(rest, frame):
            return Sense.ACKNOWLEDGED
        said = verdict(rest, asked)
        if said == ():
            return Sense.ACKNOWLEDGED
        if said is not None:
            contradicts = (lead_no and said and not read_line(asked).absent) or (lead_yes and not said)
            return None if contradicts else Sense.GOOD if said else Sense.BAD
        if any(word in UNSURE for word in rest) or ("sure" in rest and set(rest) & NEGATIONS):
            return Sense.UNSURE
        return None

    def sayings(self, asked: Asked) -> tuple[tuple[str, Sense], ...]:
        """See `Statements`."""
        return sayings_of(asked, self.sense)

    def words_for(self, asked: Asked) -> tuple[str, str]:
        """See `Statements`."""
        return words_of(asked)


def _without_leads(tokens: Tokens) -> tuple[bool, bool, Tokens]:
    """Whether a yes or a no leads, and what is said after it."""
    at, yes, no = 0, False, False
    skipped = ("okay", "oh", "so", "and", "well", "alright", "right", "um", "now")
    while at < len(tokens) and (
        tokens[at] in (*LEADS_YES, *LEADS_NO) or (tokens[at] in skipped and at + 1 < len(tokens))
    ):
        yes, no = yes or tokens[at] in LEADS_YES, no or tokens[at] in LEADS_NO
        if (
            tokens[at] in LEADS_NO
            and tokens[at + 1 : at + 2]
            and tokens[at + 1] not in (*_SUBJECTS, "no", "not", "and", "okay")
        ):
            # "no leaks": the no belongs to what follows.
            no = False
            break
        at += 1
    return yes, no, tokens[at:]


def _is_question(rest: Tokens) -> bool:
    """Whether the words ask: by a question word, or by a verb before its subject."""
    if any(word in QUESTION_WORDS for word in rest):
        return True
    if rest[0] not in _AUXILIARIES or len(rest) < 2:
        return False
    if rest[0] in ("did", "have") and rest[1] in ("it", "that", "this", "them", "both", "all", "everything"):
        return len(rest) > 3
    return rest[1] in _SUBJECTS or (
        rest[0] in ("is", "are", "does", "has") and rest[1] not in NEGATIONS and len(rest) > 2
    )


def _authored(rest: Tokens, asked: Asked) -> Sense | None:
    """The author's own words, as they are, or after "it is"."""
    bare = rest
    for carrier in (("it", "is"), ("they", "are"), ("that", "is"), ("there", "is"), ("there", "are"), ("i", "see")):
        if rest[:2] == carrier:
            bare = rest[2:]
    for said in (rest, bare, bare[:-1] if bare[-1:] in (("now",), ("already",)) else bare):
        if said in map(_tokens, asked.good):
            return Sense.GOOD
        if said in map(_tokens, asked.bad):
            return Sense.BAD
    return None


def _acknowledges(rest: Tokens, frame: _Frame) -> bool:
    """Whether the words only say that something was heard."""
    words = set(rest)
    return (
        bool(words & (_ACKNOWLEDGEMENTS | {"got"}))
        and words <= _ACKNOWLEDGEMENTS | _WORD_AFTER_ACKNOWLEDGEMENT
        and not _holds(rest, frozenset(_WHOLE))
    )


def _report(rest: Tokens, frame: _Frame, *, lead_yes: bool, lead_no: bool) -> Sense | None:
    """What is said of something that was to be done."""
    negated = any(word in NEGATIONS for word in rest)
    undone = _holds(rest, frame.bad)
    bases = {verb.base for verb in frame.verbs}
    doing = {verb.ing for verb in frame.verbs} - {run[0] for run in frame.good if len(run) == 1}
    whole = _holds(rest, frozenset(_WHOLE)) or bool(set(rest) & FINISHED)
    done = _holds(rest, frame.good)
    if negated or undone:
        if negated and undone:
            return None
        return None if lead_yes and not undone and not done and not whole else Sense.BAD
    if "still" in rest or "yet" in rest:
        return Sense.BAD if not done and not whole else None
    if set(rest) & doing:
        return Sense.UNSURE
    loose = [
        at
        for at, word in enumerate(rest)
        if word in bases
        and (word,) not in frame.good
        and (at == 0 or rest[at - 1] not in ("the", "a", "my", "did", "new"))
    ]
    if loose and not (len(rest) > 1 and rest[0] == "did"):
        # "Ready to close it": what is to be done is named, and nothing says that it was.
        return None
    if not (whole or done):
        return None
    if lead_no:
        return None
    if frame.several and not whole and not _holds(rest, frame.last):
        return Sense.ACKNOWLEDGED
    return Sense.GOOD


def _answer(rest: Tokens, frame: _Frame, *, lead_yes: bool, lead_no: bool) -> Sense | None:
    """What is said to a question."""
    negated = any(word in NEGATIONS for word in rest)
    if frame.feared and not _holds(rest, frame.good - {("free",), ("clear",)}):
        return _of_what_is_feared(rest, frame, negated=negated, lead_yes=lead_yes, lead_no=lead_no)
    so, not_so = _holds(rest, frame.good), _holds(rest, frame.bad)
    short = _takes_up(rest, frame)
    if not (
        so
        or not_so
        or short
        or _holds(rest, frozenset(_WHOLE))
        or set(rest) & FINISHED
        or (set(rest) & _FINE and not negated)
    ):
        return None
    if not_so and (negated or so):
        return None
    no = negated or not_so
    if (no and lead_yes) or (not no and lead_no):
        return None
    return Sense.BAD if no else Sense.GOOD


def _takes_up(rest: Tokens, frame: _Frame) -> bool:
    """Whether the words take the question's own verb up: "it is", "they do", "I did not"."""
    bare = tuple(word for word in rest if word not in NEGATIONS)
    verbs = {
        "is": "is are",
        "are": "are is",
        "do": "do does",
        "does": "does do",
        "did": "did",
        "have": "have has",
        "has": "has have",
    }
    return 0 < len(bare) <= 3 and bare[-1] in verbs.get(frame.asks, "").split() and bare[0] in _SUBJECTS


def _of_what_is_feared(rest: Tokens, frame: _Frame, *, negated: bool, lead_yes: bool, lead_no: bool) -> Sense | None:
    """What is said of something that a question asks to be absent, or whether there is any of it."""
    named = bool(set(rest) & frame.feared)
    nothing = bool(set(rest) & {"none", "nothing", "free"}) or (
        bool(set(rest) & {"clear", "fine", "normal", "okay", "good", "healthy"}) and not negated
    )
    if named and "free" in rest and not negated:
        there = False
    elif named:
        there = not negated
    elif nothing:
        there = False
    elif _takes_up(rest, frame):
        # "It is": free of it; "there is": some of it.
        there = negated if frame.absent and rest[0] != "there" else not negated
    elif set(rest) <= {"some", "there", "is", "are", "i", "see", "do", "a", "little", "bit"} and "some" in rest:
        there = True
    else:
        return None
    if there and lead_no:
        return None
    if not there and lead_yes and not frame.absent:
        return None
    return (Sense.BAD if there else Sense.GOOD) if frame.absent else (Sense.GOOD if there else Sense.BAD)
