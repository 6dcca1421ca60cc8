"""How else people say the alternatives that lines at the bench name, in English: "no bubbles" for "none".

Words of the bench and of every day (common practice, no source). An author's own phrases come first;
what here would fit two alternatives of one line is taken for neither.
"""

_TABLE = """
all there | complete, all complete, everything is there, nothing missing, nothing is missing, nothing lacking, all \
of it, complete and signed, clear and signed, signed and complete, all signed, all three, everything there, all \
present
something missing | missing, one thing missing, one missing, incomplete, not complete, not all there, not signed, \
unsigned, no signature, no rate, no date, no dose, no volume, nobody signed, signature missing, rate missing, date \
missing, left out
safe to give | no allergies, no known allergies, no allergy, not allergic, she not allergic, he not allergic, safe, \
no allergies on file, no allergies listed, no allergies in chart, okay to give, fine to give, none listed, nothing \
listed
allergic | she allergic, he allergic, patient allergic, allergy, allergic to, allergic to it, not safe, not safe to \
give, an allergy, she has allergy, he has allergy, known allergy
none | no air, no bubbles, no air bubbles, bubble free, air free, not a single bubble, not one bubble, nothing in, \
no bubbles at all, no air at all, only fluid, all clear, no bubbles left, free of air, clear of air, nothing
some | bubbles, bubble, some air, some bubbles, air, one bubble, a few bubbles, few bubbles, couple of bubbles, \
little air, air bubbles, big bubble, still some, still bubbles, still air, there is some, small bubble, tiny bubble
fit to use | all good, good, fine, looks good, good to use, fine to use, okay to use, all fine, nothing wrong, all \
okay, clear and in date, clear intact and in date, in date and clear
clear and dry | clear and intact, clear no leaks, dry and clear, all clear, clear and no leaks, clear not leaking, \
all good, clear and sealed, no leaks and clear
cloudy | hazy, murky, milky, not clear, particles, bits in, something floating, discoloured, discolored, bit cloudy, \
things floating, flakes
leaking | leaks, leak, a leak, wet, dripping, torn, hole, small leak, drop outside, drops outside, bit wet
expired | out of date, past its date, past date, too old, not in date, date passed, overdue, outdated
sealed and in date | in date and sealed, both sealed and in date, sealed and good, all sealed and in date, sealed \
and not expired, both fine, all good, both good
opened | open, already open, torn, not sealed, seal broken, unsealed, been opened, already opened
healthy | good, fine, all good, all fine, normal, clean and dry, no redness, soft and cool, nothing wrong, no \
problems, not red not swollen, okay, cool and soft, no redness or swelling, pink and healthy, perfect
red | bit red, little red, reddened, pink, redness, some redness, red around site, slightly red, inflamed
swollen | puffy, swelling, bit swollen, some swelling, little swollen, slightly swollen, bit puffy, swelled up
painful | hurts, sore, tender, painful to touch, in pain, hurting, pain, she in pain, he in pain, it hurts her, it \
hurts him
from the library | library, in library, used library, i used library, picked from library, from list, off list, from \
menu, chose from library, selected from library, drug library, i picked from library, i chose from library, picked \
off list
by hand | manually, typed in, i typed in, entered myself, i entered myself, keyed in, i keyed in, entered by hand, \
no library, typed by hand, i did by hand
running quietly | running, running fine, running well, quiet, no alarm, no alarms, infusing, all quiet, infusing \
quietly, running smoothly, no beeping, going fine, running normally
alarming | beeping, alarm, an alarm, alarms, beeps
stopped | not running, off, paused, not going, standing still, has stopped
together | compatible, may run together, can run together, fine together, okay together, safe together, go together
apart | incompatible, not compatible, not together, must stay apart, separate, keep apart, stay apart, separately
the secondary | secondary, small bag, piggyback, just secondary, only secondary, small one, little bag, just \
piggyback
the primary | primary, big bag, main bag, only primary, just primary, big one, main one
both | both of them, both drip, two of them, both dripping, both drips
neither | neither of them, none of them, nothing drips, no drops, nothing dripping, none, not one of them
luer lock | luer, luer lock syringe, luer lock one
oral | oral one, oral syringe, for oral use
runs freely | freely, flushes easily, runs easily, no resistance, goes in easily, smooth, flushes well, easy, \
easily, went in easily, flushes freely, running freely, ran freely
resistance | hard to push, stiff, blocked, will not flush, some resistance, hard, will not go in
pain | hurts, painful, she has pain, he has pain, some pain, hurting, it hurts her, it hurts him
swelling | puffy, swells, swollen, some swelling, bit swollen
whole | intact, complete, in one piece, tip there, all there, nothing missing, undamaged
piece missing | tip missing, broken, part missing, not whole, bit missing, broken off, not complete
dry | no bleeding, stopped, has stopped, no blood, not bleeding, no more blood, bleeding stopped, all dry
still bleeding | bleeding, oozing, blood, still oozing, bleeds, still blood, bit of blood
feeling fine | fine, good, well, comfortable, okay, feels fine, feels good, she fine, he fine, feeling good, feeling \
okay
in pain | pain, hurts, sore, hurting, she in pain, he in pain, has pain
itching | itchy, itches, itch
short of breath | breathless, out of breath, hard to breathe, short breath, struggling to breathe
breathing easily | breathing fine, breathing normally, easy, comfortable, breathing well, breathing okay
still fluid | fluid, some left, not empty, plenty, still some, half full, fluid left, plenty left, some fluid, still \
some left
empty | no fluid, nothing left, run dry, dry, all gone, ran out, run out, bag empty, nothing in
same fluid | same, the same, identical, same again, same one, same bag
something else | another fluid, different, different fluid, not same, different one, another one
all open | open, every one open, they all open, everything open, none closed
one closed | closed clamp, one still closed, one shut, one not open, not all open
sound | fine, good, all good, intact, no problems, okay, nothing wrong
a kink | kinked, kink, bent, kinks
something loose | loose, loose connection, one loose
right line | right one, correct line, correct one, right, correct
wrong line | wrong one, wrong, other line
loose connection | loose, something loose, loose one
changed | not healthy, different, not normal, looks bad
soft | feels soft, not hard
"""


def _read() -> dict[str, tuple[str, ...]]:
    rows = (row.partition("|") for row in _TABLE.replace("\\\n", "").strip().splitlines())
    return {name.strip(): tuple(way.strip() for way in ways.split(",")) for name, _, ways in rows}


WAYS = _read()
"""By the alternative, as it is written: other ways to say it."""
