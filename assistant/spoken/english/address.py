"""Whom people speak to, and what they say only to say something, in English: "yes po", "it's on, love", "there we are".

Words of several Englishes that neither claim nor doubt anything. They are left out at the beginning and the end of a
clause, where something else is left. Not among them is what asks ("eh", "innit", "abi", "no"), what laughs a thing
away ("ha ha"), whoever might have done it ("Anna closed it"), or what a denial may stand before ("not great"). Words of
every day (common practice, no source).
"""

from assistant.spoken.statement import Tokens


def _phrases(text: str) -> tuple[Tokens, ...]:
    found = (tuple(phrase.split()) for phrase in text.split(","))
    return tuple(sorted(filter(None, found), key=len, reverse=True))


_ANYWHERE = _phrases("""
    love, luv, pal, maam, mam, sir, boss, chief, doc, prof, miss, hun, hon, honey, dear, my dear, darling, dearie, duck,
    ducky, hen, petal, pet, flower, sweetheart, buddy, bud, bro, bruv, dude, man, guys, folks, yall, lads, lass, friend,
    my friend, mate, matey, champ, ate, kuya, tita, auntie, aunty, oga, oya, po, opo, oo, na, naman, nga, kasi, sige,
    ayan, ay, lah, la, leh, lor, yaar, accha, ji, o, oh, ooh, oh my, oh dear, ach, och, sha, sef, jare, abeg, ehen, ken,
    you see, you know, right then, right so, right now, okay so, well now, so then, now then, there now, there we are,
    there we go, there you are, there you go, here we are, here you go, that is that, so that is that, jeez, blimey,
    crikey, goodness, my goodness, lord, wow, yay, phew, bingo, boom, bam, bosh, tada, ta da, voila, hooray, hallelujah,
    amen, cheers, ta, ta very much, thanks, thank you, many thanks, okie dokie, okie, okey dokey, righto, righty, righty
    ho, rightio, alrighty, roger, roger that, copy that, mhm, mmhm, mm hm, uh huh, anyway, anyways, for sure, of course,
    sure thing, at last, finally, please
""")
_AT_THE_END = _phrases("""
    right enough, sure enough, so it is, so they are, so i have, so i did, so it has, just there, the now, just now, now
    now, a moment ago, a second ago, a minute ago, this minute, this second, mind, mind you, as you can see, as usual,
    as always, as promised, as requested, as asked, as told, as instructed, as planned, first go, in one go, for you,
    for me, and all, and everything, i promise, promise, hundred percent, one hundred percent, a hundred percent, 100
    percent, no doubt, all by myself, by myself, on my own, by feel, by touch, with both hands, that is me, that
    is us, that is it, over to you, your turn, you can go on, next please, next one please, ready for the next, ready
    for the next one, ready when you are, happy days, job done, job is done, easy as pie
""")
_ALONE = _phrases("""
    lovely, lovely jubbly, brilliant, cool, nice, nice one, grand, champion, smashing, excellent, awesome, amazing,
    wonderful, fantastic, super, great, great stuff, good stuff, easy, easy peasy, no worries, no bother, no probs, no
    problem, no problems, no trouble, no fuss, no drama, sorted, so yes, so there, look, listen, so, now, then,
    definitely, certainly, actually, basically, honestly, ready, i am ready, we are ready, good to go, we are good, so
    we are good, we are grand, next, next one, what is next then
""")
_BY_FIRST = {words[0] for words in _ANYWHERE}
_BY_LAST = {words[-1] for words in (*_ANYWHERE, *_AT_THE_END)}
_REPORTING = frozenset(
    {"says", "said", "thinks", "thought", "reckons", "told", "tells", "claims", "swears", "knows", "has"}
)
_LENGTHS = range(1, 7)
"""Of phrases that may be kept."""


def says_nothing(tokens: Tokens) -> bool:
    """Whether the words of a clause are only said to say something: "lovely", "there we go"."""
    return tokens in _ALONE or tokens in _ANYWHERE or tokens in _AT_THE_END


def without_address(tokens: Tokens, keep: frozenset[Tokens] = frozenset()) -> Tokens:
    """The words without such ones at either end; all of them where nothing else is left.

    Args:
        tokens: the words of one clause.
        keep: phrases that say something here, and are left whole: "goes in easy".
    """
    rest = tokens
    while len(rest) > 1 and rest[0] in _BY_FIRST and not any(rest[:length] in keep for length in _LENGTHS):
        found = next((words for words in _ANYWHERE if rest[: len(words)] == words), ())
        if not found or len(found) == len(rest) or rest[len(found)] in _REPORTING:
            break  # "my friend says it is"
        rest = rest[len(found) :]
    while len(rest) > 1 and rest[-1] in _BY_LAST and not any(rest[-length:] in keep for length in _LENGTHS):
        both = (*_AT_THE_END, *_ANYWHERE)
        found = next((words for words in both if rest[-len(words) :] == words), ())
        if not found or len(found) == len(rest):
            break
        rest = rest[: -len(found)]
    return rest
