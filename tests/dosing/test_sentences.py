"""Every sentence that the arithmetic tells is the one that somebody has read and kept."""

import json

from tests.dosing.sentences import FILE, lines


def test_every_sentence_is_the_kept_one() -> None:
    """What is told for each question is, word for word, what the file holds."""
    kept = {row["asked"]: row["told"] for row in map(json.loads, FILE.read_text(encoding="utf-8").splitlines())}
    now = {row["asked"]: row["told"] for row in map(json.loads, lines())}
    assert now.keys() == kept.keys()
    for asked, answer in now.items():
        assert answer == kept[asked], asked


def test_every_sentence_can_be_shown_in_one_line() -> None:
    """No sentence holds a line break, a control character or an endless number."""

    def strings(value: object) -> list[str]:
        if isinstance(value, str):
            return [value]
        inner = value.values() if isinstance(value, dict) else value if isinstance(value, list) else []
        return [text for one in inner for text in strings(one)]

    for line in FILE.read_text(encoding="utf-8").splitlines():
        for text in strings(json.loads(line)["told"]):
            assert text.isprintable(), text
            assert len(text) < 1600, text
