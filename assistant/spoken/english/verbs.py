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
clicked | closing | shut, closed off, down, clamped off, tight | open, opened
shut | shut, closed, clicked shut, snapped shut | shutting | closed, shut | open, opened
clamp | clamped, closed | clamping | closed, shut | open, unclamped
clip | clipped, clamped, slid shut, snapped shut, slid closed | clipping | shut, closed, clamped, on | open, unclipped
unclamp | unclamped, opened, released, slid open, unclipped, unpinched | unclamping | open, undone, released | \
closed, clamped, shut
open | opened, unclamped, rolled open, cracked open, unpinched, released, let go of | opening | open, running | \
closed, shut, clamped
hang | hung, put up, hooked up, popped up | hanging | hanging, hangs, up, on the pole, on the stand, on the drip \
stand, on the hook, on the iv pole | down, on the table, on the counter, on the bed
spike | spiked, pushed in, pierced, pushed home | spiking | spiked, in, in all the way |
squeeze | squeezed, filled, pumped, pushed, pushed out, expelled, got out, got rid of | squeezing | full, filled, \
out, gone |
prime | primed, run through, ran through, flushed through, filled, run it through, ran it through, flushed it \
through, let it run through | priming | full, through | unprimed, dry
fill | filled, topped up, squeezed, filled up | filling | full, at the mark, to the mark, up to the mark, on the \
mark, half full, at the line | empty
push | pushed, pressed, shoved, popped, slid, expelled, got, given, gave, injected, administered | pushing | in, in \
all the way |
pull | pulled, peeled, put, got, slipped | pulling | out |
insert | inserted, pushed, put | inserting | in, inside | out
uncover | uncovered, uncapped | uncovering | open, uncovered, off | covered, capped
cover | covered, dressed | covering | covered, on | uncovered, bare
cap | capped | capping | on, capped | off, uncapped
put | put, popped, placed, pulled on, got on | putting | in place, there, on, on my hands | off
wear | worn, wore | wearing | on | off
don | donned | donning | on | off
apply | applied, put | applying | on, in place | off
wash | washed, cleaned | washing | clean, washed | dirty
clean | cleaned, gelled, rubbed, washed, sanitised, sanitized, disinfected, gelled, foamed, used the foam, used the \
gel, rubbed in | cleaning | clean, gelled, gelled, rubbed in | dirty
rub | rubbed, gelled | rubbing | clean |
sanitise | sanitised, sanitized, cleaned | sanitising | clean | dirty
sanitize | sanitized, sanitised, cleaned | sanitizing | clean | dirty
disinfect | disinfected, wiped, cleaned, scrubbed | disinfecting | clean | dirty
wipe | wiped, cleaned, scrubbed, disinfected, wiped down | wiping | clean, wiped down, disinfected | dirty
scrub | scrubbed, wiped, cleaned, rubbed | scrubbing | clean, scrubbed | dirty
dry | dried | drying | dry | wet, damp
let | let, ran, run, primed | letting | through, primed |
take | taken, took, removed, disconnected, detached, unhooked, pulled, peeled, popped, lifted, tore off, torn off, \
slid, unscrewed, pulled off, twisted off, unscrewed, peeled off, pulled out, taken out, got off, got out, came off | \
taking | off, out, away, gone, binned, disconnected, detached, removed, free | on
remove | removed, taken, took, taken off, took off, taken out, took out, pulled, pulled out, peeled | removing | \
off, out, gone, away | on, in
rise | risen, rose, came up, come up, let in, let up, crept up | rising | up, in, coming up |
fit | fitted, fit, seated, clicked in, clicked into place, clicked into, slotted in, slotted, pushed in, put in, put \
| fitting | in, in place, seated, home | out, unseated
discard | discarded, binned, tossed, chucked, trashed, dumped, thrown away, threw away, thrown out, threw out, \
thrown in the bin, got rid of, disposed of, threw out, put in the bin | discarding | gone, in the bin, in the trash, \
in the clinical waste, in the waste, in the sharps bin |
dispose | disposed of, discarded, binned, tossed, chucked, thrown away, threw away | disposing | gone, in the bin |
throw | thrown away, threw away, thrown, threw, binned, tossed, chucked, trashed, dumped, ditched, thrown out, threw \
out, got rid of, discarded, disposed of, put in the bin | throwing | gone, in the bin, in the trash, in the garbage, \
in the clinical waste, in the waste, in the right bin |
connect | connected, attached, joined, hooked up, screwed on, hooked on, twisted on, locked on, plugged in, plugged \
back in, joined up, clicked in, screwed together, twisted onto | connecting | on, attached, joined, hooked up, \
tight, secure, joined up, locked, snug, plugged in | off, loose, disconnected, unconnected
attach | attached, connected, screwed on, joined, hooked up, twisted on | attaching | on, tight, connected | off, \
loose
join | joined, connected, attached | joining | on | off
hook | hooked, hung, hooked up | hooking | on, up, hanging | off
screw | screwed | screwing | on, tight, in | loose
tighten | tightened, screwed tight, done up, screwed up, screwed down, turned, given a twist, gave a twist, screwed \
firmly | tightening | tight, firm, snug, secure, finger tight, locked, screwed firmly | loose
disconnect | disconnected, detached, unhooked, unscrewed, pulled off, taken off, took off | disconnecting | off, \
undone | on, connected
detach | detached, disconnected | detaching | off | on, attached
loosen | loosened, peeled back, freed, peeled, lifted, undone | loosening | loose, free, undone, up | stuck
free | freed, cleared, unblocked, undone, undid | freeing | free, clear, unblocked, open, gone | blocked
label | labelled, labeled, marked, stickered, dated, put the label on, put the date and time on, wrote the label, \
wrote the date, put the date, stuck the label, written on, tagged, marked up, timed | labelling | on, dated, stuck \
on, marked, got its label, got its sticker, got a label, label is on, label on, labels on, tagged, marked up | \
unlabelled, unlabeled
mark | marked, labelled, labeled, drawn, drew a line, drawn a line, drew an outline, traced, outlined, drawn round, \
drew round, drawn around, drew around | marking | on | unmarked
date | dated, labelled, labeled | dating | dated | undated
stick | stuck | sticking | on | off
slide | slid, moved, pushed | sliding | there, in place |
move | moved, changed over, swapped over, transferred, swapped, changed, changed over | moving | there, in place, \
over, in the new bag, in the new one |
place | placed, put | placing | in place, there, on |
rest | rested, propped, propped up, put, laid | resting | up, resting |
position | positioned, placed | positioning | in place, there |
lay | laid, put, placed | laying | on, there, in place | off
set | set, entered, programmed, put in | setting | set |
enter | entered, keyed in, typed in, put in, set | entering | in, set |
key | keyed in, entered | keying | in, set |
type | typed in, entered | typing | in, set |
program | programmed, set | programming | set, in |
choose | chosen, chose, selected, picked | choosing | selected |
select | selected, chosen, chose, picked, found | selecting | chosen, picked |
pick | picked, chosen, selected | picking | chosen, selected |
load | loaded, threaded, threaded in, put in, clicked in, popped in, fed in, seated, fitted, put, clicked into place \
| loading | in, seated, in the channel, in the groove, in the slot, in place | out, unloaded
thread | threaded, loaded | threading | in | out
press | pressed, hit, pushed, holding, holding down | pressing | pressed |
start | started, set going, turned on, got going, kicked off, hit start, pressed start, hit go, set running, pressed \
run, set off, switched on, put on | starting | running, going, on, started, infusing, up and running, humming | off, \
stopped
begin | begun, began, started, started over, started again, begun again, began again, begun anew, set going, pressed \
start | beginning | running, going, on, infusing | off
run | run, ran, primed, flushed, let through | running | through, primed, full, at the end |
stop | stopped, paused, turned off, switched off, hit stop, pressed stop, shut off, halted, shut down, turned off | \
stopping | stopped, off, halted, shut down, not running, no longer running | running, on, going
pause | paused, stopped, halted, suspended, put on hold, stopped | pausing | paused, on pause, on hold, stopped, on \
standby, suspended, halted, on hold | running, going
silence | silenced, muted, switched off, turned off | silencing | silent, quiet, off | beeping, alarming, on
turn | turned, flipped, switched, inverted, powered, shut, shut down | turning | |
flip | flipped, turned over, inverted | flipping | over |
switch | switched, turned, powered | switching | |
lower | lowered, dropped, dropped down, moved down, brought down, let down | lowering | down, lower, hanging lower | \
up, higher
raise | raised, lifted, propped up, elevated, put up, wound up, brought up, pumped up, put up | raising | up, \
raised, elevated, propped up, on the pillow, at my height, up high | down, flat
lift | lifted, raised | lifting | up | down
document | documented, charted, written down, wrote down, recorded, noted, noted down, written up, put in the chart, \
logged, entered, wrote up, written up, filled in, put in the record, put it in | documenting | in the chart, on the \
chart, charted, in the notes, in the record, in the notes, on the chart, in the chart, on the flow sheet, on the \
sheet, complete | undocumented
chart | charted, documented, written down, wrote down, recorded | charting | in the chart | uncharted
write | written down, wrote down, written, wrote, charted, documented, noted, noted down, recorded, jotted down, \
logged, got it written down, got it down, wrote it in, put it down | writing | in the chart, on paper, down |
record | recorded, documented, charted, written down, wrote down, noted | recording | in the chart |
note | noted, noted down, written down, wrote down | noting | |
tell | told, informed, explained to, talked to, let know, let her know, let him know, let them know, let the patient \
know, spoken to, spoke to, explained, explained it, said it, warned, talked through, talked it through, gave her, \
gave him | telling | informed, aware, knows, understands, has been told, in the picture, she knows what is coming, he \
knows what is coming, they know, knows what to look for, knows what to watch for |
inform | informed, told | informing | |
say | said, told, mentioned, passed on, named, stated, explained, gave the rundown, went through, handed over | \
saying | knows, got all that |
ask | asked, requested, called, got, asked for | asking | gave me, gave both, told me |
introduce | introduced, presented, made introductions, said hello, said who i am, told, gave my name | introducing | \
met, they have met, knows who i am, knows my name, said my name |
explain | explained, told, told, talked through, talked it through, informed | explaining | understands, understood, \
knows |
name | named, said, listed, mentioned | naming | |
identify | identified, checked | identifying | |
call | called, rung, rang, paged, phoned, sent for | calling | on the way, on her way, on his way, on their way, \
coming, coming over |
bring | brought, got, hung, put up, raised, lifted | bringing | here, there, up, hanging, on the hook |
gather | gathered, collected, got | gathering | here, ready, laid out |
collect | collected, gathered, got | collecting | here |
get | got, gotten, fetched | getting | here |
fetch | fetched, got | fetching | here |
check | checked, verified, looked at, inspected, went through, went over, had a look, looked over | checking | \
checked | unchecked
verify | verified, checked | verifying | checked |
confirm | confirmed, checked, verified, accepted, entered, saved | confirming | checked |
inspect | inspected, checked, looked at | inspecting | checked |
look | looked, checked, looked up, looked at, looked in | looking | checked |
watch | watched | watching | |
observe | observed, watched | observing | |
read | read, read out, read through | reading | |
follow | followed, traced, checked | following | checked |
trace | traced, followed, checked | tracing | checked |
compare | compared, checked | comparing | checked |
count | counted | counting | |
measure | measured | measuring | |
feel | felt, palpated, palpated, had a feel | feeling | |
assess | assessed, checked | assessing | |
flush | flushed, flushed through, pushed | flushing | flushed, flushed through, in | unflushed
lock | locked | locking | locked | unlocked
aspirate | aspirated, drawn back, drew back, pulled back | aspirating | |
draw | drawn, drew, pulled, taken, took, eased | drawing | |
tape | taped, taped down, stuck down, secured, strapped | taping | secure, secured, on, taped down | loose
fix | fixed, taped, taped down, secured, anchored, stuck down | fixing | secure, secured, taped down | loose
secure | secured, taped, fixed, taped down, anchored, stuck down, stuck on, fixed with tape | securing | secure, \
tight, fixed, stuck down | loose
anchor | anchored, secured, taped | anchoring | secure | loose
dress | dressed, covered | dressing | covered |
hold | held, held up, got hold of | holding | still, steady, got it steady, steady |
keep | kept | keeping | |
leave | left, kept | leaving | |
support | supported, propped up | supporting | |
tap | tapped, flicked, given a tap, gave a tap | tapping | |
flick | flicked, tapped | flicking | |
invert | inverted, turned over, flipped, turned upside down | inverting | upside down |
adjust | adjusted, set | adjusting | set |
expel | expelled, pushed out | expelling | out, gone |
drain | drained, emptied | draining | empty |
clear | cleared, freed | clearing | clear, gone |
mix | mixed, shaken, swirled | mixing | |
report | reported, told | reporting | |
plug | plugged | plugging | in | unplugged
unpack | unpacked, opened | unpacking | out, open |
unwrap | unwrapped, opened | unwrapping | out, open |
tear | torn, tore, ripped, torn open, tore open, ripped open, opened | tearing | open | sealed, closed
twist | twisted, screwed | twisting | |
use | used, picked, selected, chose, chosen, went through, got it from, took it from | using | |
find | found, located, spotted, got all | finding | found |
see | seen, saw | seeing | |
do | done, did | doing | |
give | given, gave, pushed, flushed, flushed through, run in, ran in, went in, gone in | giving | in |
sign | signed | signing | signed | unsigned
seat | seated, loaded, threaded, threaded in, put, fitted, clicked, clicked in | seating | in, in place, in the \
channel, in the groove, in the slot | out
drop | dropped, binned, put, tossed, chucked, thrown, threw, disposed of, got rid of | dropping | in, gone, in the \
bin |
undo | undone, undid, opened, unclamped, released, loosened | undoing | open, undone, loose | closed, shut, clamped
untwist | untwisted, unscrewed, twisted off, disconnected, detached, removed, taken off, took off | untwisting | \
off, undone, loose | on, attached, stuck
unscrew | unscrewed, untwisted, twisted off, disconnected, removed, taken off, took off | unscrewing | off, undone | \
on, stuck
unhook | unhooked, taken down, took down | unhooking | off, down |
unplug | unplugged, pulled out | unplugging | out, unplugged | plugged in
reach | reached | reaching | |
bring down | brought down | bringing down | down |
power | powered up, powered on, switched on, turned on, booted up, started | powering | on, up, booted up | off
chase | chased, chased out, tapped, got rid of, tapped out | chasing | gone, out, clear, no more bubbles, air free |
rinse | rinsed, flushed, washed | rinsing | clean |
wrap | wrapped, wrapped up, covered, covered up, bagged, put the cover on | wrapping | wrapped | unwrapped
unlock | unlocked, opened | unlocking | unlocked, open | locked
release | released, opened, let go of | releasing | released, open | closed
swap | swapped, changed, changed over, swapped over | swapping | changed, swapped |
change | changed, swapped, swapped over, replaced | changing | changed |
replace | replaced, changed, swapped | replacing | new |
lean | leaned, propped | leaning | |
come | come, came | coming | back |
return | returned | returning | back |
arrange | arranged, booked, scheduled, organised, organized, set up, ordered | arranging | booked, arranged, scheduled |
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
