"""Verbs of the bench, in English: their forms, what is so once they are done, and what is so while they are not."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Verb:
    """One verb.

    Attributes:
        base: "close".
        past: what was done, and the participle: "closed"; the first is the plainest. Words of the bench for the same
            deed are among them: "rolled down".
        ing: "closing".
        states: what may be said of the thing once it is done: "shut", "on".
        undone: what may be said of it while it is not: "open", "off".
    """

    base: str
    past: tuple[str, ...]
    ing: str
    states: tuple[str, ...] = ()
    undone: tuple[str, ...] = ()


_TABLE = """
# base | past | ing | once it is done | while it is not
close | closed, shut, clamped, slid shut, slid down, pushed shut, snapped shut, snapped closed, pinched, pinching it, \
pinched shut, squeezed shut, rolled shut, rolled down, clicked shut, pinched off, clamped off, screwed shut, done up, \
clicked, rolled it down, rolled off, wound down, wound shut, cranked shut, twisted shut, turned off, turned shut, \
slid across, slid closed, nipped, nipped shut, nipped off, pressed shut, flicked shut, flipped shut, locked off, \
sealed off, shut off, closed off, closed up, clipped, clipped shut, clipped off, clicked closed, popped shut, pulled \
shut, thumbed shut, thumbed down, pushed down, squeezed off, pinched closed | closing | shut, closed off, down, \
clamped off, tight, shut off, pinched off, locked off, sealed off, all the way down, all the way shut, right down, \
clipped, clipped shut, rolled down, pinched shut, clamped, clamped shut, closed up | open, opened
shut | shut, closed, clicked shut, snapped shut, clamped, rolled shut, slid shut, pushed shut, pinched shut, clicked \
| shutting | closed, shut, clamped, shut off | open, opened
clamp | clamped, closed, clamped off, clamped down, shut, clipped, pinched off, clipped off | clamping | closed, \
shut, clamped, clamped off, clipped | open, unclamped
clip | clipped, clamped, slid shut, snapped shut, slid closed | clipping | shut, closed, clamped, on | open, \
unclipped
unclamp | unclamped, opened, released, slid open, unclipped, unpinched, undid, undone, rolled open, rolled up, popped \
open, let go of | unclamping | open, undone, released, unclamped, free | closed, clamped, shut
open | opened, unclamped, rolled open, cracked open, unpinched, released, let go of, undid, undone, rolled up, rolled \
it up, slid open, popped open, snapped open, flicked open, flipped open, thumbed open, wound open, unlocked, \
unclipped, pulled open, swung open, clicked open | opening | open, running, undone, unclamped, released, unclipped, \
rolled up, flowing | closed, shut, clamped
hang | hung, put up, hooked up, popped up, strung up, hoisted, hoisted up, hooked, hooked on, suspended, slung, slung \
up, got up, stuck up, lifted up, clipped up, put back up, hung up | hanging | hanging, hangs, up, on the pole, on the \
stand, on the drip stand, on the hook, on the iv pole, on its hook, on the drip pole, up on the pole, up on the hook, \
up on the stand, suspended, hooked up, hooked on, hung, dangling, up there, up high | down, on the table, on the \
counter, on the bed
spike | spiked, pushed in, pierced, pushed home, pushed through, inserted, popped in, stuck in, shoved in, gone in, \
went in, pushed right in, got in, driven in | spiking | spiked, in, in all the way, through, home, right in, fully \
in, all the way home, in to the hilt, in to the collar, seated |
squeeze | squeezed, filled, pumped, pushed, pushed out, expelled, got out, got rid of, squished, squashed, pinched, \
pressed, given a squeeze, gave a squeeze | squeezing | full, filled, out, gone |
prime | primed, run through, ran through, flushed through, filled, run it through, ran it through, flushed it \
through, let it run through, purged, filled up, flooded, run right through, ran right through, let through, flushed \
out, come through, came through, run to the tip, run to the end | priming | full, through, filled, full of fluid, \
right through, reached the tip, reached the end, run through, come through, it is at the tip, it is at the end, is at \
the end now, fluid is at the end, fluids at the end, fluids at the tip, it is down to the tip, fluid to the tip, full \
up to the tip | unprimed, dry
fill | filled, topped up, squeezed, filled up, pumped, pumped up, squished | filling | full, at the mark, to the \
mark, up to the mark, on the mark, half full, at the line, filled, filled up | empty
push | pushed, pressed, shoved, popped, slid, expelled, got, given, gave, injected, administered, squeezed, squeezed \
out, pressed out, pushed out, expressed, forced out, squirted out, squirted, flicked out, driven, drove, depressed, \
eased, eased in, injected in, delivered, purged, chased out, emptied | pushing | in, in all the way, gone in, went \
in, right in, fully in, home |
pull | pulled, peeled, put, got, slipped, yanked, tugged, eased | pulling | out |
insert | inserted, pushed, put, slid in, slotted in, pushed in, popped in, stuck in, fitted | inserting | in, inside, \
right in, fully in, home | out
uncover | uncovered, uncapped | uncovering | open, uncovered, off | covered, capped
cover | covered, dressed, covered over, covered up, put gauze on, put gauze over, taped over, laid gauze on, laid \
gauze over, padded, wrapped, patched, put a dressing on, put the gauze on | covering | covered, on, covered over, \
covered up, under gauze, under cover, dressed, taped over, in place, protected | uncovered, bare
cap | capped | capping | on, capped | off, uncapped
put | put, popped, placed, pulled on, got on, stuck, tucked, clipped, laid | putting | in place, there, on, on my \
hands | off
wear | worn, wore | wearing | on | off
don | donned | donning | on | off
apply | applied, put, laid, laid on, placed, popped on, stuck on, put on, taped, held on | applying | on, in place, \
there | off
wash | washed, cleaned, scrubbed, soaped, rinsed | washing | clean, washed | dirty
clean | cleaned, gelled, rubbed, washed, sanitised, sanitized, disinfected, foamed, used the foam, used the gel, \
rubbed in, scrubbed, rubbed down, decontaminated, used gel, used foam, used the rub, used rub, alcohol gelled, done \
with gel | cleaning | clean, gelled, rubbed in, disinfected, sanitised, sanitized, decontaminated | dirty
rub | rubbed, gelled | rubbing | clean |
sanitise | sanitised, sanitized, cleaned | sanitising | clean | dirty
sanitize | sanitized, sanitised, cleaned | sanitizing | clean | dirty
disinfect | disinfected, wiped, cleaned, scrubbed | disinfecting | clean | dirty
wipe | wiped, cleaned, scrubbed, disinfected, wiped down, swabbed, rubbed, swiped, wiped off, given a wipe, gave a \
wipe | wiping | clean, wiped down, disinfected, swabbed, scrubbed, cleaned | dirty
scrub | scrubbed, wiped, cleaned, rubbed, swabbed, disinfected, given a scrub, gave a scrub, rubbed down | scrubbing \
| clean, scrubbed, disinfected, swabbed | dirty
dry | dried | drying | dry | wet, damp
let | let, ran, run, primed | letting | through, primed |
take | taken, took, removed, disconnected, detached, unhooked, pulled, peeled, popped, lifted, tore off, torn off, \
slid, unscrewed, pulled off, twisted off, peeled off, pulled out, taken out, got off, got out, came off, unclipped, \
unlocked, undone, undid, taken down, took down, eased, eased off, untwisted, slipped off, slid off, popped off, \
pulled away, taken away, took away, whipped off, unplugged, come off, come away, came away, peeled away, stripped \
off, slipped | taking | off, out, away, gone, binned, disconnected, detached, removed, free, unscrewed, undone, \
unhooked, taken off, come off, come away, parted, separated | on
remove | removed, taken, took, taken off, took off, taken out, took out, pulled, pulled out, peeled, undone, undid, \
lifted out, lifted off, eased out, eased off, unscrewed, detached, popped out, taken away, took away | removing | \
off, out, gone, away, removed, taken off | on, in
rise | risen, rose, came up, come up, let in, let up, crept up, run back, ran back, flowed back, flowed up, \
backfilled, gone up, went up, backed up, run up, ran up, seeped up, drifted up | rising | up, in, coming up, risen, \
backfilled, in there, inside |
fit | fitted, fit, seated, clicked in, clicked into place, clicked into, slotted in, slotted, pushed in, put in, put, \
slid in, slid into place, clipped in, clipped into place, snapped in, snapped into place, loaded, installed, located, \
dropped in, popped in, mounted | fitting | in, in place, seated, home, clipped in, slotted in, fitted, clicked in, \
locked in, snug | out, unseated
discard | discarded, binned, tossed, chucked, trashed, dumped, thrown away, threw away, thrown out, threw out, thrown \
in the bin, got rid of, disposed of, put in the bin, ditched, put in the waste, put in the trash, put in the yellow \
bag, put in the clinical waste, gone in the bin, gone in the waste, went in the bin, went in the waste, thrown, \
threw, scrapped | discarding | gone, in the bin, in the trash, in the clinical waste, in the waste, in the sharps \
bin, in the bins, in the yellow bag, in the yellow bin, in the orange bag, binned, disposed of, discarded, thrown \
away, in the rubbish |
dispose | disposed of, discarded, binned, tossed, chucked, thrown away, threw away, ditched, put in the bin, put in \
the waste | disposing | gone, in the bin, in the waste |
throw | thrown away, threw away, thrown, threw, binned, tossed, chucked, trashed, dumped, ditched, thrown out, threw \
out, got rid of, discarded, disposed of, put in the bin | throwing | gone, in the bin, in the trash, in the garbage, \
in the clinical waste, in the waste, in the right bin |
connect | connected, attached, joined, hooked up, screwed on, hooked on, twisted on, locked on, plugged in, plugged \
back in, joined up, clicked in, screwed together, twisted onto, screwed in, screwed onto, twisted in, twisted \
together, hooked in, hooked onto, hooked, coupled, linked, linked up, fastened, fitted, fitted on, put on, popped on, \
clicked on, locked in, luer locked, put together, married up, hitched up, clipped on, pushed on, attached back, \
reattached, reconnected | connecting | on, attached, joined, hooked up, tight, secure, joined up, locked, snug, \
plugged in, in, screwed on, screwed in, locked on, linked up, coupled, fitted, fastened, in place, twisted on, \
clicked in, seated, on there, firmly on | off, loose, disconnected, unconnected
attach | attached, connected, screwed on, joined, hooked up, twisted on, hooked on, linked, fastened, popped on, \
fitted, put on, coupled | attaching | on, tight, connected, attached, hooked up, screwed on, in place, fitted | off, \
loose
join | joined, connected, attached | joining | on | off
hook | hooked, hung, hooked up | hooking | on, up, hanging | off
screw | screwed | screwing | on, tight, in | loose
tighten | tightened, screwed tight, done up, screwed up, screwed down, turned, given a twist, gave a twist, screwed \
firmly, cranked, snugged up, snugged down, nipped up, done up tight, twisted tight, turned tight, locked, secured, \
firmed up, gone round, went round, twisted | tightening | tight, firm, snug, secure, finger tight, locked, screwed \
firmly, tightened, nice and firm, done up, solid, nipped up, twisted tight, as tight as it goes, hand tight, rock \
solid, locked down | loose
disconnect | disconnected, detached, unhooked, unscrewed, pulled off, taken off, took off, unplugged, uncoupled, \
separated, parted, twisted off, untwisted, pulled apart, popped off, removed | disconnecting | off, undone, \
disconnected, detached, separated, unhooked, free | on, connected
detach | detached, disconnected | detaching | off | on, attached
loosen | loosened, peeled back, freed, peeled, lifted, undone, eased, eased up, worked loose, lifted up, rolled back, \
pulled back, picked loose, unpeeled, teased off | loosening | loose, free, undone, up, lifted, peeled, peeled back, \
loosened, come up | stuck
free | freed, cleared, unblocked, undone, undid, straightened, straightened out, untwisted, unkinked, untangled, \
released, flushed out, sorted, let go, undid the kink, removed | freeing | free, clear, unblocked, open, gone, freed, \
cleared, flowing, running again, unkinked, straight, released | blocked
label | labelled, labeled, marked, stickered, dated, put the label on, put the date and time on, wrote the label, \
wrote the date, put the date, stuck the label, written on, tagged, marked up, timed, put a label on, put the sticker \
on, stuck a label on, stuck the sticker on, put a sticker on, stuck a sticker on, slapped a label on, popped a label \
on, popped the label on, written up, wrote up, wrote on, written out, filled in | labelling | on, dated, stuck on, \
marked, got its label, got its sticker, got a label, label is on, label on, labels on, tagged, marked up, labelled, \
labeled, stickered, got its date, sticker on, sticker is on, stickers on, stickers are on, label stuck on, with its \
label, written on | unlabelled, unlabeled
mark | marked, labelled, labeled, drawn, drew a line, drawn a line, drew an outline, traced, outlined, drawn round, \
drew round, drawn around, drew around, inked, pencilled, circled, ringed, penned | marking | on, marked, drawn on, \
inked, outlined | unmarked
date | dated, labelled, labeled | dating | dated | undated
stick | stuck, taped, put, popped | sticking | on, stuck, stuck on | off
slide | slid, moved, pushed, slotted | sliding | there, in place |
move | moved, changed over, swapped over, transferred, swapped, changed, shifted, switched, switched over, taken \
over, put over, popped over, brought over | moving | there, in place, over, in the new bag, in the new one, spiked, \
in the new, across |
place | placed, put, popped, laid, set, stuck, positioned | placing | in place, there, on, on there |
rest | rested, propped, propped up, put, laid | resting | up, resting |
position | positioned, placed, put, set | positioning | in place, there |
lay | laid, put, placed, popped, draped, rested, set, stuck, spread, pressed, held on, covered | laying | on, there, \
in place, in position, over the site, covering it, covered, lying on, sitting on, over it, on it now, on top, on top \
of it | off
set | set, entered, programmed, put in, keyed in, dialled in, dialed in, typed in, adjusted, fixed, made | setting | \
set |
enter | entered, keyed in, typed in, put in, set, dialled in, dialed in, punched in, programmed in, programmed, \
tapped in, inputted, input, set up | entering | in, set, entered, keyed in |
key | keyed in, entered | keying | in, set |
type | typed in, entered | typing | in, set |
program | programmed, set | programming | set, in |
choose | chosen, chose, selected, picked, went for, gone for, tapped | choosing | selected, chosen |
select | selected, chosen, chose, picked, found, went for, tapped, tapped on, clicked on, gone for | selecting | \
chosen, picked, selected |
pick | picked, chosen, selected | picking | chosen, selected |
load | loaded, threaded, threaded in, put in, clicked in, popped in, fed in, seated, fitted, put, clicked into place, \
slotted in, slotted, slid in, clipped in, snapped in, installed, mounted, laid in, placed, fitted in, dropped in, set \
in, locked in, got in, inserted | loading | in, seated, in the channel, in the groove, in the slot, in place, loaded, \
clicked in, clipped in, locked in, fitted, in the pump, in position, in there, sitting in the channel, home | out, \
unloaded
thread | threaded, loaded | threading | in | out
press | pressed, hit, pushed, holding, holding down, pushed down, pushed on | pressing | pressed |
start | started, set going, turned on, got going, kicked off, hit start, pressed start, hit go, set running, pressed \
run, set off, switched on, put on, fired up, switched it on, pressed go, hit run, pressed the start button, pressed \
the button, begun, began, got running, got started, set it running, set it off, sent off, launched, resumed, \
restarted, put on run, turned it on | starting | running, going, on, started, infusing, up and running, humming, \
started up, up and going, under way, underway, away, in progress, delivering, pumping, ticking, ticking over, ticking \
along, working, whirring, flowing, active | off, stopped
begin | begun, began, started, started over, started again, begun again, began again, begun anew, set going, pressed \
start, redone, redid, restarted, started afresh, started anew, begun afresh, started from scratch, gone back to the \
start, re entered | beginning | running, going, on, infusing, redone, restarted | off
run | run, ran, primed, flushed, let through, flushed through, run in, ran in, let in, infused, given, let run in, \
put through, sent through | running | through, primed, full, at the end, run in, in, gone in, finished, done |
stop | stopped, paused, turned off, switched off, hit stop, pressed stop, shut off, halted, shut down, put a stop to, \
put on stop, pressed the stop button, ended, switched it off, shut it off, brought to a stop, cut off, killed, \
ceased, put on hold | stopping | stopped, off, halted, shut down, not running, no longer running, at a stop, paused, \
at rest, standing still, stationary | running, on, going
pause | paused, stopped, halted, suspended, put on hold, pressed pause, hit pause, put on pause, put on standby, \
stopped for now, frozen, pressed hold, hit hold, put in standby, put it on hold, put it on pause | pausing | paused, \
on pause, on hold, stopped, on standby, suspended, halted, frozen, standing, at rest, paused now, in standby, on \
pause now | running, going
silence | silenced, muted, switched off, turned off | silencing | silent, quiet, off | beeping, alarming, on
turn | turned, flipped, switched, inverted, powered, shut, shut down, rolled, tipped, upended, rotated | turning | \
upside down |
flip | flipped, turned over, inverted | flipping | over |
switch | switched, turned, powered | switching | |
lower | lowered, dropped, dropped down, moved down, brought down, let down, taken down, took down, put down, hung \
lower, moved lower, sunk, slid down, lowered down, set lower | lowering | down, lower, hanging lower, lowered, below, \
lower down, underneath, down low, beneath, hanging low, hanging below | up, higher
raise | raised, lifted, propped up, elevated, put up, wound up, brought up, pumped up, propped, hoisted, hoisted up, \
rested, lifted up, put on a pillow, put on the pillow, set on a pillow, set on the pillow, pillowed, supported, got \
up | raising | up, raised, elevated, propped up, on the pillow, at my height, up high, on a pillow, on pillows, on \
her pillow, on his pillow, lifted, propped, resting on a pillow, up on a pillow, lying on a pillow, supported | down, \
flat
lift | lifted, raised | lifting | up | down
document | documented, charted, written down, wrote down, recorded, noted, noted down, written up, put in the chart, \
logged, entered, wrote up, filled in, put in the record, put it in, put down, written in, wrote in, wrote out, \
written out, written it up, jotted, jotted down, put in writing, put in the notes, put in the system, put in the \
computer, put on the chart, put on paper, put on record, typed up, typed in, typed, keyed in, signed off, entered up, \
got down, filled out, completed, inputted, registered, finished writing, done writing, finished writing up, noted it \
down, made a note of, made a record of, logged in | documenting | in the chart, on the chart, charted, in the notes, \
in the record, on the flow sheet, on the sheet, complete, down, down on paper, on paper, in the book, on the record, \
on record, in the system, in the computer, in the file, in the log, on the form, on file, written down, written up, \
written in, recorded, documented, noted, noted down, entered, logged, filled in, filled out, signed off, down in the \
chart, down on the chart, down in the notes, in writing, in my notes, on the mar, in the mar, on the page, up to date \
| undocumented
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
updated, notified, mentioned, had a word with, explained it to, chatted to, chatted with, walked through | telling | \
informed, aware, knows, understands, has been told, in the picture, she knows what is coming, he knows what is \
coming, they know, knows what to look for, knows what to watch for, knows what to call for, knows what to ring for, \
knows when to call, knows when to ring, knows what has changed, knows when i will be back, knows the plan, in the \
know, clear on it, up to speed, up to date, filled in, told, happy with it, clued in, briefed, got the message, \
understood, has got it |
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
bleeped, buzzed, contacted, called over, called for, alerted, phoned for, reached | calling | on the way, on her way, \
on his way, on their way, coming, coming over, here, arrived, with me, here now, beside me, called, by my side, at \
the bedside, in the room, standing here |
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
ruler on, put the ruler on, taken a measurement, took a measurement, read off | measuring | measured, measured up |
feel | felt, palpated, had a feel | feeling | |
assess | assessed, checked | assessing | |
flush | flushed, flushed through, pushed, rinsed, washed through, run through, pushed through, given, gave, injected, \
put through, sent through, flushed out, irrigated | flushing | flushed, flushed through, in, rinsed, through, flushed \
out, gone in | unflushed
lock | locked, sealed, clamped, closed | locking | locked, sealed, clamped, closed | unlocked
aspirate | aspirated, drawn back, drew back, pulled back | aspirating | |
draw | drawn, drew, pulled, taken, took, eased, drew up, drawn up, pulled up, sucked up, filled, eased out, slid, \
slid out, slipped out, withdrawn, withdrew, got out, removed, come out | drawing | out, up, drawn up, in the syringe, \
out now, removed |
tape | taped, taped down, stuck down, secured, strapped, stuck, fixed, anchored, fastened | taping | secure, secured, \
on, taped down, taped, stuck down, fastened, strapped down | loose
fix | fixed, taped, taped down, secured, anchored, stuck down, strapped, strapped down, fastened, stuck, looped, \
looped and taped, pinned, pinned down, held down, stuck on, dressed, steadied, stabilised, stabilized | fixing | \
secure, secured, taped down, fixed, fastened, taped, anchored, strapped down, held down, steady, stable, pinned down, \
not pulling, nothing pulling, nothing pulls | loose
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
out, blanked | clearing | clear, gone, cleared, blank, wiped, reset, deleted, empty |
mix | mixed, shaken, swirled | mixing | |
report | reported, told, put in a report, filed, filed a report, sent in, submitted, flagged, flagged up, notified, \
logged, written up, wrote up, filled in, passed on, handed in, raised, put through, sent off, put it in, reported it, \
escalated | reporting | reported, filed, logged, flagged, sent in, submitted, in the system |
plug | plugged, put in the socket, put in the wall, pushed in, put into the wall, put into the socket, plugged it in, \
connected to the mains, put on the mains | plugging | in, plugged in, plugged, in the wall, in the socket, on the \
mains, on mains, on wall power, on mains power, connected, charging, getting power | unplugged
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
rinsed out, rinsed it out, flushed out | rinsing | clean, rinsed, rinsed through, rinsed out, flushed, through, clear \
|
wrap | wrapped, wrapped up, covered, covered up, bagged, put the cover on, shielded, sleeved, put in a bag, put in \
foil, foiled, put a cover on, put foil on, put the sleeve on, put a sleeve on, put in its sleeve, screened, shaded | \
wrapping | wrapped, covered, covered up, shielded, in the sleeve, in its sleeve, protected, in foil, in its cover, in \
the dark, shaded, wrapped up, bagged, under cover | unwrapped
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


def _read(table: str) -> dict[str, Verb]:
    verbs: dict[str, Verb] = {}
    for row in table.replace("\\\n", "").strip().splitlines():
        if row.startswith("#"):
            continue
        base, past, ing, states, undone = (cell.strip() for cell in row.split("|"))
        verbs[base] = Verb(base, _items(past), ing, _items(states), _items(undone))
    return verbs


def _items(cell: str) -> tuple[str, ...]:
    return tuple(item.strip() for item in cell.split(",") if item.strip())


VERBS = _read(_TABLE)
"""Every verb by its base."""
