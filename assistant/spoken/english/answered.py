"""What a line wants to have come about, in English: "say done when they have answered" is "they got back to me"."""

import re


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
            came: tuple[str, ...] = (
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
