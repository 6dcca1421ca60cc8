"""What learners say at a step: understood as what it is, and never taken for a yes that it is not."""

import pytest

from assistant.spoken import ENGLISH, interpret
from assistant.spoken.expect import ChoiceExpected, ConfirmExpected
from assistant.spoken.meaning import Answer, Kind
from assistant.spoken.statement import Asked, Sense, Want

from .answers import NAMES, WANTS, Row, is_asked_about, is_wrong, library, lived, rows, taken

CHOICES = (
    (("none", "some"), (("no bubbles", "none"), ("I don't see any air", "none"), ("there's a bubble", "some"))),
    (("none", "some"), (("it's free of air", "none"), ("there is some air in it", "some"), ("is there some", ""))),
    (("clear and dry", "cloudy", "leaking"), (("it's clear, no leaks", "clear and dry"), ("looks cloudy", "cloudy"))),
    (("clear and dry", "cloudy", "leaking"), (("the bag is leaking", "leaking"), ("not leaking", ""), ("clear", ""))),
    (("healthy", "red", "swollen", "painful"), (("it looks fine", "healthy"), ("the site is a bit red", "red"))),
    (("healthy", "red", "swollen", "painful"), (("red and swollen", ""), ("not sure it's red", ""), ("okay", ""))),
    (("all there", "something missing"), (("everything's there", "all there"), ("no signature", "something missing"))),
    (("running quietly", "alarming", "stopped"), (("it's running", "running quietly"), ("it's beeping", "alarming"))),
    (("from the library", "by hand"), (("I used the library", "from the library"), ("typed it in", "by hand"))),
    (("safe to give", "allergic"), (("no known allergies", "safe to give"), ("I think she's allergic", ""))),
)


@pytest.mark.parametrize(
    ("choices", "words", "choice"), [(choices, *said) for choices, sayings in CHOICES for said in sayings]
)
def test_a_choice_in_words_of_its_own(choices: tuple[str, ...], words: str, choice: str) -> None:
    """Taken only where they fit one alternative, and neither ask nor doubt."""
    found = interpret(words, ChoiceExpected(choices))
    assert (found.value if isinstance(found, Answer) and found.kind is Kind.CHOICE else "") == choice


LIBRARY = list(
    dict.fromkeys(
        Asked(line, WANTS[expect["kind"]], tuple(expect.get("good", ())), tuple(expect.get("bad", ())))
        for (line, _choices), expect in library().items()
        if expect["kind"] in WANTS
    )
)
"""Every line of the library that is answered by a yes, a no or a done."""


@pytest.mark.parametrize("name", [*NAMES, "held_out/students"])
def test_nothing_is_taken_for_what_it_is_not(name: str) -> None:
    """An answer is taken only where it is meant; a no only where nothing good is."""
    found = rows(name)
    assert len(found) >= 15
    assert [(row, taken(row)) for row in found if is_wrong(row, taken(row))] == []


ALTERNATIVES = {"eight_voices": 0.93, "ten_voices": 0.94, "steps": 0.985, "choices": 0.69, "another_sixty_lines": 0.95}
"""The share of the clear answers to choices that is taken at once; at least."""


@pytest.mark.parametrize("name", ALTERNATIVES)
def test_alternatives_are_taken_in_words_of_every_day(name: str) -> None:
    """Typed; where a line names alternatives, nothing is asked about."""
    clear = [row for row in rows(name) if row.choices and row.is_clear]
    assert len(clear) >= 60
    assert sum(taken(row) == row.means for row in clear) >= ALTERNATIVES[name] * len(clear)


@pytest.mark.parametrize("name", ["steps", "students", "students_again", "natural", "negatives"])
def test_the_guide_takes_what_is_meant(name: str) -> None:
    """A step is closed, or its wait begun, by exactly what is taken for its good answer."""
    assert [(row, lived(row)) for row in rows(name) if (lived(row) or "no") != (taken(row) or "no")] == []


UNDERSTOOD = {
    "steps": (0.97, 0.98),
    "students": (0.92, 0.94),
    "students_again": (0.83, 0.86),
    "hundred_lines": (0.98, 0.98),
    "chatty": (0.87, 0.9),
    "three_hundred": (0.94, 0.97),
    "another_sixty_lines": (0.82, 0.88),
    "every_day_words": (0.91, 0.96),
    "natural": (0.93, 0.98),
    "many_words": (0.52, 0.69),
    "choices": (0.69, 0.69),
    "alternatives": (0.9, 0.9),
    "eight_voices": (0.85, 0.88),
    "ten_voices": (0.82, 0.85),
}
"""The share of each table that is taken at once, and with what a yes takes when the learner is asked whether it is so.

At least; the rest is asked again (measured; see its README).
"""


@pytest.mark.parametrize("name", UNDERSTOOD)
def test_what_learners_naturally_say_is_understood(name: str) -> None:
    """Typed, of all kinds of line that a yes, a done, a start or an alternative answers."""
    clear = [row for row in rows(name) if row.is_clear]
    at_once, with_a_yes = UNDERSTOOD[name]
    understood = sum(taken(row) == row.means for row in clear)
    assert understood >= at_once * len(clear)
    assert understood + sum(map(is_asked_about, clear)) >= with_a_yes * len(clear)


BEFORE = (
    *("is it", "should i", "i think", "i hope", "maybe", "almost", "about to", "i have not", "i did not", "never"),
    *("it is not", "going to", "would it be", "until", "not sure", "i doubt", "as if", "i forgot whether", "in case"),
)
BEHIND = (
    *("or not", "i think", "maybe", "i hope", "almost", "i guess", "or is it", "tomorrow", "soon", "later", "not yet"),
    *("i suppose", "in a minute", "just kidding"),
)
DOUBTS = ("almost", "nearly", "about to", "trying to", "should", "would", "if", "maybe", "hardly", "supposedly")
DENIED = (
    *(
        (" is ", " is not "),
        (" are ", " are not "),
        ("'s ", " isn't "),
        (" have ", " have not "),
        (" did ", " didn't "),
    ),
    *(("'re ", " aren't "), (" has ", " hasn't "), ("'m ", "'m not "), (" can ", " can't "), ("'ve ", " haven't ")),
)


def turned_round(row: Row, at: int) -> list[str]:
    """The words of a row asked, doubted, put off and denied: every denial, and a few of the rest, others each time."""
    words = row.words.split()
    place = at % (len(words) + 1)
    doubt = DOUBTS[at % len(DOUBTS)]
    before, behind = (
        (f"{BEFORE[(at + n) % len(BEFORE)]} {row.words}" for n in (0, 7)),
        (f"{row.words} {BEHIND[(at + n) % len(BEHIND)]}" for n in (0, 5)),
    )
    inside = () if doubt in row.line.lower() else (" ".join((*words[:place], doubt, *words[place:])),)
    text = f" {row.words}"
    denied = (text.replace(verb, no, 1).strip() for verb, no in DENIED if verb in text)
    return [f"{row.words}?", *before, *behind, *inside, *denied]


@pytest.mark.parametrize(
    ("name", "least"),
    [
        *(("steps", 1500), ("students", 900), ("students_again", 350), ("natural", 1500), ("three_hundred", 1500)),
        *(("choices", 400), ("another_sixty_lines", 1200), ("every_day_words", 800), ("alternatives", 250)),
    ],
)
def test_what_is_asked_doubted_or_denied_is_not_taken(name: str, least: int) -> None:
    """No answer is taken once its words are turned round; of alternatives, at most another one."""
    understood = [row for row in rows(name) if row.is_clear and taken(row) == row.means]
    turned = [(row, words) for at, row in enumerate(understood) for words in turned_round(row, at)]
    assert len(turned) >= least
    assert [(row.line, words) for row, words in turned if taken(row, words) == row.means] == []


@pytest.mark.parametrize("asked", LIBRARY, ids=lambda asked: asked.line[-50:])
def test_sayings_mean_what_they_say(asked: Asked) -> None:
    """Each sentence for recognisers is understood as its sense says."""
    statements = ENGLISH.tables.statements
    assert statements is not None
    sayings = statements.sayings(asked)
    expect = ConfirmExpected(done_is_yes=asked.want is not Want.ANSWER, asked=asked)
    for words, sense in sayings:
        found = interpret(words, expect)
        positive = isinstance(found, Answer) and (found.kind is Kind.DONE or found.value == "yes")
        assert positive == (sense is Sense.GOOD), words
    assert sum(sense is Sense.GOOD for _words, sense in sayings) >= 1
    assert sum(sense is not Sense.GOOD for _words, sense in sayings) >= 20


CHANGES = (
    "not",
    "almost",
    "nearly",
    "about to",
    "trying to",
    "half",
    "should",
    "would",
    "if",
    "wrong",
    "other",
    "never",
)


@pytest.mark.parametrize("asked", LIBRARY, ids=lambda asked: asked.line[-50:])
def test_one_word_more_and_a_good_sentence_is_good_no_longer(asked: Asked) -> None:
    """A word of denial, doubt, intention or of another thing, wherever it stands, takes the yes away."""
    statements = ENGLISH.tables.statements
    assert statements is not None
    expect = ConfirmExpected(done_is_yes=asked.want is not Want.ANSWER, asked=asked)
    for count, (words, sense) in enumerate(statements.sayings(asked)):
        if sense is not Sense.GOOD or words.startswith(("no ", "there is no", "i see no", "i do not see")):
            continue
        row = words.split()
        # Where the line itself says "half", one "half" more changes nothing.
        # Every other word at each sentence, and in front, behind, or at a place between, in turn: each word meets some
        # fifty sentences at each of them.
        for change in (change for change in CHANGES[count % 2 :: 2] if change not in asked.line):
            at = (0, count % len(row), len(row))[(count // 2 + CHANGES.index(change)) % 3]
            changed = " ".join((*row[:at], change, *row[at:]))
            found = interpret(changed, expect)
            positive = isinstance(found, Answer) and (found.kind is Kind.DONE or found.value == "yes")
            assert not positive, changed
