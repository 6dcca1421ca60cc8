"""How people say what is seen of bags, lines and clamps, as patterns in English: see `choices`."""

PATTERNS = """
none / some = {no|not any|not a|not one|zero|not a single|no sign of|no more|nil|without} {air|bubble|bubbles|air \
bubbles|gap|gaps|trace of air|speck of air} {in it|in line|in set|in tube|in tubing|in there|there|left|anywhere|at \
all|to see|along it|along the line|inside|all way|to be seen|either|whatsoever|}
    {not|not see|not find|not spot|never saw} {any|a|a single|one} {air|bubble|bubbles|air bubble|of it} {in it|in \
line|in set|there|anywhere|at all|in syringe or line|in line or syringe|inside|}
    {clear|all clear|solid fluid|full of fluid} {all way|all the way|all along|right|right through|right down|right \
to|down to|up to|from|end to end|top to bottom|the whole way|the whole length|the length of it|from one end to \
other} {down|along|through|to end|to tip|to patient|to his arm|to her arm|to arm|to his hand|to the needle|to the \
end|chamber to tip|top to bottom|end to end|}
    {air|it|bubbles|every bubble} {is out|all out|is all out|are all out|all gone|are gone|is gone|has gone|are all \
gone|has all gone|is free of air|free of bubbles|is air free|is bubble free|is clear of air}, {only|just|nothing \
but|all} {fluid|liquid|saline|water|drug|solution} {in it|in there|in line|inside|all way|}, {line|set|tube|tubing|\
syringe and line|both} {is free of air|free of air|clear|are clear|is clear|bubble free|air free|are free of air|\
completely clear}
some / none = {a|one|some|a few|few|couple of|two|three|several|little|small|tiny|wee|big|one big|one small|a tiny|\
loads of|lots of|a couple of|one little|one wee|one tiny|a big|small|still a|still some|still} {bubble|bubbles|air|\
air bubble|air bubbles|gap|pocket of air|air pocket|ones} {in it|in line|in set|in there|there|left|stuck|stuck \
there|near top|near tip|near port|near end|halfway|halfway down|half way|in middle|at top|by pump|by port|at port|\
floating|down there|up there|in the tube|in the tubing|to get out|}
    {saw|spotted|found|see|can see|got|notice|have} {a|one|some|few|two|couple of|a few|a wee|tiny|a tiny} {bubble|\
bubbles|air|gap|air bubble} {there|in it|in there|in line|near top|near tip|halfway|near port|}, {not|not all|not \
quite} {air|clear|free of air|out|gone|bubble free|air free} {out|gone|yet|}
    {bubble|bubbles|air} {in it|in there|in line|in set|in tube|stuck|stuck at port|stuck at top|left|still there|\
still in it|moving|going along|at top|at the top|by tip|by port|near end|near patient}
fits the bag = {it|that|volume|number|figure|amount|this} {fits|fits bag|fits fine|fits in|matches|matches bag|\
agrees|agrees with bag|is right|is in bag|goes with bag|suits bag|is covered|is what is there|is what is in there|\
equals what is left|corresponds|is what is left|is what bag has} {}
    {matches|same as|equals|agrees with|equal to|just|exactly|exactly the same as|fits|fits with|that is} {what is \
in there|whats in there|what in there|what is left|what is left in bag|what is in bag|what bag has|what bag holds|\
the bag|bag volume|contents|what is there|bag contents|what i see in bag}
    {bag|it} {has|holds|has got|still has|still holds} {enough|that much|that|more than that|all that|plenty|just \
that|exactly that|the same|enough for it|plenty for it}, {enough|plenty} {in bag|in the bag for that|in it|there} \
{for that|for it|}, {not|does not go} {too much|more than bag|over|over bag|over what is left}
    {same|right|correct|proper} {amount|volume|number} {as bag|as in bag|as the bag|for bag|for the bag|as what is \
left|}
too much = {it is|that is|is|set|that|} {more|higher|bigger|larger|greater} than {bag|the bag|bag holds|bag has|bag \
contains|what is in bag|what in bag|whats in bag|what is left|whats left|what left|is in bag|is left|in there|what \
is in there|whats in there|what is there|what we have|we have|the bag holds|contents|left in bag}
    {too much|far too much|way too much|bit too much|too many} {for bag|for it|for that bag|for this bag|mils|by \
fifty|by a lot|by far|for what is left|set|volume|}, {bag|it} {only has|only holds|has only|holds only|has less|\
holds less|does not hold that|does not have that|is too small|does not have that much|does not hold that much|has \
not got that much|will run dry first|runs out first|will be empty before|not hold that much|not have that much|can \
not hold that|can not cover it}
    {not|does not|it does not} {fit|fit bag|fit the bag|fit in|fit in bag|match|match bag|enough in bag|enough \
fluid|enough left in bag|that much left|that much in it|that much in bag|that much there|that much in there}, {over|\
exceeds|beyond|above} {bag|what is left|what bag has|what bag holds|what is in bag|the bag|contents|the bag volume|\
what is in there}
    {set|put|typed} {too much|too high|too many|more than there is|too much in}, {less|not as much} {in bag|left|in \
it} {than that|than set|than we set|than i set|than asked}
too little / too much = {it is|that is|is|set|that|} {less|lower|smaller|fewer} than {bag|the bag|bag holds|bag has|\
bag contains|what is in bag|what in bag|whats in bag|what is left|whats left|is in bag|is left|in there|what is in \
there|whats in there|what is there|what we have|we have|what we need|needed|we need|it should be|the contents|half \
a mil an hour}
too little = {not|never|it is not|will not be|would not be|won't be} {enough|nearly enough|anywhere near enough|\
going to be enough|sufficient|quite enough|going to last|plenty} {left|in bag|in it|there|for it|to finish|to last|\
for that|for the volume|}, {not|will not} {last|cover it|do|reach|stretch|finish it|see it out|make it}
    {hardly|barely|scarcely} {any|anything|a drop|any urine|any wee|any pee|a trickle|any there|any in bag} {in it|\
in there|in bag|there|at all|left|to see|coming|out|}, {very|too|only a|just a|far too|only} {little|small amount|\
trickle|few drops|drop|small|few mils} {in it|in bag|in there|there|urine|coming|out|of urine|}
    {not much|not a lot|not many mils|not enough} {in it|in bag|in there|there|at all|urine|out|coming|wee|pee|\
output|of it|left|being passed}, bag {has|holds} {too little|not enough|hardly any} {for it|left|in it|}
    {output|urine|urine output} {is low|low|is poor|poor|too low|dropped|is down|has dropped|is scant|scanty|is too \
little|is next to nothing|is not enough|very low}, {bag|it} {too small|will run out|runs dry first|runs out before|\
will run out before|will run dry}, {no|not any} {urine|urine output|output|wee|pee} {at all|since morning|}
enough = {has|holds|still has|still holds|there is|got|has got} {enough|plenty|lots|loads|more than enough|ample} \
{left|in it|in there|in bag|in each|in both|to last|for it|for that|for the round|}, {bag|both|all|they|each|it|\
both bags|all bags|they all|they both} {will last|lasts|last|is enough|will do|are enough|have enough|has enough|\
holds enough|will see me through|will be fine|is full enough|covers it|cover it|covers the volume|will hold out|\
will last fine}
    {enough|plenty|lots|loads} {in it|left|there|in there|in each|in both|in bag|for now|to last|to last me|to go \
on|to finish|to cover it|for that|of urine|of output|urine|output|coming|of wee|of pee|of it|to see me through} \
{till next round|until next round|till i am back|till i am back round|till i come back|until i come back|till then|\
for the hour|for the next hour|}
    will {last|do|see me through} {till next round|until next round|till i am back|till my next round|till i come \
round again|the hour|till i come back|fine|easily|}, {good|decent|plenty of|healthy|fine|normal|great|nice} {output|\
urine|urine output|amount|amount of urine|flow of urine|amount left|level|levels|wee|level in each|levels in both}
    {no|not any} {bag|one} {low|nearly empty|near empty|running out|close to empty|running low}, {none|neither} \
{low|nearly empty|running low|running out|near empty|getting low|close to empty}, {peeing|passing|passes|pees|\
weeing} {enough|well|plenty|fine|a good amount|lots|normally}
nearly empty = {that one|this one|one|small one|big one|first one|second one|left one|right one|one bag|it|a bag|\
this bag|that bag|small bag|the small bag|main bag|big bag} {is nearly empty|nearly empty|is almost empty|is low|is \
running low|is getting low|is running out|is about dry|is just about dry|just about dry|about dry|just about empty|\
about empty|is nearly finished|is nearly out|is nearly gone|is on its last|is very low|will not last|will run out|\
will run dry|is going to run out|needs changing soon|only has a bit left|has little left|nearly dry|almost dry|is \
nearly through|will run out before|is close to empty|is just about out|near the end}
    {hardly|barely|scarcely|not} {any|anything|much|a drop|enough} {left|in it|in there|in that one|in this one|in \
one} {now|}, {only|just} {a bit|a little|fifty|thirty|twenty|few drops|a few mils|an inch|few mils|a drop|drops} \
{left|in it|left in it|left in one|in one|in this one|in that one}
    {last few|on its last} {drops|mils|legs}, {ready|time} {for a new one|for new bag|to change bag|to change it|to \
be changed|for a change}
run in = {it|bag|small bag|all|drug|piggyback|everything|secondary|antibiotic|first drug|whole bag|whole lot|first \
one|small one} {has run in|ran in|run in|is in|is all in|is empty|is finished|is done|has finished|has gone in|went \
in|is through|has run through|finished|is gone|all gone|has all gone in|has emptied|all in|all went in|is dry|ran \
dry|has infused|infused|is infused|is completely in|is flat|has run dry|is empty now|is in now|all run in|is run in}
    {nothing|not a drop|no fluid|not any|no more|no drug|none} {left|left in it|left in bag|left in either|\
remaining|in it|in there|in bag|in chamber|in bag or chamber|left in bag or chamber|to run|left to run|left to go \
in|still in it|more to come|there|}, {bag|small bag} and chamber {empty|are empty|both empty|dry|are dry|are both \
empty}, {completely|totally|fully|all} {empty|run in|infused|gone|through|dry|in|flat}
    {chamber|bag|small bag} {empty|dry|flat|is dry|is flat|is empty} {and chamber empty|too|and chamber dry|and flat|}
some left = {a bit|some|bit|little|a little|few drops|few mils|an inch|about an inch|half|quarter|third|about a \
third|plenty|about half|about a quarter|a drop|drops|a few drops|some fluid|a few mils|bit of fluid|some drug|a \
good bit|fair bit|a wee bit|wee bit|wee drop|fluid|few mils|ten mils|twenty mils|thirty mils|fifty mils|twenty|\
thirty|fifty} {left|left yet|still left|yet|in it|in it yet|in it still|still in it|still there|in bag|in bag yet|\
in chamber|in chamber yet|in there|in there yet|in there still|to go|to go yet|remaining|still to go|left in it|\
left in bag|left in chamber|left in there|still in chamber|still in bag|still to run|to run in|still to come|at \
bottom|at the bottom|in the bottom|to run}
    still {a bit|some|bit|little|a little|few drops|few mils|an inch|about an inch|half|quarter|third|about a third|\
plenty|about half|about a quarter|a drop|drops|a few drops|some fluid|a few mils|bit of fluid|some drug|a good bit|\
fair bit|a wee bit|wee bit|fluid|ten mils|twenty mils|thirty mils|fifty mils|running|dripping|going|going in|\
infusing|drops coming|coming} {left|in it|in chamber|in bag|in there|to go|to run|in|at the bottom|}
    {not|has not|not all|not quite all} {run in|finished|empty|gone in|all in|done|all run in|through|run through|\
in|gone|run in yet|finished yet|empty yet|done yet|in yet|quite finished|quite empty|quite done|completely empty|\
quite through|quite in}
still fluid = {fluid|some|bit|a bit|plenty|lots|loads|half|some fluid|a bit of fluid|plenty of fluid|about half|a \
good bit|fair bit|quarter|a third|about a third|about a quarter|liquid|some liquid|about 200|few drops|an inch|an \
inch of fluid|bit of liquid|a little|little|drops|about hundred mils|about two hundred mils|hundred mils|two \
hundred mils|fifty mils|few mils|a few mils|wee bit|a wee bit|about an inch} {left|left in it|left in bag|still \
left|still in it|still in|still there|in it|in it yet|in there|in there yet|yet|to go|still hanging|still in bag|\
still in chamber|in chamber|in bag|at bottom|at the bottom|at bottom yet|at the bottom yet|remaining|in the bottom|\
to run|left yet|in both|still in there}
    still {fluid|some|bit|a bit|plenty|lots|loads|half|some fluid|a bit of fluid|about half|quarter|a third|about a \
third|liquid|some liquid|few drops|an inch|drops|hundred mils|two hundred mils|fifty mils|few mils|dripping|running|\
full|half full|nearly full|wet} {left|in it|in bag|in chamber|in there|to go|hanging|there|in both|}, {not|has not|\
it is not|is not|neither|neither is} {empty|dry|run out|run dry|empty yet|dry yet|finished|finished yet|done|run \
dry yet|run out yet|quite empty|quite dry|completely empty}
    {chamber|bag|both} {has fluid|still has fluid|half full|is half full|still wet|full|still full|still half full|\
has some|has some in it|has plenty|have fluid|still have fluid|has liquid|has fluid in it|still drips|still dripping}
empty = {it|bag|chamber|both|all|whole thing|drip chamber|old bag|bag and chamber} {is empty|is dry|ran out|has run \
out|ran dry|has run dry|are empty|are dry|is completely empty|is bone dry|empty|dry|has emptied|is finished|is all \
gone|has gone dry|went dry|has nothing left|are both empty|has nothing in it|has no fluid|has no fluid in it|has \
drained|drained|is done|has run through|are both dry|has run right out|is totally empty|is flat|is run dry}
    {no|not any|nothing|not a drop|no more|no drop of|not a drop of|none} {fluid|liquid|left|in it|in there|in bag|\
in chamber|in either|in either of them|left in it|left in either|left in bag|left in chamber|left to run|fluid left|\
fluid in it|fluid in either|fluid there|fluid in chamber|fluid at all|liquid left|remaining|fluid in bag|drops|to \
run|there|of it left}, {run|ran|gone|bone|completely|totally|all} {dry|out|empty|used up}, {finished|gone|drained} \
{completely|altogether|all of it|right out}
sound = {no|not a|not any|nothing|not one} {kink|kinks|bend|bends|fault|faults|problem|problems|damage|kinked|bent|\
wrong|out of place|amiss|loose or kinked|kinked or loose|squashed} {anywhere|at all|along it|in it|and it is loaded \
right|and loaded right|and loaded properly|and loaded well|and nothing loose|and no air|and set is in right|and set \
sits right|and it sits right|no air nothing loose|no air and nothing loose|in line or set|all the way|there|to find|\
and well seated}
    {straight|clean|smooth|tight} {all way|all the way|all along|right along|from end to end} {and loaded right|and \
tight|and no air|and well loaded|no air|and loaded properly|and sits right|and dry|and free of air|}, {line|tubing|\
tube|set|it|everything|all|both|line and set|whole line|whole lot} {is sound|sound|is fine|fine|is okay|looks good|\
looks fine|is good|is in order|are fine|are sound|are good|in order|feels fine|feels sound|feels good|is straight \
and loaded right|is straight and set is loaded right} {all way|all the way|all along|from end to end|right along|to \
the spike|}
    {loaded|seated|sits} {right|properly|well|correctly} {and no kinks|and straight|no kinks|and not kinked|and \
line is straight|and no kink|nothing bent|not kinked|and nothing kinked}, not kinked {and loaded right|loaded right|\
and loaded properly|nothing loose|and well loaded}
a kink = {got|found|see|can see|feel|spotted|there is|has|can feel|have|is} {a|one|a wee|a small|some|a bit of a|a \
sharp} {kink|bend|fold|twist|loop|pinch} {there|in it|in line|near pump|near top|near bed|near elbow|near end|near \
arm|near wrist|near port|halfway|halfway down|under arm|under bed|by pump|under pillow|by rail|at rail|just below \
pump|just above pump|just below chamber|just under chamber|in tube|in tubing|behind pump|}
    {kink|bend|fold|twist|pinch} {there|in it|in line|near pump|near top|near bed|near elbow|near end|near port|\
halfway|halfway down|under arm|under bed|by pump|under pillow|at rail|just below pump|just above pump|in tube|in \
the tubing|in the tube|behind pump}, {line|tube|tubing|it|set} {is bent|bent|is kinked|kinked|is folded|folded|is \
pinched|pinched|is twisted|twisted|is squashed|is trapped|is bent over|is bent double|is caught|caught|is jammed|is \
doubled over|is nipped|is flattened|is crushed|is bent sharply|has a kink|has a bend|has a fold|has a twist|is \
trapped under him|is under him|is under her} {there|under bed|near top|near pump|at one point|in one place|at one \
place|by pump|behind pump|under rail|in rail|halfway|at the door|over rail|}
    {bent|folded|pinched|twisted|trapped|caught|squashed|kinked} {sharply|over|double|shut|under arm|under bed|\
under bedrail|under wheel|under mattress|under him|under her|in rail|in bed rail|near top|near pump|halfway|at one \
point|in one place|by pump|in door|round pole|round rail|behind pump|behind pole|under pillow}, {lying|sitting|\
sits} on {it|line|tubing|tube|the line|the tube}
something loose = {something|one|connection|joint|a connection|one connection|a joint|one joint|luer|hub|cap|spike|\
that one|this one|a bit|it|the end|connector|one end} {is loose|loose|came loose|is wobbly|wobbles|turns|is not \
tight|not tight|is coming undone|is coming off|has come loose|moves|has worked loose|is undone|not screwed in|is \
leaking|is slack|not done up|has come undone|is hanging off|is half off|is not screwed tight|is not on right} \
{there|at port|at hub|near hub|near top|in my fingers|when i touch it|near end|by pump|at bag|}
kinked = {got|found|see|can see|feel|spotted|there is|has|can feel|have|is} {a|one|a wee|a small|some|a bit of a|a \
sharp} {kink|bend|fold|twist|loop|pinch} {there|in it|in line|near pump|near top|near bed|near elbow|near end|near \
port|halfway|halfway down|under arm|under bed|by pump|by rail|at rail|just below pump|just above pump|just below \
chamber|just under chamber|above pump|just under drip chamber|in tube|in tubing|behind pump|}
    {kink|bend|fold|twist|pinch} {there|in it|in line|near pump|near top|near bed|near end|near port|halfway|\
halfway down|under bed|by pump|at rail|just below pump|just above pump|above pump|just under chamber|in tube|in \
tubing|in the tubing|in the tube|behind pump}, {line|tube|tubing|it|set} {is bent|bent|is kinked|kinked|is folded|\
folded|is pinched|pinched|is twisted|twisted|is squashed|is trapped|is bent over|is bent double|is caught|caught|is \
jammed|is doubled over|is nipped|is flattened|is crushed|is bent sharply|has a kink|has a bend|has a fold|has a \
twist} {there|under bed|near top|near pump|at one point|in one place|at one place|by pump|behind pump|above pump|\
under rail|in rail|halfway|at the door|over rail|behind pole|sharply|}
    {bent|folded|pinched|twisted|trapped|caught|squashed|kinked} {sharply|over|double|shut|under bed|under bedrail|\
in rail|in bed rail|near top|near pump|halfway|at one point|in one place|above pump|by pump|in door|round pole|\
round rail|behind pump|behind pole|just above pump|below chamber}
loaded wrongly = {set|it|tubing|cassette|segment|line|this|tube} {is|went|goes|sits|has been} {loaded wrong|loaded \
wrongly|in wrong|in backwards|in upside down|the wrong way round|wrong way round|not loaded right|in crooked|not in \
right|not in properly|crooked|not seated|put in wrong|in wrong way round|in wrong way|badly loaded|in back to front|\
upside down|not loaded properly|not in its channel|out of its channel|not clicked in|not seated properly|in squint|\
twisted in pump|not all the way in|not sitting right|not sitting in it|in the wrong slot|in the wrong channel} {}
    {loaded|put|fitted|threaded|clipped} {in|it|} {wrong|wrongly|badly|backwards|upside down|wrong way round|the \
wrong way|crooked|back to front|wrong way up}, {not|is not} {loaded|seated|clicked|fitted|sitting} {right|properly|\
in|correctly|well|straight|in right|in properly|in its channel|in pump right|in the pump right|in the pump properly}
all open = {all|both|every clamp|each clamp|every one|each one|everything|all clamps|all of them|they are all|\
clamps|all three|both clamps|clamps all|all the clamps|two clamps|roller and slide} {is open|open|are open|is \
undone|undone|is unclamped|unclamped|wide open|are wide open|are undone|are unclamped|fully open|are all open|\
opened|are fully open|are rolled open|is released|released} {all way|all the way|from bag to pump|up to pump|}
    {none|not one|no clamp|nothing|no clamps|neither|not a clamp|neither one|not one clamp|not a single one} \
{closed|shut|is closed|is shut|clamped|pinched|is clamped|of them closed|of them shut|of them is closed|of them is \
shut|are closed|are shut|is on|left closed|left shut} {anywhere|}
one closed = {roller|slide|one|a|upper|lower|top|bottom|first|second|middle|bottom one|top one|slide clamp|roller \
clamp|one clamp|a clamp|that one|this one|clamp|lower one|upper one|the one near pump|the one by bag|one by pump|\
one near chamber|the roller clamp|one of them|one of the clamps} {is closed|closed|shut|is shut|clamped|is clamped|\
still closed|still shut|is still closed|is still shut|is still on|not open|is not open|is pinched shut|was left \
closed|was left shut|is rolled shut|rolled shut|is rolled down|is down|was shut|was closed|is half closed|is half \
shut}
    {found|got|see|there is|spotted|have} {a|one|one still|a still} {closed|shut|clamped|closed one|shut one|clamp \
closed|clamp shut|clamp still closed|closed clamp|shut clamp|still closed|still shut} {there|near pump|near bag|by \
pump|on line|above pump|}, {not|not quite} {all|every one|all of them|everything} {open|are open|is open|of them \
open}, forgot {to open one|one clamp|to open a clamp|to open the roller|the roller|the slide|to undo one}
right line = {right|correct|proper} {line|one|tube|tubing} {and tight|tight|all tight|and all tight|nothing loose|\
and nothing loose|all connected|and connections tight|and every joint is tight|and all joints tight|all along|all \
the way|from bag to vein|bag to vein|and all connected|and snug|and no loose ones|and secure|}
    {traced|followed} it {all way|all the way|from bag to vein|bag to vein|to the vein|back} {is correct|is right|\
it is right|it is correct|right line|right one|correct line|and it is right}, {it|line} {is the right one|is \
correct|is right|goes from bag to vein|goes to right vein|goes to the right place|goes where it should|goes where \
it should go|is ours}
    nothing loose {right line|and right line|and it is the right one|and it is the right line}
wrong line = {wrong|another|different|other|incorrect|not the right|not right|not the correct|not our|somebody \
elses} {line|one|tube|tubing|bag} {that|here|altogether|entirely|this|}, {it|line|this|that} {goes|leads|runs|\
belongs|connects|comes} {to|from|into} {another|the other|the wrong|a different|other|wrong|some other} {bag|pump|\
patient|vein|arm|drip|line|infusion|port|place}, {is not|not} {it|ours|the one|this|our line|that one|the line we \
want|the one we want|the one we thought|right line|the right line}
    {mixed|swapped|crossed} {up|over|lines}, {it|this} is {the wrong one|the wrong line|another one|not the right \
one|a different one|a different line|another line|not ours|somebody else's|not it}
loose connection = {something|one|connection|joint|a connection|one connection|a joint|one joint|luer|hub|cap|spike|\
that one|this one|a bit|it|the end|connector|one end} {is loose|loose|came loose|is wobbly|wobbles|turns|is not \
tight|not tight|is coming undone|is coming off|has come loose|moves|has worked loose|is undone|not screwed in|is \
leaking|is slack|not done up|has come undone|is hanging off|is half off|is not screwed tight|is not on right} \
{there|at port|at hub|near hub|near top|in my fingers|when i touch it|near end|by pump|at bag|}
dry = {all|every joint|each joint|line|it|whole line|everything|all joints|site|all of it|skin|gauze|my fingers|\
fingers|joints} {dry|is dry|are dry|is all dry|all dry|stay dry|stayed dry|came away dry|come away dry|is bone dry|\
feels dry|feel dry|is nice and dry|is dry all along|is completely dry}
    {no|not any|not a|nothing|not a drop of|no more|no sign of} {leak|leaks|wet|damp|moisture|drip|drips|leaking|\
damp spot|wet spot|dampness|wetness|fluid|drop|blood|bleeding|oozing|ooze|fresh blood|drops|wet joints} {anywhere|\
at all|on it|there|along it|now|any more|coming|all along|at any joint|on joints|on my fingers|to feel|outside|in \
sight|to see|on gauze|}
    {not|it is not|has|no longer} {leaking|bleeding|oozing|wet|damp|dripping|stopped bleeding|bleeding any more|\
bleeding now|leaking anywhere|leaking at all|wet anywhere|oozing any more|weeping}
leaking = {it|joint|one joint|hub|port|line|something|luer|cap|connection|one|a joint|spike|this joint|that joint|\
connector|one connection|top joint|last joint} {is leaking|leaks|is wet|drips|is dripping|is damp|is weeping|weeps|\
leaking|wet|damp|feels wet|feels damp|is moist|is seeping|seeping|dribbles|has a leak|got a leak|is dribbling|is a \
bit wet|is a bit damp|is losing fluid|is sticky|is oozing} {there|at port|at hub|at joint|near tip|near port|at \
bottom|at top|a bit|a little|}
    {wet|damp|moist|drop|leak|drip|moisture|bit of wet|dampness|drops|fluid|wetness} {at|on|by|near|around|round|\
under|below|in|from} {hub|port|joint|spike|cap|connector|connection|one joint|luer|first joint|last joint|the joint|\
my finger|my fingers|tip|one end|the end|a joint|pump|wrist|filter|the port|the hub|the cap}, {fingers|finger|glove|\
gloves|my finger|my fingers|my glove} {wet|is wet|are wet|got wet|came away wet|feel wet|come away wet|came back \
wet|come up wet}
a free port = {a|one|there is a|there is one|found a|found one|got a|see a|has a|got one|see one|have one|yes a|\
here is a|here is one} {port|free|free port|free one|spare|spare one|spare port|unused one|open one|open port|empty \
one|port free|unused port|empty port|port that is free|port not in use|available|free here|spare here} {there|near \
hand|near wrist|near patient|close to patient|by wrist|by his hand|by her hand|near arm|near his hand|near her hand|\
right there|here|on it|on the line|nearest patient|by the hand|close to hand|}, {port|this one|this port|nearest \
one|nearest port|last port|that one|first one|first port|it} {is free|free|is empty|is available|available|is \
unused|not used|not in use|is not in use|is open|has nothing on it|is not taken|is clear|is spare|is not occupied}
none / a free port = {no|not a|not one|not any|there is no|can not find a|not find a|not see a|not find any|\
without} {port|free port|spare port|port free|free one|ports|free ports|spare|port available|ports free|port at all|\
spare one|port to use|open port|unused port} {there|left|on it|near patient|near hand|on this line|at all|on it|to \
be found|here|anywhere|}, {all|every one|every port|each one|each port|both|they are all|both ports|all ports|all \
of them|the only one} {taken|used|in use|is taken|are taken|occupied|full|is used|is in use|busy|are in use|are \
used|are full|is full|is occupied|blocked|are occupied|capped off and in use}
this line = {it|this|that|line|bag|line i hold} {is this one|is this line|is the right line|is the right one|is \
right|is correct|is the same one|is the same line|is the one|is ours|goes to this one|goes to this vein|leads to \
this vein|goes to our patient|leads to this arm|comes to this one|is the line|is the one i hold|ends here|leads \
here|goes here|comes here|is it}, {right|correct|same} {line|one} {all way|all the way|traced|followed|from bag to \
vein|traced it|followed it|bag to vein|right to vein|to the vein|}
another line = {it|this|that|line|bag} {is another one|is another line|is a different line|is a different one|is \
not this one|is not this line|goes to another|goes to other arm|goes to the other arm|goes to other hand|goes to \
another vein|goes to another pump|goes elsewhere|goes to a different one|goes to another one|goes to other patient|\
leads elsewhere|leads to other arm|leads to another|leads to another one|is the wrong line|is the wrong one|is the \
other one|is not it|is not the one|belongs to another|belongs to another pump|ends up elsewhere|goes to the other \
pump|goes to the other patient|goes to the next bed|runs to the other arm|runs to another vein|leads to the other \
arm|comes from another bag|is for the other pump|goes somewhere else|ends somewhere else}
    {another|different|wrong|other|a different|the other|the wrong|some other} {line|one} {altogether|goes to other \
arm|goes to the other arm|goes elsewhere|goes to another bag|to other arm|not this one|not this|entirely}
closed = {clamp|roller|slide|it|this|wheel} {is|has been|was left|still|still is|} {closed|shut|clamped|rolled shut|\
fully closed|closed off|tightly closed|rolled down|pinched shut|all the way down|completely closed|fully shut|shut \
tight|locked shut|tight shut}, not open {at all|any more|now|}
open / closed = {clamp|roller|slide|it|this|wheel} {is|has been|was left|still|still is|} {open|undone|unclamped|\
rolled open|fully open|wide open|half open|slightly open|rolled up|a bit open}, not closed {at all|yet|properly|\
fully|any more|}
in place = {cap|it|port cap|blue cap|lock cap} {is|sits|still|is still|is sitting} {on|in place|there|tight|secure|\
in position|on tight|on snug|firmly on|on firmly|on properly|fitted|on there|on it|where it should be|capped|snug|\
in its place|where it belongs|screwed on|on right|sitting there|on nice and tight|tight on}, {got|has|has got|with|\
wears} {its|a|the|his|blue} {cap|cap on|cap still on|cap in place}, not missing {it is there|it is on|}, {capped|\
capped off|closed with a cap|covered with a cap}
missing = {cap|it|port cap|blue cap} {is|has|must have|} {off|missing|gone|come off|fallen off|not there|not on|\
lost|dropped off|popped off|not on it|fell off|came off|disappeared|not in place|gone missing|been lost|been left \
off|not to be seen|nowhere|on the floor|on floor|vanished|absent|lying on the bed|lying in the bed|nowhere to be \
seen}, {no|not a|without a|there is no|not see a|not see any|without its|has no|has lost its} cap {on it|there|on|\
at all|on port|on the port|on lock|on the end|to be seen|any more|on this one|in place|}, {port|lock|end|hub|it} \
{is open|is bare|open|bare|uncapped|is uncapped|is exposed|has no cap|exposed|is naked|without a cap|not capped|is \
not capped|lost its cap|has lost its cap}, {somebody|someone} {took it off|left it off|took the cap off|left the \
cap off|lost it|lost the cap}
all three = {yes|} all {three|of it|of them|three of them} {there|done|good|fine|okay|yes|are fine|are there|are \
good|are okay|are done|are so|right|are right|are in order|checked and good|as they should be|in order}, {primed|it \
is primed|line is primed} {and loaded|loaded} {and|with|} {no air|no bubbles|air free|free of air|no air in it|\
without air|bubble free|no air at all|not a bubble|no bubble}, {nothing|not a thing|not anything} missing {all \
three|}, {loaded|loaded and primed} {and primed|} {no air|and no air|no bubbles|with no air|and no bubbles|and free \
of air}
something missing / all three = {not|is not|isn't|not yet|line is not|set is not|it is not|never} {primed|loaded|in \
pump|in the pump|loaded in pump|loaded in the pump|primed yet|loaded yet|loaded in pump yet|loaded in the pump yet|\
free of air|filled|in the pump yet|in pump yet|loaded properly|filled yet|fully primed|threaded in yet|clear of \
air}, {still|there is|has|got|found|see|with|there is still|still has} {air|some air|a bubble|bubbles|air in it|\
bubbles in it|air in line|some air in it|a few bubbles|air in the line|bubbles there|a bit of air}, {loading|\
priming|air} {is missing|missing|not done|is not done}, {forgot|have not|did not|still have to|i have to|need to|\
still need to|have to} {to load it|loaded it|load it|to prime it|prime it|primed it|load|to put it in pump|put it \
in pump|put it in the pump|get air out|get the air out|load the set|load the line}
torn = {package|it|wrapper|packet|packaging|corner|pack|one corner|bottom|top|side|one side|edge} {is|has|got|looks|\
has got|has been|} {torn|ripped|split|open|a tear|a rip|a hole|damaged|a small tear|burst|holed|opened|been opened|\
a hole in it|a tear in it|a rip in it|broken|torn open|a wee tear|a tiny hole|a small hole|a bit torn|ripped open|a \
split|split open|not whole|not intact|not sealed|not closed|half open|come open|come apart|a tear at corner|a tear \
in the corner|a tear on side|torn at the corner|torn at one end|open at one end|open at the corner|open at one side|\
peeled open} {at corner|at one end|at the corner|along edge|at top|at bottom|on one side|at side|down side|}, \
{there is|see|can see|found|got} {a|small|a small|a wee|a tiny|one} {tear|hole|rip|split|cut} {in it|there|in \
package|in wrapper|at corner|in packaging|at one end|in the corner|on the side|in the wrapper|in the packet|along \
the edge|in the package|near the seal|}
opened = {package|it|wrapper|packet|packaging|corner|pack|seal|one corner|overwrap|one end|bag|set|one|one of them} \
{is|has|got|looks|has got|has been|} {torn|ripped|split|open|opened|been opened|already open|already opened|open \
already|broken|undone|tampered with|unsealed|a tear|a hole|not sealed|torn open|ripped open|peeled open|half open|\
peeled|not closed|come open|come undone|lifted|damaged|open at one end|open at the end|open at one side|open at the \
corner|not intact|a tear in it|a hole in it|a rip in it|a bit open|not sealed any more|loose|been torn|come off|\
been broken} {at one end|at end|at corner|at one corner|at top|on one side|at side|at one side|at edge|before|}, \
{somebody|someone|they} {has|have|already|} {opened it|opened it before|broken it|broken the seal|broken seal|torn \
it|opened the packet|had it open|been in it|opened it already|tore it open|broke the seal|broken the overwrap|\
opened the package|ripped it|had it open already}
sealed and in date = {sealed|seal intact|seal good|seal fine|seal is good|seal is fine|seal is whole|unopened|\
intact|package is whole|whole|not torn|not opened|closed|packet is whole|seal is intact|never opened|no tears|no \
holes|wrapper intact|wrapper whole|both sealed|both unopened|package sealed|packet sealed|wrappers intact|all \
sealed|no tear|packet intact|package intact|fully sealed|well sealed} {and|} {in date|good date|date is good|date \
is fine|date fine|date good|date okay|within date|not expired|not out of date|still in date|date is okay|good till \
next year|good until next year|good till next month|still good|dates good|dates fine|both in date|well in date|date \
is right|date is all right|date all good|date in order|date is in order}
    {in date|date good|date fine|date is fine|date is good|not expired} {and|} {sealed|intact|unopened|not torn|\
whole|seal is good|seal good|seal intact|seal is intact|packet is whole|seal fine|not opened|untorn|package is \
whole|seal is fine|no tear|no tears|closed}
fit to use = {fine|good|okay|safe|fit|all right|alright|ready|perfectly good|perfectly fine|ok|suitable} to {use|\
hang|go|give|be used|hang up|run} {all of it|both|both of them|all good|}, {can|may} {use it|be used|use them|be \
hung|use both|use this|use this one|hang it|use all of them|both be used}, {nothing|not anything|no bits|no specks|\
no particles} {floating|in it|floating in it|wrong|swimming in it|cloudy|floating about} {date is fine|date fine|\
date good|dates good|no leaks in date|in date no leaks|in date|and date is good|and date is fine|and in date|no \
leak date good|no leaks date fine|no leaks date is fine|not leaking and in date|dry and in date|no leaks and in date}
    {clear|nice and clear|crystal clear|fluid clear|fluid is clear|all clear} {dry|no leak|no leaks|sealed|intact|\
whole|seal intact|seal good|not leaking|no drips|no holes|and dry|and sealed|and intact|seal is good|and no leaks|\
tight|seal whole|no bits no leaks|bag whole|unopened} {and|} {in date|date good|date fine|date is good|date is fine|\
date okay|good date|not expired|still in date|date is okay|dates good|within date|both in date|date all right|well \
in date|date is all right}
    {not|neither|no} {cloudy|hazy|cloudiness} {not|no|nor|or} {leaking|leaks|leak|leaky} {not expired|and in date|\
in date|or expired|nor expired|nor out of date|date good|date fine|date is fine|date is good|and not expired|and \
date is good}
cloudy = {it|fluid|bag|solution|this one|one|one of them|that one|liquid|second one|first one|small one|syringe|one \
syringe} {is|looks|looks a bit|is a bit|has gone|has turned|went|turned|got|is all|seems to have gone} {cloudy|hazy|\
milky|murky|foggy|misty|white|yellowish|not clear|discoloured|cloudy inside|dirty|muddy|turbid|unclear|cloudy at \
bottom}, {bits|specks|particles|stuff|flakes|things|something|little bits|white bits|wee bits|crystals|floaters|\
flecks|dots|tiny bits|black bits|white specks|small bits|small particles|some bits|some particles|a few bits|few \
specks} {floating|in it|floating in it|in fluid|in there|floating about|floating round|swimming in it|at bottom|\
swimming about|in bag|in the fluid|in solution|at the bottom|in the liquid|floating around|in the bag|drifting|\
inside|floating in there|floating inside|moving in it|settling}, {not|is not|not quite|not really} {clear|see \
through|transparent|clear any more|crystal clear|a clear fluid|very clear|clear at all}
leaking / fit to use = {bag|it|syringe|vial|port|seam|bottom|corner|this one|one|one of them|second one|first one|\
small one|tip|cap|seal|outside|spike port} {is|has|feels|looks|got|drips|leaks} {leaking|wet|a leak|damp|dripping|\
leaky|a hole|losing fluid|punctured|split|a wee leak|a small leak|a tiny hole|a small hole|torn|seeping|moist|\
weeping|sticky|not sealed|broken|a bit wet|a bit damp|wet outside|wet on the outside|slightly wet|losing drops|not \
tight|drops on it|drops on the outside|cracked} {at port|at seam|at bottom|at corner|from port|from seam|at the \
seam|at the port|at the bottom|on outside|at one corner|underneath|}
    {fluid|drops|drop|liquid|water|it} {is|are|on|at|} {coming out|dripping out|running out|leaking out|seeping out|\
outside|on outside|on the outside|dribbling out|oozing out|on my glove|on my gloves|at the port|at the seam|on the \
bag|behind the stopper|behind stopper|escaping|trickling out} {of it|of bag|at bottom|at the bottom|at seam|of the \
port|of the seam|}, seal {is broken|broken|is gone|has gone|not intact|is not intact|is torn|is damaged|is open|was \
broken|cracked|is cracked|is off}
expired = {it|bag|date|this one|one|one of them|that one|set|package|syringe|vial|both|second one|first one|small \
one|fluid} {is|has|went|ran|passed|are|got} {expired|out of date|past its date|out|past|over|past it|gone out|too \
old|gone out of date|run out|passed|past date|gone off|no longer in date|past expiry|not in date|not in date any \
more|last month|last week|last year|yesterday|two months ago|gone past|past its use by|out last month|out last week|\
out last year|out yesterday|over its date|overdue} {by a month|by a week|since last month|since last week|last \
month|last week|yesterday|last year|by two days|by a day|already|by a year|two days ago|a week ago|a month ago|}
    {expired|ran out|went out|went out of date|was good till|was good until|good till|good until|use by|best before|\
dated} {last month|last week|last year|yesterday|last june|last winter|last march|two days ago|a week ago|a month \
ago|two months ago|last friday|three days ago|days ago|weeks ago|months ago|last summer|last spring|last january|\
last december}
"""
"""By the alternative: patterns of ways to say it; behind a stroke, the alternative that stands beside it."""
