"""What somebody can do who may write the records' folder and knows the form: change entries and link all anew."""

import json
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from assistant.record.entry import GENESIS, OWN_FIELDS, link

Bodies = list[dict[str, object]]


def forged(path: Path, change: Callable[[Bodies], object]) -> Path:
    """Change the bodies of a record's entries in place, then link and seal them as the program would."""
    lines = path.read_bytes().splitlines()
    bodies = [{name: value for name, value in json.loads(line).items() if name not in OWN_FIELDS} for line in lines]
    change(bodies)
    head, content = GENESIS, b""
    for number, body in enumerate(bodies, 1):
        if "seal" in body:
            body["seal"] = {"count": number - 1, "head": head}
        entry = link(body, head, number)
        head = entry.digest
        content += entry.line
    path.write_bytes(content)
    return path


def passed(bodies: Bodies) -> None:
    """The last line's result, turned into a pass in which nothing went wrong."""
    seal = bodies[-1]
    results = seal["results"]
    assert isinstance(results, dict)
    assert seal["outcome"] == "not passed"
    seal["outcome"] = "passed"
    results |= {"passed": True, "failures": []}
    for line in results["steps"]:
        if line["ending"] == "corrected by the learner":
            line |= {"ending": "done unaided", "first": line["final"], "wrong": 0, "slips": []}


def as_a_person(bodies: Bodies) -> None:
    """A simulated attempt as if a person had done it: the pin that says so is gone, and the clocks agree."""
    bodies[0].pop("simulated")
    began = datetime.fromisoformat(str(bodies[0]["at"]))
    for body in bodies:
        seconds = (datetime.fromisoformat(str(body["at"])) - began).total_seconds()
        body["ticks"] = f"{100 + seconds:.6f}"
