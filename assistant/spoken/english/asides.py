"""Asides of every day that amount to a command, in English: "sorry, how long was it? Say it again".

None of them answers a step: they repeat, wait, help, tell, go back, leave open. They are looked for only where
words are understood as nothing else, at the beginning or the end of what was said. Words of every day (common practice,
no source).
"""

import re
from collections.abc import Mapping

from assistant.spoken.meaning import Command
from assistant.spoken.statement import Tokens

_KEYS: Mapping[Command, str] = {
    Command.AGAIN: (
        r"(?:please )?repeat(?: (?:that|it|this|the (?:step|question|line|instruction|last (?:bit|part))))?"
        r"|(?:say|read|tell me|ask(?: me)?|give me) (?:that|it|this|the (?:step|question|line)) (?:again|once"
        r" more|one more time)"
        r"|say again|one more time|once more|come again|say (?:that|it) (?:slower|slowly)"
        r"|(?:did not|do not|could not|can not) (?:quite )?(?:catch|hear|get)(?: (?:that|it|you|the"
        r" (?:question|last bit)))?"
        r"|(?:i )?missed (?:that|it)|(?:what|how) was (?:that|it|the (?:step|question))(?: again)?|ask me again"
        r"|what did you (?:say|ask|want)(?: me to do)?(?: again)?|what (?:do|should) i do (?:now|next)"
        r"|what is next"
        r"|what (?:is|was) the (?:step|question|next step)(?: again)?|how long (?:is|was) it(?: again)?"
        r"|i forgot what you said"
        r"|can i hear (?:that|it) again|let me hear (?:that|it) again|what now|say what"
    ),
    Command.HOLD_ON: (
        r"hold on|hang on|hold up"
        r"|wait(?: wait)?(?: (?:for me|a (?:moment|second|sec|minute|bit)|one (?:moment|second|sec)))?"
        r"|(?:just |give me )?(?:a|one|1) (?:moment|sec|tick)|(?:just |give me )(?:a|one) (?:second|minute)"
        r"|one second"
        r"|bear with me|not so fast|let me (?:see|look|check|have a look|think|find it|get (?:it|one))"
        r"|two (?:secs|seconds|ticks)"
        r"|i need (?:a (?:moment|second|minute)|more time)|i am not ready(?: yet)?"
    ),
    Command.WHERE: (
        r"where (?:am i|are we|was i|were we|did we get to|are we up to)(?: (?:now|again|in this|in the list|up to))?"
        r"|(?:which|what) (?:number )?step (?:is this|am i on|are we on|was that|were we on)"
        r"|how (?:far|many steps) (?:along |are )?(?:are we|am i|left|to go|is left)(?: (?:now|to go|along))?"
        r"|remind me (?:which step this is|where (?:i am|we are))|how much (?:more|is left)|how many more"
    ),
    Command.ORDER: (
        r"(?:what (?:is|was|does|did) |read (?:me )?(?:out )?|tell me |give me |remind me (?:of )?|let me"
        r" hear |repeat |check )"
        r"(?:what )?(?:my|the) (?:order(?:ed rate)?|prescription)(?: (?:say|again|out|to me|said))*"
        r"|what (?:was|is|does) (?:i |the order |it )?(?:ordered|prescribed|the (?:ordered )?(?:rate|dose"
        r"|volume))(?: (?:again|in the order))*"
        r"|how much (?:was|is) it(?: again)?|what did the (?:doctor|prescriber) order"
        r"|remind me what i was ordered"
        r"|what does the order say(?: about \w+(?: \w+)?)?"
        r"|what was the (?:rate|dose|volume|fluid|drug) in the order"
    ),
    Command.HELP: (
        r"(?:please )?help(?: me)?|i need (?:some |your )?help"
        r"|(?:give me |i need )(?:a|another) (?:hint|clue|tip)"
        r"|i (?:do not|dont) (?:get|understand)(?: (?:it|this|that|how|what you (?:mean|want)))?"
        r"|i am (?:stuck|lost|confused)"
        r"|(?:how|what) (?:do|should|am) i (?:supposed to )?(?:do (?:this|that|it)|work (?:that|this|it) out"
        r"|scrub it|know)"
        r"|i (?:do not|dont) know (?:how|what to do|how to do (?:this|that|it))|show me(?: how)?"
        r"|what do you mean"
        r"|can you (?:tell|show|explain to) me how(?: (?:that|it|this) is done| to do (?:that|it|this))?"
    ),
    Command.PAUSE: (
        r"(?:let us |can we |could we |i need to |i want to |i have to )?(?:pause|take a (?:break|pause)|have"
        r" a break)"
        r"(?: (?:here|now|for now|please|for a (?:minute|moment|bit)|the session))*|stop here for now"
        r"|i need a break"
        r"|(?:can|could) we stop for a (?:minute|moment|bit)|let us stop for a bit"
    ),
    Command.BACK: (
        r"(?:can we |can i |i want to |let us |i would like to |i need to )?go back(?: (?:one|a step|one step"
        r"|one more))?"
        r"|(?:the )?(?:previous|last) step(?: please| again)|back (?:one|up)(?: step)?"
        r"|take me back(?: to the last one)?"
        r"|(?:can we |let us )?do the (?:one before(?: this)?|last (?:one|step))(?: again| over)?"
    ),
    Command.GO_ON: (
        r"skip(?: (?:it|this|that|this one|that one|the \w+|this step|this question))?(?: for now)?|pass"
        r"|move past this one"
        r"|(?:let us )?(?:carry on|keep going|move on|continue|go on)|next one|leave (?:this|that) one(?: out)?"
        r"|i will come back to (?:this|it)(?: later)?|let us skip (?:it|this|that|the \w+)(?: for now)?"
    ),
}
_FILLER = (
    r"(?:(?:please|sorry|okay|oh|so|well|hey|excuse me|just|can you|could you|would you|will you|can i"
    r"|can we|i|we|you|and"
    r"|yes|no|thanks|thank you|again|now|then|actually|quickly|for a bit|for me|if you do not mind"
    r"|if that is okay|let us)\s)*"
)
_WHOLE = tuple(
    (command, re.compile(rf"{_FILLER}(?:{key})(?:\s{_FILLER.rstrip('*')}*)?\s?")) for command, key in _KEYS.items()
)
_BESIDE = (Command.HOLD_ON, Command.AGAIN, Command.WHERE, Command.ORDER)
"""Those that a reason may stand beside: "one second, I'm comparing"."""
_AT_AN_END = tuple(
    (command, re.compile(rf"{_FILLER}(?:{_KEYS[command]})\s.*|.*\s(?:{_KEYS[command]})\s?")) for command in _BESIDE
)
_LONGEST = 14
"""Words; a longer speech is talk to somebody else."""


def aside_of(tokens: Tokens) -> Command | None:
    """The command that an aside amounts to; None for none."""
    text = " ".join(tokens) + " "
    if len(tokens) > _LONGEST:
        return None
    whole = next((command for command, known in _WHOLE if known.fullmatch(text)), None)
    if whole is not None:
        return whole
    found = {command for command, known in _AT_AN_END if known.fullmatch(text)}
    return found.pop() if len(found) == 1 else None
