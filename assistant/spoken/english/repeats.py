"""How a learner repeats what a line says beside its deed, in English: meanwhile, as slowly, untouched, unsaid."""

import re

from assistant.spoken.english.deeds import cut
from assistant.spoken.english.verbs import VERBS
from assistant.spoken.statement import Tokens


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
            for half in ("half", "half a", "point five", "0 5", "point 5")
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
