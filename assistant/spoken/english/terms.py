"""The further terms of an instruction, in English: how a thing is to be left, what is to be said."""

import re
from dataclasses import dataclass

from assistant.spoken.english.deeds import DETERMINERS, OPPOSITE, PREPOSITIONS, Deed, cut
from assistant.spoken.english.verbs import VERBS
from assistant.spoken.statement import Tokens


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


def answered_of(line: str) -> frozenset[str]:
    """What a line wants to have come about: "say done when they have answered" is "they have answered"."""
    found = re.search(r"\bsay done when ([a-z ]+)", line.lower())
    if found is None:
        return frozenset()
    words = ["i" if word == "you" else word for word in found[1].split()]
    said = {" ".join(words)}
    if words == ["i", "know"]:
        found_out = (
            "found out",
            "i found out",
            "i have found out",
            "i know now",
            "got the answer",
            "i have the answer",
        )
        said |= {
            *found_out,
            "got my answer",
            "got an answer",
            "i have got the answer",
            "i have my answer",
            "now i know",
        }
        said |= {f"{they} told me" for they in ("they", "she", "he", "the nurse", "the doctor", "i asked and they")}
    if words[1:2] == ["have"]:
        rest = " ".join(words[2:])
        said |= {rest, f"{words[0]} {rest}"}
        if rest == "answered":
            said |= _HAVE_ANSWERED
        if words[2:3] == ["a"]:
            thing = " ".join(words[3:])
            said |= {f"{have}{thing}" for have in ("got a ", "got the ", "have the ", "got ")}
            arrived = (
                "is here",
                "here",
                "is in",
                "in",
                "is there",
                "is up",
                "is written",
                "is ready",
                "is on the chart",
            )
            came = (
                "came in",
                "came through",
                "came",
                "arrived",
                "has come",
                "has come in",
                "has come through",
                "has arrived",
            )
            came += ("come in", "come through", "is come in", "is come through", "landed", "was sent", "is signed")
            said |= {
                f"{name} {now}{there}"
                for name in (thing, f"{thing}s")
                for there in (*arrived, *came)
                for now in ("", "just ", "has just ", "is just ")
            }
            said |= {
                f"{gave} {me}{a}{thing}"
                for gave in ("gave", "given", "has given", "wrote", "written", "has written", "sent", "put in")
                for me in ("", "me ", "us ")
                for a in ("a ", "the ", "")
            }
            said |= {"have it", "got it", "have one", "got one"}
    return frozenset(said)


_WHO_ANSWERS = (
    "they",
    "she",
    "he",
    "pharmacist",
    "prescriber",
    "doctor",
    "pharmacy",
    "physician",
    "the pharmacist",
    "the doctor",
)
_HAVE_ANSWERED = frozenset(
    f"{who} {answered}"
    for who in (*_WHO_ANSWERS, *(f"{one}s" for one in _WHO_ANSWERS[3:7]))
    for answered in (
        *(
            "answered",
            "has answered",
            "have answered",
            "replied",
            "has replied",
            "have replied",
            "told me",
            "has told me",
        ),
        *(
            "got back to me",
            "came back to me",
            "called back",
            "called me back",
            "rang back",
            "rang me back",
            "phoned back",
        ),
        *(
            "phoned me back",
            "gave me the answer",
            "gave me an answer",
            "gave the answer",
            "gave an answer",
            "have told me",
        ),
        *("has got back to me", "have got back to me", "has called back", "has rung back", "is answered", "is replied"),
    )
) | {
    *("got my answer", "got an answer", "got the answer", "have an answer", "have the answer", "have my answer"),
    *("got a reply", "have a reply", "got their answer", "got a response", "have their answer", "had my answer"),
    *("got back to me", "called me back", "rang me back", "phoned me back", "came back to me", "got word back"),
}
"""How it is said that who was called has answered."""


def meanwhile_of(line: str) -> tuple[Tokens, ...]:
    """How a learner repeats what goes on meanwhile: "close the clamp while you push" is "while pushing"."""
    text = line.lower()
    by_ing = {verb.ing: verb for verb in VERBS.values()}
    verbs = [VERBS[word] for word in re.findall(r"\bwhile you (\w+)", text) if word in VERBS]
    verbs += [by_ing[word] for word in re.findall(r"\bkeep (\w+ing)\b", text) if word in by_ing]
    said = [
        words
        for verb in verbs
        for words in (
            *(f"while {verb.ing}", f"while i was {verb.ing}", f"while i {verb.base}", f"while i {verb.past[0]}"),
            *(f"{lead} {verb.ing}" for lead in ("while still", "while i was still", "kept", "i kept", "as i was")),
            *(
                f"{lead} {verb.ing}"
                for lead in ("still", "i am still", "i was", "i was still", "never stopped", "did not stop")
            ),
        )
    ]
    said += [words for found in _WHEN.finditer(text) for words in _once(*found.groups())]
    if "as slowly as" in text or "at the same" in text:
        said += [f"{at}same {speed}{as_}" for at in ("", "at the ", "the ") for speed in _SPEEDS for as_ in _AS_BEFORE]
        said += ["same as before", "as slow as before", "just like before", "the same as before"]
        said += [f"{just} {slow}" for just in ("just as", "equally", "as") for slow in ("slow", "slowly")]
        said += [
            f"{at}same {slow} {speed}{as_}"
            for at in ("", "at the ", "the ")
            for slow in ("slow", "gentle", "steady")
            for speed in _SPEEDS
            for as_ in _AS_BEFORE
        ]
        said += [
            f"{like} {what}"
            for like in (
                "like",
                "just like",
                "same as",
                "the same as",
                "exactly like",
                "just as",
                "as slow as",
                "as slowly as",
            )
            for what in (
                "before",
                "the drug",
                "with the drug",
                "i gave the drug",
                "the drug was",
                "i did the drug",
                "the drug itself",
                "last time",
            )
        ]
    emptied = re.search(r"\bwhen the (\w+) should be (\w+)", text)
    if emptied:
        said += [
            f"for when {it} {ends}"
            for it in ("it", f"the {emptied[1]}")
            for ends in (
                "runs out",
                "is empty",
                "finishes",
                "ends",
                "is done",
                "is through",
                "should be empty",
                "is due out",
            )
        ]
    if "half a millilitre left" in text:
        said += [
            f"{at}{half}{mil} {left}"
            for at in ("", "at ", "with ")
            for half in ("half", "half a", "point five", "0.5", "5", "point 5")
            for mil in ("", " mil", " ml", " millilitre", " milliliter", " of a mil")
            for left in (
                "",
                "left",
                "to go",
                "remaining",
                "still in",
                "still in it",
                "mark",
                "still in there",
                "in there",
                "still in the syringe",
                "in the syringe",
            )
        ]
        said += [f"at {the}half{mark}" for the in ("", "the ") for mark in ("", " mark", " mil", " ml", " mil mark")]
        said += ["mid push", "never stopped", "kept the push going", "kept going", "all through", "while still going"]
    if re.search(r"\bthe time\b", text):
        said += [
            f"{when} i {past}{it}"
            for when in ("when", "what time")
            for past in _ENDED
            for it in ("", " it", " the pump")
        ]
    return tuple(tuple(words.split()) for words in said)


_WHEN = re.compile(r"\b(?:when|with) the ([a-z' ]+?) (is|has|left)\b ?([a-z ]*),")
_SPEEDS = ("speed", "rate", "pace")
_AS_BEFORE = ("", " as the drug", " as i gave the drug", " as before")
_ENDED = ("paused", "stopped", "started")


def _once(thing: str, verb: str, state: str) -> tuple[str, ...]:
    """How it is said that the time for a deed had come: "when the bag is empty" is "the bag was empty"."""
    named = " ".join(cut(thing))
    named = named if verb != "is" else named
    tense = {
        "is": ("is", "was", "ran", "went", "got", "has run", "had run", "had gone", "is all", "is now"),
        "has": ("has", "had", "is"),
    }.get(verb, ())
    states = (state, "dry", "out", "through") if state == "empty" else (state,)
    subjects = (named, f"the {named}", "it")
    return tuple(f"{it} {be} {end}" for it in subjects for be in tense for end in states) if state else ()


_KEPT_BACK = tuple(
    tuple(said.split())
    for said in (
        *("kept my number to myself", "kept it to myself", "keeping my number to myself", "keeping it to myself"),
        *(
            f"{no} {verb}{them} my number"
            for no, verbs in (
                ("did not", ("tell", "say", "mention", "give", "share", "show")),
                ("have not", ("told", "said")),
            )
            for verb in verbs
            for them in ("", " her", " him", " them")
        ),
        *(
            f"{no} {verb}{them} {what}"
            for no, verbs in (
                ("did not", ("tell", "say", "mention", "give", "share", "show")),
                ("have not", ("told", "said", "mentioned", "given", "shown", "shared")),
            )
            for verb in verbs
            for them in ("", " her", " him", " them")
            for what in (
                "the number",
                "what i got",
                "what i worked out",
                "my result",
                "the result",
                "my answer",
                "my figure",
                "anything",
                "a number",
            )
        ),
        *(
            f"{kept} {what}{end}"
            for kept in ("kept", "keeping", "i am keeping")
            for what in ("quiet about my number", "the number", "my number", "my answer", "my result")
            for end in ("", " to myself", " quiet", " back", " secret")
        ),
        *(f"{no} my number" for no in ("without saying", "without telling", "nothing about", "said nothing about")),
    )
)
"""How it is said that a number was kept back."""


def untouched_of(line: str) -> tuple[Tokens, ...]:
    """How a learner repeats what was to be left alone: "press nothing yet" is "haven't pressed anything"."""
    named = re.findall(r"\b(\w+) nothing\b|\bbefore you (\w+) anything", line.lower())
    verbs = [VERBS[word] for found in named for word in found if word in VERBS]
    kept = _KEPT_BACK if re.search(r"\bnothing of your number\b", line.lower()) else ()
    return (
        kept
        + tuple(
            tuple(said.split())
            for verb in verbs
            for past in verb.past
            for said in (f"have not {past} anything", f"not {past} anything", f"{past} nothing", f"nothing {past}")
        )
        + tuple(
            said
            for base, ing in (
                *((verb.base, verb.ing) for verb in verbs),
                *((word, f"{word}ing") for word in re.findall(r"\bso that nothing (\w+)s\b", line.lower())),
            )
            for said in (
                ("did", "not", base, "anything"),
                ("nothing", "is", ing),
                ("nothing", f"{base}s"),
                ("nothings", ing),
            )
        )
    )


def unsaid_of(line: str) -> frozenset[str]:
    """What must not have been done, or named: "press nothing" is "pressed", "say nothing of your number" "number"."""
    named = re.findall(r"\b\w+ nothing of (?:your|the) (\w+)", line.lower())
    left = [VERBS[word] for word in re.findall(r"\b(\w+) nothing\b(?! of)", line.lower()) if word in VERBS]
    left += [VERBS["say"], VERBS["tell"]] if named else []
    left += [VERBS[word] for word in re.findall(r"\bbefore you (\w+) anything", line.lower()) if word in VERBS]
    return frozenset((*named, *(past for verb in left for past in verb.past)))


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
