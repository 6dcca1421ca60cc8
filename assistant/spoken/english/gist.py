"""The gist of a statement, in English: what its words say of what a line asks for, whatever their order.

Nothing is spotted among other words: every word has to be known, as something that the line asks about, as a denial,
or as one that changes nothing. A word that may turn the meaning round (of doubt, intention, exception, of another
thing) ends the reading, and so does a word that is not known.
"""

import re

from assistant.spoken.english.bench_words import NOUNS, TURNS_ONLY_GOOD
from assistant.spoken.english.bound import goes_astray, is_of_another
from assistant.spoken.english.framing import a_little, written_out
from assistant.spoken.english.known import Known, known_of
from assistant.spoken.english.lines import Line
from assistant.spoken.english.partly import WRITES, of_a_part
from assistant.spoken.english.reading import Reading
from assistant.spoken.english.summed_up import names_all
from assistant.spoken.english.telling import tells_another, without_what_was_told
from assistant.spoken.english.troubles import trouble_of
from assistant.spoken.statement import Asked, Sense, Tokens, Want

_OFF = re.compile(r"\b(?:off|out of) (?:the |its )?(\w+)")
_FOUND = re.compile(r"\bhave you (\w+) (?:all )?(?:the )?(\w+)")
_WHERE_NOTHING_BELONGS = frozenset({"floor", "ground", "bed", "sheet", "sheets", "lap"})
"""What drips or hangs there is not where a question asks for it."""
_REPORTED = re.compile(
    r"\b(?:he|she|they|somebody|someone|everybody|nurse|partner|colleague|instructor|teacher|patient|doctor)"
    r" (?:says?|said|thinks?|thought|reckons?|claims?|tells|told me|swears)\b"
)
_YET_TO_WRITE = frozenset(
    {"left", "leave", "leaving", "rest", "remaining", "remains", "skipped", "missed", "next", "add", "later", "still"}
    | {"just", "first", "started", "begun", "most", "part", "some", "half", "bit", "top", "page"}
)
"""What may tell of something that is not written yet."""
_TELLING = frozenset({"answered", "say", "tell"})
_FELT = frozenset(
    {"comfortable", "well", "warm", "cool", "cold", "swollen", "red", "soft", "understand", "ask", "run in"}
)
_DENIED = frozenset({"kept", "keeping", "not", "nothing", "never", "no", "without", "none", "neither"})


def gist(tokens: Tokens, asked: Asked) -> Sense | None:
    """What the words say of all that is asked: good, bad, a part of it (acknowledged), or nothing (None)."""
    known = known_of(asked)
    line, every = known.line, known.every
    tokens = without_what_was_told(written_out(tokens), line)
    if "little" in line.words:
        tokens = a_little(tokens)
    if line.want is Want.ANSWER and names_all(tokens, asked.line):
        return Sense.GOOD
    reading = Reading(tokens, known)
    if not reading.read():
        return None
    so = frozenset(at for says in reading.said if says.so for at in says.about)
    not_so = frozenset(at for says in reading.said if not says.so for at in says.about)
    if reading.said and not so | not_so:
        return Sense.ACKNOWLEDGED
    if not so | not_so or (so & not_so and not TURNS_ONLY_GOOD & set(tokens)):
        return None
    if line.either:
        sense = Sense.GOOD if so else Sense.BAD if not_so == every else Sense.ACKNOWLEDGED
    else:
        sense = Sense.BAD if not_so else Sense.GOOD if so >= every else Sense.ACKNOWLEDGED
    if sense is not Sense.GOOD:
        return sense
    if _is_turned_round(reading, tokens, known):
        return None
    return Sense.ACKNOWLEDGED if _is_to_be_asked_about(reading, tokens, known) else Sense.GOOD


def _is_turned_round(reading: Reading, tokens: Tokens, known: Known) -> bool:
    """Whether what seems good is not: somebody else says so, something went wrong, it is of another thing."""
    line = known.line
    if line.want is Want.ANSWER:
        # "Drops are falling on the floor".
        wrong = bool(_WHERE_NOTHING_BELONGS.intersection(tokens) - set(line.words))
    else:
        wrong = trouble_of(reading.beside()) is not None
    return (
        wrong
        or reading.turned
        or (reading.led_by_no and not line.absent)
        or bool(line.unsaid & set(tokens) and not _DENIED & set(tokens))  # "I told her my number"
        or goes_astray(tokens, known)
        or tells_another(tokens, line)
        or _is_reported(tokens, line)
        or _is_done_to_another(tokens, line)
    )


def _is_to_be_asked_about(reading: Reading, tokens: Tokens, known: Known) -> bool:
    """Whether it may be meant of a part, of another thing, or of the learner alone."""
    writes = bool(known.line.deeds) and known.line.deeds[0].verb.base in WRITES
    return (
        (bool(_YET_TO_WRITE & set(tokens) - set(known.line.words)) if writes else reading.other or reading.loose)
        or of_a_part(tokens, known.line)
        or is_of_another(tokens, known)
        or _is_of_oneself(tokens, known)
    )


def _is_reported(tokens: Tokens, line: Line) -> bool:
    """Whether somebody else says so: "she says they match"; what a patient feels, only a patient can tell."""
    text = " ".join(tokens)
    if line.words[:1] == ("colleague",):
        text = re.sub(r"\b(?:my colleague|colleague|she|he) (?=says|said)", "", text)
    felt = any(point.finding or point.asked in _FELT for point in line.points) or bool(_TELLING & set(line.words))
    if line.answered:
        text = text.replace("told me", "")
    return not felt and _REPORTED.search(text) is not None


def _is_done_to_another(tokens: Tokens, line: Line) -> bool:
    """Whether it is said of what the thing was to come off, or found was another thing than the one asked about."""
    asked, text = " ".join(line.words), " ".join(tokens)
    stays = _OFF.search(asked)
    if stays is not None and re.search(rf"\b{stays[1]}s?(?: is| has)?(?: now| come)? (?:off|out)\b", text):
        return True  # "the extension's off" where the line was to come off it
    found = _FOUND.search(asked)
    if found is None or line.want is not Want.ANSWER:
        return False
    other = re.search(rf"\b{found[1]} (?:the|a|my) (\w+)", text)
    return other is not None and other[1] in NOUNS and other[1].removesuffix("s") != found[2].removesuffix("s")


def _is_of_oneself(tokens: Tokens, known: Known) -> bool:
    """Whether a learner says of themselves what is asked of things: "we agree" where they do."""
    words = known.line.words
    asks_of_things = known.line.want is Want.ANSWER and "you" not in words and words[:1] != ("colleague",)
    says_so = tokens[1:] in known.table or tokens[1:2] in (("agree",), ("match",))
    return asks_of_things and tokens[0] in ("i", "we") and says_so
