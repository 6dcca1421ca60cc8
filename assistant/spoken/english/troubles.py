"""Reports that something goes wrong, in English: "there's air in the line", "I dropped it", "the pump is beeping".

A report is never an answer, so its words are looked for among others; a denial ("no leaks"), a condition ("if it
leaks") and what has not happened yet ("it might leak") are none.
"""

import re

from assistant.spoken.meaning import Trouble
from assistant.spoken.statement import Tokens

_NONE = re.compile(r"\b(?:no|not|never|nothing|nobody|none|without|if|when|would|could|should|might|will|may)\b")
_STILL_REPORTS = re.compile(
    r"\b(?:oh no|(?:will|does|can|do) not (?:stop|flush|breathe|start|close|open|move|go in|come off)|wont \w+)\b"
)
"""Denials that are reports themselves."""
_KINDS = {
    Trouble.WRONG_ITEM: r"wrong (?:bag|line|patient|drug|fluid|set|syringe|one|clamp|port|chart"
    r"|label)|not my patients?",
    Trouble.MISTAKE: r"mistake|wrong (?:rate|date|volume|dose|time|step|order)|messed|mixed up|forgot to|by accident"
    r"|too fast|overfilled|right up to the top|all the way to the top|cross threaded|upside down",
    Trouble.DROPPED: r"i (?:have |just )*dropped|(?:fell|is|has fallen|fallen|came down) (?:off |down )?on(?:to)? the"
    r" (?:floor|sheet|bed|ground)|on the floor|fell (?:off|down|on)|bag came down|come off its hook",
    Trouble.CONTAMINATED: r"contaminated|i (?:have |just |accidentally )*touched"
    r"|touched the (?:floor|sink|sheet|bed|bin"
    r"|rail|table|tip|hub|spike|port)|(?:tip|hub|spike|end|port|cap) (?:has )?(?:touched|hit)",
    Trouble.ALARM: r"alarm(?:s|ing)?|beep(?:s|ing)?|error|occlusion|occluded|it says air|screen (?:just )?went black"
    r"|stopped by itself|pump(?: i)?s dead|batterys? (?:is )?dead",
    Trouble.PAIN: r"in pain|hurts?|hurting|burns|burning|dizzy|itchy|swelling|swollen"
    r"|(?:is|shes|hes|started|still) bleeding"
    r"|breathe|blisters?|stings"
    r"|faint|sick|stuck myself|pulled his line|pulled her line|chest",
    Trouble.AIR: r"(?:there is|theres|got|see|full of|ton of|lots of|big|is) (?:a |some |an |big "
    r"|ton of |lots of |in it )*"
    r"(?:air|bubbles?)(?! (?:is |are |all )*(?:out|gone))|air is(?! (?:all )*(?:out|gone))|air in",
    Trouble.LEAK: r"leak(?:s|ing|y)?|dripping out|squirting|spraying|pouring out|all over the"
    r"|coming out at|running into the"
    r"|(?:onto|on to|all over) the (?:bed|floor|sheets?|table|tray)"
    r"|lost half the bag|a puddle|wet patch|run all over",
    Trouble.DAMAGED: r"crack(?:ed)?|broke(?:n)?|split|snapped|ripped|hole in|punctured|poked a hole"
    r"|bent|torn|came apart"
    r"|come apart|came off|come off|came out|popped out|half out|cut into|damaged",
    Trouble.OTHER: r"something(?: i)?s wrong|something went wrong|is stuck|s stuck|blocked|blocking"
    r"|blood coming back|clotted",
}
"""What reports each kind; the first that is found counts. Words of the bench (common practice, no source)."""
_FOUND = {kind: re.compile(rf"\b(?:{words})\b") for kind, words in _KINDS.items()}


def trouble_of(tokens: Tokens) -> Trouble | None:
    """The trouble that the words report; None where they report none."""
    text = " ".join(tokens)
    if len(tokens) < 2 or (_NONE.search(text) and not _STILL_REPORTS.search(text)):
        return None
    return next((kind for kind, words in _FOUND.items() if words.search(text)), None)
