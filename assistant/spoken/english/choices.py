"""How else people say the alternatives that lines at the bench name, in English: "no bubbles" for "none".

Words of the bench and of every day (common practice, no source). An author's own phrases come first;
what here would fit two alternatives of one line is taken for neither.
"""

from dataclasses import dataclass

_TABLE = """
all there | complete, all complete, everything is there, nothing missing, nothing is missing, nothing lacking, all \
of it, complete and signed, clear and signed, signed and complete, all three, everything there, all present, nothing \
left out, not missing anything, full, all in order, nothing lacks, everything on, all on it, all on there, every bit \
there, whole thing there, nothing missing at all, every part there, everything on sheet, all filled in, everything \
filled in, complete clear signed, signed and clear, all in there, all four there, everything you need there, no \
gaps, fully complete, all present and correct, all filled out, properly signed and complete, everything on order, \
got everything, every box filled, order complete, nothing lacking at all, doctor signed it and complete, all down \
and signed
something missing | missing, one thing missing, one missing, incomplete, not complete, not all there, not signed, \
unsigned, no signature, no rate, no date, no dose, no volume, nobody signed, signature missing, rate missing, date \
missing, left out, something lacking, lacks something, part missing, bit missing, not everything there, not \
everything, no signature on, lacks signature, illegible, not legible, not readable, smudged, something left out, \
left something out, forgot something, left out something, left bit out, missed something, something missed, \
something forgotten, not all of it, one thing left out, left part out, missed part, missed bit, one bit missing, \
something not there, one thing not there, one not there, thing missing, isn there, no prescriber, nobody has signed, \
never signed, not been signed, has not signed, no sign, blank, one left blank, one box empty, no route, scribble, \
scrawl, gap in it, lacking, unclear, not clear, no duration, no weight, without signature, not complete at all, half \
of it missing, missing one, not filled in, one not filled in
safe to give | no allergies, no known allergies, no allergy, not allergic, she not allergic, he not allergic, safe, \
no allergies on file, no allergies listed, no allergies in chart, okay to give, fine to give, none listed, nothing \
listed, no allergy to it, allergic to nothing, no allergy on, no allergies on, nothing on allergies, none known, no \
allergies recorded, no allergies charted, safe for him, safe for her, safe to go, good to give, all right to give, \
alright to give, ok to give, can have it, can have, allowed to have it, no allergies to it, no allergies at all, not \
got any allergies, has no allergies, no allergies known, no drug allergies, not allergic to anything, no known drug \
allergies, allergies none, chart clear, nothing on chart, nothing against it, nothing written under allergies, no \
reactions, no reaction, okay for him, okay for her, fine for her, fine for him, nil known, nkda, safe to use, clear \
to give, allergy box says none, none on record, no history of allergy
allergic | she allergic, he allergic, patient allergic, allergy, allergic to, allergic to it, not safe, not safe to \
give, an allergy, she has allergy, he has allergy, known allergy, allergic to this, allergic to that, allergies, has \
allergy, allergy to it, allergy on, there allergy, allergic to drug, reacts to it, reacts, reacts badly, reacts to \
tape, reacts to latex, reacts to wipe, had reaction, has reaction, reaction to it, reaction before, rash before, had \
rash, comes out in rash, comes up in rash, breaks out, breaks out in rash, comes up in hives, hives, anaphylaxis, \
anaphylactic, can not have it, can not have, not allowed it, must not have it, red band, allergy band, tape allergy, \
latex allergy, penicillin allergy, antiseptic allergy, chlorhexidine allergy, allergic to one, allergic to tape, \
allergic to latex, allergic to wipe, allergic to antiseptic, allergic to chlorhexidine, allergic to penicillin, \
allergic to one of them, allergy written, allergy listed, allergy documented, is down as allergic, down as allergic, \
listed as allergic, flagged as allergic, intolerant, sensitive to it, swells up with it
fit to use | all good, good, fine, looks good, good to use, fine to use, okay to use, all fine, nothing wrong, all \
okay, clear and in date, clear intact and in date, in date and clear, fit, all fit, perfect, usable, can be used, \
sound, clear dry in date, clear whole in date, no problem, no problems, no issues, okay, all good to use, good to \
go, good to hang, all sound, all in order, in order, in good order, in good condition, good condition, nothing wrong \
with it, nothing wrong at all, no faults, no fault, all fine and in date, clear and good date, clear in date and no \
leaks, clear no leaks in date, clear no leaks and in date, clear sealed in date, clear dry and in date, clear good \
date, sealed clear and in date, safe to use, okay to hang, fine to hang, ready to use, all right, no cloudiness no \
leaks in date, no leaks not cloudy in date, not cloudy not leaking in date, not cloudy not leaking not expired, no \
cloudiness no leaks not expired, not expired not leaking not cloudy, spot on, perfectly good, both fit, both fit to \
use
clear and dry | clear and intact, clear no leaks, dry and clear, all clear, clear and no leaks, clear not leaking, \
all good, clear and sealed, no leaks and clear, clear no leak, clear and tight, no leaks clear
cloudy | hazy, murky, milky, not clear, particles, bits in, something floating, discoloured, discolored, bit cloudy, \
things floating, flakes, precipitate, bits in it, specks, sediment, misty, dirty, yellowish, flaky, crystals, \
cloudiness, cloud, floaters, particles in it, bits floating, things in it, gone cloudy, bit milky, little cloudy, \
bit hazy, slightly cloudy, looks cloudy, foggy, muddy, turbid, opaque, stuff floating, something in it, bits \
floating about, bits in there, flecks, specks in it, dust in it, gone milky, strands, threads in it, cloudy bits, \
hazy bits, clumps, sediment at bottom, settled at bottom, not clear at all, grainy, swirly bits, blurry, particles \
floating, white bits, floating bits
leaking | leaks, leak, a leak, wet, dripping, torn, hole, small leak, drop outside, drops outside, bit wet, leaky, \
seeping, dripping out, damp, moist, puncture, punctured, hole in it, split, leaking out, loses fluid, losing fluid, \
leaks at port, leaks at seam, leaking at seam, leaking at port, leaking from bottom, leaking from port, leaking from \
seam, dripping from bottom, dripping from port, dripping from seam, drips, drip from it, dribbling, trickling, \
weeping, seeping out, oozing, wet outside, wet on outside, wet at bottom, wet at port, wet at joint, wet to touch, \
feels wet, feel wet, bag wet, soaked, sticky, pin hole, pinhole, small hole, tiny hole, fluid coming out, fluid \
outside, fluid leaking, coming out, drops coming out, drops on outside, puddle, has leak, sprung leak, burst, losing \
drops, leaking a bit, leaks a bit, damp at joint, wet joint, drop at joint, drops at joint, moisture, bit damp, \
little wet, slight leak, slow leak, tiny leak, weeps
expired | out of date, past its date, past date, too old, not in date, date passed, overdue, outdated, gone out of \
date, over its date, past expiry, past expiry date, past use by, expiry passed, passed its date, date gone, date \
expired, not good any more, has expired, no longer in date, ran out, run out, date past, expired last month, expired \
last week, expired yesterday, expired last year, out of date by, went out of date, went off, gone off, gone past, \
month out, week out, year out, day out, month over, too old to use, not good any longer, not in date any more, date \
has gone, date has passed, date is gone, date in past, lapsed, well out of date, well past, past it
sealed and in date | in date and sealed, both sealed and in date, sealed and good, all sealed and in date, sealed \
and not expired, both fine, all good, both good, sealed in date, seal fine in date, intact in date, all fine, both \
all right, sealed and current, closed and in date, good, fine, no tears in date, unopened and in date, not opened \
and in date, in date and unopened, sealed not expired, sealed tight and in date, seal intact and in date, packet \
sealed and in date, never opened and in date, intact and current, closed and current, unopened in date, still sealed \
and in date, sealed up and in date
opened | open, already open, torn, not sealed, seal broken, unsealed, been opened, already opened, tampered, seal \
gone, undone, not closed, damaged, ripped, tear, already been opened, somebody opened it, someone opened it, opened \
before, been torn, torn open, ripped open, seal not good, peeled open, half open, bit open, corner open, corner \
lifted, come unsealed, package opened, wrapper open, split open, hole in wrapper, has been opened
healthy | good, fine, all good, all fine, normal, clean and dry, soft and cool, nothing wrong, no problems, not red \
not swollen, okay, cool and soft, no redness or swelling, pink and healthy, perfect, looks normal, soft and dry, \
clean, nothing to see, no changes, no signs of anything, unremarkable, cool soft and dry, no redness no swelling, no \
redness no swelling no pain, not red not swollen not painful, all well, lovely, clean dry and flat, flat and cool, \
flat soft cool, cool and flat, soft flat, nice and soft, no problem, normal colour, normal color, normal skin, skin \
normal, skin looks normal, skin fine, skin good, looks all right, looks well, nothing abnormal, nothing wrong there, \
nothing unusual, site good, site fine, site looks good, site clean, all clear, no issues, no change, no change at \
all, unchanged, same as before, clean and healthy
red | bit red, little red, reddened, pink, redness, some redness, red around site, slightly red, inflamed, pinkish, \
reddish, flushed, redness around it, red streak, gone red, red ring, red patch, red all round, red all around, \
little pink, bit pink, pink ring, rosy, redness round it, red mark, red line, angry, angry looking, looks angry, \
looks red, bright red, blotchy, pink round it, red round needle, red at edges
swollen | puffing up, puffy, swelling, bit swollen, some swelling, little swollen, slightly swollen, bit puffy, \
swelled up, swells, puffed up, bigger, lump, bulging, swelled, swelling up, swollen up, gone puffy, puffing, \
ballooned, blown up, raised, bump, bumpy, lumpy, fat, fatter, tight and puffy, squishy, spongy, filled up, bit of \
swelling, little puffy, some puffiness, puffiness, feels puffy, looks puffy, puffed, bigger than other, bulge, egg \
there
painful | hurts, sore, tender, painful to touch, in pain, hurting, pain, she in pain, he in pain, it hurts her, it \
hurts him, pain there, hurts there, burns, stings, aching, aches, soreness, tenderness, hurts to touch, hurts when \
touched, sore to touch, tender to touch, bit sore, little sore, bit tender, quite sore, winced, winces, wincing, \
flinched, flinches, ouch, ow, says ouch, says it hurts, says it sore, says hurts, said ouch, pain when touched, pain \
on touch, stinging, jumpy when touched, pulled away, does not like it touched, pain at site, cried out
from the library | library, in library, used library, i used library, picked from library, from list, off list, from \
menu, chose from library, selected from library, drug library, i picked from library, i chose from library, picked \
off list, chosen from library, found in library, found it in library, took it from library, selected in library, \
chose in library, through library, using library, with library, out of library, from drug library, picked in \
library, via library, drug list, off drug list, in drug library, got from library, in list, on list, from drug list, \
used drug library, used list, in menu, off menu, picked it, picked it from list, chose it from list, found it in \
list, found it on list, found on list, it was in list, it was in library, was in library, was in list, was on list, \
library entry, library one, came up in library, up in library, preset, from presets, preset used, profile, out of \
list, selected it, tapped it, scrolled to it, scrolled and picked, built in, from built in list, from database, pump \
list, pump library, pump menu, chosen from drug list, drug library used, went through library, via list, pulled it \
up, pulled it from library, pulled from library, library all way
by hand | manually, typed in, i typed in, entered myself, i entered myself, keyed in, i keyed in, entered by hand, \
no library, typed by hand, i did by hand, manual, keyed by hand, put in by hand, put in myself, typed myself, typed, \
keyed, entered, hand entered, without library, set by hand, manual entry, entered manually, keyed manually, \
programmed by hand, own entry, put in manually, typed manually, typed in manually, typed it in, typed it all, typed \
it myself, typed it manually, typed by myself, typed drug in, typed drug in manually, typed drug, entered it myself, \
entered it by hand, entered it manually, put it in by hand, put it in manually, put it in myself, keyed it, keyed it \
in, keyed it in myself, keyed it by hand, keyed all, keyed everything, keyed numbers, keyed in numbers myself, \
punched it in, punched in, did it by hand, did it manually, done by hand, done manually, had to type it, had to \
type, had to key it in, had to key, own numbers, free text, basic mode, manual mode, custom, custom entry, off own \
bat, wrote it in, dialled in, dialled it in, set manually, set it by hand, set it manually, hand typed, manual way, \
programmed manually, letter by letter
running quietly | running, running fine, running well, quiet, no alarm, no alarms, infusing, all quiet, infusing \
quietly, running smoothly, no beeping, going fine, running normally, runs, runs fine, runs well, runs quietly, \
running no alarm, running without alarm, running as should, up and running, ticking along, runs smoothly, runs \
normally, still running, running nicely, working fine, running away, running away quietly, ticking over, ticking \
over nicely, going, going quietly, going nicely, going well, humming, humming along, working quietly, nice and \
quiet, running silent, silent, no sound, no noise, running no noise, running with no alarm, quiet and running, \
infusing no alarm, infusing fine, infusing nicely, all normal, running away fine, purring, calm and running, running \
steady, running steadily, no beeps, running no beeps, quiet as anything, infusing without alarm
alarming | beeping, alarm, an alarm, alarms, beeps, alarm on, alarm going, alarm sounding, sounding, ringing, \
buzzing, in alarm, bleeping, an alert, going off, gone off, beeping away, beeping at me, bleeping away, alarm gone \
off, has alarm, shouting, screaming, squealing, chirping, alarm again, red light, flashing red, making noise, making \
racket, sounding off, alarm ringing, pinging, beeps at me
stopped | not running, off, paused, not going, standing still, has stopped, stopped itself, standing, halted, paused \
itself, at standstill, turned off, switched off, came to stop, does not run, not run, not infusing, idle, stopped \
running, stopped infusing, stopped dead, quit, frozen, on hold, on pause, not moving, nothing moving, nothing \
running, switched itself off, shut down, standby, no longer running, stood still, dead
together | compatible, may run together, can run together, fine together, okay together, safe together, go together, \
mix, can mix, okay in one line, fine in one line, can go together, may go together, can share, compatible together, \
compatible with each other, run together, can be run together, safe to run together, allowed together, can run in \
one line, can be together, okay to mix, may mix, can be mixed, okay to run together, fine to run together, safe to \
mix, can share line, may share line, can share the line, compatible says chart, can go in one line, can go in same \
line, same line okay, allowed to mix, no problem together, no clash, no interaction, get along, get on, go together \
fine, compatible yes, run fine together, can both run, okay at y site, compatible at y site, both together, all \
compatible, they mix, no incompatibility, no problem running them together, fine to mix
apart | incompatible, not compatible, not together, must stay apart, separate, keep apart, stay apart, separately, \
keep separate, keep them separate, kept apart, has to be separate, have to stay apart, not mix, never together, not \
run together, not go together, can not run together, may not run together, incompatible together, on own line, own \
line, separate lines, on their own, must not run together, must not mix, not share, not allowed together, must be \
kept apart, must be separate, never mix, never same line, not same line, not in same line, not in one line, not to \
be mixed, do not mix, does not mix, must not be mixed, must not be given together, can not mix, can not be mixed, \
can not share, can not go together, can not share line, may not mix, may not share, need own line, needs own line, \
need separate line, needs separate line, separate line, different lines, different line, two lines, on separate \
lines, keep them apart, kept separate, clash, they clash, precipitate, precipitates, would precipitate, forms \
precipitate, not safe together, not okay together, never in one line, never in same line, incompatible says chart, \
one after other, flush between, not compatible at all
the secondary | secondary, small bag, piggyback, just secondary, only secondary, small one, little bag, just \
piggyback, secondary drips, secondary dripping, small bag drips, piggyback drips, secondary only, secondary chamber, \
secondary is dripping, secondary one, little one, small bag dripping, small bag only, piggyback only, piggyback one, \
antibiotic, antibiotic one, small one dripping, small one drips, secondary going, secondary running, just little \
one, only small bag, only small one, only little one, only piggyback, just small bag, just small one, piggyback \
running, secondary bag, secondary drips only, small bag going, small bag running, secondary chamber drips, secondary \
chamber dripping, small chamber, little bag drips, little bag dripping
the primary | primary, big bag, main bag, only primary, just primary, big one, main one, primary drips, primary \
dripping, big bag drips, primary only, primary chamber, primary one, main line, large one, large bag, main one only, \
main one dripping, main one drips, main bag dripping, main bag drips, main bag only, only main, only main bag, only \
main one, only big one, only big bag, just big bag, just big one, just main bag, just main one, big bag dripping, \
big one drips, big one dripping, primary going, primary running, main bag going, main bag running, big bag going, \
big bag running, primary bag, primary chamber drips, primary chamber dripping, main drip, maintenance, maintenance \
bag, large bag drips, large bag dripping, only large one
both | both of them, both drip, two of them, both dripping, both drips, two drip, two dripping, they both drip, both \
running, both are, both going, both at once, both of those, pair of them, pair, two together, both together, both \
chambers, both chambers drip, both chambers dripping, each one, each dripping, each one dripping, all two, both \
bags, both bags drip, both bags dripping, one and other
neither | neither of them, none of them, nothing drips, no drops, nothing dripping, none, not one of them, no one \
drips, neither one, neither is, neither dripping, none dripping, none drips, neither one drips, nothing moving, \
nothing comes, both stopped, both still, not any, no drops at all, no drips, no dripping, nothing at all, nothing in \
either, nothing from either, nothing dripping at all, nothing moving at all, nothing drips at all, no drops in \
either, no drip in either, no drips in either, both dry, both not dripping, both not drip, not either, not in \
either, none going, none running, none of two, no movement, no movement in either, no drops anywhere, both stand \
still, both standing still, both have stopped, neither moving, neither going, neither drips, neither running, dead \
both
luer lock | luer, luer lock syringe, luer lock one, luer lock type, screw on, screws on, screw on one, screw on \
type, screw tip, screw thread, has thread, has threads, threaded, threaded tip, threaded end, twist on, twist on \
kind, twist lock, twists on, locks on, locking one, locking tip, thread on it, thread on end, thread at tip, right \
one luer lock, iv one, proper luer, luer yes
oral | oral one, oral syringe, for oral use, mouth, oral type, by mouth, for mouth, for by mouth, purple, purple \
one, purple plunger, enteral, feeding one, feeding syringe, for feeding, medicine syringe, slip tip, not luer, no \
thread, no threads, not luer lock, for swallowing, mouth one, for feeding tube
runs freely | freely, flushes easily, runs easily, no resistance, goes in easily, smooth, flushes well, easy, \
easily, went in easily, flushes freely, running freely, ran freely, flows freely, free, runs well, flows well, \
flushes fine, goes in fine, went in fine, runs fine, without resistance, smoothly, flushed easily, flushed freely, \
easy to push, pushes easily, no problem, no bother, no trouble, no trouble at all, no problem pushing, no trouble \
pushing, no resistance at all, no resistance no pain, no resistance no swelling, no resistance no pain no swelling, \
no pain no swelling no resistance, goes in lovely, goes in nicely, goes in well, goes in smoothly, goes in smooth, \
goes in no problem, going in nicely, going in fine, going in easy, going in well, went in lovely, went in nicely, \
went in well, went in smooth, went in smoothly, went in no problem, slides in, slid in, like butter, goes in like \
butter, went in like butter, flushes lovely, flushes nicely, flushes beautifully, flushes great, flushes smoothly, \
flushes like dream, flushed fine, flushed nicely, flushed well, flushed lovely, flushed no problem, flows nicely, \
runs lovely, runs nicely, runs smoothly, runs in freely, runs in easily, runs in nicely, pushed easily, pushes in \
easily, easy push, easy in, soft push, freely yes
resistance | hard to push, stiff, blocked, will not flush, some resistance, hard, will not go in, resisting, \
resists, stuck, tight, hard going, stiff to push, not go in, not flush, can not push, not move, occluded, clotted, \
clogged, difficult to push, does not flush, not run freely, hard to flush, bit of resistance, some resistance there, \
feel resistance, meets resistance, met resistance, there resistance, pushing back, pushes back, springs back, fights \
me, fighting me, fighting, hard push, hard to get in, stiff going, stiff push, bit stiff, very stiff, really stiff, \
hardly goes in, barely goes in, hardly goes, barely moves, hardly moves, plunger not move, plunger stuck, plunger \
stiff, not go in at all, not go through, not push, not push through, not go, not go any further, can not push it, \
can not get it in, have to push hard, have to press hard, need to push hard, takes force, need force, jammed, jam, \
plugged, seized, no go, slow and stiff, will not push, will not push through, will not budge, not budge, does not \
budge, not flush at all, not want to go in
pain | hurts, painful, she has pain, he has pain, some pain, hurting, it hurts her, it hurts him, burns, stings, \
sore, aching, says ouch, says it hurts, says it stings, says ow, ouch, ow, stinging, it stings, hurts when push, \
hurt, hurting her, hurting him, winced, wincing, flinched, flinches, winces, complains, grimaced, grimacing, sharp \
pain, burning, burning feeling, pain there, uncomfortable, discomfort, sore when push, she felt pain, he felt pain, \
says sore, stung, cried out, tender
swelling | puffy, swells, swollen, some swelling, bit swollen, puffing up, lump, swells up, swelling up, swelled, \
swelled up, blowing up, blows up, puffs up, bump, bump coming up, lump coming up, bulge, bulging, puffiness, coming \
up, raised, ballooning, getting bigger, filling up, skin lifting, tissue filling, going puffy, gone puffy, bubble \
under skin, egg
whole | intact, complete, in one piece, tip there, all there, nothing missing, undamaged, entire, in one, unbroken, \
all of it, complete tip, nothing broken, nothing broken off, all one piece, in one piece whole, complete and whole, \
tip intact, tip on it, tip still on, tip there and all, nothing missing off it, no piece missing, no bits missing, \
not broken, nothing snapped, nothing snapped off, full length, all came out, came out whole, came out in one piece, \
out in one piece, in tact, all intact, not missing anything, end intact, no damage, not damaged
piece missing | tip missing, broken, part missing, not whole, bit missing, broken off, not complete, snapped, \
snapped off, incomplete, part gone, tip gone, bit gone, shorter, too short, piece gone, cut off, not all there, end \
missing, end gone, end snapped off, tip snapped, tip snapped off, tip broken, tip broke off, broke off, bit broke \
off, bit broken off, bit snapped off, piece broke off, piece broken off, piece snapped off, ragged, jagged, not all \
of it, missing end, missing tip, missing bit, missing piece, tip left behind, left behind, some left behind, shorter \
than should be, short, broken end, cracked off, torn off, not in one piece
dry | no bleeding, stopped, has stopped, no blood, not bleeding, no more blood, bleeding stopped, all dry, no blood \
coming, bleeding has stopped, stopped now, no oozing, not oozing, no longer bleeding, not bleeding any more, clean \
and dry, no blood any more, no bleeding any more, bone dry, dry as bone, dry now, dry and clean, clean, clean now, \
nice and dry, not bleeding now, not bleeding any longer, bleeding stopped now, stopped bleeding, sealed, sealed \
over, clotted, clotted over, no more bleeding, no bleeding now, no ooze, no oozing now, not wet, not a drop, no \
drops, closed over, closed up, healed over, scabbed, no blood at all, no fresh blood, all joints dry, every joint \
dry, totally dry, no leaks, no leak, no wet, no wet spots, no moisture, no damp, dry all way, dry all along, dry \
everywhere, no drips, nothing wet, nothing leaking, tight and dry
still bleeding | bleeding, oozing, blood, still oozing, bleeds, still blood, bit of blood, bleeding still, bleeds \
still, oozes, drop of blood, some blood, blood coming, not stopped, not dry, wet, trickling, bleeding some, bleeding \
bit, bleeding a bit, still bit bloody, still bloody, bloody, still dripping, dripping, still wet, still red, still \
coming, still trickling, still seeping, seeping, weeping, still weeping, little blood, little bleeding, bit \
bleeding, bit of bleeding, some bleeding, some oozing, still some blood, still some bleeding, still blood there, not \
stopped yet, not dry yet, not done bleeding, has not stopped, blood on gauze, blood still coming, fresh blood, spot \
of blood, blood spot, oozing still, oozing bit, oozing a bit, oozing little, oozing yet, leaking blood, running \
blood, started again, needs longer, keeps bleeding
feeling fine | fine, good, well, comfortable, okay, feels fine, feels good, she fine, he fine, feeling good, feeling \
okay, feels well, all right, feels all right, happy, no problems, feels okay, fine in self, not any complaints, says \
fine, no complaints, doing fine, doing okay, doing well, doing good, feels grand, grand, feels great, great, feels \
right as rain, right as rain, feeling well, feeling grand, feeling great, feels all good, all good, all fine, all \
well, says okay, says good, says well, says all right, says all good, says grand, says great, says feels fine, says \
feels good, says feels okay, says feels well, says feeling fine, says feeling good, says feeling well, says feeling \
okay, says nothing wrong, no problem, no bother, no bother at all, no complaint, no complaints at all, not \
complaining, nothing wrong, nothing bothering, perfectly fine, absolutely fine, comfy, fit as fiddle, no symptoms, \
tip top, no worries, normal, feels normal, feels himself, feels herself, fine thanks, good thanks
in pain | pain, hurts, sore, hurting, she in pain, he in pain, has pain, painful, aching, has some pain, feels pain, \
complains of pain, says hurts, says it hurts, says sore, says in pain, says has pain, says painful, complaining of \
pain, complains, hurt, hurting a lot, hurts a lot, hurts bit, sore arm, arm hurts, arm sore, chest hurts, chest \
hurting, chest is hurting, chest pain, chest sore, chest aching, back hurts, head hurts, headache, tummy hurts, \
belly hurts, stomach hurts, aches, ache, grimacing, wincing, groaning, moaning, crying, clutching chest, holding \
chest, uncomfortable, discomfort, pains, bit sore, little pain, bit of pain, there pain, tender, sharp pain, \
stabbing, throbbing, burning, stinging, hurts him, hurts her
itching | itchy, itches, itch, scratching, hives, itchy skin, itching all over, has rash, rash, itching bit, bit \
itchy, little itchy, feels itchy, says itchy, says itches, says itching, has itch, started itching, started to itch, \
keeps scratching, scratching away, scratching arm, itchy all over, itchy arm, itchy arms, itchy back, has hives, \
come out in hives, come out in rash, coming up in hives, coming up in rash, blotches, blotchy, spots, bumps, welts, \
wheals, nettle rash, tingly, prickly, skin itches, skin itchy
short of breath | breathless, not catch breath, not catch his breath, not catch her breath, out of breath, hard to \
breathe, short breath, struggling to breathe, can not breathe, not breathe, gasping, breathing hard, trouble \
breathing, wheezing, puffing, struggling for breath, breathing fast, can not get breath, can not get his breath, can \
not get her breath, not get breath, not get his breath, not get her breath, can not catch breath, can not catch his \
breath, can not catch her breath, can not get enough air, can not get air, not get enough air, not get air, can not \
finish sentence, not finish sentence, bit breathless, little breathless, short on breath, breath short, breathing \
quickly, breathing heavily, breathing heavy, heavy breathing, laboured, labored, laboured breathing, panting, \
puffed, puffed out, winded, struggling, struggling with breath, struggling for air, gasping for air, gasping for \
breath, fighting for breath, wheezy, hard time breathing, having trouble breathing, having difficulty breathing, \
difficulty breathing, difficult to breathe, finding it hard to breathe, tight chest, chest tight, rapid breathing, \
blue lips, lips blue, choking, suffocating, out of puff, getting breathless
breathing easily | breathing fine, breathing normally, easy, comfortable, breathing well, breathing okay, breathes \
easily, breathing easy, no trouble breathing, no trouble with breath, breathing calmly, breathing calm, breathing \
quietly, breathing steadily, breathing steady, breathing nicely, breathing lovely, breathing grand, breathing \
comfortably, breathing freely, breathing regular, breathing regularly, breathing slow and steady, breathing good, \
breathing all right, breathing without trouble, breathing no problem, breathing no trouble, breathing like normal, \
breathing as normal, breathing slowly, breath fine, breath easy, breathing fine no pain, breathes fine, breathes \
easy, breathes normally, breathes well, chest rising nicely, no trouble with breathing, no trouble with breathing at \
all, no trouble with breath at all, no problem breathing, no problem with breathing, no difficulty, no difficulty \
breathing, no distress, chatting away, talking away, talking fine, talking normally, chatting normally, comfortable \
and breathing fine
still fluid | fluid, some left, not empty, plenty, still some, half full, fluid left, plenty left, some fluid, still \
some left, has fluid, enough, fluid in, fluid in it, lots left, lots of fluid, some fluid left, bit of fluid, plenty \
of fluid, not dry, got fluid, fluid there, still fluid left, some in it, bit left, some liquid, not run out, quarter \
full, third full, full, nearly full, liquid, liquid in it, liquid there, still liquid, still liquid in it, fluid \
still in, fluid in both, liquid in both, still fluid in it, still fluid there, fluid yet, still got fluid, still got \
some, got some left, some left in it, some there, some in there, still some in it, still some in there, still some \
there, still has some, has some left, has plenty, has plenty left, plenty there, plenty still, plenty in it, plenty \
yet, still plenty, still plenty left, still plenty there, still plenty in it, still plenty in bag, loads, loads \
left, loads in it, still loads, lots still, lots there, good bit left, good bit, fair bit left, fair bit, quite bit \
left, quite lot left, bit left in it, bit at bottom, little left, half left, quarter left, third left, about half, \
about half full, about third left, about quarter left, more to go, more left, not finished, not dry yet, not empty \
yet, not run dry, bag half full, still half full, still in it, still hanging, fluid in chamber, fluid in bag, still \
going, still dripping, still wet, mils left, about hundred left, about two hundred left, about fifty left
empty | no fluid, nothing left, run dry, dry, all gone, ran out, run out, bag empty, nothing in, no fluid left, \
nothing in it, all run out, all in, emptied, gone, all used up, used up, no more fluid, none left, bone dry, dried \
out, no liquid, drained, run through, no fluid in it, no fluid in, all run in, finished, not any left, completely \
empty, totally empty, all empty, both empty, chamber empty, bag dry, bag gone dry, chamber dry, chamber run dry, bag \
run dry, gone dry, run out completely, run out altogether, all used, all through, all run through, all finished, \
finished up, flat, flat as pancake, flat empty, sucked flat, collapsed, not drop left, not drop in it, no drop left, \
no drops, nothing in bag, nothing in chamber, nothing in there, nothing in it at all, nothing left in it, nothing \
left in there, nothing left in bag, nothing at all, no more, no more in it, no more left, no liquid left, no liquid \
in it, no fluid at all, no fluid left in it, not got any, not any fluid, not any fluid left, not any in it, dry as \
bone, it ran dry, ran dry, run dry now, has run out, has run dry, drained out, drained away
same fluid | same, the same, identical, same again, same one, same bag, same kind, same thing, same sort, same \
solution, one and the same, unchanged, no change, identical fluid, same type, same as before, same as last, same as \
last one, same as last time, same stuff, same stuff as before, same stuff again, same again please, same bag again, \
same as first, same as first one, same as that one, same as this one, same as running, same as hanging, same as what \
hanging, same as one hanging, same as one up, another of same, another bag of same, another one of same, just \
another of same, just another bag of same, more of same, one more of same, one more same, one more bag, another bag, \
another litre, repeat, repeat bag, repeat of same, like before, like last one, like first one, like for like, saline \
again, identical to last, identical to hanging, identical to what hanging, identical to one hanging, identical bag, \
no change to fluid, no change in fluid, no difference, has not changed, not changed, unchanged order, exactly same, \
exact same, exact same fluid, very same, same name same strength, matches what hanging
something else | something different, something new, another fluid, different, different fluid, not same, different \
one, another one, another solution, not same fluid, other fluid, changed, wrong fluid, new fluid, different drug, \
different stuff, different solution, different from before, different from last one, not same as before, not same as \
last one, not same bag, not same stuff, not same thing, another kind, another type, another sort, changed it, \
changed fluid, have changed it, they changed it, they have changed it, they changed fluid, changed to, changed it \
to, changed to dextrose, changed it to dextrose, changed to saline, changed it to saline, changed over, switched, \
switched it, switched to, switched to dextrose, switched fluid, swapped, swapped it, swapped to, now dextrose, \
dextrose now, dextrose instead, other stuff, potassium added, with potassium, added potassium, not saline, not \
saline any more
all open | open, every one open, they all open, everything open, none closed, all clamps open, every clamp open, no \
clamp closed, none shut, nothing closed, nothing clamped, all of them open, each open, each one open, all unclamped, \
none clamped, no closed clamp, no clamps closed, every last one open, none of them closed, none of them shut, not \
one closed, no closed one, no clamps shut, no clamp shut, nothing shut, all undone, all clamps undone, both open, \
both clamps open, two of them open, all three open, all up, all released, wide open, all wide open, open all way, \
open all way down, clear all way, open from bag to pump, they open, roller and slide open, roller open and slide \
open
one closed | closed clamp, one still closed, one shut, one not open, not all open, closed, shut, clamped, one \
clamped, roller closed, still closed, clamp closed, clamp shut, one clamp closed, two closed, some closed, not open, \
found closed one, found one closed, found one shut, one found closed, one found shut, one still shut, one still \
clamped, one is clamped, one is shut, one was closed, one was shut, roller shut, roller still closed, roller still \
shut, roller is closed, roller is shut, roller down, slide closed, slide shut, slide clamp closed, slide clamp shut, \
slide is closed, slide is shut, bottom one closed, bottom one shut, top one closed, top one shut, upper one closed, \
lower one closed, there closed one, there one closed, there one shut, one not opened, forgot one, not all undone, \
clamp on line shut, clamp still on, pinched shut, this one shut, this one closed, that one shut, that one closed
sound | fine, good, all good, intact, no problems, okay, nothing wrong, all fine, undamaged, both good, all okay, no \
faults, no problem, good order, all sound, both fine, both okay, both sound, no kinks loaded right, no kinks loaded \
well, no kinks and loaded right, straight and loaded right, straight and well seated, nothing wrong with it, nothing \
wrong there, in good order, loaded right, loaded properly, looks fine, looks good, good all way, fine all way, fine \
all along, good all along, fine from end to end, all good all way, tight and straight, no air no kink nothing loose, \
no faults found, perfect, sits right, sitting right
a kink | kinked, kink, bent, kinks, twisted, folded, pinched, squashed, knotted, bend in it, bend there, bent over, \
bent double, folded over, fold in it, fold, trapped, caught, caught in rail, pinched under, flattened, crimped, \
crimp, kinked up, got kink, kink under, kink near, kink by, kink behind, tangled, tangle, twisted up, twist in it, \
bend
something loose | loose, loose connection, one loose, wobbly, came loose, not tight, one not tight, connection \
loose, loose bit, loose there, loose at hub, loose at port, loose at spike, loose joint, loose luer, loose end, \
joint loose, luer loose, hub loose, cap loose, one loose there, wobbles, wobbling, bit wobbly, coming loose, coming \
undone, coming off, come undone, came undone, undone, not tight enough, not screwed in, not screwed tight, not \
connected right, not connected properly, half off, slack, moves about, turns, wiggles, bit loose, little loose, \
slightly loose, rattles, connection loose there, connection wobbly
right line | right one, correct line, correct one, line right, one right, line correct, right all along, right line \
tight, right and tight, proper one, proper line, line is right, line is correct, correct and tight, right line and \
tight, right line no loose, right line nothing loose, right and nothing loose, right one all tight, all tight right \
line, goes to right place, goes to right vein, goes to patient, right all way, right one all way, correct all way, \
right bag right vein, ours, our line, our one, matches, traced to right, good line
wrong line | wrong one, wrong, other line, line wrong, not right line, not right one, different line, different one, \
not ours, not our line, not our one, goes to other drip, goes to other pump, goes to other bag, goes to other \
patient, goes to wrong place, goes to wrong vein, goes elsewhere, another line, not this one, not proper one, not \
one we want, belongs to other pump, mixed up, lines mixed up, lines crossed, incorrect, incorrect line, incorrect \
one, not correct, not correct one, not correct line
loose connection | loose, something loose, loose one, connection loose, connections loose, not tight, one not tight, \
something not tight, came loose, loose joint, loose luer, loose end, joint loose, luer loose, hub loose, one loose \
there, one loose joint, wobbles, wobbly, wobbling, coming loose, coming undone, coming off, come undone, came \
undone, undone, not tight enough, not screwed in, not screwed tight, not connected properly, half off, slack, \
wiggles, bit loose, slightly loose, connection wobbly, right line but loose, right line loose joint, right line one \
loose
changed | not healthy, different, not normal, looks bad, different now, worse, got worse, redder, not same, not as \
before, something changed, swelled up, has swollen up, swollen up, gone red, gone puffy, gone hard, gone pale, \
redder than before, bigger than before, puffier than before, not like before, not like it was, not same as before, \
looks different, looks worse, looks puffy, looks red, looks swollen, feels different, warm, puffed up, swelling, \
redness, pink, bit pink, bit red, bit swollen, bit puffy, inflamed, angry, bruised, wet, leaking, blistered, \
blister, white, pale and cold, cold and puffy, red and warm, not right, not looking good, not looking right, changed \
colour, changed since, gone bad
soft | feels soft, soft and flat, smooth, no cord no pus, soft all way, supple, nice and soft, soft all along, soft \
all way along, soft all way up, squashy, bouncy, springy, pliable, spongy and soft, gives under finger, gives, \
normal, feels normal, feels fine, fine, good, nothing there, smooth all along, smooth and soft, stays soft, vein \
soft
none / some | no air, no bubbles, no air bubbles, bubble free, air free, not a single bubble, not one bubble, \
nothing in, no bubbles at all, no air at all, only fluid, all clear, no bubbles left, free of air, clear of air, \
nothing, clear, all out, air all out, air out, not any, not any air, airless, only liquid, all liquid, all fluid, \
nothing but fluid, not see any, not one, not seen any, zero, no air there, no air left, no air anywhere, no air in \
there, no air to see, no air bubble, no bubble, no bubbles there, no bubbles anywhere, no bubbles in there, nothing \
there, not a bubble, not bubble, not bubble left, not bubble in it, not bubble anywhere, not single bubble, no gaps, \
no gap, no pockets, no air pockets, all fluid no air, clear all way, clear all way down, clear all way along, clear \
all way through, clear all way to tip, clear to tip, clear to end, clear down to end, clear from chamber to tip, \
clear end to end, clear top to bottom, clear from end to end, clear from top to bottom, clear right through, clear \
right to tip, clear right to end, clear right down, clear as bell, solid fluid, solid fluid all way, solid fluid top \
to bottom, full of fluid, fluid all way, fluid all way down, fluid all way along, fluid all way through, fluid from \
top to bottom, fluid end to end, just fluid, just liquid, completely clear, no more air, no more bubbles, got rid of \
all of it, all gone, clear line, line clear, line is clear, set clear, tube clear
none | nothing, nothing there, nothing of kind, nothing like that, not any, not one, none at all, nothing at all, no \
such thing
some / none | bubbles, bubble, some air, some bubbles, air, one bubble, a few bubbles, few bubbles, couple of \
bubbles, little air, air bubbles, big bubble, still some, still bubbles, still air, there is some, small bubble, \
tiny bubble, lots of bubbles, lots of air, not all out, pocket of air, air pocket, gap of air, air gap, air left, \
bubbles left, loads of bubbles, air in, bubbles in, foam, not free of air, not clear, see bubbles, see air, bit of \
air, bit air, little bit of air, couple of little ones, couple of small ones, couple of wee ones, found one, found \
some, found couple, found bubble, found few, got bubble, got some, got few, tiny one, one tiny one, small one, one \
small one, little one, one little one, wee bubble, wee one, big one, few tiny ones, few small ones, few little ones, \
few, couple, one or two, two bubbles, three bubbles, two or three, still one, still few, still couple, still little, \
still bit, still bit of air, champagne bubbles, froth, frothy, gap in fluid, gap near top, gap in it, wee gap, \
little gap, break in fluid, string of bubbles, row of bubbles, trail of bubbles, train of bubbles, stretch of air, \
length of air, inch of air, empty bit, one stuck, one bubble stuck, bubble stuck, bubbles stuck, bubbles in line, \
bubbles in tube, bubbles in there, air in line, air in there, air in tube, air at top, bubble near, bubble by, \
bubble at, bubble there, bubbles there, some there, some in there, some bubbles in there, some air in there, spotted \
one, spotted bubble, saw one, saw bubble, saw bubbles
safe to use | no allergies, no known allergies, no allergy, not allergic, safe, okay to use, fine to use, none \
listed, nothing listed, none known, allergic to nothing, safe for him, safe for her, safe to go, good to use, all \
right to use, alright to use, no allergies to any, no allergies to any of those, no allergies to any of them, none \
of them, none of those, no to all, no allergies at all, not allergic to any, not allergic to any of them, not \
allergic to any of those, not allergic to anything, no reactions, nothing on chart, chart clear, none on record, \
okay for her, okay for him, fine for her, fine for him, fine with all, okay with all, no allergies to those, nil \
known, nkda, none of these
torn | ripped, tear, rip, hole, split, damaged, open, opened, broken, not sealed, seal broken, punctured, not \
intact, unsealed, package open, torn open, been torn, bit torn, little tear, small tear, tiny tear, there tear, got \
tear, tear in it, rip in it, there rip, hole in it, small hole, tiny hole, pin hole, pinhole, split in it, split \
open, ripped open, package torn, package ripped, package damaged, wrapper torn, wrapper ripped, wrapper split, \
packet torn, packet ripped, packet open, corner torn, corner open, seal torn, seal gone, half open, peeled open
not listed | could not find, could not find there, could not find in there, not in library, not in list, not on \
list, not in there, not found, not find, not listed there, missing from library, missing from list, unlisted, absent \
from library, not there, library not have, list not have, no entry, no such drug, not in drug library, not on menu, \
not in it, not there at all, no sign of it, not on there, no match, nothing comes up, nothing came up, does not come \
up, not come up, did not come up, can not find it, can not find it there, could not find it, missing, not in menu, \
drug not there, drug missing, isn in library, absent, not among them, not on pump, not on screen, not showing, not \
programmed, no result, no results, pump not have it, not have it
an alarm | alarming, alarm, alarms, beeping, beeps, it beeping, alarm going off, went off, bleeping, pump alarming, \
pump beeping, pump alarm, beep, going off, gone off, beeping at me, beeping again, beeps again, alarms again, alarm \
again, alarm back, another alarm, alarming again, red light, flashing, screen red, screen went red, downstream \
occlusion, upstream occlusion, occlusion, shouting, screaming, chirping, pinging, making noise, sounding, ringing
freely | free, easy, easily, smooth, smoothly, no resistance, without resistance, goes in easily, goes in fine, went \
in easily, went in fine, runs well, runs easily, flows freely, flushed easily, flushed freely, easy to push, pushes \
easily, runs fine, flushes fine
patent | open, flushes freely with blood return, patent with blood return, flushes freely blood return, blood return \
and flushes, flushes well with blood return, flushes freely with blood, flushes fine with blood return, good flush \
and blood return, flushes freely, flushes and returns, flushes with blood, flushes good return, clear and flushing, \
blood back and flushes, blood back and flushes easily, flushes easily blood back, flushes freely blood back, flushes \
and blood back, good flush good blood, good flush and blood
no blood | nothing coming back, nothing comes back, nothing came back, blood not come back, no blood comes, no blood \
coming, no blood back, no flashback, not see blood, not get blood, not get any blood, not see any blood, nothing \
back, blood did not come, no blood return, without blood, no return of blood, not any blood, no blood comes back, no \
blood coming back, no blood there, no blood in it, no blood at all, no flash, no flash of blood, no return, no \
return at all, nothing comes, nothing came, nothing coming, nothing when i pull, nothing when i draw, nothing when \
pull back, not getting blood, not getting any blood, not getting any, not getting blood back, not getting any blood \
back, not got blood, not got any blood, can not get blood, can not get any blood, can not draw blood, will not bleed \
back, not bleed back, does not bleed back, will not draw, not draw, does not draw, not give blood, does not give \
blood, gives no blood, gives none, dry pull, pulls dry, clear only, only clear, just clear, just saline, only \
saline, no red, not see red, not see any red, draws nothing, pulled nothing, got nothing, got nothing back, flushes \
but no blood, flushes okay but no blood, flushes fine but no blood, blood does not come, blood not come, blood not \
returning
blood return | blood, blood back, blood coming back, blood comes back, see blood, got blood, good blood return, \
flashback, flash of blood, get blood, blood returns, returns blood, blood in syringe, red, some blood, got return, \
got blood return, got blood back, got flash, got flash of blood, got flashback, good return, good flash, nice \
return, nice flash, nice flash of blood, lovely return, blood came back, blood came, blood coming, blood comes, \
blood in tube, blood in tubing, blood in line, blood in it, blood there, blood flashed, blood flashed back, blood \
returning, blood returned, blood is back, there blood, there it is, red in syringe, red in line, red in tube, see \
red, bit of blood, little blood, drop of blood, good blood, plenty of blood, yes blood, bleeds back, bled back, it \
bled back, it draws, draws fine, draws well, draws blood, drew blood, pulled back blood, drawing blood
dizzy | light headed, dizziness, faint, woozy, lightheaded, giddy, feels dizzy, bit dizzy, little dizzy, says dizzy, \
light in head, head spinning, head spins, room spinning, room spins, spinning, spinny, swimmy, unsteady, wobbly, \
swaying, about to faint, going to faint, might faint, fainting, fainty, feels faint, feels light headed, feels \
woozy, muzzy, seeing stars, seeing spots
run in | empty, finished, all in, all gone, all run in, all gone in, nothing left, none left, done, complete, \
through, all through, gone through, run through, dry, run dry, no more left, no fluid left, drained, all of it run \
in, all of it in, gone in, completely in, fully in, all run through, all in now, all gone now, all done, all \
finished, it finished, it in, it ran in, ran in, ran through, ran dry, dripped in, all dripped in, dripped through, \
all infused, infused, fully infused, all given, given, all delivered, delivered, all went in, went in, whole lot in, \
whole bag in, whole lot gone, bag empty, bag is empty, bag flat, bag dry, chamber empty, empty now, empty and flat, \
nothing in bag, nothing in it, nothing left in it, nothing left in bag, nothing more, no more, no more in it, none \
left in it, not drop left, small bag empty, completely through, every drop, every drop in, last drop in, flat, flat \
as pancake
some left | bit left, little left, not empty, fluid left, left in it, still left, some still in, still some, still \
some in, some in it, still fluid, some fluid, some fluid left, not finished, not all in, not all run in, not all of \
it in, few drops left, not all gone, remains, remaining, some remains, more to go, not done, bit left in it, bit \
left in bag, bit left yet, bit more, bit more to go, bit still in, bit still left, bit still there, little left in \
it, little bit left, little bit still, little bit in it, little more, some in bag, some in chamber, some there, some \
yet, some still there, some still in bag, some still left, some more, still bit left, still bit in, still bit there, \
still little left, still going, still running, still running in, still dripping, still dripping in, still infusing, \
still fluid left, still fluid in it, still liquid, still got some, still got bit, still half, still in it, still not \
in, still not finished, still not empty, got some left, got bit left, quarter left, half left, third left, about \
half left, about quarter left, about third left, half in, not all in yet, not done yet, not finished yet, not empty \
yet, not through, not through yet, not run in, not run through, not all through, more left, more in it, few mils \
left, drops left, drop left, inch left, mils left, ten mils left, twenty mils left, drip left, plenty left, lots \
left, loads left
kinked | kink, kinks, bent, twisted, folded, pinched, squashed, knotted, looped, crushed, kink in it, bend in it, \
bend there, bent over, bent double, doubled over, folded over, fold in it, fold, trapped, caught, caught in rail, \
pinched under, squeezed, flattened, flat, crimped, crimp, nipped, kinked up, there kink, got kink, kink under, kink \
near, kink by, kink behind, kink there, kinky, snagged, tangled, tangle, twisted up, twisted round, twist in it, \
under wheel, under bed rail, under arm, lying on it, lying on tubing
loaded wrongly | wrongly loaded, wrong, in wrong, loaded wrong, not loaded right, not loaded correctly, not loaded \
well, in wrong way, wrong way round, misloaded, not seated, not seated right, in backwards, upside down, in crooked, \
crooked, not in right, not in properly, loaded badly, not right in pump, out of channel, not loaded properly, badly \
loaded, put in wrong, put in wrong way, put in wrong way round, put in backwards, wrong way up, wrong way in, back \
to front, not sitting right, not sitting properly, not seated properly, not clicked in, not in channel, not in \
groove, not in its channel, not in its groove, out of groove, popped out, slipped out, come out, come out of \
channel, half in, half out, hanging out, squint, skew, skewed, misaligned, out of line, not lined up, door not \
closed on it, clipped in wrong, crooked in pump, in wrong slot
air | some air, bubbles, bubble, air bubble, air bubbles, air in it, air in line, air there, air in there, bit of \
air, little air, wee bubble, small bubble, tiny bubble, big bubble, one bubble, bubble in it, bubble there, bubble \
in line, bubbles in it, bubbles there, bubbles in line, bubbles in there, few bubbles, couple of bubbles, some \
bubbles, air gap, air pocket, pocket of air, air at top, got bubble, got air, got bubbles, found bubble, found air, \
found bubbles, there bubble, there air, there bubbles, see bubble, see bubbles, see air
a change | changed, different, site changed, site red, site swollen, site puffy, swelling, swollen, red, redness, \
sore, painful, puffy, leaking, something changed, not same, worse, got worse, looks different, something at site, \
hurts, pain, wet, site wet, arm red, arm puffy, arm swollen, arm puffing up, puffing up, swelling up, gone red, gone \
puffy, going red, going puffy, redder, puffier, wetter, pink round it, bit red, bit pink, bit puffy, little red, \
little pink, looks puffy, looks red, looks swollen, leaks, leaking at site, something different, different at site, \
not like before, not same as before, changed colour
quiet and healthy | both good, both fine, all good, all fine, everything fine, nothing wrong, no alarm no change, \
everything quiet and healthy, all well, no problems, everything good, fine, quiet and fine, quiet and looks fine, \
quiet and looks good, quiet and site fine, quiet and site good, quiet site fine, quiet site healthy, quiet no \
change, no alarm and site fine, no alarm and site healthy, no alarm site fine, no alarm site healthy, no beeping no \
change, no alarm no change at site, no alarm and no change, pump quiet site fine, pump quiet site good, pump quiet \
and site fine, pump quiet and site good, pump fine site fine, both quiet and fine, running and healthy, running fine \
and healthy, quiet no redness no swelling
quiet and fine | both good, all good, all fine, all well, everything fine, no alarm and patient fine, all calm, no \
problems, quiet and comfortable, quiet and patient good, quiet and patient well, quiet and patient comfortable, \
quiet and patient okay, quiet patient fine, quiet patient good, no alarm patient fine, no alarm and patient good, no \
alarm and patient well, no alarm and comfortable, no alarm and looks comfortable, no noise and comfortable, no noise \
and looks comfortable, no beeping and patient fine, pump quiet patient fine, pump quiet patient good, pump quiet and \
patient good, pump fine patient fine, pump fine and patient fine, both quiet and fine, both well, both okay, running \
quietly patient fine
patient unwell | unwell, poorly, ill, sick, not well, feels sick, feels unwell, dizzy, worse, not fine, not feeling \
well, gone pale, pale, grey, gray, sweating, sweaty, clammy, feels faint, faint, feels bad, feels ill, feels poorly, \
feels rotten, feels terrible, feels funny, not feeling good, not well at all, not good, not so good, looks ill, \
looks poorly, looks bad, looks pale, looks unwell, looks sick, nauseous, nausea, vomiting, being sick, threw up, \
shivering, shaking, breathless, short of breath, in pain, hurts, itchy, complains, complaining, worse off, unwell \
patient, patient bad, patient not good, patient not well, patient not fine
comes out | come out, taken out, to be taken out, remove, removed, to be removed, out it comes, goes, to come out, \
catheter out, must come out, has to come out, take catheter out, take cannula out, take it out, taking it out, pull \
it, pull it out, pull catheter, remove it, remove catheter, remove cannula, for removal, is for removal, to be \
pulled, coming out, is coming out, is to come out, want it out, want it removed, want it taken out, removal, has to \
go, must go, cannula out, not staying, not staying in, comes out yes
stays in | stays, stay, leave in, leave it in, keep in, keep it in, left in, kept in, not come out, not comes out, \
catheter stays, to stay in, stays where, stays put, remains in, remains, has to stay in, stays there, stay there, \
keep catheter, kept, want it kept, to be kept, is to be kept, want it left in, want to keep it, leave catheter in, \
leave catheter, catheter to stay, to stay, is to stay, is staying, staying, staying in, staying put, left in place, \
leave it be, leave it where it is, leave it there, remains in place, stays in place, stays where it is, stays for \
now, keep cannula, cannula stays, iv stays, not for removal, not coming out, not to come out, do not remove, not \
remove it
it stays | stays, stay, leave in, leave it in, keep in, keep it in, kept in, not come out, remains, remains in, \
stays put, keep catheter, kept, want it kept, to be kept, is to be kept, want it left in, want it left, want to keep \
it, leave catheter in, leave catheter, catheter to stay, catheter is to stay, to stay, to stay in, is to stay, is \
staying, staying, staying in, staying put, stay put, left in, left in place, leave it be, leave it where it is, \
leave it there, remains in place, stays in place, stays where it is, stays for now, keep cannula, cannula stays, iv \
stays, not for removal, not to come out, not coming out, do not remove, do not take it out, not remove it
it comes out | come out, taken out, remove, removed, to be removed, goes, out, catheter out, take catheter out, take \
cannula out, take it out, taking it out, pull it, pull it out, pull catheter, remove it, remove catheter, remove \
cannula, for removal, is for removal, to be pulled, to come out, is to come out, to be taken out, coming out, is \
coming out, comes out today, want it out, want it removed, want it taken out, out it comes, removal, has to come \
out, has to go, must come out, must go, cannula out, not staying, not stay, does not stay, not staying in, whip it \
out
all three | all there, all of them, all of it, all complete, everything, everything there, yes to all, three of \
three, all three good, all three fine, all good, all fine, nothing missing, all three of them, primed loaded no air, \
primed and loaded no air, all done
within range | in limits, within limits, inside range, inside limits, in usual range, inside usual range, fine, \
okay, in usual, normal, usual, inside, inside it, in range, is in range, well within, well within range, well within \
limits, well inside, within usual range, within normal range, within usual limits, within normal limits, within \
usual dose, within, right in range, right within range, in normal range, in usual limits, in normal limits, under \
limit, under maximum, below maximum, below limit, between limits, in window, in band, falls within range, falls \
within, falls in range, sits in range, sits within range, nothing out of range, neither too fast nor too slow, \
acceptable, fits range, matches usual range, as usual, usual dose, usual rate, in table, in book range, all within \
range, both within range, both in range, safe range, in safe range
out of range | too high, too low, too fast, too slow, outside, outside limits, outside usual range, out of limits, \
above range, below range, over limit, under range, beyond range, over, above limit, not in range, not within range, \
not normal, not usual, above usual dose, above usual rate, above usual range, above normal range, above maximum, \
above max, above top, over maximum, over max, over top, over range, over usual range, over usual dose, over usual \
rate, over limits, more than usual, more than maximum, more than max, more than limit, higher than usual, higher \
than range, higher than limit, faster than usual, slower than usual, lower than usual, less than usual, below \
minimum, under minimum, below usual range, below usual dose, below usual rate, under usual range, outside usual \
limits, outside it, outside normal range, outside range, exceeds, exceeds it, exceeds limit, exceeds range, exceeds \
maximum, exceeds max, too much, too big, too strong, too high for it, too fast for it, too fast for that drug, \
double usual dose, double usual, twice usual dose, twice usual, ten times usual, out, way out, way over, way above, \
way too high, way too fast, well over, well above, far too high, far too fast, far too much, far over, not within \
limits, not in limits, not inside range, not acceptable
in date | date fine, date good, date okay, not overdue, still good, within date, in its date, still fine, not due, \
not due yet, current, okay, good, date in order, within its time, date right, good date, dates good, dates fine, \
dates okay, fine date, well in date, well within date, within its date, still good till, good till, good until, good \
for, valid, still valid, not expired, not out of date, not too old, not over, still has days, still got days, has \
days left, days left, got days left, day left, changed yesterday, changed today, hung today, hung yesterday, new \
today, put up today, put up yesterday, up to date, still okay
overdue | not in date, not in date any more, not in date any longer, out of date, past date, past due, due \
yesterday, over date, date passed, past its date, past its change date, past change date, too long, too old, \
expired, late, been up too long, hanging too long, due already, long overdue, over time, over its time, well \
overdue, day overdue, two days overdue, gone over, run over, over its date, over its limit, over limit, over four \
days, past limit, past its limit, past four days, past change, past its time, up too long, up for too long, been up \
for too long, been on too long, on too long, hung too long, should have been changed, needed changing yesterday, \
should be changed, needs changing, needs change, needs replacing, time it was changed, due for change, due change, \
out of time, gone past, gone past its date, expired yesterday, day late, two days late, day over, two days over, \
five days old, week old, old one
no label | no label on, label missing, unlabelled, unlabeled, not labelled, not labeled, without label, label gone, \
label fell off, no sticker, not find label, not see label, not find any label, not see any label, nothing written, \
not have label, nobody labelled, lost its label, no date on, not dated, undated, no label there, no label at all, \
nothing on it, nothing there, nothing on set, nothing on bag, not got label, has no label, has not got label, \
without one, bare, blank, label blank, label is blank, label off, label come off, label came off, label fallen off, \
label has come off, label fell, label lost, unmarked, no tag, no sticker on it, no sticker there, no sticker at all, \
no date, no date written, nobody labelled it, nobody put one, never labelled, missing label, missing its label
in time | in date, within time, not too long, fine, okay, within limit, hung today, within its time, well within \
time, all within time, all in date, all fine, all good, both fine, both good, both in time, both in date, each fine, \
each in date, still good, still in date, still fine, hung this morning, put up today, put up this morning, up since \
this morning, went up today, went up this morning, less than day, under day, not a day yet, fresh today, new today
hanging too long | overdue, up too long, over time, been hanging too long, been up too long, past time, expired, \
been up since yesterday, been there too long, been on too long, been up more than day, been up over day, been up for \
more than day, been up for over day, up for more than day, up for over day, up more than day, up over day, more than \
day, more than 24 hours, over 24 hours, over day, over its time, past its time, past day, out of time, since \
yesterday, up since yesterday, yesterday, hung yesterday, from yesterday, two days, two days old, too old, one too \
long, needs changing, should be changed, overdue one, one overdue, one been up too long
plugged in and loud | both, both good, plugged and loud, all good, plugged in and loud enough, plugged in and hear \
it, plugged in and hear it fine, plugged in and hear it well, plugged in and hear it clearly, plugged in and hear it \
loud, plugged in and good volume, plugged in and audible, plugged in and volume up, plugged in loud, plugged in and \
plenty loud, in wall and loud, on mains and loud, loud and plugged in, both fine, both okay, plugged in good and \
loud, plugged in loud and clear, plugged in and hear alarm, plugged and audible
unplugged | not plugged, battery, plug out, running on battery, pulled out, plug is out, plug out of wall, not in \
wall, not in socket, not on mains, not on wall, on battery, battery only, running off battery, running on its \
battery, on its battery, off battery, lead out, lead is out, cable out, cable is out, cord out, cord is out, came \
out of wall, fallen out, fell out, pulled out of wall, come unplugged, came unplugged, lead hanging, plug hanging, \
plug on floor, plug on the floor, battery light on, no mains, not connected to mains, disconnected
hard to hear | too quiet, too soft, quiet, not hear, not loud, barely audible, barely hear, barely hear it, can \
barely hear, can hardly hear, hardly hear, hardly hear it, barely hear thing, can barely hear the thing, can not \
hear it, can not hear it well, not hear it, not hear it well, not hear it properly, not hear alarm, faint, very \
faint, faint sound, too faint, too low, turned down, volume down, volume low, volume too low, volume turned down, \
volume right down, low volume, muffled, soft sound, quiet sound, very quiet, bit quiet, quite quiet, whisper, weak \
sound, no sound, muted, needs turning up, plugged in but quiet, plugged in but too quiet, plugged in but not hear \
it, plugged in but hard to hear, plugged in but faint, plugged in but can hardly hear it, can barely hear it, barely \
hear the thing
the same | same, both same, alike, identical, no difference, no differences, equal, matching, match, all alike, same \
on both, same both sides, same in both, not different, same both, same both hands, same in both hands, same on both \
hands, same as other, same as other hand, same as other one, same as other side, both alike, both pink, both warm, \
both pink and warm, both pink warm, both warm and pink, pink and warm both, no difference at all, no difference \
between, no difference either side, nothing different, nothing different there, equal both, equal both sides, equal \
on both, equals, match each other, both match, matches other, matches other hand, matches other side, like other \
one, like other hand, just like other, alike both, all same both sides, all same both, all three same, all equal, \
good pulse both, good pulses both
different | difference, differences, differs, one different, not same, not alike, not equal, unlike, paler, colder, \
cooler, weaker, bluer, pale, cold, blue, weak, no pulse, one colder, one paler, one weaker, less feeling, numb, \
tingling, warmer, mismatched, not match, one cold, one cold and pale, one cool, one pale, one numb, one weak, one \
blue, one white, cold one, cold hand, cold fingers, fingers cold, fingers blue, fingers numb, fingers pale, fingers \
white, hand cold, hand colder, hand pale, pale hand, pulse weak, pulse weaker, pulse gone, weak pulse, weaker pulse, \
not feel pulse, no feeling, lost feeling, can not feel fingers, not feel fingers, pins and needles, tingles, numb \
fingers, discoloured, discolored, dusky, mottled, slower, sluggish, bigger, swollen, this one colder, this one \
paler, this one cooler, this one numb, colder than other, paler than other, cooler than other, weaker than other, \
not same as other, not like other, not as warm, not as pink
hard cord | cord, like cord, hard, firm, rope, like rope, hard line, like string, stiff, corded, hardened, hard bit, \
hard bits, hard lump, hard ropey bit, ropey, ropey bit, ropy, feels like rope, feels like cord, feels like string, \
like piece of string, piece of string, cordlike, cord like, cordy, stringy, ridge, hard ridge, hard streak, hard \
string, hard vein, hardened vein, vein hard, vein gone hard, gone hard, lump along vein, lumpy, lumps, solid, thick \
cord, thick line, wire, like wire, pencil, like pencil, stick, firm rope, firm cord, firm line, knotty, knots, stiff \
line, tight cord, track
pus | discharge, oozing pus, yellow stuff, pus out, pus coming, weeping, yellow discharge, yellow stuff coming out, \
yellow stuff oozing, yellow ooze, yellow fluid, yellow goo, gunk, goo, ooze, oozing, bit of pus, some pus, pus \
there, pus coming out, pussy, matter, green stuff, green discharge, discharge coming out, drop of pus, weeping \
yellow, creamy stuff, infected, infection, smelly stuff, white stuff, leaking pus, stuff coming out
held firmly | firm, held, tight, firmly held, both firm, both held, secure, held tight, held tightly, held well, no \
gap, no gaps, no gap at all, gripped, both held firmly, snug, sits firmly, sits tight, not gap, held in, no space, \
no play, held in place, both in place, both clipped in, both gripped, both secure, both snug, both tight, clamped \
in, clipped in, locked in, locked in place, gripped tight, gripped firmly, grips, no movement, no room, no wobble, \
no wiggle, not moving, not move, does not move, will not move, nothing moves, no play at all, nice and firm, nice \
and snug, nice and tight, firm and snug, snug fit, solid, rock solid, flush, flush against, touching, tight up, \
tight against, right up against, seated, seated well, seated properly, sits well, sits right, good and tight, good \
and firm, fits snug, stuck fast, fast
a gap | gap, gaps, space, loose, not held, not firm, not tight, not held firmly, wobbly, gap there, gap between, \
some play, not secure, bit of gap, small gap, wee gap, little gap, tiny gap, slight gap, bit gap, there wee gap, got \
gap, see gap, gap behind, gap at, gap by, gap under, bit of space, little space, some space, space there, space \
between, space behind, bit of play, some room, room there, wiggles, wiggle, wobble, wobbles, moves, moves about, \
moves bit, rattles, slack, slack there, not flush, not touching, not up against, not right up, not seated, not \
clipped in, not gripped, not held in, not tight enough, not snug, come away, sticking out, loose fit, bit loose, \
little loose, slightly loose, millimetre gap, light through, see light between, see daylight, daylight between, \
finger fits between
as ordered | same, same as order, matches, match, matches order, agrees, agrees with order, exactly as order, \
exactly as ordered, entry right, entry correct, just as ordered, according to order, what order says, entered right, \
entered correctly, no slip, same as on order, identical, not slip, like order, no mistake, no difference, same as \
sheet, same as paper, same as what ordered, what ordered, just like order, like on order, as on order, as order \
says, as order has it, exactly what order says, entry good, entry fine, entry matches, entry matches order, entry \
same, numbers match, numbers agree, numbers same, numbers right, number right, number matches, all matches, all \
match, all agrees, matches sheet, matches paper, agrees with sheet, tallies, tally, tallies with order, correct, \
correct entry, keyed right, typed right, typed it right, keyed it right, entered it right, no typo, no mistakes, no \
error, no errors, nothing wrong, i entered it right, not mistake, right number, right as ordered, spot on, bang on
a slip | wrong, slip, typo, mistake, my mistake, error, mistyped, entered wrong, entered wrongly, wrong entry, not \
as ordered, not same, not right, not match, different, differs, different from order, not what ordered, typing \
mistake, slipped, not correct, entry wrong, differs from order, not agree, i slipped, i slipped up, slipped up, i \
messed up, messed up, i mistyped, i mistyped it, mistyped it, i typed it wrong, typed it wrong, typed wrong, typed \
wrong number, keyed it wrong, keyed wrong, keyed wrong number, hit wrong key, pressed wrong key, wrong key, wrong \
number, wrong numbers, wrong figure, put wrong number, put in wrong number, put wrong number in, entered wrong \
number, number wrong, numbers wrong, extra zero, extra nought, one zero too many, missed decimal, missed point, \
decimal wrong, point wrong, point in wrong place, decimal in wrong place, finger slip, slip of finger, fat finger, \
my fault, my bad, my error, i made mistake, i made error, made mistake, made error, made typo, i made typo, off by \
ten, ten times too high, ten times too much, does not match, not match order, not same as order, not what it says, \
swapped digits, digits swapped, two digits swapped
low | too low, lowish, below normal, below range, under range, under normal, on low side, below, under, low side, \
lower than normal, decreased, reduced, bit low, little low, slightly low, quite low, very low, on low, lower than \
should be, lower than range, down, bit down, lowish side, dropped, low one
normal | in range, within range, in normal range, within normal, within normal range, normal range, in limits, \
within limits, fine, within normal limits, inside range, not low or high, neither low nor high, not low and not \
high, not low not high, not high not low, in between, all normal, all right, okay, good, nothing wrong, in middle, \
middle of range, mid range, perfect, normal value, healthy, where it should be
high | too high, above normal, above range, over range, over normal, on high side, raised, elevated, above, high \
side, higher than normal, increased, bit high, little high, slightly high, quite high, very high, on high, higher \
than should be, higher than range, up, bit up, over, highish, gone up, high one
level | same level, at same level, level with heart, same height, at same height, level with him, level with her, at \
patient level, at his level, at her level, at level of patient, equal height, at heart level, at bed height, level \
with bed, beside patient, same height as patient, level with patient, as high as patient, same level as patient, \
same height as him, same height as her, same height as bed, same height as heart, same height as arm, at same height \
as patient, at his height, at her height, at patient height, at arm level, at arm height, at heart height, at bed \
level, beside him, beside her, next to him, next to her, in line with patient, in line with heart, in line with him, \
in line with her, even with patient, even with bed, even with him, even with her, dead level, about level, roughly \
level, right level
far above | too high, too high up, way up, way too high, much too high, way above, high above, well above, far above \
patient, high up, up too high, higher than patient, much higher than patient, far too high, a lot higher, much \
above, way up high, up high, up top, right up, right up top, high up on pole, up at top, at top of pole, top of \
pole, too far up, far up, much higher than him, much higher than her, much higher than bed, metre above, metre \
higher, a lot above, lot higher, lot above, above head, above his head, above her head, over his head, over her \
head, needs lowering, needs to come down, has to come down, should be lower, needs bringing down
a soft limit | soft one, soft limit, can be passed, can be overridden, soft stop, soft warning, warning only, just \
warning, only warning, can pass it, can go past it, can override, can override it, lets me override, lets me pass, \
lets me carry on, lets me go on, gives me option, asks me to confirm, overridable, yellow one
a hard limit | hard one, hard limit, can not be passed, can not override, can not be overridden, hard stop, can not \
pass it, can not go past it, can not go past, can not override it, will not let me, will not let me pass, will not \
let me override, will not let me go on, not let me pass, not let me override, not let me go on, does not let me, \
blocked, blocks me, no override, no way past, no option, no way round, refuses, refused, not overridable, red one
clear | clear now, gone, alert gone, no alert, no other alert, no more alerts, nothing, nothing on, empty, no \
message, no alarm, cleared, all cleared, no alerts, display clear, screen clear, screen is clear, display is clear, \
no other, no other alerts, no other message, no other messages, no more messages, no messages, no message on it, \
nothing else, nothing else on it, nothing else there, nothing else showing, nothing there, nothing showing, nothing \
up, nothing new, all gone, gone now, alert gone now, it gone, all done, back to normal, normal screen, home screen, \
no alert now, no warnings, no warning, no alarms, went away, gone away
another alert | second alert, one more alert, new one, more alerts, alert again, next alert, still alert, new \
message, another one, another one up, another one there, another one showing, another one come up, another one came \
up, another message, another message up, another warning, another alarm, one more, one more up, one more alert \
there, one more message, second one, second one up, second one there, second message, new alert up, new alert came \
up, new one up, something else up, something else came up, something else showing, something else there, something \
new, still one, still one there, still one up, still alert there, still alert up, still message, still warning, it \
back, alert back, came back, come back, not clear, not clear yet, not gone, still there, still showing, still up, \
flashing, more of them
nothing | none, nothing at all, says nothing, not say, no message, nothing of that, not show, does not tell, no \
hint, blank, nothing else running, nothing else is, nothing else there, nothing else runs, nothing else in it, \
nobody else, nothing else through it, nothing else on it, nothing else on line, nothing else going, nothing else \
going through, nothing else running through, nothing else connected, nothing else hooked up, nothing else attached, \
nothing more, nothing other, no other infusion, no other drip, no other drug, no other, no others, no piggyback, no \
second one, no second infusion, just this, just this one, just one, only one, only this, this one only, that only \
one, only thing running, only thing on it, single line, single infusion, on its own, alone, by itself, no extras, no \
mention, not mention it, does not mention, says neither, neither, neither one, not either, does not say, does not \
say where, not say where, no word, nothing on it, nothing written, nothing shown
above the pump | above, above it, upstream, upper, above pump, up top, up above, over pump, over it, higher up, bag \
side, on bag side, upstream side, upstream of pump, upstream occlusion, upstream blockage, upstream it says, says \
upstream, between bag and pump, from bag, towards bag, before pump, top side
below the pump | below, below it, downstream, under pump, lower, below pump, down below, under it, beneath, beneath \
pump, underneath, patient side, on patient side, downstream side, downstream of pump, downstream occlusion, \
downstream blockage, downstream it says, says downstream, between pump and patient, towards patient, after pump, \
past pump, lower down
another infusion | other infusion, more, something else running, something else, another drug, another bag, second \
one, one more, second one running, another one running, another running, second infusion running, second one going, \
second drip, second bag, second bag running, another bag running, another drip, another drip running, another one \
going, another line, piggyback, piggyback running, piggyback on it, other one, other one running, other drip, other \
bag, something running, something else going, something else on it, something else connected, potassium running, \
antibiotic running, heparin running, two running, two infusions, two going, y site running, shares it, shared, \
shared with another
rinse it in | rinse, rinse in, rinse it, flush in, rinsed in, rinse it through, rinse through, rinsing it in, flush \
it in, flush it through, flush through, flushing it in, flush set, flush rest in, flush it all in, push it in, wash \
it in, wash it through, give it, give rest, give it all, run it in, it gets rinsed, gets rinsed in, gets rinsed, \
gets flushed in, gets flushed, is rinsed in, to be rinsed, to be rinsed in, to be flushed in, must be rinsed in, \
must be rinsed, policy says rinse, policy says rinse it in, policy says rinse it, policy says flush, says rinse, \
says rinse it in, says flush it in, says to rinse it, says to rinse it in, in it goes
leave it | leave, leave in, left, stays, not rinse, not rinsed, leave it in set, leave it in, leave it where it is, \
leave it be, leave in set, leave rest, leave drug, leaving it, leaving it there, leaving it in set, gets left, is \
left, is left there, it left, to be left, left in set, left there, left alone, do not rinse, do not rinse it, do not \
flush, do not flush it, not to rinse, not to be rinsed, not to rinse it, no rinsing, no rinse, no flushing, policy \
says leave it, policy says leave, says leave it, says to leave it, says leave, stays in set, stays there, throw it \
away with set, discard with set, discard it
fits the bag | fits, fit, matches bag, agrees with bag, same as bag, right for bag, okay, fits fine, it fits fine, \
fits right, fits exactly, fits perfectly, fits well, just right, right amount, matches, matches what in bag, matches \
what left, same as in bag, same as what in bag, same as what left, equals bag, agrees, bag has that much, that much \
in bag, that much left in bag, enough in bag, covers it, bag covers it, as much as in bag
too little | not enough, less, short, less than bag, running low, insufficient, little left, not enough left, not \
enough in bag, not enough in it, not enough there, less than should be, less than in bag, less than what in bag, bag \
has more, more in bag, short by, falls short, short of it, will not last, not last, will run out, will run out \
early, runs out early, bag too small, bag short, little in bag, too low, hardly any, hardly anything, very little, \
next to nothing, barely any, not much, not peeing much, not passing much, hardly peeing, scanty, not going enough, \
bit too little, drop or two
too much | more, more than bag, over, excess, more than in bag, more than what in bag, more than there is, more than \
there is in bag, more than bag holds, bag has less, less in bag, over bag, too high, too big, too many, bit too \
much, set too high, set too much, more than left, more than what left, exceeds bag, exceeds
enough | plenty, lots, lots left, sufficient, enough left, plenty left, enough in both, enough for now, enough in \
all, plenty in it, plenty in bag, plenty in each, plenty in both, plenty left in both, plenty left in each, plenty \
in all, plenty there, plenty for now, plenty till then, plenty till next round, plenty until next round, plenty left \
till next round, plenty left till my next round, plenty left until next round, enough there, enough left in bag, \
enough left in both, enough left in each, enough in it, enough till then, enough till next round, enough to last, \
enough for next hour, will last, lasts, it will last, both last, all last, good for hour, more than enough, ample, \
loads, loads left, good amount, passing plenty, peeing plenty, peeing well, passing well, good output, output good, \
good urine output, half full, both half full, covers it
nearly empty | almost empty, running out, low, getting low, running low, not enough, not much left, close to empty, \
nearly dry, almost dry, nearly out, almost out, almost done, nearly done, nearly gone, almost gone, nearly finished, \
almost finished, about to run out, about to go dry, nearly run out, almost run out, close to dry, near empty, near \
end, near bottom, at bottom, near the bottom, very low, quite low, right down, little left in it, only little left, \
bit left, only bit left, little bit left, not much left in it, not much in it, hardly any left, hardly anything \
left, barely any left, barely anything left, will run out, will run out soon, will not last, will not last till \
then, will not make it, not last, not enough left, one low, one running low, one almost empty, one getting low, one \
nearly out, one nearly done, one almost done, running dry, needs new one soon, needs replacing soon, ready to \
change, inch left, drop left
due | due now, it is time, time for it, on time, on schedule, late, overdue, is due, due today, due this hour, due \
at this time, time is right, right time, on the dot, it time, high time, ready to give, can be given, can give it, \
ready for it, last one was eight hours ago, eight hours since last, long enough since last, long enough ago, needs \
changing, needs changing today, to be changed, to be changed today, for changing, changing day, needs to be changed, \
needs replaced, day four, four days old, due for change, due for changing, due to be changed, expired
too early | not due, not yet due, not time, early, too soon, not due yet, already given, already had it, given too \
recently, not time yet, not for another hour, hour too early, hour early, hours early, bit early, bit too early, \
still early, too close to last, too close, too soon after last, too soon after last one, only had it hour ago, had \
it hour ago, just had it, had it already, been given, been given already, already been given, given an hour ago, \
given hour ago, next one later, should wait, has to wait, must wait, not long enough, not long enough since last, \
not enough time since last
still fresh | fresh, new, not due, not due yet, too early, still good, in date, not old, fresh still, fresh today, \
brand new, brand new set, new set, new today, changed today, changed yesterday, put up today, put up yesterday, hung \
today, only day old, only one day old, day old, one day old, two days old, not due till, not due for, not due until, \
not due for days, days left, has days left, got days left, still has days, still in date, still okay, still fine, \
okay still, well within time, within its time, not expired, no need to change, not old yet
dry and soft | soft dry, soft and dry, dry soft, fine, all good, normal, healthy, soft and dry both, soft no \
swelling, dry no swelling, soft dry no swelling, dry soft flat, flat and dry, flat dry, flat soft dry, dry flat \
soft, no swelling no wet, no swelling not wet, not wet not swollen, not swollen not wet, dry and not swollen, nice \
and dry and soft, all dry and soft, good dry and soft, looks good, looks fine, looks normal, no change, unchanged, \
perfect, lovely
wet | moist, soaked, damp, leaking, leaks, soggy, weeping, bit wet, little wet, slightly wet, wet there, wet under, \
wet dressing, dressing wet, wet gauze, feels wet, wet round it, bit damp, little damp, damp dressing, damp there, \
moist dressing, soggy dressing, dripping, drips, fluid under, fluid under dressing, fluid coming out, oozing, \
seeping, leak there, leaks there, weeps, leaking bit, leaking little, soaking, soaking wet, sopping
complete and right | all correct, everything right, everything correct, nothing missing nothing wrong, nothing \
missing and nothing wrong, correct and complete, all right and complete, word for word, no mistakes nothing missing, \
complete and accurate, perfect, all correct and complete, got everything right, got it all right, repeated \
everything right, said everything right, said it all right, repeated all correctly, repeated everything correctly, \
repeated correctly, everything complete and right, got all right, all repeated right, right and complete, repeated \
it all right, got all correct, all of it correct, all there and right, everything there and right, all right and \
nothing missing, got it right, got every bit, got every bit right, got every bit of it, got every bit of it right, \
every bit right, every bit of it right, every bit correct, every word right, every detail right, repeated perfectly, \
repeated it perfectly, said all right, all spot on, spot on, bang on, dead on, hundred percent, full marks, \
flawless, faultless, accurate, matches what i said, exactly what i said, exactly as i said, same as i said, as i \
said it, all matches, everything matches, word perfect, whole thing right, whole lot right
something wrong | wrong, something not right, one thing wrong, one wrong, one number wrong, mistake, made mistake, \
made error, error, incorrect, not right, not correct, not all right, not all correct, got one wrong, got something \
wrong, got it wrong, said wrong, mixed up, mistakes, one mistake, wrong number, wrong rate, wrong dose, wrong drug, \
wrong time, wrong volume, rate wrong, dose wrong, drug wrong, time wrong, volume wrong, name wrong, wrong name, got \
rate wrong, got dose wrong, got name wrong, said wrong rate, said wrong dose, said wrong drug, bit wrong, got it \
mixed up, got them mixed up, muddled, muddled it, muddled up, mixed it up, mixed them up, swapped, swapped two, \
wrong arm, wrong side, wrong hand, wrong site, wrong figure, wrong unit, wrong units, got rate mixed up, not what i \
said, not as i said, different from what i said, misheard, misheard it, got it backwards, slip, slipped up, off by \
ten, out by ten, said ten times, rate not right, dose not right, dose off, rate off, time off, name off, not quite \
what i said, messed up, messed up rate, messed up dose
ready-mixed | ready mixed, premixed, pre mixed, mixed already, comes mixed, from pharmacy, mixed in pharmacy, mixed \
by pharmacy, came ready mixed, came premixed, came from pharmacy, comes from pharmacy, comes premixed, straight from \
pharmacy, pharmacy mixed it, pharmacy made, pharmacy made it, pharmacy bag, made in pharmacy, made by pharmacy, made \
up in pharmacy, made up by pharmacy, factory made, from factory, factory mixed, from manufacturer, from maker, maker \
mixed, pre made, premade, bought in, commercial, commercially mixed, sealed from maker
mixed on this ward | mixed it myself, i mixed it, mixed by myself, mixed on ward, mixed on unit, mixed here, mixed \
by us, ward mixed, mixed ourselves, we mixed it, we mixed it here, we made it, we made it up, we made it up here, we \
made it here, made here, made up here, made on ward, made up on ward, made on unit, made up on unit, i made it up, i \
made it, i mixed this, i mixed it here, mixed up here, mixed it here, mixed in treatment room, made up in treatment \
room, nurse mixed it, nurse made it up, colleague mixed it, night shift mixed it, home made, homemade, mixed \
locally, done here
on the screen | on screen, see rhythm, rhythm there, showing, visible, shows, displayed, on monitor, there on \
screen, it there, can see it, see it, up on screen, up there, on there, running across, trace there, trace on \
screen, see trace, got trace, got rhythm, see rhythm on screen, rhythm showing, showing on screen, showing up, \
sinus, sinus rhythm, regular rhythm, see beats, picking it up, picked up, waves, see waves, green line, tracing, \
tracing on screen, displaying
there is none | none, nothing, nothing there, no rhythm, no monitor, not connected, blank, nothing on screen, not on \
screen, not see any, no trace, no tracing, no rhythm there, no rhythm showing, nothing showing, nothing showing up, \
flat line, flat, screen blank, screen off, screen dark, blank screen, monitor off, monitor not on, not hooked up, \
not attached, leads off, lead off, no leads, no signal, no monitor here, there is no monitor, none there, nothing at \
all, not picking up
comfortable | fine, okay, good, feels good, feels okay, comfy, all right, no complaints, feels grand, feels all \
right, feels great, all good, all fine, grand, no burning no swelling, no problem, no problems, no bother, comfy \
yes, nice and comfortable, quite comfortable, feels nothing, fine so, says comfortable, says comfy, says fine, says \
okay, says good, says all right, says feels fine, says feels good, says feels okay, arm fine, arm good, arm okay, no \
discomfort, at ease, not complaining
burning | burns, stings, stinging, burn, burning feeling, bit of burning, little burning, some burning, burns bit, \
burns little, burns a bit, stings bit, stings a bit, stings little, bit stingy, hot, feels hot, hot feeling, like \
fire, on fire, smarting, smarts, sharp, prickling, says burns, says it burns, says stings, says it stings, says \
burning, says hot, burning up arm
a free port | free port, port free, free one, one free, found one, there port, found free port, got one, got one \
free, got free one, found one free, one available, port available, spare port, spare one, one spare, one there, one \
near hand, one by wrist, one near patient, port near hand, one right there, empty port, unused port, open port, \
available
this line | same line, same one, right line, correct line, right one, this one, this line yes, this one yes, ours, \
our line, our one, correct, right, right all way, same all way, one i hold, one in my hand, it is this, is this one, \
goes to this one, same one all way, this same line, yes this line
another line | different line, other line, not this line, not this one, not same line, different one, wrong one, \
another one altogether, another line altogether, not ours, not our line, not our one, not it, not right one, not \
correct one, other one, belongs to other pump, goes to other pump, goes to other bag, goes to other drip, goes \
elsewhere, goes somewhere else, leads elsewhere, leads somewhere else, wrong line altogether, mixed up, different \
one altogether, some other line, someone else line
a second drug | second drug, another drug, one more, another one, second one, one more drug, there second, second \
one due, second one follows, second one to follow, one more to go, another to follow, another one follows, another \
one after, another one to go, another drug after, other antibiotic, another antibiotic, second antibiotic, two \
drugs, two drugs ordered, two of them, there another, one more after, more to come, yes second one
share one set | share, can share, may share, one set, same set, together, compatible, can share set, can share it, \
may share it, may share set, can share one, may share one, can share line, share one, share it, share set, one set \
will do, one set fine, one set is fine, one set okay, same set fine, same set okay, same set is fine, one set for \
both, same set for both, together in one set, in one set, in same set, both in one set, both through one set, \
compatible so one set, compatible with each other, can go together, may go together, go together, fine together, \
okay together, can mix, no clash
safe for tissue | not vesicant, no vesicant, no harm, no damage, not damage tissue, non vesicant, not harmful, \
harmless, not damage, irritates nothing, safe for skin, safe all of them, all safe, all safe for tissue, does no \
harm, does not harm, does not hurt tissue, does not harm tissue, does not damage, does not damage tissue, no harm to \
tissue, will not harm, will not damage tissue, will not hurt tissue, nothing harmful, nothing that damages, nothing \
dangerous, just saline, only saline, plain saline, just fluid, just salt water, mild, gentle, not irritant, non \
irritant, no irritant, not damaging, not harmful at all, okay for tissue, fine for tissue, kind to tissue
damages tissue | vesicant, harmful, damages it, damaging, harms tissue, not safe, not harmless, burns tissue, kills \
tissue, hurts tissue, bad for tissue, harmful to tissue, harms it, does damage, does harm, does damage tissue, can \
damage, can damage tissue, could damage tissue, would damage tissue, damages skin, dangerous, dangerous for tissue, \
irritant, irritates, irritates tissue, one of them damages, one damages tissue, one vesicant, there vesicant, \
vesicant there, on vesicant list, listed as vesicant, marked as vesicant, caustic, corrosive, necrosis, blisters \
tissue, not safe for tissue, toxic
it has moved | moved, moves, has moved, moved on, further down, moved down, travelled, has gone down, gone down, \
went down, going down, moved bit, moved a bit, moved little, moved on bit, moved line, moved one line, moved one \
mark, moved mark, moved down bit, moved down line, moved along, moved forward, moving, is moving, moving down, it \
moving, creeping, crept, crept down, crept along, crept on, further along, further on, lower than before, lower now, \
down line, down one line, down bit, shifted, shifted down, shifted bit, slid down, not where it was, not in same \
place, not same place, passed mark, past mark, past line, advanced, changed
where it was | not moved, same place, in same place, unmoved, has not moved, stuck, did not move, still there, not \
move, not moving, not moved at all, same place still, still in same place, same spot, in same spot, same mark, on \
same mark, at same mark, same line, on same line, at same line, has not budged, not budged, not budge, did not \
budge, has not shifted, not shifted, no movement, no change, nothing changed, not moved bit, not moved an inch, not \
moved inch, unchanged, no different, still at same, still on same, still where it was, just where it was, exactly \
where it was, standing, stood still, not going, not gone down, has not gone down, stays where it was, stayed where \
it was, stayed put, stuck there, frozen, motionless, not moving at all
large vein | big vein, big one, large one, good vein, large, big, in big vein, in big one, in good vein, in good big \
vein, nice big vein, nice big one, good big vein, fat vein, thick vein, wide vein, in elbow, in crook of elbow, \
elbow vein, forearm vein, upper arm, big one in forearm, central, chest vein, neck vein, antecubital
small vein | little vein, tiny vein, small one, thin vein, small, thin, in little vein, in small one, in tiny vein, \
in tiny one, wee vein, in wee vein, narrow vein, fine vein, hand vein, in back of hand, back of hand, in hand, \
finger vein, wrist vein, thin one, tiny one, little one, skinny vein, thready
bleeding | bleeds, blood, some bleeding, bruises, bruising, blood somewhere, bleeding somewhere, new bruise, \
nosebleed, gums bleeding, gums bleed, nose bleeding, nose bleeds, bleeding gums, bleeding nose, nosebleeds, blood in \
urine, blood in pee, blood in stool, black stool, pink urine, red urine, bruise, bruised, new bruising, bruise \
coming up, oozing, spots of blood, blood on gums, blood on pillow, bleeds from gums, purple patches, coughing blood
a bleeding risk | risk, bleeding risk, at risk, has risk, on thinners, on blood thinner, takes thinners, takes blood \
thinner, bleeds easily, bruises easily, yes to thinners, blood thinners, anticoagulants, on anticoagulants, takes \
anticoagulants, anticoagulant, thinners, easy bleeding, takes thinner, on thinner, on warfarin, on aspirin, takes \
apixaban, takes warfarin, takes aspirin, takes heparin, takes clopidogrel, takes rivaroxaban, takes anticoagulant, \
on apixaban, on clopidogrel, on rivaroxaban, on heparin, on anticoagulant, on blood thinners, on thinners yes, \
taking warfarin, taking aspirin, taking thinners, taking blood thinners, bleeds easy, bruises easy, bruises badly, \
haemophilia, hemophilia, bleeder, bleeding disorder, low platelets, bleeding history, history of bleeding, bled \
before, yes on blood thinners
none / a bleeding risk | no risk, no risks, no thinners, no blood thinners, not on thinners, not on blood thinners, \
not on any, no bleeding, no blood thinners no bleeding, no thinners no bleeding, no anticoagulants, not at risk, no \
easy bleeding, not bleed easily, no blood thinners and no bleeding, no blood thinners no easy bleeding, nothing \
there, no thinners no easy bleeding, not on anything, not on any thinners, not on any blood thinners, not on any \
anticoagulants, not taking any, not taking thinners, takes none, takes no thinners, takes no blood thinners, on \
none, on nothing, no history, no history of bleeding, no bleeding history, no bleeding problems, no bleeding \
disorder, no clotting problems, clots fine, chart clear, all clear, nothing on chart, nothing in chart, nothing \
written, neither one, no to both, no risk there, no thinners no history
none / a free port | no port, no port free, none free, all taken, all used, not one free, no free one, all full, no \
free port, no ports free, none available, no port available, no port left, all ports taken, all ports used, all \
ports in use, all in use, every port taken, every one taken, each one taken, all occupied, no spare, no spare port, \
nothing free, full up, no room, not one
none / a second drug | no second, no second drug, no second one, no other drug, only one, just one drug, only one \
drug, nothing else, nothing follows, just the one, only the one, nothing after it, nothing after, nothing after \
that, no more drugs, none after, none after that, no second drug after, just first one, only first one, just first, \
only first, just this one, only this one, that last one, last one, last drug, no other, no other one, no others, no \
more, no more after, nothing more, nothing further, nothing after first, nothing second, that was only one, single \
drug, end of it
closed | shut, shut off, closed off, closed up, clamped, clamped off, clamped shut, rolled shut, rolled down, rolled \
right down, rolled all way down, right down, all way down, fully closed, fully shut, tight shut, shut tight, closed \
tight, pinched, pinched off, pinched shut, not open, no flow, nothing getting through, latched, locked
open | opened, undone, unclamped, rolled up, rolled right up, rolled open, wide open, fully open, bit open, slightly \
open, still open, half open, partly open, not closed, not shut, not clamped, not fully closed, not quite closed, \
left open, been left open, someone left it open
in place | still in place, cap on, cap there, cap still there, still there, still on, on there, on it, sitting \
there, sitting on it, sat on it, on tight, on snug, on and tight, nice and snug, there, it there, cap in position, \
in position, fitted, capped, got its cap, has cap, has its cap, has cap on, got cap on, wearing its cap, where it \
should be, where it belongs, where should be, firmly on, secure, secured, blue cap on, cap seated, seated, clicked \
on, screwed on, cap screwed on, cap tight
missing | gone, off, cap gone, cap off, cap missing, no cap, no cap on, no cap on it, no cap there, without cap, \
without its cap, uncapped, not capped, not got cap, has no cap, not there, not on, not in place, come off, came off, \
fallen off, fell off, cap fell off, cap fallen off, cap come off, cap came off, popped off, dropped off, lost, lost \
its cap, bare, naked, port bare, port open, nothing on it, nothing on end, nothing there, nothing on port, nothing \
on there, not see cap, not find cap, cap not there, cap not on, gone missing, exposed, disappeared
freely with blood return | flushes freely and blood returns, flushes freely and blood comes back, flushes freely \
blood back, flushes freely got blood, flushes well got blood, flushes and returns, flushes and bleeds back, flushes \
and gives blood, flushes fine blood back, flushes fine and blood comes back, flushes easily blood comes back, \
flushes easily and blood back, flushes easily with blood, flushes lovely and blood back, flushes lovely blood back, \
works fine both ways, works both ways, both ways fine, good both ways, pushes and pulls, pushes and pulls fine, goes \
in easily and blood comes back, goes in fine and blood comes back, patent, patent both ways, all good, good flush \
good return, good flush and good return, flush and return good, flush fine return fine, blood both, flash and \
flushes
none / bleeding | no bleeding at all, no blood, no blood at all, no blood anywhere, nothing anywhere, no bleeding \
anywhere, nothing bleeding, not bleeding, not bleeding anywhere, no signs of bleeding, no sign of bleeding, no sign \
of blood, clean everywhere
wall power | wall, mains, mains power, wall socket, from mains, from wall socket, from socket, off wall, off mains, \
off socket, plugged in, plugged into wall, plugged into mains, plugged in wall, plugged in at wall, in wall, in \
socket, on socket, on wall, on wall socket, mains light on, plug light on, plug sign, plug symbol, plug icon, green \
light, charging, electric, electricity, outlet, from outlet, ac power, ac, not battery, not on battery, not on its \
battery
its battery | battery, battery power, battery still, off battery, from battery, from its battery, running on \
battery, running off battery, runs on battery, runs off battery, still running on battery, still off battery, \
battery light, battery light on, battery sign, battery symbol, battery icon, unplugged, not plugged in, not on \
mains, not on wall, not on wall power, not in wall, not mains, no mains, no wall power, dc
in its place | in place, in position, in its channel, in its groove, in its slot, in channel, in groove, in slot, \
seated, seated right, seated well, seated properly, well seated, sitting right, sitting well, sitting properly, sits \
right, sits well, where it should be, where it belongs, loaded right, loaded properly, loaded well, loaded \
correctly, in right, in properly, in there right, in there properly, all good, looks good, looks right, looks fine, \
good, fine, straight, straight in
pinched | squeezed, nipped, trapped, caught, caught in door, trapped in door, pinched in door, pinched by door, \
pinched there, bit pinched, bent, kinked, kink, folded, fold, flattened, flat, jammed, crimped, pinch, there pinch, \
twisted
out of place | out, came out, come out, has come out, popped out, fallen out, fell out, slipped, slid out, jumped \
out, hanging out, sticking out, half out, half in, not in place, not in its place, not in position, not in channel, \
not in groove, not in its channel, not in its groove, not seated, not seated right, not seated properly, not sitting \
right, not sitting properly, not in right, not in properly, off, off centre, misplaced, moved out, out of channel, \
out of groove, out of position, crooked, squint, wrong place, in wrong place, in wrong, loaded wrong
it goes on | carries on, continues, continue, keeps going, keep going, keeps on, keeps running, keep running, carry \
on, going on, still going, still on, still ordered, still runs, to continue, is to continue, is to go on, is to \
carry on, to carry on, to go on, infusion continues, infusion carries on, drip continues, drip carries on, more to \
come, more to run, not ended, not over, not finished, not done, has not ended, not stopped, on it goes, runs on, \
another bag, order still active, still active, still current, extended, ongoing
it has ended | finished, it finished, has finished, is finished, over, all over, is over, done, it done, all done, \
ended, it ended, has ended, complete, completed, is complete, stopped, has stopped, to be stopped, is to be stopped, \
is to stop, to stop, is stopping, stops, stop, discontinued, has been discontinued, been discontinued, is \
discontinued, been stopped, cancelled, canceled, no more, no more ordered, no more bags, nothing more, last bag, \
that last one, last one, does not go on, not go on, not continue, does not continue, not carry on, not to continue, \
not going on, order ended, order over, order finished, order stopped, run out, expired
the battery | battery low, low battery, battery flat, battery dying, battery nearly flat, battery going, battery \
empty, battery warning, battery alarm, battery sign, battery light, battery running out, battery running low, flat \
battery, needs charging, needs charge, power, power low, low power, needs plugging in, not plugged in, unplugged, \
its battery, for battery, because of battery
the door | door open, door ajar, door not shut, door not closed, door not latched, door not closed properly, door is \
not shut, door is not closed, door unlatched, door alarm, door warning, door sign, open door, door came open, door \
popped open, latch, latch open, latch not closed, for door, because of door, not shut properly
the end of the infusion | end, infusion end, infusion over, infusion done, infusion finished, infusion complete, \
infusion has ended, infusion has finished, end of infusion, finished, it finished, all finished, it done, complete, \
is complete, done, all done, run through, bag empty, bag done, bag finished, volume given, volume infused, volume \
complete, all infused, all in, it ended, it over, vtbi done, vtbi complete, drip finished, drip done
not sure | can not say, can not tell, could not say, could not tell, do not know, not know, no idea, not certain, \
uncertain, hard to say, hard to tell, label not say, does not say, not clear, unclear, have to ask, would have to \
ask, need to ask, have to look it up, need to look it up, have to check, need to check
both level | same level, same height, both same, both same height, both at same height, both at same level, both \
same level, level both, both even, even, evenly, equal, equal height, side by side, neither, neither higher, neither \
one higher, neither one, no difference, alike, side by side same height, at same height, at same level, same
cool and swollen | cold and swollen, cool and puffy, cold and puffy, puffy and cold, puffy and cool, swollen and \
cool, swollen and cold, pale and puffy, pale and swollen, swollen pale cold, pale cool swollen, cool pale and \
swollen, tight and cool, boggy, spongy, like a balloon, swelling, not red
red and sore | red and painful, red and tender, red and warm, red and hot, red hot and sore, hot and red, warm and \
red, sore and red, painful and red, inflamed, red hurts, red and hurts, it red and it hurts, angry and sore, angry, \
tender, painful, red line and sore, red streak, pink and sore
quiet | nice and quiet, all quiet, quiet yes, silent, no sound, no noise, no beep, no beeps, no beeping, no alarms, \
not alarming, not beeping, not making sound, not peep, not sound, no peep, running quietly, runs quietly, quiet as \
mouse, running fine, running well, running nicely, running no alarm, humming away, humming, fine, all fine, good, \
all good, calm, stays quiet, stayed quiet, still quiet
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
