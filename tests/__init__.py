"""The checks. Whatever is run from here writes into a book of heads of its own, never into the user's."""

import atexit
import os
import shutil
import tempfile
from pathlib import Path

HEADS = Path(tempfile.mkdtemp(prefix="heads-"))
"""Folder of the book of heads, of this process and of those that it starts."""
os.environ["CHECKOFF_HEADS"] = str(HEADS)
atexit.register(shutil.rmtree, HEADS, ignore_errors=True)
