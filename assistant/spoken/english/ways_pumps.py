"""How people say what is seen and heard of pumps, chambers and displays, as patterns in English: see `choices`."""

PATTERNS = """
running quietly = {running|runs|going|ticking|humming|infusing|working} {fine|well|nicely|smoothly|quietly|along|\
away|no problem|no noise|and quiet|and no alarm|no alarm|with no alarm|without alarm|without a sound|as it should|\
normally|along nicely|away fine|steadily|and no beeping|no beeping|and green light|as normal|happily|with no noise|\
along quietly|grand}, {not|no|without|never|nothing} {alarming|alarm|alarms|beeping|beep|beeps|sound|noise|peep} \
{and running|just running|and it is running|it runs|and it runs|it is running|running fine|and running fine}
    {pump|it} {is running|runs|is going|is infusing|keeps going|is on and running|is humming along|is happily \
running|is ticking over|still runs|is working} {fine|well|nicely|quietly|smoothly|no alarm|no alarms|with no alarm|\
and quiet|without a sound|no beeping|normally|with green light|away|along|}
alarming = {pump|it} {is|keeps|started|has started|has been|went|goes} {alarming|beeping|bleeping|sounding|ringing|\
flashing|flashing red|making a noise|screaming|screeching|shouting|chirping|buzzing|crying|making noise|beeping at \
me|going off|giving an alarm|red and beeping} {now|again|at me|loudly|like mad|}, {alarm|an alarm|red alarm|the \
alarm} {is on|on|going|is going|sounding|is sounding|rings|is ringing|sounds|has gone off|went off|is up|showing|\
came up|on screen|on display|started|again}, hear {alarm|an alarm|beeping|a beep|it beeping|the alarm}
stopped = {pump|it} {is|has|got|just} {stopped|off|paused|not running|standing still|standing|on hold|switched off|\
turned off|on standby|gone off|come to a stop|halted|not going|at a standstill|gone dead|not infusing|stopped \
running|turned itself off|stopped itself|dead|stopped dead|idle} {now|by itself|on its own|altogether|completely|}, \
{not|no longer|does not|nothing} {running|going|run|infusing|moving|run at all|infusing now|running now|running at \
all|running any more|moves|runs|drips|infuses|delivering}
the secondary / both level = {only|just|it is only|it is just|it is|} {small|little|wee|top|piggyback|secondary|\
antibiotic|smaller|upper|higher|drug} {bag|one|chamber|drip|} {only|is higher|higher|hangs higher|is above|is up \
higher|is on top|sits higher|is the higher one|hung higher|is hanging higher}
the secondary / neither = {only|just|it is only|it is just|it is|} {small|little|wee|top|piggyback|secondary|\
antibiotic|smaller|upper|higher|drug} {bag|one|chamber|drip|} {drips|dripping|is dripping|running|is running|going|\
is going|is the one dripping|moves|has drops|on top dripping|on top is dripping|up top dripping|only}
    {drops|drips|dripping} {only|just} {in|from} {small|secondary|little|wee|piggyback} {bag|one|chamber}, {primary|\
main|big|large} {bag|one|chamber|} {stopped|is stopped|is still|stands still|is standing still|not dripping|is not \
dripping} {and small one drips|and secondary drips|and little one drips|and small one is dripping|and secondary is \
dripping}
the primary / both level = {only|just|it is only|it is just|it is|} {big|large|main|primary|maintenance|bigger|\
larger|bottom|lower} {bag|one|chamber|drip|} {only|is higher|higher|hangs higher|is above|is up higher|sits higher|\
is the higher one|hung higher|is hanging higher}
the primary / neither = {only|just|it is only|it is just|it is|} {big|large|main|primary|maintenance|bigger|larger|\
bottom|lower} {bag|one|chamber|drip|} {drips|dripping|is dripping|running|is running|going|is going|is the one \
dripping|moves|has drops|only}
    {drops|drips|dripping} {only|just} {in|from} {big|primary|main|large} {bag|one|chamber}, {secondary|small|\
little|piggyback|wee} {bag|one|chamber|} {stopped|is stopped|is still|stands still|is standing still|not dripping|\
is not dripping} {and big one drips|and primary drips|and main one drips|and big one is dripping|and primary is \
dripping}, {big|main|large|primary} {bag|one|} drips and {small one is still|little one is still|small one is \
stopped|secondary is still}
both = both {of them|bags|chambers|one|} {drip|dripping|are dripping|running|are running|going|are going|drip away|\
are dripping away|dripping away|drip together|at same time|at once|at the same time|move|drip at once|drip at the \
same time}, {drops|dripping|drips} in {both|each|both chambers|each chamber|each one|the two of them|both of them}, \
{each|the two|both the two} {drips|one drips|is dripping|of them drip|are dripping|of them are dripping|one is \
dripping|chamber drips|chamber is dripping}, {small|big|primary|secondary} and {big|small|secondary|primary} {both \
drip|both dripping|are both dripping|are dripping|drip}
neither = {neither|neither one|neither of them|none|nothing|no chamber|not one|neither chamber|neither bag|none of \
them|no drip|no drops|no drop|not a drop|not a drip} {drips|dripping|is dripping|moves|moving|running|is running|is \
going|going|falls|falling|coming|is moving|} {in either|in either one|in either of them|in either chamber|at all|\
from either|nothing moves|in both|in them|in any|in one or other|}
    {both|they both|they are both|both have|both of them|both chambers} {stopped|still|standing still|dry|are still|\
are standing still|not dripping|stand still|are stopped|have stopped|dead still|are not dripping|quiet|are dead|are \
motionless|idle|motionless}, {not|nothing} {either|either one|either of them|in either|drips in either|moves in \
either}
both level = {both|they are|they|both bags|bags|two} {level|same height|at same height|same level|at same level|on \
same level|equal|even|hang level|hang the same|equally high|at the same height|the same height|at the same level|\
hang at same height|hang at the same height|just as high|are the same height|are at the same height|are level|hang \
side by side|are even|are side by side|the same}, {neither|neither one|none} {higher|is higher|hangs higher|of them \
higher|is any higher|of them is higher|above the other}, {level|even} with {each other|one another}, {no|not any} \
{difference|higher one} {in height|between them|}, {same|equal} {hook|height|level} {both|for both|the two|}
level = {about|roughly|right|pretty much|just about|it is|at|} {same|the same|equal} {height|level} {as|with} \
{patient|the patient|him|her|bed|the bed|his heart|her heart|heart|his arm|her arm|his chest|her chest|site}, \
{level|even|in line|flush} with {patient|the patient|him|her|bed|the bed|heart|his heart|her heart|his chest|her \
chest|his arm|her arm|mattress|site|the heart|his shoulder|her shoulder}
    {at|on} {his|her|patient|the patient's|patients|the patients|bed|heart|chest|same|mattress|arm} {level|height}, \
{not|neither} {higher or lower|above or below|higher nor lower|above nor below|too high or too low|too high nor too \
low} {than him|than her|than patient|him|her|patient|}, {right|just} {beside|next to|by|alongside} {him|her|patient|\
the patient|the bed|bed}
far above = {far|way|high|well|much|metre|a metre|half a metre|lots|a good bit|right up|miles|too far|too high|a \
foot|two feet} {above|over|up above|higher than|above the} {patient|him|her|the patient|bed|the bed|his head|her \
head|his heart|her heart|head|heart|his arm|her arm|}, {higher|a lot higher|way higher|far higher|much higher|too \
much higher} than {patient|the patient|him|her|bed|the bed|his head|her head|his heart|her heart}
    {too|way too|far too|much too|very|up} high {up|on pole|on the pole|above him|above her|above patient|for him|\
for her|for patient|on the stand|on stand|}, up {on top|at top|near top} {of pole|of the pole|of stand}
plugged in and loud = {plugged in|in wall|in the wall|in socket|in the socket|on mains|on wall power|in outlet|in \
the outlet|plugged|plug is in|plug in|plugged into wall|connected to mains} {and|with|} {loud|loud enough|loud and \
clear|hear it|i hear it|hear it well|can hear it|can hear it well|i can hear it well|can hear it fine|can hear it \
loud and clear|can hear it loudly|hear alarm|can hear the alarm|hear it fine|hear it loud|audible|sound is good|\
sound is loud|volume is fine|volume is up|volume good|volume up|sound on|alarm is loud|alarm loud|sounds loud|nice \
and loud|plenty loud|volume high|i can hear it from here|it is loud|it is loud enough|good volume|can hear it \
clearly|good and loud|sound is fine}
    {loud|loud enough|hear it well|can hear it|volume is up|sound is good} and {plugged in|in wall|in the wall|on \
mains|in socket|plugged|in the socket}
unplugged = {it is|plug is|cable is|cord is|lead is|pump is|somebody|someone|plug|cable|lead|cord|it|} {not plugged \
in|not plugged|out of wall|out of the wall|out of socket|out|hanging out|hanging|on floor|on the floor|pulled out|\
has come out|fell out|come out|came out|not in|not in wall|not in the wall|not in socket|unplugged it|pulled it out|\
off the mains|off mains|not on mains|running on battery|on battery|on battery power|on its battery|has been pulled|\
not connected|lying on the floor|lying on floor|loose from wall|not in the socket}
hard to hear = {can|i can|you can|} {hardly|barely|scarcely|not|not really|only just} {hear|make out} {it|beep|the \
beep|alarm|the alarm|sound|the sound|it at all|it from here|anything|it properly|it over the noise|the pump|that}, \
{too|very|really|bit|rather|so|pretty|awfully} {quiet|faint|soft|low|weak|dull|muffled} {to hear|alarm|sound|the \
alarm|for me|}
    {volume|sound|alarm|beep|speaker} {is low|is too low|is down|turned down|is turned down|low|down|too low|too \
quiet|is quiet|is faint|too soft|is too soft|faint|is very quiet|is muffled|is off|is weak|right down|is barely \
there|is too quiet|could be louder}, {not|is not|isn't} {loud|loud enough|loud at all|audible|very loud|that loud|\
easy to hear}
held firmly = {plunger|flange|it|both|they|syringe|all|everything} {is|are|sits|sit|is held|are held|feels|is \
sitting|is gripped|gripped} {firmly|firm|tight|snug|tightly|secure|well|snugly|in place|fast|held|held tight|held \
firm|held firmly|clipped in|clamped|right up|tight against|locked|locked in|flush|gripped|solid|tight in|securely|\
properly held|right against the driver|tight up against it|in the clamp|well seated}, {no|not any|not a|there is no|\
nothing|not even a} {gap|gaps|space|play|room|movement|wobble|slack|daylight|wiggle|gap between|space between} \
{between them|at all|there|in it|anywhere|between|behind it|at plunger or flange|to see|to feel|either side|}
    {does not|will not|it will not|can not|not} {move|wobble|budge|wiggle|shift|rattle|give|slide} {at all|when i \
push it|when i touch it|a bit|an inch|}, {firm|tight|snug|secure} {all round|both ends|on both|at both ends|top and \
bottom|everywhere|and flush|in holder|against it|no gap|no space|no play|with no gap}
a gap = {see|got|feel|there is|is|can see|have|can feel|left|with|still} {a|some|small|a small|wee|a wee|tiny|a \
tiny|little|bit of a|a bit of|big|a slight|a little} {gap|space|room|play|slack|daylight|movement|wobble} {between|\
there|behind it|behind plunger|at flange|at plunger|by flange|by plunger|between them|in it|between plunger and \
driver|between the two|below plunger|behind flange|between flange and clamp|}, {plunger|flange|it|syringe|one end} \
{is loose|loose|moves|wobbles|rattles|wiggles|is not held|not held|is not tight|not tight|is not firm|not held \
firmly|is not held firmly|is not seated|not seated|is sticking out|sits loose|sits loosely|is not in|not in|is not \
clipped in|is slack|slips|slides|moves about|is not gripped|has a gap|has some play|has play|is not touching|does \
not touch|not touching|does not sit right|is not right up}
clear = {no|not any|not another|not a|nothing|no more|no other|no further} {alert|alerts|alarm|alarms|message|\
messages|warning|warnings|on it|on screen|on display|on it now|else on it|else there|else up|else on screen|showing|\
else showing|else on display|new|more on it} {now|left|there|at all|up|on it|any more|}, {display|screen|it} {is \
clear|clear|is blank|is empty|is clean|clear now|all clear|is all clear|is back to normal|is normal|cleared|has \
cleared|back to normal|is clear now|has gone clear|went clear|shows nothing|shows nothing else|shows no alert|shows \
nothing more}, {alert|message|it|alarm|warning|they} {is gone|has gone|gone|went|went away|has cleared|cleared|has \
gone away|is gone now|is off the screen|are gone|all gone|are all gone}
another alert = {another|a new|one more|a second|next|a different|second|still a|still an|there is another|yet \
another|some other|a further|new} {alert|alarm|message|warning|one} {there|on it|up|now|came up|on screen|on \
display|showing|popped up|has come up|flashing|on the screen|just came|is up|has popped up|is there|}, {not|it is \
not|is not|still not} {clear|gone|cleared|clear yet|gone yet|blank|empty|cleared yet|quite clear}, {still|there is \
still} {alarming|beeping|an alert|a message|something|one|showing|flashing|an alarm|one more|a warning|something \
there|something on it|something showing|one showing} {there|on it|up|on screen|on display|}, {something|a thing} \
{else|new|more} {on it|there|up|came up|showing|on screen|popped up|flashing|on display}
above the pump = {somewhere|it is|is|it|says|that is|blockage is|occlusion is|block is|message is|} {above|upstream|\
upstream of|before|ahead of|over|above of|on the bag side of|between bag and} {pump|the pump|it|side|from pump|} \
{it says|then|somewhere|occlusion|blockage|the message says|}
below the pump = {somewhere|it is|is|it|says|that is|blockage is|occlusion is|block is|message is|} {below|\
downstream|downstream of|under|beneath|after|past|on the patient side of|between patient and|underneath|beyond} \
{pump|the pump|it|side|from pump|} {it says|then|somewhere|occlusion|blockage|the message says|}
nothing / above the pump = {it|message|display|screen|pump|that|} {does not|not|doesn't|never} {say|tell|say where|\
tell me|say which|mention it|mention either|say above or below|say either|show|specify|say where it is|tell me \
where|tell you where|give a place|say anything about it|say one or the other|say above or below pump|show where|\
name a place|tell us where}, {no|not a|not any|neither} {word|mention|hint|clue|sign|place|word on it|mention of \
either|place named|indication|above nor below|above or below} {of it|about it|where|about where|there|on it|}
nothing / another infusion = {nothing|not anything|no one} {else|other|more} {running|runs|on it|on this line|\
through it|connected|attached|hooked up|going|going through|in it|through this line|there|goes through it|going \
through it|runs through it|running through it|plugged in to it|on the line|running here|on there|joined to it}, \
{line|this line|it} {is free|free|is on its own|is clear of others|runs alone|is alone|is just for this|is only for \
this|is only this one|has only this|has just this|carries only this|is empty otherwise|is dedicated|is all for this|\
nothing running|nothing runs|has nothing else|has nothing else on it|is unused}
    {no|not any|without} {other|second|further|piggyback|extra} {infusion|drug|bag|infusions|one|drip|running|on it|\
drugs|bags|line|lines|fluid|pump|thing} {running|on it|there|here|on this line|connected|through it|through this \
line|attached|going|}, {just|only} {this|this one|one|the one|ours|our one|this infusion|this drug|one infusion|\
this bag|the one bag} {running|runs|here|there|on it|in it|through it|goes through it|on this line|}
another infusion = {an|another|a second|one more|other|a|still an|still a|also an|also a|some other|a different|\
second|one other|there is an|there is a} {antibiotic|infusion|drug|bag|drip|piggyback|one|potassium|pump|heparin|\
fluid|line|saline|medicine|insulin|maintenance|secondary} {running|runs|still running|still going|going|going \
through|going through it|running through it|on it|still on it|connected|attached|hooked up|through it|through this \
line|still going through it|on this line|as well|too|there|runs too|in it|is running|is still running|is going|is \
connected|joined in|y'd in|at the y site|also running|running alongside}
    {something|one thing} {else|other|more} {runs|is running|running|on it|goes through it|going|there|connected|\
still going|hooked up|is on it|is connected|is going through it|is still running|runs through it|runs through|\
attached|going through it}
on the screen = {see|can see|have|got|there is|shows|showing|i have|there} {a|his|her|good|nice|patients|the|clear|\
steady|regular} {rhythm|trace|tracing|line|sinus rhythm|heart rhythm|ecg|waves|beats|beat|complexes|heartbeat} {on \
it|on screen|on monitor|there|running across|running|going across|on the screen|on there|up|it is running across|it \
runs across|moving across|on the monitor|}, {rhythm|trace|ecg|it|tracing|heart rhythm|heartbeat} {is on|is up|is \
there|runs|is running|is showing|is displayed|is visible|shows|shows up|on screen|comes up|is on screen|is on it|is \
on monitor|is on the monitor|is tracing|is going across|goes across|is running across|is coming through|up on it|up \
and running|is up there|there on screen} {the screen|monitor|the monitor|screen|now|well|fine|clearly|there|}
there is none = {no|not any|not a|nothing|not see a|not see any|without} {rhythm|trace|tracing|monitor|ecg|signal|\
line|leads|heart monitor|rhythm to see|trace to see|waves|heart rhythm|rhythm at all|beats} {on it|on screen|on \
monitor|there|showing|at all|up|here|on the screen|connected|on him|on her|attached|on there|in the room|on patient|\
}, {screen|monitor|display|it} {is blank|blank|is off|off|is empty|is dark|empty|is black|black|shows nothing|is \
flat|is not on|not on|is not connected|not connected|switched off|not hooked up|has nothing on it|is dead|is not \
attached|not attached|is not showing anything|has no rhythm|is not there|has not got a rhythm|is unplugged}
it has moved = {it|stopper|plunger|mark|that} {moved|has moved|is moving|moves|went|has gone|crept|has crept|slid|\
shifted|has shifted|advanced|has advanced|has slid|travelled|came|has come|dropped|has dropped|is creeping} {about|\
by|down|on|along|a bit|forward|further|further down|bit|little|a little|slightly|past|a millimetre|one mark|a mark|\
two marks|a line|one line|half a mark|half a mil|one mil|one millilitre|a mil|a notch|down a bit|on a bit|down a \
line|down by a mark|a tad|a touch|just a bit|by a mark|by one mark|by a line|a wee bit|down slightly|about one mil|\
about a mil|about half a mil|about a mark|about one mark|to the next mark|to next mark|past the mark|past it|\
forward a bit|a good bit}
    {not|no longer|isn't} {where it was|at the same mark|at same mark|in same place|in the same place|same place|at \
its old mark|at the mark|the same}, {lower|further|further down|further on|past} {than before|than it was|now|the \
mark|that mark|}
where it was = {it|stopper|plunger|that} {is|stands|sits|stayed|stays|remains|is standing|is sitting|has stayed|is \
stuck|stood|rests|is still} {where it was|exactly where it was|right where it was|still where it was|just where it \
was|at same mark|at the same mark|in same place|in the same place|at same place|in same spot|in the same spot|still \
at same mark|put|unmoved|still at the same line|on the same mark|on same line|on the same line|where i left it|as \
before|the same|at the same line|at the mark|unchanged|as it was|same as before|there}, {exactly|right|just|still|\
precisely} {where it was|same place|same spot|same mark|the same place|the same mark|the same spot|where it was \
before|on same mark|where i left it|on the same line|at the same mark|in the same place|at the same line}
    {not|has not|did not|does not|never|hasn't|no} {moved|budged|shifted|moving|moved at all|moved a bit|budged an \
inch|gone anywhere|move|budge|move at all|shift|change|moved an inch|moved a hair|moved a millimetre|moving at all|\
movement at all|movement there|moved any|gone down|gone down at all|changed|moved one bit|moved yet|moved since|\
going anywhere}
wall power = {it|pump|} {is|runs|running|is running|still|works|goes|is working|} {on|from|plugged in to|plugged \
into|connected to|hooked up to|plugged in at} {wall|mains|wall power|mains power|the mains|the wall|socket|the \
socket|outlet|wall socket|the wall socket|the outlet|ac|electricity|plug|wall outlet|the plug}, {plug|plug symbol|\
mains light|plug sign|green plug|green light|mains sign|power light|charging light|plug light|wall light} {is on|on|\
is lit|lit|showing|shows|is showing|is in|in|is in wall|in wall|is in the wall|is up}, {it is|} plugged in {and \
charging|and green light|now|again|at wall|fine|}, {not|no longer} {battery|on battery|on its battery|running on \
battery|on the battery}
its battery = {it|pump|} {is|runs|running|is running|still|works|still runs|is still|is working|still running|is \
still running} {on|from|using} {battery|its battery|own battery|its own battery|the battery|battery power|battery \
only|battery still} {not plugged in|unplugged|and not plugged in|not on wall|not wall power|only|still|}, {battery|\
battery symbol|battery light|battery sign|battery icon} {is on|on|is lit|lit|showing|shows|is showing|is up|is \
flashing|flashing}, {not|is not|isn't|nobody} {plugged|plugged in|in wall|in the wall|on wall|on mains|on the mains|\
connected to wall|plugged it in|plugged in yet|on wall power|in the socket|plugged into wall|plugged into the wall},\
 {plug|cable|cord|lead} {is out|out|not in|is not in|on floor|is on floor|is hanging|is on the floor|is not in the \
wall|not in wall|is not plugged in|has come out}
in its place = {set|it|tubing|tube|line|all|everything} {is|sits|is sitting|lies|is seated|looks|is lying|fits} {in \
its place|in place|right|properly|well|straight|in channel|in its channel|in groove|where it should be|where it \
belongs|in its groove|nicely in place|properly in place|in right|seated properly|nicely seated|correctly|flat in \
channel|in the channel|in its track|as it should|snug in its channel|in the right place|all in place|neatly in its \
channel|snug|nicely}, {not|neither} {pinched or out|out of place|pinched or out of place|pinched nor out of place|\
out of place or pinched|pinched not out of place|pinched and in place}
pinched = {set|it|tubing|tube|line|a bit} {is|got|has|looks|has got|has been|is being|gets} {pinched|squashed|\
crushed|trapped|caught|nipped|squeezed|flattened|jammed|bent|folded|kinked|stuck|pinched flat|flat|squashed flat|\
crimped|been pinched|been crushed|caught up|trapped in the door|caught in door} {in door|by door|in the door|by the \
door|at one spot|at top|at bottom|there|in one place|under the door|at one place|}
out of place = {set|it|tubing|tube|line|a bit|one end} {is|has|hangs|sits|came|slid|slipped|popped|jumped|fell|is \
hanging|is sticking|sticks|is sitting|has come|has slipped|has slid|has popped|has jumped} {out|out of place|out of \
its channel|out of the channel|out of groove|not in place|not in its place|loose|not in channel|crooked|not in \
right|off|beside it|wrong|squint|not in its channel|out of it|out of pump|out of the pump|slipped out|come out|off \
to one side|outside its channel|out of its groove|beside the channel|beside its channel|popped out|half out|out a \
bit|out of position|wrongly}
the battery = {battery|its battery|pump battery} {is|is getting|is running|is nearly|is almost|has gone|has run|\
nearly|almost|getting|running|} {low|flat|dead|empty|out|down|dying|weak|gone|going flat|running low|running out|\
running down|nearly flat|nearly empty|almost dead|almost flat|needs charging}, {low|flat|dead|empty|weak} battery \
{it says|alarm|alert|message|warning|symbol|light|}, {pump|it|battery} needs {charging|plugging in|to be plugged in|\
a charge}, {out of|low on|short of|running out of|no more} {power|battery|charge|juice}
the door = {door|pump door|its door|the little door} {is|came|has come|popped|left|is left|was left|is still|still|\
has popped|has been left|is a bit} {open|ajar|unlatched|left open|undone}, {door|pump door|its door} {is not|was \
not|not|is still not} {shut|closed|shut properly|closed properly|latched|fastened|shut right|closed right|quite \
shut|quite closed|latched properly|shut all the way}, {open|unlatched} door {it says|alarm|alert|message|warning|}, \
{did not|forgot to|not|have not|i did not} {close door|shut door|close the door|shut the door|closed the door|shut \
the door properly|latch the door|latch it|close door properly}
the end of the infusion = {infusion|it|bag|volume|drip|everything} {is|has|} {finished|over|done|ended|complete|\
completed|through|run through|run in|at its end|at the end|run out|infused|gone in|all in|all gone in|come to an \
end|empty|run dry|reached|been given|finished running} {it says|now|that is why|}, {end|end of|completion of|finish \
of} {of infusion|infusion|it|the infusion|of the infusion|of the bag|of volume} {it says|reached|alarm|alert|\
message|}, {finished|run|ran} {infusing|dry|out|through|its course|the volume}
quiet = {pump|it|all|everything} {is|stays|stayed|runs|has been|is still|has stayed|keeps|is nice and} {quiet|\
silent|quietly|calm|running quietly|all quiet|nice and quiet|still quiet|peaceful|running and quiet|quiet the whole \
minute|quiet all the time}, {no|not a|not one|not any|nothing|without a|not even a} {alarm|beep|sound|noise|peep|\
alarms|beeps|beeping|whisper|bleep} {at all|from pump|from it|for a minute|in that minute|the whole minute|so far|\
out of it|all minute|since|heard|from the pump|for the whole minute|}, {not|did not|has not|never} {alarming|\
beeping|beeped|alarmed|alarm|beep|made a sound|beep once|beeped once|make a sound|make a peep|alarmed once|alarm \
once|gone off|alarmed again}
an alarm = {pump|it} {is|keeps|started|has started|has|went|goes|is still|just started|} {alarming|beeping|bleeping|\
sounding|ringing|alarms|beeps|alarmed|beeped|screaming|flashing red|alarming again|beeping again|beeped again|\
alarmed again|going off|going off again|off again|gone off|gone off again|shouting} {now|again|at me|after half a \
minute|loudly|twice|once|}, {an|another|the|one|same|the same|that} alarm {again|now|is on|went off|sounds|sounded|\
came up|came|has gone|is going|rings|came on|is back|just went|has gone off|is sounding|came back}, heard {a beep|\
an alarm|it beep|it alarm|the alarm|beeping|beeps}
"""
"""By the alternative: patterns of ways to say it; behind a stroke, the alternative that stands beside it."""
