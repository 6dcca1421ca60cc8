"""What a statement says about a step, in English: "clamp's shut", "I didn't", "is it done?", "almost".

What is good or bad is read by `gist`; what it does not know is at most recognised as a question, as
doubt or as an acknowledgement, and refused.
"""

import re
from functools import lru_cache

from assistant.spoken.english.address import says_nothing, without_address
from assistant.spoken.english.alternatives import chosen
from assistant.spoken.english.asides import aside_of
from assistant.spoken.english.bench_words import AUXILIARIES, DENIALS, TURNING
from assistant.spoken.english.choice_framing import asks_which
from assistant.spoken.english.claims import phrases_at
from assistant.spoken.english.clauses import clauses, core_of, of_clauses
from assistant.spoken.english.comments import is_comment, without_comments
from assistant.spoken.english.counted import counts_otherwise
from assistant.spoken.english.deeds import cut
from assistant.spoken.english.gist import gist
from assistant.spoken.english.known import known_of
from assistant.spoken.english.lines import read_line
from assistant.spoken.english.sayings import opposed_to, sayings_of, words_of
from assistant.spoken.english.tails import without_purpose
from assistant.spoken.english.taken_back import takes_back, takes_back_a_choice
from assistant.spoken.english.telling import names_allergies, reads_out, sets_a_time, tells_content
from assistant.spoken.english.troubles import trouble_of
from assistant.spoken.meaning import Command, Trouble
from assistant.spoken.statement import Asked, Sense, Tokens, Want


def _set(text: str) -> frozenset[str]:
    return frozenset(text.split())


_NEGATIONS = DENIALS | {"nor"}
_OF_QUESTIONS = _set("can how keep keeps nor thought what where whether which who whose why yet you your")
"""What turns a statement round and is no doubt of the speaker's own."""
_UNSURE = TURNING - _OF_QUESTIONS | _set("beginning bit bout but except minute moment only sec second starting")
"""Words of doubt, of intention, of the past that is over, of an exception."""
_OF_A_REASON = _set(
    """
    need needs want still forgot forgotten only half yet enough another other wrong less more was had before after
    when soon later away
    """
)
"""Words of doubt that doubt nothing once a no was said."""
_QUESTION_WORDS = _set("what which who whom whose where why how whether")
_SUBJECTS = _set("i we you it he she they this that these those there the my your everything all both")
_ACKNOWLEDGEMENTS = _set(
    "okay right alright sure fine good great ready understood gotcha copy roger cool perfect noted righto"
)
_AFTER_ACKNOWLEDGEMENT = _set("then now i am got it that so here go we there you understand sounds")
_SKIPPED = _set("okay oh so and well alright right um now")
_FILLS = _SKIPPED | {"there", "then", "yes"}


class EnglishStatements:
    """See `assistant.spoken.statement.Statements`."""

    def sense(self, tokens: Tokens, asked: Asked, parts: tuple[Tokens, ...] = ()) -> Sense | None:
        """What the words say about what was asked."""
        said = _sense(tokens, asked, parts)
        if said is not Sense.GOOD or _authored(tokens, asked) is not None:
            return said
        return Sense.UNSURE if takes_back(tokens) or counts_otherwise(tokens, asked.line) else said

    def chosen(
        self,
        tokens: Tokens,
        choices: Tokens,
        sayings: tuple[tuple[str, str], ...],
        line: str,
        parts: tuple[Tokens, ...] = (),
    ) -> str | None:
        """See `Statements`."""
        if asks_which(tokens) or _says_nothing_seen(tokens, choices, line):
            return None
        found = chosen(tokens, choices, sayings, line, parts)
        return None if found is not None and tokens != cut(found) and takes_back_a_choice(tokens) else found

    def takes_back(self, tokens: Tokens, line: str, choices: Tokens) -> bool:
        """See `Statements`."""
        if asks_which(tokens) or counts_otherwise(tokens, line):
            return True
        return takes_back_a_choice(tokens) if choices else takes_back(tokens)

    def trouble(self, tokens: Tokens) -> Trouble | None:
        """See `Statements`."""
        return None if _is_question(tokens) else trouble_of(tokens)

    def aside(self, tokens: Tokens) -> Command | None:
        """See `Statements`."""
        return aside_of(tokens)

    def sayings(self, asked: Asked) -> tuple[tuple[str, Sense], ...]:
        """See `Statements`."""
        return sayings_of(asked, _sense)

    def opposed(self, saying: str) -> tuple[str, ...]:
        """See `Statements`."""
        return opposed_to(saying)

    def words_for(self, asked: Asked) -> tuple[str, str]:
        """See `Statements`."""
        return words_of(asked)


def _says_nothing_seen(tokens: Tokens, choices: Tokens, line: str) -> bool:
    """Whether something is still to be looked at, is not said, or is told by the patient where a learner is to look."""
    text = " ".join(tokens)
    looks = _LOOKS.match(line.lower()) and not _FELT.search(" ".join(choices))
    return bool(_NOTHING_SEEN.search(text)) or bool(looks and _PATIENT_SAYS.search(text))


_NOTHING_SEEN = re.compile(
    r"\bstill (?:have )?to (?:look|check|read|see|find|do|ask|feel|measure|count|go)\b"
    r"|\b(?:did|have) not (?:the|a|an|it|they|my)\b"
)
_LOOKS = re.compile(r"(?:look|inspect|watch)\b")
_FELT = re.compile(r"\b(?:pain|painful|hurts?|comfortable|itch|easily|breath|well)\b")
_PATIENT_SAYS = re.compile(r"^(?:the |my )?patient says\b")


@lru_cache(maxsize=8192)
def _sense(tokens: Tokens, asked: Asked, parts: tuple[Tokens, ...] = ()) -> Sense | None:
    line = read_line(asked)
    absent = line.absent
    yes, no, rest = _without_leads(without_address(tokens, _kept(asked)))
    rest = without_address(rest, _kept(asked))
    if asked.want is not Want.ANSWER and set(tokens) > {"yes"} and set(tokens) <= {"yes", *_ACKNOWLEDGEMENTS}:
        return Sense.ACKNOWLEDGED
    if not rest:
        # "Free of air?" "No": none of it, or not free of it?
        return Sense.ACKNOWLEDGED if no and not yes and absent else None
    authored = _authored(rest, asked)
    if authored is None and len(tokens) == 1 and rest[0] in _ACKNOWLEDGEMENTS:
        return Sense.ACKNOWLEDGED
    if authored is None and _repeats(rest, asked):
        return Sense.ACKNOWLEDGED
    if rest[0] in ("is", "are") and rest[1:] and rest[1] not in _SUBJECTS and (yes or rest[-1] in ("now", "already")):
        rest, parts = rest[1:], ()  # "is closed now": without "it", as many say it
    said = authored or _said(rest, asked, parts)
    if said is not Sense.GOOD and (reads_out(rest, line) or sets_a_time(rest, line) or names_allergies(rest, line)):
        return Sense.GOOD
    if said is not None:
        contradicts = (no and said is Sense.GOOD and not absent) or (yes and said is Sense.BAD)
        return None if contradicts else said
    if _is_question(rest):
        return Sense.ASKED
    words = set(rest)
    if no and not yes and not absent and asked.want is Want.ANSWER and _tells_why(rest):
        # "No, this is another fluid": what follows a no tells why.
        return Sense.BAD
    if words & _ACKNOWLEDGEMENTS and words <= _ACKNOWLEDGEMENTS | _AFTER_ACKNOWLEDGEMENT:
        return Sense.ACKNOWLEDGED
    doubted = words & _UNSURE or ("sure" in words and words & _NEGATIONS)
    if doubted or _unfinished(rest, asked):
        return Sense.UNSURE
    if asked.want is Want.DONE and tells_content(rest, line):
        return Sense.ACKNOWLEDGED
    return None if no else core_of(without_comments(rest), asked, gist)


@lru_cache(maxsize=512)
def _kept(asked: Asked) -> frozenset[Tokens]:
    """What says something at a line, and is left whole."""
    return frozenset(phrases_at(asked))


def _said(rest: Tokens, asked: Asked, parts: tuple[Tokens, ...]) -> Sense | None:
    """The gist of the words, or of what is left of them without what changes nothing."""
    said = gist(rest, asked)
    if said in (None, Sense.ACKNOWLEDGED):
        bare = without_comments(without_purpose(rest, known_of(asked)) if asked.want is not Want.ANSWER else rest)
        if bare != rest:
            said = _clause(bare, asked) or said
        said = of_clauses(_clauses(bare, parts), asked, _clause) or said if said is not Sense.GOOD else said
    return said


def _clause(tokens: Tokens, asked: Asked) -> Sense | None:
    return _authored(tokens, asked) or gist(tokens, asked)


def _clauses(bare: Tokens, parts: tuple[Tokens, ...]) -> tuple[Tokens, ...]:
    """The clauses of a statement, as it is written and as its words show; none where a no stands in its middle."""
    if len(parts) < 2:
        return clauses(bare)
    found: list[Tokens] = []
    for at, part in enumerate(parts):
        yes, no, rest = _without_leads(without_address(part))
        if no and not yes and (at or not rest):
            return ()
        rest = without_address(rest)
        if rest and not says_nothing(rest) and not is_comment(rest) and not set(rest) <= _FILLS:
            found += clauses(without_address(without_comments(rest)))
    return tuple(found)


def _without_leads(tokens: Tokens) -> tuple[bool, bool, Tokens]:
    """Whether a yes or a no leads or ends, and what is said beside it."""
    at, yes, no = 0, False, False
    while at < len(tokens) and (tokens[at] in ("yes", "no") or (tokens[at] in _SKIPPED and at + 1 < len(tokens))):
        if (
            tokens[at] == "no"
            and at + 1 < len(tokens)
            and tokens[at + 1] not in (*_SUBJECTS, "no", "not", "and", "okay")
        ):
            # "no leaks": the no belongs to what follows.
            break
        yes, no = yes or tokens[at] == "yes", no or tokens[at] == "no"
        at += 1
    rest = tokens[at:]
    if len(rest) > 1 and rest[-1] in ("yes", "no"):
        yes, no, rest = yes or rest[-1] == "yes", no or rest[-1] == "no", rest[:-1]
    return yes, no, rest


def _tells_why(rest: Tokens) -> bool:
    """Whether what follows a no is a sentence that may say why: "this is another fluid", "I forgot"."""
    return rest[0] in _SUBJECTS and not set(rest) & (_UNSURE - _OF_A_REASON)


def _authored(rest: Tokens, asked: Asked) -> Sense | None:
    """The author's own words, as they are, or after "it is"."""
    authors = _by_author(asked)
    if not authors:
        return None
    bare = rest
    for carrier in (("it", "is"), ("they", "are"), ("that", "is"), ("there", "is"), ("there", "are"), ("i", "see")):
        if rest[:2] == carrier:
            bare = rest[2:]
    for said in (rest, bare, bare[:-1] if bare[-1:] in (("now",), ("already",)) else bare):
        if said in authors:
            return authors[said]
    return None


@lru_cache(maxsize=512)
def _by_author(asked: Asked) -> dict[Tokens, Sense]:
    """What the author's own words say; what is both good and bad is good."""
    bad = {cut(words): Sense.BAD for words in asked.bad}
    return bad | {cut(words): Sense.GOOD for words in asked.good}


def _repeats(rest: Tokens, asked: Asked) -> bool:
    """Whether it may be the line said after the assistant: "put on gloves", where past and present are one word."""
    begun = rest[1:] if rest[0] in ("i", "we") and len(rest) == 2 else rest
    return any(begun[:1] == (deed.verb.base,) and deed.verb.base in deed.verb.past for deed in read_line(asked).deeds)


def _is_question(rest: Tokens) -> bool:
    """Whether the words ask: by a question word, or by a verb before its subject."""
    if any(word in _QUESTION_WORDS for word in rest):
        return True
    return len(rest) > 1 and rest[0] in AUXILIARIES and rest[1] not in _NEGATIONS


def _unfinished(rest: Tokens, asked: Asked) -> bool:
    """Whether something is being done: "closing it"."""
    return any(deed.verb.ing in rest for deed in read_line(asked).deeds)
