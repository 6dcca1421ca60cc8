"""What people say beside an answer and that changes nothing of it, in English: "took me a while", "like you said".

Each is a clause of its own, of a few shapes: how hard it was, how long it took, that it was checked, how somebody felt
about it, whose way it follows, what could be heard of it. Words of every day (common practice, no source).
"""

import re

from assistant.spoken.statement import Tokens

_HOW = (
    r"(?:so|really|quite|pretty|very|super|rather|a (?:wee |little )?bit|a little|a lot|a tad|much|kind of|"
    r"surprisingly|actually|dead|well|fairly|proper|that|too)"
)
_HARD = (
    r"(?:easy|easier|hard|harder|tricky|fiddly|stiff|tough|awkward|quick|quicker|simple|annoying|slippery|fun|messy|"
    r"sticky|slippy|heavy|wee|loud|rough|small|tiny|long|fine|neat|"
    r"straightforward|nice|smooth|smoother|scary|satisfying|difficult|trickier|slow|great|a pain|a struggle|a fight)"
)
_THAN = r"(?: than (?:i (?:thought|expected|remembered)|expected|last time|it looks|the last one))"
_PERSON = r"(?:he|she|they|the patient|my patient)"
_THEIRS = (
    r"(?:you|we|they|she|he|it|my instructor|the (?:instructor|teacher|manual|manufacturer|maker|book|booklet|guide|"
    r"leaflet|"
    r"picture|pictures|diagram|policy|instructions|procedure|packet|package|label|line|step|checklist)|"
    r"(?:local |the local |hospital )?policy|instructions)"
)
_SAYS = (
    r"(?:says?|said|shows?|showed|shown|tells?|told me|asks?|asked|wants?|wanted|directs?|directed|describes?|"
    r"instructs?|instructed|teach|taught|do|recommends?)"
)
_CHECKED = r"(?:i |we )?(?:have )?(?:just |even |also |already )?(?:double |triple )?(?:checked|verified)"
_SHAPES = (
    # How hard it was, and how long it took.
    rf"(?:that|it|this|that one|this one) was (?:not )?(?:{_HOW} )*{_HARD}{_THAN}?",
    rf"(?:{_HOW} )?(?:easier|harder|quicker|trickier|faster|smoother){_THAN}",
    r"(?:it |that |which )?(?:only |just )?took (?:me )?(?:a|some|two|three|a few|a couple of|another|quite a|a good)"
    r"(?: little| bit of| lot of)?"
    r" (?:while|bit|moment|moments|second|seconds|sec|minute|minutes|tries|goes|attempts|effort|force|doing|time|"
    r"strength)",
    r"(?:i )?took (?:my|the) time(?: (?:over|with) it)?|slow and steady|nice and (?:steady|easy|gentle)",
    r"(?:on |at )?(?:my |the )?(?:first|second|third) (?:try|go|attempt)",
    r"(?:easy|piece of cake|easy peasy|no sweat|no bother|simple as that|nailed it|bingo|voila|there you go|"
    r"there it is)",
    # That it was checked.
    rf"{_CHECKED}(?: (?:it|them|that|this|both|all|again|twice|once more|two times|three times|everything|myself"
    r"|to be sure|to make sure|just to be sure|just in case|by hand))*"
    r"(?: (?:the|my|its|each) \w+(?: \w+)?(?: first| too| again| twice| before))?",
    r"(?:i (?:have )?)?looked (?:twice|again|closely|carefully|two times)",
    r"(?:i (?:have )?)?(?:read|counted|compared) (?:it|them|both) (?:twice|two times|again|out loud|aloud)",
    # How somebody felt about it.
    rf"(?:i am|i feel) (?:{_HOW} )*(?:proud|happy|glad|relieved|nervous|sure|certain|confident|positive|pleased|"
    rf"sweating)"
    r"(?: (?:of|about|with) (?:it|that|this))?(?: now)?",
    r"(?:and )?my hands are (?:still )?(?:a bit |a little )?(?:shaking|shaky|cold|trembling)",
    rf"{_PERSON} did not (?:even )?(?:flinch|mind|notice|complain|say anything|feel it|feel a thing|feel anything)",
    rf"{_PERSON} is (?:{_HOW} )*(?:happy|fine|okay|smiling|asleep|calm|relaxed|comfortable)(?: (?:with|"
    rf"about) (?:that|it))?",
    rf"{_PERSON} (?:was|is) (?:{_HOW} )*(?:nice|kind|patient|lovely|sweet|helpful|friendly)(?: about it| actually)?",
    r"sorry(?: (?:about|for) (?:that|the wait|the delay|the noise|being slow|being so slow|taking so long))?",
    r"(?:oh )?(?:my )?(?:thank (?:god|goodness|you)|thanks|finally|at last|phew|gosh|goodness|yay|hooray|oof|ugh|wow)",
    r"(?:oh )?(?:gosh|goodness|dear|man|boy)",
    r"(?:that|this) (?:beeping|noise|sound|thing)",
    r"(?:no|not a) (?:problem|problems|trouble|issue|issues|worries|fuss)",
    # Whose way it follows.
    rf"(?:just )?(?:like|as|the way|exactly as|exactly like|just as) {_THEIRS} {_SAYS}(?: (?:me|us|to|it))*",
    r"(?:as|per|by|following|according to) (?:the |our |your |local |hospital )*(?:policy|instructions|manual|book"
    r"|manufacturer|procedure|protocol|guideline|guidelines)",
    r"(?:like|as) (?:asked|ordered|told|instructed|directed|described|shown|planned|usual|always|practised|practiced)",
    r"like (?:that|this|so)",
    # What could be heard or felt of it.
    r"(?:and )?(?:i )?(?:have )?(?:heard|felt|hear|feel|got) (?:it|the|a|that)(?: (?:little|nice|good|loud|clear))*"
    r" (?:click|snap|clicking|snapping|clunk)(?: in(?! an?\b)| into place| shut)?",
    r"(?:it |that )(?:just )?(?:clicked|snapped)(?: in(?! an?\b)| into place| shut)?",
    # What comes next.
    r"(?:okay )?(?:ready to go|good to go|good to move on|ready)(?: (?:for|to) (?:the )?(?:next|next one|next step|"
    r"move on"
    r"|go on))?",
    r"next (?:one|step|please)(?: please)?|moving on|on to the next(?: one| step)?|you can go on",
)
_ONE = "|".join(f"(?:{shape})" for shape in _SHAPES)
_COMMENT = re.compile(rf" (?:and |so |but |because |oh )?(?:{_ONE})(?= )")


def is_comment(tokens: Tokens) -> bool:
    """Whether words are nothing but such clauses."""
    return not _shortened(tokens)


def without_comments(tokens: Tokens) -> Tokens:
    """The words without the clauses that change nothing; all of them where nothing else is left."""
    return tuple(_shortened(tokens).split()) or tokens


def _shortened(tokens: Tokens) -> str:
    text = f" {' '.join(tokens)} "
    while (shorter := _COMMENT.sub("", text)) != text:
        text = shorter
    return text.strip()
