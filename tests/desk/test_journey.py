"""From the verb to the signature: the real desk, a real station with a simulated learner, and a browser."""

import os
import signal
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager

import pytest

from assistant.checklist.load import load
from assistant.orders.load import load_order
from assistant.orders.solve import answer_key
from assistant.record.verify import read_record
from tests import spoken_words, virtual_sound
from tests.attempt.spoken_learner import SpokenLearner, live
from tests.desk.pages import chromium
from tests.link.lab import LIMIT_S, station, until
from tests.report.attempts import run

pytestmark = pytest.mark.slow
VOICE_LIMIT_S = 100
CHECKLIST = """\
title = "A bag, looked at"
version = "1.0.0"
purpose = "Look at a bag before it is hung."
order = "oh-101"
cautions = ["For training only: no patient is treated."]
sources = ["common practice, no source"]

[[steps]]
id = "fluid"
part = "Bag"
say = "What fluid does the label name?"
why = "The wrong fluid is the wrong drug."
sources = ["common practice, no source"]
critical = true
expect = { kind = "name", key = "primary.fluid" }

[[steps]]
id = "squeeze"
part = "Bag"
say = "Squeeze the bag."
seen = true

[[steps]]
id = "hang"
part = "Bag"
say = "Hang the bag."
"""
"""A lab's own checklist, so short that nobody has to wait: one step has to be seen."""


def own_folders(folder):
    """Variables by which the program keeps everything in a folder."""
    return {
        "CHECKOFF_LINK": str(folder / "link"),
        "CHECKOFF_HEADS": str(folder / "heads-records"),
        "CHECKOFF_SETTINGS": str(folder / "settings.toml"),
    }


@contextmanager
def desk(folder, *options):
    """The verb as a process of its own; gives the address that it prints."""
    environment = {**os.environ, **own_folders(folder)}
    call = [sys.executable, "-m", "assistant", "desk", "--no-browser", "--records", folder / "records", *options]
    with subprocess.Popen(call, env=environment, stdout=subprocess.PIPE, text=True, bufsize=1) as program:
        try:
            yield program, program.stdout.readline().split()[-1]
        finally:
            program.send_signal(signal.SIGTERM)
            program.wait(LIMIT_S)


def started_from(browser, address):
    """The page of a check-off that was started from the desk's first page, as an instructor does it."""
    page = browser.new_page()
    page.set_default_timeout(1000 * LIMIT_S)
    page.goto(address)
    page.get_by_role("link", name="Start an attempt at bench-1").click()
    page.get_by_label("Learner's code").fill("A17")
    page.get_by_label("Checklist", exact=True).select_option("bag-looked-at")
    page.get_by_label("Check-off").check()
    page.get_by_role("button", name="Start", exact=True).click()
    page.get_by_role("link", name="bench-1 A17").click()
    return page


def test_started_watched_marked_and_signed(tmp_path, monkeypatch):
    """What the learner reports becomes seen by one press, the check-off passes, and the instructor's key signs it."""
    own = tmp_path / "own"
    own.mkdir()
    (own / "bag-looked-at.toml").write_text(CHECKLIST, encoding="utf-8")
    monkeypatch.setenv("CHECKOFF_CHECKLISTS", str(own))
    keys = tmp_path / "keys"
    run("key", "new", "lindqvist", "--no-passphrase", "--keys", keys)
    run("key", "trust", "lindqvist", "--name", "M. Lindqvist", "--role", "RN", "--keys", keys)
    with (
        desk(tmp_path, "--no-station", "--keys", str(keys)) as (program, address),
        station(tmp_path, "bench-1", pace=(0.1, 0.3)),
        chromium() as browser,
    ):
        page = started_from(browser, address)
        due = page.locator("#see > li[data-state=due]")
        due.get_by_role("button", name="Seen", exact=True).click()
        page.wait_for_selector("#see > li[data-state=seen]")
        page.wait_for_function("() => document.getElementById('now')?.innerText.includes('Passed')")
        page.get_by_role("link", name="Sign off").click()
        assert "Not seen by an instructor" not in page.locator("main").inner_text()
        page.get_by_label("Passed", exact=True).check()
        page.get_by_role("button", name="Sign").click()
        page.wait_for_function("() => document.getElementById('notice')?.textContent.includes('is signed: passed')")
        (path,) = (tmp_path / "records").glob("*.jsonl")
        entries = read_record(path).entries
        assert [entry["mark"] for entry in entries if entry["kind"] == "marked"] == ["seen"]
        assert next(entry["outcome"] for entry in entries if "seal" in entry) == "passed"
        assert (entries[-1]["kind"], entries[-1]["signer"]) == ("signed off", "M. Lindqvist, RN")
        assert program.poll() is None
    assert program.returncode == 0


MISSING = virtual_sound.missing_programs() + spoken_words.missing_programs()


@pytest.mark.sound
@pytest.mark.skipif(bool(MISSING), reason=f"not installed: {', '.join(MISSING)}")
def test_a_learner_who_speaks_is_marked_at_the_desk(tmp_path, monkeypatch):
    """Recogniser, voice and guide at the station, the marks from the desk: what was said passes once it was seen."""
    own = tmp_path / "own"
    own.mkdir()
    (own / "bag-looked-at.toml").write_text(CHECKLIST, encoding="utf-8")
    monkeypatch.setenv("CHECKOFF_CHECKLISTS", str(own))
    with (
        desk(tmp_path, "--no-station") as (_program, address),
        virtual_sound.virtual_sound() as sound,
        chromium() as browser,
        ThreadPoolExecutor() as beside,
    ):
        sound.environment |= own_folders(tmp_path) | {"CHECKOFF_CHECKLISTS": str(own)}
        learner = SpokenLearner(sound, load("bag-looked-at"), answer_key(load_order("oh-101")), {})
        command = ["station", "bench-1", "--json", "--ear", "trained", "--records", str(tmp_path / "records")]
        lived = beside.submit(live, command, sound, learner, VOICE_LIMIT_S, stays=True)
        page = started_from(browser, address)
        page.set_default_timeout(1000 * VOICE_LIMIT_S)
        due = page.locator("#see > li[data-state=due]")
        due.get_by_role("button", name="Seen", exact=True).click()
        page.wait_for_function("() => document.getElementById('now')?.innerText.includes('Passed')")
        code, last, console = lived.result()
    assert (code, last["outcome"]) == (0, "passed"), console
    (path,) = (tmp_path / "records").glob("*.jsonl")
    entries = read_record(path).entries
    assert [entry["mark"] for entry in entries if entry["kind"] == "marked"] == ["seen"]
    assert {entry["source"] for entry in entries if "words" in entry and entry["kind"] != "marked"} == {"voice"}


def test_the_desk_brings_its_own_station_and_takes_it_along(tmp_path):
    """Without further words this machine is a station; ended, nothing of it is left behind."""
    with desk(tmp_path, "--typed") as (_program, address), chromium() as browser:
        page = browser.new_page()
        page.set_default_timeout(1000 * LIMIT_S)
        page.goto(address)
        page.wait_for_selector("#rows > li")
        assert "this station" in page.locator("#rows").inner_text()
    until(lambda: not (tmp_path / "link" / "desk.json").exists(), "the address to be taken away")
    left = subprocess.run(["pgrep", "-f", str(tmp_path)], capture_output=True, text=True, check=False)
    assert left.stdout == ""
