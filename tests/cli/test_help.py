"""The help: it is what a newcomer believes, so each of its examples is read by the verb's own parser."""

import re
import shlex

import pytest

from assistant.cli.calc import formula_parser
from assistant.cli.main import _parser
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


@pytest.mark.parametrize("verb", VERBS)
def test_every_verb_has_examples_that_its_parser_takes(verb, capsys):
    """At least one example calls the verb itself, and every one is a call that the program understands."""
    calls = examples(helped(capsys, verb))
    assert [call for call in calls if call[:2] == ["checkoff", verb]]
    for program, *call in calls:
        assert program == "checkoff"
        parsed = _parser(call).parse_args(call)  # ends the test where it is wrong usage
        assert callable(parsed.run)


def test_the_examples_of_the_arithmetic_name_real_inputs(capsys):
    """What follows a formula is read by the parser of that formula."""
    calls = [call[2:] for call in examples(helped(capsys, "calc")) if call[2] in FORMULAS and "--help" not in call]
    assert calls
    for formula, *inputs in calls:
        formula_parser(FORMULAS[formula]).parse_args(inputs)
