"""The main job on real sound: microphone, recogniser, guide, voice, record, and not one keystroke."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from assistant.checklist.load import load
from assistant.orders.load import load_order
from assistant.orders.solve import answer_key
from assistant.record.verify import read_entries, verify
from tests import spoken_words, virtual_sound
from tests.attempt import by_voice
from tests.attempt.library import NOISY_LAB
from tests.attempt.spoken_learner import SpokenLearner, live
from tests.recorded_words import Mouth, missing_recordings

_MISSING = virtual_sound.missing_programs() + spoken_words.missing_programs() + missing_recordings()
pytestmark = [
    pytest.mark.sound,
    pytest.mark.slow,
    pytest.mark.skipif(bool(_MISSING), reason=f"not installed: {', '.join(_MISSING)}"),
]

LIMIT_S = 600


@pytest.mark.timeout(LIMIT_S + 60)
def test_a_whole_attempt_by_voice_alone(tmp_path):
    """By ear and mouth from order to chart: a wrong rate is held and corrected, "again" and "correct that" work.

    Numbers, yes and no are said as they were recorded of people. Primary and piggyback in one sitting take twice as
    long: ``python -m tests.attempt.by_voice primary-and-secondary``.
    """
    checklist = load("primary-line")
    key = answer_key(load_order("oh-101"))
    first = {
        "p-order": ["faster"],
        "p-inspect": ["again"],
        "p-clamp-closed": ["not yet", "okay", "is it done"],
        "p-chamber": ["hang on", "almost done"],
        "p-rate": ["125 mL/h"],
        "p-identify": ["correct that"],
    }
    settings = tmp_path / "settings.toml"
    settings.write_text("[sound]\nrate = 3\n")  # the attempt is long enough
    with virtual_sound.virtual_sound() as sound:
        sound.environment["CHECKOFF_SETTINGS"] = str(settings)
        learner = SpokenLearner(sound, checklist, key, first, Mouth.of_this_machine().write_words)
        code, last, console = live(
            [
                *("run", "primary-line", "--order", "oh-101", "--voice", "--json", "--short-waits"),
                *("--ear", "trained", "--learner", "A17", "--records", str(tmp_path)),
            ],
            sound,
            learner,
            LIMIT_S,
        )
    record = Path(last["record"])
    assert code == 0, (last, console)
    assert last["outcome"] == "passed"
    assert verify(record).ok

    # The wrong rate was held, and named, before the right one was kept.
    results = {line["id"]: line for line in last["results"]["steps"]}
    rate = results["p-rate"]
    assert (rate["first"], rate["final"], rate["ending"]) == ("125 mL/h", "83.3 mL/h", "corrected by the learner")
    assert any("125" in text for text in learner.heard.of("hold"))
    # The correction is an entry of its own beside the first answer.
    entries = read_entries(record)
    volumes = [entry["kept"] for entry in entries if entry.get("step") == "p-vtbi" and "kept" in entry]
    assert volumes == ["950 mL", "950 mL"]
    assert results["p-vtbi"]["ending"] == "corrected by the learner"
    # "again" said the step once more and disturbed nothing.
    said = [text for text in learner.heard.of("step") if checklist.step("p-inspect").say in text]
    assert len(said) == 2
    # Whoever hesitates, asks and acknowledges closes nothing by it, and ends as if it had not been said.
    for step, closing in (("p-clamp-closed", {"done", "yes"}), ("p-chamber", {"done", "yes"})):
        answers = [entry for entry in entries if entry.get("step") == step and "words" in entry]
        assert len(answers) >= 3
        assert [entry["input"] in closing for entry in answers] == [*[False] * (len(answers) - 1), True]
    assert results["p-inspect"]["ending"] == "done unaided"
    # Nothing else was touched, and no wrong number was kept.
    disturbed = {name for name, line in results.items() if line["ending"] not in ("done unaided", "not applicable")}
    assert disturbed == {"p-rate", "p-vtbi"}
    kept = {(entry["step"], entry["kept"]) for entry in entries if "kept" in entry}
    wrong = {pair for pair in kept if results[pair[0]]["final"] != pair[1]}
    assert wrong == {("p-rate", "125 mL/h")}
    # Every answer came by voice.
    assert {entry["source"] for entry in entries if "words" in entry} == {"voice"}
    # The report of the record says the same.
    report = subprocess.run(
        [sys.executable, "-m", "assistant", "report", str(record), "--json"], capture_output=True, text=True, check=True
    )
    assert json.loads(report.stdout)["results"] == last["results"]


@pytest.mark.timeout(LIMIT_S + 60)
def test_an_attempt_while_others_talk(capsys):
    """Four people talk without a break, 10 dB below the learner: it is passed, and no wrong number is kept unasked.

    A whole procedure takes twice as long: ``python -m tests.attempt.by_voice saline-lock --babble 10``.
    """
    passed = by_voice.run(str(NOISY_LAB), "", talk=True, people=True, babble_db=10)
    assert passed, capsys.readouterr().out


def _wait_for(lines, wanted: str) -> list[dict]:
    """Lines of the program up to the one that says `wanted`."""
    seen = []
    for line in lines:
        seen.append(json.loads(line))
        if wanted in seen[-1].get("say", "") or (wanted == "listening" and seen[-1].get("listening")):
            return seen
    raise AssertionError(f"nothing said {wanted!r}: {seen[-10:]}")


@pytest.mark.timeout(240)
def test_a_pulled_microphone_changes_nothing_but_the_way_in(tmp_path):
    """Pulled in the middle: one sentence, the keyboard takes over, and voice is back with the plug."""
    steps = load("primary-line").steps
    order, allergies = (step.expect.right for step in steps[:2])
    with virtual_sound.virtual_sound() as sound:
        command = [
            *(sys.executable, "-m", "assistant", "run", "primary-line", "--voice", "--json"),
            *("--ear", "trained", "--records", str(tmp_path)),
        ]
        pipe = subprocess.PIPE
        with subprocess.Popen(
            command, env=sound.environment, stdin=pipe, stdout=pipe, stderr=subprocess.DEVNULL, text=True
        ) as running:
            try:
                _wait_for(running.stdout, "listening")
                sound.pull_microphone()
                _wait_for(running.stdout, "I cannot hear you any more")
                running.stdin.write(f"{order}\n")
                running.stdin.flush()
                _wait_for(running.stdout, f"Step 2 of {len(steps)}")
                sound.plug_in_microphone()
                _wait_for(running.stdout, "I can hear you again")
                _wait_for(running.stdout, "listening")
                file = sound.folder / "answer.wav"
                spoken_words.write_words("slt", allergies, file)
                sound.play(file)
                _wait_for(running.stdout, f"Step 3 of {len(steps)}")
                running.stdin.write("stop\nyes\n")
                running.stdin.close()
                running.stdout.read()
            except BaseException:
                running.kill()  # else it waits for words, and leaving here waits for it
                raise
    (record,) = tmp_path.glob("*.jsonl")
    assert running.returncode == 4
    assert verify(record).intact
    answers = [(entry["source"], entry["words"]) for entry in read_entries(record) if "words" in entry]
    assert answers == [("typed", order), ("voice", allergies), ("typed", "stop"), ("typed", "yes")]
