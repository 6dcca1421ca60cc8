"""`checkoff models list|add|check`: recognisers on this machine."""

import argparse
import sys
import time
from collections.abc import Callable
from dataclasses import asdict
from pathlib import Path

from assistant.adapters import answer_reader, fetch, models
from assistant.adapters.recognisers import bundled, choose, trained
from assistant.cli.printing import say_line, tell, write_json
from assistant.cli.verbs import Subparsers, add_verb
from assistant.errors import ModelError, UsageError
from assistant.text import quoted

_PARTS = ("listens", "gives a second opinion on numbers")
"""What recognisers do where none is named, in the order of `choose.listening`."""
_PROGRESS_S = 2.0
"""Time between two lines that say how far fetching has come."""


_EXAMPLES = f"""\
  checkoff models list
  checkoff models add vosk-model-small-en-us-0.15.zip --name english
  checkoff models add model.zip --sha256 {"0123456789abcdef" * 4}
  checkoff models check                          compare every file with the digest noted when it was added

Models are kept in your own folder, or where {models.FOLDER_SETTING} or --models says; in a checkout also in its
folder models, whose README tells what can be kept there."""


def add_parser(subparsers: Subparsers) -> None:
    """Add the verb `models`."""
    parser = add_verb(
        subparsers,
        "models",
        "Lists, adds and checks the models that recognise speech.",
        _EXAMPLES,
    )
    parts = parser.add_subparsers(title="what to do", metavar="list|add|check", required=True)

    listing = parts.add_parser("list", help="what can listen, the preferred one first")
    _add_common(listing)
    listing.set_defaults(run=run_list)

    adding = parts.add_parser("add", help="add a model from a file, a folder or an address")
    adding.add_argument("source", metavar="SOURCE", help="zip or tar file, folder, or http(s) address")
    adding.add_argument("--sha256", metavar="HEX", help="refuse an archive with another SHA-256")
    adding.add_argument("--size", type=int, metavar="BYTES", help="refuse an archive of another size")
    adding.add_argument("--name", metavar="NAME", help="its name here (default: that of its folder)")
    _add_common(adding)
    adding.set_defaults(run=run_add)

    checking = parts.add_parser("check", help="compare models with the digests noted when they were added")
    checking.add_argument("names", nargs="*", metavar="NAME", help="only these; otherwise all")
    _add_common(checking)
    checking.set_defaults(run=run_check)


def _add_common(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--models", type=Path, metavar="FOLDER", help="the models folder")
    parser.add_argument("--json", action="store_true", help="one JSON object per line")


def run_list(args: argparse.Namespace) -> int:
    """Print what can listen; 0, or 1 where nothing can by itself."""
    found = choose.available(args.models)
    parts = {one.name: part for one, part in zip(choose.listening(found), _PARTS, strict=False)}
    for one in found:
        part = parts.get(one.name, "")
        if args.json:
            write_json({**asdict(one), "place": str(one.place), "part": part})
        else:
            told = one.note or part or "only if it is named with --ear"
            say_line(f"{one.name}  ({one.engine.value})  {one.place}  - {told}")
    if all(one.note for one in found):
        tell("No recogniser here can be used by default: install the bundled one, or add a model.")
        return 1
    return 0


def run_add(args: argparse.Namespace) -> int:
    """Add a model and say what became of it.

    Raises:
        ModelError: it could not be added.
        UsageError: a digest or size that is none.
    """
    digest = None if args.sha256 is None else args.sha256.strip().lower()
    if digest is not None and (len(digest) != 64 or set(digest) - set("0123456789abcdef")):
        raise UsageError(f"{quoted(args.sha256)} is not a SHA-256 digest.", "Give its 64 hexadecimal digits.")
    if args.size is not None and args.size < 1:
        raise UsageError("A size is a positive number of bytes.", "Leave out --size if it is not known.")
    model = fetch.add(
        args.source,
        args.models or models.user_folder(),
        fetch.Expected(sha256=digest, size=args.size),
        name=args.name,
        progress=_Progress(),
    )
    english = models.knows_english(model)
    if args.json:
        write_json({"name": model.name, "engine": model.engine.value, "place": str(model.path), "english": english})
    else:
        say_line(f"Added {model.name} in {model.path}.")
    if not english:
        tell("It does not know the English number words, so it is used only if it is named with --ear.")
    return 0


def run_check(args: argparse.Namespace) -> int:
    """Check and print; 0 if every model is what it was.

    Raises:
        UsageError: a name that is not here.
    """
    checks = {model.name: model for model in models.stored(args.models)}
    ours: dict[str, Callable[[], models.Check]] = {}
    if trained.trained_folder():
        ours |= dict.fromkeys((trained.NAME, choose.TRAINED), trained.check_trained)
    if answer_reader.reader_folder():
        ours[answer_reader.NAME] = answer_reader.check_reader
    if bundled.bundled_folder():
        ours |= dict.fromkeys((bundled.NAME, choose.BUNDLED), bundled.check_bundled)
    names = args.names or [*(name for name in checks if name not in ours), *(name for name in ours if "-" in name)]
    all_whole = True
    for name in names:
        if name in ours:
            outcome = ours[name]()
        elif name in checks:
            outcome = models.check(checks[name])
        else:
            raise UsageError(f"There is no model called {quoted(name)}.", "See: checkoff models list")
        all_whole = all_whole and outcome.is_whole
        if args.json:
            write_json({**asdict(outcome), "whole": outcome.is_whole})
        else:
            say_line(_sentence(outcome))
    if not names:
        raise ModelError("There is no model to check.", models.HOW_TO_ADD)
    return 0 if all_whole else 1


def _sentence(outcome: models.Check) -> str:
    if outcome.is_whole:
        return f"{outcome.name}: every file is what it was."
    if not outcome.known:
        return f"{outcome.name}: no digests are known, because it was not added with: checkoff models add"
    parts = [
        f"{word} {', '.join(files)}"
        for word, files in (("changed", outcome.changed), ("missing", outcome.missing), ("extra", outcome.extra))
        if files
    ]
    return f"{outcome.name}: NOT what it was: {'; '.join(parts)}. Delete it and add it again."


class _Progress:
    """Says on standard error how far fetching has come, not more often than anyone reads."""

    def __init__(self) -> None:
        self._said = time.monotonic()

    def __call__(self, done: int, total: int | None) -> None:
        now = time.monotonic()
        if now - self._said < _PROGRESS_S and done != total:
            return
        self._said = now
        share = f" of {total / 1e6:.1f}" if total else ""
        print(f"{done / 1e6:.1f}{share} MB", file=sys.stderr, flush=True)
