"""The program by voice on a virtual sound system, as a process of its own."""

import contextlib
import json
import queue
import subprocess
import sys
import threading
import time
from pathlib import Path

from assistant.record.verify import read_entries
from tests.virtual_sound import VirtualSound

FIXED_S = "0.8"


class Program:
    """The program by voice on a virtual sound system, its lines as they come."""

    def __init__(self, sound: VirtualSound, folder: Path, *options: str, fixed: bool = False) -> None:
        start = ["tests.bench.fixed_end", FIXED_S] if fixed else ["assistant"]
        command = [sys.executable, "-m", *start, "run", "primary-line", "--json", "--short-waits"]
        self.began = time.monotonic()
        self.process = subprocess.Popen(
            [*command, "--voice", "--ear", "bundled", "--records", str(folder), *options],
            env=sound.environment,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
        )
        self.lines: queue.Queue[dict] = queue.Queue()
        self.seen: list[dict] = []
        threading.Thread(target=self._read, daemon=True).start()
        self._folder = folder

    def _read(self) -> None:
        for line in self.process.stdout:
            self.lines.put(json.loads(line))

    def until(self, kind: str, limit_s: float = 90) -> bool:
        """Whether a line with this key came in time."""
        deadline = time.monotonic() + limit_s
        while (left := deadline - time.monotonic()) > 0:
            try:
                self.seen.append(self.lines.get(timeout=left))
            except queue.Empty:
                return False
            if kind in self.seen[-1]:
                return True
        return False

    def type(self, line: str) -> None:
        self.process.stdin.write(line + "\n")
        self.process.stdin.flush()

    def entries(self) -> list:
        (record,) = self._folder.glob("*.jsonl")
        return read_entries(record)

    def end(self) -> None:
        self.process.terminate()
        with contextlib.suppress(subprocess.TimeoutExpired):
            self.process.wait(20)
        self.process.kill()
        self.process.wait()
