"""Every lint rule: what it is about, and an example of what it names."""

from dataclasses import dataclass

from assistant.checklist.finding import Severity


@dataclass(frozen=True)
class Rule:
    """One rule.

    Attributes:
        name: as findings tell it.
        severity: the gravest that it gives.
        about: what must be so.
        example: something that it names.
        fixed: `checkoff lint --fix` mends what is mechanical about it.
    """

    name: str
    severity: Severity
    about: str
    example: str
    fixed: bool = False


_E, _W = Severity.ERROR, Severity.WARNING

RULES: tuple[Rule, ...] = (
    Rule("loads", _E, "The file can be read, and every field is one that exists.", 'sya = "Start the pump."'),
    Rule("version", _W, "The version has three numbers.", 'version = "first"', fixed=True),
    Rule("sources", _W, "The checklist names its sources.", "a head without sources"),
    Rule("order-known", _E, "The order exists.", 'order = "oh-10l"'),
    Rule("critical-why", _E, "A critical step says why.", "critical = true, and no why"),
    Rule("critical-source", _E, "A critical step names a published source.", "critical = true, and no sources"),
    Rule("cue", _W, "A critical step has a cue; each further cue says something new.", "critical = true, and no hint"),
    Rule("advice", _W, "Where an answer can be wrong, something is said about it.", "a question without if_wrong"),
    Rule("tries", _W, "Tries are counted where an answer can be wrong.", 'tries = 2 with kind = "done"'),
    Rule("gate-empty", _W, "A critical step comes before a gate.", "gate = true in the first step"),
    Rule("gate-opens", _E, "No step before a gate waits for one behind it.", 'after = ["a-step-behind-the-gate"]'),
    Rule("reachable", _E, "No step waits for itself.", "two steps that name each other in after"),
    Rule("order-of-steps", _W, "A step waits for earlier steps only.", 'after = ["a-later-step"]'),
    Rule("expiry", _E, "What is opened again comes before.", 'expires = { reopen = ["a-later-step"] }'),
    Rule("reopen", _E, "A question or a choice asks earlier steps again.", 'reopen = ["a-later-step"]'),
    Rule(
        "never-applies",
        _E,
        "The conditions of a step can be met, all together.",
        'applies = [{ key = "primary.rate", above = "200 mL/h", below = "100 mL/h" }]',
    ),
    Rule(
        "looked-at",
        _W,
        "Where a bag is hung, a step looks at patient, bag, usual range, and with a drug at allergies and what runs.",
        'a label read, the bag spiked, and nowhere looks_at = ["wristband"]',
    ),
    Rule("told", _W, "A choice that looks at something can tell what is wrong.", 'looks_at = ["site"] without faults'),
    Rule("key-known", _E, "The answer key holds the name.", 'key = "primary.rat"'),
    Rule("key-kind", _E, "A number is asked for as a number, a name as a name.", 'kind = "name", key = "primary.rate"'),
    Rule("key-in-order", _E, "The order of the checklist answers the step.", 'key = "secondary.rate", no secondary'),
    Rule("unit-known", _E, "The unit exists.", 'unit = "cc/h"'),
    Rule("unit-spelling", _W, "The unit is written as the trade prints it.", 'unit = "ml/hr"', fixed=True),
    Rule("unit-fits", _E, "The unit measures what the key holds.", 'unit = "mL", key = "primary.rate"'),
    Rule("unit-said", _E, "The line asks for the unit that is expected.", 'say = "How many drops?" with unit = "mL/h"'),
    Rule("range", _E, "The range can be met, and leaves something to be wrong.", "lowest = 60, highest = 10"),
    Rule("wait", _W, "A wait fits a lab session.", "seconds = 3600"),
    Rule("wait-said", _E, "The line and the wait agree.", 'say = "Rub for 20 seconds." with seconds = 15'),
    Rule("gives-answer", _E, "A line that asks for a number holds none.", 'say = "Is the rate 125?"'),
    Rule(
        "answers-clash", _E, "The line asks for what is expected, and each answer means one thing.", 'choices = ["yes"]'
    ),
    Rule(
        "sounds-alike",
        _W,
        "Two choices, or a good word and a bad one, differ by ear.",
        'choices = ["open", "not open"]',
    ),
    Rule("hearable", _E, "A recogniser can hear each choice.", 'choices = ["+", "++"]'),
    Rule("say-length", _W, "The line has 20 words at most.", "a line of 26 words"),
    Rule("say-median", _W, "The middle one of the lines has 12 words at most.", "ten lines of 15 words"),
    Rule(
        "aside", _W, "A line holds no brackets, dashes or semicolons.", 'say = "Close the clamp (below the chamber)."'
    ),
    Rule(
        "sentence-length",
        _W,
        "A spoken sentence has 30 words at most, a text 80.",
        "a more of one sentence with 40 words",
    ),
    Rule("reading-level", _W, "What is spoken is plain (Automated Readability Index).", "a more of long words"),
    Rule(
        "error-prone",
        _E,
        "No abbreviation or dose designation of the published lists of error-prone ones.",
        'more = "Give .5 mg or 1.0 mL, not 10U."',
        fixed=True,
    ),
    Rule("speakable", _E, "No markup, address or unknown abbreviation in what is spoken.", 'say = "Start **now**."'),
    Rule("said-twice", _W, "No two steps have the same line.", "two steps that say the same"),
)
"""In the order in which an author meets them."""
