"""`checkoff hear FILE.wav... --expect EXPECT`: what recorded speech means."""

import argparse
from dataclasses import replace
from pathlib import Path

from assistant.adapters.heard import heard_from
from assistant.adapters.recognisers.choose import open_recogniser
from assistant.adapters.recognisers.replay import hear_sound, read_sound
from assistant.cli.parse import Parsed, as_text, parsed
from assistant.cli.printing import say_line, tell, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import SoundError
from assistant.one_step import NOW, OneStep, Reply
from assistant.ports import Hearing
from assistant.spoken import ENGLISH, parse_expect
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
        help='confirm, any, text, "number UNIT", "digits UNIT" (digit by digit), or a line: "done: Close the clamp."',
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
    step = OneStep(parse_expect(args.expect), ENGLISH)
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
            found = heard(path, recogniser.name, hear_sound(recogniser, sound, step.listens_for()), step)
            if args.json:
                write_json(found)
            else:
                say_line(f'{found["file"]}: "{shown(found["words"])}" {as_text(found)}')
    finally:
        recogniser.close()
    return 0 if all_read else 1


LEAST_POSSIBLE = 0.05
"""Confidence from which another number is given as possible."""


def reply_to(hearing: Hearing, step: OneStep) -> Reply:
    """What an attempt would make of it; of other wordings, those that are hardly possible are left out."""
    likely = tuple(other for other in hearing.alternatives if other.confidence >= LEAST_POSSIBLE)
    return step.reply(heard_from(replace(hearing, alternatives=likely), NOW, ""))


def heard(path: Path, ear: str, hearing: Hearing, step: OneStep) -> HeardFile:
    """What a file means, in the form in which it is printed; words that were refused are empty."""
    best = next((one.confidence for one in hearing.alternatives if one.words == hearing.words), None)
    return {
        **parsed(hearing.words, reply_to(hearing, step)),
        "file": shown(path),
        "ear": ear,
        "confidence": None if best is None else round(best, 3),
        "audio_s": round(hearing.audio_s, 3),
        "compute_s": round(hearing.compute_s, 3),
    }
