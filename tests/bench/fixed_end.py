"""The program, but with utterances that end after a fixed silence: what the room bench compares with.

Usage: ``python -m tests.bench.fixed_end SECONDS VERB...``
"""

import functools
import sys

from assistant.adapters import sound
from assistant.adapters.listener import Listener
from assistant.cli.main import main

if __name__ == "__main__":
    sound.Listener = functools.partial(Listener, fixed_pause_s=float(sys.argv[1]))
    sys.exit(main(sys.argv[2:]))
