"""How people say the alternatives of bags, labels and orders, in English: see `choices`."""

WAYS = """
all there | complete, all complete, everything is there, nothing missing, nothing is missing, nothing lacking, all of \
it, complete and signed, clear and signed, signed and complete, all three, everything there, all present, nothing \
left out, not missing anything, full, all in order, nothing lacks, everything on, all on it, all on there, every bit \
there, whole thing there, nothing missing at all, every part there, everything on sheet, all filled in, everything \
filled in, complete clear signed, signed and clear, all in there, all four there, everything you need there, no gaps, \
fully complete, all present and correct, all filled out, properly signed and complete, everything on order, got \
everything, every box filled, order complete, nothing lacking at all, doctor signed it and complete, all down and \
signed
something missing | missing, one thing missing, one missing, incomplete, not complete, not all there, not signed, \
unsigned, no signature, no rate, no date, no dose, no volume, nobody signed, signature missing, rate missing, date \
missing, left out, something lacking, lacks something, part missing, bit missing, not everything there, not \
everything, no signature on, lacks signature, illegible, not legible, not readable, smudged, something left out, left \
something out, forgot something, left out something, left bit out, missed something, something missed, something \
forgotten, not all of it, one thing left out, left part out, missed part, missed bit, one bit missing, something not \
there, one thing not there, one not there, thing missing, isn there, no prescriber, nobody has signed, never signed, \
not been signed, has not signed, no sign, blank, one left blank, one box empty, no route, scribble, scrawl, gap in \
it, lacking, unclear, not clear, no duration, no weight, without signature, not complete at all, half of it missing, \
missing one, not filled in, one not filled in
fit to use | all good, good, fine, looks good, good to use, fine to use, okay to use, all fine, nothing wrong, clear \
and in date, clear intact and in date, in date and clear, fit, all fit, perfect, usable, can be used, sound, clear \
dry in date, clear whole in date, no problem, no problems, no issues, okay, all good to use, good to go, good to \
hang, all sound, all in order, in order, in good order, in good condition, good condition, nothing wrong with it, \
nothing wrong at all, no faults, no fault, all fine and in date, clear and good date, clear in date and no leaks, \
clear no leaks in date, clear no leaks and in date, clear sealed in date, clear dry and in date, clear good date, \
sealed clear and in date, safe to use, okay to hang, fine to hang, ready to use, no cloudiness no leaks in date, no \
leaks not cloudy in date, not cloudy not leaking in date, not cloudy not leaking not expired, no cloudiness no leaks \
not expired, not expired not leaking not cloudy, spot on, perfectly good, both fit, both fit to use
clear and dry | clear and intact, clear no leaks, dry and clear, all clear, clear and no leaks, clear not leaking, \
all good, clear and sealed, no leaks and clear, clear no leak, clear and tight, no leaks clear
cloudy | hazy, murky, milky, not clear, particles, bits in, something floating, discoloured, discolored, bit cloudy, \
things floating, flakes, precipitate, bits in it, specks, sediment, misty, dirty, yellowish, flaky, crystals, \
cloudiness, cloud, floaters, particles in it, bits floating, things in it, gone cloudy, bit milky, little cloudy, bit \
hazy, slightly cloudy, looks cloudy, foggy, muddy, turbid, opaque, stuff floating, something in it, bits floating \
about, bits in there, flecks, specks in it, dust in it, gone milky, strands, threads in it, cloudy bits, hazy bits, \
clumps, sediment at bottom, settled at bottom, not clear at all, grainy, swirly bits, blurry, particles floating, \
white bits, floating bits
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
has gone, date has passed, date is gone, date in past, lapsed, well out of date, well past
sealed and in date | in date and sealed, both sealed and in date, sealed and good, all sealed and in date, sealed and \
not expired, both fine, all good, both good, sealed in date, seal fine in date, intact in date, all fine, both all \
right, sealed and current, closed and in date, good, fine, no tears in date, unopened and in date, not opened and in \
date, in date and unopened, sealed not expired, sealed tight and in date, seal intact and in date, packet sealed and \
in date, never opened and in date, intact and current, closed and current, unopened in date, still sealed and in \
date, sealed up and in date
opened | open, already open, torn, not sealed, seal broken, unsealed, been opened, already opened, tampered, seal \
gone, undone, not closed, damaged, ripped, tear, already been opened, somebody opened it, someone opened it, opened \
before, been torn, torn open, ripped open, seal not good, peeled open, half open, bit open, corner open, corner \
lifted, come unsealed, package opened, wrapper open, split open, hole in wrapper, has been opened
together | compatible, may run together, can run together, fine together, okay together, safe together, go together, \
mix, can mix, okay in one line, fine in one line, can go together, may go together, can share, compatible together, \
compatible with each other, run together, can be run together, safe to run together, allowed together, can run in one \
line, can be together, okay to mix, may mix, can be mixed, okay to run together, fine to run together, safe to mix, \
can share line, may share line, can share the line, compatible says chart, can go in one line, can go in same line, \
same line okay, allowed to mix, no problem together, no clash, no interaction, get along, get on, go together fine, \
compatible yes, run fine together, can both run, okay at y site, compatible at y site, both together, all compatible, \
they mix, no incompatibility, no problem running them together, fine to mix
apart | incompatible, not compatible, not together, must stay apart, separate, keep apart, stay apart, separately, \
keep separate, keep them separate, kept apart, has to be separate, have to stay apart, not mix, never together, not \
run together, not go together, can not run together, may not run together, incompatible together, on own line, own \
line, separate lines, on their own, must not run together, must not mix, not share, not allowed together, must be \
kept apart, must be separate, never mix, never same line, not same line, not in same line, not in one line, not to be \
mixed, do not mix, does not mix, must not be mixed, must not be given together, can not mix, can not be mixed, can \
not share, can not go together, can not share line, may not mix, may not share, need own line, needs own line, need \
separate line, needs separate line, separate line, different lines, different line, two lines, on separate lines, \
keep them apart, kept separate, clash, they clash, precipitate, precipitates, would precipitate, forms precipitate, \
not safe together, not okay together, never in one line, never in same line, incompatible says chart, one after \
other, flush between, not compatible at all
still fluid | fluid, some left, not empty, plenty, still some, half full, fluid left, plenty left, some fluid, still \
some left, has fluid, enough, fluid in, fluid in it, lots left, lots of fluid, some fluid left, bit of fluid, plenty \
of fluid, not dry, got fluid, fluid there, still fluid left, some in it, bit left, some liquid, not run out, quarter \
full, third full, full, nearly full, liquid, liquid in it, liquid there, still liquid, still liquid in it, fluid \
still in, fluid in both, liquid in both, still fluid in it, still fluid there, fluid yet, still got fluid, still got \
some, got some left, some left in it, some there, some in there, still some in it, still some in there, still some \
there, still has some, has some left, has plenty, has plenty left, plenty there, plenty still, plenty in it, plenty \
yet, still plenty, still plenty left, still plenty there, still plenty in it, still plenty in bag, loads, loads left, \
loads in it, still loads, lots still, lots there, good bit left, good bit, fair bit left, fair bit, quite bit left, \
quite lot left, bit left in it, bit at bottom, little left, half left, quarter left, third left, about half, about \
half full, about third left, about quarter left, more to go, more left, not finished, not dry yet, not empty yet, not \
run dry, bag half full, still half full, still in it, still hanging, fluid in chamber, fluid in bag, still dripping, \
still wet, mils left, about hundred left, about two hundred left, about fifty left
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
hanging, same as one hanging, same as one up, another of same, another bag of same, another one of same, just another \
of same, just another bag of same, more of same, one more of same, one more same, one more bag, another bag, another \
litre, repeat, repeat bag, repeat of same, like before, like last one, like first one, like for like, saline again, \
identical to last, identical to hanging, identical to what hanging, identical to one hanging, identical bag, no \
change to fluid, no change in fluid, no difference, has not changed, not changed, unchanged order, exactly same, \
exact same, exact same fluid, very same, same name same strength, matches what hanging
something else | something different, something new, another fluid, different, different fluid, not same, different \
one, another one, another solution, not same fluid, other fluid, changed, wrong fluid, new fluid, different drug, \
different stuff, different solution, different from before, different from last one, not same as before, not same as \
last one, not same bag, not same stuff, not same thing, another kind, another type, another sort, changed it, changed \
fluid, have changed it, they changed it, they have changed it, they changed fluid, changed to, changed it to, changed \
to dextrose, changed it to dextrose, changed to saline, changed it to saline, changed over, switched, switched it, \
switched to, switched to dextrose, switched fluid, swapped, swapped it, swapped to, dextrose instead, other stuff, \
potassium added, with potassium, added potassium, not saline, not saline any more
torn | ripped, tear, rip, hole, split, damaged, open, opened, broken, not sealed, seal broken, punctured, not intact, \
unsealed, package open, torn open, been torn, bit torn, little tear, small tear, tiny tear, there tear, got tear, \
tear in it, rip in it, there rip, hole in it, small hole, tiny hole, pin hole, pinhole, split in it, split open, \
ripped open, package torn, package ripped, package damaged, wrapper torn, wrapper ripped, wrapper split, packet torn, \
packet ripped, packet open, corner torn, corner open, seal torn, seal gone, half open, peeled open
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
it in, few drops left, not all gone, remains, remaining, some remains, more to go, not done, bit left in it, bit left \
in bag, bit left yet, bit more, bit more to go, bit still in, bit still left, bit still there, little left in it, \
little bit left, little bit still, little bit in it, little more, some in bag, some in chamber, some there, some yet, \
some still there, some still in bag, some still left, some more, still bit left, still bit in, still bit there, still \
little left, still running, still running in, still dripping, still dripping in, still infusing, still fluid left, \
still fluid in it, still liquid, still got some, still got bit, still half, still in it, still not in, still not \
finished, still not empty, got some left, got bit left, quarter left, half left, third left, about half left, about \
quarter left, about third left, half in, not all in yet, not empty yet, not through, not through yet, not run in, not \
run through, not all through, more left, more in it, few mils left, drops left, drop left, inch left, mils left, ten \
mils left, twenty mils left, drip left, plenty left, lots left, loads left
comes out | come out, taken out, to be taken out, remove, removed, to be removed, out it comes, goes, to come out, \
catheter out, must come out, has to come out, take catheter out, take cannula out, take it out, taking it out, pull \
it out, pull catheter, remove it, remove catheter, remove cannula, for removal, is for removal, to be pulled, coming \
out, is coming out, is to come out, want it out, want it removed, want it taken out, removal, has to go, must go, \
cannula out, not staying, not staying in, comes out yes
stays in | stays, stay, leave in, leave it in, keep in, keep it in, left in, kept in, not come out, not comes out, \
catheter stays, to stay in, stays where, stays put, remains in, remains, has to stay in, stays there, stay there, \
keep catheter, kept, want it kept, to be kept, is to be kept, want it left in, want to keep it, leave catheter in, \
leave catheter, catheter to stay, to stay, is to stay, is staying, staying, staying in, staying put, left in place, \
leave it be, leave it where it is, leave it there, remains in place, stays in place, stays where it is, stays for \
now, keep cannula, cannula stays, iv stays, not for removal, not coming out, not to come out, do not remove, not \
remove it
it stays | stays, stay, leave in, leave it in, keep in, keep it in, kept in, not come out, remains, remains in, stays \
put, keep catheter, kept, want it kept, to be kept, is to be kept, want it left in, want it left, want to keep it, \
leave catheter in, leave catheter, catheter to stay, catheter is to stay, to stay, to stay in, is to stay, is \
staying, staying, staying in, staying put, stay put, left in, left in place, leave it be, leave it where it is, leave \
it there, remains in place, stays in place, stays where it is, stays for now, keep cannula, cannula stays, iv stays, \
not for removal, not to come out, not coming out, do not remove, do not take it out, not remove it
it comes out | come out, taken out, remove, removed, to be removed, goes, out, catheter out, take catheter out, take \
cannula out, take it out, taking it out, pull it out, pull catheter, remove it, remove catheter, remove cannula, for \
removal, is for removal, to be pulled, to come out, is to come out, to be taken out, coming out, is coming out, comes \
out today, want it out, want it removed, want it taken out, out it comes, removal, has to come out, has to go, must \
come out, must go, cannula out, not staying, not stay, does not stay, not staying in, whip it out
all three | all there, all of them, all of it, all complete, everything, everything there, yes to all, three of \
three, all three good, all three fine, all good, all fine, nothing missing, all three of them, primed loaded no air, \
primed and loaded no air, all done
within range | in limits, within limits, inside range, inside limits, in usual range, inside usual range, fine, okay, \
in usual, normal, usual, inside, inside it, in range, is in range, well within, well within range, well within \
limits, well inside, within usual range, within normal range, within usual limits, within normal limits, within usual \
dose, within, right in range, right within range, in normal range, in usual limits, in normal limits, under limit, \
under maximum, below maximum, below limit, between limits, in window, in band, falls within range, falls within, \
falls in range, sits in range, sits within range, nothing out of range, neither too fast nor too slow, acceptable, \
fits range, matches usual range, as usual, in table, in book range, all within range, both within range, both in \
range, safe range, in safe range
out of range | too high, too low, too fast, too slow, outside, outside limits, outside usual range, out of limits, \
above range, below range, over limit, under range, beyond range, over, above limit, not in range, not within range, \
not normal, not usual, above usual dose, above usual rate, above usual range, above normal range, above maximum, \
above max, above top, over maximum, over max, over top, over range, over usual range, over usual dose, over usual \
rate, over limits, more than usual, more than maximum, more than max, more than limit, higher than usual, higher than \
range, higher than limit, faster than usual, slower than usual, lower than usual, less than usual, below minimum, \
under minimum, below usual range, below usual dose, below usual rate, under usual range, outside usual limits, \
outside it, outside normal range, outside range, exceeds, exceeds it, exceeds limit, exceeds range, exceeds maximum, \
exceeds max, too much, too big, too strong, too high for it, too fast for it, too fast for that drug, double usual \
dose, double usual, twice usual dose, twice usual, ten times usual, out, way out, way over, way above, way too high, \
way too fast, well over, well above, far too high, far too fast, far too much, far over, not within limits, not in \
limits, not inside range, not acceptable
in date | date fine, date good, date okay, not overdue, still good, within date, in its date, still fine, not due, \
not due yet, current, okay, good, date in order, within its time, date right, good date, dates good, dates fine, \
dates okay, fine date, well in date, well within date, within its date, still good till, good till, good until, good \
for, valid, still valid, not expired, not out of date, not too old, not over, still has days, still got days, has \
days left, days left, got days left, day left, changed yesterday, changed today, hung today, hung yesterday, new \
today, put up today, put up yesterday, up to date, still okay
overdue | not in date, not in date any more, not in date any longer, out of date, past date, past due, due yesterday, \
over date, date passed, past its date, past its change date, past change date, too long, too old, expired, late, been \
up too long, hanging too long, due already, long overdue, over time, over its time, well overdue, day overdue, two \
days overdue, gone over, run over, over its date, over its limit, over limit, over four days, past limit, past its \
limit, past four days, past change, past its time, up too long, up for too long, been up for too long, been on too \
long, on too long, hung too long, should have been changed, needed changing yesterday, should be changed, needs \
changing, needs change, needs replacing, time it was changed, due for change, due change, out of time, gone past, \
gone past its date, expired yesterday, day late, two days late, day over, two days over, five days old, week old, old \
one
no label | no label on, label missing, unlabelled, unlabeled, not labelled, not labeled, without label, label gone, \
label fell off, no sticker, not find label, not see label, not find any label, not see any label, nothing written, \
not have label, nobody labelled, lost its label, no date on, not dated, undated, no label there, no label at all, \
nothing on it, nothing there, nothing on set, nothing on bag, not got label, has no label, has not got label, without \
one, bare, blank, label blank, label is blank, label off, label come off, label came off, label fallen off, label has \
come off, label fell, label lost, unmarked, no tag, no sticker on it, no sticker there, no sticker at all, no date, \
no date written, nobody labelled it, nobody put one, never labelled, missing label, missing its label
in time | in date, within time, not too long, fine, okay, within limit, hung today, within its time, well within \
time, all within time, all in date, both fine, both good, both in time, both in date, each fine, each in date, still \
good, still in date, still fine, hung this morning, put up today, put up this morning, up since this morning, went up \
today, went up this morning, less than day, under day, not a day yet, fresh today, new today
hanging too long | overdue, up too long, over time, been hanging too long, been up too long, past time, expired, been \
up since yesterday, been there too long, been on too long, been up more than day, been up over day, been up for more \
than day, been up for over day, up for more than day, up for over day, up more than day, up over day, more than day, \
more than 24 hours, over 24 hours, over day, over its time, past its time, past day, out of time, since yesterday, up \
since yesterday, yesterday, hung yesterday, from yesterday, two days, two days old, too old, one too long, needs \
changing, should be changed, overdue one, one overdue, one been up too long
as ordered | same, same as order, matches, match, matches order, agrees, agrees with order, exactly as order, exactly \
as ordered, entry right, entry correct, just as ordered, according to order, what order says, entered right, entered \
correctly, no slip, same as on order, identical, not slip, like order, no mistake, no difference, same as sheet, same \
as paper, same as what ordered, what ordered, just like order, like on order, as on order, as order says, as order \
has it, exactly what order says, entry good, entry fine, entry matches, entry matches order, entry same, numbers \
match, numbers agree, numbers same, numbers right, number right, number matches, all matches, all match, all agrees, \
matches sheet, matches paper, agrees with sheet, tallies, tally, tallies with order, correct, correct entry, keyed \
right, typed right, typed it right, keyed it right, entered it right, no typo, no mistakes, no error, no errors, \
nothing wrong, i entered it right, not mistake, right number, right as ordered, spot on, bang on
a slip | wrong, slip, typo, mistake, my mistake, error, mistyped, entered wrong, entered wrongly, wrong entry, not as \
ordered, not same, not right, not match, different, differs, different from order, not what ordered, typing mistake, \
slipped, not correct, entry wrong, differs from order, not agree, i slipped, i slipped up, slipped up, i messed up, \
messed up, i mistyped, i mistyped it, mistyped it, i typed it wrong, typed it wrong, typed wrong, typed wrong number, \
keyed it wrong, keyed wrong, keyed wrong number, hit wrong key, pressed wrong key, wrong key, wrong number, wrong \
numbers, wrong figure, put wrong number, put in wrong number, put wrong number in, entered wrong number, number \
wrong, numbers wrong, extra zero, extra nought, one zero too many, missed decimal, missed point, decimal wrong, point \
wrong, point in wrong place, decimal in wrong place, finger slip, slip of finger, fat finger, my fault, my bad, my \
error, i made mistake, i made error, made mistake, made error, made typo, i made typo, off by ten, ten times too \
high, ten times too much, does not match, not match order, not same as order, not what it says, swapped digits, \
digits swapped, two digits swapped
rinse it in | rinse, rinse in, rinse it, flush in, rinsed in, rinse it through, rinse through, rinsing it in, flush \
it in, flush it through, flush through, flushing it in, flush set, flush rest in, flush it all in, push it in, wash \
it in, wash it through, give rest, give it all, run it in, it gets rinsed, gets rinsed in, gets rinsed, gets flushed \
in, gets flushed, is rinsed in, to be rinsed, to be rinsed in, to be flushed in, must be rinsed in, must be rinsed, \
policy says rinse, policy says rinse it in, policy says rinse it, policy says flush, says rinse, says rinse it in, \
says flush it in, says to rinse it, says to rinse it in, in it goes
leave it | leave, leave in, left, stays, not rinse, not rinsed, leave it in set, leave it in, leave it where it is, \
leave it be, leave in set, leave rest, leave drug, leaving it, leaving it there, leaving it in set, gets left, is \
left, is left there, it left, to be left, left in set, left there, left alone, do not rinse, do not rinse it, do not \
flush, do not flush it, not to rinse, not to be rinsed, not to rinse it, no rinsing, no rinse, no flushing, policy \
says leave it, policy says leave, says leave it, says to leave it, says leave, stays in set, stays there, throw it \
away with set, discard with set
fits the bag | fits, fit, matches bag, agrees with bag, same as bag, right for bag, okay, fits fine, it fits fine, \
fits right, fits exactly, fits perfectly, fits well, just right, right amount, matches, matches what in bag, matches \
what left, same as in bag, same as what in bag, same as what left, equals bag, agrees, bag has that much, that much \
in bag, that much left in bag, enough in bag, covers it, bag covers it, as much as in bag
too little / too much | less, short, less than bag, less than in bag, less than what in bag, bag has more, more in bag
too little | not enough, running low, insufficient, little left, not enough left, not \
enough in bag, not enough in it, not enough there, less than should be, \
short by, falls short, short of it, will not last, not last, will run out, will run out early, \
runs out early, bag too small, bag short, little in bag, too low, hardly any, hardly anything, very little, next to \
nothing, barely any, not much, not peeing much, not passing much, hardly peeing, scanty, not going enough, bit too \
little, drop or two
too much | more, more than bag, over, excess, more than in bag, more than what in bag, more than there is, more than \
there is in bag, more than bag holds, bag has less, less in bag, over bag, too high, too big, too many, bit too much, \
set too high, set too much, more than left, more than what left, exceeds bag, exceeds
enough | plenty, lots, lots left, sufficient, enough left, plenty left, enough in both, enough for now, enough in \
all, plenty in it, plenty in bag, plenty in each, plenty in both, plenty left in both, plenty left in each, plenty in \
all, plenty there, plenty for now, plenty till then, plenty till next round, plenty until next round, plenty left \
till next round, plenty left till my next round, plenty left until next round, enough there, enough left in bag, \
enough left in both, enough left in each, enough in it, enough till then, enough till next round, enough to last, \
enough for next hour, will last, lasts, it will last, both last, all last, good for hour, more than enough, ample, \
loads, loads left, good amount, passing plenty, peeing plenty, peeing well, passing well, good output, output good, \
good urine output, half full, both half full, covers it
nearly empty | almost empty, running out, low, getting low, running low, not enough, not much left, close to empty, \
nearly dry, almost dry, nearly out, almost out, nearly gone, almost gone, about to run out, about to go dry, nearly \
run out, almost run out, close to dry, near empty, at bottom, near the bottom, very low, quite low, right down, \
little left in it, only little left, bit left, only bit left, little bit left, not much left in it, not much in it, \
hardly any left, hardly anything left, barely any left, barely anything left, will run out, will run out soon, will \
not last, will not last till then, will not make it, not last, not enough left, one low, one running low, one almost \
empty, one getting low, one nearly out, one nearly done, one almost done, running dry, needs new one soon, needs \
replacing soon, ready to change, inch left, drop left
due | due now, it is time, time for it, on time, on schedule, late, overdue, is due, due today, due this hour, due at \
this time, time is right, right time, on the dot, it time, high time, ready to give, can be given, ready for it, last \
one was eight hours ago, eight hours since last, long enough since last, long enough ago, needs changing, needs \
changing today, to be changed, to be changed today, for changing, changing day, needs to be changed, needs replaced, \
day four, four days old, due for change, due for changing, due to be changed, expired
too early | not due, not yet due, not time, early, too soon, not due yet, already given, already had it, given too \
recently, not time yet, not for another hour, hour too early, hour early, hours early, bit early, bit too early, \
still early, too close to last, too close, too soon after last, too soon after last one, only had it hour ago, had it \
hour ago, had it already, been given, been given already, already been given, given an hour ago, given hour ago, next \
one later, should wait, has to wait, must wait, not long enough, not long enough since last, not enough time since \
last
still fresh | fresh, new, not due, not due yet, too early, still good, in date, not old, fresh still, fresh today, \
brand new, brand new set, new set, new today, changed today, changed yesterday, put up today, put up yesterday, hung \
today, only day old, only one day old, day old, one day old, two days old, not due till, not due for, not due until, \
not due for days, days left, has days left, got days left, still has days, still in date, still okay, still fine, \
okay still, well within time, within its time, not expired, no need to change, not old yet
complete and right | all correct, everything right, everything correct, nothing missing nothing wrong, nothing \
missing and nothing wrong, correct and complete, all right and complete, word for word, no mistakes nothing missing, \
complete and accurate, perfect, all correct and complete, got everything right, got it all right, repeated everything \
right, said everything right, said it all right, repeated all correctly, repeated everything correctly, repeated \
correctly, everything complete and right, got all right, all repeated right, right and complete, repeated it all \
right, got all correct, all of it correct, all there and right, everything there and right, all right and nothing \
missing, got it right, got every bit, got every bit right, got every bit of it, got every bit of it right, every bit \
right, every bit of it right, every bit correct, every word right, every detail right, repeated perfectly, repeated \
it perfectly, said all right, all spot on, spot on, bang on, dead on, hundred percent, full marks, flawless, \
faultless, accurate, matches what i said, exactly what i said, exactly as i said, same as i said, as i said it, all \
matches, everything matches, word perfect, whole thing right, whole lot right
something wrong | wrong, something not right, one thing wrong, one wrong, one number wrong, mistake, made mistake, \
made error, error, incorrect, not right, not correct, not all right, not all correct, got one wrong, got something \
wrong, got it wrong, said wrong, mixed up, mistakes, one mistake, wrong number, wrong rate, wrong dose, wrong drug, \
wrong time, wrong volume, rate wrong, dose wrong, drug wrong, time wrong, volume wrong, name wrong, wrong name, got \
rate wrong, got dose wrong, got name wrong, said wrong rate, said wrong dose, said wrong drug, bit wrong, got it \
mixed up, got them mixed up, muddled, muddled it, muddled up, mixed it up, mixed them up, swapped, swapped two, wrong \
arm, wrong side, wrong hand, wrong site, wrong figure, wrong unit, wrong units, got rate mixed up, not what i said, \
not as i said, different from what i said, misheard, misheard it, got it backwards, slip, slipped up, off by ten, out \
by ten, said ten times, rate not right, dose not right, dose off, rate off, time off, name off, not quite what i \
said, messed up, messed up rate, messed up dose
ready-mixed | ready mixed, premixed, pre mixed, mixed already, comes mixed, from pharmacy, mixed in pharmacy, mixed \
by pharmacy, came ready mixed, came premixed, came from pharmacy, comes from pharmacy, comes premixed, straight from \
pharmacy, pharmacy mixed it, pharmacy made, pharmacy made it, pharmacy bag, made in pharmacy, made by pharmacy, made \
up in pharmacy, made up by pharmacy, factory made, from factory, factory mixed, from manufacturer, from maker, maker \
mixed, pre made, premade, bought in, commercial, commercially mixed, sealed from maker
mixed on this ward | mixed it myself, i mixed it, mixed by myself, mixed on ward, mixed on unit, mixed here, mixed by \
us, ward mixed, mixed ourselves, we mixed it, we mixed it here, we made it, we made it up, we made it up here, we \
made it here, made here, made up here, made on ward, made up on ward, made on unit, made up on unit, i made it up, i \
made it, i mixed this, i mixed it here, mixed up here, mixed it here, mixed in treatment room, made up in treatment \
room, nurse mixed it, nurse made it up, colleague mixed it, night shift mixed it, home made, homemade, mixed locally, \
done here
a second drug | second drug, another drug, one more, another one, second one, one more drug, there second, second one \
due, second one follows, second one to follow, one more to go, another to follow, another one follows, another one \
after, another one to go, another drug after, other antibiotic, another antibiotic, second antibiotic, two drugs, two \
drugs ordered, two of them, there another, one more after, more to come, yes second one
share one set | share, can share, may share, one set, same set, together, compatible, can share set, can share it, \
may share it, may share set, can share one, may share one, can share line, share one, share it, share set, one set \
will do, one set fine, one set is fine, one set okay, same set fine, same set okay, same set is fine, one set for \
both, same set for both, together in one set, in one set, in same set, both in one set, both through one set, \
compatible so one set, compatible with each other, can go together, may go together, go together, fine together, okay \
together, no clash
none / a second drug | no second, no second drug, no second one, no other drug, only one, just one drug, only one \
drug, nothing else, nothing follows, just the one, only the one, nothing after it, nothing after, nothing after that, \
no more drugs, none after, none after that, no second drug after, just first one, only first one, just this one, only \
this one, that last one, last one, last drug, no other, no other one, no others, no more, no more after, nothing \
more, nothing further, nothing after first, nothing second, that was only one, single drug, end of it
it goes on | carries on, continues, keeps going, keep going, keeps on, keeps running, keep running, carry on, going \
on, still on, still ordered, still runs, to continue, is to continue, is to go on, is to carry on, to carry on, to go \
on, infusion continues, infusion carries on, drip continues, drip carries on, more to come, more to run, not ended, \
not over, has not ended, not stopped, on it goes, runs on, another bag, order still active, still active, still \
current, extended, ongoing
it has ended | all over, is over, ended, it ended, has ended, stopped, has stopped, to be stopped, is to be stopped, \
is to stop, to stop, is stopping, discontinued, has been discontinued, been discontinued, is discontinued, been \
stopped, cancelled, canceled, no more, no more ordered, no more bags, nothing more, last bag, that last one, last \
one, does not go on, not go on, not continue, does not continue, not carry on, not to continue, not going on, order \
ended, order over, order finished, order stopped, run out, expired
"""
"""Each alternative and its ways; behind a stroke, the alternative that stands beside it where that matters."""
