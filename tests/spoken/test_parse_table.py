"""What `checkoff parse` prints, held against the tables of sayings."""

import io
import json
import sys
from collections import defaultdict

import pytest

from assistant.cli.main import main
from assistant.spoken.expect import ConfirmExpected, NameExpected, NumberExpected

from .tables import Saying, frame, read

TABLES = ("spoken_numbers.tsv", "spoken_phrases.tsv", "spoken_names.tsv")
MARKS = {"digits", "corrected"}
"""What a row tells beside the value, and the printed object does not."""


def written(found: dict[str, object], saying: Saying) -> str:
    """A printed object as the tables write it."""
    expect, _ = frame(saying.expect)
    if found["reject"] is not None:
        return f"! {found['reject']}"
    answer = found["answer"]
    if not isinstance(answer, dict):
        readings = found["readings"]
        assert isinstance(readings, list) and readings
        # Where the digits of one number are asked for, it comes first, before what it could have been.
        return "|".join(readings) if "|" in saying.meaning else str(readings[0])
    match answer["kind"]:
        case "number":
            same = isinstance(expect, NumberExpected) and answer["unit"] == expect.unit
            return str(answer["value"]) if same else f"{answer['value']} {answer['unit']}"
        case "command":
            return f"/{answer['value']}"
        case "text":
            return f"'{answer['value']}'"
        case _:
            return str(answer["value"])


def bare(meaning: str) -> str:
    """A meaning without its marks, as the verb prints it: what was only heard is no answer."""
    if meaning == "acknowledged":
        return "! not an answer here"
    if meaning[:1] in "!'/":
        return meaning
    return " ".join(word for word in meaning.split() if word not in MARKS)


def test_the_verb_prints_what_the_tables_say(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Every row whose frame can be written on the command line, 790 and more, each with a sentence to say."""
    groups: dict[str, list[Saying]] = defaultdict(list)
    for saying in (row for table in TABLES for row in read(table)):
        expect, _ = frame(saying.expect)
        if not isinstance(expect, NameExpected) and expect != ConfirmExpected(done_is_yes=False):
            groups[saying.expect].append(saying)
    assert sum(map(len, groups.values())) >= 790
    for expected, sayings in groups.items():
        lines = "\n".join(saying.words for saying in sayings).encode("utf-8")
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(lines)))
        bare_expect = expected.removeprefix("heard ")
        heard = ["--heard"] if bare_expect != expected else []
        assert main(["parse", "-", "--expect", bare_expect, "--json", *heard]) == 0
        out, err = capsys.readouterr()
        printed = [json.loads(line) for line in out.splitlines()]
        assert err == "" and len(printed) == len(sayings)
        for found, saying in zip(printed, sayings, strict=True):
            meaning = bare(saying.meaning)
            asked = found["answer"] is None and found["reject"] is None and "|" not in meaning
            assert not asked or heard or "corrected" in saying.meaning, saying
            assert written(found, saying) == (meaning.partition(" ")[0] if asked else meaning), saying
            assert found["readback"].endswith((".", "?")), saying
