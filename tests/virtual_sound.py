"""A sound system without hardware: a private PulseAudio with a loudspeaker and a microphone.

What the program plays goes into the sink "loudspeaker", whose monitor can be recorded. What is played into
the sink "learner" is what the program's "microphone" picks up. Nothing of the user's own sound set-up is
touched or read: server, cookie, socket and the ALSA configuration live in a folder of its own.
"""

import contextlib
import os
import shutil
import signal
import socket
import subprocess
import tempfile
import time
import wave
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
import numpy.typing as npt

SINK_RATE_HZ = 44_100
PROGRAMS = ("pulseaudio", "pactl", "paplay", "parec")
_DEADLINE_S = 20

# PortAudio reaches PulseAudio through ALSA. Both directions name their device, so that a pulled microphone is
# an error and not, as PulseAudio would have it, the loudspeaker's monitor instead.
_ALSA = """
pcm.loudspeaker { type pulse server "unix:SOCKET" device "loudspeaker" }
pcm.microphone { type pulse server "unix:SOCKET" device "microphone" }
pcm.!default { type asym playback.pcm "loudspeaker" capture.pcm "microphone" }
ctl.!default { type pulse server "unix:SOCKET" }
"""


def missing_programs() -> list[str]:
    """Names of the programs needed here that this machine lacks."""
    return [name for name in PROGRAMS if shutil.which(name) is None]


@dataclass
class VirtualSound:
    """A running private sound server.

    Attributes:
        folder: where it lives.
        environment: variables for a process that shall use it.
    """

    folder: Path
    environment: dict[str, str]
    _microphone_module: str = field(default="", repr=False)

    def plug_in_microphone(self) -> None:
        """Give the program its microphone: what the sink "learner" plays."""
        self._microphone_module = self._control(
            "load-module",
            "module-remap-source",
            "source_name=microphone",
            "master=learner.monitor",
            "source_properties=device.description=microphone",
        )

    def pull_microphone(self) -> None:
        """Pull the plug of the microphone."""
        self._control("unload-module", self._microphone_module)
        # PulseAudio has moved the streams to another source by now, the loudspeaker's monitor at worst. Where
        # there is no sound server, a pulled microphone ends them, and that is what is shown here.
        _wait_until(self._no_recording, "a recording went on without its microphone")

    @contextlib.contextmanager
    def loop_back(self, latency_ms: int = 20, level_db: int = 0) -> Iterator[None]:
        """Let the microphone hear the loudspeaker, as in a small room, so much later, so much softer."""
        module = self._control(
            "load-module",
            "module-loopback",
            "source=loudspeaker.monitor",
            "sink=learner",
            f"latency_msec={latency_ms}",
            "source_dont_move=true",
            "sink_dont_move=true",
        )
        try:
            if level_db:
                (stream,) = (
                    line.split()[0]
                    for line in self._control("list", "short", "sink-inputs").splitlines()
                    if "module-loopback" in line
                )
                self._control("set-sink-input-volume", stream, f"{level_db}dB")
            yield
        finally:
            self._control("unload-module", module)

    def pull_loudspeaker(self) -> None:
        """Take the loudspeaker away."""
        for line in self._control("list", "short", "modules").splitlines():
            number, _, arguments = line.partition("\t")
            if "sink_name=loudspeaker" in arguments:
                self._control("unload-module", number)
        # As with the microphone: the server has moved the streams to the other sink by now.
        for stream in self._control("list", "short", "sink-inputs").splitlines():
            self._command(f"kill-sink-input {stream.split()[0]}")

    def plug_in_loudspeaker(self) -> None:
        """Give the program its loudspeaker."""
        self._control("load-module", *_sink("loudspeaker").split())

    def play(self, file: Path) -> None:
        """Play a WAV file to the microphone; returns when it has been played."""
        subprocess.run(
            ["paplay", "--device=learner", str(file)],
            env=self.environment,
            check=True,
            timeout=_DEADLINE_S + _length_s(file),
            capture_output=True,
        )

    def play_samples(self, samples: npt.NDArray[np.int16], rate_hz: int) -> None:
        """Play mono samples to the microphone; returns when they have been played."""
        file = self.folder / "played.wav"
        with wave.open(str(file), "wb") as out:
            out.setnchannels(1)
            out.setsampwidth(2)
            out.setframerate(rate_hz)
            out.writeframes(samples.astype("<i2").tobytes())
        self.play(file)

    @contextlib.contextmanager
    def around(self, samples: npt.NDArray[np.int16], rate_hz: int) -> Iterator[None]:
        """Let the microphone pick this up again and again beside what is played, as the noise of a room."""
        file = self.folder / "around.raw"
        file.write_bytes(samples.astype("<i2").tobytes())
        player = f"paplay --device=learner --raw --format=s16le --channels=1 --rate={rate_hz}"
        script = f'while cat "{file}"; do :; done | {player}'
        process = subprocess.Popen(
            ["sh", "-c", script], env=self.environment, stderr=subprocess.DEVNULL, start_new_session=True
        )
        try:
            yield
        finally:
            os.killpg(process.pid, signal.SIGTERM)
            process.wait(_DEADLINE_S)

    @contextlib.contextmanager
    def recording(self, sink: str = "loudspeaker") -> Iterator["LoudspeakerRecording"]:
        """Record what the loudspeaker plays, or what the learner says, for as long as the context lasts."""
        file = self.folder / f"recorded-{sink}.raw"
        with file.open("wb") as out:
            process = subprocess.Popen(
                [
                    "parec",
                    f"--device={sink}.monitor",
                    "--format=s16le",
                    "--channels=1",
                    f"--rate={SINK_RATE_HZ}",
                    "--latency-msec=20",
                    "--raw",
                ],
                env=self.environment,
                stdout=out,
                stderr=subprocess.DEVNULL,
            )
            try:
                _wait_until(lambda: file.stat().st_size > 0, "the recording of the loudspeaker did not start")
                yield LoudspeakerRecording(file, time.monotonic())
            finally:
                process.terminate()
                process.wait(_DEADLINE_S)

    def _no_recording(self) -> bool:
        streams = self._control("list", "short", "source-outputs").splitlines()
        for stream in streams:
            self._command(f"kill-source-output {stream.split()[0]}")
        return not streams

    def _command(self, line: str) -> None:
        with socket.socket(socket.AF_UNIX) as connection:
            connection.settimeout(_DEADLINE_S)
            connection.connect(str(self.folder / "cli"))
            connection.sendall(f"{line}\n".encode())

    def _control(self, *words: str) -> str:
        done = subprocess.run(
            ["pactl", *words],
            env=self.environment,
            capture_output=True,
            text=True,
            timeout=_DEADLINE_S,
            check=True,
        )
        return done.stdout.strip()


@dataclass(frozen=True)
class LoudspeakerRecording:
    """What the loudspeaker has played since the recording began.

    Attributes:
        began: the steady clock at its first sample, seconds, give or take 20 ms.
    """

    file: Path
    began: float = 0.0

    def samples(self) -> npt.NDArray[np.int16]:
        """Mono samples at `SINK_RATE_HZ` so far."""
        content = self.file.read_bytes()
        return np.frombuffer(content[: len(content) // 2 * 2], dtype="<i2")

    def first_loud_s(self, threshold: int = 300) -> float | None:
        """When the first sound came, on the steady clock; None for none."""
        loud = np.flatnonzero(np.abs(self.samples().astype(np.int32)) > threshold)
        return self.began + loud[0] / SINK_RATE_HZ if len(loud) else None

    def loud_moments_s(self, since: float, until: float, threshold: int = 300) -> npt.NDArray[np.float64]:
        """When something sounded between two times, on the steady clock; a figure for each loud sample."""
        start = max(0, int((since - self.began) * SINK_RATE_HZ))
        samples = self.samples()[start : max(start, int((until - self.began) * SINK_RATE_HZ))]
        loud = np.flatnonzero(np.abs(samples.astype(np.int32)) > threshold)
        return np.asarray(self.began + (start + loud) / SINK_RATE_HZ)

    def first_silence_s(self, after: float | None, length_s: float = 0.3, threshold: int = 300) -> float | None:
        """When a silence of this length began, `after` a time on the steady clock; None for none."""
        start = max(0, int(((after or self.began) - self.began) * SINK_RATE_HZ))
        samples = np.abs(self.samples()[start:].astype(np.int32)) > threshold
        edges = np.flatnonzero(samples)
        ends = np.append(edges[1:], len(samples)) - edges > length_s * SINK_RATE_HZ
        return self.began + (start + edges[np.argmax(ends)]) / SINK_RATE_HZ if len(edges) and ends.any() else None

    def loud_s(self, threshold: int = 300) -> float:
        """Seconds, in steps of 20 ms, in which something louder than `threshold` was played."""
        samples = self.samples()
        step = SINK_RATE_HZ // 50
        blocks = samples[: len(samples) // step * step].reshape(-1, step).astype(np.int32)
        return float(np.count_nonzero(np.abs(blocks).max(axis=1) > threshold)) / 50 if len(blocks) else 0.0


@contextlib.contextmanager
def virtual_sound() -> Iterator[VirtualSound]:
    """Start a private sound server with loudspeaker and microphone; stop it at the end.

    Raises:
        RuntimeError: the server did not start; with what it said.
    """
    folder = Path(tempfile.mkdtemp(prefix="sound-"))  # short: a socket's path has room for 107 characters
    server = None
    try:
        environment = _environment(folder)
        log = folder / "server.log"
        with log.open("wb") as out:
            server = subprocess.Popen(
                [
                    *("pulseaudio", "-n", "--daemonize=no", "--system=no", "--use-pid-file=no"),
                    *("--exit-idle-time=-1", "--realtime=no", "--high-priority=no"),
                    *("-L", f"module-native-protocol-unix socket={folder}/native auth-anonymous=1"),
                    *("-L", f"module-cli-protocol-unix socket={folder}/cli"),
                    *("-L", _sink("loudspeaker"), "-L", _sink("learner")),
                ],
                env=environment,
                stdin=subprocess.DEVNULL,
                stdout=out,
                stderr=out,
            )
        sound = VirtualSound(folder, environment)
        try:
            _wait_until((folder / "native").exists, "the socket of the sound server did not appear")
            sound.plug_in_microphone()
        except (RuntimeError, subprocess.SubprocessError) as failure:
            said = log.read_text(errors="replace")
            raise RuntimeError(f"PulseAudio did not start: {failure}\n{said}") from failure
        yield sound
    finally:
        if server is not None:
            server.terminate()
            try:
                server.wait(_DEADLINE_S)
            except subprocess.TimeoutExpired:
                server.kill()
                server.wait()
        shutil.rmtree(folder, ignore_errors=True)


def _sink(name: str) -> str:
    # Without rewinds a null sink works in steps of 50 ms; with them its first block comes after two seconds.
    return f"module-null-sink sink_name={name} rate={SINK_RATE_HZ} norewinds=1"


def _environment(folder: Path) -> dict[str, str]:
    alsa = folder / "alsa.conf"
    alsa.write_text(_ALSA.replace("SOCKET", f"{folder}/native"))
    kept = {
        name: value for name, value in os.environ.items() if not name.startswith(("PULSE_", "ALSA_", "JACK_", "DBUS_"))
    }
    return kept | {
        "HOME": str(folder),
        "XDG_RUNTIME_DIR": str(folder),
        "XDG_CONFIG_HOME": str(folder / "config"),
        "PULSE_RUNTIME_PATH": str(folder),
        "PULSE_SERVER": f"unix:{folder}/native",
        "PULSE_COOKIE": str(folder / "cookie"),
        "ALSA_CONFIG_PATH": str(alsa),
        "JACK_NO_START_SERVER": "1",
    }


def _wait_until(condition, what: str) -> None:
    deadline = time.monotonic() + _DEADLINE_S
    while not condition():
        if time.monotonic() > deadline:
            raise RuntimeError(what)
        time.sleep(0.02)


def _length_s(file: Path) -> float:
    with wave.open(str(file), "rb") as sound:
        return sound.getnframes() / sound.getframerate()
