"""What is done to clamps, bags, lines and connections, in English: rows of `verbs`."""

TABLE = """
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
"""
"""Words of the trade and of every day (common practice, no source)."""
