"""What a learner says in words of their own, which stand in no list: the second reader has a say in what it means.

Heard well and weighed heavily, it is asked about (`assistant.spoken.weighing`). Nothing is ever taken by it; and what
rules alone would take of such words is asked about too, where it weighs nothing.
"""

from dataclasses import replace

from assistant.adapters.recognisers.evidence import Evidence
from assistant.adapters.recognisers.judgement import Judgement
from assistant.adapters.recognisers.ranking import plain
from assistant.spoken import Language
from assistant.spoken.expect import Expect
from assistant.spoken.meaning import Answer, Kind, Meaning, Surety

LEAST_CLEAR = -0.5
"""Least logarithm of the probability, for each token, of what the model writes without limits."""
LEAST_WORDS = 2
"""A single word that stands in no list is too little to go by: noise becomes one."""
LEAST_DOUBTED = 5
"""Words of what rules take and the second reader may doubt: of "put it back on" it knows less than they do."""


def in_own_words(judged: Judgement, evidence: Evidence, expect: Expect, weighed: Language) -> Judgement:
    """What is made of an utterance once the second reader has had its say.

    Args:
        judged: what was made of it without: a sentence of a list, which is kept, other words, or nothing.
        evidence: what the model wrote.
        expect: what the step expects.
        weighed: the language with its second reader.
    """
    if judged.words:
        is_listed = any(one.words == judged.words for one in judged.alternatives)
        is_settled = judged.doubtful or is_listed or len(judged.words.split()) < LEAST_DOUBTED
        # Weighed as if it had been typed: of what is heard and understood nothing is.
        doubts = not is_settled and _asks(weighed.interpret(judged.words, expect))
        return replace(judged, doubtful=True) if doubts else judged
    free = plain(evidence.free.text, weighed)
    if len(free.split()) < LEAST_WORDS or evidence.free.score / evidence.free_tokens < LEAST_CLEAR:
        return judged
    meaning = weighed.interpret(free, expect, heard=True)
    # A positive that the rules know would have stood, had nothing spoken against it; an alternative never does.
    is_choice = isinstance(meaning, Answer) and meaning.kind is Kind.CHOICE
    return Judgement(free, judged.alternatives, doubtful=True) if is_choice or _asks(meaning) else judged


def _asks(meaning: Meaning) -> bool:
    return isinstance(meaning, Answer) and meaning.surety is Surety.LIKELY
