"""A beam search that writes nothing but sentences of a step."""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from assistant.adapters.recognisers.decoder import Listening
from assistant.adapters.recognisers.features import Floats
from assistant.adapters.recognisers.forms import Form
from assistant.adapters.recognisers.sentences import START, Places, Sentences, Tokens
from assistant.spoken.expect import Expect

BEAM = 6
"""Sentences that are followed side by side, for each form of numbers."""
MOST_TOKENS = 32
"""Tokens of an answer; a long number with its unit has some twenty."""
HOPELESS = 6.0
"""How far (logarithm) behind the best finished sentence one is given up: its share could not matter."""
FAR_BEHIND = 9.0
"""How far (logarithm) behind the best sentence under way one is given up."""


@dataclass(frozen=True)
class _Branch:
    """A sentence under way, or finished.

    Attributes:
        tokens: what is written.
        score: logarithm of its probability, without any limits on what may be written.
        open_score: the same without the sign that closes it.
        places: where in which sentences it stands.
        row: its row in the decoder's cache.
    """

    tokens: tuple[int, ...]
    score: float
    open_score: float
    places: Places
    row: int


@dataclass(frozen=True)
class Written:
    """A finished sentence.

    Attributes:
        tokens: what is written.
        score: logarithm of its probability among all that the model could write.
        ending: logarithm of the probability that nothing follows its words.
    """

    tokens: tuple[int, ...]
    score: float
    ending: float


def search(
    listening: Listening,
    prompt: Sequence[int],
    sentences: Sentences,
    expect: Expect,
    forms: Sequence[Form],
    is_given_up: Callable[[], bool] = lambda: False,
    beam: int = BEAM,
    hopeless: float = HOPELESS,
) -> dict[Form, tuple[Written, ...]]:
    """The likeliest sentences of each form, best first; none where nothing fits.

    Args:
        listening: the utterance.
        prompt: tokens that the model begins with.
        sentences: what may be written.
        expect: what the step expects.
        forms: how numbers may be written.
        is_given_up: asked at each token; once it is so, the search ends with what it has.
        beam: sentences followed side by side for each form.
        hopeless: how far (logarithm) behind the best finished sentence one is given up.
    """
    finished: dict[Form, list[Written]] = {form: [] for form in forms}
    live: dict[Form, list[_Branch]] = {form: [_Branch((), 0.0, 0.0, START, 0)] for form in forms}
    scores, cache = listening.start(prompt)
    for _ in range(MOST_TOKENS):
        for form in forms:
            live[form] = _grow(live[form], scores, sentences, expect, form, finished[form], beam, hopeless)
        # Rows that both forms share are worked out once.
        wanted = {(branch.row, branch.tokens[-1]): 0 for form in forms for branch in live[form]}
        if not wanted or is_given_up():
            break
        for row, step in enumerate(wanted):
            wanted[step] = row
        scores, cache = listening.step([token for _, token in wanted], [row for row, _ in wanted], cache)
        for form in forms:
            live[form] = [replace(branch, row=wanted[branch.row, branch.tokens[-1]]) for branch in live[form]]
    return {form: tuple(sorted(found, key=lambda one: -one.score)) for form, found in finished.items()}


def log_probabilities(
    listening: Listening, prompt: Sequence[int], texts: Sequence[Sequence[int]], least: float = -math.inf
) -> list[float]:
    """Of each text the logarithm of the probability that its tokens, the end among them, are written and no others.

    Args:
        listening: the utterance.
        prompt: tokens that the model begins with.
        texts: they are followed side by side.
        least: one that falls below is given up, with what its first tokens have: the whole has less.
    """
    scores, cache = listening.start(prompt)
    totals = [float(scores[0][tokens[0]]) for tokens in texts]
    rows = dict.fromkeys(range(len(texts)), 0)
    for place in range(1, max(map(len, texts), default=0)):
        rows = {text: row for text, row in rows.items() if len(texts[text]) > place and totals[text] >= least}
        if not rows:
            break
        scores, cache = listening.step([texts[text][place - 1] for text in rows], list(rows.values()), cache)
        rows = {text: row for row, text in enumerate(rows)}
        for text, row in rows.items():
            totals[text] += float(scores[row][texts[text][place]])
    return totals


def _grow(
    branches: list[_Branch],
    scores: Floats,
    sentences: Sentences,
    expect: Expect,
    form: Form,
    finished: list[Written],
    beam: int,
    hopeless: float,
) -> list[_Branch]:
    """The best branches, one token longer; what ends is added to `finished`."""
    grown = []
    for branch in branches:
        allowed = sentences.allowed(branch.places, expect, form)
        totals = branch.score + scores[branch.row][allowed]
        grown += [(float(total), int(token), branch) for total, token in _best(totals, allowed, beam + 1)]
        ends = np.flatnonzero(allowed == sentences.end)
        finished += [
            Written(branch.tokens, float(totals[place]), float(totals[place]) - branch.open_score) for place in ends
        ]
    bound = max(_bound(finished, beam, hopeless), max((one[0] for one in grown), default=0.0) - FAR_BEHIND)
    grown = [one for one in grown if one[1] != sentences.end and one[0] > bound]
    grown.sort(key=lambda one: -one[0])
    return [
        _Branch(
            (*branch.tokens, token),
            score,
            branch.open_score if token in sentences.closing else score,
            sentences.advance(branch.places, token, expect, form),
            branch.row,
        )
        for score, token, branch in grown[:beam]
    ]


def _best(totals: Floats, tokens: Tokens, count: int) -> Iterator[tuple[np.float32, np.int64]]:
    chosen = np.argpartition(-totals, count)[:count] if len(totals) > count else np.arange(len(totals))
    return zip(totals[chosen], tokens[chosen], strict=True)


def _bound(finished: list[Written], beam: int, hopeless: float) -> float:
    """The score under which a branch is given up."""
    if not finished:
        return -np.inf
    best = sorted((one.score for one in finished), reverse=True)
    least = best[0] - hopeless
    return max(least, best[beam - 1]) if len(best) >= beam else least
