"""Words that take an answer back, put around clear answers at every line: none of them may close a step.

The frames are those of a hostile tester (common practice, no source); the answers are the library's own alternatives
and what the tables have as clear.
"""

from collections.abc import Iterator

import pytest

from tests.spoken.answers import NAMES, Row, library, rows, taken

FRAMES = (
    *(
        "no way {}",
        "no way it's {}",
        "{}, says she",
        "I doubt it's {}",
        "if it's {}",
        "might be {}",
        "not sure if it's {}",
    ),
    *("I hope {}", "I wish it was {}", "as if it's {}", "far from {}", "anything but {}", "hardly {}", "nearly {}"),
    *("{} my foot", "{} I wish", "{} if only", "{} or not", "{} maybe", "you'd think it's {}", "{} but it isn't"),
    *("{} once I've looked", "pretend it's {}", "let's say {}", "I'd love to say {}", "nobody said {}", "{} ish"),
    *("what do you mean {}", "{} would be nice", "I guess {}", "probably {}", "{} I think", "almost {}", "sort of {}"),
    *("should I say {}", "I can't tell if it's {}", "whether it's {} I don't know", "{} or something"),
    *("I haven't looked but {}", "{} unless I'm wrong", "read me {} again", "you said {}", "the line says {}"),
    *("used to be {}", "about to be {}", "partly {}", "{} in theory", "they told me {}", "everyone says {}"),
    *(
        "I bet it's {}",
        "fifty fifty {}",
        "{} wait no",
        "{} hang on",
        "{} scratch that",
        "{} in my head",
        "allegedly {}",
    ),
)
EVERY = 4
"""Of the answers one in so many, another part for each frame: all of them take a minute."""


def alternatives() -> Iterator[Row]:
    """Each alternative of the library as an answer to its line."""
    for line, choices in library():
        yield from (Row(f"choice {' | '.join(choices)}", line, choice, choice) for choice in choices)


def clear_answers() -> Iterator[Row]:
    """Short clear answers to what is to be done or asked, one a line."""
    found: dict[str, Row] = {}
    for row in (row for name in NAMES for row in rows(name)):
        if row.is_clear and not row.choices and len(row.words.split()) <= 4 and taken(row) == row.means:
            found.setdefault(row.line, row)
    yield from found.values()


@pytest.mark.parametrize("answers", [alternatives, clear_answers])
def test_what_is_taken_back_closes_nothing(answers):
    """Whatever the line is: doubt, irony, hearsay, a wish, a question, a word taken back."""
    clear = list(answers())
    assert len(clear) > 250
    wrong = []
    for number, frame in enumerate(FRAMES):
        for row in clear[number % EVERY :: EVERY]:
            words = frame.format(row.words.rstrip(".!?"))
            found = taken(Row(row.kind, row.line, words, "not taken"))
            if found in (*row.choices, "done", "start", "yes"):
                wrong.append((row.line, words, found))
    assert wrong == []
