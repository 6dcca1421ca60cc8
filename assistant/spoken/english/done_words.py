"""What says that a deed is done, by what it is done to and how far, in English: "uncapped", "half full"."""

import re

from assistant.spoken.english.seen_there import WHAT_BLOCKS, above_other, left_as
from assistant.spoken.english.verbs import VERBS, Verb

_SETS = ("line", "tubing", "tube", "set", "chamber", "syringe")
AIR = ("air", "bubbles", "air bubbles")

_A_BIT = ("", "a bit ", "a little ", "just ")
HALF_FULL = frozenset(
    {"about half", "to half", "to the half", "half way", "third full", "third", "between a third and half", "half full"}
    | {"half", "at half", "about half full", "halfway", "at the halfway mark", "halfway full"}
    | {
        f"{lead}{part}{end}"
        for lead in ("", "about ", "to ", "to about ")
        for part in ("a third", "half")
        for end in ("", " full")
    }
    | {f"{bit}{over} a third" for bit in _A_BIT for over in ("over", "above")}
    | {f"{bit}{under} half{end}" for bit in _A_BIT for under in ("under", "below") for end in ("", " full")}
    | {f"{bit}less than half" for bit in _A_BIT}
    | {f"{to}half{mark}" for to in ("to the ", "at the ", "up to the ") for mark in (" line", " mark", "way line")}
)
"""What says that a chamber is a third to half full."""
NOT_HALF_FULL = frozenset({"empty", "too full", "full", "overfull", "too low", "to the top", "to the brim"})
"""What says that it is not."""


def is_gone(air: tuple[str, ...]) -> set[str]:
    """How it is said that there is none left."""
    said = {
        f"no {more}{name}{end}"
        for more in ("", "more ")
        for name in air
        for end in (
            "",
            " in it",
            " left in it",
            " in there",
            " left in there",
            " anywhere",
            " inside",
            " left inside",
            " left",
            " coming",
            *(f"{left} in the {thing}" for left in ("", " left") for thing in _SETS),
        )
    }
    said |= {f"{name}{be} {out}" for name in (*air, "airs") for be in ("", " is", " is all") for out in ("out", "gone")}
    said |= {
        f"{only} fluid{end}"
        for only in ("just", "only", "all", "nothing but")
        for end in ("", " now", " left", " coming", " coming out")
    }
    said |= {
        f"{run} clear" for run in ("it is", "runs", "ran", "running", "it runs", "it ran", "all", "ran it", "coming")
    }
    said |= {f"{name} free" for name in (*air, "bubble")} | {f"free of {name}" for name in air}
    said |= {f"clear of {name}" for name in air} | {
        f"rid of {all_}{name}" for name in air for all_ in ("all the ", "the ", "")
    }
    said |= {f"{solid} fluid" for solid in ("solid", "pure", "clear")}
    said |= {
        f"{every}{more} {name}" for every in ("every", "every last", "each") for more in ("", " single") for name in air
    }
    return said | {"gone", "all gone", "all out", "air free", "free of air", "got rid of it", "got rid of the air"}


def until(line: str) -> set[str]:
    """What an end that a line names says: "push until the line is full"."""
    found = re.search(r"\buntil (?:the |a )?(\w+) (?:(?:is|are) )?(\w+)", line)
    if found is None or found[1] == "it":
        return set()
    thing, state = found.groups()
    if thing in AIR:
        return is_gone(AIR)
    said = {f"{name}{be} {state}" for name in (thing, f"{thing}s") for be in ("", " is", " is all", " is now")}
    if state in ("shows", "appears"):
        said |= {
            f"{there} a {thing}" for there in ("there is", "i see", "i have", "got", "saw", "i have got", "there was")
        }
        said |= {
            f"{thing} {there}"
            for there in (
                "showed",
                "came out",
                "is showing",
                "is there",
                "appeared",
                "came",
                "is out",
                "showing",
                "is visible",
            )
        } | {
            f"{thing}s {there}"
            for there in ("showing", "there", "out", "visible", "at the tip", "at the end", "hanging")
        }
        said |= {
            f"{see}the {thing}"
            for see in ("there is ", "i see ", "i have ", "got ", "saw ", "i have got ", "i can see ")
        }
        said |= (
            {f"{see} a drip" for see in ("got", "there is", "i see", "i have got", "saw")} if thing == "drop" else set()
        )
    return said | ({"full", f"filled the {thing}", f"{thing} filled"} if state == "full" else set())


_HIGHER = ("raised", "higher up", "up higher", "hanging higher", "hangs higher", "is higher")
_BUTTONS = frozenset({"start", "stop", "pause", "silence", "confirm", "clear", "enter"})
_CLOCKS = ("alarm", "timer", "reminder")
_PILLOW = ("pillow", "pillow is", "pillows")
_UN = {"cap": "uncapped", "wrap": "unwrapped", "wrapper": "unwrapped", "cover": "uncovered", "tape": "untaped"}


_WRITTEN_UP = frozenset(
    f"{record}{be} {end}"
    for record in (
        "charting",
        "documenting",
        "documentation",
        "paperwork",
        "writing",
        "write up",
        "entry",
        "notes",
        "note",
    )
    for be in ("", " is", " are", " is all", "s", "s all")
    for end in ("done", "complete", "completed", "finished", "in", "made", "up to date")
)
_WRITTEN_UP |= {
    f"{finished} {writing}"
    for finished in ("finished", "done", "completed", "done with", "finished with", "did", "just did")
    for writing in (
        "charting",
        "the charting",
        "documenting",
        "writing it up",
        "writing it all up",
        "writing up",
        "the notes",
    )
} | {f"finished {writing}" for writing in ("writing", "writing it", "writing it down", "the write up", "the entry")}
"""How it is said that the writing is done: "charting's finished" comes as "chartings finished"."""


def by_thing(verb: Verb, noun: list[str], rest: str) -> set[str]:
    """What also says that it is done, by what it is done to: "uncapped", "gloved up", "the bag is spiked"."""
    so: set[str] = set()
    if verb.base in ("take", "remove", "pull", "peel", "tear"):
        so |= {_UN[word] for word in rest.split() if word in _UN}
        so |= {"out of the wrapper", "out of its wrapper"} if "wrap" in noun else set()
        so |= {f"out of the {word}" for word in noun} | {f"out of its {word}" for word in noun}
    if verb.base in ("push", "insert", "put", "stick", "connect", "attach", "apply", "place", "move"):
        for word in set(noun) & {"spike", "label", "tape", "cap", "flush", "clamp"}:
            so |= set(VERBS[word].past)
    if "gloves" in rest.split() and verb.base in ("put", "don", "wear", "pull"):
        so |= {
            "gloved",
            "gloved up",
            "on my hands",
            "wearing them",
            "wearing gloves",
            "wearing",
            "worn",
            "wore",
            "on me",
        }
    if "gloves" in rest.split() and verb.base in ("take", "remove", "pull", "peel"):
        so |= {f"hands{be} bare" for be in ("", " are", " are now")} | {
            "bare hands",
            "bare handed",
            "barehanded",
            "gloveless",
        }
        so |= {
            f"{gloves} in the {bin_}"
            for gloves in ("gloves are", "they are", "both", "straight")
            for bin_ in ("bin", "waste", "trash", "clinical waste", "yellow bag", "rubbish")
        }
    if verb.base == "find" and "blocks" in rest.split():
        so |= WHAT_BLOCKS
    if verb.base in ("leave", "keep") and (state := left_as(rest)):
        so |= state
    if verb.base == "prime" or "fluid" in noun:
        so |= {
            f"{fluid}{be}{right} {at} the {end}"
            for fluid in ("fluid", "fluids", "saline")
            for be in (
                "",
                " is",
                " has come",
                " has come through",
                " is come through",
                " is through",
                " got",
                " reached",
            )
            for right in ("", " right", " all the way", " now", " right down", " down", " up")
            for at in ("at", "to", "out")
            for end in ("tip", "end", "very tip", "very end")
            if verb.base == "prime"
        }
    if verb.base in ("hang", "place", "put", "move") and "higher" in rest.split():
        so |= above_other(rest)
    if verb.base == "open" and "fully" in rest.split():
        so |= {"full open", "opened full", "opened right up", "opened all the way", "opened wide"}
        so |= {
            "rolled right up",
            "rolled up to the top",
            "right up to the top",
            "rolled all the way up",
            "to the maximum",
        }
    if verb.base == "connect" and "above" in rest.split() and "port" in rest.split():
        so |= {
            f"{on} the {upper} port"
            for on in ("on", "in", "to", "into", "onto")
            for upper in ("upper", "top", "higher")
        }
    if "compress" in noun or "gauze" in noun or "dressing" in noun:
        so |= {
            f"{on} {her} {arm}"
            for on in ("on", "over", "round", "around")
            for her in ("the", "her", "his")
            for arm in ("arm", "site", "skin", "forearm", "hand", "spot", "swelling")
        }
    means = re.search(r"\bwith ([a-z]+) and ([a-z]+)$", rest)
    if verb.base in ("cover", "dress") and means:
        both = f"{means[1]} and {means[2]}"
        so |= {f"{both}{be} {on}" for be in ("", " is", " are", " both") for on in ("on", "over", "in place", "there")}
        so |= {f"{put} {both} on" for put in ("put", "stuck", "laid")}
    if verb.base in ("label", "mark") and "date and time" in rest:
        so |= {
            f"{lead}date and {the}time{end}"
            for lead in ("wrote ", "wrote the ", "put ", "put the ", "written ", "got the ")
            for the in ("", "the ")
            for end in ("", " on", " on it")
        }
        so |= {f"date and time{be} on" for be in ("", " are", " is", " are both", " both")}
        so |= {f"{both} written on" for both in ("both", "date and time")}
    if "pillow" in rest.split():
        so |= {
            f"{put}{pillow} under" for put in ("", "put a ", "put the ", "tucked a ", "slid a ") for pillow in _PILLOW
        }
    if verb.base in _BUTTONS:
        so |= {f"{pressed} {verb.base}" for pressed in ("hit", "pressed", "pushed")}
    if verb.base == "set" and re.search(r"\ba time\b", rest):
        so |= {
            f"{clock}{be} {on}"
            for clock in _CLOCKS
            for be in ("", "s", " is")
            for on in ("on", "running", "going", "ticking")
        }
        so |= {f"{have}a {clock}" for have in ("got ", "have ", "put on ", "made ") for clock in _CLOCKS}
        so |= {f"set my {clock}" for clock in ("watch", "phone", "clock")}
        so |= {
            f"{clock} {on} my {phone}{set_}"
            for clock in _CLOCKS
            for on in ("on", "in")
            for phone in ("phone", "phones", "watch", "watchs", "phone is", "watch is")
            for set_ in (" set", " on", "")
            if set_ or phone in ("phone", "watch")
        }
        so -= {f"{clock} on my {phone}" for clock in _CLOCKS for phone in ("phone", "watch")}
        so |= {f"set {a}{clock}" for a in ("a ", "an ", "the ", "my ", "") for clock in _CLOCKS}
        so |= {f"{clock} {is_}set" for is_ in ("is ", "") for clock in (*_CLOCKS, *(f"{name}s" for name in _CLOCKS))}
    if verb.base in ("press", "hit", "push") and "start" in noun[:1]:
        so |= {*VERBS["start"].past, *VERBS["start"].states}
    if verb.base in ("press", "hit", "push") and noun[:1] in (["stop"], ["pause"]):
        so |= {*VERBS[noun[0]].past, *VERBS[noun[0]].states}
    if verb.base in ("document", "chart", "record"):
        so |= _WRITTEN_UP
    if "again" in rest.split():
        so |= {f"re{past}" for past in verb.past if " " not in past}
    if verb.base in ("hang", "place", "put", "move") and {"lower", "higher"} & set(rest.split()):
        way = (
            ("lowered", "lower", "lower down", "down lower", "moved down", "brought down", "taken down")
            if "lower" in rest.split()
            else _HIGHER
        )
        so |= {*way, *(f"{past} {where}" for past in ("moved", "brought", "put", "hung") for where in way[1:])}
    if verb.base == "rise":
        so |= {f"{went} up" for went in ("went", "gone", "came", "come", "going", "coming", "run", "ran", "flowed")}
    if "reach" in rest:
        so |= {"by her hand", "by his hand", "in her hand", "in his hand", "next to her", "next to him", "next to the"}
        so |= {
            *(f"{gave} {her} the" for gave in ("gave", "given", "handed") for her in ("her", "him", "them")),
            *(f"{gave} it to {her}" for gave in ("gave", "given", "handed") for her in ("her", "him", "them")),
            *(
                f"{she} {can}{get}"
                for can in ("can ", "")
                for she in ("she", "he", "they")
                for get in ("reach", "get to it", "grab it")
            ),
            "she has the",
            "he has the",
            "she has it",
            "he has it",
            "she is got",
            "he is got",
            "reach it",
            "reaches it",
        }
    return so
