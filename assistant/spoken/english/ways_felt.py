"""How people say what is seen or felt at a site or a catheter, as patterns in English: see `choices`."""

PATTERNS = """
healthy = {site|skin|it|arm|area|everything|all|spot|that site} {is|looks|looks all|is all|feels|seems perfectly|\
looks nice and|is nice and|looks perfectly|is perfectly|} {healthy|normal|fine|good|clean|clean and dry|okay|well|\
as it should|unremarkable|all right|unchanged|cool and soft|soft and cool|soft and flat|clean dry and flat|good and \
healthy|lovely|perfect|clear|spotless|alright|as before|grand|the same as before|no different}, {no|not any|without|\
no sign of|nothing like|no signs of} {change|changes|redness no swelling|redness or swelling|swelling or redness|\
redness swelling or pain|redness no swelling no pain|redness swelling pain|redness nor swelling|swelling or pain|\
change at all|changes at all|difference|difference at all|redness or pain or swelling|trouble there} {there|at all|\
to see|no pain|or pain|and not painful|and no pain|at site|seen|}
    {not|neither} {red or swollen|swollen or red|red swollen|red not swollen|red nor swollen|red and not swollen} \
{not painful|or painful|and not painful|or sore|and not sore|nor painful|no pain}, {nothing|not a thing|not \
anything} {to see|to note|wrong|different|unusual|abnormal|wrong there|wrong with it|changed|changed there|there to \
see|out of the ordinary|amiss|to worry about|of note}
changed = {site|skin|it|arm|area|something|that} {is|has|has gone|looks|feels|went|got|is getting|is a bit|looks a \
bit|has got|looks all|is all|has become|} {changed|different|red|swollen|puffy|sore|hard|warm|hot|worse|pink|puffed \
up|swollen up|swelled up|not right|not healthy|a lump|bruised|changed colour|lumpy|not like before|not like it was|\
not the same|not the same as before|not as it was|inflamed|angry|bigger|red and puffy|red and swollen|red and sore|\
pinker|redder|a rash|cold|pale|white|blistered|tight|firm|raised|bumpy|hard and swollen|puffy and red|pale and cold|\
cool and puffy|cold and puffy} {than before|now|there|since before|since last time|round it|all round|}
    {there is|got|see|can see|feel|has|with|can feel} {a|some|a hard|a bit of|a small|a wee|a red|a bit of a|} \
{lump|lump coming up|redness|swelling|change|bump|bruise|streak|patch|ring|hard lump|puffiness|difference|hard lump \
coming up|rash|ring round it|blister|bulge|bruising|line|mark|red patch|red line} {there|coming up|at site|round it|\
now|around it|near it|up the arm|at the site|}, {was not|not|never} {like that|like this|this way|so red|that red|\
so puffy|swollen|red|there|puffy} {before|earlier|last time|an hour ago|this morning}
red = {site|skin|it|arm|area|that|vein} {is|has gone|looks|went|got|is getting|is a bit|looks a bit|is going|is all|\
is slightly|is a little|is really|looks really|is pretty|turned} {red|pink|reddish|pinkish|inflamed|red and warm|\
warm and red|flushed|angry looking|red round it|red around it|red and hot|rosy|blotchy|angry|red and angry|pink \
round it|red at edges|reddened}, {a|some|a bit of|a red|bit of|little|a little|there is} {redness|red ring|red \
patch|ring|red mark|red streak|red halo|reddening|red line|red round it|streak|pink ring|red spot} {there|round it|\
around it|up the arm|at site|around needle|at the site|round the needle|}
swollen = {site|skin|it|arm|area|hand|that|tissue} {is|has gone|looks|went|got|is getting|is a bit|looks a bit|has|\
is going|is all|feels|feels a bit|is slightly|has puffed|is blown|is blowing|} {swollen|puffy|swollen up|puffed up|\
up like a balloon|swelled up|bigger|lumpy|a lump|a bump|tight and swollen|raised|bulging|ballooned|fat|thicker|up|\
puffed|bigger than other one|bigger than the other|hard|firm|tight|puffing up|swelling up|puffy round it|spongy|a \
bulge|like a balloon}, {there is|got|a|some|a bit of|see|with|can see|has|little|bit of|slight|a small} {swelling|\
puffiness|lump|bump|bulge|swelling there|lump there|bump there|swelling round it|puffiness there|swelling around it|\
lump under the skin|bump under the skin|lump coming up|lump under skin|swelling at site}
painful = {it|site|arm|that|vein|spot|skin} {hurts|stings|aches|burns|is painful|is sore|is tender|feels sore|is \
hurting} {him|her|when i touch it|when touched|there|when i press|when i press it|when i feel it|a bit|on touch|to \
touch|the patient|a lot|}, {he|she|patient|they} {says|said|tells me|told me|is telling me|says that|complains|\
complained|complains that|cried|shouted|is complaining} {it hurts|it is painful|it is sore|ouch|ow|it hurts there|\
it hurts when i touch it|it aches|it is tender|that hurts|it stings|that it hurts|of pain|pain|sore|painful|it \
burns|it hurts a bit|it is a bit sore|it is hurting|it hurts a lot}, {he|she|patient} {winced|flinched|jumped|\
pulled away|grimaced|pulled his arm away|pulled her arm away|jerked|groaned|moaned|yelped|frowned|cried out|winces|\
flinches|pulls away|jumps|jerks away} {when i touched it|when i touched|when i pressed|there|when i felt it|as i \
touched it|when touched|when i felt along it|when i press|at my touch|when i touch it|}
pain = {he|she|patient|they} {says|said|tells me|told me|is telling me|says that|complains|complained|complains \
that|cried|is complaining|shouted} {it hurts|it is painful|it is sore|ouch|ow|it hurts when i push|it hurts when i \
flush|it aches|that hurts|it stings|that it hurts|of pain|it burns|pain|it is hurting|it is burning|it is stinging|\
it hurts a bit}, {flush|arm|vein|pushing|that} {hurts|is hurting|stings|burns|is painful|is sore|aches|is stinging|\
is burning|gives pain|is giving pain|causes pain|is uncomfortable} {him|her|when i push|when i flush|a bit|patient|\
the patient|as i push|a lot|on flushing|when it goes in|as it goes in|}, {he|she|patient} {winced|flinched|jumped|\
pulled away|grimaced|groaned|cried out|yelped|winces|flinches|jerked|pulled his arm away|pulled her arm away|\
grimaces} {when i pushed|when i flushed|as i pushed|when i push|as i flush|when it went in|on the flush|}, {has|got|\
there is|with|feels|in} {pain|some pain|a bit of pain|pain there|pain in arm|pain when i push|pain when i flush|\
discomfort|pain on flushing|pain in the arm}
swelling = {arm|skin|site|it|area|tissue|vein|hand|spot} {is|is going|has gone|is getting|has|looks|feels|} \
{swelling|swollen|puffy|up like a balloon|bigger|a lump|swelling up|puffing up|raised|a bump|lumpy|filling up|\
puffed up|bulging|swollen up|a bit puffy|a bit swollen}, {arm|skin|site|it|area|tissue|hand} {swells|swells up|\
puffs up|blows up|rises|is swelling|comes up} {when i push|as i push|when i flush|as i flush|a bit|like a balloon}, \
{there is|got|a|see|can see|with|some|a bit of|has|bit of|slight} {swelling|lump|bump|bulge|puffiness|lump coming \
up|swelling coming up|bump coming up|egg|lump there|swelling there|bump there|balloon|lump under skin|puffiness \
there|swelling under the skin|bubble under skin|lump growing|lump under the skin}
runs freely = {flushes|flushed|goes in|went in|runs|runs in|pushes|ran|going in|slides in|flows|flowed|moves|pushes \
in|slid in|glides in|flushing} {lovely|nicely|well|fine|easily|easy|freely|smoothly|smooth|beautifully|like butter|\
like a dream|no problem|no bother|grand|great|sweetly|okay|good|no trouble|perfectly|straight in|without any \
resistance|without resistance|with no resistance|with no bother|without trouble|without any trouble|without a \
problem|easy as anything|very easily|so easily|brilliantly|gently|a treat|with no trouble|with no effort} {and no \
pain|no resistance|no pain|no swelling|no resistance or anything|and no resistance|no resistance at all|no \
resistance no pain|no pain no swelling|no resistance no pain no swelling|and no swelling|nothing wrong|no pain or \
swelling|and no pain or swelling|}
    {no|not any|without|zero|never any} {resistance|resistance pain or swelling|resistance or pain or swelling|\
resistance pain swelling|resistance no pain|resistance or pain|pain or swelling or resistance} {or anything|or \
swelling|no swelling|goes in easily|flushes well|flushes fine|it goes in fine|it runs freely|runs freely|at all \
flushes well|flushes easily|and no swelling|no pain no swelling|goes in fine|just runs in|it just runs in|it flows in}
resistance = {it|plunger|syringe|flush|that|there} {is|feels|got|has|gets|is a bit|is really|is very|feels a bit|is \
getting|is too|feels like it is|goes|seems|is quite} {stiff|hard to push|stuck|blocked|tight|resisting|resistance|\
some resistance|pushing back|hard going|hard to flush|difficult to push|jammed|slow and stiff|heavy|hard to get in|\
clogged|pushback|occluded|a bit of resistance|stiff to push|tough to push|difficult to flush|resisting me|fighting \
me|pushing back at me|against me}, {does not|will not|not|can not|can hardly|hardly|barely|i can not|i can hardly|i \
can barely|won't} {go in|push|push it|flush|flush it|move|budge|run|go|get it in|move it|push it in|go any further|\
push the plunger|go through|push it through|get anything in|run in|run freely|shift|flush at all|go in at all|flush \
through|get it to flush|flush it through|moves|goes in|goes|want to go} {at all|in|when i push|}, {got|feel|met|\
there is|have|a bit of|some|with|can feel|meet|felt|feeling|getting|get|lots of|loads of} {resistance|some \
resistance|pushback|a bit of resistance|push back|back pressure|some pushback|a lot of resistance|pressure against \
me|a bit of pushback|a blockage|strong resistance} {when i flush|when i push|there|on flushing|halfway|in it|as i \
push|as i flush|straight away|}, {have|had|need|got} to {push|press|force} {hard|it|really hard|it hard|very hard|\
quite hard}
whole = {it|catheter|cannula|tip|all of it|everything|that|all} {is|looks|came out|came|is all|is still|comes out|} \
{whole|intact|complete|in one piece|all in one piece|all there|undamaged|unbroken|whole and intact|there|all of it|\
full length|whole tip and all|not broken|entire|in tact|nothing missing|nothing is missing|still on|all the way to \
the tip|on it|on there|fully intact|perfectly whole}, {no|not any|nothing|not a|none of it} {piece|bit|part|piece \
missing|bits missing|pieces missing|missing|broken off|snapped off|left behind|bit missing|damage|broken|part \
missing|snapped|left inside|broken or missing|chip|missing from it|missing at the tip|break|breaks} {at all|from it|\
of it|there|off it|in it|missing|}
piece missing = {tip|end|piece|bit|part|a piece|a bit|a part|some|some of it|a chunk|it|catheter|a bit of it|one \
end|very end|the last bit|top|the very tip|cannula} {is|has|came|looks|got|snapped|broke|has been|must have|is all|\
} {missing|gone|broken|snapped off|broken off|not there|off|short|shorter|left behind|cut off|torn off|too short|\
snapped|torn|jagged|not whole|incomplete|not complete|ragged|sheared off|shorter than it should be|not on it|not \
all there|not in one piece|broken at the tip|come off|broken at tip|lost|stayed in|still inside|left inside|not \
intact|frayed|short a bit|chipped|shorter than the other|a bit short} {at tip|of it|of the tip|of catheter|}, \
{missing|lost|lacks|without} {tip|a bit|a piece|end|its tip|the tip|a bit at the end|a piece at the end|its end|\
part of it|the end|part of the tip}
still bleeding = {it|site|that|he|she|there|wound|hole|spot} {is|keeps|is still|still|started|is a bit|is only just|\
has started|just keeps|is yet|} {bleeding|oozing|wet|dripping|trickling|seeping|weeping|bleeds|oozes|bleeding a bit|\
oozing a bit|bleeding a little|oozing a little|bleeding slightly|bloody|running|bleeding again|oozing blood|oozing \
slightly|seeping a bit|bleeding some|trickling a bit|coming|weeping a bit|not dry} {yet|blood|still|a wee bit|now|\
there|}, {there is|still|see|has|got|a bit of|some|little|bit of|spot of|a spot of|a drop of|wee drop of|a wee bit \
of|more|fresh|still some|still a bit of|still a drop of|still a spot of|still a little} {blood|bleeding|oozing|ooze|\
fresh blood|red blood} {coming|coming out|there|on gauze|on the gauze|on it|yet|coming through|running|still|at the \
site|at the hole|welling up|}, {not|has not|it has not|hasn't} {stopped|dry|stopped yet|dry yet|stopped bleeding|\
stopped bleeding yet|quite stopped|quite dry|quite dry yet|clotted|clotted yet|done bleeding|dried up|stopped \
oozing|sealed|sealed yet}
an alarm / quiet and healthy = {pump|it} {is|keeps|started|has started|has been|went|goes|just|is still|just \
started} {alarming|beeping|bleeping|sounding|ringing|flashing|beeped|alarmed|going off|gone off|off|screaming|\
alarming again|beeping again|off again} {now|again|at me|already|}, {an|another|the|same} alarm {again|now|is on|\
went off|came up|sounds|is sounding|has gone off|is going}
quiet and healthy = {pump|it} {is|is still|stays|stayed|runs|} {quiet|quiet and running|silent|fine|quietly|running \
quietly|not alarming} {and|} {site|skin|arm|site still|the site|the arm} {is|looks|} {healthy|fine|good|normal|\
unchanged|the same|okay|as before|clean|all right|healthy too|no change|same as before|soft and dry}, {no|not any|\
without|nothing} {alarm|alarms|beeping|noise|beep} {and|} {no change|no change at site|site fine|site is fine|site \
healthy|site looks fine|site looks good|site looks healthy|site is healthy|site unchanged|no redness no swelling|\
arm looks same as before|site is the same|skin looks fine|arm fine|no swelling|site good|no change to site|arm is \
fine|site the same|nothing at site|no redness|no redness or swelling|site is good|arm is good}
the same = {both|both hands|hands|they|they are|two hands|both sides|all three|everything|all|pulse colour and \
feeling|pulses colour feeling|it is|pulses|pulses and colour and feeling|pulse colour feeling|left and right|both \
the hands} {the same|are the same|same|feel the same|look the same|look and feel the same|equal|are equal|match|are \
alike|alike|identical|all equal|are all equal|is the same|all the same|are all the same|is equal|look alike|feel \
alike|same on both|the same on both|same on both sides|the same on both sides|same both sides|same left and right|\
are identical|same in both|equal on both sides|equal both sides|are just the same|are no different|no different|\
warm and pink|pink and warm|warm and pink with good pulse|are warm and pink|are pink and warm|equally warm|match \
each other} {on both sides|on both hands|both hands|both sides|in both|}, {no|not any|nothing|not a|without} \
{difference|differences|different|differs|difference between them|difference between hands|difference between the \
hands|difference between the two|difference in pulse colour or feeling|difference in pulse|different between them|\
difference side to side|different about them} {at all|there|between them|to see|to feel|on either side|}, {not|\
neither} {different|is different|one colder|hand is different|one is different|one colder or paler|hand colder|of \
them is different|of them colder} {at all|}
different = {one|one hand|this one|this hand|that hand|hand|fingers|left|right|left hand|right hand|left one|right \
one|drip hand|this side|iv hand|his hand|her hand|cannula hand|the iv side|the one with the drip|pulse|colour|\
feeling|hand with iv|hand with the drip|arm with the drip|the other hand|other hand|his fingers|her fingers|one of \
them} {is|are|feels|looks|is a bit|feels a bit|has gone|looks a bit|is much|feels much|has|is slightly|has got|is \
going|went|seems|} {colder|cold|paler|pale|weaker|cooler|cool|numb|different|blue|white|bluish|no pulse|a weaker \
pulse|cold and pale|pale and cold|not the same|tingling|tingly|weak|cool and pale|swollen|pins and needles|less \
warm|less pink|less feeling|dusky|a weak pulse|colder than other|paler than other|no feeling|pale and cool|colder \
than the other|paler than the other|cooler than the other|weaker than the other|warmer|warmer than the other|gone|\
pale and numb|cold and numb|bluer|colder and paler|gone numb|gone cold} {than other|than the other|than the other \
one|there|now|}, {not|they are not|hands are not|both are not|no longer} {same|the same|equal|alike|matching|a \
match|identical|quite the same|both the same|same on both sides} {}
soft = {vein|it|all|all of it|whole vein|all along} {is|feels|is all|stays|feels nice and|is nice and|feels all|is \
lovely and|} {soft|soft and smooth|smooth|soft all along|soft all the way|soft and bouncy|bouncy|springy|supple|\
nice and soft|soft and springy|soft all the way up|spongy|soft no cord|soft no lumps|soft and flat|squishy|normal|\
soft and normal|soft as butter|smooth and soft|pliable|soft with no cord|soft along the vein|soft under my finger} \
{no cord|no lumps|no pus|no cord no pus|nothing hard|no hard cord|no hardness|no cord or pus|and no cord|and no pus|\
all along|all the way|and no lumps|nothing hard there|}, {no|not any|nothing|without} {lumps|hardness|cord no pus|\
cord or pus|hard cord or pus|lumps or bumps|hard cord no pus|hard cord and no pus|cord nor pus|cord and no pus|hard \
or lumpy|hard spots|hard there|cord} {it is soft|all soft|soft|just soft|and it is soft|it gives|feels soft|soft \
all along}
hard cord = {vein|it|that|there|something} {is|feels|has gone|feels like|is like|is all|has|got|is really|is \
getting|has turned|went|is a bit|feels all|there is} {hard|a cord|a hard cord|a rope|a hard rope|like a rope|like a \
cord|hard and ropy|hardened|hard like a cord|stringy|ropey|hard all along|a wire|a hard string|a firm rope|a hard \
line|hard like a rope|like a hard string|hard as a rope|a firm cord|firm like a cord|cord like|like a wire|like \
string|a pencil|like a pencil|like a hard cord|a bit of rope|rope like|hard and lumpy|a guitar string|like a guitar \
string|a thick cord|knotty|thick and hard|like cable|a cable|ropy|hard and cord like|a ridge} {under my finger|\
under finger|under my fingers|under the skin|up arm|up the arm|all along|along it|going up|there|along the vein|}, \
{can feel|feel|got|felt|found|there is|has|feels} {a|some|something} {hard|hard cord|cord|rope|hard rope|hard line|\
firm cord|firm line|hard bit|hard string|like a cord|like a rope|like a string|stringy|ropey|firm rope|ridge|hard \
ridge|hard lump|lump|hard streak} {under my finger|there|up the arm|under the skin|along the vein|along it|going up \
the arm|in it|in the vein|}
pus = {pus|yellow stuff|discharge|yellow fluid|something yellow|matter|gunk|goo|ooze|yellow goo|some pus|a bit of \
pus|green stuff|yellow discharge|white stuff|thick stuff|yellowy stuff|drop of pus|cream coloured stuff|creamy \
stuff} {is coming out|coming out|there|at site|at hole|comes out|came out|oozing out|is oozing|oozing|at the hole|\
at the site|around it|is there|coming from hole|when i press|when i press it|in it|is seeping out|seeping|leaking \
out|running out|coming from it|out of it|is weeping out}, {see|got|there is|can see|has|found} {pus|some pus|a bit \
of pus|yellow stuff|discharge|a drop of pus|some discharge|some yellow stuff|yellow discharge} {there|coming out|at \
the hole|at site|oozing out|}
dry and soft = {site|it|skin|arm|dressing|everything|all} {is|feels|looks|is still|is nice and|feels nice and|is \
all|stays|} {dry and soft|soft and dry|dry soft|soft dry|dry and soft still|soft dry and flat|dry and flat|dry soft \
and flat|dry flat and soft|soft and dry all round|dry and soft to touch|nice and dry and soft|soft not wet|dry not \
swollen|dry and not swollen|soft and not wet|dry no swelling|soft no wet|dry and it is soft|soft and it is dry|dry \
and feels soft|soft and the dressing is dry|dry and soft all round}, {no|not any|not|neither|nothing} {swelling|\
swollen} {no|and no|not|and not|or|nor} {wet|wetness|damp|leak|leaking|damp spot|fluid} {at all|dry and soft|soft \
and dry|there|}
wet = {dressing|site|it|gauze|tape|skin|edge|that|area|bandage|bottom|edge of dressing|sheet|arm|there|film|pad} \
{is|feels|looks|got|has gone|is all|is a bit|feels a bit|is getting|is soaking|is soaked|is slightly|is a little|is \
really|seems to be} {wet|damp|leaking|moist|soaked|soggy|soaking|soaking wet|weeping|wet at edge|wet underneath|wet \
round edge|wet through|dripping|sticky and wet|seeping|oozing|wet at the edges|damp underneath|damp at the edge|a \
bit wet|wet to touch|sopping|with fluid|clammy and wet|soaking through|wet under the film|wet round it} {now|at \
edge|at the edge|underneath|}, {there is|see|got|feel|can see|has} {fluid|moisture|wetness|a leak|wet|a wet patch|a \
damp patch|drops|leaking|some fluid|a bit of fluid|a damp spot|a wet spot|some moisture|fluid leaking|a bit of wet|\
some wetness} {under dressing|under the dressing|there|at site|coming out|underneath|round it|under film|under the \
film|at the edge|around it|around the site|on the dressing|on dressing|}, {fluid|it|drops|liquid} {is|are} {leaking|\
coming|seeping|dribbling|running|trickling|oozing} {out|from site|from the site|out at site|round the catheter|out \
of the site|at the site|from under the dressing|onto the skin}
safe for tissue = {all|both|every one|each|every drug|they are all|all of them|each one|both drugs|each drug|all \
labels|they all say|everything|all drugs|safe} {safe|is safe|are safe|say safe|fine for tissue|is harmless|harmless|\
are harmless|gentle|kind to tissue|say safe for tissue|okay for tissue|safe for tissue|is safe for tissue|are safe \
for tissue|every one|all of them|every one of them} {every one|}, {none|nothing|not one|neither} {of them|on it|on \
the line|here|} {harm tissue|damages tissue|damage tissue|hurts tissue|will hurt tissue|harmful|is harmful|harms \
tissue|is a vesicant|on the vesicant list|that burns tissue|burns tissue|vesicant}, {will|does|do|can} not {harm|\
hurt|damage|burn|irritate|kill|injure|hurt the|damage the|harm the|burn the|do harm to|do any harm to|blister} \
{tissue|tissues|skin|anything|the tissues} {if it leaks|at all|}, {no|not a|not any|neither a|none a} {vesicant|\
vesicants|harm|irritant|damage|danger|risk|vesicant on it|vesicant running|vesicants on it|harm to tissue|risk to \
tissue|danger to tissue|damage to tissue} {at all|there|on line|on the line|here|}
damages tissue = {it|one|that one|this one|drug|one of them|that|second one|first one|potassium|this drug|that drug|\
the small bag|the big bag|the second one|the first one|one label} {would|will|can|could|does|is known to|says|} \
{burn|damage|harm|hurt|kill|irritate|burns|damages|destroy|blister|injure|damages the|do damage to|do harm to|cause \
damage to|wreck} {tissue|tissues|skin|the tissue|it|the tissues|the skin|vein|the vein} {if it leaked|if it leaks|\
if it got out|if it gets out|if it goes in the tissue|badly|if it escapes|outside the vein|}, {it|one|that one|this \
one|drug|one of them|that|first one|second one} is {a vesicant|vesicant|on the vesicant list|harmful|not safe|\
dangerous|an irritant|nasty for tissue|bad for tissue|listed as vesicant|not safe for tissue|bad for the tissue|\
harmful to tissue|damaging|caustic|nasty stuff|marked vesicant|dangerous for the tissue|marked as a vesicant|\
labelled vesicant|a known vesicant|corrosive}
not sure = {i|we|label|it|chart|} {can not|could not|do not|cannot} {tell|say|know|tell you|tell from the label|\
tell from label|know that|know which|say for sure|tell for sure|be sure|say for certain|make it out|find it|say \
either way|know about this one|know about one of them|make out the label|work it out|decide|see it on the label}, \
{not|never|i am not|we are not|not really|not quite|not too|not at all} {sure|certain|clear|sure about one|sure \
about this one|sure about that one|sure at all|sure which|positive|sure of it|sure about one of them|sure about it|\
sure about the second|a hundred percent sure|a hundred percent}, {no|i have no|haven't a|have not a|not a} {idea|\
clue|way to tell|way of knowing|scooby}, {need|have|would need|would have|want|i would like} to {ask|check|look it \
up|ask pharmacy|look|ask the pharmacist|ask somebody|look that up|look one up|check with pharmacy|ask someone|ask \
the pharmacy}, {label|it} {does not|not} {say|tell|tell me|mention it|make clear|show}
large vein = {in|into|it is in|lies in|sits in|goes into|it is|catheter is in|runs in|that is|right in|well in} {a|\
large|big|the|nice big|good big|a nice big|a good big|a large|a big|a nice large|a good sized|a fat|a thick|a \
decent|a good|a proper big|a fine big|quite a big|a wide|a nice fat} {vein|one|forearm vein|elbow vein|vein in \
forearm|vein in elbow|vein in upper arm|vein at elbow|forearm|vein of the forearm|vein in the forearm|vein in the \
elbow|vein at the elbow}, {in|at} {elbow|forearm|upper arm|crook of arm|crook of elbow|bend of elbow|bend of the \
elbow|the crook of the elbow|the forearm|the upper arm|the elbow|inside of the elbow}
small vein = {in|into|it is in|lies in|sits in|goes into|it is|catheter is in|runs in|that is|right in|well in} {a|\
small|little|tiny|thin|the small|a small|a wee|a tiny|a thin|a little|a wee small|a narrow|a fine|a skinny|a really \
small|a very small|quite a small|a titchy|a bitty} {vein|one|hand vein|finger vein|wrist vein|vein in hand|vein in \
wrist|vein in finger|vein on back of hand|vein in the hand|vein on the hand|vein on the back of the hand|vein at \
the wrist|vein in the wrist|vein in the foot}, {in|on|at} {hand|back of hand|back of his hand|back of her hand|\
wrist|finger|thumb|the back of the hand|the hand|foot|the wrist|the finger|his hand|her hand|the foot}
blood return = {got|get|see|there is|have|a|nice|good|saw|can see|with|yes|lovely|gets} {flash|flash of blood|flash \
of red|flashback|blood return|blood back|return|blood|red|good return|blood coming back|bit of blood|blood in \
syringe|blood in the syringe|blood in tube|blood in line|some blood|some red|nice flash|nice return|good flash|red \
coming back|a flash|a bit of blood|a drop of blood|blood straight away|red in the syringe|good blood return|nice \
blood return|blood right away|blood in the tubing|blood up the line} {in syringe|coming back|there|straight away|\
back|in the line|into the syringe|when i draw back|right away|easily|}, {blood|red} {comes|came|is coming|flows|\
flashes|flashed|returns|returned|is coming back|pulls|draws|shows|is there|is flowing|flashed up|bleeds|drew|\
pulled} {back|back easily|back fine|straight back|into syringe|into line|up|in syringe|nicely|well|back nicely|\
right away|straight away|back no problem|back into the syringe|up the line|into the syringe|in the syringe|in the \
line|back well|up the tube|fine|up the tubing|right back}
no blood = {no|not any|not a|nothing|zero|without|not getting any|not get any|get no|not a drop of|can not get any|\
no sign of|not see any|got no|gets no} {blood|return|blood return|flash|blood back|flashback|red|blood coming back|\
blood at all|return at all|blood coming|drop|flash of blood|blood in syringe|blood in the syringe|return of blood|\
blood comes back|blood came back|blood return at all|drop of blood|flash at all} {when i draw back|when i pull|when \
i draw|in it|in the syringe|there|at all|but it flushes|when i pull back|comes|coming|so far|no matter how i pull|\
whatsoever|}, {nothing|not a thing|not anything|no drop|not a drop} {comes|came|coming|is coming|flows|draws|\
returns|pulls|comes back|came back|back|there|is coming back|drew back|comes when i pull|comes when i draw back|\
coming back|draws back|in the syringe|comes into the syringe|shows} {back|when i draw|up|at all|when i pull|when i \
draw back|when i pull back|in syringe|}, {catheter|lock|it|line} {does not|will not|won't} {bleed back|draw|draw \
back|give blood|give any blood|draw any blood|give me blood|give me any blood|aspirate}, blood {does not|will not|\
did not|is not} {return|come|come back|coming|coming back|returning}
patent = {flushes|flushed|goes in|flushing|runs|pushes|flows|it flushes} {easy|easily|well|fine|freely|nicely|\
lovely|smoothly|no problem|great|okay|no bother|beautifully|no resistance|without resistance|like a dream|good} \
{and|with|} {blood back|got blood back|good blood return|blood return|blood comes back|got blood|a flash|good \
return|got a flash|bleeds back|returns blood|i got blood back|blood came back|draws back|gives blood|gets blood|\
blood|got good return|a good flash|draws blood|good blood|i get blood|get blood back|blood coming back|got a flash \
of blood}, {good|nice|easy|free} {flush|flushing} {and|with|} {good return|good blood return|blood return|blood \
back|blood|a flash|return|blood comes back|good blood|good flash}, {patent|is patent|it is patent} {flushes fine|\
flushes well|good return|with good return|blood back|no resistance|flushes and draws|flushes and bleeds back|good \
both ways|and working|flushes easily|with blood return|flushes freely|works fine}
freely with blood return = {flushes|flushed|goes in|flushing|runs|pushes|flows|it flushes|went in|pushed} {easy|\
easily|well|fine|freely|nicely|lovely|smoothly|no problem|great|okay|no bother|beautifully|no resistance|without \
resistance|like a dream|good} {and|with|} {blood back|got blood back|good blood return|blood return|blood comes \
back|got blood|a flash|good return|got a flash|bleeds back|returns blood|i got blood back|blood came back|draws \
back|gives blood|gets blood|blood|got good return|a good flash|draws blood|good blood|i get blood|get blood back|\
blood coming back|got a flash of blood|i get a flash|i got a flash|i see blood|i get a flash of blood}, {good|nice|\
easy|free} {flush|flushing} {and|with|} {good return|good blood return|blood return|blood back|blood|a flash|return|\
blood comes back|good blood|good flash}, {patent|it is patent} {flushes fine|flushes well|good return|with good \
return|blood back|flushes and draws|flushes and bleeds back|good both ways|flushes easily|with blood return|blood \
comes back and no trouble pushing}, {no resistance|no trouble pushing} {and|with|} {good blood return|blood return|\
blood back|blood comes back|a flash|good return|blood}
a change = {site|skin|it|arm|something|that} {is|has|has gone|looks|feels|went|got|is getting|is a bit|looks a bit|\
has got|is going} {changed|different|red|swollen|puffy|sore|hard|warm|hot|worse|pink|puffed up|swollen up|swelled \
up|a lump|wet|leaking|painful|swelling|swelling up|puffing up|not right|changed at site|not like before|a bit red|a \
bit puffy|inflamed|damp|bigger|redder} {now|there|at site|at the site|since before|}, {there is|got|see|a|can see|\
some|a bit of} {redness|swelling|change|lump|bump|puffiness|pain|wet|leak|change at site|change at the site|redness \
at site|swelling at site|wetness|swelling at the site|redness at the site} {there|at site|now|coming up|at the site|}
cool and swollen = {it|site|arm|skin|area|} {is|feels|looks|} {cool|cold|pale|puffy|swollen|chilly} {and|} {puffy|\
swollen|cool|cold|pale|tight|chilly|puffed up|swelled up} {to touch|to the touch|there|round it|around it|when i \
touch it|}
red and sore = {it|site|arm|skin|area|vein|} {is|feels|looks|} {red|sore|tender|hot|warm|pink|inflamed|painful} \
{and|} {sore|painful|tender|hot|warm|red|hurts|it hurts|inflamed|pink|aching} {to touch|to the touch|there|round it|\
around it|when i touch it|along the vein|}
"""
"""By the alternative: patterns of ways to say it; behind a stroke, the alternative that stands beside it."""
