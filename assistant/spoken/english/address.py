"""Whom people speak to, and what they say only to say something, in English: "yes po", "it's on, love", "there we are".

Words of several Englishes that neither claim nor doubt anything. They are left out at the beginning and the end of a
clause, where something else is left. Not among them is what asks ("eh", "innit", "abi", "no"), what laughs a thing away
("ha ha"), or whoever might have done it ("Anna closed it"). Words of every day (common practice, no source).
"""

from assistant.spoken.statement import Tokens


def _phrases(text: str) -> tuple[Tokens, ...]:
    found = (tuple(phrase.split()) for phrase in text.split(","))
    return tuple(sorted(filter(None, found), key=len, reverse=True))


_AT_EITHER_END = _phrases("""
    love, luv, pal, maam, mam, mum, sir, boss, chief, doc, prof, miss, hun, hon, honey, dear, my dear, darling, dearie,
    duck, ducky, hen, petal, pet, flower, sweetheart, buddy, bud, bro, bruv, dude, man, guys, folks, yall, lads, lass,
    friend, my friend, mate, matey, champ, team, ate, kuya, tita, auntie, aunty, uncle, oga, oya, po, opo, oo, na, naman,
    nga, kasi, sige, ayan, ay, lah, la, leh, lor, yaar, accha, ji, o, oh, ooh, ah, oh my, oh dear, ach, och, sha, sef,
    jare, abeg, wahala no, ehen, you see, you know, ken, right so, right then, right now, then, so, there, look, listen,
    okay so, well now, so then, now then, there now, there we are, there we go, there you are, there you go, here we are,
    here you go, that is that, so that is that, so yes, so there, jeez, blimey, crikey, goodness, my goodness, lord, wow,
    yay, phew, bingo, boom, bam, bosh, tada, ta da, voila, hooray, hallelujah, amen, cheers, ta, ta very much, thanks,
    thank you, many thanks, okie dokie, okie, okey dokey, righto, righty, righty ho, rightio, alrighty, roger, roger that,
    copy, copy that, mhm, mmhm, mm hm, uh huh, anyway, anyways, actually, basically, honestly, literally, definitely,
    certainly, for sure, of course, sure thing, no worries, no bother, no probs, no problem, easy, easy peasy, lovely,
    lovely jubbly, brilliant, cool, nice one, grand, champion, smashing, excellent, awesome, amazing, wonderful,
    fantastic, super, great, great stuff, good stuff, good, please, now, at last, finally, sorted, all sorted, all good
""")
_AT_THE_END = _phrases("""
    like, right enough, sure enough, so it is, so they are, so i have, so i did, so it has, just there, the now, just now,
    now now, a moment ago, a second ago, a minute ago, this minute, this second, mind, mind you, as you can see, as usual,
    as always, as promised, as requested, as asked, as told, as instructed, as planned, first go, first time, in one go,
    for you, for me, already, already na, na already, and all, and everything, as well, too, again for you, i promise,
    promise, hundred percent, one hundred percent, a hundred percent, 100 percent, 100, no doubt, all by myself,
    by myself, myself, on my own, by feel, by touch, with my fingers, with my thumb, with both hands, that is me,
    that is us, that is it, that is it now, over to you, your turn, you can go on, next, next please, next one,
    next one please, ready, i am ready, we are ready, ready for the next, ready for the next one, ready when you are,
    what is next then, good to go, so we are good, we are good, we are grand, happy days, job done, job is done, easy as
""")
_BY_LAST = {words[-1] for words in (*_AT_EITHER_END, *_AT_THE_END)}
_LONGEST_KEPT = 7
_BY_FIRST = {words[0] for words in _AT_EITHER_END}


def without_address(tokens: Tokens, keep: frozenset[Tokens] = frozenset()) -> Tokens:
    """The words without such ones at either end; all of them where nothing else is left.

    Args:
        tokens: the words of one clause.
        keep: phrases that say something here, and are left whole: "goes in easy".
    """
    rest = _cut_at_the_end(_cut_at_the_beginning(tokens, keep), keep)
    return rest or tokens


def _cut_at_the_beginning(rest: Tokens, keep: frozenset[Tokens]) -> Tokens:
    while rest and rest[0] in _BY_FIRST and not any(rest[:length] in keep for length in range(1, _LONGEST_KEPT)):
        found = next((words for words in _AT_EITHER_END if rest[: len(words)] == words), ())
        if not found or len(found) == len(rest):
            break
        rest = rest[len(found) :]
    return rest


def _cut_at_the_end(rest: Tokens, keep: frozenset[Tokens]) -> Tokens:
    while rest and rest[-1] in _BY_LAST and not any(rest[-length:] in keep for length in range(1, _LONGEST_KEPT)):
        both = (*_AT_THE_END, *_AT_EITHER_END)
        found = next((words for words in both if rest[-len(words) :] == words), ())
        if not found or len(found) == len(rest):
            break
        rest = rest[: -len(found)]
    return rest
