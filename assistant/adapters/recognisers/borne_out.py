"""What one model hears without being sure of it, and another one bears out: digits, and choices of a line.

Digits are the last way in which a number is asked for, and an author's own choices are words that were in no training:
both are refused more often than anything else. What the first model leads with, and another one, trained on other
speech, takes for the likeliest too, is hardly ever wrong. Digits are taken then, also where a number was said so before
anybody asked for them; a choice closes a step, and is asked about.
"""

from dataclasses import replace

from assistant.adapters.recognisers.doubts import lacks_words
from assistant.adapters.recognisers.evidence import Evidence
from assistant.adapters.recognisers.judgement import Judgement, is_sound
from assistant.adapters.recognisers.limits import LimitSet
from assistant.adapters.recognisers.positives import denies
from assistant.adapters.recognisers.ranking import Group, meanings, plain, rank, same
from assistant.spoken import Language
from assistant.spoken.expect import ChoiceExpected, Expect, NumberExpected
from assistant.spoken.meaning import Answer, Kind

LEAST_SHARE_UNASKED = 0.9
"""Least share of a number that was said digit by digit though nobody asked: to ask is easy."""
LEAST_SHARE = 0.7
"""Least share of a choice, among all sentences of the step, with the model that leads and with the other one."""
LEAST_RATIO = -15.0
"""Least logarithm of (probability of a choice / probability of what the leading model writes freely)."""
LEAST_OTHER_RATIO = -9.0
"""The same of the other model, which writes everyday words more easily."""
LEAST_ENDING = -2.0
"""Least logarithm of the probability, with both, that nothing follows the choice: "thready means what" is no answer."""


def to_bear_out(
    judged: Judgement, evidence: Evidence, expect: Expect, language: Language, limits: LimitSet
) -> Group | None:
    """What the leading model is not sure of, and would stand for or ask about if another one heard it too, or None.

    Args:
        judged: what was made of the utterance so far.
        evidence: of the leading model.
        expect: what the step expects.
        language: in which the sentences are.
        limits: of the leading model.
    """
    is_sure = bool(judged.words) and not judged.doubtful
    if limits.borne_out is None or is_sure or not isinstance(expect, NumberExpected | ChoiceExpected):
        return None
    ranked = rank(evidence.bounded, expect, language)
    if not ranked:
        return None
    best = ranked[0]
    if isinstance(expect, ChoiceExpected):
        return best if not judged.words and _leads(best, evidence, LEAST_RATIO, language) else None
    wanted = limits.borne_out if expect.digits_only else replace(limits.borne_out, share=LEAST_SHARE_UNASKED)
    bears = (
        _is_digit_by_digit(best, expect, language)
        and not lacks_words(best.text, evidence.bursts)
        and is_sound(ranked, wanted, evidence, expect, language, limits)
    )
    return best if bears else None


def _is_digit_by_digit(number: Group, expect: NumberExpected, language: Language) -> bool:
    """Whether it was said so: where digits are asked for, or two and more ("six" may be what is left of "sixteen")."""
    if expect.digits_only:
        return number.is_number
    as_digits = language.interpret(number.text, replace(expect, digits_only=True), heard=True)
    return len(number.text.split()) > 1 and isinstance(as_digits, Answer) and as_digits.kind is Kind.NUMBER


def likeliest_choice(evidence: Evidence, expect: Expect, language: Language) -> str:
    """The choice that a model bears out, from what it made of an utterance; "" for none."""
    ranked = rank(evidence.bounded, expect, language)
    return ranked[0].text if ranked and _leads(ranked[0], evidence, LEAST_OTHER_RATIO, language) else ""


def borne_out(judged: Judgement, group: Group, words: str, expect: Expect, language: Language) -> Judgement:
    """What is made of an utterance once another model has been heard.

    Args:
        judged: what was made of it so far.
        group: what the leading model would stand for or ask about.
        words: what the other model takes the sound for; "" for nothing.
        expect: what the step expects.
        language: in which the sentences are.
    """
    other, _ = meanings(plain(words, language), expect, language)
    if not words or same(other, expect) != same(group.meaning, expect):
        return judged
    return replace(judged, words=group.text, doubtful=isinstance(expect, ChoiceExpected), borne_out=True)


def _leads(choice: Group, evidence: Evidence, least_ratio: float, language: Language) -> bool:
    return (
        isinstance(choice.meaning, Answer)
        and choice.meaning.kind is Kind.CHOICE
        and choice.share >= LEAST_SHARE
        and choice.score - evidence.free.score >= least_ratio
        and choice.ending >= LEAST_ENDING
        and not denies(choice.text, evidence.free.text, language)
    )
