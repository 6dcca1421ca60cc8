"""The model store: adding from files, folders and addresses, and what never gets in."""

import contextlib
import hashlib
import http.server
import io
import os
import stat
import tarfile
import threading
import zipfile
from pathlib import Path

import pytest

from assistant.adapters import fetch, models
from assistant.adapters.fetch import Expected, Limits
from assistant.adapters.models import Engine
from assistant.cli.main import main
from assistant.errors import ModelError

VOSK_FILES = {
    "am/final.mdl": b"model" * 100,
    "graph/words.txt": b"<eps> 0\none 1\nseven 2\nthirty 3\nhundred 4\n",
    "conf/model.conf": b"--min-active=200\n",
}
NAME = "vosk-model-small-en-us-0.15"


def zipped(files=VOSK_FILES, top=f"{NAME}/", **options):
    raw = io.BytesIO()
    with zipfile.ZipFile(raw, "w", zipfile.ZIP_DEFLATED, **options) as archive:
        for name, content in files.items():
            archive.writestr(f"{top}{name}", content)
    return raw.getvalue()


def tarred(files=VOSK_FILES, top=f"{NAME}/", mode="w:gz", extra=()):
    raw = io.BytesIO()
    with tarfile.open(fileobj=raw, mode=mode) as archive:
        for name, content in files.items():
            member = tarfile.TarInfo(f"{top}{name}")
            member.size = len(content)
            archive.addfile(member, io.BytesIO(content))
        for member in extra:
            archive.addfile(member)
    return raw.getvalue()


def link(name, target, kind=tarfile.SYMTYPE):
    member = tarfile.TarInfo(name)
    member.type, member.linkname = kind, target
    return member


def zip_with_link():
    raw = io.BytesIO(zipped())
    with zipfile.ZipFile(raw, "a") as archive:
        member = zipfile.ZipInfo(f"{NAME}/passwd")
        member.external_attr = (stat.S_IFLNK | 0o777) << 16
        archive.writestr(member, "/etc/passwd")
    return raw.getvalue()


@pytest.fixture
def folder(tmp_path):
    return tmp_path / "models"


def saved(tmp_path, content, name=f"{NAME}.zip"):
    path = tmp_path / name
    path.write_bytes(content)
    return str(path)


def left_over(folder):
    """What lies in the models folder, the lock apart."""
    return sorted(path.name for path in folder.iterdir() if path.name != ".lock") if folder.exists() else []


@pytest.mark.parametrize(
    ("content", "file"),
    [
        (zipped(), f"{NAME}.zip"),
        (zipped(top=""), f"{NAME}.zip"),
        (zipped(top=f"download/{NAME}/"), "other.zip"),
        (tarred(), f"{NAME}.tar.gz"),
        (tarred(top="./", mode="w:xz"), f"{NAME}.tar.xz"),
        (tarred(mode="w"), "no-suffix"),
    ],
)
def test_adds_an_archive(tmp_path, folder, content, file):
    """Zip or tar, with its folder inside or without: the same model comes out, with its digests."""
    model = fetch.add(saved(tmp_path, content, file), folder)
    assert (model.name, model.engine, model.path) == (NAME, Engine.VOSK, folder / NAME)
    found = {name: (model.path / name).read_bytes() for name in VOSK_FILES}
    assert found == VOSK_FILES
    assert models.stored(folder) == (model,)
    assert models.check(model).is_whole
    assert left_over(folder) == ["manifest.json", NAME]
    expected = {name: hashlib.sha256(content).hexdigest() for name, content in VOSK_FILES.items()}
    assert models.read_manifest(folder).models == {NAME: expected}


def test_adds_a_folder_and_a_second_model(tmp_path, folder):
    """A folder is copied; the digests of an earlier model stay."""
    fetch.add(saved(tmp_path, zipped()), folder)
    source = tmp_path / "whisper-base.en"
    source.mkdir()
    for name in ("model.bin", "tokenizer.json", "config.json"):
        (source / name).write_bytes(name.encode())
    model = fetch.add(str(source), folder, name="mine")
    assert (model.name, model.engine) == ("mine", Engine.WHISPER)
    assert source.is_dir()
    assert set(models.read_manifest(folder).models) == {NAME, "mine"}


BOMB = zipped({"am/final.mdl": bytes(40_000_000), "graph/words.txt": b"x"})
SMALL = Limits(fetched=1_000_000, unpacked=1_000_000, files=20)


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"", "neither a zip nor a tar"),
        (b"PK\x03\x04 but no more", "neither a zip nor a tar"),
        (b"<html>Not found</html>", "neither a zip nor a tar"),
        (zipped()[:-200], "neither a zip nor a tar"),
        (tarred()[:60], "damaged"),
        (zipped().replace(b"am/final.mdl", b"am/final.mdL", 1), "damaged"),
        (zipped({"readme.txt": b"hello"}), "holds neither"),
        (zipped(VOSK_FILES | {"../outside.txt": b"x"}), "not safe"),
        (zipped(VOSK_FILES | {"x/../../../outside.txt": b"x"}), "not safe"),
        (zipped(VOSK_FILES | {"..\\outside.txt": b"x"}), "not safe"),
        (zipped({"/outside.txt": b"x"}, top=""), "not safe"),
        (zipped({"C:/outside.txt": b"x"}, top=""), "not safe"),
        (zipped(VOSK_FILES | {"bell\x07.txt": b"x"}), "not safe"),
        (zip_with_link(), "link"),
        (tarred(extra=[link(f"{NAME}/passwd", "/etc/passwd")]), "link"),
        (tarred(extra=[link(f"{NAME}/hard", "/etc/passwd", tarfile.LNKTYPE)]), "link"),
        (tarred(extra=[link(f"{NAME}/pipe", "", tarfile.FIFOTYPE)]), "link or a device"),
        (tarred(extra=[link(f"{NAME}/null", "", tarfile.CHRTYPE)]), "link or a device"),
        (BOMB, "unpacks to more than"),
        (tarred({"am/final.mdl": bytes(40_000_000)}), "unpacks to more than"),
        (zipped({f"{n}.txt": b"" for n in range(30)}), "unpacks to more than"),
        (zipped({f"{n}/": b"" for n in range(30)}), "unpacks to more than"),
        (zipped({f"{'a/' * 30}x.txt": b""}), "unpacks to more than"),
        (zipped({f"{n}/{name}": c for n in "ab" for name, c in VOSK_FILES.items()}), "more than one model"),
    ],
    ids=lambda given: given if isinstance(given, str) else "archive",  # an archive holds the time when it was made
)
def test_refuses_an_archive(tmp_path, folder, content, sentence):
    """What is damaged, leads outside, links, bursts or holds no model leaves nothing behind."""
    with pytest.raises(ModelError, match=sentence) as raised:
        fetch.add(saved(tmp_path, content), folder, limits=SMALL)
    assert raised.value.remedy
    assert left_over(folder) == []
    assert sorted(path.name for path in tmp_path.iterdir()) == ["models", f"{NAME}.zip"]


def test_what_a_killed_unpacking_left_is_cleared_up(tmp_path, folder):
    """Nobody else unpacks while the lock is held: what lies there is nobody's."""
    left = folder / ".adding-killed" / "unpacked"
    left.mkdir(parents=True)
    (left / "final.mdl").write_bytes(b"x")
    fetch.add(saved(tmp_path, zipped()), folder)
    assert left_over(folder) == ["manifest.json", NAME]


def test_refuses_a_folder_with_a_link(tmp_path, folder):
    """A link in a folder is refused like one in an archive."""
    source = tmp_path / "source"
    (source / "am").mkdir(parents=True)
    (source / "graph").mkdir()
    (source / "am" / "final.mdl").symlink_to("/etc/passwd")
    with pytest.raises(ModelError, match="link"):
        fetch.add(str(source), folder)
    assert left_over(folder) == []


def test_refuses_a_name_that_is_taken(tmp_path, folder):
    """A model is never replaced unasked; under another name both stay."""
    archive = saved(tmp_path, zipped())
    fetch.add(archive, folder)
    with pytest.raises(ModelError, match="already"):
        fetch.add(archive, folder)
    assert fetch.add(archive, folder, name="second").path.is_dir()


@pytest.mark.parametrize("name", ["..", "a/b", "", ".hidden", "x" * 200, "a\nb"])
def test_refuses_a_name_that_is_none(tmp_path, folder, name):
    """A name becomes a folder, so it cannot be just anything."""
    with pytest.raises(ModelError, match="cannot be the name"):
        fetch.add(saved(tmp_path, zipped()), folder, name=name)


def test_refuses_what_is_not_there(folder):
    """Neither file nor folder nor address: one sentence."""
    for source in ("nowhere.zip", "ftp://127.0.0.1/model.zip", "file:///etc/passwd"):
        with pytest.raises(ModelError, match="neither a file"):
            fetch.add(source, folder)


def test_a_folder_that_cannot_be_written(tmp_path):
    """A models folder that is a file is one sentence, not a traceback."""
    (tmp_path / "models").write_text("")
    with pytest.raises(ModelError, match="could not be written"):
        fetch.add(saved(tmp_path, zipped()), tmp_path / "models")


@pytest.mark.parametrize(
    ("expected", "sentence"),
    [
        (Expected(sha256="0" * 64), "SHA-256"),
        (Expected(size=5), "bytes and not 5"),
    ],
)
def test_refuses_another_file_than_expected(tmp_path, folder, expected, sentence):
    """A digest or a size that does not fit stops before anything is unpacked."""
    with pytest.raises(ModelError, match=sentence):
        fetch.add(saved(tmp_path, zipped()), folder, expected)
    assert left_over(folder) == []


class Server:
    """Files on the loopback address, with faults on demand; notes what it was asked."""

    def __init__(self, content):
        self.content = content
        self.breaks = []
        self.status = 200
        self.location = None
        self.tells_length = True
        self.ranges = []
        outer = self

        class Answers(http.server.BaseHTTPRequestHandler):
            def do_GET(self):
                outer.ranges.append(self.headers.get("Range"))
                if outer.location and self.path != "/moved.zip":
                    self.send_response(302)
                    self.send_header("Location", outer.location)
                    self.end_headers()
                    return
                start = int((self.headers.get("Range") or "bytes=0-")[6:-1])
                body = outer.content[start:]
                self.send_response(206 if start else outer.status)
                self.send_header("ETag", '"one"')
                if outer.tells_length:
                    self.send_header("Content-Length", str(len(body)))
                self.end_headers()
                if outer.breaks:
                    body = body[: outer.breaks.pop(0)]
                with contextlib.suppress(ConnectionError):  # the other side may have had enough
                    self.wfile.write(body)

            def log_message(self, *args):
                pass

        self.http = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Answers)
        self.address = f"http://127.0.0.1:{self.http.server_port}/{NAME}.zip"
        threading.Thread(target=self.http.serve_forever, args=(0.01,), daemon=True).start()


@pytest.fixture
def server(monkeypatch):
    for name in ("http_proxy", "HTTP_PROXY", "all_proxy", "ALL_PROXY"):
        monkeypatch.delenv(name, raising=False)
    started = Server(zipped(VOSK_FILES | {"big.bin": os.urandom(600_000)}))
    yield started
    started.http.shutdown()
    started.http.server_close()


def test_fetches_a_whole_file(server, folder):
    """An address is fetched, checked and added; progress ends at the whole size."""
    seen = []
    digest = hashlib.sha256(server.content).hexdigest()
    expected = Expected(digest.upper(), len(server.content))
    model = fetch.add(server.address, folder, expected, progress=lambda *how_far: seen.append(how_far))
    assert model.name == NAME
    assert models.check(model).is_whole
    assert seen[-1] == (len(server.content), len(server.content))
    assert left_over(folder) == ["manifest.json", NAME]


def test_fetches_without_a_known_length(server, folder):
    """A server that does not tell the length is trusted up to the archive's own end."""
    server.tells_length = False
    assert fetch.add(server.address, folder).name == NAME


def test_takes_up_a_broken_connection_where_it_broke(server, folder):
    """Two breaks, then the rest: each byte is fetched once, and the archive is whole."""
    server.breaks = [300_000, 100_000]
    model = fetch.add(server.address, folder, Expected(hashlib.sha256(server.content).hexdigest()))
    assert models.check(model).is_whole
    assert server.ranges == [None, "bytes=300000-", "bytes=400000-"]


def test_gives_up_on_a_connection_that_always_breaks(server, folder):
    """After the last try there is one sentence, and nothing is left behind."""
    server.breaks = [1_000] * fetch.TRIES
    with pytest.raises(ModelError, match="broke off"):
        fetch.add(server.address, folder)
    assert len(server.ranges) == fetch.TRIES
    assert left_over(folder) == []


def test_an_aborted_fetch_leaves_nothing(server, folder):
    """Interrupting, as with Ctrl-C, leaves the models folder as it was."""

    def interrupt(done, total):
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        fetch.add(server.address, folder, progress=interrupt)
    assert left_over(folder) == []


@pytest.mark.parametrize(
    ("fault", "sentence"),
    [
        ({"status": 404}, "server says 404"),
        ({"status": 500}, "server says 500"),
        ({"location": "file:///etc/passwd"}, "could not be fetched"),
        ({"content": b"<html>Sign in first</html>"}, "neither a zip nor a tar"),
        ({"content": bytes(2_000_000)}, "larger than"),
        ({"content": bytes(2_000_000), "tells_length": False}, "larger than"),
    ],
)
def test_refuses_what_comes_from_an_address(server, folder, fault, sentence):
    """Errors of a server, a way onto this machine's own disk, wrong or endless files: one sentence each."""
    for name, value in fault.items():
        setattr(server, name, value)
    with pytest.raises(ModelError, match=sentence):
        fetch.add(server.address, folder, limits=SMALL)
    assert left_over(folder) == []


def test_follows_to_another_address(server, folder):
    """A server may send on to another http address."""
    server.location = server.address.replace(f"{NAME}.zip", "moved.zip")
    assert fetch.add(server.address, folder).name == NAME


def test_nobody_listens(folder, server):
    """An address at which nobody answers is one sentence."""
    server.http.shutdown()
    server.http.server_close()
    with pytest.raises(ModelError, match="could not be fetched"):
        fetch.add(server.address, folder)


@pytest.mark.parametrize(
    ("spoil", "told"),
    [
        (lambda place: (place / "am/final.mdl").write_bytes(b"other"), "changed am/final.mdl"),
        (lambda place: (place / "conf/model.conf").unlink(), "missing conf/model.conf"),
        (lambda place: (place / "conf/more.conf").write_bytes(b""), "extra conf/more.conf"),
    ],
)
def test_check_names_what_has_changed(tmp_path, folder, capsys, spoil, told):
    """`models check` tells which files are not what they were, and exits 1."""
    model = fetch.add(saved(tmp_path, zipped()), folder)
    assert main(["models", "check", NAME, "--models", str(folder)]) == 0
    spoil(model.path)
    assert main(["models", "check", NAME, "--models", str(folder)]) == 1
    assert told in capsys.readouterr().out


def test_check_of_a_model_that_was_put_there_by_hand(tmp_path, folder, capsys):
    """Without digests nothing is known, and that is said."""
    fetch.add(saved(tmp_path, zipped()), folder)
    (folder / models.MANIFEST).unlink()
    assert main(["models", "check", NAME, "--models", str(folder)]) == 1
    assert "no digests are known" in capsys.readouterr().out


def test_a_damaged_manifest_is_one_sentence(tmp_path, folder, capsys):
    """A manifest that is none stops the check, with what to do."""
    fetch.add(saved(tmp_path, zipped()), folder)
    (folder / models.MANIFEST).write_text('{"models": 5}')
    assert main(["models", "check", NAME, "--models", str(folder)]) == 1
    assert "not a list of model digests" in capsys.readouterr().err


def test_verb_add_and_list(tmp_path, folder, capsys):
    """The verb adds a model, and then lists it with its part: beside the bundled recogniser, where that is there."""
    digest = hashlib.sha256(zipped()).hexdigest()
    archive = saved(tmp_path, zipped())
    assert main(["models", "add", archive, "--sha256", digest, "--models", str(folder)]) == 0
    assert f"Added {NAME}" in capsys.readouterr().out
    assert main(["models", "list", "--models", str(folder)]) == 0
    listed = dict(line.split("  ", 1) for line in capsys.readouterr().out.splitlines())
    assert listed[NAME].endswith("gives a second opinion on numbers" if len(listed) > 1 else "listens")


@pytest.mark.parametrize(
    ("arguments", "exit_code"),
    [
        (["--sha256", "abc"], 2),
        (["--sha256", "0" * 64], 1),
        (["--size", "3"], 1),
        (["--size", "-1"], 2),
        (["--name", "a/b"], 1),
    ],
)
def test_verb_add_refuses(tmp_path, folder, capsys, arguments, exit_code):
    """Wrong digests, sizes and names are told on standard error, and nothing is added; 2 where none is one."""
    archive = saved(tmp_path, zipped())
    assert main(["models", "add", archive, *arguments, "--models", str(folder)]) == exit_code
    told = capsys.readouterr()
    assert (told.out, told.err.count("\n")) == ("", 1)
    assert left_over(folder) == []


def test_where_models_are_looked_for(tmp_path, monkeypatch):
    """The option comes before the environment, that before the user's folder and the checkout's."""
    monkeypatch.delenv(models.FOLDER_SETTING, raising=False)
    assert models.folders(tmp_path) == (tmp_path,)
    assert models.folders()[0] == models.user_folder()
    assert Path(__file__).parents[2] / "models" in models.folders()
    monkeypatch.setenv(models.FOLDER_SETTING, str(tmp_path))
    assert models.folders() == (tmp_path,)


def test_joint_digest_is_of_what_sha256sum_prints(tmp_path):
    """One digest for a model: of the lines "digest  path", as the usual program prints them, sorted by path."""
    (tmp_path / "b").mkdir()
    (tmp_path / "b" / "two").write_bytes(b"abc")
    (tmp_path / "a").write_bytes(b"")
    found = models.digests(tmp_path)
    # SHA-256 of "abc": FIPS 180-4 examples; of nothing: the same place.
    assert found == {
        "a": "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
        "b/two": "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
    }
    lines = f"{found['a']}  a\n{found['b/two']}  b/two\n"
    assert models.joint_digest(found) == hashlib.sha256(lines.encode()).hexdigest()
