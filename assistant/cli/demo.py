"""``checkoff demo``: the whole job with a simulated learner, for newcomers and for tests."""

import argparse
from datetime import UTC, datetime

from assistant.attempts.demonstration import demonstration
from assistant.attempts.papers import take_papers
from assistant.attempts.pins import pins
from assistant.attempts.record_place import RecordPlace
from assistant.cli.display import add_display_option, display
from assistant.cli.folders import head_book, records_folder
from assistant.cli.outcome import DEFAULT_CHECKLIST, live, screen_for
from assistant.cli.printing import tell
from assistant.cli.verbs import Subparsers, add_verb
from assistant.guide.progress import Mode
from assistant.learner import Character, Slip
from assistant.screens import Screens
from assistant.text import quoted

READ_S = 1.5
"""On a display each question stays so long before the simulated learner answers, seconds."""

_EXAMPLES = """\
  checkoff demo                                 everything goes well
  checkoff demo --slip tenfold                  the learner enters ten times the rate
  checkoff demo primary-line --slip left-clamp --seed 7
  checkoff demo --sound                         a synthesised learner, heard by the real recogniser
  checkoff demo lock-infusion --order oh-114 --as unaware --mode check-off

kinds of learner, with --as; each answers by what is laid out at the bench:
  attentive       sees what is there, says so, puts it right or stops
  unaware         overlooks every fault
  yes-sayer       looks at nothing, and says that all is well
  over-cautious   also sees faults that are not there
  careless        errs with numbers
In a check-off a simulated instructor marks what has to be seen.

slips: wrong-rate, teen-ty, tenfold, swapped, left-clamp, skip-critical, wrong-bag, too-slow
In a demonstration timed waits pass at once; in an attempt they take their full time."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb."""
    parser = add_verb(
        subparsers,
        "demo",
        "Shows one whole attempt with a simulated learner, who can be told to make a mistake.",
        _EXAMPLES,
    )
    parser.add_argument("checklist", nargs="?", default=DEFAULT_CHECKLIST, help="name or path of a checklist")
    parser.add_argument("--order", help="name or path of an order (default: the checklist's own)")
    parser.add_argument("--school", default="", metavar="FILE", help="a school's own file")
    parser.add_argument(
        "--slip",
        choices=[slip.value for slip in Slip],
        metavar="KIND",
        help="the learner makes this mistake once: see below",
    )
    parser.add_argument(
        "--as",
        dest="character",
        choices=[character.value for character in Character],
        default=Character.ATTENTIVE.value,
        metavar="KIND",
        help="the kind of learner (attentive): see below",
    )
    parser.add_argument(
        "--miss-rate",
        type=_share,
        default=1.0,
        metavar="SHARE",
        help="share of faults that the unaware learner overlooks, from 0 to 1 (1)",
    )
    parser.add_argument("--seed", type=int, default=1, metavar="N", help="varies the wording and the place of the slip")
    way = parser.add_mutually_exclusive_group()
    way.add_argument("--typed", action="store_true", help="the learner types (the default)")
    way.add_argument(
        "--sound", action="store_true", help="the learner's words are synthesised and heard by the recogniser"
    )
    parser.add_argument("--ear", metavar="NAME", help="which recogniser listens, with --sound")
    parser.add_argument("--learner", default="demo", metavar="CODE", help="the learner's code")
    parser.add_argument(
        "--mode", choices=[mode.value for mode in Mode], default=Mode.PRACTICE.value, help="default: practice"
    )
    parser.add_argument("--records", metavar="FOLDER", help="where the record goes")
    parser.add_argument("--plain", action="store_true", help="for a screen reader or braille: plain lines")
    parser.add_argument("--json", action="store_true", help="one JSON object per line instead of text")
    add_display_option(parser)
    parser.set_defaults(run=run)


def _share(text: str) -> float:
    try:
        share = float(text)
    except ValueError:
        share = -1.0
    if not 0 <= share <= 1:
        raise argparse.ArgumentTypeError(f"{quoted(text)} is no share from 0 to 1")
    return share


def run(arguments: argparse.Namespace) -> int:
    """Carry out the verb; return the exit code."""
    papers = take_papers(arguments.checklist, arguments.order, school=arguments.school)
    for warning in papers.warnings():
        tell(warning)
    mode = Mode(arguments.mode)
    screen = screen_for(as_json=arguments.json, echo_typed=True, bare=arguments.plain)
    with display(bool(arguments.display)) as page:
        sitting = demonstration(
            papers,
            mode,
            pins(papers, mode, arguments.learner, arguments.checklist, arguments.order),
            # A demonstration goes into the book too: whoever tries the evidence with one sees what becomes of a real
            # one.
            RecordPlace(
                records_folder(arguments.records),
                papers.checklist.name,
                arguments.learner,
                datetime.now(UTC),
                head_book(),
            ),
            screen if page is None else Screens(screen, page, answer_s=READ_S),
            tell,
            slip=Slip(arguments.slip) if arguments.slip else None,
            character=Character(arguments.character),
            miss_rate=arguments.miss_rate,
            seed=arguments.seed,
            aloud=arguments.sound,
            ear=arguments.ear,
        )
        return live(sitting, as_json=arguments.json, page=page)
