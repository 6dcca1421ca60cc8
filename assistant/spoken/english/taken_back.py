"""What takes an answer back, whatever it is, or says it for somebody else, in English: "no way it's shut", "in theory".

Words of every day (common practice, no source). They hold at any line, for what was asked has no say in them.
"""

import re

from assistant.spoken.statement import Tokens

_ANY = re.compile(
    r"\bno way\b|\bany(?:thing|where) but\b|\bfifty fifty\b|\bscratch that\b|\bforget (?:that|it)\b|"
    r"\b(?:supposedly|allegedly|theoretically|hypothetically)\b|\bin (?:theory|my (?:head|mind|dreams))\b|"
    r"\b(?:says|said|thinks|reckons) (?:she|he|they|who|you|her|him|them)$|"
    r"(?<!like )(?<!as )\b(?:the line|you) (?:say|says|said)\b|"
    r"\b(?:they|people|somebody|someone|everyone|everybody) (?:say|says|said|told|have told)\b|"
    r"\baccording to (?:you|her|him|them|people)\b|^(?:read|repeat|say) (?:me|us|that) |\brather \w+(?: \w+)? than\b|"
    r"\b\w+ ish$|\bmy foot$|\bdream on$|\bas if\b|\byeah right\b|\blast time\b|\blet us say\b|\bpretend\w*\b|"
    r"(?<!said )(?<!her )(?<!him )(?<!them )\bwhen i am back\b|\bfor (?:the|my) other patient\b|\bat home$"
)
_OF_AN_ALTERNATIVE = re.compile(
    r"\b(?:has|have|had|got|ought|supposed|meant) to be\b(?! kept| apart| separate)|\bon paper\b|"
    r"\b(?:i was|we were|you) (?:told|have told)\b|^tell (?:me|us) "
)
"""The same of what is seen; of a deed these say something else: "it had to be taped", "it's all down on paper"."""

_OF_SOMEBODY_ELSE = re.compile(
    r"\b(?:friend|mate|partner|colleague|buddy|husband|wife|son|daughter|mother|mum|mom|dad|father|sister|brother|"
    r"family|visitor|"
    r"relative|neighbour|instructor|teacher|tutor|student|classmate|nurse|doctor|everyone|everybody|somebody|"
    r"someone|people)s? "
    r"(?:says?|said|tells? me|told me|thinks?|thought|reckons?|believes?|swears?)\b"
)
"""What another one than the patient says of it is not what the learner has seen."""
_NOT_YET = re.compile(
    r"\b(?:give|gimme|grant) (?:me|us)? ?(?:a|one|two|another)\b|\bhang on\b|\bhold on\b|\bone (?:second|sec|moment)\b|"
    r"\bcan not (?:see|tell|find|reach|make out|read) (?:the|its|her|his|that|whether|if|which)\b"
)
"""What somebody says who has not looked at all of it: "give me a minute to load it", "can't see the primary's"."""


def takes_back(tokens: Tokens) -> bool:
    """Whether what is said with these words is said of nothing that was done or seen."""
    return _ANY.search(" ".join(tokens)) is not None


def takes_back_a_choice(tokens: Tokens) -> bool:
    """Whether an alternative that is named with these words was not seen by who says it."""
    text = " ".join(tokens)
    return takes_back(tokens) or any(one.search(text) for one in (_OF_AN_ALTERNATIVE, _OF_SOMEBODY_ELSE, _NOT_YET))
