"""Pictures of the learner's display in every state, light and size of window.

Run it with ``python -m tests.bench.display FOLDER``, and look at each.
"""

import argparse
import sys
from pathlib import Path

from tests.desk.pages import STATES, chromium, served, settled

WINDOWS = {"1280": (1280, 800), "1920": (1920, 1080), "1024": (1024, 768), "375": (375, 812), "320": (320, 256)}
LIGHTS = {
    "light": {"color_scheme": "light"},
    "dark": {"color_scheme": "dark"},
    "contrast": {"color_scheme": "light", "contrast": "more"},
    "forced": {"forced_colors": "active"},
}


def main() -> int:
    """Take every picture."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--window", choices=WINDOWS, help="only this one")
    parser.add_argument("--light", choices=LIGHTS, help="only this one")
    given = parser.parse_args()
    given.folder.mkdir(parents=True, exist_ok=True)
    with chromium() as browser, served() as (display, server):
        for light, media in LIGHTS.items():
            for window, (width, height) in WINDOWS.items():
                if given.light not in (None, light) or given.window not in (None, window):
                    continue
                page = browser.new_page(viewport={"width": width, "height": height})
                page.emulate_media(**media)
                page.goto(server.address)
                for name, shown in STATES.items():
                    display.put(shown)
                    settled(page, shown)
                    page.screenshot(path=given.folder / f"{name}-{light}-{window}.png", full_page=True)
                page.close()
    sys.stdout.write(f"{len(list(given.folder.glob('*.png')))} pictures in {given.folder}\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
