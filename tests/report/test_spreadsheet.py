"""The table in a real spreadsheet: LibreOffice opens it, shows every word and carries nothing out."""

import shutil
import subprocess
import xml.etree.ElementTree as ElementTree

import pytest

from assistant.report.sheet import report_csv
from assistant.spoken import ENGLISH
from tests.report import attempts
from tests.report.hostile import WORDS

TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"


def _opened(folder, *paths):
    """The cells of CSV files as LibreOffice holds them, by the file's stem: formula, text."""
    program = shutil.which("soffice")
    assert program, "tests/run installs libreoffice-calc-nogui"
    # 44: comma, 34: quotation mark, 76: UTF-8; special numbers are looked for, formulas are not forbidden.
    command = [
        *(program, "--headless", f"-env:UserInstallation={(folder / 'profile').as_uri()}"),
        *("--infilter=CSV:44,34,76,1,,0,false,true,false", "--convert-to", "fods", "--outdir", str(folder)),
        *map(str, paths),
    ]
    done = subprocess.run(command, capture_output=True, text=True, timeout=100)
    assert all((folder / f"{path.stem}.fods").exists() for path in paths), done.stderr
    return {path.stem: list(_cells(folder / f"{path.stem}.fods")) for path in paths}


def _cells(made):
    for cell in ElementTree.parse(made).iter(f"{TABLE}table-cell"):  # noqa: S314 - of a program that we started
        text = "\n".join("".join(paragraph.itertext()) for paragraph in cell.iter(f"{TEXT}p"))
        yield cell.get(f"{TABLE}formula"), text


@pytest.mark.slow
def test_no_formula_is_carried_out(tmp_path):
    """A row for each hostile text: no cell is a formula; the same texts unguarded would be (so the test can fail)."""
    report = attempts.report("primary-line")
    line = report.steps[0]
    texts = list(WORDS.values())
    hostile = report.model_copy(
        update={"steps": tuple(line.model_copy(update={"say": words, "final": words}) for words in texts)}
    )
    guarded, unguarded = tmp_path / "guarded.csv", tmp_path / "unguarded.csv"
    guarded.write_text(report_csv(hostile, ENGLISH.report), encoding="utf-8", newline="")
    unguarded.write_text('"=1+1","=2*3"\r\n', encoding="utf-8", newline="")
    cells = _opened(tmp_path, guarded, unguarded)
    assert [cell for cell in cells["guarded"] if cell[0] is not None] == []
    shown = "\n".join(text for _, text in cells["guarded"])
    for name in ("script", "attribute", "formula", "scripts", "exchange"):
        assert WORDS[name] in shown, name
    assert [formula for formula, _ in cells["unguarded"] if formula]
