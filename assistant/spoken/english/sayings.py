"""What is likely said at a line, in English, with what each sentence means: for recognisers."""

from collections.abc import Callable, Iterator
from functools import lru_cache

from assistant.spoken.english.deeds import Deed, cut
from assistant.spoken.english.lines import Line, read_line
from assistant.spoken.english.questions import Point
from assistant.spoken.statement import Asked, Sense, Tokens, Want

_MOST_GOOD, _MOST_OTHER = 60, 260
_PLAIN = ("i did it", "that is done", "it is all done")
_DENIALS = (
    "i did not",
    "i have not",
    "i did not do it",
    "i have not done it",
    "it is not done",
    "not done",
    "not yet",
    "not complete",
    "not quite",
    "not finished",
    "it is not",
)
_ASKED = (
    *("is it done", "am i done", "did i do it", "do i do it now", "is that right", "how far do i go", "is it finished"),
    *("is it complete", "is that done", "is this done", "are we done", "are you done", "is it all done"),
)
_UNSURE = (
    "i think so",
    "i think i did",
    "not sure",
    "i am not sure",
    "almost",
    "almost done",
    "nearly done",
    "half done",
    "about done",
    "just about done",
    "i am trying",
    "i am about to",
    "should be done",
    "it should be",
    "maybe",
    "probably",
)


@lru_cache(maxsize=512)
def sayings_of(asked: Asked, sense: Callable[[Tokens, Asked], Sense | None]) -> tuple[tuple[str, Sense], ...]:
    """Sentences that are likely here, each with what it says.

    Args:
        asked: what was asked.
        sense: what words say; a sentence of which it says nothing, or the opposite of what is meant, is left out.
    """
    line = read_line(asked)
    good = (*asked.good, *_good(line))
    bad = (*asked.bad, *_bad(line))
    near = (*_near_author(asked.good), *_near(line))
    found: dict[str, Sense] = {}
    for meant, most, sentences in (
        ({Sense.GOOD}, _MOST_GOOD, good),
        ({Sense.BAD}, _MOST_GOOD, bad),
        (set(Sense) - {Sense.GOOD}, _MOST_OTHER, near),
    ):
        count = 0
        for sentence in sentences:
            words = cut(sentence)
            said = sense(words, asked)
            text = " ".join(words)
            # What is near and says nothing is no answer either, and must be heard as what it is.
            said = Sense.UNSURE if said is None and sentences is near else said
            if said in meant and text not in found:
                found[text] = said
                count += 1
            if count == most:
                break
    return tuple(found.items())


def opposed_to(saying: str) -> tuple[str, ...]:
    """What is easily misheard as one of several choices: its negations, its questions, its doubts."""
    leads = ("not", "it is not", "is it", "almost", "i think it is", "i am not sure it is", "not quite", "should it be")
    return tuple(f"{lead} {saying}" for lead in leads)


def words_of(asked: Asked) -> tuple[str, str]:
    """The two short answers that are offered, good and bad; empty where nothing sensible can be derived."""
    line = read_line(asked)
    good, bad = _short(line)
    good, bad = (*asked.good, good)[0], (*asked.bad, bad)[0]
    return (good, bad) if good and bad else ("", "")


def _short(line: Line) -> tuple[str, str]:
    if len(line.deeds) == 1:
        (deed,) = line.deeds
        opposite = next((state for state in deed.verb.undone if state in deed.not_so), "")
        first = deed.verb.past[0]
        return (first, f"still {opposite}" if opposite else "not yet")
    if line.deeds:
        return "all of it is done", "not all of it"
    if len(line.points) != 1:
        return "", ""
    (point,) = line.points
    if point.finding:
        name = point.asked
        return (f"no {name}", f"some {name}") if line.absent else (f"some {name}", f"no {name}")
    if point.asked in ("match", "agree"):
        return f"they {point.asked}", "they do not"
    if line.asks in ("is", "are") and point.not_so:
        return point.asked, f"not {point.asked}"
    return "", ""


def _good(line: Line) -> Iterator[str]:
    for deed in line.deeds:
        yield from _done(deed)
    for point in line.points:
        yield from _so(point, line)
    if line.want is Want.START:
        yield from ("start", "starting now", "start now", "i am starting", "i am starting now", "started", "go", "now")
        yield from (f"{deed.verb.ing}{rest}" for deed in line.deeds for rest in (" now", " it now"))
    elif line.want is Want.DONE:
        yield from _PLAIN
        yield from ("all done", "finished", "done")
    else:
        yield from ("all good", "everything is good", "everything is fine", "they do", "it does", "i did", "yes i did")
        if len(line.points) > 1:
            firsts = [next(_so(point, line), "") for point in line.points]
            yield from (" ".join(firsts), " and ".join(firsts), " ".join(f"it is {first}" for first in firsts))
            yield f"yes {' '.join(firsts)}"


def _done(deed: Deed) -> Iterator[str]:
    past = deed.verb.past[0]
    things = deed.things[:2] or ("",)
    states = [state for state in (past, *deed.verb.states, *sorted(deed.so)) if state in deed.so]
    for state in dict.fromkeys(states):
        yield state
        yield f"it is {state}"
        for thing in things:
            if thing:
                yield f"the {thing} {_is(thing)} {state}"
                yield f"{thing} {state}"
    yield f"{past} it"
    yield f"i {past} it"
    yield f"i have {past} it"
    for thing in things:
        if thing:
            yield f"i have {past} the {thing}"
            yield f"i {past} the {thing}"


def _is(thing: str) -> str:
    return "are" if thing.endswith("s") else "is"


def _so(point: Point, line: Line) -> Iterator[str]:
    if point.finding and line.absent:
        for noun in sorted(point.flaws):
            yield from (f"no {noun}", f"there is no {noun}", f"i see no {noun}", f"i do not see any {noun}")
        return
    if point.finding:
        for noun in sorted(point.there):
            yield from (f"some {noun}", f"there is {noun}", f"i see {noun}", f"there is some {noun}")
    for state in (point.asked, *sorted(point.so)):
        yield state
        yield f"it is {state}"
        yield f"they are {state}"
        yield f"they {state}"
        yield f"it {state}"
        yield f"yes it is {state}"
        for thing in line.things[:2]:
            yield f"the {thing} {_is(thing)} {state}"


def _bad(line: Line) -> Iterator[str]:
    for deed in line.deeds:
        past, base = deed.verb.past[0], deed.verb.base
        for state in sorted(deed.not_so):
            yield from (f"still {state}", f"it is still {state}", f"it is {state}")
            yield from (f"the {thing} is still {state}" for thing in deed.things[:1])
        yield from (f"it is not {past}", f"i have not {past} it", f"i did not {base} it", f"not {past}", "not yet")
    for point in line.points:
        if point.finding:
            for noun in sorted(point.flaws if line.absent else point.there):
                lead = (
                    ("there is", "there is some", "i see", "some") if line.absent else ("no", "there is no", "i see no")
                )
                yield from (f"{words} {noun}" for words in lead)
        for state in sorted(point.not_so):
            yield from (state, f"it is {state}", f"they are {state}", f"no it is {state}")
        yield from (f"it is not {point.asked}", f"not {point.asked}", f"they are not {point.asked}")
    if line.want is Want.ANSWER:
        yield from ("it is not", "they are not", "they do not", "it does not", "no it is not", "i did not", "not yet")


def _near(line: Line) -> Iterator[str]:
    """What is easily misheard as a good one: its negations, its questions, its unfinished forms."""
    yield from (*_DENIALS, *_ASKED, *_UNSURE)
    for deed in line.deeds:
        yield from _near_deed(deed)
    for point in line.points:
        yield from _near_point(point, line)


def _near_author(good: tuple[str, ...]) -> Iterator[str]:
    """Near misses of the author's own words: "the spike is in" is near "is the spike in", "the spike is not in"."""
    for words in (" ".join(cut(saying)) for saying in good):
        yield from (f"almost {words}", f"i think {words}", f"not sure {words}", f"not {words}", f"not {words} yet")
        subject, verb, state = words.rpartition(" is ") if " is " in words else words.rpartition(" are ")
        if subject:
            verb = verb.strip()
            yield from (
                f"{verb} {subject} {state}",
                f"{subject} {verb} not {state}",
                f"{subject} {verb} almost {state}",
            )
            yield from (f"{subject} {verb} not {state} yet", f"i think {subject} {verb} {state}")
        elif words.startswith(("they ", "both ", "all ")):
            subject, _, verb = words.partition(" ")
            yield from (f"do {words}", f"{subject} do not {verb}", f"{subject} almost {verb}", f"{verb}")
        else:
            yield from (f"is it {words}", f"it is not {words}", f"it is almost {words}", f"are they {words}")
            yield from (f"i am not {words}", f"half {words}", f"should it be {words}", f"not quite {words}")


def _near_deed(deed: Deed) -> Iterator[str]:
    base, past, ing = deed.verb.base, deed.verb.past[0], deed.verb.ing
    states = list(dict.fromkeys((past, *(state for state in deed.verb.states if state in deed.so))))[:3]
    for what in ("it", *(f"the {thing}" for thing in deed.things[:1])):
        yield from (f"i did not {base} {what}", f"i have not {past} {what}", f"i can not {base} {what}")
        yield from (f"should i {base} {what}", f"did i {base} {what}", f"do i {base} {what}", f"can i {base} {what}")
        yield from (f"about to {base} {what}", f"i am about to {base} {what}", f"trying to {base} {what}")
        yield from (f"i am trying to {base} {what}", f"i will {base} {what}", f"going to {base} {what}")
        yield from (f"{ing} {what}", f"i am {ing} {what}", f"i think i {past} {what}", f"i almost {past} {what}")
        yield from (f"have i {past} {what}", f"i would have {past} {what}", f"i never {past} {what}")
    for state in states:
        yield from (f"not {state}", f"it is not {state}", f"is it {state}", f"almost {state}", f"nearly {state}")
        yield from (f"not quite {state}", f"i think it is {state}", f"it should be {state}", f"half {state}")
        yield from (f"it is almost {state}", f"not {state} yet", f"it is not {state} yet", f"has it been {state}")
        yield from (f"is the {thing} {state}" for thing in deed.things[:1])
        yield from (f"the {thing} is not {state}" for thing in deed.things[:1])


def _near_point(point: Point, line: Line) -> Iterator[str]:
    if point.finding:
        for noun in sorted(point.there | point.flaws)[:3]:
            yield from (f"is there any {noun}", f"is there {noun}", f"i think there is no {noun}", f"almost no {noun}")
            yield from (f"is that {noun}", f"maybe some {noun}", f"i think i see {noun}", f"hardly any {noun}")
            yield from (f"i am not sure about the {noun}", f"should there be {noun}", f"do you see {noun}")
        return
    for state in (point.asked, *sorted(point.so - {point.asked})[:2]):
        yield from (f"not {state}", f"it is not {state}", f"is it {state}", f"almost {state}", f"nearly {state}")
        yield from (f"not quite {state}", f"i think it is {state}", f"it should be {state}", f"should it be {state}")
        yield from (f"they are not {state}", f"are they {state}", f"do they {state}", f"they do not {state}")
        yield from (f"i think they {state}", f"does it {state}", f"it does not {state}", f"i think it {state}")
        yield from (
            f"not sure if it is {state}",
            f"it might be {state}",
            f"is the {(*line.things, 'thing')[0]} {state}",
        )
