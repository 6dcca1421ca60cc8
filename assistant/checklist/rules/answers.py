"""Rules about what a learner answers: that the line asks for it, and that it can be heard and told apart."""

import re
from collections.abc import Iterator
from decimal import Decimal
from itertools import combinations

import jellyfish

from assistant.checklist.finding import Bench, Complaint, error, warning
from assistant.checklist.model import ChoiceAsked, DoneAsked, ObservationAsked, QuestionAsked, Step, WaitAsked
from assistant.dosing.twins import TWINS
from assistant.spoken import interpret, say_number, speech
from assistant.spoken.expect import ConfirmExpected
from assistant.spoken.meaning import Answer, Command, Kind
from assistant.text import quoted

ALIKE = 0.75
"""Share of equal letters from which two words of a choice are taken to sound alike (chosen by the table of
pairs in the tests, no source)."""
LONGEST_CHOICE_WORDS = 6
"""Words of a choice, which must be said as it is written (common practice, no source)."""
_OPPOSED = (("hyper", "hypo"), ("inter", "intra"), ("with", "without"))
"""Beginnings that make another word and are easily taken for each other."""
_ONE_SIDE = re.compile(
    r"\b(?:free of|free from|clear of|without|no|any|either|neither"
    r"|or (?:more|less|fewer|later|earlier|both|above|below))\b",
    re.IGNORECASE,
)
"""Questions with an or that yes answers all the same: "free of pain or swelling?", "two or more?"."""
_NEGATIONS = frozenset({"not", "no", "non", "never", "without"})
_TWIN_WORDS = {frozenset((say_number(Decimal(teen)), say_number(Decimal(ten)))) for teen, ten in TWINS.items()}


def line_asks(step: Step, _number: int, _bench: Bench) -> Iterator[Complaint]:
    """The line must ask for what the step expects, and for nothing that means a command."""
    asks = "?" in step.say
    ends_asking = step.say.endswith("?") and not re.search(r"\bask\b[^.?]*:", step.say, re.IGNORECASE)
    match step.expect:
        case QuestionAsked() if not asks:
            yield error(
                "answers-clash", "say", "a question is expected, and the line asks none.", "Write it as a question."
            )
        case QuestionAsked() if re.search(r"\bor\b[^.?]*\?", step.say) and not _ONE_SIDE.search(step.say):
            yield warning(
                "answers-clash",
                "say",
                "yes and no do not tell which side of the or is meant.",
                'Ask for one thing, or expect = { kind = "choice", ... }.',
            )
        case DoneAsked() | WaitAsked() if ends_asking:
            yield error(
                "answers-clash",
                "say",
                "the line asks a question, and done is expected: no would mean not yet.",
                'Write it as something to do, or expect = { kind = "question" }.',
            )
    command = re.search(rf"\bsay\s+[\"']?({'|'.join(map(re.escape, Command))})\b", step.say, re.IGNORECASE)
    if command:
        yield error(
            "answers-clash",
            "say",
            f"{quoted(command[1])} is a command that can be said at any time, so it is no answer.",
            "Ask for done, yes, no, a choice, a number or a name.",
        )
    told = re.search(r"\b(?:say|answer|the answer is) [\"']?(yes|no)\b", f"{step.say} {step.hint}", re.IGNORECASE)
    if isinstance(step.expect, QuestionAsked) and told:
        yield warning(
            "gives-answer",
            "hint" if re.search(told[0], step.hint) else "say",
            f"the learner is told to answer {told[1].lower()}.",
            "Ask, and let the learner find the answer.",
        )
    if isinstance(step.expect, ObservationAsked) and re.search(r"\bsay (?:done|yes|no)\b", step.say, re.IGNORECASE):
        yield error(
            "answers-clash",
            "say",
            "only the instructor answers here, with seen or not seen.",
            "Say what the instructor watches for.",
        )


def choices(step: Step, _number: int, bench: Bench) -> Iterator[Complaint]:
    """Every alternative can be heard, means nothing else, and sounds like no other one."""
    asked = step.expect
    if not isinstance(asked, ChoiceAsked):
        return
    said = [
        (choice, way, heard_as(bench.sheet.checklist.aloud(way)))
        for choice in asked.choices
        for way in (choice, *asked.phrases.get(choice, ()))
    ]
    for _choice, way, words in said:
        yield from can_be_heard(way, words, bench, "choices")
        meaning = interpret(words, ConfirmExpected()) if words else None
        if isinstance(meaning, Answer) and meaning.kind in (Kind.COMMAND, Kind.CONFIRM, Kind.DONE):
            kind = "a command" if meaning.kind is Kind.COMMAND else f"understood as {meaning.value}"
            yield error(
                "answers-clash",
                ("expect", "choices"),
                f"{quoted(way)} is {kind} at any step.",
                "Use other words for it.",
            )
    for choice in dict.fromkeys(name for name in asked.choices if asked.choices.count(name) > 1):
        yield error(
            "answers-clash", ("expect", "choices"), f"{quoted(choice)} stands among the choices twice.", "Take one out."
        )
    for (one, way, words), (other, other_way, other_words) in combinations(said, 2):
        if one == other or not words or not other_words:
            continue
        if words == other_words:
            yield error(
                "answers-clash",
                ("expect", "choices"),
                f"{quoted(way)} stands for two choices.",
                "Use other words for one of them.",
            )
        elif sound_alike(words, other_words):
            yield warning(
                "sounds-alike",
                ("expect", "choices"),
                f"{quoted(way)} and {quoted(other_way)} sound alike.",
                "Use words that differ from their first sound on.",
            )


def can_be_heard(way: str, words: str, bench: Bench, field: str) -> Iterator[Complaint]:
    """Whether a recogniser can write an answer: in words, few and long enough, that it knows."""
    fault = mend = ""
    if not words:
        fault, mend = "holds nothing that can be said", "Write it in words."
    elif re.search(r"[^a-z' ]", words):
        fault, mend = "holds a sign that no recogniser writes", "Write it in words."
    elif any(not re.search(r"[aeiouy]", word) for word in words.split()):
        fault, mend = "holds a short form that is no word", "Write it in words."
    if fault:
        yield error("hearable", ("expect", field), f"{quoted(way)} {fault}.", mend)
    elif len(words) == 1:
        yield warning(
            "hearable",
            ("expect", field),
            f"{quoted(way)} is a letter, and letters are not heard apart.",
            "Use a word.",
        )
    elif len(words.split()) > LONGEST_CHOICE_WORDS:
        yield warning(
            "hearable",
            ("expect", field),
            f"{quoted(way)} is too long to be repeated word for word.",
            "Say it shorter.",
        )
    for name, known in bench.known.vocabularies.items():
        unheard = [word for word in words.split() if word not in known]
        if unheard:
            yield warning(
                "hearable",
                ("expect", field),
                f"the recogniser {name} has no word {quoted(unheard[0])}.",
                "Use another word, or add a phrase that it can hear.",
            )


def heard_as(text: str) -> str:
    """A text as a recogniser would write it: small letters, no stops."""
    return " ".join(re.sub(r"[.,;:!?\"()\u201c\u201d-]", " ", speech(text).lower().replace("\u2019", "'")).split())


def sound_alike(one: str, other: str) -> bool:
    """Whether two answers could be taken for each other by ear.

    Words that both have tell nothing. What is left sounds alike where it differs in a "not" only, where it is
    a teen and its ten, where its consonants sound the same (Metaphone, Lawrence Philips 1990), or where most
    letters are the same (Levenshtein distance).
    """
    left, right = one.split(), other.split()
    rest = [word for word in left if word not in right], [word for word in right if word not in left]
    if not rest[0] or not rest[1]:
        more = rest[0] or rest[1]
        return not more or bool(_NEGATIONS & set(more))
    first, second = " ".join(rest[0]), " ".join(rest[1])
    if frozenset((first, second)) in _TWIN_WORDS or any(
        longer == prefix + shorter
        for longer, shorter in ((first, second), (second, first))
        for prefix in ("in", "un", "im", "non", "dis")
    ):
        return True
    if any({first, second} == {a + end, b + end} for a, b in _OPPOSED for end in _ends(first, a, b)):
        return True
    codes = jellyfish.metaphone(first), jellyfish.metaphone(second)
    if codes[0] == codes[1] and len(codes[0]) > 1:
        return True
    if len(first) == len(second) > 2 and first[1:] == second[1:]:  # they rhyme
        return True
    longest = max(len(first), len(second))
    return longest >= 4 and 1 - jellyfish.levenshtein_distance(first, second) / longest >= ALIKE


def _ends(word: str, *beginnings: str) -> list[str]:
    """What stands behind each of the beginnings that a word has."""
    return [word.removeprefix(beginning) for beginning in beginnings if word.startswith(beginning)]
