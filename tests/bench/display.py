"""Pictures of the learner's display in every state, light and size of window, each looked at by axe-core.

Run it with ``python -m tests.bench.display FOLDER``, and look at each.
"""

import argparse
import sys
from pathlib import Path

from axe_playwright_python.sync_playwright import Axe

from tests.desk.pages import CONTRASTS, STATES, chromium, served, settled
from tests.report.test_browser import ALL_RULES

WINDOWS = {"1280": (1280, 800), "1920": (1920, 1080), "1024": (1024, 768), "375": (375, 812), "320": (320, 256)}
LIGHTS = {
    "light": {"color_scheme": "light"},
    "dark": {"color_scheme": "dark"},
    "contrast": {"color_scheme": "light", "contrast": "more"},
    "forced": {"forced_colors": "active"},
}
LEAST_CONTRAST = 12


def pages(browser, windows, given):
    """A page in each light and size of window that is wanted, with their names."""
    for light, media in LIGHTS.items():
        for window, (width, height) in windows.items():
            if given.light not in (None, light) or given.window not in (None, window):
                continue
            page = browser.new_page(viewport={"width": width, "height": height})
            page.emulate_media(**media)
            yield light, window, page
            page.close()


def faults(page, light, least_contrast, where):
    """What axe-core finds on a page (A to AAA, best practice), and a contrast that is too low, a line each."""
    told = Axe().run(page, options=ALL_RULES).response["violations"]
    yield from (f"{where}: {one['id']}" for one in told)
    if light != "forced" and min(page.evaluate(CONTRASTS)) < least_contrast:  # the system's colours are its own
        yield f"{where}: contrast"


def main() -> int:
    """Take every picture; 1 where axe-core finds something, or a contrast is too low."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--window", choices=WINDOWS, help="only this one")
    parser.add_argument("--light", choices=LIGHTS, help="only this one")
    given = parser.parse_args()
    given.folder.mkdir(parents=True, exist_ok=True)
    found: list[str] = []
    with chromium() as browser, served() as (display, server):
        for light, window, page in pages(browser, WINDOWS, given):
            display.put(STATES["starting"])  # a page that opens on the end asks for nothing further
            page.goto(server.address)
            for name, shown in STATES.items():
                display.put(shown)
                settled(page, shown)
                found += faults(page, light, LEAST_CONTRAST, f"{name} {light} {window}")
                page.screenshot(path=given.folder / f"{name}-{light}-{window}.png", full_page=True)
    sys.stdout.write(f"{len(list(given.folder.glob('*.png')))} pictures in {given.folder}\n")
    sys.stdout.writelines(f"{line}\n" for line in found)
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
