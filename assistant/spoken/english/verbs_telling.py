"""What is turned, told, written down, checked, and whatever else is done, in English: rows of `verbs`."""

TABLE = """
# base | past | ing | once it is done | while it is not
turn | turned, flipped, switched, inverted, powered, shut, shut down, rolled, tipped, upended, rotated | turning | \
upside down |
flip | flipped, turned over, inverted | flipping | over |
switch | switched, turned, powered | switching | |
lower | lowered, dropped, dropped down, moved down, brought down, let down, taken down, took down, put down, hung \
lower, moved lower, sunk, slid down, lowered down, set lower, let it down, moved it down, brought it down, dropped it \
down, put it lower, hung it lower, dropped lower, slid lower, took it down a bit, brought low, shifted down | \
lowering | down, lower, hanging lower, lowered, below, lower down, underneath, down low, beneath, hanging low, \
hanging below, under the other one, below the other one, under the other, below the other, lower than the other one, \
lower than the other, beneath the other one, underneath the other one, under the primary, beneath the primary, \
underneath the primary, hanging underneath, hangs below, hangs lower, hangs underneath, lower now, well below, well \
down | up, higher
raise | raised, lifted, propped up, elevated, put up, wound up, brought up, pumped up, propped, hoisted, hoisted up, \
rested, lifted up, put on a pillow, put on the pillow, set on a pillow, set on the pillow, pillowed, supported, got \
up, put up on a pillow, put up on the pillow, put it on a pillow, put it on the pillow, tucked a pillow under, stuck \
a pillow under, slid a pillow under, popped a pillow under, put a cushion under, rested on a pillow, rested on the \
pillow, laid on a pillow, propped on a pillow, popped on a pillow, popped up on a pillow, put up high | raising | up, \
raised, elevated, propped up, on the pillow, at my height, up high, on a pillow, on pillows, on her pillow, on his \
pillow, lifted, propped, resting on a pillow, up on a pillow, lying on a pillow, supported, pillow underneath, pillow \
is underneath, pillow beneath, pillow under it, pillow is under it, pillow is under, pillows underneath, pillow under \
her arm, pillow under his arm, pillow under the arm, cushion underneath, raised up, up on pillows, up on the pillow, \
resting on the pillow, resting on pillows, sitting on a pillow, sitting on the pillow, lying on the pillow, higher \
than the heart, above the heart, above heart level, up on a cushion, on a cushion | down, flat
lift | lifted, raised | lifting | up | down
document | documented, charted, written down, wrote down, recorded, noted, noted down, written up, put in the chart, \
logged, entered, wrote up, filled in, put in the record, put it in, put down, written in, wrote in, wrote out, \
written out, written it up, jotted, jotted down, put in writing, put in the notes, put in the system, put in the \
computer, put on the chart, put on paper, put on record, typed up, typed in, typed, keyed in, signed off, entered up, \
got down, filled out, completed, inputted, registered, finished writing, done writing, finished writing up, noted it \
down, made a note of, made a record of, logged in, put it all in, put it all down, put in, got it in writing, popped \
it in, popped in the notes, popped it in the notes, chucked it in the notes, got it all in, got it all down, wrote \
the lot, wrote it all, wrote all of it, wrote everything, put everything in, put everything down, got everything in, \
got everything down, put everything on the chart, made the entry, made an entry, made my entry, done my notes, did my \
notes, done the notes, did the notes, done the charting, did the charting, done the paperwork, did the paperwork, \
finished the notes, finished the charting, finished my notes, filled it all in, filled in the chart, filled in the \
form, filled in the sheet, filled out the chart, filled out the form, filled out the sheet, updated the chart, \
updated the notes, updated the record, signed and dated, penned, inked, keyed, wrote it all out | documenting | in \
the chart, on the chart, charted, in the notes, in the record, on the flow sheet, on the sheet, complete, down, down \
on paper, on paper, in the book, on the record, on record, in the system, in the computer, in the file, in the log, \
on the form, on file, written down, written up, written in, recorded, documented, noted, noted down, entered, logged, \
filled in, filled out, signed off, down in the chart, down on the chart, down in the notes, in writing, in my notes, \
on the mar, in the mar, on the page, up to date, in, all in, in there, all in there, all there, all down, all on \
there, on there, everything is in, everything is in there, everything is down, everything is on there, everything is \
there, all on the chart, all in the chart, all in the notes, all on paper, all on the form, all on the sheet, all on \
record, on the computer, on the chart now, down on the sheet, down on the form, down in writing, chart is done, chart \
is complete, chart is up to date, notes are up to date, notes are done, notes are complete, notes done, chart done, \
paperwork done, paperwork is done, paperworks done, form is filled in, form is filled out, form is done, sheet is \
filled in, sheet is filled out, filled in fully, complete now, logged now, all logged, all charted, all noted | \
undocumented
chart | charted, documented, written down, wrote down, recorded | charting | in the chart | uncharted
write | written down, wrote down, written, wrote, charted, documented, noted, noted down, recorded, jotted down, \
logged, got it written down, got it down, wrote it in, put it down, put down, put on paper, made a note of, \
scribbled, scribbled down, entered, written out, wrote out, taken down, took down, typed, typed in, typed up | \
writing | in the chart, on paper, down, written down, noted, noted down, on the chart, in the notes, in my notes, on \
the sheet, recorded, jotted down, on record, on the form, logged, down on paper, on my sheet |
record | recorded, documented, charted, written down, wrote down, noted | recording | in the chart |
note | noted, noted down, written down, wrote down | noting | |
tell | told, informed, explained to, talked to, let know, let her know, let him know, let them know, let the patient \
know, spoken to, spoke to, explained, explained it, said it, warned, talked through, talked it through, gave her, \
gave him, let the patient in on, briefed, reminded, filled in, made aware, given a heads up, gave a heads up, passed \
on, run through it with, went over it with, gone over it with, went through it with, gone through it with, advised, \
updated, notified, mentioned, had a word with, explained it to, chatted to, chatted with, walked through, told all, \
filled them in, filled her in, filled him in, brought up to date, brought up to speed, put in the picture, passed the \
message on, gave the message, given the message, got the message across, gone over, went over, gone through, went \
through, run through, ran through, talked over, chatted through, discussed, set out, spelled out, spelt out, made \
clear, made it clear, let in on, gave the whole story, given the whole story, gave it all, given it all, given all of \
it, gave all of it, gave everything, given everything, gave the full story, gave the full picture, given the full \
picture, gave the details, given the details, gave all the details, given all the details, passed it all on, passed \
all of it on, passed everything on, reported, reported to, had a chat with, had a chat, explained everything, \
explained it all, explained all of it | telling | informed, aware, knows, understands, has been told, in the picture, \
she knows what is coming, he knows what is coming, they know, knows what to look for, knows what to watch for, knows \
what to call for, knows what to ring for, knows when to call, knows when to ring, knows what has changed, knows when \
i will be back, knows the plan, in the know, clear on it, up to speed, up to date, filled in, told, happy with it, \
clued in, briefed, got the message, understood, has got it, has been informed, knows now, knows it all, knows \
everything, knows all of it, knows all about it, knows what changed, got the whole story, got the full story, got the \
full picture, got the whole picture, got it all, got all of it, got all the details, got the details, got everything, \
has the full picture, has the whole story, has the details, fully informed, all informed, up to scratch, well \
informed, has been told everything, heard it all, heard everything, clear now, clear about it, filled in now, clear \
on that, knows the story, knows the score |
inform | informed, told | informing | |
say | said, told, mentioned, passed on, named, stated, explained, gave the rundown, went through, handed over, \
reported, given, gave, called out, announced, spelled out, spelt out, run through, ran through, gone through, \
recited, laid out, filled in, talked through, outlined, described, briefed | saying | knows, got all that, said, \
told, named, stated |
ask | asked, requested, called, got, asked for, enquired, inquired, checked with, put in a request, put in for, found \
out, got hold of, rang for, phoned, phoned for, spoken to, spoke to, sent for, ordered | asking | gave me, gave both, \
told me, asked, asked for, requested |
introduce | introduced, presented, made introductions, said hello, said who i am, told, gave my name, made the \
introductions, done the introductions, did the introductions, made them known, told who | introducing | met, they \
have met, knows who i am, knows my name, said my name, introduced, acquainted, know each other, know one another, \
introductions made, introductions done, introductions are done, met each other, they have met each other, they know \
each other, they have been introduced |
explain | explained, told, talked through, talked it through, informed | explaining | understands, understood, knows \
|
name | named, said, listed, mentioned, read out, told, listed out, gave, given, stated, called out, recited | naming \
| named, listed |
identify | identified, checked | identifying | |
call | called, rung, rang, paged, phoned, sent for, summoned, rung for, rang for, got hold of, shouted for, fetched, \
bleeped, buzzed, contacted, called over, called for, alerted, phoned for, reached, given a shout, gave a shout, given \
a call, gave a call, given a ring, gave a ring, hollered, yelled for, waved over, brought over, brought in, got my \
colleague, got my partner, got her, got him, rung up, rang up, phoned up, called up, asked to come, asked over, \
grabbed, nabbed, pulled over, pulled in | calling | on the way, on her way, on his way, on their way, coming, coming \
over, here, arrived, with me, here now, beside me, called, by my side, at the bedside, in the room, standing here, \
here with me, with me now, right here, here beside me, standing with me, standing by, standing by me, next to me, \
over here, on site, present, coming now, come over, came over, came, joined me, has joined me, just arrived, just \
come in, at my side, beside me now, in here, got her here, got him here, in attendance |
bring | brought, got, hung, put up, raised, lifted | bringing | here, there, up, hanging, on the hook |
gather | gathered, collected, got | gathering | here, ready, laid out |
collect | collected, gathered, got | collecting | here |
get | got, gotten, fetched | getting | here |
fetch | fetched, got | fetching | here |
check | checked, verified, looked at, inspected, went through, went over, had a look, looked over, examined, eyed, \
double checked, gone through, gone over, reviewed | checking | checked | unchecked
verify | verified, checked | verifying | checked |
confirm | confirmed, checked, verified, accepted, entered, saved, okayed, agreed, pressed confirm, hit confirm, \
validated | confirming | checked, confirmed, accepted, saved, locked in |
inspect | inspected, checked, looked at | inspecting | checked |
look | looked, checked, looked up, looked at, looked in | looking | checked |
watch | watched | watching | |
observe | observed, watched | observing | |
read | read, read out, read through, read off, read aloud, called out, read it out, spoken | reading | read out, read \
aloud, read |
follow | followed, traced, checked | following | checked |
trace | traced, followed, checked | tracing | checked |
compare | compared, checked | comparing | checked |
count | counted | counting | |
measure | measured, sized, got the size, taken the size, took the size, ran the tape over, put the tape on, put a \
ruler on, put the ruler on, taken a measurement, took a measurement, read off, measured up, got the measurement, got \
the measurements, took the measurements, taken the measurements, run the tape over, got a measurement, measured it \
up, put a tape on, put a tape across, put the ruler across, read the ruler, read the tape | measuring | measured, \
measured up, measured out, measured across, centimetres across, centimeters across, centimetres wide, centimeters \
wide, centimetres long, centimeters long, cm across, cm long, cm wide, by two centimetres, by three centimetres |
feel | felt, palpated, had a feel | feeling | |
assess | assessed, checked | assessing | |
flush | flushed, flushed through, pushed, rinsed, washed through, run through, pushed through, given, gave, injected, \
put through, sent through, flushed out, irrigated, pushed it through, washed it through, flushed it, flushed it \
through, rinsed it through, sent it through, run it through, ran it through, pushed the flush, pushed the saline, \
given the flush, gave the flush, given the saline, gave the saline, put the flush in, put the flush through, put the \
saline through, injected the flush | flushing | flushed, flushed through, in, rinsed, through, flushed out, gone in, \
flush is in, flushs in, flush is through, flush is done, saline is in, salines in, saline is through, all flushed, \
flush has gone in, flush went in, all through, all in, gone through, went through, went in | unflushed
lock | locked, sealed, clamped, closed | locking | locked, sealed, clamped, closed | unlocked
aspirate | aspirated, drawn back, drew back, pulled back | aspirating | |
draw | drawn, drew, pulled, taken, took, eased, drew up, drawn up, pulled up, sucked up, filled, eased out, slid, \
slid out, slipped out, withdrawn, withdrew, got out, removed, come out, sucked it up, pulled it up, drew it up, drawn \
it up, got it up, got drawn up, pulled it out, drew it out, eased it out, slid it out, pulled back, loaded, filled \
up, slipped it out, got it out, brought out | drawing | out, up, drawn up, in the syringe, out now, removed, in the \
luer lock, in the luer lock syringe, in my syringe, in a syringe, all drawn up, loaded up, up in the syringe, sucked \
up, pulled up, all out, clean out, come out, came out, pulled out, slid out, right out, fully out |
tape | taped, taped down, stuck down, secured, strapped, stuck, fixed, anchored, fastened | taping | secure, secured, \
on, taped down, taped, stuck down, fastened, strapped down | loose
fix | fixed, taped, taped down, secured, anchored, stuck down, strapped, strapped down, fastened, stuck, looped, \
looped and taped, pinned, pinned down, held down, stuck on, dressed, steadied, stabilised, stabilized, stuck it down, \
taped it down, strapped it down, pinned it down, tied down, looped it, looped it and taped it, taped in a loop, put a \
loop in, secured it, put tape over, put tape on, clipped down, dressed down, tucked away, tucked in | fixing | \
secure, secured, taped down, fixed, fastened, taped, anchored, strapped down, held down, steady, stable, pinned down, \
not pulling, nothing pulling, nothing pulls, well stuck down, well taped down, well secured, well fixed, tied down, \
taped in place, fixed in place, held in place, held fast, taped on, looped, looped and taped, nice and secure, \
secured down, firmly taped, not moving, does not move, does not pull, no drag, no pull, no strain, no tension, no \
tug, not tugging, not dragging, nothing tugging, nothing drags, nothing dragging, nothing tugs | loose
secure | secured, taped, fixed, taped down, anchored, stuck down, stuck on, fixed with tape, fastened, strapped, \
strapped down, stuck | securing | secure, tight, fixed, stuck down, fastened, strapped down, taped | loose
anchor | anchored, secured, taped | anchoring | secure | loose
dress | dressed, covered | dressing | covered |
hold | held, held up, got hold of, gripped, kept, pinned, steadied, propped | holding | still, steady, got it steady, \
held, up, upright |
keep | kept | keeping | |
leave | left, kept, let alone, left alone, left paused, left it paused, kept paused, kept it paused | leaving | |
support | supported, propped up | supporting | |
tap | tapped, flicked, given a tap, gave a tap, knocked, rapped, thumped, bumped, drummed, tapped on | tapping | \
tapped |
flick | flicked, tapped | flicking | |
invert | inverted, turned over, flipped, turned upside down | inverting | upside down |
adjust | adjusted, set | adjusting | set |
expel | expelled, pushed out | expelling | out, gone |
drain | drained, emptied | draining | empty |
clear | cleared, freed, wiped, erased, deleted, cancelled, canceled, reset, scrapped, emptied, cleared out, wiped \
out, blanked, wiped clean, zeroed, zeroed out, set to zero, set back to zero, backed out, rubbed out, scrubbed, \
undone, undid, dumped, thrown out, removed, gone back and cleared, pressed clear, hit clear, backspaced, took out, \
taken out | clearing | clear, gone, cleared, blank, wiped, reset, deleted, empty, zeroed, back to zero, at zero, all \
zeroed, all cleared, wiped out, wiped clean, removed, scrapped, out, blank now, cancelled |
mix | mixed, shaken, swirled | mixing | |
report | reported, told, put in a report, filed, filed a report, sent in, submitted, flagged, flagged up, notified, \
logged, written up, wrote up, filled in, passed on, handed in, raised, put through, sent off, put it in, reported it, \
escalated, put the report in, put a report in, made a report, made the report, made my report, did a report, did the \
report, done a report, done the report, wrote a report, wrote the report, sent a report, sent the report, sent it in, \
sent it off, sent the form, sent the form in, sent the form off, filed it, filed the report, filed the form, filled \
in the form, filled out the form, filled in a form, filled out a form, put it through, put it on the system, put in \
the system, logged it, raised it, raised a report, put a ticket in, put in a ticket, raised a ticket, opened a \
ticket, logged a ticket, told biomed, called biomed, rang biomed, handed it in, passed it on, sent to biomed, gone to \
biomed, turned in, entered, filed with, notified biomed, let them know | reporting | reported, filed, logged, \
flagged, sent in, submitted, in the system, report is in, report is done, report is filed, report is made, report is \
sent, reports in, reports done, reports filed, report made, report done, report filed, report sent, form is in, form \
is sent, form is done, form is filled in, forms in, forms done, forms sent, ticket is in, tickets in, logged in the \
system, on the system, with biomed, flagged up, gone in, gone off, put in, handed in, registered |
plug | plugged, put in the socket, put in the wall, pushed in, put into the wall, put into the socket, plugged it in, \
connected to the mains, put on the mains, put the plug in, put the plug in the wall, put the plug in the socket, put \
the plug to the wall, stuck the plug in, pushed the plug in, popped the plug in, stuck in, stuck in the wall, put it \
in the wall, put it in the socket, put it on the mains, hooked up to the mains, hooked up, put on charge, put on wall \
power, switched to mains, connected to the wall, connected to the socket, connected to mains, connected | plugging | \
in, plugged in, plugged, in the wall, in the socket, on the mains, on mains, on wall power, on mains power, \
connected, charging, getting power, plug is in, plugs in, plug is in the wall, plugs in the wall, plug is in the \
socket, plugs in the socket, plugged into the wall, plugged into the socket, plugged into the mains, on the wall, in \
at the wall, on charge, on the plug, cable is in, cables in, lead is in, leads in, lead is in the wall, leads in the \
wall, powered from the wall, powered by the wall, running off the mains, running on mains, off the battery, charging \
up, on power | unplugged
unpack | unpacked, opened | unpacking | out, open |
unwrap | unwrapped, opened | unwrapping | out, open |
tear | torn, tore, ripped, torn open, tore open, ripped open, opened | tearing | open | sealed, closed
twist | twisted, screwed | twisting | |
use | used, picked, selected, chose, chosen, went through, got it from, took it from | using | |
find | found, located, spotted, got all, tracked down, traced, pinpointed, figured out, worked out, identified, \
discovered | finding | found, located, spotted, identified |
see | seen, saw | seeing | |
do | done, did | doing | |
give | given, gave, pushed, flushed, flushed through, run in, ran in, went in, gone in, infused, delivered, \
administered, injected, run through, let in, let run, rinsed in, rinsed through | giving | in, given, delivered, gone \
in, through, infused, administered |
sign | signed | signing | signed | unsigned
seat | seated, loaded, threaded, threaded in, put, fitted, clicked, clicked in | seating | in, in place, in the \
channel, in the groove, in the slot | out
drop | dropped, binned, put, tossed, chucked, thrown, threw, disposed of, got rid of | dropping | in, gone, in the \
bin |
undo | undone, undid, opened, unclamped, released, loosened | undoing | open, undone, loose | closed, shut, clamped
untwist | untwisted, unscrewed, twisted off, disconnected, detached, removed, taken off, took off | untwisting | off, \
undone, loose | on, attached, stuck
unscrew | unscrewed, untwisted, twisted off, disconnected, removed, taken off, took off | unscrewing | off, undone | \
on, stuck
unhook | unhooked, taken down, took down | unhooking | off, down |
unplug | unplugged, pulled out | unplugging | out, unplugged | plugged in
reach | reached | reaching | |
bring down | brought down | bringing down | down |
power | powered up, powered on, switched on, turned on, booted up, started | powering | on, up, booted up | off
chase | chased, chased out, tapped, got rid of, tapped out | chasing | gone, out, clear, no more bubbles, air free |
rinse | rinsed, flushed, washed, washed through, run through, swilled, cleared, flushed through, rinsed through, \
rinsed out, rinsed it out, flushed out, run through it, washed out, washed it out, washed it through, flushed it out, \
flushed it through, sent through, pushed through, run twenty mils through, rinsed down | rinsing | clean, rinsed, \
rinsed through, rinsed out, flushed, through, clear, washed out, washed through, all rinsed, clear now, all through, \
rinsed clean, drug is out, drug is gone, drugs out, drugs gone, gone through |
wrap | wrapped, wrapped up, covered, covered up, bagged, put the cover on, shielded, sleeved, put in a bag, put in \
foil, foiled, put a cover on, put foil on, put the sleeve on, put a sleeve on, put in its sleeve, screened, shaded, \
put the cover over, put a cover over, pulled the cover over, pulled a cover over, slipped the cover on, slipped a \
cover on, slipped the sleeve on, popped the cover on, popped a cover on, got the cover on, put the bag cover on, slid \
the cover on, put foil round, put foil around, put foil over, slid it in its sleeve, put it in the sleeve, put it in \
its sleeve, put the sleeve over, covered over, put a bag over, put the bag over, draped, hooded, put the hood on, \
wrapped it up, cloaked, put the light cover on, put the light bag on, slipped the bag on, put a light cover on, put a \
light bag on | wrapping | wrapped, covered, covered up, shielded, in the sleeve, in its sleeve, protected, in foil, \
in its cover, in the dark, shaded, wrapped up, bagged, under cover, cover is on, covers on, cover on, cover over it, \
cover is over it, sleeve is on, sleeves on, sleeve on, foil is on, foils on, foil on, foil round it, foil around it, \
foil is round it, foil is around it, light bag is on, light bags on, light cover is on, light covers on, light sleeve \
is on, brown bag is on, brown bags on, brown cover is on, amber bag is on, amber bags on, dark bag is on, black bag \
is on, out of the light, away from the light, under wraps, protected from light, protected from the light, light \
proof, lightproof, safe from light, safe from the light, shielded from light, shielded from the light, in its bag, in \
the light bag, in the brown bag, in the dark bag, in the amber bag, hidden from light, fully covered, all wrapped, \
all covered | unwrapped
unlock | unlocked, opened | unlocking | unlocked, open | locked
release | released, opened, let go of | releasing | released, open | closed
swap | swapped, changed, changed over, swapped over | swapping | changed, swapped |
change | changed, swapped, swapped over, replaced | changing | changed |
replace | replaced, changed, swapped | replacing | new |
lean | leaned, propped | leaning | |
come | come, came | coming | back |
return | returned | returning | back |
arrange | arranged, booked, scheduled, organised, organized, set up, ordered, put in for, fixed up, sorted, \
requested, put down for, put in the diary, lined up, planned, put in the request | arranging | booked, arranged, \
scheduled, ordered, requested, sorted, set up, in the diary, organised, lined up, on the system, planned |
"""
"""Words of the trade and of every day (common practice, no source)."""
