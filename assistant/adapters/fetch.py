"""Adds a recogniser model to the models folder: fetched or copied, checked, unpacked, and only then put in place."""

import contextlib
import hashlib
import http.client
import re
import shutil
import stat
import tarfile
import tempfile
import urllib.error
import urllib.request
import zipfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from typing import IO
from urllib.parse import unquote, urlsplit

from filelock import FileLock

from assistant.adapters import models
from assistant.adapters.models import StoredModel
from assistant.errors import ModelError
from assistant.text import reason_shown

BLOCK = 1 << 18
TIMEOUT_S = 30
TRIES = 3
"""How often a connection that breaks is taken up again where it broke."""
_DEPTH = 2
_WORKSHOP = ".adding-"
"""How the name of a folder begins in which an archive is unpacked."""
_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]{0,99}")
_SUFFIXES = re.compile(r"\.(zip|tar|tar\.gz|tgz|tar\.bz2|tar\.xz)$", re.IGNORECASE)

Progress = Callable[[int, int | None], None]
"""Told the bytes so far and, where known, the bytes in all."""


@dataclass(frozen=True)
class Limits:
    """What a model may be at most; the largest known English models stay well below.

    Attributes:
        fetched: bytes of an archive.
        unpacked: bytes of all files together.
        files: how many files and folders.
    """

    fetched: int = 4 << 30
    unpacked: int = 8 << 30
    files: int = 2_000


@dataclass(frozen=True)
class Expected:
    """What the user was told about an archive; None: nothing.

    Attributes:
        sha256: digest (hex).
        size: bytes.
    """

    sha256: str | None = None
    size: int | None = None


def add(
    source: str,
    folder: Path,
    expected: Expected | None = None,
    name: str | None = None,
    progress: Progress = lambda done, total: None,
    limits: Limits | None = None,
) -> StoredModel:
    """Add a model; whatever goes wrong on the way, the models folder stays as it was.

    Args:
        source: a zip or tar file, a folder, or an http or https address of a zip or tar file.
        folder: the models folder; made where it is missing.
        expected: digest and size of the archive.
        name: the model's name; None for that of its folder in the archive.
        progress: told how far fetching or reading has come.
        limits: what a model may be at most.

    Raises:
        ModelError: the source cannot be had, is not what was expected, holds no model, or the name is taken.
    """
    expected = expected or Expected()
    limits = limits or Limits()
    if name is not None and not _NAME.fullmatch(name):
        raise ModelError(f'"{name}" cannot be the name of a model.', "Take letters, digits, points and hyphens only.")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        # On the same file system as the models, so that the last step is one rename.
        with (
            FileLock(folder / ".lock", timeout=600),
            _cleared(folder),
            tempfile.TemporaryDirectory(prefix=_WORKSHOP, dir=folder) as workshop,
        ):
            return _add(source, folder, expected, name, progress, limits, Path(workshop))
    except OSError as cause:
        raise ModelError(
            f"The model could not be written to {folder} ({cause.strerror or cause}).",
            "Check the disk's free space and permissions.",
        ) from cause


@contextlib.contextmanager
def _cleared(folder: Path) -> Iterator[None]:
    """Clear away what an unpacking that was killed left behind; nobody else unpacks while the lock is held."""
    for left in folder.glob(f"{_WORKSHOP}*"):
        shutil.rmtree(left, ignore_errors=True)
    yield


def _add(
    source: str,
    folder: Path,
    expected: Expected,
    name: str | None,
    progress: Progress,
    limits: Limits,
    workshop: Path,
) -> StoredModel:
    unpacked = workshop / "unpacked"
    unpacked.mkdir()
    local = Path(source).expanduser()
    if urlsplit(source).scheme.lower() in ("http", "https"):
        archive = workshop / "fetched"
        _fetch(source, archive, progress, limits, expected.size)
        _check(archive, expected)
        _unpack(archive, unpacked, limits)
        stem = PurePosixPath(unquote(urlsplit(source).path)).name
    elif local.is_dir():
        if expected != Expected():
            raise ModelError("A digest or size belongs to an archive, but a folder is given.", "Leave it out.")
        _copy(local, unpacked, limits)
        stem = local.resolve().name
    elif local.is_file():
        _check(local, expected)
        _unpack(local, unpacked, limits)
        stem = local.name
    else:
        raise ModelError(
            f"{source} is neither a file, nor a folder, nor an http or https address.",
            "Give a zip or tar file of a model, its folder, or its address.",
        )
    root, engine = _model_root(unpacked, source)
    chosen = name or (_SUFFIXES.sub("", stem) if root == unpacked else root.name)
    if not _NAME.fullmatch(chosen):
        raise ModelError(f'"{chosen}" cannot be the name of a model.', "Choose one with: --name NAME")
    target = folder / chosen
    if target.exists():
        raise ModelError(
            f"There is a model called {chosen} in {folder} already.",
            "Delete its folder first, or choose another name with: --name NAME",
        )
    manifest = models.read_manifest(folder)
    # The digests come first: a model without digests could be changed unseen.
    models.write_manifest(folder, models.Manifest(models={**manifest.models, chosen: models.digests(root)}))
    root.rename(target)
    return StoredModel(chosen, target, engine)


def _fetch(address: str, target: Path, progress: Progress, limits: Limits, size: int | None) -> None:
    """Fetch an address to a file; a connection that breaks is taken up again, `TRIES` times in all."""
    total: int | None = None
    mark = ""
    with target.open("w+b") as file:
        for last_try in (*[False] * (TRIES - 1), True):
            try:
                with _open(address, file.tell(), mark) as response:
                    if response.status != http.client.PARTIAL_CONTENT:
                        file.seek(0)
                        file.truncate()
                        mark = response.headers.get("ETag") or response.headers.get("Last-Modified") or ""
                        total = _length(response)
                    _pour(response, file, total, progress, min(limits.fetched, size or limits.fetched), address)
            except (urllib.error.URLError, http.client.HTTPException, ConnectionError, TimeoutError) as cause:
                if last_try or isinstance(cause, urllib.error.HTTPError):
                    raise ModelError(
                        f"{address} could not be fetched: {_reason(cause)}.", "Check the address and the network."
                    ) from cause
                continue
            if total is None or file.tell() >= total:
                return
    raise ModelError(f"{address} broke off: {target.stat().st_size} of {total} bytes came.", "Try it again.")


def _open(address: str, start: int, mark: str) -> http.client.HTTPResponse:
    """Open an address, from a byte on where the server's file is still the same."""
    # No handler for files or other schemes: a redirect must not read this machine's own disk.
    opener = urllib.request.OpenerDirector()
    for part in (
        urllib.request.ProxyHandler(),
        urllib.request.HTTPHandler(),
        urllib.request.HTTPSHandler(),
        urllib.request.HTTPErrorProcessor(),
        urllib.request.HTTPRedirectHandler(),
        urllib.request.HTTPDefaultErrorHandler(),
        urllib.request.UnknownHandler(),
    ):
        opener.add_handler(part)
    request = urllib.request.Request(address)  # noqa: S310 - the opener knows http and https only
    if start and mark:
        request.add_header("Range", f"bytes={start}-")
        request.add_header("If-Range", mark)
    response = opener.open(request, timeout=TIMEOUT_S)
    if not isinstance(response, http.client.HTTPResponse):
        raise ModelError(f"{address} is not the address of a file.", "Check the address.")
    return response


def _pour(
    response: http.client.HTTPResponse,
    file: IO[bytes],
    total: int | None,
    progress: Progress,
    most: int,
    address: str,
) -> None:
    if total is not None and total > most:
        raise _too_large(address, most)
    while block := response.read(BLOCK):
        file.write(block)
        if file.tell() > most:
            raise _too_large(address, most)
        progress(file.tell(), total)


def _length(response: http.client.HTTPResponse) -> int | None:
    text = response.headers.get("Content-Length", "")
    return int(text) if text.isdecimal() else None


def _check(archive: Path, expected: Expected) -> None:
    size = archive.stat().st_size
    if expected.size is not None and size != expected.size:
        raise ModelError(f"The archive has {size} bytes and not {expected.size}.", "Fetch it again, or check the size.")
    if expected.sha256 is None:
        return
    with archive.open("rb") as file:
        found = hashlib.file_digest(file, "sha256").hexdigest()
    if found != expected.sha256.lower():
        raise ModelError(
            f"The archive's SHA-256 is {found} and not {expected.sha256.lower()}: it is another file.",
            "Fetch it again, or check the digest.",
        )


def _unpack(archive: Path, target: Path, limits: Limits) -> None:
    try:
        with _members(archive) as members:
            room = _Room(limits)
            for name, is_folder, content in members:
                place = target.joinpath(*_parts(name, archive))
                room.make(place if is_folder else place.parent)
                if is_folder:
                    continue
                with content() as source, place.open("xb") as file:
                    room.copy(source, file)
    except (zipfile.BadZipFile, tarfile.TarError, EOFError, ValueError, NotImplementedError, RuntimeError) as cause:
        raise ModelError(f"The archive is damaged: {_reason(cause)}.", "Fetch it again.") from cause
    except FileExistsError as cause:
        raise ModelError("The archive holds a file twice.", "Take another archive.") from cause


Member = tuple[str, bool, Callable[[], IO[bytes]]]
"""Name, whether it is a folder, and how to read it."""


@contextlib.contextmanager
def _members(archive: Path) -> Iterator[Iterator[Member]]:
    if zipfile.is_zipfile(archive):
        with zipfile.ZipFile(archive) as zipped:
            yield (_of_zip(zipped, member) for member in zipped.infolist())
    else:
        try:
            tarred = tarfile.open(archive)  # noqa: SIM115 - closed below, after the error that has its own sentence
        except tarfile.TarError as cause:
            raise ModelError("The file is neither a zip nor a tar archive.", "Take another file.") from cause
        with tarred:
            yield (_of_tar(tarred, member) for member in tarred)


def _of_zip(zipped: zipfile.ZipFile, member: zipfile.ZipInfo) -> Member:
    kind = stat.S_IFMT(member.external_attr >> 16)
    if kind not in (0, stat.S_IFREG, stat.S_IFDIR):
        raise _link(member.filename)
    return member.filename, member.is_dir(), lambda: zipped.open(member)


def _of_tar(tarred: tarfile.TarFile, member: tarfile.TarInfo) -> Member:
    def content() -> IO[bytes]:
        opened = tarred.extractfile(member)
        if opened is None:
            raise _link(member.name)
        return opened

    if not (member.isfile() or member.isdir()):
        raise _link(member.name)
    return member.name, member.isdir(), content


def _parts(name: str, archive: Path) -> tuple[str, ...]:
    """The parts of a member's path; refuses one that leads out of the folder or hides something."""
    parts = tuple(part for part in name.split("/") if part not in ("", "."))
    bad = name.startswith("/") or any(
        part == ".." or "\\" in part or ":" in part or not part.isprintable() for part in parts
    )
    if bad:
        raise ModelError(
            f"The archive {archive.name} is not safe: a file in it is called {name!a}.",
            "Take another archive.",
        )
    return parts


class _Room:
    """Counts what is written, whatever an archive's own table says."""

    def __init__(self, limits: Limits) -> None:
        self._limits = limits
        self._bytes = 0
        self._places = 0

    def make(self, folder: Path) -> None:
        """Make a folder and those around it."""
        if not folder.is_dir():
            self.make(folder.parent)
            self._places += 1
            self._refuse_too_much()
            folder.mkdir()

    def copy(self, source: IO[bytes], file: IO[bytes]) -> None:
        """Copy a file."""
        self._places += 1
        while block := source.read(BLOCK):
            self._bytes += len(block)
            if self._bytes > self._limits.unpacked:
                break
            file.write(block)
        self._refuse_too_much()

    def _refuse_too_much(self) -> None:
        if self._bytes > self._limits.unpacked or self._places > self._limits.files:
            raise ModelError(
                f"The archive unpacks to more than {self._limits.unpacked} bytes or {self._limits.files} files.",
                "Take another archive.",
            )


def _copy(source: Path, target: Path, limits: Limits) -> None:
    room = _Room(limits)
    for path in sorted(source.rglob("*")):
        place = target / path.relative_to(source)
        if path.is_symlink():
            raise _link(str(path))
        if path.is_dir():
            room.make(place)
        elif path.is_file():
            room.make(place.parent)
            with path.open("rb") as content, place.open("xb") as file:
                room.copy(content, file)


def _model_root(unpacked: Path, source: str) -> tuple[Path, models.Engine]:
    """The folder that holds the model: the top, or the only one below that does."""
    level = [unpacked]
    for _ in range(_DEPTH + 1):
        found = [(folder, engine) for folder in level if (engine := models.engine_of(folder)) is not None]
        if len(found) == 1:
            return found[0]
        if found:
            raise ModelError(f"{source} holds more than one model.", "Unpack it and add them one by one.")
        level = [below for folder in level for below in sorted(folder.iterdir()) if below.is_dir()]
    raise ModelError(
        f"{source} holds neither a Vosk model nor a Whisper model for CTranslate2.", "Take another archive."
    )


def _link(name: str) -> ModelError:
    return ModelError(f"The archive is not safe: {name!a} is a link or a device.", "Take another archive.")


def _too_large(address: str, most: int) -> ModelError:
    return ModelError(f"{address} is larger than {most} bytes.", "Check the address and the size.")


def _reason(cause: BaseException) -> str:
    if isinstance(cause, urllib.error.HTTPError):
        return f"the server says {cause.code}"
    reason = getattr(cause, "reason", None) or cause
    return reason_shown(getattr(reason, "strerror", None) or reason)
