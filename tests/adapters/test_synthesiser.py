"""Text to samples in a worker process: deadlines, restarts, memory."""

import os
import shutil
import signal
import sys
import threading
import time
from pathlib import Path

import numpy as np
import pytest

from assistant.adapters.speaking_process import SynthesisCancelledError
from assistant.adapters.synthesiser import Speech, Synthesiser, _Memory
from assistant.errors import DeviceError

# A worker in the place of the real one: answers after the real one's protocol, or misbehaves on certain words.
WORKER = r"""
import json, sys, time, wave
from pathlib import Path
folder = Path(sys.argv[1])
def reply(error=""):
    print(json.dumps({"error": error}), flush=True)
if (folder / "no-engine").exists():
    reply("libespeak-ng.so.1 cannot be opened")
    raise SystemExit
reply()
for line in sys.stdin:
    request = json.loads(line)
    text = request["text"]
    (folder / "asked").open("a").write(text + "\n")
    if "hang" in text or ("once" in text and (folder / "asked").read_text().count("once") == 1):
        time.sleep(60)
    if "late" in text:
        time.sleep(0.5)
    if "die" in text:
        raise SystemExit
    if "refuse" in text:
        reply("no such voice")
        continue
    if "nothing" not in text:
        with wave.open(request["file"], "wb") as out:
            out.setnchannels(1)
            out.setsampwidth(2)
            out.setframerate(16000)
            sound = b"" if "empty" in text else bytes([0, 32]) * request["rate"] * 10
            out.writeframes(bytes(3200) + sound + bytes(16000))
    reply()
"""


@pytest.fixture
def make(tmp_path):
    script = tmp_path / "worker.py"
    script.write_text(WORKER)
    made = []

    def start(limit_s=0.3):
        # As it comes: the samples that are counted are the worker's.
        made.append(Synthesiser((sys.executable, str(script), str(tmp_path)), limit_s, is_clearer=False))
        return made[-1]

    yield start
    for synthesiser in made:
        synthesiser.close()


def asked(folder: Path) -> list[str]:
    return (folder / "asked").read_text().splitlines()


def test_sentence_becomes_trimmed_samples(make):
    """A sentence comes as samples at the chosen speed, without the silence at its ends."""
    speech = make(5).synthesise("Close the roller clamp.", 1)
    assert speech.rate_hz == 16_000
    assert np.count_nonzero(speech.samples) == 190 * 10
    assert speech.length_s == pytest.approx(190 * 10 / 16_000 + 0.085, abs=0.001)


def test_recurring_sentence_is_remembered(make, tmp_path):
    """The same sentence at the same speed is not synthesised again; at another speed it is."""
    synthesiser = make(5)
    first = synthesiser.synthesise("Yes or no?")
    assert synthesiser.synthesise("Yes or no?") is first
    assert len(synthesiser.synthesise("Yes or no?", -2).samples) < len(first.samples)
    assert asked(tmp_path) == ["Yes or no?"] * 2


@pytest.mark.parametrize("text", ["", " ", "...", "-\n"])
def test_nothing_to_say_is_no_sound(make, text):
    """Text without a letter or digit makes no sound and bothers no engine, which would not answer."""
    assert len(make().synthesise(text).samples) == 0


def test_worker_that_hangs_once_is_replaced(make, tmp_path):
    """A sentence that does not come in time is asked for once more, from a new worker."""
    assert len(make(1.0).synthesise("once").samples) > 0
    assert asked(tmp_path) == ["once"] * 2


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("hang", "it does not answer"),
        ("die", "it has ended"),
        ("refuse", "no such voice"),
        ("nothing", "it wrote no sound"),
        ("empty", "it wrote no sound"),
    ],
)
def test_worker_that_fails_twice_is_an_error(make, tmp_path, text, reason):
    """Two failures are one sentence to the user; the next sentence gets a new worker and is spoken."""
    synthesiser = make()
    with pytest.raises(DeviceError, match=f"^The speech synthesiser fails: {reason}. "):
        synthesiser.synthesise(text)
    assert asked(tmp_path) == [text] * 2
    assert len(synthesiser.synthesise("Better now.").samples) > 0


def test_missing_engine_tells_how_to_get_it(make, tmp_path):
    """Without an engine the error says so and how to get one; when it is there, it is used."""
    (tmp_path / "no-engine").touch()
    synthesiser = make(5)
    for _ in range(2):
        with pytest.raises(DeviceError) as caught:
            synthesiser.synthesise("Hello.")
        assert caught.value.what == ("This machine has no speech synthesiser: libespeak-ng.so.1 cannot be opened.")
        assert sys.platform != "linux" or "espeak-ng" in caught.value.remedy
    (tmp_path / "no-engine").unlink()
    assert len(synthesiser.synthesise("Hello.").samples) > 0


def test_python_that_is_not_there(tmp_path):
    """A worker that cannot even be started is told like a missing engine."""
    synthesiser = Synthesiser((str(tmp_path / "no-such-program"),))
    with pytest.raises(DeviceError, match="cannot be started"):
        synthesiser.synthesise("Hello.")
    synthesiser.close()


def test_cancelled_sentence_is_given_up_at_once(make):
    """Nobody waits for a sentence that was hushed; the late answer is not taken for the next sentence."""
    synthesiser = make(30)
    hushed = threading.Event()
    threading.Timer(0.2, hushed.set).start()
    with pytest.raises(SynthesisCancelledError):
        synthesiser.synthesise("late", 4, hushed.is_set)
    assert np.count_nonzero(synthesiser.synthesise("next", 0).samples) == 165 * 10


def test_closing_ends_a_wait(make):
    """Closing from another thread ends a wait for a worker that hangs."""
    synthesiser = make(30)
    threading.Timer(0.2, synthesiser.close).start()
    with pytest.raises(SynthesisCancelledError):
        synthesiser.synthesise("hang")


def test_nobody_waits_for_another_sentence(make):
    """While one sentence hangs, another one is made; the same one is made once, for all who wait for it."""
    synthesiser = make(30)
    found = []
    given_up = threading.Event()

    def speak(text):
        try:
            found.append((text, synthesiser.synthesise(text, 0, given_up.is_set).length_s))
        except SynthesisCancelledError:
            found.append((text, None))

    hung = [threading.Thread(target=speak, args=("hang",)) for _ in range(2)]
    for thread in hung:
        thread.start()
    speak("late")
    assert [text for text, _ in found] == ["late"]
    given_up.set()
    for thread in hung:
        thread.join(10)
    assert found[1:] == [("hang", None)] * 2


def test_the_same_sentence_is_made_once(make, tmp_path):
    """Two who want the same sentence at the same time get the same sound from one engine."""
    synthesiser = make(30)
    found = []
    threads = [threading.Thread(target=lambda: found.append(synthesiser.synthesise("late"))) for _ in range(3)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(10)
    assert len(found) == 3
    assert len({id(speech) for speech in found}) == 1
    assert asked(tmp_path) == ["late"]


def test_memory_is_bounded():
    """The memory keeps what was used last, and never more than its limit."""
    memory = _Memory(limit_bytes=1_000)
    for number in range(5):
        memory.put((str(number), 0), Speech(np.zeros(150, np.int16), 16_000))  # 300 bytes
        memory.get(("0", 0))
    assert [memory.get((str(number), 0)) is not None for number in range(5)] == [True, False, False, True, True]
    memory.put(("long", 0), Speech(np.zeros(1_000, np.int16), 16_000))
    assert all(memory.get((name, 0)) is None for name in ("0", "4", "long"))


@pytest.mark.sound
@pytest.mark.skipif(shutil.which("espeak-ng") is None, reason="espeak-ng is not installed")
def test_real_engine_speaks_slower_and_faster():
    """The machine's own voice speaks, longer at a slower step and shorter at a faster one."""
    synthesiser = Synthesiser()
    try:
        lengths = [
            synthesiser.synthesise("Close the roller clamp before you spike the bag.", rate).length_s
            for rate in (-4, 0, 4)
        ]
        assert lengths == sorted(lengths, reverse=True)
        assert 1.5 < lengths[1] < 6
        assert np.abs(synthesiser.synthesise("Yes.").samples.astype(int)).max() > 3_000
    finally:
        synthesiser.close()


@pytest.mark.sound
@pytest.mark.skipif(shutil.which("espeak-ng") is None, reason="espeak-ng is not installed")
def test_real_worker_ends_with_the_program(tmp_path):
    """A program that is killed leaves no worker behind."""
    import subprocess

    script = (
        "from assistant.adapters.synthesiser import Synthesiser; s = Synthesiser();"
        "print(s._workers.numbers()[0], flush=True); import time; time.sleep(60)"
    )
    program = subprocess.Popen([sys.executable, "-c", script], stdout=subprocess.PIPE, text=True)
    worker = int(program.stdout.readline())
    program.kill()
    program.wait()
    program.stdout.close()
    deadline = time.monotonic() + 30
    while _is_running(worker):
        assert time.monotonic() < deadline
        time.sleep(0.05)


@pytest.mark.sound
@pytest.mark.skipif(shutil.which("espeak-ng") is None, reason="espeak-ng is not installed")
def test_real_engine_that_stands_still_is_replaced():
    """A worker that is stopped by the system costs the sentence its deadline, no more, and is gone afterwards."""
    synthesiser = Synthesiser(sentence_limit_s=0.5)
    try:
        (number,) = synthesiser._workers.numbers()
        assert synthesiser.synthesise("Close the roller clamp.").length_s > 0.5
        deadline = time.monotonic() + 30
        while len(stopped := synthesiser._workers.numbers()) < 2:
            assert time.monotonic() < deadline
            time.sleep(0.01)
        os.kill(stopped[0], signal.SIGSTOP)
        assert synthesiser.synthesise("Open the roller clamp.").length_s > 0.5
        while _is_running(number) or _is_running(stopped[0]):
            assert time.monotonic() < deadline
            time.sleep(0.05)
    finally:
        synthesiser.close()


def _is_running(number: int) -> bool:
    status = Path(f"/proc/{number}/status")
    try:
        return "State:\tZ" not in status.read_text()
    except OSError:
        return False


@pytest.mark.sound
@pytest.mark.skipif(shutil.which("espeak-ng") is None, reason="espeak-ng is not installed")
def test_real_engine_gives_whole_sentences_under_load():
    """Many at once, on a machine that is busy: each sentence is whole, and its own."""
    sentences = [f"The rate is {number} millilitres an hour." for number in ("fifteen", "fifty", "one point five")]
    synthesisers = [Synthesiser() for _ in range(4)]
    found: list[tuple[str, bytes]] = []

    def speak(synthesiser: Synthesiser) -> None:
        for sentence in sentences:
            found.append((sentence, synthesiser.synthesise(sentence).samples.tobytes()))

    threads = [threading.Thread(target=speak, args=(synthesiser,)) for synthesiser in synthesisers]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(60)
    for synthesiser in synthesisers:
        synthesiser.close()
    assert len(found) == 12
    lengths = {(sentence, len(sound)) for sentence, sound in found}
    assert len(lengths) == 3, lengths
    assert len(set(found)) == 3
