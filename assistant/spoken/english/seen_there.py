"""How things are found, left or hung, in English: what blocks a line, "still on pause", "on the top hook"."""

import re

WHAT_BLOCKS = (
    frozenset(
        f"{thing}{be}{still}{shut}"
        for thing in (
            "clamp",
            "clamps",
            "slide clamp",
            "roller",
            "roller clamp",
            "stopcock",
            "stopcocks",
            "slide",
            "it",
        )
        for be in ("", " is")
        for still in (" ", " still ")
        for shut in ("shut", "closed", "turned off")
        if be or thing != "it"
    )
    | frozenset(
        f"{line}{be} {bent}"
        for line in ("line", "lines", "tubing", "tubings", "tube", "it")
        for be in ("", " is")
        for bent in ("kinked", "bent", "squashed", "trapped", "pinched", "caught", "twisted", "folded", "bent over")
        if be or line != "it"
    )
    | {
        *(
            f"{there} a {kink}"
            for there in ("there is", "is", "got", "see", "feel", "found")
            for kink in ("kink", "clot", "bend")
        ),
        *(f"lying on the {line}" for line in ("line", "tubing", "tube")),
        *(f"it is the {thing}" for thing in ("clamp", "slide clamp", "roller", "roller clamp", "stopcock", "slide")),
    }
)
"""What may block a line, as it is told once it was found (words of the bench)."""
_STATES_LEFT = {
    "paused": ("paused", "on pause", "on hold", "stopped", "on standby", "not running"),
    "open": ("open", "unclamped"),
    "closed": ("closed", "shut", "clamped"),
    "clamped": ("clamped", "closed", "shut"),
}


def left_as(rest: str) -> set[str]:
    """How it is said that something stays as it is: "leaving it paused", "still on pause"."""
    state = next((word for word in rest.split() if word in _STATES_LEFT), "")
    return {
        f"{lead}{said}"
        for said in _STATES_LEFT.get(state, ())
        for lead in (
            *(
                "still ",
                "is still ",
                "stays ",
                "staying ",
                "it stays ",
                "stayed ",
                "remains ",
                "left ",
                "kept ",
                "left it ",
            ),
            *(
                "leaving it ",
                "keeping it ",
                "kept it ",
                "i leave it ",
                "i keep it ",
                "i am leaving it ",
                "i am keeping it ",
            ),
            *(
                "staying as it is ",
                "it is staying ",
                "leaving the pump ",
                "keeping the pump ",
                "leaving that ",
                "sitting ",
            ),
            *("", "sitting on ", "it sits ", "it stays on "),
        )
    }


def above_other(rest: str) -> set[str]:
    """How it is said that a bag hangs higher than the one that a line names: "above the primary", "on the top hook"."""
    found = re.search(r"\bthan the (\w+)", rest)
    other = found[1] if found else "primary"
    said = {
        f"{up}{above} the {name}"
        for up in ("", "up ", "well ", "hanging ", "right up ", "hangs ")
        for above in ("above", "over", "higher than")
        for name in (other, f"{other} bag", "other", "other one", "other bag", "main bag", "main one", "first one")
    }
    said |= {f"{on} the {top} {hook}" for on in ("on", "at", "to") for top in _TOPS for hook in _HOOKS}
    return said | {"highest", "the highest", "on top", "up top", "at the top", "topmost", "up at the top"}


_TOPS = ("top", "higher", "highest", "upper", "tallest")
_HOOKS = ("hook", "place", "spot", "position", "hanger", "arm", "one")
