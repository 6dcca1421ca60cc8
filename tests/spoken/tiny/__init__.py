"""A tiny invented language: shows that a language is one folder, and nothing else."""

from assistant.spoken import ENGLISH
from assistant.spoken.language import Language
from tests.spoken.tiny.marked import marked
from tests.spoken.tiny.words import TABLES

TINY = Language(
    "qtx", TABLES, marked(ENGLISH.sentences), marked(ENGLISH.report, keep=("CODE", "REGION", "PAGE_OF_PAGES"))
)
"""The language; what it says is the English of guide and reports, marked. Codes from qaa to qtz are for local use
(ISO 639-2, from memory)."""
