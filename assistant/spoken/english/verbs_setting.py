"""How things are labelled, placed, set, loaded, started and stopped, in English: rows of `verbs`."""

TABLE = """
# base | past | ing | once it is done | while it is not
label | labelled, labeled, marked, stickered, dated, put the label on, put the date and time on, wrote the label, \
wrote the date, put the date, stuck the label, written on, tagged, marked up, timed, put a label on, put the sticker \
on, stuck a label on, stuck the sticker on, put a sticker on, stuck a sticker on, slapped a label on, popped a label \
on, popped the label on, written up, wrote up, wrote on, written out, filled in, put its label on, got the label on, \
stuck it on, stuck on, popped it on, slapped it on, put it on, pasted on, affixed, fixed a label on, fixed the label \
on, attached a label, attached the label, pressed the label on, stuck its label on, popped the sticker on, slapped \
the sticker on, got the sticker on, wrote the sticker | labelling | on, dated, stuck on, marked, got its label, got \
its sticker, got a label, label is on, label on, labels on, tagged, marked up, labelled, labeled, stickered, got its \
date, sticker on, sticker is on, stickers on, stickers are on, label stuck on, with its label, written on, label has \
gone on, label went on, label is stuck on, labels stuck on, stickers stuck on, sticker stuck on, sticker went on, \
wearing its label, label in place, its label on, sticker in place, tag on, tags on, tag is on | unlabelled, unlabeled
mark | marked, labelled, labeled, drawn, drew a line, drawn a line, drew an outline, traced, outlined, drawn round, \
drew round, drawn around, drew around, inked, pencilled, circled, ringed, penned | marking | on, marked, drawn on, \
inked, outlined | unmarked
date | dated, labelled, labeled | dating | dated | undated
stick | stuck, taped, put, popped | sticking | on, stuck, stuck on | off
slide | slid, moved, pushed, slotted | sliding | there, in place |
move | moved, changed over, swapped over, transferred, swapped, changed, shifted, switched, switched over, taken \
over, put over, popped over, brought over, got across, brought across, moved across, moved over, took across, taken \
across, popped across, swung over, went across, gone across, put into the new, put in the new, gone into the new, \
went into the new, stuck in the new, spiked | moving | there, in place, over, in the new bag, in the new one, spiked, \
in the new, across, in the new bag now, into the new bag, out of the old and into the new, transferred, moved, \
switched over, swapped over, across now, moved over |
place | placed, put, popped, laid, set, stuck, positioned | placing | in place, there, on, on there |
rest | rested, propped, propped up, put, laid | resting | up, resting |
position | positioned, placed, put, set | positioning | in place, there |
lay | laid, put, placed, popped, draped, rested, set, stuck, spread, pressed, held on, covered, popped on top, put on \
top, put over, popped over, laid over, laid across, placed over, set down on, put across, spread over, lain, draped \
over, wrapped round, wrapped around | laying | on, there, in place, in position, over the site, covering it, covered, \
lying on, sitting on, over it, on it now, on top, on top of it, lying over, lying across, lying on it, laid over, \
over the hole, over the spot, covering the site, covering, on the site, over the top, laid on top, sitting over, \
resting on, resting over, down over | off
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
in, locked in, got in, inserted, snapped into place, snapped into, clicked into, slid into, fitted into, laid into, \
dropped into, popped into, threaded into, threaded through, clipped into, slipped in, slipped into, tucked in, tucked \
into, fed through, hooked in, nestled in, run through, bedded in, set into, put through | loading | in, seated, in \
the channel, in the groove, in the slot, in place, loaded, clicked in, clipped in, locked in, fitted, in the pump, in \
position, in there, sitting in the channel, home, in the cradle, in the driver, in its place, in its slot, in its \
channel, in its groove, in the track, in the cassette, snapped in, snapped in place, clipped in place, locked in \
place, snug in, snug in the channel, snug in the cradle, nestled in, in snugly, fitted in, bedded in, threaded, \
threaded through, threaded in, installed, in correctly, in properly, seated properly, fully seated, seated in the \
channel, clicked into place, slotted in, laid in, in the machine, inside the pump, inside the machine, inside | out, \
unloaded
thread | threaded, loaded | threading | in | out
press | pressed, hit, pushed, holding, holding down, pushed down, pushed on | pressing | pressed |
start | started, set going, turned on, got going, kicked off, hit start, pressed start, hit go, set running, pressed \
run, set off, switched on, put on, fired up, switched it on, pressed go, hit run, pressed the start button, pressed \
the button, begun, began, got running, got started, set it running, set it off, sent off, launched, resumed, \
restarted, put on run, turned it on, got it going, got it running, set it going, pushed start, pushed go, pushed run, \
pressed the green button, hit the green button, hit the start button, pushed the start button, tapped start, put in \
motion, put it on run, put it on go, opened up, got under way, kicked it off, set away, turned it back on, put it \
back on | starting | running, going, on, started, infusing, up and running, humming, started up, up and going, under \
way, underway, away, in progress, delivering, pumping, ticking, ticking over, ticking along, working, whirring, \
flowing, active, on the go, on run, off and running, off and going, up running, doing its thing, going now, running \
away, running now, in motion, running well, off and away, started now, dripping, has started, begun, has begun, got \
going | off, stopped
begin | begun, began, started, started over, started again, begun again, began again, begun anew, set going, pressed \
start, redone, redid, restarted, started afresh, started anew, begun afresh, started from scratch, gone back to the \
start, re entered, typed in again, typed it in again, typed again, typed it again, keyed in again, keyed it in again, \
keyed again, entered again, entered it again, put in again, put it in again, punched in again, punched it in again, \
typed in fresh, keyed in fresh, entered afresh, entered anew, entered it anew, typed it in anew, keyed it in anew, \
started from the beginning, started from the top, started from zero, started fresh, begun from the start, entered it \
from the start, entered it new, gone again from scratch, entered from scratch, started it over, re typed, retyped, re \
keyed, reentered, put it in fresh, put in fresh, did it over, done it over, did it again, done it again, did it again \
from scratch | beginning | running, going, on, infusing, redone, restarted, keying it in again, keying it in fresh, \
keying it in anew, keying in again, keying in fresh, typing it in again, typing it in fresh, typing in again, typing \
it again, entering it again, entering it anew, entering it fresh, entering it afresh, entering it from scratch, \
putting it in again, putting it in fresh, starting over, starting again, starting afresh, starting fresh, starting \
anew, starting from scratch, starting from the beginning, starting from the top, i enter it new, i enter it again, i \
type it again, going again from scratch, begun anew | off
run | run, ran, primed, flushed, let through, flushed through, run in, ran in, let in, infused, given, let run in, \
put through, sent through | running | through, primed, full, at the end, run in, in, gone in, finished, done |
stop | stopped, paused, turned off, switched off, hit stop, pressed stop, shut off, halted, shut down, put a stop to, \
put on stop, pressed the stop button, ended, switched it off, shut it off, brought to a stop, cut off, killed, \
ceased, put on hold, hit the stop button, pushed stop, pushed the stop button, pressed the red button, hit the red \
button, tapped stop, knocked off, halted it, put it on stop, brought to a halt, turned it off, stilled, brought it to \
a stop | stopping | stopped, off, halted, shut down, not running, no longer running, at a stop, paused, at rest, \
standing still, stationary, at a halt, come to a stop, come to a halt, came to a stop, came to a halt, not running \
any more, not running anymore, no longer going, not going, not going anymore, not going any more, nothing running, \
nothing is running, nothing going in, nothing is going in, no longer infusing, not infusing, not infusing anymore, no \
longer pumping, not pumping, not pumping anymore, not delivering, not dripping anymore, ended, standing, has stopped, \
dead still | running, on, going
pause | paused, stopped, halted, suspended, put on hold, pressed pause, hit pause, put on pause, put on standby, \
stopped for now, frozen, pressed hold, hit hold, put in standby, put it on hold, put it on pause, tapped pause, \
pushed pause, hit the pause button, pressed the pause button, pushed the pause button, put it on standby, put it in \
standby, put on hold now, put it in pause, put in pause | pausing | paused, on pause, on hold, stopped, on \
standby, suspended, halted, frozen, standing, at rest, paused now, in standby, on pause now, in pause, in hold, not \
running, not running anymore, no longer running, standing still, at a standstill, at a halt, not going, not \
infusing, not pumping, on halt, pausing now | running, going
silence | silenced, muted, switched off, turned off | silencing | silent, quiet, off | beeping, alarming, on
"""
"""Words of the trade and of every day (common practice, no source)."""
