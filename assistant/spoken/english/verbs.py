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
close | closed, shut, clamped, rolled shut, rolled down, clicked shut | closing | shut, closed off, down | open, opened
shut | shut, closed, clicked shut, snapped shut | shutting | closed, shut | open, opened
clamp | clamped, closed | clamping | closed, shut | open, unclamped
clip | clipped, clamped, slid shut, snapped shut, slid closed | clipping | shut, closed, clamped, on | open, unclipped
unclamp | unclamped, opened | unclamping | open | closed, clamped, shut
open | opened, unclamped, rolled open, cracked open | opening | open, running | closed, shut, clamped
hang | hung, put up, hooked up, popped up | hanging | hanging, up, on the pole, on the stand, on the drip stand, \
on the hook, on the iv pole | down, on the table, on the counter, on the bed
spike | spiked, pushed in | spiking | spiked, in |
squeeze | squeezed, filled, pumped | squeezing | full, filled |
prime | primed, run through, ran through, flushed through, filled, run it through, ran it through, flushed it \
through, let it run through | priming | full, through | unprimed, dry
fill | filled, topped up | filling | full | empty
push | pushed, pressed, shoved, popped | pushing | in |
pull | pulled, peeled | pulling | out |
insert | inserted, pushed, put | inserting | in, inside | out
uncover | uncovered, uncapped | uncovering | open, uncovered, off | covered, capped
cover | covered, dressed | covering | covered, on | uncovered, bare
cap | capped | capping | on, capped | off, uncapped
put | put, popped, placed | putting | in place, there, on | off
wear | worn, wore | wearing | on | off
don | donned | donning | on | off
apply | applied, put | applying | on, in place | off
wash | washed, cleaned | washing | clean, washed | dirty
clean | cleaned, gelled, rubbed, washed, sanitised, sanitized, disinfected | cleaning | clean, gelled | dirty
rub | rubbed, gelled | rubbing | clean |
sanitise | sanitised, sanitized, cleaned | sanitising | clean | dirty
sanitize | sanitized, sanitised, cleaned | sanitizing | clean | dirty
disinfect | disinfected, wiped, cleaned, scrubbed | disinfecting | clean | dirty
wipe | wiped, cleaned, scrubbed | wiping | clean | dirty
scrub | scrubbed, wiped, cleaned, rubbed | scrubbing | clean, scrubbed | dirty
dry | dried | drying | dry | wet, damp
let | let | letting | |
take | taken, took, pulled, peeled, popped, lifted, tore, torn off, slid, unscrewed, pulled off, twisted off | \
taking | off, out, away, gone | on
remove | removed, taken, took, pulled, peeled | removing | off, out, gone | on, in
discard | discarded, binned, tossed, chucked, trashed, dumped, thrown away, threw away, thrown out, threw out, \
thrown in the bin, got rid of, disposed of | discarding | gone, in the bin, in the trash |
dispose | disposed of, discarded, binned, tossed, chucked, thrown away, threw away | disposing | gone, in the bin |
throw | thrown away, threw away, thrown, threw, binned, tossed, chucked, trashed, dumped, ditched, thrown out, \
threw out, got rid of, discarded, disposed of | throwing | gone, in the bin, in the trash, in the garbage |
connect | connected, attached, joined, hooked up, screwed on, hooked on, twisted on, locked on | connecting | on, \
attached, joined, hooked up, tight, secure | off, loose, disconnected, unconnected
attach | attached, connected, screwed on, joined, hooked up, twisted on | attaching | on, tight, connected | off, loose
join | joined, connected, attached | joining | on | off
hook | hooked, hung, hooked up | hooking | on, up, hanging | off
screw | screwed | screwing | on, tight, in | loose
tighten | tightened, screwed tight, done up | tightening | tight, firm, snug, secure | loose
disconnect | disconnected, detached, unhooked, unscrewed | disconnecting | off | on, connected
detach | detached, disconnected | detaching | off | on, attached
loosen | loosened, peeled back, freed | loosening | loose | stuck
free | freed, cleared, unblocked | freeing | free, clear, unblocked, open | blocked
label | labelled, labeled, marked, stickered, dated, put the label on, put the date and time on, wrote the \
label, wrote the date, put the date, stuck the label, written on | labelling | on, dated, stuck on, marked, got \
its label, got its sticker, got a label, label is on, label on, labels on | unlabelled, unlabeled
mark | marked, labelled, labeled, drawn, outlined | marking | on | unmarked
date | dated, labelled, labeled | dating | dated | undated
stick | stuck | sticking | on | off
slide | slid, moved, pushed | sliding | there, in place |
move | moved, changed over, swapped over, transferred | moving | there, in place, over |
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
load | loaded, threaded, threaded in, put in, clicked in, popped in, fed in | loading | in | out, unloaded
thread | threaded, loaded | threading | in | out
press | pressed, hit, pushed | pressing | pressed |
start | started, set going, turned on, got going, kicked off, hit start, pressed start, hit go, set running | \
starting | running, going, on, started, infusing | off, stopped
begin | begun, began, started | beginning | running, going, on | off
run | run, ran | running | |
stop | stopped, turned off, switched off, hit stop, pressed stop, shut off | stopping | stopped, off | running, \
on, going
pause | paused, stopped | pausing | paused, on pause, on hold, stopped | running, going
silence | silenced, muted, switched off, turned off | silencing | silent, quiet, off | beeping, alarming, on
turn | turned, flipped, switched, inverted | turning | |
flip | flipped, turned over, inverted | flipping | over |
switch | switched, turned, powered | switching | |
lower | lowered, dropped, dropped down, moved down, brought down, let down | lowering | down, lower, \
hanging lower | up, higher
raise | raised, lifted, propped up, elevated, put up | raising | up, raised, elevated, propped up, \
on the pillow | down, flat
lift | lifted, raised | lifting | up | down
document | documented, charted, written down, wrote down, recorded, noted, noted down, written up, put in the chart, \
logged, entered | documenting | in the chart, on the chart, charted, in the notes | undocumented
chart | charted, documented, written down, wrote down, recorded | charting | in the chart | uncharted
write | written down, wrote down, written, wrote, charted, documented, noted, noted down, recorded, jotted down, \
logged, got it written down, got it down, wrote it in, put it down | writing | in the chart, on paper, down |
record | recorded, documented, charted, written down, wrote down, noted | recording | in the chart |
note | noted, noted down, written down, wrote down | noting | |
tell | told, informed, explained to, talked to, let know, spoken to, spoke to, explained, explained it, said it \
| telling | informed, aware, knows, understands, has been told, in the picture, she knows what is coming, he \
knows what is coming, they know |
inform | informed, told | informing | |
say | said, told, mentioned, passed on, named, stated | saying | |
ask | asked, requested, called | asking | |
introduce | introduced, presented | introducing | |
explain | explained, told | explaining | |
name | named, said, listed, mentioned | naming | |
identify | identified, checked | identifying | |
call | called, rung, rang, paged, phoned | calling | |
bring | brought, got | bringing | here, there |
gather | gathered, collected, got | gathering | here, ready, laid out |
collect | collected, gathered, got | collecting | here |
get | got, gotten, fetched | getting | here |
fetch | fetched, got | fetching | here |
check | checked, verified, looked at, inspected | checking | checked | unchecked
verify | verified, checked | verifying | checked |
confirm | confirmed, checked, verified | confirming | checked |
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
feel | felt, palpated | feeling | |
assess | assessed, checked | assessing | |
flush | flushed, flushed through, pushed | flushing | flushed, flushed through, in | unflushed
lock | locked | locking | locked | unlocked
aspirate | aspirated, drawn back, drew back, pulled back | aspirating | |
draw | drawn, drew, pulled, taken, took, eased | drawing | |
tape | taped, taped down, stuck down, secured, strapped | taping | secure, secured, on, taped down | loose
fix | fixed, taped, taped down, secured, anchored, stuck down | fixing | secure, secured, taped down | loose
secure | secured, taped, fixed, taped down, anchored | securing | secure, tight | loose
anchor | anchored, secured, taped | anchoring | secure | loose
dress | dressed, covered | dressing | covered |
hold | held | holding | still, steady |
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
use | used, picked, selected, chose, chosen, went through, got it from, took it from | using |  |
find | found, located, spotted | finding | found |
see | seen, saw | seeing | |
do | done, did | doing | |
give | given, gave | giving | in |
sign | signed | signing | signed | unsigned
come | come, came | coming | back |
return | returned | returning | back |
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
