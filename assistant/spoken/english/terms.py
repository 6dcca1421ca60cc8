"""The further terms of an instruction, in English: how a thing is to be left, what is to be said."""

import re
from dataclasses import dataclass

from assistant.spoken.english.deeds import DETERMINERS, OPPOSITE, PREPOSITIONS, Deed, cut
from assistant.spoken.english.verbs import VERBS


@dataclass(frozen=True)
class Kept:
    """How something is to be left: "see that the cap stays on the hub". Saying so is not needed; denying it counts.

    Attributes:
        so, not_so: what says that it is so, and that it is not: "cap is on", "cap came off".
    """

    so: frozenset[str]
    not_so: frozenset[str]


_NOTHING_WRONG = frozenset(
    f"{nothing}{with_it}{seen}"
    for nothing in (
        *("nothing wrong", "nothing is wrong", "nothing has gone wrong", "nothing went wrong", "nothing gone wrong"),
        *(
            "no problems",
            "no problem",
            "no issues",
            "no trouble",
            "no troubles",
            "it is fine",
            "it is all fine",
            "all fine",
        ),
        *("nothing the matter", "nothing amiss", "it is okay", "no faults", "no complaints"),
    )
    for with_it in ("", " with it", " with this line", " with the line", " with this one")
    for seen in ("", " that i can see", " that i can find", " that i see", " at all", " so far as i can see")
) | {"it is fine no problems", "it is fine nothing wrong", "all fine no problems"}
"""How it is said that nothing has gone wrong."""


def also_said_of(line: str) -> frozenset[str]:
    """What a line offers to be said instead: "or say that none are known", "unless it is running already"."""
    said = {found[1] for found in re.finditer(r"\bor say that ([a-z ]+)", line.lower())}
    said |= {words.replace(" are ", " ") for words in said}
    if "none" in " ".join(said) and "allergies" in line.lower():
        said |= {f"{no}{known} allergies" for no in ("no", "there are no", "has no") for known in ("", " known")}
    if "if anything" in line.lower():
        said |= _NOTHING_WRONG
    for found in re.finditer(r"\bunless it is (\w+) already", line.lower()):
        said |= {f"{be} already {found[1]}" for be in ("is", "was")} | {
            f"{be} {found[1]} already" for be in ("is", "was")
        }
    return frozenset(said)


def kept_of(line: str) -> Kept | None:
    """How a line wants something to be left; None where it says nothing of the kind."""
    forbidden = re.search(r"\bdo not (\w+) it\b", line.lower())
    verb = VERBS.get(forbidden[1]) if forbidden else None
    if verb is not None:
        so = {f"not {verb.ing}{it}" for it in ("", " it", " it yet", " anything")}
        so |= {
            f"{left} it {alone}"
            for left in ("left", "leaving", "i am leaving", "kept", "keeping")
            for alone in ("as it is", "as it was", "alone", "be", "where it is", *verb.undone)
        }
        so |= {
            f"{no} {doing}{it}"
            for no, doing in (("do not", verb.base), ("am not", verb.ing), ("will not", verb.base), ("not", verb.ing))
            for it in ("", " it", " it yet", " anything", " yet")
        }
        so |= {
            f"{left} it {like}"
            for left in ("left", "leave", "i leave", "leaving")
            for like in ("like this", "like that", "so")
        }
        so |= {
            f"{no} {touched}{it}"
            for no in ("have not", "not", "did not", "i am not")
            for touched in ("touched", "touching", "touch")
            for it in ("", " it", " it yet", " anything", " that")
        }
        so |= {
            f"{no} {past}{it}"
            for no in ("have not", "not")
            for past in verb.past
            for it in ("", " it", " anything", " it yet")
        }
        so |= {f"{still}{state}" for still in ("still ", "is still ") for state in verb.undone}
        not_so = {f"{past} it" for past in verb.past}
        return Kept(frozenset(so | {f"did not {verb.base} it"}), frozenset(not_so))
    found = re.search(r"\bsee that (?:the |its )?(\w+) stays (\w+)", line.lower())
    if found is None:
        return None
    thing, state = found.groups()
    away = OPPOSITE.get(state, "")
    be = ("", "is ", "is still ", "still ")
    things = (thing, f"{thing}s")  # "cap's on" comes as "caps on"
    states = (state, "in place", "there", "in its place")
    so = {f"{name} {lead}{there}" for name in things for lead in be for there in states}
    so |= {f"{thing} stayed {there}" for there in (*states, "put")} | {f"kept the {thing} {state}", "in place"}
    gone = (away, "gone", "missing", "loose") if away else ("gone", "missing", "loose")
    not_so = {f"{name} {lead}{there}" for name in things for lead in be for there in gone}
    came = (f"came {away}", "fell off", "came away")
    not_so |= {f"{thing} {went}{too}" for went in came for too in ("", " too", " with it")}
    return Kept(frozenset(so), frozenset(not_so))


def means_of(line: str) -> frozenset[str]:
    """What was done with the means that a line names: "with gauze and tape" is "taped"; it says nothing by itself."""
    found = re.search(r"\bwith ([a-z ]+?) and ([a-z]+)\b", line.lower())
    return (
        frozenset(past for name in found.groups() if name in VERBS for past in VERBS[name].past)
        if found
        else frozenset()
    )


_TOLD = frozenset({"tell", "say", "explain", "name"})
_NO_MATTER = frozenset(
    {"that", "what", "to", "how", "much", "she", "it", "you", "with", "this", "has", "will", "be", "for", "since"}
)


def told_of(line: str, deeds: tuple[Deed, ...]) -> tuple[frozenset[str], ...]:
    """What a line wants to be said, each by its words: "say what runs, since when, and why"."""
    if not deeds or deeds[0].verb.base not in _TOLD or "nothing" in line:
        return ()
    told = re.split(r"[.:]", line.lower())[0]
    own = {word for thing in deeds[0].things if deeds[0].verb.base == "tell" for word in thing.split()}
    own |= {deeds[0].verb.base} | _NO_MATTER
    said = [part for at, part in enumerate(re.split(r", and |,| and ", told)) if not at or not _begins(part)]
    parts = [frozenset(cut(part)) - own - DETERMINERS - PREPOSITIONS.keys() for part in said]
    named = tuple(part | {word for name in part for word in _also_told(name)} for part in parts if part)
    return named if len(named) > 1 else ()


def _begins(part: str) -> bool:
    """Whether something else to do begins there: "and put the bell within reach"."""
    return next(iter(part.split()), "") in VERBS


def _also_told(word: str) -> tuple[str, ...]:
    if word == "when":
        return ("time", "hour", "oclock", "at")
    return (VERBS[word[:-1]].ing,) if word[-1:] == "s" and word[:-1] in VERBS else ()
