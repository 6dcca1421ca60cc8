"""xAPI statements: valid by the standard's rules, anonymous, and the same whenever they are made."""

import copy
import json

import pytest

from assistant.errors import UsageError
from assistant.report.statements import statements
from assistant.spoken import ENGLISH
from tests.report import attempts
from tests.report.xapi_rules import broken_rules

HOME = "https://example.org/"
TENFOLD = ("primary-line", "--mode", "check-off", "--slip", "tenfold", "--seed", "2", "--learner", "A17")


@pytest.fixture(scope="module")
def made():
    return statements(attempts.report(*TENFOLD), HOME, ENGLISH.report)


def test_every_statement_keeps_the_rules(made):
    """Each statement of a real attempt, after a way through JSON."""
    for one in json.loads(json.dumps(made)):
        assert broken_rules(one) == []


BREAKS = [
    # what is done to a statement, the section that must name it
    (lambda one: one.pop("verb"), "2.2"),
    (lambda one: one.update(id="1"), "2.4.1"),
    (lambda one: one.update(mood="good"), "2.2"),
    (lambda one: one["actor"].update(mbox="mailto:a@example.org"), "2.4.2.3"),
    (lambda one: one["actor"]["account"].update(homePage="here"), "2.4.2.4"),
    (lambda one: one["verb"].update(id="passed"), "2.4.3"),
    (lambda one: one["object"].update(id="x"), "2.4.4.1"),
    (lambda one: one["result"].update(success="true"), "2.2"),
    (lambda one: one["result"].update(duration="5 min"), "4.6"),
    (lambda one: one["result"].update(score={"scaled": 97}), "2.4.5.1"),
    (lambda one: one["result"].update(response=None), "2.2"),
    (lambda one: one["result"]["extensions"].update(head=""), "4.1"),
    (lambda one: one["context"].update(registration="x"), "2.4.6"),
    (lambda one: one.update(timestamp="2026-11-25T08:00:00"), "4.5"),
]


@pytest.mark.parametrize(("harm", "section"), BREAKS)
def test_the_rules_find_what_breaks_them(made, harm, section):
    """The checker itself refuses a statement for each kind of fault."""
    one = copy.deepcopy(made[0])
    harm(one)
    assert any(rule.startswith(section) for rule in broken_rules(one))


def test_the_attempt_and_its_steps(made):
    """First the attempt with its score; then every step, the held one without success, all in one registration."""
    first, *steps = made
    report = attempts.report(*TENFOLD)
    assert first["verb"]["display"] == {"en": "failed"}
    assert first["result"]["success"] is False
    assert first["result"]["score"]["raw"] == float(report.results["score_percent"])
    assert len(steps) == len([line for line in report.steps if line.ending != "not applicable"])
    assert len({one["context"]["registration"] for one in made}) == 1
    assert len({one["id"] for one in made}) == len(made)
    assert [one["result"]["response"] for one in steps if not one["result"]["success"]] == ["83.3 mL/h"]


def test_the_learner_is_an_account_with_a_code(made):
    """No name and no address of a person."""
    assert {json.dumps(one["actor"], sort_keys=True) for one in made} == {
        '{"account": {"homePage": "https://example.org/", "name": "A17"}, "objectType": "Agent"}'
    }


def test_an_attempt_without_an_end_is_neither_passed_nor_failed(tmp_path):
    """An interrupted attempt has no success, no score and no completion."""
    path = attempts.unsealed(attempts.attempt(tmp_path, *TENFOLD))
    code, out, _ = attempts.run("report", path, "--xapi")
    first = json.loads(out)[0]
    assert code == 0
    assert broken_rules(first) == []
    assert first["verb"]["display"] == {"en": "was interrupted at"}
    assert first["result"]["completion"] is False
    assert not {"success", "score"} & first["result"].keys()


@pytest.mark.parametrize("home", ["", "here", "https://", "https://a b/", "mailto:a@example.org"])
def test_a_home_that_is_none_is_refused(home):
    """The home of the accounts is an address with a scheme and a host."""
    with pytest.raises(UsageError):
        statements(attempts.report(*TENFOLD), home, ENGLISH.report)
