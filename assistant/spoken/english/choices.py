"""How else people say the alternatives that lines at the bench name, in English: "no bubbles" for "none".

Words of the bench and of every day (common practice, no source). An author's own phrases come first;
what here would fit two alternatives of one line is taken for neither.
"""

from dataclasses import dataclass

_TABLE = """
all there | complete, all complete, everything is there, nothing missing, nothing is missing, nothing lacking, all \
of it, complete and signed, clear and signed, signed and complete, all three, everything there, all present, nothing \
left out, not missing anything, full, all in order, nothing lacks, everything on, all on it, all on there
something missing | missing, one thing missing, one missing, incomplete, not complete, not all there, not signed, \
unsigned, no signature, no rate, no date, no dose, no volume, nobody signed, signature missing, rate missing, date \
missing, left out, something lacking, lacks something, part missing, bit missing, not everything there, not \
everything, no signature on, lacks signature, illegible, not legible, not readable, smudged, something left out, \
left something out, forgot something, left out something, left bit out, missed something, something missed, \
something forgotten, not all of it, one thing left out, left part out, missed part, missed bit
safe to give | no allergies, no known allergies, no allergy, not allergic, she not allergic, he not allergic, safe, \
no allergies on file, no allergies listed, no allergies in chart, okay to give, fine to give, none listed, nothing \
listed, no allergy to it, allergic to nothing, no allergy on, no allergies on, nothing on allergies, none known, no \
allergies recorded, no allergies charted
allergic | she allergic, he allergic, patient allergic, allergy, allergic to, allergic to it, not safe, not safe to \
give, an allergy, she has allergy, he has allergy, known allergy, allergic to this, allergic to that, allergies, has \
allergy, allergy to it, allergy on, there allergy, allergic to drug, reacts to it
fit to use | all good, good, fine, looks good, good to use, fine to use, okay to use, all fine, nothing wrong, all \
okay, clear and in date, clear intact and in date, in date and clear, fit, all fit, perfect, usable, can be used, \
sound, clear dry in date, clear whole in date, no problem, no problems, no issues, okay
clear and dry | clear and intact, clear no leaks, dry and clear, all clear, clear and no leaks, clear not leaking, \
all good, clear and sealed, no leaks and clear, clear no leak, clear and tight, no leaks clear
cloudy | hazy, murky, milky, not clear, particles, bits in, something floating, discoloured, discolored, bit cloudy, \
things floating, flakes, precipitate, bits in it, specks, sediment, misty, dirty, yellowish, flaky, crystals, \
cloudiness, cloud, floaters, particles in it, bits floating, things in it
leaking | leaks, leak, a leak, wet, dripping, torn, hole, small leak, drop outside, drops outside, bit wet, leaky, \
seeping, dripping out, damp, moist, puncture, punctured, hole in it, split, leaking out, loses fluid, losing fluid
expired | out of date, past its date, past date, too old, not in date, date passed, overdue, outdated, gone out of \
date, over its date, past expiry, past expiry date, past use by, expiry passed, passed its date, date gone, date \
expired, not good any more, has expired, no longer in date, ran out, run out, date past
sealed and in date | in date and sealed, both sealed and in date, sealed and good, all sealed and in date, sealed \
and not expired, both fine, all good, both good, sealed in date, seal fine in date, intact in date, all fine, both \
all right, sealed and current, closed and in date, good, fine, no tears in date
opened | open, already open, torn, not sealed, seal broken, unsealed, been opened, already opened, tampered, seal \
gone, undone, not closed, damaged, ripped, tear
healthy | good, fine, all good, all fine, normal, clean and dry, soft and cool, nothing wrong, no problems, not red \
not swollen, okay, cool and soft, no redness or swelling, pink and healthy, perfect, looks normal, soft and dry, \
clean, nothing to see, no changes, no signs of anything, unremarkable, cool soft and dry, no redness no swelling, no \
redness no swelling no pain, not red not swollen not painful
red | bit red, little red, reddened, pink, redness, some redness, red around site, slightly red, inflamed, pinkish, \
reddish, flushed, redness around it, red streak
swollen | puffing up, puffy, swelling, bit swollen, some swelling, little swollen, slightly swollen, bit puffy, \
swelled up, swells, puffed up, bigger, lump, bulging
painful | hurts, sore, tender, painful to touch, in pain, hurting, pain, she in pain, he in pain, it hurts her, it \
hurts him, pain there, hurts there, burns, stings, aching, aches, soreness, tenderness
from the library | library, in library, used library, i used library, picked from library, from list, off list, from \
menu, chose from library, selected from library, drug library, i picked from library, i chose from library, picked \
off list, chosen from library, found in library, found it in library, took it from library, selected in library, \
chose in library, through library, using library, with library, out of library, from drug library, picked in \
library, via library, drug list, off drug list, in drug library, got from library
by hand | manually, typed in, i typed in, entered myself, i entered myself, keyed in, i keyed in, entered by hand, \
no library, typed by hand, i did by hand, manual, keyed by hand, put in by hand, put in myself, typed myself, typed, \
keyed, entered, hand entered, without library, set by hand, manual entry, entered manually, keyed manually, \
programmed by hand, own entry, put in manually, typed manually
running quietly | running, running fine, running well, quiet, no alarm, no alarms, infusing, all quiet, infusing \
quietly, running smoothly, no beeping, going fine, running normally, runs, runs fine, runs well, runs quietly, \
running no alarm, running without alarm, running as should, up and running, ticking along, runs smoothly, runs \
normally, still running, running nicely, working fine
alarming | beeping, alarm, an alarm, alarms, beeps, alarm on, alarm going, alarm sounding, sounding, ringing, \
buzzing, in alarm, bleeping, an alert
stopped | not running, off, paused, not going, standing still, has stopped, stopped itself, standing, halted, paused \
itself, at standstill, turned off, switched off, came to stop, does not run, not run, not infusing, idle
together | compatible, may run together, can run together, fine together, okay together, safe together, go together, \
mix, can mix, okay in one line, fine in one line, can go together, may go together, can share, compatible together, \
compatible with each other, run together, can be run together, safe to run together, allowed together, can run in \
one line
apart | incompatible, not compatible, not together, must stay apart, separate, keep apart, stay apart, separately, \
keep separate, keep them separate, kept apart, has to be separate, have to stay apart, not mix, never together, not \
run together, not go together, can not run together, may not run together, incompatible together, on own line, own \
line, separate lines, on their own, must not run together, must not mix, not share, not allowed together, must be \
kept apart, must be separate
the secondary | secondary, small bag, piggyback, just secondary, only secondary, small one, little bag, just \
piggyback, secondary drips, secondary dripping, small bag drips, piggyback drips, secondary only, secondary chamber, \
secondary is dripping, secondary one
the primary | primary, big bag, main bag, only primary, just primary, big one, main one, primary drips, primary \
dripping, big bag drips, primary only, primary chamber, primary one, main line, large one, large bag
both | both of them, both drip, two of them, both dripping, both drips, two drip, two dripping, they both drip, both \
running, both are
neither | neither of them, none of them, nothing drips, no drops, nothing dripping, none, not one of them, no one \
drips, neither one, neither is, neither dripping, none dripping, none drips, neither one drips, nothing moving, \
nothing comes, both stopped, both still, not any, no drops at all, no drips, no dripping
luer lock | luer, luer lock syringe, luer lock one
oral | oral one, oral syringe, for oral use, mouth
runs freely | freely, flushes easily, runs easily, no resistance, goes in easily, smooth, flushes well, easy, \
easily, went in easily, flushes freely, running freely, ran freely, flows freely, free, runs well, flows well, \
flushes fine, goes in fine, went in fine, runs fine, without resistance, smoothly, flushed easily, flushed freely, \
easy to push, pushes easily, no problem
resistance | hard to push, stiff, blocked, will not flush, some resistance, hard, will not go in, resisting, \
resists, stuck, tight, hard going, stiff to push, not go in, not flush, can not push, not move, occluded, clotted, \
clogged, difficult to push, does not flush, not run freely, hard to flush
pain | hurts, painful, she has pain, he has pain, some pain, hurting, it hurts her, it hurts him, burns, stings, \
sore, aching
swelling | puffy, swells, swollen, some swelling, bit swollen, puffing up, lump
whole | intact, complete, in one piece, tip there, all there, nothing missing, undamaged, entire, in one, unbroken, \
all of it, complete tip, nothing broken, nothing broken off
piece missing | tip missing, broken, part missing, not whole, bit missing, broken off, not complete, snapped, \
snapped off, incomplete, part gone, tip gone, bit gone, shorter, too short, piece gone, cut off, not all there
dry | no bleeding, stopped, has stopped, no blood, not bleeding, no more blood, bleeding stopped, all dry, no blood \
coming, bleeding has stopped, stopped now, no oozing, not oozing, no longer bleeding, not bleeding any more, clean \
and dry, no blood any more, no bleeding any more
still bleeding | bleeding, oozing, blood, still oozing, bleeds, still blood, bit of blood, bleeding still, bleeds \
still, oozes, drop of blood, some blood, blood coming, not stopped, not dry, wet, trickling, bleeding some
feeling fine | fine, good, well, comfortable, okay, feels fine, feels good, she fine, he fine, feeling good, feeling \
okay, feels well, all right, feels all right, happy, no problems, feels okay, fine in self, not any complaints, says \
fine, no complaints, doing fine, doing okay, doing well, doing good
in pain | pain, hurts, sore, hurting, she in pain, he in pain, has pain, painful, aching, has some pain, feels pain, \
complains of pain
itching | itchy, itches, itch, scratching, hives, itchy skin, itching all over, has rash, rash
short of breath | breathless, not catch breath, not catch his breath, \
not catch her breath, out of breath, hard to breathe, short breath, struggling to breathe, can not breathe, \
not breathe, gasping, breathing hard, trouble breathing, wheezing, puffing, struggling for breath, breathing fast
breathing easily | breathing fine, breathing normally, easy, comfortable, breathing well, breathing okay, breathes \
easily, breathing easy, no trouble breathing, no trouble with breath
still fluid | fluid, some left, not empty, plenty, still some, half full, fluid left, plenty left, some fluid, still \
some left, has fluid, enough, fluid in, fluid in it, lots left, lots of fluid, some fluid left, bit of fluid, plenty \
of fluid, not dry, got fluid, fluid there, still fluid left, some in it, bit left, some liquid, not run out, quarter \
full, third full, full, nearly full
empty | no fluid, nothing left, run dry, dry, all gone, ran out, run out, bag empty, nothing in, no fluid left, \
nothing in it, all run out, all in, emptied, gone, all used up, used up, no more fluid, none left, bone dry, dried \
out, no liquid, drained, run through, no fluid in it, no fluid in, all run in, finished, not any left
same fluid | same, the same, identical, same again, same one, same bag, same kind, same thing, same sort, same \
solution, one and the same, unchanged, no change, identical fluid, same type
something else | something different, something new, \
another fluid, different, different fluid, not same, different one, another one, another solution, \
not same fluid, other fluid, changed, wrong fluid, new fluid
all open | open, every one open, they all open, everything open, none closed, all clamps open, every clamp open, no \
clamp closed, none shut, nothing closed, nothing clamped, all of them open, each open, each one open, all unclamped, \
none clamped, no closed clamp, no clamps closed
one closed | closed clamp, one still closed, one shut, one not open, not all open, closed, shut, clamped, one \
clamped, roller closed, still closed, clamp closed, clamp shut, one clamp closed, two closed, some closed, not open, \
found closed one
sound | fine, good, all good, intact, no problems, okay, nothing wrong, all fine, undamaged, both good, all okay, no \
faults, no problem, good order
a kink | kinked, kink, bent, kinks, twisted, folded, pinched, squashed, knotted
something loose | loose, loose connection, one loose, wobbly, came loose, not tight, one not tight, connection loose
right line | right one, correct line, correct one, line right, one right, line correct, right all \
along, right line tight, right and tight
wrong line | wrong one, wrong, other line, line wrong, not right line, not right one, different line, different one
loose connection | loose, something loose, loose one, connection loose, connections loose, not tight, one not tight, \
something not tight, came loose
changed | not healthy, different, not normal, looks bad, different now, worse, got worse, redder, not same, not as \
before, something changed
soft | feels soft, soft and flat, smooth, no cord no pus, soft all way, supple
none / some | no air, no bubbles, no air bubbles, bubble free, air free, not a single bubble, not one bubble, \
nothing in, no bubbles at all, no air at all, only fluid, all clear, no bubbles left, free of air, clear of air, \
nothing, clear, all out, air all out, air out, not any, not any air, airless, only liquid, all liquid, all fluid, \
nothing but fluid, not see any, not one, not seen any, zero
none | nothing, nothing there, nothing of kind, nothing like that, not any, not one, none at all, nothing at all, no \
such thing
some / none | bubbles, bubble, some air, some bubbles, air, one bubble, a few bubbles, few bubbles, couple of \
bubbles, little air, air bubbles, big bubble, still some, still bubbles, still air, there is some, small bubble, \
tiny bubble, lots of bubbles, lots of air, not all out, pocket of air, air pocket, gap of air, air gap, air left, \
bubbles left, loads of bubbles, air in, bubbles in, foam, not free of air, not clear, see bubbles, see air
safe to use | no allergies, no known allergies, no allergy, not allergic, safe, okay to use, fine to use, none \
listed, nothing listed, none known, allergic to nothing
torn | ripped, tear, rip, hole, split, damaged, open, opened, broken, not sealed, seal broken, punctured, not \
intact, unsealed, package open
not listed | could not find, could not find there, could not find in there, not in library, not in list, not on \
list, not in there, not found, not find, not listed there, missing from library, missing from list, unlisted, absent \
from library, not there, library not have, list not have, no entry, no such drug, not in drug library, not on menu
an alarm | alarming, alarm, alarms, beeping, beeps, it beeping, alarm going off, went off, bleeping, pump alarming, \
pump beeping, pump alarm, beep
freely | free, easy, easily, smooth, smoothly, no resistance, without resistance, goes in easily, goes in fine, went \
in easily, went in fine, runs well, runs easily, flows freely, flushed easily, flushed freely, easy to push, pushes \
easily, runs fine, flushes fine
patent | open, flushes freely with blood return, patent with blood return, flushes freely blood return, blood return \
and flushes, flushes well with blood return, flushes freely with blood, flushes fine with blood return, good flush \
and blood return
no blood | nothing coming back, nothing comes back, nothing came back, \
blood not come back, no blood comes, no blood coming, no blood back, no flashback, not see blood, not get \
blood, not get any blood, not see any blood, nothing back, blood did not come, no blood return, without blood, no \
return of blood, not any blood
blood return | blood, blood back, blood coming back, blood comes back, see blood, got blood, good blood return, \
flashback, flash of blood, get blood, blood returns, returns blood, blood in syringe, red, some blood
dizzy | light headed, dizziness, faint, woozy, lightheaded, giddy
run in | empty, finished, all in, all gone, all run in, all gone in, nothing left, none left, done, complete, \
through, all through, gone through, run through, dry, run dry, no more left, no fluid left, drained, all of it run \
in, all of it in, gone in, completely in, fully in
some left | bit left, little left, not empty, fluid left, left in it, still left, some still in, still some, still \
some in, some in it, still fluid, some fluid, some fluid left, not finished, not all in, not all run in, not all of \
it in, few drops left, not all gone, remains, remaining, some remains, more to go, not done
kinked | kink, kinks, bent, twisted, folded, pinched, squashed, knotted, looped, crushed, kink in it
loaded wrongly | wrongly loaded, wrong, in wrong, loaded wrong, not loaded right, not loaded correctly, not loaded \
well, in wrong way, wrong way round, misloaded, not seated, not seated right, in backwards, upside down, in crooked, \
crooked, not in right, not in properly, loaded badly, not right in pump, out of channel
air | some air, bubbles, bubble, air bubble, air bubbles
a change | changed, different, site changed, site red, site swollen, site puffy, swelling, swollen, red, redness, \
sore, painful, puffy, leaking, something changed, not same, worse, got worse, looks different, something at site, \
hurts, pain, wet
quiet and healthy | both good, both fine, all good, all fine, everything fine, nothing wrong, no alarm no change, \
everything quiet and healthy, all well, no problems, everything good, fine
quiet and fine | both good, all good, all fine, all well, everything fine, no alarm and patient fine, all calm, no \
problems
patient unwell | unwell, poorly, ill, sick, not well, feels sick, feels unwell, dizzy, worse, not fine, not feeling \
well
comes out | come out, taken out, to be taken out, remove, removed, to be removed, out it comes, goes, to come out, \
catheter out, must come out, has to come out
stays in | stays, stay, leave in, leave it in, keep in, keep it in, left in, kept in, not come out, not comes out, \
catheter stays, to stay in, stays where, stays put, remains in, remains, has to stay in, stays there, stay there
it stays | stays, stay, leave in, leave it in, keep in, keep it in, kept in, not come out, remains, remains in, \
stays put
it comes out | come out, taken out, remove, removed, to be removed, goes, out, catheter out
all three | all there, all of them, all of it, all complete, everything, everything there, yes to all, three of \
three, all three good, all three fine, all good, all fine, nothing missing, all three of them, primed loaded no air, \
primed and loaded no air, all done
within range | in limits, within limits, inside range, inside limits, in usual range, inside usual range, fine, \
okay, in usual, normal, usual, inside, inside it
out of range | too high, too low, too fast, too slow, \
outside, outside limits, outside usual range, out of limits, above range, below range, over limit, \
under range, beyond range, over, above limit, too fast, too slow, not in range, not within range, not normal, not \
usual
in date | date fine, date good, date okay, not overdue, still good, within date, in its date, still fine, not due, \
not due yet, current, okay, good, date in order, within its time
overdue | not in date, not in date any more, not in date any longer, \
out of date, past date, past due, due yesterday, over date, date passed, past its date, past its change \
date, past change date, too long, too old, expired, late, been up too long, hanging too long, not in date, due \
already, long overdue, over time, over its time
no label | no label on, label missing, unlabelled, unlabeled, not labelled, not labeled, without label, label gone, \
label fell off, no sticker, not find label, not see label, not find any label, not see any label, nothing written, \
not have label, nobody labelled, lost its label, no date on, not dated, undated
in time | in date, within time, not too long, fine, okay, within limit, hung today
hanging too long | overdue, up too long, over time, been hanging too long, been up too long, past time, expired
plugged in and loud | both, both good, plugged and loud, all good
unplugged | not plugged, battery, plug out, running on battery, pulled out
hard to hear | too quiet, too soft, quiet, not hear, not loud, barely audible
the same | same, both same, alike, identical, no difference, no differences, equal, matching, match, all alike, same \
on both, same both sides, same in both, not different
different | difference, differences, differs, one different, not same, not alike, not equal, unlike, paler, colder, \
cooler, weaker, bluer, pale, cold, blue, weak, no pulse, one colder, one paler, one weaker, less feeling, numb, \
tingling, warmer, mismatched, not match
hard cord | cord, like cord, hard, firm, rope, like rope, hard line, like string, stiff, corded, hardened
pus | discharge, oozing pus, yellow stuff, pus out, pus coming, weeping, yellow discharge
held firmly | firm, held, tight, firmly held, both firm, both held, secure, held tight, held tightly, held well, no \
gap, no gaps, no gap at all, gripped, both held firmly, snug, sits firmly, sits tight, not gap, held in, no space, \
no play
a gap | gap, gaps, space, loose, not held, not firm, not tight, not held firmly, wobbly, gap there, gap between, \
some play, not secure, bit of gap, small gap
as ordered | same, same as order, matches, match, matches order, agrees, agrees with order, exactly \
as order, exactly as ordered, entry right, entry correct, just as ordered, according to order, what order says, \
entered right, entered correctly, no slip, same as on order, identical, not slip, like order, no mistake, no \
difference
a slip | wrong, slip, typo, mistake, my mistake, error, mistyped, entered wrong, entered wrongly, wrong entry, not \
as ordered, not same, not right, not match, different, differs, different from order, not what ordered, typing \
mistake, slipped, not correct, entry wrong, differs from order, not agree
low | too low, lowish, below normal, below range, under range, under normal, on low side, below, under, low side, \
lower than normal, decreased, reduced
normal | in range, within range, in normal range, within normal, within normal range, normal range, in limits, \
within limits, fine, within normal limits, inside range, not low or high, neither low nor high, not low and not \
high, not low not high, not high not low, in between, all normal
high | too high, above normal, above range, over range, over normal, on high side, raised, elevated, above, high \
side, higher than normal, increased
level | same level, at same level, level with heart, same height, at same height, level with him, level with her, at \
patient level, at his level, at her level, at level of patient, equal height, at heart level, at bed height, level \
with bed, beside patient, same height as patient, level with patient, as high as patient
far above | too high, too high up, way up, way too high, much too high, way above, high above, well above, far above \
patient, high up, up too high, higher than patient, much higher than patient, far too high, a lot higher, much above
a soft limit | soft one, soft limit, can be passed, can be overridden
a hard limit | hard one, hard limit, can not be passed, can not override, can not be overridden
clear | clear now, gone, alert gone, no alert, no other alert, no more alerts, nothing, nothing on, empty, no \
message, no alarm, cleared, all cleared, no alerts
another alert | second alert, one more alert, new one, more alerts, alert again, next alert, still alert, new \
message, another one
nothing | none, nothing at all, says nothing, not say, no message, nothing of that, not show, does not tell, no \
hint, blank, nothing else running, nothing else is, nothing else there, nothing else runs, nothing else in it, \
nobody else
above the pump | above, above it, upstream, upper, above pump
below the pump | below, below it, downstream, under pump, lower, below pump
another infusion | other infusion, more, something else running, something else, another drug, another bag, second \
one, one more, second one running, another one running, another running, second infusion running
rinse it in | rinse, rinse in, rinse it, flush in, rinsed in
leave it | leave, leave in, left, stays, not rinse, not rinsed
fits the bag | fits, fit, matches bag, agrees with bag, same as bag, right for bag, okay
too little | not enough, less, short, less than bag, running low, insufficient, little left
too much | more, more than bag, over, excess
enough | plenty, lots, lots left, sufficient, enough left, plenty left, enough in both, enough for now, enough in all
nearly empty | almost empty, running out, low, getting low, running low, not enough, not much left, close to empty, \
nearly dry, almost dry
due | due now, it is time, time for it, on time, on schedule, late, overdue
too early | not due, not yet due, not time, early, too soon, not due yet, already given, already had it, given too \
recently
still fresh | fresh, new, not due, not due yet, too early, still good, in date, not old
dry and soft | soft dry, soft and dry, dry soft, fine, all good, normal, healthy
wet | moist, soaked, damp, leaking, leaks, soggy, weeping
complete and right | all correct, everything right, everything correct, nothing missing nothing wrong, nothing \
missing and nothing wrong, correct and complete, all right and complete, word for word, no mistakes nothing missing, \
complete and accurate, perfect, all correct and complete, got everything right, got it all right, repeated \
everything right, said everything right, said it all right, repeated all correctly, repeated everything correctly, \
repeated correctly, everything complete and right, got all right, all repeated right, right and complete, repeated \
it all right, got all correct, all of it correct
something wrong | wrong, something not right, one thing wrong, one wrong, one number wrong, mistake, made mistake, \
made error, error, incorrect, not right, not correct, not all right, not all correct, got one wrong, got something \
wrong, got it wrong, said wrong, mixed up, mistakes, one mistake, wrong number, wrong rate, wrong dose, wrong drug, \
wrong time, wrong volume, rate wrong, dose wrong, drug wrong, time wrong, volume wrong, name wrong, wrong name, got \
rate wrong, got dose wrong, got name wrong, said wrong rate, said wrong dose, said wrong drug
ready-mixed | ready mixed, premixed, pre mixed, mixed already, comes mixed, from pharmacy, mixed in pharmacy, mixed \
by pharmacy
mixed on this ward | mixed it myself, i mixed it, mixed by myself, \
mixed on ward, mixed on unit, mixed here, mixed by us, ward mixed, mixed ourselves
on the screen | on screen, see rhythm, rhythm there, showing, visible, shows, displayed, on monitor
there is none | none, nothing, nothing there, no rhythm, no monitor, not connected, blank, nothing on screen, not on \
screen, not see any
comfortable | fine, okay, good, feels good, feels okay, comfy, all right, no complaints
burning | burns, stings, stinging, burn, burning feeling
a free port | free port, port free, free one, one free, found one, there port, found free port
this line | same line, same one, right line, correct line, right one, this one
another line | different line, other line, not this line, not this one, not same line, different one, wrong one
a second drug | second drug, another drug, one more, another one, second one, one more drug, there second
share one set | share, can share, may share, one set, same set, together, compatible, can share set
safe for tissue | not vesicant, no vesicant, no harm, no damage, not damage tissue, non vesicant, not harmful, \
harmless, not damage, irritates nothing
damages tissue | vesicant, harmful, damages it, damaging, harms tissue, not safe, not harmless
it has moved | moved, moves, has moved, moved on, further down, moved down, travelled
where it was | not moved, same place, in same place, unmoved, has not moved, stuck, did not move, still there, not \
move, not moving, not moved at all
large vein | big vein, big one, large one, good vein, large, big
small vein | little vein, tiny vein, small one, thin vein, small, thin
bleeding | bleeds, blood, some bleeding, bruises, bruising, blood somewhere, bleeding somewhere, new bruise, nosebleed
a bleeding risk | risk, bleeding risk, at risk, has risk, on thinners, on blood thinner, takes thinners, takes blood \
thinner, bleeds easily, bruises easily, yes to thinners, blood thinners, anticoagulants, on anticoagulants, takes \
anticoagulants, anticoagulant, thinners, easy bleeding, takes thinner, on thinner, on warfarin, on aspirin
none / a bleeding risk | no risk, no risks, no thinners, no blood thinners, not on thinners, not on blood thinners, \
not on any, no bleeding, no blood thinners no bleeding, no thinners no bleeding, no anticoagulants, not at risk, no \
easy bleeding, not bleed easily, no blood thinners and no bleeding, no blood thinners no easy bleeding, nothing \
there, no thinners no easy bleeding
none / a free port | no port, no port free, none free, all taken, all used, not one free, no free one, all full
none / a second drug | no second, no second drug, no second one, no other drug, only one, just one drug, only one \
drug, nothing else, nothing follows, just the one, only the one, nothing after it, nothing after, nothing after \
that, no more drugs
"""


@dataclass(frozen=True)
class Aspect:
    """A part of an alternative, "in date" of "sealed and in date".

    Attributes:
        so: what also says that it is so.
        not_so: what says that it is not.
    """

    so: tuple[str, ...]
    not_so: tuple[str, ...] = ()


_ASPECTS = """
# part | so | not so
clear | crystal clear, transparent, see through | cloudy, hazy, murky, milky, discoloured, discolored, particles, \
bits, bits in, flakes, something floating
dry | bone dry, all dry | wet, damp, leaking, leaks, leak, dripping, soaked
in date | date fine, date good, date okay, date right, dates fine, dates good, within date, still good, date valid | \
expired, out of date, past its date, overdue
sealed | intact, unopened, untorn, closed, whole, undamaged, seal intact, seal good, seal fine | torn, ripped, open, \
opened, unsealed, broken, damaged, tear, tears, hole, holes
quiet | silent, running quietly, running, running well, running fine, fine, good, quietly, pump fine, pump good | \
alarm, alarms, alarming, beeping, beeps
healthy | fine, good, normal, looks good, unchanged, no change, site fine, site good | red, swollen, puffy, change, \
changed, sore, redness, swelling
fine | good, well, okay, comfortable, happy, calm, patient fine | unwell, poorly, ill, sick, worse
cool | cold, chilly | warm, hot
swollen | puffy, puffed up, swelling, swelled up | flat
red | reddened, pink, inflamed, redness | pale
sore | painful, hurts, tender, pain, hurting | painless
freely | easily, easy, smooth, smoothly, no resistance, flushes fine, flushes well, went in easily, goes in easily | \
hard, stiff, blocked, resistance, hard to push
blood return | blood, blood back, good blood return, blood comes back, blood coming back, flashback, see blood, \
blood comes | no blood, no return
complete | all there, nothing missing, everything there, full, all of it | incomplete, missing, left out
right | correct, all right, all correct, accurate, nothing wrong | wrong, incorrect, mistake, mistakes
plugged in | plugged, on mains, mains | unplugged, on battery
loud | loud enough, audible, hear it, hear it well | quiet, too quiet
soft | | hard, firm, stiff
primed | filled, full | unprimed, not primed
loaded | in the pump | unloaded, not loaded
no air | no bubbles, air free, free of air, bubble free | air, bubbles, bubble, some air
"""

_PARTS = {
    "fit to use": ("clear", "in date"),
    "all three": ("primed", "loaded", "no air"),
    "freely with blood return": ("freely", "blood return"),
}
"""Alternatives of several parts that their own words do not show."""


def _read() -> dict[str, tuple[str, ...]]:
    rows = (row.partition("|") for row in _TABLE.replace("\\\n", "").strip().splitlines())
    return {name.strip(): tuple(way.strip() for way in ways.split(",")) for name, _, ways in rows}


def _read_aspects() -> dict[str, Aspect]:
    rows = [row.split("|") for row in _ASPECTS.replace("\\\n", "").strip().splitlines() if not row.startswith("#")]
    return {
        part.strip(): Aspect(*(tuple(way.strip() for way in cell.split(",") if way.strip()) for cell in cells))
        for part, *cells in rows
    }


_WAYS = _read()
ASPECTS = _read_aspects()
"""By the part of an alternative: what says that it is so, or not."""


def parts_of(choice: str) -> tuple[str, ...]:
    """The parts that make an alternative; none where it is not made of several."""
    named = _PARTS.get(choice) or tuple(choice.split(" and "))
    return named if len(named) > 1 and all(part in ASPECTS for part in named) else ()


def ways_of(choice: str, choices: tuple[str, ...]) -> tuple[str, ...]:
    """Other ways to say an alternative among these; some are ways to say it only beside another one: "none / some"."""
    name = choice.lower()
    beside = (f"{name} / {other.lower()}" for other in choices if other != choice)
    return (*_WAYS.get(name, ()), *(way for key in beside for way in _WAYS.get(key, ())))


EITHER_OR = tuple(
    {one.strip(), other.strip()}
    for one, _, other in (
        pair.partition("/")
        for pair in (
            *("none/some", "dry/still bleeding", "still fluid/empty", "the same/different", "all open/one closed"),
            *("safe to give/allergic", "safe to use/allergic", "held firmly/a gap", "run in/some left"),
            *("as ordered/a slip", "together/apart", "share one set/apart", "comes out/stays in", "in date/overdue"),
            *("it stays/it comes out", "enough/too little", "none/bleeding", "none/a bleeding risk", "dry/leaking"),
            *("blood return/no blood", "all there/something missing", "all three/something missing"),
            *("within range/out of range", "same fluid/something else", "whole/piece missing", "healthy/changed"),
            *("clear/another alert", "it has moved/where it was", "a free port/none", "large vein/small vein"),
        )
    )
)
"""Pairs of alternatives that leave nothing between them: whoever denies one of them says the other."""

OF_A_PART = frozenset(
    {"some", "still bleeding", "something missing", "something wrong", "cloudy", "leaking", "expired", "torn", "opened"}
    | {"red", "swollen", "painful", "an alarm", "alarming", "a change", "changed", "a kink", "kinked", "air"}
    | {"something loose", "loose connection", "one closed", "different", "a gap", "a slip", "overdue", "pus", "wet"}
    | {"hard cord", "resistance", "pain", "swelling", "piece missing", "some left", "allergic", "short of breath"}
    | {"in pain", "itching", "dizzy", "burning", "bleeding", "a bleeding risk", "low", "high", "too little", "too much"}
    | {"nearly empty", "red and sore", "cool and swollen", "far above", "loaded wrongly", "no label", "patient unwell"}
    | {"the secondary", "the primary", "another infusion", "another alert", "something else", "out of range"}
    | {"it has moved", "too early"}
    | {"hard to hear", "hanging too long", "no blood", "unplugged", "small vein", "large vein"}
)
"""What is so where it is so of a part, or to a degree; everything else is said of the whole."""

PAST = frozenset(
    {"from the library", "by hand", "not listed", "complete and right", "something missing", "something wrong"}
    | {"ready-mixed", "mixed on this ward"}
)
"""What may be told of what was: how something was chosen, or said."""

ORDERED = (
    *("signature", "weight", "dose", "rate", "date", "name", "route", "volume", "time", "fluid", "drug", "drip rate"),
    *("concentration", "frequency", "unit", "units", "amount", "duration", "line", "allergies", "prescriber"),
)
"""What an order, or a colleague who repeats it, may lack."""

ALSO_NEUTRAL = frozenset(
    {"coming", "inside", "she", "he", "her", "him", "his", "patient", "key", "typed", "keyed", "chose", "chosen"}
    | {"selected", "picked", "used", "took", "got", "found", "gums", "nose", "mouth", "running", "flushing"}
    | {"dripping", "drips", "flushes", "runs", "anywhere", "doctor", "peeing", "passing", "urine"}
    | {"sealed", "unopened", "intact", "point", "ordered"}
)
"""Words beside those of `bench_words.NEUTRAL` that change nothing about which alternative it is."""

AT_FAULT = frozenset(
    {
        "hub",
        "joint",
        "connection",
        "tubing",
        "tube",
        "line",
        "port",
        "chamber",
        "spike",
        "clamp",
        "dressing",
        "connector",
    }
    | {"valve", "cap", "site", "skin", "arm", "hand", "vein", "tip", "seal", "label", "package", "outlet", "bag", "set"}
    | {
        "plunger",
        "flange",
        "syringe",
        "pump",
        "roller",
        "slide",
        "catheter",
        "cannula",
        "packet",
        "wrapper",
        "luer",
        "fluid",
        "solution",
    }
)
"""What a fault may be said of, though the line does not name it: "the hub is leaking"."""

FELT = frozenset(
    {"painful", "in pain", "pain", "itching", "burning", "comfortable", "feeling fine", "short of breath", "dizzy"}
    | {"breathing easily", "swelling"}
)
"""What a patient tells: "she says it hurts"."""

DENIED_BY = {
    "loaded wrongly": ("loaded right", "loaded correctly", "loaded properly", "loaded well", "well loaded", "in right"),
    "kinked": ("straight", "straight all the way"),
    "a kink": ("straight", "straight all the way"),
    "leaking": ("tight", "all tight", "sealed", "dry", "all dry"),
    "something loose": ("tight", "all tight", "everything tight"),
    "loose connection": ("tight", "all tight", "everything tight"),
}
"""What says that an alternative is not so: "loaded right" of "loaded wrongly"."""
