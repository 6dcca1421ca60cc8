"""Names of drugs, which a general model has hardly ever heard: chosen among names, refused where none fits.

Shares, scores and ratios are those that the bundled model gave to synthetic voices (measured here).
"""

import pytest

from assistant.adapters.recognisers.evidence import Evidence, Hypothesis
from assistant.adapters.recognisers.forms import Form
from assistant.adapters.recognisers.judgement import judge
from assistant.spoken import ENGLISH
from assistant.spoken.expect import NameExpected

DRUGS = NameExpected(("cefazolin", "ciprofloxacin", "famotidine", "potassium chloride"))


def evidence(free: float, command: tuple[str, float], *named: tuple[str, float, int]) -> Evidence:
    return Evidence(
        free=Hypothesis("female tie-dine", free),
        free_tokens=6,
        no_speech=0.0,
        bounded={Form.WORDS: (Hypothesis(*command),)},
        named=tuple(Hypothesis(*one) for one in named),
    )


CASES = [
    # what the model made of it, the name that stands
    (evidence(-7.2, ("i do not know", -15.9), ("famotidine", -14.6, 6), ("cefazolin", -24.0, 6)), "famotidine"),
    # two names are equally likely
    (evidence(-6.5, ("i need help", -16.0), ("famotidine", -23.4, 6), ("cefazolin", -23.6, 6)), ""),
    # a short name is forced upon other words
    (evidence(-2.0, ("give me a hint", -17.5), ("potassium chloride", -21.0, 4), ("famotidine", -40.0, 6)), ""),
    # other words are far likelier
    (evidence(-0.7, ("i do not know", -17.9), ("famotidine", -19.0, 6), ("cefazolin", -40.0, 6)), ""),
    # a command that is clear wins, whatever the names say
    (evidence(-1.0, ("again", -1.2), ("famotidine", -14.6, 6)), "again"),
]


@pytest.mark.parametrize(("made_of_it", "stands"), CASES)
def test_a_name_is_chosen_among_names_or_refused(made_of_it, stands):
    """The best name stands only where it leads clearly, is likely enough for its length, and nothing else fits."""
    words = judge(made_of_it, DRUGS, ENGLISH).words
    assert words == stands
