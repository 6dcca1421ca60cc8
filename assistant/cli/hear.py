"""`checkoff hear FILE.wav... --expect EXPECT`: what recorded speech means."""

import argparse
from decimal import Decimal
from pathlib import Path

from assistant.adapters.recognisers.choose import open_recogniser
from assistant.adapters.recognisers.replay import hear_sound, read_sound
from assistant.cli.parse import Parsed, as_text, parsed
from assistant.cli.printing import say_line, tell, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import SoundError
from assistant.guide.numbers import digits_follow, must_be_spelled
from assistant.ports import Hearing
from assistant.spoken import interpret, parse_expect, possible
from assistant.spoken.expect import Expect
from assistant.spoken.meaning import Ambiguous, Answer, Kind, Meaning
from assistant.text import shown


class HeardFile(Parsed):
    """What was heard in a file, as it is printed; `confidence` is None where no wording is stood for."""

    file: str
    ear: str
    confidence: float | None
    audio_s: float
    compute_s: float


_EXAMPLES = """\
  checkoff hear answer.wav --expect "number mL/h"
  checkoff hear digits.wav --expect "digits mL/h"    a number said digit by digit
  checkoff hear *.flac --expect confirm --json       one JSON object per file
  checkoff hear answer.wav --ear bundled

Exit code 0 if every file could be read, even if nothing was understood in it."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb `hear`."""
    parser = add_verb(
        subparsers,
        "hear",
        "Hears sound files as the assistant would hear a learner at a step.",
        _EXAMPLES,
    )
    parser.add_argument("files", nargs="+", type=Path, metavar="FILE", help="WAV or FLAC, any rate, mono or stereo")
    parser.add_argument(
        "--expect",
        default="any",
        metavar="EXPECT",
        help='confirm, any, time, "number UNIT", or "digits UNIT" (digit by digit), as in "number mL/h"',
    )
    parser.add_argument("--ear", metavar="NAME", help="which recogniser listens (see: checkoff models list)")
    parser.add_argument("--models", type=Path, metavar="FOLDER", help="the models folder")
    parser.add_argument("--json", action="store_true", help="one JSON object per file")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Hear each file and print what it means; 0 if all could be read, else 1.

    Raises:
        UsageError: EXPECT is none.
        ModelError: there is no such recogniser.
    """
    expect = parse_expect(args.expect)
    recogniser = open_recogniser(args.ear, args.models)
    all_read = True
    try:
        for path in args.files:
            try:
                sound = read_sound(path)
            except SoundError as error:
                # One bad file does not keep the others from being heard.
                all_read = False
                tell(str(error))
                continue
            found = heard(path, recogniser.name, hear_sound(recogniser, sound, expect), expect)
            if args.json:
                write_json(found)
            else:
                say_line(f'{found["file"]}: "{shown(found["words"])}" {as_text(found)}')
    finally:
        recogniser.close()
    return 0 if all_read else 1


LEAST_POSSIBLE = 0.05
"""Confidence from which another number is told as possible."""


def meaning_of(hearing: Hearing, expect: Expect) -> Meaning:
    """What an attempt would make of it: a number whose digits it would ask for is no answer, but one of those possible.

    So it is where the recogniser doubts the number, where it sounds like another one, and after a slip of the tongue.
    """
    meaning = interpret(hearing.words, expect, heard=True)
    if not isinstance(meaning, Answer) or meaning.kind is not Kind.NUMBER or not isinstance(meaning.value, Decimal):
        return meaning
    if not digits_follow(meaning, doubtful=hearing.doubtful):
        return meaning
    others = [interpret(o.words, expect, heard=True) for o in hearing.alternatives if o.confidence >= LEAST_POSSIBLE]
    found = [other.value for other in others if isinstance(other, Answer) and other.unit == meaning.unit]
    near = possible(meaning.value) if must_be_spelled(meaning) else (meaning.value,)
    values = dict.fromkeys([*near, *(value for value in found if isinstance(value, Decimal))])
    return Ambiguous(tuple(values), meaning.unit or "")


def heard(path: Path, ear: str, hearing: Hearing, expect: Expect) -> HeardFile:
    """What a file means, in the form in which it is printed; words that were refused are empty."""
    best = next((one.confidence for one in hearing.alternatives if one.words == hearing.words), None)
    return {
        **parsed(hearing.words, meaning_of(hearing, expect), expect),
        "file": shown(path),
        "ear": ear,
        "confidence": None if best is None else round(best, 3),
        "audio_s": round(hearing.audio_s, 3),
        "compute_s": round(hearing.compute_s, 3),
    }
