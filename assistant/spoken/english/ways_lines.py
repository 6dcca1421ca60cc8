"""How people say the alternatives of lines, clamps and pumps, in English: see `choices`."""

WAYS = """
from the library | library, in library, used library, i used library, picked from library, from list, off list, from \
menu, chose from library, selected from library, drug library, i picked from library, i chose from library, picked \
off list, chosen from library, found in library, found it in library, took it from library, selected in library, \
chose in library, through library, using library, with library, out of library, from drug library, picked in library, \
via library, drug list, off drug list, in drug library, got from library, in list, on list, from drug list, used drug \
library, used list, in menu, off menu, picked it from list, chose it from list, found it in list, found it on list, \
found on list, it was in list, it was in library, was in library, was in list, was on list, library entry, library \
one, came up in library, up in library, preset, from presets, preset used, profile, out of list, scrolled to it, \
scrolled and picked, built in, from built in list, from database, pump list, pump library, pump menu, chosen from \
drug list, drug library used, went through library, via list, pulled it up, pulled it from library, pulled from \
library, library all way
by hand | manually, typed in, i typed in, entered myself, i entered myself, keyed in, i keyed in, entered by hand, no \
library, typed by hand, i did by hand, manual, keyed by hand, put in by hand, put in myself, typed myself, typed, \
keyed, hand entered, without library, set by hand, manual entry, entered manually, keyed manually, programmed by \
hand, own entry, put in manually, typed manually, typed in manually, typed it in, typed it all, typed it myself, \
typed it manually, typed by myself, typed drug in, typed drug in manually, typed drug, entered it myself, entered it \
by hand, entered it manually, put it in by hand, put it in manually, put it in myself, keyed it, keyed it in, keyed \
it in myself, keyed it by hand, keyed all, keyed everything, keyed numbers, keyed in numbers myself, punched it in, \
punched in, did it by hand, did it manually, done by hand, done manually, had to type it, had to type, had to key it \
in, had to key, own numbers, free text, basic mode, manual mode, custom, custom entry, off own bat, wrote it in, \
dialled in, dialled it in, set manually, set it by hand, set it manually, hand typed, manual way, programmed \
manually, letter by letter
running quietly | running, running fine, running well, quiet, no alarm, no alarms, infusing, all quiet, infusing \
quietly, running smoothly, no beeping, going fine, running normally, runs, runs fine, runs well, runs quietly, \
running no alarm, running without alarm, running as should, up and running, ticking along, runs smoothly, runs \
normally, still running, running nicely, working fine, running away, running away quietly, ticking over, ticking over \
nicely, going quietly, going nicely, going well, humming, humming along, working quietly, nice and quiet, running \
silent, silent, no sound, no noise, running no noise, running with no alarm, quiet and running, infusing no alarm, \
infusing fine, infusing nicely, all normal, running away fine, purring, calm and running, running steady, running \
steadily, no beeps, running no beeps, quiet as anything, infusing without alarm
alarming | beeping, alarm, an alarm, alarms, beeps, alarm on, alarm going, alarm sounding, sounding, ringing, \
buzzing, in alarm, bleeping, an alert, going off, gone off, beeping away, beeping at me, bleeping away, alarm gone \
off, has alarm, shouting, screaming, squealing, chirping, alarm again, red light, flashing red, making noise, making \
racket, sounding off, alarm ringing, pinging, beeps at me
stopped | not running, off, paused, not going, standing still, has stopped, stopped itself, standing, halted, paused \
itself, at standstill, turned off, switched off, came to stop, does not run, not run, not infusing, idle, stopped \
running, stopped infusing, stopped dead, quit, frozen, on hold, on pause, not moving, nothing moving, nothing \
running, switched itself off, shut down, standby, no longer running, stood still, dead
the secondary | secondary, small bag, piggyback, just secondary, only secondary, small one, little bag, just \
piggyback, secondary drips, secondary dripping, small bag drips, piggyback drips, secondary only, secondary chamber, \
secondary is dripping, secondary one, little one, small bag dripping, small bag only, piggyback only, piggyback one, \
antibiotic, antibiotic one, small one dripping, small one drips, secondary going, secondary running, just little one, \
only small bag, only small one, only little one, only piggyback, just small bag, just small one, piggyback running, \
secondary bag, secondary drips only, small bag going, small bag running, secondary chamber drips, secondary chamber \
dripping, small chamber, little bag drips, little bag dripping
the primary | primary, big bag, main bag, only primary, just primary, big one, main one, primary drips, primary \
dripping, big bag drips, primary only, primary chamber, primary one, main line, large one, large bag, main one only, \
main one dripping, main one drips, main bag dripping, main bag drips, main bag only, only main, only main bag, only \
main one, only big one, only big bag, just big bag, just big one, just main bag, just main one, big bag dripping, big \
one drips, big one dripping, primary going, primary running, main bag going, main bag running, big bag going, big bag \
running, primary bag, primary chamber drips, primary chamber dripping, main drip, maintenance, maintenance bag, large \
bag drips, large bag dripping, only large one
both | both of them, both drip, two of them, both dripping, both drips, two drip, two dripping, they both drip, both \
running, both are, both going, both at once, both of those, pair of them, pair, two together, both together, both \
chambers, both chambers drip, both chambers dripping, each one, each dripping, each one dripping, all two, both bags, \
both bags drip, both bags dripping, one and other
neither | neither of them, none of them, nothing drips, no drops, nothing dripping, none, not one of them, no one \
drips, neither one, neither is, neither dripping, none dripping, none drips, neither one drips, nothing moving, \
nothing comes, both stopped, both still, not any, no drops at all, no drips, no dripping, nothing at all, nothing in \
either, nothing from either, nothing dripping at all, nothing moving at all, nothing drips at all, no drops in \
either, no drip in either, no drips in either, both dry, both not dripping, both not drip, not either, not in either, \
none going, none running, none of two, no movement, no movement in either, no drops anywhere, both stand still, both \
standing still, both have stopped, neither moving, neither going, neither drips, neither running, dead both
luer lock | luer, luer lock syringe, luer lock one, luer lock type, screw on, screws on, screw on one, screw on type, \
screw tip, screw thread, has thread, has threads, threaded, threaded tip, threaded end, twist on, twist on kind, \
twist lock, twists on, locks on, locking one, locking tip, thread on it, thread on end, thread at tip, right one luer \
lock, iv one, proper luer, luer yes
oral | oral one, oral syringe, for oral use, mouth, oral type, by mouth, for mouth, for by mouth, purple, purple one, \
purple plunger, enteral, feeding one, feeding syringe, for feeding, medicine syringe, slip tip, not luer, no thread, \
no threads, not luer lock, for swallowing, mouth one, for feeding tube
all open | open, every one open, they all open, everything open, none closed, all clamps open, every clamp open, no \
clamp closed, none shut, nothing closed, nothing clamped, all of them open, each open, each one open, all unclamped, \
none clamped, no closed clamp, no clamps closed, every last one open, none of them closed, none of them shut, not one \
closed, no closed one, no clamps shut, no clamp shut, nothing shut, all undone, all clamps undone, both open, both \
clamps open, two of them open, all three open, all up, all released, wide open, all wide open, open all way, open all \
way down, clear all way, open from bag to pump, they open, roller and slide open, roller open and slide open
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
something loose | loose, loose connection, one loose, wobbly, came loose, not tight, one not tight, connection loose, \
loose bit, loose there, loose at hub, loose at port, loose at spike, loose joint, loose luer, loose end, joint loose, \
luer loose, hub loose, cap loose, one loose there, wobbles, wobbling, bit wobbly, coming loose, coming undone, coming \
off, come undone, came undone, undone, not tight enough, not screwed in, not screwed tight, not connected right, not \
connected properly, half off, slack, moves about, turns, wiggles, bit loose, little loose, slightly loose, rattles, \
connection loose there, connection wobbly
right line | right one, correct line, correct one, line right, one right, line correct, right all along, right line \
tight, right and tight, proper one, proper line, line is right, line is correct, correct and tight, right line and \
tight, right line no loose, right line nothing loose, right and nothing loose, right one all tight, all tight right \
line, goes to right place, goes to right vein, goes to patient, right all way, right one all way, correct all way, \
right bag right vein, ours, our line, our one, matches, traced to right, good line
wrong line | wrong one, wrong, other line, line wrong, not right line, not right one, different line, different one, \
not ours, not our line, not our one, goes to other drip, goes to other pump, goes to other bag, goes to other \
patient, goes to wrong place, goes to wrong vein, goes elsewhere, another line, not this one, not proper one, not one \
we want, belongs to other pump, mixed up, lines mixed up, lines crossed, incorrect, incorrect line, incorrect one, \
not correct, not correct one, not correct line
loose connection | loose, something loose, loose one, connection loose, connections loose, not tight, one not tight, \
something not tight, came loose, loose joint, loose luer, loose end, joint loose, luer loose, hub loose, one loose \
there, one loose joint, wobbles, wobbly, wobbling, coming loose, coming undone, coming off, come undone, came undone, \
undone, not tight enough, not screwed in, not screwed tight, not connected properly, half off, slack, wiggles, bit \
loose, slightly loose, connection wobbly, right line but loose, right line loose joint, right line one loose
none / some | no air, no bubbles, no air bubbles, bubble free, air free, not a single bubble, not one bubble, nothing \
in, no bubbles at all, no air at all, only fluid, all clear, no bubbles left, free of air, clear of air, nothing, \
clear, all out, air all out, air out, not any, not any air, airless, only liquid, all liquid, all fluid, nothing but \
fluid, not see any, not one, not seen any, zero, no air there, no air left, no air anywhere, no air in there, no air \
to see, no air bubble, no bubble, no bubbles there, no bubbles anywhere, no bubbles in there, nothing there, not a \
bubble, not bubble, not bubble left, not bubble in it, not bubble anywhere, not single bubble, no gaps, no gap, no \
pockets, no air pockets, all fluid no air, clear all way, clear all way down, clear all way along, clear all way \
through, clear all way to tip, clear to tip, clear to end, clear down to end, clear from chamber to tip, clear end to \
end, clear top to bottom, clear from end to end, clear from top to bottom, clear right through, clear right to tip, \
clear right to end, clear right down, clear as bell, solid fluid, solid fluid all way, solid fluid top to bottom, \
full of fluid, fluid all way, fluid all way down, fluid all way along, fluid all way through, fluid from top to \
bottom, fluid end to end, just fluid, just liquid, completely clear, no more air, no more bubbles, got rid of all of \
it, all gone
none | nothing, nothing there, nothing of kind, nothing like that, not any, not one, none at all, nothing at all, no \
such thing
some / none | bubbles, bubble, some air, some bubbles, air, one bubble, a few bubbles, few bubbles, couple of \
bubbles, little air, air bubbles, big bubble, still some, still bubbles, still air, there is some, small bubble, tiny \
bubble, lots of bubbles, lots of air, not all out, pocket of air, air pocket, gap of air, air gap, air left, bubbles \
left, loads of bubbles, air in, bubbles in, foam, not free of air, not clear, see bubbles, see air, bit of air, bit \
air, little bit of air, couple of little ones, couple of small ones, couple of wee ones, found one, found some, found \
couple, found bubble, found few, got bubble, got some, got few, tiny one, one tiny one, small one, one small one, \
little one, one little one, wee bubble, wee one, big one, few tiny ones, few small ones, few little ones, few, \
couple, one or two, two bubbles, three bubbles, two or three, still one, still few, still couple, still little, still \
bit, still bit of air, champagne bubbles, froth, frothy, gap in fluid, gap near top, gap in it, wee gap, little gap, \
break in fluid, string of bubbles, row of bubbles, trail of bubbles, train of bubbles, stretch of air, length of air, \
inch of air, empty bit, one stuck, one bubble stuck, bubble stuck, bubbles stuck, bubbles in line, bubbles in tube, \
bubbles in there, air in line, air in there, air in tube, air at top, bubble near, bubble by, bubble at, bubble \
there, bubbles there, some there, some in there, some bubbles in there, some air in there, spotted one, spotted \
bubble, saw one, saw bubble, saw bubbles
not listed | could not find, could not find there, could not find in there, not in library, not in list, not on list, \
not in there, not found, not find, not listed there, missing from library, missing from list, unlisted, absent from \
library, not there, library not have, list not have, no entry, no such drug, not in drug library, not on menu, not in \
it, not there at all, no sign of it, not on there, no match, nothing comes up, nothing came up, does not come up, not \
come up, did not come up, can not find it, can not find it there, could not find it, missing, not in menu, drug not \
there, drug missing, isn in library, absent, not among them, not on pump, not on screen, not showing, not programmed, \
no result, no results, pump not have it, not have it
an alarm | alarming, alarm, alarms, beeping, beeps, it beeping, alarm going off, went off, bleeping, pump alarming, \
pump beeping, pump alarm, beep, going off, gone off, beeping at me, beeping again, beeps again, alarms again, alarm \
again, alarm back, another alarm, alarming again, red light, flashing, screen red, screen went red, downstream \
occlusion, upstream occlusion, occlusion, shouting, screaming, chirping, pinging, making noise, sounding, ringing
kinked | kink, kinks, bent, twisted, folded, pinched, squashed, knotted, looped, crushed, kink in it, bend in it, \
bend there, bent over, bent double, doubled over, folded over, fold in it, fold, trapped, caught, caught in rail, \
pinched under, squeezed, flattened, flat, crimped, crimp, nipped, kinked up, there kink, got kink, kink under, kink \
near, kink by, kink behind, kink there, kinky, snagged, tangled, tangle, twisted up, twisted round, twist in it, \
under wheel, under bed rail, under arm, lying on it, lying on tubing
loaded wrongly | wrongly loaded, wrong, in wrong, loaded wrong, not loaded right, not loaded correctly, not loaded \
well, in wrong way, wrong way round, misloaded, not seated, not seated right, in backwards, upside down, in crooked, \
crooked, not in right, not in properly, loaded badly, not right in pump, out of channel, not loaded properly, badly \
loaded, put in wrong, put in wrong way, put in wrong way round, put in backwards, wrong way up, wrong way in, back to \
front, not sitting right, not sitting properly, not seated properly, not clicked in, not in channel, not in groove, \
not in its channel, not in its groove, out of groove, popped out, slipped out, come out, come out of channel, half \
in, half out, hanging out, squint, skew, skewed, misaligned, out of line, not lined up, door not closed on it, \
clipped in wrong, crooked in pump, in wrong slot
air | some air, bubbles, bubble, air bubble, air bubbles, air in it, air in line, air there, air in there, bit of \
air, little air, wee bubble, small bubble, tiny bubble, big bubble, one bubble, bubble in it, bubble there, bubble in \
line, bubbles in it, bubbles there, bubbles in line, bubbles in there, few bubbles, couple of bubbles, some bubbles, \
air gap, air pocket, pocket of air, air at top, got bubble, got air, got bubbles, found bubble, found air, found \
bubbles, there bubble, there air, there bubbles, see bubble, see bubbles, see air
plugged in and loud | both, both good, plugged and loud, all good, plugged in and loud enough, plugged in and hear \
it, plugged in and hear it fine, plugged in and hear it well, plugged in and hear it clearly, plugged in and hear it \
loud, plugged in and good volume, plugged in and audible, plugged in and volume up, plugged in loud, plugged in and \
plenty loud, in wall and loud, on mains and loud, loud and plugged in, both fine, both okay, plugged in good and \
loud, plugged in loud and clear, plugged in and hear alarm, plugged and audible
unplugged | not plugged, battery, plug out, running on battery, pulled out, plug is out, plug out of wall, not in \
wall, not in socket, not on mains, not on wall, on battery, battery only, running off battery, running on its \
battery, on its battery, off battery, lead out, lead is out, cable out, cable is out, cord out, cord is out, came out \
of wall, fallen out, fell out, pulled out of wall, come unplugged, came unplugged, lead hanging, plug hanging, plug \
on floor, plug on the floor, battery light on, no mains, not connected to mains, disconnected
hard to hear | too quiet, too soft, quiet, not hear, not loud, barely audible, barely hear, barely hear it, can \
barely hear, can hardly hear, hardly hear, hardly hear it, barely hear thing, can barely hear the thing, can not hear \
it, can not hear it well, not hear it, not hear it well, not hear it properly, not hear alarm, faint, very faint, \
faint sound, too faint, too low, turned down, volume down, volume low, volume too low, volume turned down, volume \
right down, low volume, muffled, soft sound, quiet sound, very quiet, bit quiet, quite quiet, whisper, weak sound, no \
sound, muted, needs turning up, plugged in but quiet, plugged in but too quiet, plugged in but not hear it, plugged \
in but hard to hear, plugged in but faint, plugged in but can hardly hear it, can barely hear it, barely hear the \
thing
held firmly | firm, held, tight, firmly held, both firm, both held, secure, held tight, held tightly, held well, no \
gap, no gaps, no gap at all, gripped, both held firmly, snug, sits firmly, sits tight, not gap, held in, no space, no \
play, held in place, both in place, both clipped in, both gripped, both secure, both snug, both tight, clamped in, \
clipped in, locked in, locked in place, gripped tight, gripped firmly, grips, no movement, no room, no wobble, no \
wiggle, not moving, not move, does not move, will not move, nothing moves, no play at all, nice and firm, nice and \
snug, nice and tight, firm and snug, snug fit, solid, rock solid, flush, flush against, touching, tight up, tight \
against, right up against, seated, seated well, seated properly, sits well, sits right, good and tight, good and \
firm, fits snug, stuck fast, fast
a gap | gap, gaps, space, loose, not held, not firm, not tight, not held firmly, wobbly, gap there, gap between, some \
play, not secure, bit of gap, small gap, wee gap, little gap, tiny gap, slight gap, bit gap, there wee gap, got gap, \
see gap, gap behind, gap at, gap by, gap under, bit of space, little space, some space, space there, space between, \
space behind, bit of play, some room, room there, wiggles, wiggle, wobble, wobbles, moves, moves about, moves bit, \
rattles, slack, slack there, not flush, not touching, not up against, not right up, not seated, not clipped in, not \
gripped, not held in, not tight enough, not snug, come away, sticking out, loose fit, bit loose, little loose, \
slightly loose, millimetre gap, light through, see light between, see daylight, daylight between, finger fits between
level | same level, at same level, level with heart, same height, at same height, level with him, level with her, at \
patient level, at his level, at her level, at level of patient, equal height, at heart level, at bed height, level \
with bed, beside patient, same height as patient, level with patient, as high as patient, same level as patient, same \
height as him, same height as her, same height as bed, same height as heart, same height as arm, at same height as \
patient, at his height, at her height, at patient height, at arm level, at arm height, at heart height, at bed level, \
beside him, beside her, next to him, next to her, in line with patient, in line with heart, in line with him, in line \
with her, even with patient, even with bed, even with him, even with her, dead level, about level, roughly level, \
right level
far above | too high, too high up, way up, way too high, much too high, way above, high above, well above, far above \
patient, high up, up too high, higher than patient, much higher than patient, far too high, a lot higher, much above, \
way up high, up high, up top, right up, right up top, high up on pole, up at top, at top of pole, top of pole, too \
far up, far up, much higher than him, much higher than her, much higher than bed, metre above, metre higher, a lot \
above, lot higher, lot above, above head, above his head, above her head, over his head, over her head, needs \
lowering, needs to come down, has to come down, should be lower, needs bringing down
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
up, nothing new, all gone, gone now, alert gone now, it gone, back to normal, normal screen, home screen, no alert \
now, no warnings, no warning, no alarms, went away, gone away
another alert | second alert, one more alert, new one, more alerts, alert again, next alert, still alert, new \
message, another one, another one up, another one there, another one showing, another one come up, another one came \
up, another message, another message up, another warning, another alarm, one more, one more up, one more alert there, \
one more message, second one, second one up, second one there, second message, new alert up, new alert came up, new \
one up, something else up, something else came up, something else showing, something else there, something new, still \
one, still one there, still one up, still alert there, still alert up, still message, still warning, it back, alert \
back, came back, come back, not clear, not clear yet, not gone, still there, still showing, still up, flashing, more \
of them
nothing | none, nothing at all, says nothing, not say, no message, nothing of that, not show, does not tell, no hint, \
blank, nothing else running, nothing else is, nothing else there, nothing else runs, nothing else in it, nobody else, \
nothing else through it, nothing else on it, nothing else on line, nothing else going, nothing else going through, \
nothing else running through, nothing else connected, nothing else hooked up, nothing else attached, nothing more, \
nothing other, no other infusion, no other drip, no other drug, no other, no others, no piggyback, no second one, no \
second infusion, just this, just this one, just one, only one, only this, this one only, that only one, only thing \
running, only thing on it, single line, single infusion, on its own, alone, by itself, no extras, no mention, not \
mention it, does not mention, says neither, neither, neither one, not either, does not say, does not say where, not \
say where, no word, nothing on it, nothing written, nothing shown
above the pump | above, above it, upstream, upper, above pump, up top, up above, over pump, over it, higher up, bag \
side, on bag side, upstream side, upstream of pump, upstream occlusion, upstream blockage, upstream it says, says \
upstream, between bag and pump, from bag, towards bag, before pump, top side
below the pump | below, below it, downstream, under pump, lower, below pump, down below, under it, beneath, beneath \
pump, underneath, patient side, on patient side, downstream side, downstream of pump, downstream occlusion, \
downstream blockage, downstream it says, says downstream, between pump and patient, towards patient, after pump, past \
pump, lower down
another infusion | other infusion, more, something else running, something else, another drug, another bag, second \
one, one more, second one running, another one running, another running, second infusion running, second one going, \
second drip, second bag, second bag running, another bag running, another drip, another drip running, another one \
going, another line, piggyback, piggyback running, piggyback on it, other one, other one running, other drip, other \
bag, something running, something else going, something else on it, something else connected, potassium running, \
antibiotic running, heparin running, two running, two infusions, two going, y site running, shares it, shared, shared \
with another
on the screen | on screen, see rhythm, rhythm there, showing, visible, shows, displayed, on monitor, there on screen, \
it there, can see it, see it, up on screen, up there, on there, running across, trace there, trace on screen, see \
trace, see rhythm on screen, rhythm showing, showing on screen, showing up, sinus, sinus rhythm, regular rhythm, see \
beats, picking it up, picked up, waves, see waves, green line, tracing, tracing on screen, displaying
there is none | none, nothing, nothing there, no rhythm, no monitor, not connected, blank, nothing on screen, not on \
screen, not see any, no trace, no tracing, no rhythm there, no rhythm showing, nothing showing, nothing showing up, \
flat line, flat, screen blank, screen off, screen dark, blank screen, monitor off, monitor not on, not hooked up, not \
attached, leads off, lead off, no leads, no signal, no monitor here, there is no monitor, none there, nothing at all, \
not picking up
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
elsewhere, goes somewhere else, leads elsewhere, leads somewhere else, wrong line altogether, mixed up, different one \
altogether, some other line, someone else line
it has moved | moved, moves, has moved, moved on, further down, moved down, travelled, has gone down, gone down, went \
down, going down, moved bit, moved a bit, moved little, moved on bit, moved line, moved one line, moved one mark, \
moved mark, moved down bit, moved down line, moved along, moved forward, moving, is moving, moving down, it moving, \
creeping, crept, crept down, crept along, crept on, further along, further on, lower than before, lower now, down \
line, down one line, down bit, shifted, shifted down, shifted bit, slid down, not where it was, not in same place, \
not same place, passed mark, past mark, past line, advanced, changed
where it was | not moved, same place, in same place, unmoved, has not moved, stuck, did not move, still there, not \
move, not moving, not moved at all, same place still, still in same place, same spot, in same spot, same mark, on \
same mark, at same mark, same line, on same line, at same line, has not budged, not budged, not budge, did not budge, \
has not shifted, not shifted, no movement, no change, nothing changed, not moved bit, not moved an inch, not moved \
inch, unchanged, no different, still at same, still on same, still where it was, just where it was, exactly where it \
was, standing, stood still, not going, not gone down, has not gone down, stays where it was, stayed where it was, \
stayed put, stuck there, frozen, motionless, not moving at all
none / a free port | no port, no port free, none free, all taken, all used, not one free, no free one, all full, no \
free port, no ports free, none available, no port available, no port left, all ports taken, all ports used, all ports \
in use, all in use, every port taken, every one taken, each one taken, all occupied, no spare, no spare port, nothing \
free, full up, no room, not one
closed | shut, shut off, closed off, closed up, clamped, clamped off, clamped shut, rolled shut, rolled down, rolled \
right down, rolled all way down, right down, all way down, fully closed, fully shut, tight shut, shut tight, closed \
tight, pinched, pinched off, pinched shut, not open, no flow, nothing getting through, latched, locked
open | opened, undone, unclamped, rolled up, rolled right up, rolled open, wide open, fully open, bit open, slightly \
open, still open, half open, partly open, not closed, not shut, not clamped, not fully closed, not quite closed, left \
open, been left open, someone left it open
in place | still in place, cap on, cap there, cap still there, still there, still on, on there, on it, sitting there, \
sitting on it, sat on it, on tight, on snug, on and tight, nice and snug, it there, cap in position, in position, \
fitted, capped, got its cap, has cap, has its cap, has cap on, got cap on, wearing its cap, where it should be, where \
it belongs, where should be, firmly on, secure, secured, blue cap on, cap seated, seated, clicked on, screwed on, cap \
screwed on, cap tight
missing | gone, off, cap gone, cap off, cap missing, no cap, no cap on, no cap on it, no cap there, without cap, \
without its cap, uncapped, not capped, not got cap, has no cap, not there, not on, not in place, come off, came off, \
fallen off, fell off, cap fell off, cap fallen off, cap come off, cap came off, popped off, dropped off, lost, lost \
its cap, bare, naked, port bare, port open, nothing on it, nothing on end, nothing there, nothing on port, nothing on \
there, not see cap, not find cap, cap not there, cap not on, gone missing, exposed, disappeared
wall power | wall, mains, mains power, wall socket, from mains, from wall socket, from socket, off wall, off mains, \
off socket, plugged in, plugged into wall, plugged into mains, plugged in wall, plugged in at wall, in wall, in \
socket, on socket, on wall, on wall socket, mains light on, plug light on, plug sign, plug symbol, plug icon, green \
light, charging, electric, electricity, outlet, from outlet, ac power, ac, not battery, not on battery, not on its \
battery
its battery | battery, battery power, battery still, off battery, from battery, from its battery, running on battery, \
running off battery, runs on battery, runs off battery, still running on battery, still off battery, battery light, \
battery light on, battery sign, battery symbol, battery icon, unplugged, not plugged in, not on mains, not on wall, \
not on wall power, not in wall, not mains, no mains, no wall power, dc
in its place | in place, in position, in its channel, in its groove, in its slot, in channel, in groove, in slot, \
seated, seated right, seated well, seated properly, well seated, sitting right, sitting well, sitting properly, sits \
right, sits well, where it should be, where it belongs, loaded right, loaded properly, loaded well, loaded correctly, \
in right, in properly, in there right, in there properly, looks good, looks right, looks fine, straight, straight in
pinched | squeezed, nipped, trapped, caught, caught in door, trapped in door, pinched in door, pinched by door, \
pinched there, bit pinched, bent, kinked, kink, folded, fold, flattened, flat, jammed, crimped, pinch, there pinch, \
twisted
out of place | out, came out, come out, has come out, popped out, fallen out, fell out, slipped, slid out, jumped \
out, hanging out, sticking out, half out, half in, not in place, not in its place, not in position, not in channel, \
not in groove, not in its channel, not in its groove, not seated, not seated right, not seated properly, not sitting \
right, not sitting properly, not in right, not in properly, off, off centre, misplaced, moved out, out of channel, \
out of groove, out of position, crooked, squint, wrong place, in wrong place, in wrong, loaded wrong
the battery | battery low, low battery, battery flat, battery dying, battery nearly flat, battery going, battery \
empty, battery warning, battery alarm, battery sign, battery light, battery running out, battery running low, flat \
battery, needs charging, needs charge, power, power low, low power, needs plugging in, not plugged in, unplugged, its \
battery, for battery, because of battery
the door | door open, door ajar, door not shut, door not closed, door not latched, door not closed properly, door is \
not shut, door is not closed, door unlatched, door alarm, door warning, door sign, open door, door came open, door \
popped open, latch, latch open, latch not closed, for door, because of door, not shut properly
the end of the infusion | infusion end, infusion over, infusion done, infusion finished, infusion complete, infusion \
has ended, infusion has finished, end of infusion, run through, bag empty, bag done, bag finished, volume given, \
volume infused, volume complete, all infused, it over, vtbi done, vtbi complete, drip finished, drip done
both level | same level, same height, both same, both same height, both at same height, both at same level, both same \
level, level both, both even, even, evenly, equal, equal height, side by side, neither, neither higher, neither one \
higher, neither one, no difference, alike, side by side same height, at same height, at same level, same
quiet | nice and quiet, all quiet, quiet yes, silent, no sound, no noise, no beep, no beeps, no beeping, no alarms, \
not alarming, not beeping, not making sound, not peep, not sound, no peep, running quietly, runs quietly, quiet as \
mouse, running fine, running well, running nicely, running no alarm, humming away, humming, calm, stays quiet, stayed \
quiet, still quiet
"""
"""Each alternative and its ways; behind a stroke, the alternative that stands beside it where that matters."""
