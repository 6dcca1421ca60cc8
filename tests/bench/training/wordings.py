"""What is said in training: numbers, commands, statements at the library's lines, near-misses, names, and other speech.

The near-misses of `tests.bench.near_misses` and the held-out answers of learners are measured, so none of their words
are here. Everything is written as the model is to write it: in small letters, without marks, numbers in words.
"""

import csv
import re
import tomllib
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from random import Random

from assistant import spoken
from assistant.spoken import ENGLISH
from assistant.spoken.english.verbs import VERBS
from assistant.spoken.expect import AnyExpected, ConfirmExpected, NameExpected
from assistant.spoken.statement import Sense
from tests.bench.near_misses import NEAR_MISSES, choices, frames, is_positive, sayings, unseen_choices
from tests.bench.sayings import OUTSIDE, Saying, cardinal, one_by_one, ways

Said = tuple[str, str]
"""The kind of a wording, and the wording."""

_ANSWERS = Path(__file__).parents[2] / "data" / "answers"
_SHELF = Path(__file__).parents[3] / "checklists" / "shelf.toml"
_FORTUNES = Path("/usr/share/games/fortunes")
_UNITS = (
    *("millilitres", "millilitres per hour", "mils", "mils per hour", "millilitres an hour", "mils an hour"),
    *("minutes", "hours", "hour", "milligrams", "grams", "micrograms", "drops per minute", "drops a minute"),
    *("litres", "litre", "kilograms", "units", "units per hour", "drops", "percent", "seconds", "minute"),
    *(
        "micrograms per minute",
        "milligrams per hour",
        "millilitres per minute",
        "milliequivalents",
        "drops per millilitre",
    ),
)
_BEFORE = (
    *("it's", "it is", "that's", "it says", "the rate is", "the volume is", "the pump shows", "i get", "the answer is"),
    *("the bag says", "the time is", "the dose is", "about", "uh", "um", "so", "okay"),
)
_TEENS_AND_TENS = (*range(13, 20), *range(30, 100, 10))
_OF_A_VERB = {
    "positive": (
        "{past} already|just {past} it|we {past} it|i just {past} it|i've {past} that|it is {past} now|they're {past}|"
        "okay {past}|yes it's {past}|i have {past} it now|{past} and done|that's {past}|{past}"
    ),
    "negation": (
        "never {past} it|it has not been {past}|we didn't {base} it|it wasn't {past}|it's still not {past}|"
        "i have not {past} it|i could not {base} it|that isn't {past}|they aren't {past}|it won't {base}|"
        "i didn't {base} that|i haven't {past} that yet|no i did not {base} it|we haven't {past} it|not {past} yet|"
        "it hasn't been {past}|i don't {base} it|i didn't get it {past}"
    ),
    "question": (
        "was it {past}|did you {base} it|do i {base} it|can i {base} it|have we {past} it|are they {past}|"
        "did we {base} it|is that {past}|must i {base} it|do i have to {base} it|has this been {past}|is this {past}|"
        "shall i {base} it|why is it {past}|when do i {base} it|how do i {base} it|is it {past} yet"
    ),
    "unfinished": (
        "i'm just {ing} it|i started {ing} it|i want to {base} it|half {past}|i think i {past} it|it may be {past}|"
        "i'm going to {base} it|maybe {past}|i will {base} it|i have to {base} it|have to {base} it|still {ing}|"
        "i'm still {ing} it|not quite {past}|i'm not sure i {past} it|it's nearly {past}|i was {ing} it|partly {past}|"
        "i should {base} it|i need to {base} it|let me {base} it|{ing} it now|once it's {past}|if it's {past}"
    ),
}
_GENERAL = (
    "that isn't done|this is not done|it's not done yet|we're not done|not done at all|nothing is done|"
    "i am not done yet|"
    "no it's not done|it was not done|that was not done|that's not complete|it isn't complete|it's incomplete|"
    "they're not done|it isn't finished|that's not finished|i'm not finished|we haven't finished|no i haven't|"
    "no i didn't|we didn't|they didn't|i don't think so|i doubt it|that's wrong|it's wrong|wrong|that is false|"
    "i have not done that|i didn't do that|i haven't done this|i did not do this one|never did|i never did it|"
    "i couldn't do it|i can't do that|i won't|it doesn't look right|that doesn't match|it does not match|"
    "they are not the same|that's not the same|not the same|not at all|no way|no not yet|not right|it's not right|"
    "isn't right|that isn't it|not this one|not that one|not now|not so far|not today|not there|not here|no more|"
    "is this one done|was that done|did we do it|have you done it|do i say done|is it over|is everything done|"
    "is that finished|was it finished|is that enough|is it okay|is this okay|is this right|is this correct|"
    "do i confirm|did it work|was that correct|was that right|are these right|is it the same|does that match|"
    "do they match|is there any|are there any|how do i know|what does that mean|who said that|"
    "have to start|i have to start|you have to start|it has to start|had to start|half done now|almost there|"
    "nearly there|getting there|working on it|still working on it|in a moment|in a minute|just a bit more|"
    "not just yet|soon|later|doing it now|i'm doing it now|on my way|i'll do that|i will do it|let me do it|"
    "i would say so|i suppose|i suppose so|more or less|kind of|perhaps|possibly|it might have|it may be|could be|"
    "i believe it is|i guess it is|i hope it is|it looks like it|it seems so|should be okay|should be right|"
    "it's about done|just about|when i'm done|after this|before that|until it's done|if it is done|"
    "done with what|done what|what's done|yes but not yet|yes but wait|yes or no|no wait|wait no|yes no|"
    "well yes and no|that is that|that was fun|that's don|that stung|that's john|fun|one|won|gun|dawn|down|dumb|dunn|"
    "don't|tongue|son|ton|run|dent|dan|guess|guest|jess|chess|less|mess|press|test|best|rest|west|next|necks|"
    "note|nose|snow|now|know how|known|go|grow|ago|low|slow|toe|though|so|show|"
    "clear|not clear|unclear|no air|some air|more air|there is air|closed|not closed|close|clothes|it's close|"
    "disclosed|"
    "collect|elect|direct|erect|current|incorrect|infect|connect|expect|respect|inspect"
)
_ALONE = (
    "done|closed|clear|open|opened|none|seen|shut|some|finished|complete|started|running|primed|hung|checked|labelled|"
    "locked|dry|clean|full|empty|normal|yes|yeah|yep|no|nope|okay|correct|right|ready|connected|spiked|in place|"
    "all good|all clear|no air|none seen|it's done|it's closed|it's open|it's clear|that's done|i did it|"
    "i didn't do that|not yet|not clear|not closed yet|zero|oh|one|two|three|four|five|six|seven|eight|nine|ten|"
    "point|half"
)
assert ENGLISH.tables.statements is not None
_STATEMENTS = ENGLISH.tables.statements.sayings
_MOST_AT_A_LINE = {"good": 22, "bad": 14, "near": 26}


def all_wordings(seed: int = 1) -> list[Said]:
    """Everything that is said, the same in every run; some of it more than once.

    Args:
        seed: of what is drawn.
    """
    chance = Random(seed)  # noqa: S311 - no secret
    measured = _measured()
    found = [
        *_numbers(chance),
        *_commands(chance),
        *_statements(chance),
        *_of_verbs(chance),
        *_alone(),
        *_choices(),
        *(("general", words) for words in _GENERAL.split("|") * 2),
        *_of_learners(),
        *_names(chance),
        *_other_speech(chance),
    ]
    return [(kind, words) for kind, words in found if words and not {words.lower(), _plain(words)} & measured]


def as_written(words: str) -> str:
    """As the model is to write it: small letters, no marks but those within words."""
    words = re.sub(r"[^a-z' ]", " ", words.lower().replace("\u2019", "'").replace("-", " "))
    return " ".join(re.sub(r"(?<![a-z])'|'(?![a-z])", " ", words).split())


def _plain(words: str) -> str:
    contractions = ENGLISH.tables.writing.contractions
    return " ".join(part for word in as_written(words).split() for part in contractions.get(word, word).split())


@cache
def _measured() -> frozenset[str]:
    """What the benches measure, near-misses above all: of no half of them is anything learnt.

    Of one that only its tone makes a question ("closed?") the words are learnt as the statement that they are too.
    """
    both = [saying for half in ("report", "tuning") for saying in sayings(half) if saying.kind in NEAR_MISSES]
    near = {saying.words.lower() if _only_sounds_asked(saying) else _plain(saying.words) for saying in both}
    unseen = {_plain(choice) for half in ("report", "tuning") for choice, _ in unseen_choices(half)}
    return frozenset(near | unseen | {_plain(words) for words in OUTSIDE})


def _only_sounds_asked(saying: Saying) -> bool:
    words = saying.words.removesuffix("?")
    return words != saying.words and is_positive(ENGLISH.interpret(words, saying.expect))


def _numbers(chance: Random) -> Iterator[Said]:
    whole = [
        *(chance.randrange(21, 100) for _ in range(260)),
        *(chance.randrange(100, 1000) for _ in range(420)),
        *(chance.randrange(20, 200) * 5 for _ in range(160)),
        *(chance.randrange(1000, 3001, 25) for _ in range(90)),
        *(value for value in range(21) for _ in range(12)),
        *(value for value in _TEENS_AND_TENS for _ in range(30)),
        *(100 * chance.randrange(1, 10) + chance.choice(_TEENS_AND_TENS) for _ in range(160)),
    ]
    decimals = [
        *(f"{chance.randrange(200)}.{chance.randrange(1, 10)}" for _ in range(330)),
        *(f"{chance.randrange(20)}.{chance.randrange(1, 100):02}" for _ in range(100)),
        *(f"0.{chance.randrange(1, 100)}" for _ in range(60)),
        *(f"{chance.choice(_TEENS_AND_TENS)}.{chance.randrange(1, 10)}" for _ in range(90)),
    ]
    for value in (*map(str, whole), *decimals):
        words = chance.choice(ways(value))
        if value.startswith("0.") and chance.random() < 0.3:
            words = words.removeprefix("zero ")
        if chance.random() < 0.6:
            words = f"{words} {chance.choice(_UNITS)}"
        if chance.random() < 0.12:
            words = f"{chance.choice(_BEFORE)} {words}"
        yield "number", words
    for value in (*(1500, 2500, 1250, 1100) * 3,):
        yield "number", f"{cardinal(value // 100)} hundred" if value % 100 == 0 else cardinal(value)
    for _ in range(900):
        length = chance.choice((1, 2, 2, 3, 3, 3, 4, 4, 5))
        digits = "".join(chance.choice("0123456789") for _ in range(length))
        if length > 2 and chance.random() < 0.35:
            place = chance.randrange(1, length)
            digits = f"{digits[:place]}.{digits[place:]}"
        words = one_by_one(digits)
        if chance.random() < 0.2:
            words = words.replace("zero", "oh")
        yield "digits", words
    for _ in range(220):
        number = cardinal(chance.randrange(1, 400))
        yield "read back", f"{chance.choice(('yes', 'no', 'yes it is', 'no it is', 'correct', 'no not'))} {number}"


def _commands(chance: Random) -> Iterator[Said]:
    for phrase in ENGLISH.phrases(AnyExpected()):
        if isinstance(spoken.interpret(phrase, ConfirmExpected()), spoken.meaning.Answer):
            for words in sorted({phrase, _shortened(phrase)}):
                for _ in range(3):
                    yield "command", words
    for words in ("yes", "no", "stop", "go", "done", "next", "okay", "again", "pause", "back", "correct", "right"):
        for _ in range(14):
            yield "command", words
            if chance.random() < 0.25:
                yield "command", f"{words} please" if words not in ("yes", "no", "right") else f"{words} {words}"


def _statements(chance: Random) -> Iterator[Said]:
    found: dict[str, str] = {}
    for listed in _of_lines():
        by_sense: dict[str, list[str]] = {"good": [], "bad": [], "near": []}
        for words, sense in listed:
            by_sense[{"good": "good", "bad": "bad"}.get(sense.value, "near")].append(words)
        for kind, known in by_sense.items():
            for words in chance.sample(known, min(len(known), _MOST_AT_A_LINE[kind])):
                found.setdefault(_shortened(words) if chance.random() < 0.6 else words, f"line, {kind}")
    for words, kind in found.items():
        yield kind, words


@cache
def _of_lines() -> tuple[tuple[tuple[str, Sense], ...], ...]:
    """What may be said at each line that has sentences of its own, and what it means there."""
    return tuple(tuple(_STATEMENTS(expect.asked)) for expect in frames().values() if expect.asked is not None)


def _of_verbs(chance: Random) -> Iterator[Said]:
    for verb in VERBS.values():
        for kind, wordings in _OF_A_VERB.items():
            for wording in chance.sample(wordings.split("|"), 5):
                yield kind, wording.format(base=verb.base, past=chance.choice(verb.past), ing=verb.ing)


def _alone() -> Iterator[Said]:
    """Words that answer by themselves, each often."""
    words = {words for listed in _of_lines() for words, _ in listed}
    for one in sorted(words):
        if len(one.split()) == 1:
            yield "alone", one
    for one in _ALONE.split("|"):
        for _ in range(24):
            yield "alone", one
    for verb in VERBS.values():
        for past in verb.past:
            yield "alone", past


def _choices() -> Iterator[Said]:
    """What the library's lines give to choose from, in every way that it may be said there."""
    for words in sorted({words for _, expect in choices() for words, _ in expect.sayings()}):
        yield "choice", words


def _of_learners() -> Iterator[Said]:
    for name in ("natural", "negatives", "choices", "asides", "troubles", "many_words"):
        rows = [row for row in (_ANSWERS / f"{name}.tsv").read_text().splitlines() if not row.startswith("#")]
        for row in csv.DictReader(rows, delimiter="\t", quoting=csv.QUOTE_NONE):
            if not re.search(r"\d", row["words"]) and len(row["words"].split()) <= 12:
                yield f"learner, {name}", row["words"]


def _names(chance: Random) -> Iterator[Said]:
    shelf = tomllib.loads(_SHELF.read_text())
    names = tuple(one["name"] for kind in ("fluids", "drugs") for one in shelf[kind])
    every = list(ENGLISH.phrases(NameExpected(names, alone=True)))
    for name in every:
        for _ in range(4):
            yield "name", f"{chance.choice(('it is', 'the', 'that is'))} {name}" if chance.random() < 0.1 else name


def _other_speech(chance: Random) -> Iterator[Said]:
    """Speech that is not for the assistant: sentences of a common collection, pieces and single words out of them.

    Whoever hears nothing but the library's words takes every other short answer for one of them, an author's too.
    """
    sentences, words = collected()
    for sentence in chance.sample(sentences, min(len(sentences), 900)):
        parts = sentence.split()
        length = chance.randrange(2, 5)
        first = chance.randrange(max(1, len(parts) - length))
        yield "other", " ".join(parts[first : first + length])
    for sentence in chance.sample(sentences, min(len(sentences), 1300)):
        yield "other", sentence
    for word in chance.sample(words, min(len(words), 700)):
        yield "other", word


@cache
def collected() -> tuple[list[str], list[str]]:
    """Sentences of a common collection, and single words out of them."""
    sentences, words = set(), set()
    for path in sorted(_FORTUNES.glob("*")):
        if path.suffix or not path.is_file() or "off" in path.name:
            continue
        for sentence in re.split(r"[.!?;:\n%\t]+", path.read_text(errors="ignore")):
            clean = as_written(sentence)
            if not re.search(r"[^A-Za-z',\-\s]", sentence) and 3 <= len(clean.split()) <= 11:
                sentences.add(clean)
                words |= {word for word in clean.split() if len(word) > 2 and "'" not in word}
    return sorted(sentences), sorted(words)


_SHORT_FORMS = [
    (full, re.compile(rf"\b{full}\b(?= )"), short)
    for short, full in ENGLISH.tables.writing.contractions.items()
    if "'" in short
]


def _shortened(words: str) -> str:
    """With its short forms: "that's it" for "that is it"."""
    for full, pattern, short in _SHORT_FORMS:
        if full in words:
            words = pattern.sub(short, words)
    return words
