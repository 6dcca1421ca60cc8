"""A network that can be cut: forwards TCP to an address until it is told to stop, and goes on where it was."""

import contextlib
import socket
import threading

BLOCK = 65_536


class Cut:
    """Forwards connections to a port of this machine.

    Attributes:
        port: where it listens.
    """

    def __init__(self, to):
        self._to = to
        self._whole = threading.Event()
        self._whole.set()
        self._at = socket.create_server(("127.0.0.1", 0))
        self.port = self._at.getsockname()[1]
        self._open = []
        threading.Thread(target=self._accept, daemon=True).start()

    def cut(self):
        """Nothing goes through; no connection is told."""
        self._whole.clear()

    def heal(self):
        """What was held back goes through, and all that comes."""
        self._whole.set()

    def close(self):
        self._whole.set()
        for one in [self._at, *self._open]:
            with contextlib.suppress(OSError):
                one.shutdown(socket.SHUT_RDWR)
            one.close()

    def _accept(self):
        with contextlib.suppress(OSError):
            while True:
                here, _ = self._at.accept()
                self._open.append(here)
                threading.Thread(target=self._connect, args=(here,), daemon=True).start()

    def _connect(self, here):
        self._whole.wait()
        with contextlib.suppress(OSError):
            there = socket.create_connection(("127.0.0.1", self._to))
            self._open.append(there)
            threading.Thread(target=self._forward, args=(there, here), daemon=True).start()
            self._forward(here, there)

    def _forward(self, one, other):
        with contextlib.suppress(OSError):
            while block := one.recv(BLOCK):
                self._whole.wait()
                other.sendall(block)
        for end in (one, other):
            with contextlib.suppress(OSError):
                end.shutdown(socket.SHUT_RDWR)
