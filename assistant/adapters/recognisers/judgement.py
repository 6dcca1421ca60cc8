"""From hypotheses to one wording, or to none: a number that nobody said must not get through.

Hypotheses are grouped by what they mean for the step, and their probabilities added up: "125", "one twenty-five"
and "a hundred and twenty five" stand together. The best meaning is taken only where it clearly leads in figures
and in words, is clear by itself, and where the model, left free, would write nothing much likelier. Where it is
clear that a number was said and only not which, the number is doubtful: the learner is asked for its digits.
Otherwise the utterance is refused.
How clear it must be stands in `limits`.
"""

import math
from dataclasses import dataclass, replace

from assistant.adapters.recognisers.doubts import is_carried, is_contradicted, is_part, lacks_words
from assistant.adapters.recognisers.evidence import Evidence, Hypothesis
from assistant.adapters.recognisers.forms import Form
from assistant.adapters.recognisers.limits import GENERAL, Limits, LimitSet
from assistant.adapters.recognisers.positives import (
    alike,
    begins_otherwise,
    denies,
    is_denied,
    is_positive,
    is_turned_round,
    is_written_so,
)
from assistant.adapters.recognisers.ranking import LEAST_LOGARITHM, Group, is_number, meanings, plain, rank, same
from assistant.ports import Alternative
from assistant.spoken import Language
from assistant.spoken.expect import AnyExpected, ChoiceExpected, ConfirmExpected, Expect, NumberExpected, TextExpected
from assistant.spoken.meaning import Answer, Kind, NoMatch, Reason

LEAST_NAME_SHARE = 0.9
"""Least share of a name among names alone."""
LEAST_NAME_SCORE = -4.0
"""Least logarithm of a name's probability a token: a long name is less likely than a short one by its length."""
LEAST_NAME_RATIO = -15.0
"""Least logarithm of (probability of a name / probability of what the free decoder writes), among names alone."""
_UNHEARD_LOGARITHM = -30.0
"""Logarithm of the probability of whatever else might be said."""
_NO_SPEECH = 0.6
_LEAST_FREE_LOGARITHM = -1.0
_TELLING = frozenset(
    {
        Reason.WRONG_UNIT,
        Reason.OUT_OF_RANGE,
        Reason.TWO_NUMBERS,
        Reason.DIGITS_WANTED,
        Reason.NOT_AN_ANSWER_HERE,
        Reason.QUESTION,
        Reason.UNSURE,
    }
)
"""Reasons that help the learner more than "I did not understand"; `interpret` will refuse the words again."""


@dataclass(frozen=True)
class Judgement:
    """What is stood for.

    Attributes:
        words: the wording; empty for none.
        alternatives: all wordings with confidence, best first.
        doubtful: a number that has to be said digit by digit, for another one is possible; or a positive or a choice
            that leads without being clear.
        told_apart: a number that the sound itself tells from those that sound like it.
        borne_out: the words are stood for, or asked about, because another model heard them too.
    """

    words: str
    alternatives: tuple[Alternative, ...] = ()
    doubtful: bool = False
    told_apart: bool = False
    borne_out: bool = False


NOTHING = Judgement("")


def is_faint_command(likeliest: Hypothesis, expect: Expect, language: Language, limits: LimitSet = GENERAL) -> bool:
    """Whether a wording stands only where noise would hardly be taken for it (`Evidence.of_noise` is looked at).

    A number never does: it is judged otherwise, and the comparison takes time.
    """
    clear = limits.clear_command
    is_faint = likeliest.score < clear.least or likeliest.score < clear.clear * likeliest.tokens
    return is_faint and not is_number(meanings(plain(likeliest.text, language), expect, language)[0])


def judge(evidence: Evidence, expect: Expect, language: Language, limits: LimitSet = GENERAL) -> Judgement:
    """What to stand for, from what the decoder made of an utterance in this language.

    Args:
        evidence: what it made of it.
        expect: what the step expects.
        language: in which the sentences are.
        limits: of the model.
    """
    if isinstance(expect, TextExpected):
        return _free_words(evidence)
    ranked = rank(evidence.bounded, expect, language)
    if not ranked:
        return NOTHING
    alternatives = tuple(Alternative(group.text, group.share) for group in ranked)
    best = ranked[0]
    if best.is_number and evidence.voiced < limits.voiced:
        return Judgement("", alternatives)
    agrees = not limits.witness or _is_written_freely(best, evidence, expect, language)
    agrees = agrees and not (isinstance(expect, NumberExpected) and lacks_words(best.text, evidence.bursts))
    if is_positive(best.meaning, expect):
        return _positive(best, alternatives, evidence, expect, language, limits, agrees=agrees)
    digits_only = isinstance(expect, NumberExpected) and expect.digits_only
    if best.is_number:
        wanted = limits.digits if digits_only else limits.number
        stands = agrees and is_sound(ranked, wanted, evidence, expect, language, limits)
    else:
        tells = not isinstance(best.meaning, NoMatch) or best.meaning.reason in _TELLING
        stands = agrees and tells and _is_clear(best, evidence, limits)
        if isinstance(expect, ChoiceExpected) and isinstance(best.meaning, Answer):
            # A choice closes a step at once, as a yes does.
            agrees = agrees and not denies(best.text, evidence.free.text, language)
            stands = stands and agrees
    if stands:
        told_apart = best.is_number and limits.told_apart is not None and best.reaches(limits.told_apart, evidence)
        return Judgement(best.text, alternatives, told_apart=told_apart)
    freely = _written_freely(alternatives, evidence, expect, language, limits)
    if freely is not None:
        return freely
    if evidence.named:
        return _closest_name(evidence, expect, language)
    if best.is_number and not digits_only and _some_number(ranked).reaches(limits.doubtful, evidence):
        return Judgement(best.text, alternatives, doubtful=True)
    is_choice = isinstance(best.meaning, Answer) and best.meaning.kind is Kind.CHOICE
    if is_choice and limits.witness and agrees and best.reaches(limits.doubtful_positive, evidence):
        # Both witnesses write it, and are not sure enough for a step that would be closed: it is asked about.
        return Judgement(best.text, alternatives, doubtful=True)
    return Judgement("", alternatives)


def without_what_may_lack_words(judged: Judgement, evidence: Evidence, expect: Expect, language: Language) -> Judgement:
    """What would close a step stands only where no word can be lost: the "not" of "it is ... not ... done", say.

    Args:
        judged: what would be stood for.
        evidence: what the decoder made of the utterance.
        expect: what the step expects.
        language: in which the sentences are.
    """
    if evidence.is_whole or not judged.words:
        return judged
    meaning = language.interpret(judged.words, expect, heard=True)
    closes = is_positive(meaning, expect) or (isinstance(meaning, Answer) and meaning.kind is Kind.CHOICE)
    return Judgement("", judged.alternatives) if closes else judged


def is_sound(
    ranked: tuple[Group, ...], wanted: Limits, evidence: Evidence, expect: Expect, language: Language, limits: LimitSet
) -> bool:
    """Whether the number that leads is as clear as wanted and nothing speaks against it, but words that were lost.

    Args:
        ranked: the meanings, likeliest first.
        wanted: how clear it has to be.
        evidence: what the decoder made of the utterance.
        expect: what the step expects.
        language: in which the sentences are.
        limits: of the model.
    """
    best = ranked[0]
    return (
        evidence.voiced >= limits.voiced
        and (not limits.witness or _is_written_freely(best, evidence, expect, language))
        and best.reaches(wanted, evidence)
        and not is_carried(best.text, language)
        and not is_contradicted(best.meaning, evidence.free.text)
        and not _is_freely_another(best, evidence, expect, language)
        and math.fsum(group.share for group in ranked if is_part(best.meaning, group.meaning)) <= wanted.longer
    )


def _is_freely_another(number: Group, evidence: Evidence, expect: Expect, language: Language) -> bool:
    """Whether the model, left free, writes another number in words."""
    free = plain(evidence.free.text, language)
    if any(sign.isdigit() for sign in free):
        return False
    meaning = meanings(free, expect, language)[0]
    return is_number(meaning) and same(meaning, expect) != same(number.meaning, expect)


def _is_written_freely(best: Group, evidence: Evidence, expect: Expect, language: Language) -> bool:
    """Whether what the model writes without limits means the same: the second witness."""
    meaning, _ = meanings(plain(evidence.free.text, language), expect, language)
    return same(meaning, expect) == same(best.meaning, expect)


def _is_clear(command: Group, evidence: Evidence, limits: LimitSet) -> bool:
    kinds = (limits.clear_command, limits.command, limits.faint_command)
    return any(command.reaches(one, evidence) for one in kinds)


def _positive(
    best: Group,
    alternatives: tuple[Alternative, ...],
    evidence: Evidence,
    expect: Expect,
    language: Language,
    limits: LimitSet,
    *,
    agrees: bool,
) -> Judgement:
    """A positive, where it clearly beats what is no positive and nothing that is written freely denies it.

    At a line it may be doubtful, and the guide asks again in the line's own words; a read-back asks again by itself.
    """
    denied = is_denied(best.text, evidence.free.text, expect, language)
    of_a_line = isinstance(expect, AnyExpected) or (isinstance(expect, ConfirmExpected) and expect.asked is not None)
    leads = not of_a_line or (
        best.reaches(limits.positive, evidence)
        and (not alike(best.text, expect, language) or _beats_rivals(best.text, evidence, expect, language, limits))
        and (
            not is_turned_round(best.text, expect, language)
            or (best.reaches(limits.turned_round, evidence) and is_written_so(best.text, evidence.free.text, language))
        )
        and not begins_otherwise(best.text, evidence.free.text, language)
    )
    if leads and agrees and not denied and _is_clear(best, evidence, limits):
        return Judgement(best.text, alternatives)
    freely = _written_freely(alternatives, evidence, expect, language, limits)
    if freely is not None and not freely.doubtful:
        return freely
    asks_again = of_a_line and not isinstance(expect, AnyExpected)
    if asks_again and not denied and best.reaches(limits.doubtful_positive, evidence):
        return Judgement(best.text, alternatives, doubtful=True)
    return freely or Judgement("", alternatives)


def _written_freely(
    alternatives: tuple[Alternative, ...], evidence: Evidence, expect: Expect, language: Language, limits: LimitSet
) -> Judgement | None:
    """A positive in words of the learner's own, which stand in no list: what the model writes without limits.

    What else it would have written, and every sentence of the step that is no positive, stand against it. It is taken
    at once only where a model is known to be less certain of denials that it mishears.
    """
    if not (isinstance(expect, ConfirmExpected) and expect.asked is not None):
        return None
    ways = (evidence.free, *evidence.others)
    texts = [f"{plain(way.text, language)}{'?' if way.text.rstrip().endswith('?') else ''}" for way in ways]
    so = [is_positive(language.interpret(text, expect, heard=True), expect) for text in texts]
    if not so[0]:
        return None
    for_it = [way.score for way, is_so in zip(ways, so, strict=True) if is_so]
    against = [_UNHEARD_LOGARITHM, *(way.score for way, is_so in zip(ways, so, strict=True) if not is_so)]
    listed = [one for hypotheses in evidence.bounded.values() for one in hypotheses]
    against += [
        one.score
        for one in listed
        if not is_positive(language.interpret(plain(one.text, language), expect, heard=True), expect)
    ]
    lead, clear = _sum(for_it) - _sum(against), evidence.free.score / evidence.free_tokens
    if lead < limits.free.lead or clear < limits.free.clear:
        return None
    at_once = limits.free_at_once
    taken = (
        at_once is not None
        and lead >= at_once.lead
        and clear >= at_once.clear
        and (
            _beats_rivals(texts[0], evidence, expect, language, limits)
            or not (evidence.rivals or alike(texts[0], expect, language) or is_turned_round(texts[0], expect, language))
        )
    )
    return Judgement(texts[0], alternatives, doubtful=not taken)


def _beats_rivals(words: str, evidence: Evidence, expect: Expect, language: Language, limits: LimitSet) -> bool:
    """Whether a positive is written freely too, and far likelier than each wording that asks or denies the same."""
    at_once = limits.free_at_once
    return (
        at_once is not None
        and bool(evidence.rivals)
        and set(alike(words, expect, language)) <= evidence.rivals.keys()
        and is_written_so(words, evidence.free.text, language)
        and all(evidence.free.score - score >= at_once.rival for score in evidence.rivals.values())
    )


def _sum(scores: list[float]) -> float:
    """Logarithm of the sum of probabilities that are given by their logarithms."""
    return math.log(math.fsum(math.exp(max(score, LEAST_LOGARITHM)) for score in scores))


def _some_number(ranked: tuple[Group, ...]) -> Group:
    """All numbers together, as if they were one meaning."""
    numbers = [group for group in ranked if group.is_number]
    share = math.fsum(group.share for group in numbers)
    score = math.log(math.fsum(math.exp(max(group.score, LEAST_LOGARITHM)) for group in numbers))
    return replace(numbers[0], share=share, score=score)


def _closest_name(evidence: Evidence, expect: Expect, language: Language) -> Judgement:
    """The name of the list that fits best, where it leads clearly.

    The model has hardly ever heard a drug's name, and left free it writes everyday words in its place: "female
    tie-dine". So a name is chosen among names. What is chosen is read back by the guide before it counts.
    """
    ranked = rank({Form.WORDS: evidence.named}, expect, language)
    alternatives = tuple(Alternative(group.text, group.share) for group in ranked)
    if not ranked:
        return NOTHING
    best = ranked[0]
    tokens = next(one.tokens for one in evidence.named if plain(one.text, language) == best.text)
    stands = (
        isinstance(best.meaning, Answer)
        and best.share >= LEAST_NAME_SHARE
        and best.score / tokens >= LEAST_NAME_SCORE
        and best.score - evidence.free.score >= LEAST_NAME_RATIO
    )
    return Judgement(best.text if stands else "", alternatives)


def _free_words(evidence: Evidence) -> Judgement:
    """Free words, unless the model itself doubts that anybody spoke (both of Whisper's own limits)."""
    words = " ".join(evidence.free.text.split())
    mean = evidence.free.score / evidence.free_tokens
    alternatives = (Alternative(words, math.exp(mean)),)
    doubtful = evidence.no_speech > _NO_SPEECH and mean < _LEAST_FREE_LOGARITHM
    return Judgement("" if doubtful else words, alternatives)
