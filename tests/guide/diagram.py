"""The state diagram, made from the transition table.

Run ``python -m tests.guide.diagram`` to see it; a test holds the documentation against it.
"""

from assistant.guide.progress import State
from assistant.guide.table import LIVE, TABLE
from assistant.guide.turn import Input


def diagram() -> str:
    """The table as a Mermaid state diagram.

    Inputs that are legal in every live state and change none are listed once, in a note, since they would
    hide the rest.
    """
    everywhere = [kind for kind in Input if all((s, kind) in TABLE and TABLE[s, kind].to == {s} for s in LIVE)]
    lines = ["stateDiagram-v2", f"    [*] --> {_name(State.READY)}"]
    arrows: dict[tuple[State, State], list[str]] = {}
    for (state, kind), rule in TABLE.items():
        if kind in everywhere:
            continue
        for target in sorted(rule.to):
            arrows.setdefault((state, target), []).append(kind.value)
    for (source, target), kinds in sorted(arrows.items()):
        lines.append(f"    {_name(source)} --> {_name(target)}: {', '.join(sorted(set(kinds)))}")
    lines.append(f"    {_name(State.FINISHED)} --> [*]")
    lines.append(f"    note right of {_name(State.ASKING)}")
    lines.append(f"        In every state, changing none: {', '.join(sorted(kind.value for kind in everywhere))}")
    lines.append("    end note")
    return "\n".join(lines)


def _name(state: State) -> str:
    return state.value.replace(" ", "_")


if __name__ == "__main__":
    import sys

    sys.stdout.write(diagram() + "\n")
