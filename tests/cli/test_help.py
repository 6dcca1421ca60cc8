"""The help: it is what a newcomer believes, so each of its examples is read by the verb's own parser."""

import re
import shlex
import subprocess

import pytest

from assistant.cli.calc import formula_parser
from assistant.cli.completion import SHELLS
from assistant.cli.parsers import parser_for
from assistant.cli.verbs import VERBS
from assistant.dosing.formulas import FORMULAS
from tests.attempt.program import here

SHELL = ("<", ">")
"""What follows one of these in an example is for the shell and not for the program."""


def helped(capsys, *call: str) -> str:
    ended = here(capsys, *call, "--help")
    assert ended.code == 0
    return "\n".join(map(str, ended.lines))


def examples(text: str) -> list[list[str]]:
    """The calls in the examples of a help text, as the program gets them; explanations come after two spaces."""
    section = re.sub(r" \\\n *", " ", text.partition("\nexamples:\n")[2].partition("\n\n")[0])
    calls = []
    for line in section.splitlines():
        if line.strip().startswith("#"):
            continue
        words = shlex.split(re.split(r" {2,}", line.strip())[0])
        cut = next((place for place, word in enumerate(words) if word in SHELL), len(words))
        calls.append(words[:cut])
    return calls


@pytest.mark.parametrize("verb", VERBS)
def test_the_help_of_a_verb_begins_with_its_summary(verb, capsys):
    """The line that the list of verbs has for it is the first of its own help, whatever else follows."""
    summary = VERBS[verb]
    assert f"\n{summary[0].upper()}{summary[1:]}.\n\n" in helped(capsys, verb)
    listed = " ".join(helped(capsys).split())
    assert f" {verb} {summary} " in listed


@pytest.mark.parametrize("verb", ["", *VERBS, "orders draw"])
def test_the_help_fits_a_terminal_of_80_columns(verb, capsys, monkeypatch):
    """No line is broken by the terminal in the middle of a word."""
    monkeypatch.setenv("COLUMNS", "80")
    assert [line for line in helped(capsys, *verb.split()).splitlines() if len(line) > 79] == []


def test_the_nearest_verb_is_named(capsys):
    """A slip of the fingers costs one line of reading, and the list is a call away."""
    ended = here(capsys, "raport", "x.jsonl")
    assert (ended.code, ended.lines) == (2, [])
    assert ended.console == 'There is no verb "raport". Did you mean report? checkoff --help lists them all.\n'
    assert here(capsys, "zzz").console == 'There is no verb "zzz". checkoff --help lists them all.\n'


@pytest.mark.parametrize("shell", SHELLS)
def test_a_shell_completes(shell, capsys):
    """The script knows verbs, options and the names of the library."""
    script = "\n".join(map(str, here(capsys, "completion", shell).lines))
    assert {name for name in (*VERBS, "short-waits", "bag-change", "oh-101") if name not in script} == set()


def test_what_bash_completes(capsys, tmp_path):
    """A real bash, asked in the way that it asks when the tab key is pressed."""
    script = tmp_path / "completion"
    script.write_text("\n".join(map(str, here(capsys, "completion", "bash").lines)), encoding="utf-8")
    ask = 'source "$1"; COMP_WORDS=(checkoff re); COMP_CWORD=1; _shtab_checkoff; echo "${COMPREPLY[@]}"'
    done = subprocess.run(["bash", "-c", ask, "bash", script], capture_output=True, text=True, check=True)
    assert {"resume", "report", "rehearse"} <= set(done.stdout.split())
    assert "run" not in done.stdout.split()


@pytest.mark.parametrize("verb", VERBS)
def test_every_verb_has_examples_that_its_parser_takes(verb, capsys):
    """At least one example calls the verb itself, and every one is a call that the program understands."""
    calls = examples(helped(capsys, verb))
    assert [call for call in calls if call[:2] == ["checkoff", verb]]
    for program, *call in calls:
        assert program == "checkoff"
        parsed = parser_for(call).parse_args(call)  # ends the test where it is wrong usage
        assert callable(parsed.run)


def test_the_examples_of_the_arithmetic_name_real_inputs(capsys):
    """What follows a formula is read by the parser of that formula."""
    calls = [call[2:] for call in examples(helped(capsys, "calc")) if call[2] in FORMULAS and "--help" not in call]
    assert calls
    for formula, *inputs in calls:
        formula_parser(FORMULAS[formula]).parse_args(inputs)
