"""Pictures of every page of the instructor's desk, in every light and size of window, each looked at by axe-core.

Run it with ``python -m tests.bench.desk FOLDER``, and look at each. ``--cost`` tells instead what one entry costs the
desk: to take it in, to draw its station's row, to draw its attempt's page.
"""

import argparse
import sys
import tempfile
import time
from pathlib import Path

from assistant.desk.board import Row
from assistant.desk.followed import Followed
from assistant.desk.need import need_of
from assistant.desk.pictured import AttemptPieces, row_piece
from assistant.link.messages import Begun
from tests.bench.display import LIGHTS, faults, pages
from tests.desk.lab import demonstration, ready, stations
from tests.desk.pages import chromium

WINDOWS = {"1280": (1280, 900), "1920": (1920, 1080), "375": (375, 812), "320": (320, 256)}
LEAST_CONTRAST = 7

TIMES = 50


def cost():
    """Processor time of one entry in an attempt with 90 steps, a line each."""
    entries, plan, _ = demonstration("primary-and-secondary", "--mode", "check-off", "--seed", "2", "--typed")
    begun = Begun(station="Station 1", attempt="0" * 64, file="a.jsonl", plan=plan)
    began = time.process_time()
    watched = Followed.of(begun, entries[:-1])
    yield f"taken in: {1000 * (time.process_time() - began) / len(entries):.2f} ms\n"
    need = need_of(watched, silent_s=0, unheard_s=0)
    pieces = AttemptPieces()
    row = Row("Station 1", watched, need, 0, "", "", 0, sound=True)
    for name, draw in (("row", lambda _: row_piece(row, "both")), ("page", lambda seen: pieces.of(seen, need, (), ()))):
        draw(watched)
        later = [watched.with_entries([{"kind": "typed", "words": f"{count}"}]) for count in range(TIMES)]
        began = time.process_time()
        for seen in later:
            draw(seen)
        yield f"{name} drawn: {1000 * (time.process_time() - began) / TIMES:.1f} ms\n"


def main() -> int:
    """Take every picture; 1 where axe-core finds something, or a contrast is too low."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path, nargs="?", default=Path("pictures"))
    parser.add_argument("--cost", action="store_true", help="no pictures: processor time of one entry")
    parser.add_argument("--window", choices=WINDOWS, help="only this one")
    parser.add_argument("--light", choices=LIGHTS, help="only this one")
    given = parser.parse_args()
    if given.cost:
        sys.stdout.writelines(cost())
        return 0
    given.folder.mkdir(parents=True, exist_ok=True)
    found = []
    with (
        tempfile.TemporaryDirectory() as folder,
        stations(Path(folder), lab=("127.0.0.1", 0)) as lab,
        chromium() as browser,
    ):
        lab.filled()
        for light, window, page in pages(browser, WINDOWS, given):
            for name, address in lab.pages.items():
                page.goto(lab.address + address)
                ready(page)
                if name == "board":
                    page.keyboard.press("j")
                    page.keyboard.press("j")
                page.screenshot(path=given.folder / f"desk-{name}-{light}-{window}.png", full_page=True)
                found += faults(page, light, LEAST_CONTRAST, f"{name} {light} {window}")
    sys.stdout.write(f"{len(list(given.folder.glob('desk-*.png')))} pictures in {given.folder}\n")
    sys.stdout.writelines(f"{one}\n" for one in found)
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
