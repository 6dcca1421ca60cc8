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
shut, thumbed shut, thumbed down, pushed down, squeezed off, pinched closed, closed tight, shut tight, tightened \
shut, squished shut, rolled it all the way down, rolled to the bottom, slid over, slid home, knocked shut, nudged \
shut, thumbed closed, rolled closed, wheeled down, spun shut, did up | closing | shut, closed off, down, clamped off, \
tight, shut off, pinched off, locked off, sealed off, all the way down, all the way shut, right down, clipped, \
clipped shut, rolled down, pinched shut, clamped, clamped shut, closed up, tight shut, shut tight, closed tight, \
fully down, snapped shut, rolled shut, rolled right down, all closed off, clamped tight, fully off | open, opened
shut | shut, closed, clicked shut, snapped shut, clamped, rolled shut, slid shut, pushed shut, pinched shut, clicked \
| shutting | closed, shut, clamped, shut off | open, opened
clamp | clamped, closed, clamped off, clamped down, shut, clipped, pinched off, clipped off, clamped shut, snapped \
shut, slid shut, rolled down | clamping | closed, shut, clamped, clamped off, clipped, clamped shut, tight, shut off, \
pinched off | open, unclamped
clip | clipped, clamped, slid shut, snapped shut, slid closed | clipping | shut, closed, clamped, on | open, \
unclipped
unclamp | unclamped, opened, released, slid open, unclipped, unpinched, undid, undone, rolled open, rolled up, popped \
open, let go of, unsnapped, slid off, opened up, let off | unclamping | open, undone, released, unclamped, free, off \
| closed, clamped, shut
open | opened, unclamped, rolled open, cracked open, unpinched, released, let go of, undid, undone, rolled up, rolled \
it up, slid open, popped open, snapped open, flicked open, flipped open, thumbed open, wound open, unlocked, \
unclipped, pulled open, swung open, clicked open, rolled it right up, rolled right up, rolled all the way up, slid \
back, slid across open, let go of the pinch, let the pinch go, released the pinch, stopped pinching, took my fingers \
off, unshut, thumbed up, spun open, popped it open, wheeled up, slackened, slackened off, let off | opening | open, \
running, undone, unclamped, released, unclipped, rolled up, flowing, unpinched, up, off the pinch, wide open, all \
open, flowing again, running again | closed, shut, clamped
hang | hung, put up, hooked up, popped up, strung up, hoisted, hoisted up, hooked, hooked on, suspended, slung, slung \
up, got up, stuck up, lifted up, clipped up, put back up, hung up, got it hung, popped on, stuck on, put on the hook, \
put on the pole, put on the stand, got it up, racked, mounted, hitched, hitched up | hanging | hanging, hangs, up, on \
the pole, on the stand, on the drip stand, on the hook, on the iv pole, on its hook, on the drip pole, up on the \
pole, up on the hook, up on the stand, suspended, hooked up, hooked on, hung, dangling, up there, up high, hung up, \
aloft, swinging from the hook, swinging, on its hanger, on the hanger, up on its hook, up top | down, on the table, \
on the counter, on the bed
spike | spiked, pushed in, pierced, pushed home, pushed through, inserted, popped in, stuck in, shoved in, gone in, \
went in, pushed right in, got in, driven in, gone through, punched, punched in, punched through, jabbed in, screwed \
in, rammed in, worked in, twisted in | spiking | spiked, in, in all the way, through, home, right in, fully in, all \
the way home, in to the hilt, in to the collar, seated, pushed home, well in, all in, right home, in up to the hilt, \
in up to the shoulder, in up to the collar, right up to the collar |
squeeze | squeezed, filled, pumped, pushed, pushed out, expelled, got out, got rid of, squished, squashed, pinched, \
pressed, given a squeeze, gave a squeeze, squished it, squeezed it, given it a squeeze, gave it a squeeze, gave it a \
couple of squeezes, given it a couple of squeezes, pumped it | squeezing | full, filled, out, gone |
prime | primed, run through, ran through, flushed through, filled, run it through, ran it through, flushed it \
through, let it run through, purged, filled up, flooded, run right through, ran right through, let through, flushed \
out, come through, came through, run to the tip, run to the end, bled, bled through, flushed down, filled right up, \
run down, ran down, got it primed, filled through | priming | full, through, filled, full of fluid, right through, \
reached the tip, reached the end, run through, come through, it is at the tip, it is at the end, is at the end now, \
fluid is at the end, fluids at the end, fluids at the tip, it is down to the tip, fluid to the tip, full up to the \
tip, primed, primed through, full to the tip, full to the end, wet to the tip, filled to the tip, filled to the end, \
full all the way, full along its length, flowing from the tip, dripping from the tip, dripping from the end, flowing \
out the end | unprimed, dry
fill | filled, topped up, squeezed, filled up, pumped, pumped up, squished, pumped to the line | filling | full, at \
the mark, to the mark, up to the mark, on the mark, half full, at the line, filled, filled up, to the line, on the \
line | empty
push | pushed, pressed, shoved, popped, slid, expelled, got, given, gave, injected, administered, squeezed, squeezed \
out, pressed out, pushed out, expressed, forced out, squirted out, squirted, flicked out, driven, drove, depressed, \
eased, eased in, injected in, delivered, purged, chased out, emptied, shot in, fed in, trickled in, infused, given \
in, run in, ran in, put in, sent in | pushing | in, in all the way, gone in, went in, right in, fully in, home, all \
in, all given, given, delivered, injected, all gone, through |
pull | pulled, peeled, put, got, slipped, yanked, tugged, eased | pulling | out |
insert | inserted, pushed, put, slid in, slotted in, pushed in, popped in, stuck in, fitted | inserting | in, inside, \
right in, fully in, home | out
uncover | uncovered, uncapped | uncovering | open, uncovered, off | covered, capped
cover | covered, dressed, covered over, covered up, put gauze on, put gauze over, taped over, laid gauze on, laid \
gauze over, padded, wrapped, patched, put a dressing on, put the gauze on, covered in, got covered, sealed over, put \
a pad on, put a pad over, stuck a pad on, bandaged, plastered, dressed it, taped down, put gauze and tape on, put \
gauze and tape over, put the gauze and tape on | covering | covered, on, covered over, covered up, under gauze, under \
cover, dressed, taped over, in place, protected, under gauze and tape, gauze and tape on, gauze and tape over, gauze \
and tape is on, gauze and tape are on, gauze is on and taped, gauze on and taped, gauze on tape on, gauze is taped \
on, gauze is taped down, gauze taped down, gauze taped on, gauze is stuck down, all taped up, taped up, all covered, \
bandaged, sealed | uncovered, bare
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
wipe, swabbed it, swabbed down, given a swab, gave a swab, given a scrub, gave a scrub, cleaned off, cleaned down, \
alcohol wiped, alcoholed, gone over, went over | wiping | clean, wiped down, disinfected, swabbed, scrubbed, cleaned, \
wiped off, cleaned off, swabbed off, cleaned down | dirty
scrub | scrubbed, wiped, cleaned, rubbed, swabbed, disinfected, given a scrub, gave a scrub, rubbed down | scrubbing \
| clean, scrubbed, disinfected, swabbed | dirty
dry | dried, dried off, dried up, air dried, dried out, let dry, let it dry, left to dry, left it to dry, let it air \
dry, gone dry, went dry | drying | dry, dried, dried off, dry now, bone dry, all dry, fully dry, air dried, dried up, \
dried out, no longer wet, not wet, not wet anymore, not damp, no wetness | wet, damp
let | let, ran, run, primed | letting | through, primed |
take | taken, took, removed, disconnected, detached, unhooked, pulled, peeled, popped, lifted, tore off, torn off, \
slid, unscrewed, pulled off, twisted off, peeled off, pulled out, taken out, got off, got out, came off, unclipped, \
unlocked, undone, undid, taken down, took down, eased, eased off, untwisted, slipped off, slid off, popped off, \
pulled away, taken away, took away, whipped off, unplugged, come off, come away, came away, peeled away, stripped \
off, slipped, pried off, worked off, worked loose, wiggled off, whisked off, ripped off, pulled free, snipped, shed, \
parted, split, undone it, uncoupled, unclicked, unlatched, lifted out, lifted off, fished out, slid out, drawn out, \
drew out, popped out, got it off, got it out, got free, prised off, prised out, unloaded, pulled away from, out it \
came, off it came | taking | off, out, away, gone, binned, disconnected, detached, removed, free, unscrewed, undone, \
unhooked, taken off, come off, come away, parted, separated, unhitched, unclipped, uncoupled, parted from, off now, \
well off, clean off, right off, clear of, separated from, unattached, not attached, no longer attached, no longer \
connected, not connected anymore, lifted out, pulled out, unloaded | on
remove | removed, taken, took, taken off, took off, taken out, took out, pulled, pulled out, peeled, undone, undid, \
lifted out, lifted off, eased out, eased off, unscrewed, detached, popped out, taken away, took away, lifted away, \
whipped off, whipped out, got out, got off, come off, came off, come out, came out | removing | off, out, gone, away, \
removed, taken off, taken out, out now, come out, come off | on, in
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
threw, scrapped, dropped in the bin, dropped in the sharps, popped in the bin, put in the sharps, gone in the sharps, \
went in the sharps, junked, cleared away, gone to waste, lobbed, slung, slung out, slung in the bin, flung in the \
bin, cast away, thrown in the yellow bag, threw in the yellow bag, put it all in the bin, put in the clinical bin, \
put out | discarding | gone, in the bin, in the trash, in the clinical waste, in the waste, in the sharps bin, in the \
bins, in the yellow bag, in the yellow bin, in the orange bag, binned, disposed of, discarded, thrown away, in the \
rubbish, in the sharps, in the sharps box, in the sharps container, in the clinical bin, in the waste bin, in the \
waste bag, in the right bins, in the proper bin, in the proper bins, thrown out, binned off, trashed, thrown, in the \
burn bin, in the orange bin, in the rubbish bin, |
dispose | disposed of, discarded, binned, tossed, chucked, thrown away, threw away, ditched, put in the bin, put in \
the waste | disposing | gone, in the bin, in the waste |
throw | thrown away, threw away, thrown, threw, binned, tossed, chucked, trashed, dumped, ditched, thrown out, threw \
out, got rid of, discarded, disposed of, put in the bin | throwing | gone, in the bin, in the trash, in the garbage, \
in the clinical waste, in the waste, in the right bin |
connect | connected, attached, joined, hooked up, screwed on, hooked on, twisted on, locked on, plugged in, plugged \
back in, joined up, clicked in, screwed together, twisted onto, screwed in, screwed onto, twisted in, twisted \
together, hooked in, hooked onto, hooked, coupled, linked, linked up, fastened, fitted, fitted on, put on, popped on, \
clicked on, locked in, luer locked, put together, married up, hitched up, clipped on, pushed on, attached back, \
reattached, reconnected, screwed it on, mated, jointed, joined on, joined together, locked together, locked up, \
plumbed in, slotted on, slid on, spun on, wound on, stuck on, put back on, put back, fixed on, fixed to, tied in, \
hooked back up, hooked it up, tacked on, luered on, luer locked on, luered up, attached up, screwed to, twisted home, \
got on | connecting | on, attached, joined, hooked up, tight, secure, joined up, locked, snug, plugged in, in, \
screwed on, screwed in, locked on, linked up, coupled, fitted, fastened, in place, twisted on, clicked in, seated, on \
there, firmly on, screwed home, screwed down, coupled up, mated, all connected, tied in, on now, back on, well on, \
fixed on, locked in place, luer locked, together, joined on, plumbed in, hooked in, hitched up, joined together | \
off, loose, disconnected, unconnected
attach | attached, connected, screwed on, joined, hooked up, twisted on, hooked on, linked, fastened, popped on, \
fitted, put on, coupled, clicked on, locked on, put back on | attaching | on, tight, connected, attached, hooked up, \
screwed on, in place, fitted, connected up, on there, screwed in | off, loose
join | joined, connected, attached | joining | on | off
hook | hooked, hung, hooked up | hooking | on, up, hanging | off
screw | screwed | screwing | on, tight, in | loose
tighten | tightened, screwed tight, done up, screwed up, screwed down, turned, given a twist, gave a twist, screwed \
firmly, cranked, snugged up, snugged down, nipped up, done up tight, twisted tight, turned tight, locked, secured, \
firmed up, gone round, went round, twisted, tightened up, tightened down, tightened right up, turned as far as it \
goes, turned till it stopped, twisted hard, twisted home, screwed home, screwed right down, snug, made tight, made it \
tight, torqued, hand tightened, wrenched, cinched, cinched down, nipped tight, turned it tight, done tight, pinched \
tight, locked down, screwed on tight, screwed in tight, locked it down | tightening | tight, firm, snug, secure, \
finger tight, locked, screwed firmly, tightened, nice and firm, done up, solid, nipped up, twisted tight, as tight as \
it goes, hand tight, rock solid, locked down, nice and tight, hand tightened, screwed tight, screwed home, screwed \
down, screwed on tight, solidly on, well tight, good and tight, tight as it goes, tight as a drum, does not wiggle, \
will not wiggle, does not budge, will not budge, no wobble, no wiggle, no play, no give, does not wobble, will not \
wobble, will not come loose, will not come off, does not come off, will not turn any further, will not turn any more, \
does not turn any more, will not turn anymore, can not turn it any further, not loose, not wobbly, firmly on, fully \
tight | loose
disconnect | disconnected, detached, unhooked, unscrewed, pulled off, taken off, took off, unplugged, uncoupled, \
separated, parted, twisted off, untwisted, pulled apart, popped off, removed, unhooked it, come apart, came apart, \
undone it, undone, undid, let go | disconnecting | off, undone, disconnected, detached, separated, unhooked, free, \
parted, apart, not connected, no longer connected, not attached, no longer attached, unplugged, taken off | on, \
connected
detach | detached, disconnected | detaching | off | on, attached
loosen | loosened, peeled back, freed, peeled, lifted, undone, eased, eased up, worked loose, lifted up, rolled back, \
pulled back, picked loose, unpeeled, teased off, unstuck, prised up, worked up, worked free, peeled in, peeled \
inwards, peeled towards, lifted the edges, got the edges up, got it loose, came loose, come loose, picked up, rolled \
in, eased off, eased back | loosening | loose, free, undone, up, lifted, peeled, peeled back, loosened, come up, \
unstuck, peeled in, peeled inwards, off the skin, edges are up, edges up, all loose, lifting, come loose, come away, \
come free, peeling off, peeled off, lifted off, up all round, off all round, peeled away, free all round | stuck
free | freed, cleared, unblocked, undone, undid, straightened, straightened out, untwisted, unkinked, untangled, \
released, flushed out, sorted, let go, undid the kink, removed, shifted, dislodged, popped out, popped loose, came \
loose, come loose, cleared it, pushed out, pushed through, got rid of, unclogged, unjammed, opened up, washed out, \
blew out, blown out, gave way, given way | freeing | free, clear, unblocked, open, gone, freed, cleared, flowing, \
running again, unkinked, straight, released, shifted, dislodged, popped loose, come loose, unclogged, moving, moving \
again, flowing again, flowing freely, dripping again, running freely, popped out, unjammed, gave way, given way, out, \
patent | blocked
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
