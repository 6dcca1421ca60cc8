"""What questions at the bench ask about, in English: what a thing is like, what it does, what is there or is not."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Quality:
    """Something that a thing is or is not.

    Attributes:
        asked: how a question names it: "whole".
        so: what also says that it is so: "intact".
        not_so: what says that it is not: "torn".
        flaws: what is there when it is not so: "a tear"; "no tears" then says that it is so.
    """

    asked: str
    so: tuple[str, ...]
    not_so: tuple[str, ...]
    flaws: tuple[str, ...] = ()


_QUALITIES = """
# asked | so | not so | what is then there
clear | crystal clear, clear as water, see through, transparent, perfectly clear, clear as day | cloudy, murky, \
milky, hazy, discoloured, discolored, dirty, unclear, yellow, yellowish, off colour, off color, brown, pink, \
unreadable, illegible | cloudiness, particles, bits, flakes, specks, sediment, floaters, something floating, bits \
floating, stuff floating, things floating, anything floating, floating, floating in it, haze, leaks, leak, in it
whole | intact, undamaged, in one piece, complete | torn, broken, damaged, split, leaking, leaky, punctured, in \
pieces, cut | leaks, leak, tears, tear, hole, holes, damage, rip, piece missing, tip missing
intact | whole, undamaged, sealed, unopened, unbroken, sealed all the way round | torn, broken, damaged, split, \
opened, open, ripped, punctured | tears, tear, hole, holes, damage, rip, rips, cut
in date | within date, in its date, not out of date, still in date, still good | out of date, expired, outdated, past \
its date |
expiry | in date, good, still good, within date, current, good until, good till, valid until, fine until, not \
expired, does not expire until, does not expire till, expires next year, not out of date, well in date, still in date \
| out of date, expired, outdated, past its date, past it, ran out, run out, has expired, over its date |
expiry dates | in date, good, still good, within date | out of date, expired, outdated, past their date |
within their time | in date, good, still good, in time | expired, out of date, over time, past their time |
swollen | puffy, puffed up, bigger, swelled up, swelling | flat, the same size, normal, same size |
red | reddened, pink, inflamed, a bit pink, redness | pale, normal, a normal colour, a healthy colour |
warm | hot, warmth, heat | cool, cold |
cool | cold | warm, hot |
comfortable | comfy, fine, okay, happy, relaxed | uncomfortable, in pain, sore | pain, discomfort
finished | through, all gone in, all gone, gone in, all in, run through, run in, over, complete, empty, done | \
running, still running, still going, not through | some left, fluid left, left
within reach | in reach, by her hand, by his hand, in her hand, in his hand, next to her, next to him, holding it, \
beside her, beside him, can reach it, reach it, got it | out of reach, far away, on the floor |
plugged into | plugged in, plugged, on mains, on the mains, connected to the socket, in the socket, in the wall | on \
battery, unplugged, not plugged |
hanging above | above it, higher, well above, up there, above, above the other one, on the higher hook | below, \
lower, at the same height, the same height, level |
unopened | sealed, closed, intact, untouched | opened, open, torn | tear, tears, hole, holes
undamaged | intact, whole, sealed, fine, perfect | damaged, torn, broken | tear, tears, hole, holes, damage
unbroken | intact, whole, sealed, in one piece | broken, torn, opened, open |
secured | taped, fixed, secure, taped down | loose, not taped |
attached | connected, on, joined, hooked up | off, loose |
connected | attached, on, joined, hooked up, plugged in | off, loose, disconnected |
labelled | labeled, dated, marked, got a label, got its label, has a label, a label | unlabelled, unlabeled |
visible | seen, showing, i see it | hidden, covered |
sealed | unopened, intact, closed | open, opened, unsealed, broken, torn | tear, tears, hole, holes
complete | all there, all of it | incomplete, unfinished | something missing, anything missing
signed | signed and dated, signed off, signed it, has signed, a signature, signature | unsigned |
primed | full of fluid | unprimed, empty |
loaded | in the pump, in | unloaded, not in |
flushed | flushed through | unflushed |
patent | open, flushing, working, flushing fine | blocked, occluded, clotted, clogged | blockage
compatible | fine together, okay together | incompatible |
safe | | unsafe, dangerous, allergic | allergy, allergies
dry | bone dry, all dry, completely dry | wet, damp, moist, soaked, dripping |
open | wide open, unclamped | closed, shut, clamped |
closed | shut, clamped, rolled right down, rolled down, shut tight, fully tight, tight | open, unclamped, dripping |
sterile | clean, untouched, uncontaminated, nothing touched it, nobody touched it, nothing has touched it, nothing is \
touched it, not touched anything, nobody has touched it | contaminated, dirty, unsterile, touched |
clean | | dirty, soiled |
empty | | full |
half full | right on the line, on the line, at the line, half, at half, about half, about half full, right at half, \
halfway, at the halfway mark, half way | empty, too full, full, overfull, too low, overfilled |
enough | plenty, enough in both | too little, running out, nearly empty, low |
plugged in | plugged, on the mains | unplugged, on battery |
loud enough | loud, audible | too quiet, silent |
quiet | silent, running quietly | alarming, beeping, noisy | alarm, alarms, beeping, beep
well | fine, okay, all right, alright, comfortable, good | unwell, ill, poorly, sick, worse |
as before | unchanged, the same, the same as before, no different | different, changed, swollen, red, worse |
soft | | hard, firm, tender, stiff | cord, pus
firm | tight, secure, snug | loose |
tight | firm, secure, snug | loose |
higher | above it, above the other one, above the primary, up higher | lower, level, below, the same height, at the \
same height, at the same level |
lower | below it, below the other one | higher, above it |
everything set | set, all set, set up, ready | unset |
correctly | correct, right, properly | wrong, wrongly, incorrectly |
right line | right, correct, the right one, the correct one | wrong, the wrong line, the wrong one |
right | correct | wrong, incorrect |
unclear | | clear, all clear, understood |
luer lock syringe | luer lock, a luer lock, a luer lock syringe, luer | oral, an oral one, slip tip, a slip tip |
breathing easily | breathing fine, breathing normally, breathing well | breathless, short of breath, gasping |
as you entered them | the same, unchanged, as i entered them, as entered, as i set them | different, changed |
as the order wants them | as ordered, in range, normal, within limits | high, low, too high, too low, out of range |
as on the other hand | the same, equal, normal | different, weaker, colder, cold, pale, blue |
as it should be | fine, normal, good, okay | red, swollen, puffy, hard, hot, leaking |
done | finished, complete | unfinished |
pump running | running, going, infusing, running fine, running well, running quietly, running smoothly | stopped, \
off, paused, alarming |
silent | quiet | beeping |
stopped | over, stopped now, dry | still bleeding, bleeding, oozing, still oozing |
"""
_DEEDS = """
# asked | so | not so | what is then there
match | matches, match, the same, same, identical, exactly what is written, both say the same, the same number, \
agree, agrees, right, correct, matching, tally, tallies, tie up, ties up, tie in, ties in, line up, lines up, check \
out, checks out, correspond, corresponds, add up, adds up, square up, fit together, spot on, bang on, dead on, same \
on both, same on each, same on all, same in both, same both places, same as the order, same as on the order, same as \
ordered, as the order says, as on the order, just as ordered, exactly as ordered, as ordered, as prescribed, what is \
ordered, what is on the order, what the order says, what was ordered, what it says on the order, no difference, no \
differences, no discrepancy, no discrepancies, no mismatch, one and the same, word for word, all present and correct, \
in line, in order, accurate, a perfect match, a match, concur, concurs, is the same, are the same | different, wrong, \
off, spelled differently, a mismatch, not the same, off by, mixed up, do not tally, out, not matching, mismatched, \
not right, out of line, at odds | difference, mismatch, differences, discrepancy, discrepancies
agree | agrees, agree, the same, identical, match, matches, in agreement, right, correct, same, matching, tally, \
tallies, tie up, ties up, tie in, ties in, line up, lines up, check out, checks out, correspond, corresponds, add up, \
adds up, square up, fit together, spot on, bang on, dead on, same on both, same on each, same on all, same in both, \
same both places, same as the order, same as on the order, same as ordered, as the order says, as on the order, just \
as ordered, exactly as ordered, as ordered, as prescribed, what is ordered, what is on the order, what the order \
says, what was ordered, what it says on the order, no difference, no differences, no discrepancy, no discrepancies, \
no mismatch, one and the same, word for word, all present and correct, in line, in order, accurate, a perfect match, \
a match, concur, concurs, is the same, are the same | different, wrong, off, differ, disagree, disagrees, not the \
same, do not tally, out, not matching, mismatched, not right, out of line, at odds | difference, mismatch, \
differences, discrepancy, discrepancies
meet | meets, meet, meet it, meets it, on target, met, within it, as ordered, at target, in target, in \
range, within range, within the target, in the target, where they want them, where they want it, where they should \
be, where it should be, where they are meant to be, where they are supposed to be, where they need to be, right where \
they should be, hit the target, hits the target, hitting the target, meeting the target, good, fine, in line, in the \
range, reach the target, reached the target | miss, off, too high, too low, out of range, off target, below target, \
above target, under, over |
drip | drips, drip, dripping, dripping again, dripping nicely | stopped, stopped dripping, dry, still |
falling | falling, dripping, drips, drip, dropping, falling nicely, dropping nicely, coming down, running, coming, \
coming through, coming nicely, coming steadily, coming along, plopping, plinking, ticking, ticking along, ticking \
away, drops coming, drops fall, flowing, going, drip drip drip, one after another, one after the other | stopped, \
stopped dripping, stopped falling, dry, hanging |
run freely | runs freely, run freely, ran freely, flows freely, went in freely, runs, freely, runs fine, runs easily, \
went in easily, went in fine, goes in easily, smooth, easy | stiff, hard to push, hard, blocked, slow | resistance
runs freely | runs freely, flows freely, went in freely, freely, runs easily, went in easily | stiff, hard to push, \
blocked | resistance
easily | easily, easy, goes in easily, went in easily, went in fine, went in easy, goes in fine, went in like butter, \
smooth, smoothly, went in smoothly, really easy | stiff, hard to push, really stiff, hard, hard going, blocked, \
stuck, will not go in, will not go, will not flush, tight | resistance
hang higher | hangs higher, higher, hanging higher, above it, above the primary, hangs above it | lower, level, hangs \
lower, the same height, at the same height |
understand | understands, understood, gets it, got it, knows, clear on it | confused, no idea, does not get it |
follow | follows, follow | |
ask | asks, asks for it, says so | |
say that | says so, says that, says it | |
run in | run in, run in completely, finished, empty, through, in | still running | some left, fluid left
comes out | comes out, says so | |
"""
_SEEN = """
# asked | also | when there is some | when there is none
air | bubble, bubbles, air bubble, air bubbles, air in it, big one, tiny one | | airless
bubbles | bubble, air, air bubbles | |
kinks | kink, bends, bend | kinked, bent | straight, straight all the way
loose connections | loose connection, loose one | loose | tight, firm
redness | red skin | red, reddened, pink, inflamed, a bit red |
swelling | lump | swollen, puffy, swelled up, swelling | flat
pain | pains, tenderness, soreness, discomfort | painful, sore, tender, hurting, hurts, hurt, in pain, burning, burns \
|
chest pain | pains | hurting, hurts, in pain |
leaks | leak, leakage, drip, drips, leak in it | leaking, leaky, wet, dripping | dry, all dry, tight
leak | leaks, leakage, drip, drips | leaking, leaky, wet, dripping | dry, all dry, tight
itching | itch, rash | itchy, itching |
short breath | shortness of breath | short of breath, breathless |
alarm | alarms, beep, beeps, beeping | alarming, beeping, in alarm | quiet, silent, running quietly
allergy | allergies, known allergies, known allergy, reaction, reactions | allergic, allergic to it, allergic to this \
drug |
hard cord | cord, hard cords | hard, corded | soft
pus | discharge | oozing |
bleeding | blood, oozing | bleeding, oozing, still bleeding | dry
blood return | blood, flash, flash of blood, blood back, flashback, red, return, return of blood, some red | bleeding \
back, coming back |
drops | drips, drop, drop falling, drops falling | falling, dripping, dropping | stopped, dry
fluid | liquid, some left, plenty, lots, fluid left, solution | full, half full | empty, dry
resistance | | stiff | smooth
unclear | questions, question | unclear | clear
"""


def _rows(table: str) -> tuple[tuple[str, tuple[str, ...], tuple[str, ...], tuple[str, ...]], ...]:
    rows = []
    for row in table.replace("\\\n", "").strip().splitlines():
        if not row.startswith("#"):
            asked, *cells = (cell.strip() for cell in row.split("|"))
            so, not_so, flaws = (
                tuple(item.strip() for item in cell.split(",") if item.strip()) for cell in (*cells, "", "")[:3]
            )
            rows.append((asked, so, not_so, flaws))
    return tuple(rows)


QUALITIES = tuple(Quality(asked, (asked, *so), not_so, flaws) for asked, so, not_so, flaws in _rows(_QUALITIES))
"""What things are like; longer ones are looked for first. Words of the trade (common practice, no source)."""
DEEDS = tuple(Quality(asked, so, not_so, flaws) for asked, so, not_so, flaws in _rows(_DEEDS))
"""What things do."""


@dataclass(frozen=True)
class Finding:
    """Something that is there or is not.

    Attributes:
        asked: how a question names it: "redness".
        nouns: what else it is called: "red skin".
        so: what says that there is some: "red".
        not_so: what says that there is none, beside its denial: "straight".
    """

    asked: str
    nouns: tuple[str, ...]
    so: tuple[str, ...]
    not_so: tuple[str, ...]


FINDINGS = tuple(Finding(asked, (asked, *also), so, not_so) for asked, also, so, not_so in _rows(_SEEN))
"""What is looked for."""
GOOD_FINDINGS = frozenset({"blood return", "drops", "fluid"})
"""Findings that are welcome: "it looks fine" says nothing of them."""
