"""How people say what a patient or a colleague tells, as patterns in English: see `choices`."""

PATTERNS = """
complete and right = {all|everything|every bit|every word|it all|whole thing|whole lot|all of it} {complete and \
right|complete and correct|right|correct|is right|is correct|was right|was correct|repeated|was repeated right|was \
there and right|there and correct|matches|was spot on|back right|repeated correctly|repeated right|exact}
    {he|she|they|colleague|my colleague|my partner|partner} {got it right|got everything right|got it all|got it \
all right|repeated it all|repeated everything|repeated it right|repeated it correctly|said it all right|said it \
right|said everything right|said it all back right|had it right|had it all right|had everything right|read it all \
back right|read it back right|said everything correctly|repeated everything correctly|repeated all of it right}
    {not|never|nothing} {forgot anything|missed anything|a word wrong|forgotten|left out nothing wrong|missed \
nothing wrong}, {no|not a|not one} {mistake|slip|error|mistakes|errors|word} {in it|and nothing missing|at all and \
complete|nothing missing|and nothing left out}
something wrong = {he|she|they|colleague|my colleague|my partner|partner|one bit} {got one wrong|got it wrong|got \
the rate wrong|got the dose wrong|got a number wrong|said it wrong|said the wrong dose|said the wrong rate|said the \
wrong drug|said the wrong number|said the wrong volume|said the wrong arm|mixed it up|mixed two up|mixed up the \
numbers|made a mistake|was wrong|repeated it wrong|got something wrong|swapped two numbers|got the name wrong|said \
a wrong number|got that wrong|got one number wrong|misheard it|misheard me|misheard}
    {rate|dose|drug|number|volume|name|one thing|a number|one number|time|something|one detail|weight|route|side} \
{is wrong|was wrong|came back wrong|is not right|was not right|is off|was off|is not correct|was not correct|not \
right|does not match|got swapped|got mixed up|is incorrect}
    {wrong|a wrong|the wrong} {rate|dose|drug|number|volume|name|time|arm|side|unit|weight|route|figure|bag|patient|\
line|fluid} {said|repeated|came back|read back|in it|there|}
feeling fine = {he|she|patient|they|my patient|her|} {is|feels|says|says he is|says she is|is feeling|says he feels|\
says she feels|tells me he is|tells me she is|tells me he feels|tells me she feels|said he is|said she is|reports \
feeling|said he feels|said she feels|looks and feels|told me he is|told me she is|is doing|reckons he is|reckons \
she is} {fine|good|well|okay|grand|all right|alright|great|happy|perfectly fine|perfectly well|comfortable|\
absolutely fine|fine and dandy|as right as rain|well enough|champion|no different|quite well|just fine|fine thanks|\
not bad|lovely|normal|dead on|right as rain|very well|totally fine|brilliant|like normal|really well|really good} \
{no bother|no complaints|no problems|no bother at all|no itching|no itching no trouble breathing|no itch|no pain|no \
trouble|no problem|no pain no itch|in himself|in herself|with no complaints|no worries|no itching no pain|nothing \
wrong|no itch no breath trouble|no pain no itching|no dizziness|not dizzy|not itchy|}
    {no|not any|nothing|without|not a|denies any|not one} {complaints|complaint|bother|trouble|problems|symptoms|\
problem|bothering him|bothering her|wrong|to complain of|troubling him|troubling her|wrong with him|wrong with her|\
hurting or itching|hurts or itches|pain no itching no breathlessness|pain itching or breathlessness|pain or itching|\
itching or shortness of breath|itching no shortness of breath|itching no breathlessness|itch no trouble breathing|\
pain dizziness or breathlessness|itching breathing fine|itching and breathing fine|itch and breathing fine|itching \
breathes fine} {at all|she says|he says|to report|whatsoever|so far|}
in pain = {he|she|patient|they} {says|said|tells me|told me|is|has|has got|complains of|is complaining of|is \
telling me|feels|reports|is having|says she has|says he has|says she is in|says he is in|got|is clutching|is \
holding} {it hurts|it is painful|it is sore|pain|some pain|a bit of pain|in pain|in some pain|in a bit of pain|sore|\
hurting|a sore arm|a sore chest|chest pain|pain in chest|pain in arm|pain in his chest|pain in her chest|arm pain|\
pain in his arm|pain in her arm|a headache|his chest|her chest|a pain|in a lot of pain|it aches|in agony|aching|\
ouch|that it hurts|a lot of pain|a tummy ache|in discomfort|in real pain|a stabbing pain}, {arm|chest|hand|back|\
head|site|his arm|her arm|his chest|her chest|something|belly|stomach|shoulder|tummy} {hurts|is hurting|is sore|\
aches|is aching|is painful|pains him|pains her|hurts him|hurts her|is killing him|is killing her|is burning|is \
throbbing|feels sore|feels painful} {a bit|a lot|now|him|her|again|he says|she says|really badly|}
itching = {he|she|patient|they|arm|arms|skin|his arm|her arm|his skin|her skin|chest|neck|back|it|his chest|her \
chest|face|legs|his back|her back} {is|feels|itches|says|has|keeps|is all|is really|is getting|has started|started|\
got|says he is|says she is|is complaining of|complains of|says he feels|says she feels|tells me it|is a bit|has got|\
says it|has come out in|came out in|is coming out in|is coming up in|has come up in|broke out in|is covered in} \
{itching|itchy|itches|scratching|a rash|rash|hives|an itch|scratching his arm|scratching her arm|scratching away|\
red and itchy|really itchy|itchy all over|spots|blotches|it itches|itchy spots|bumps|itching all over|itching like \
mad|to itch|scratching at it|an itchy rash|a bit itchy|itchy arms|itchy skin|an itchy arm|welts|scratching himself|\
scratching herself|scratching all over|blotchy|prickly|tingly and itchy} {}
short of breath = {he|she|patient|they} {is|says he is|says she is|feels|is getting|is a bit|sounds|looks|has got|\
says he feels|says she feels|seems|has become|is really|is very|is quite} {short of breath|breathless|out of breath|\
wheezy|wheezing|gasping|puffing|panting|struggling|struggling to breathe|struggling for breath|short of air|\
breathing fast|breathing hard|breathing really fast|gasping for air|having trouble breathing|fighting for air|out \
of puff|choking|a tight chest|breathing heavily|puffed|puffed out|coughing|breathing badly|blowing hard|working \
hard to breathe|short of puff|finding it hard to breathe|having difficulty breathing|breathing too fast|breathing \
very fast}, {he|she|patient|they} {can not|can hardly|can barely|not|hardly|says he can not|says she can not|could \
not|struggles to|is struggling to|finds it hard to|has trouble to} {breathe|get breath|get his breath|get her \
breath|catch his breath|catch her breath|get air|get enough air|breathe well|breathe right|catch breath|get a \
breath|finish a sentence|breathe properly|get any air|speak in full sentences|talk for breath|breathe at all|get \
his breath back|get her breath back}
breathing easily = {he|she|patient|breathing|they|his breathing|her breathing|breath|chest} {is|breathes|is \
breathing|breathing|looks|is all|seems|is nice and|moves|rises|is rising|goes|} {easily|easy|fine|normally|well|\
okay|calmly|quietly|regular|regular and easy|nice and easy|calm and easy|without trouble|no bother|no problem|no \
trouble|normal|slow and easy|comfortably|nice and slow|just fine|unlaboured|freely|without effort|away fine|all \
right|alright|grand|steadily|evenly|nicely|easy and quiet|comfortably and no pain|fine no pain|normally no pain|\
fine and no pain|easily no pain|as normal|nice and calm} {no bother|no pain|no problems|and no pain|not in pain|no \
trouble|}, {no|not any|without|never any} {trouble|difficulty|problem|problems|bother} {breathing|with his \
breathing|with her breathing|with breath|with his breath|with her breath|getting breath|to breathe|catching his \
breath|catching her breath|with breathing} {at all|no pain|and no pain|whatsoever|or pain|}, {not|neither} {short \
of breath|breathless|out of breath|struggling|gasping|wheezing|struggling to breathe} {not in pain|and not in pain|\
or in pain|no pain|and no pain|nor in pain|and not hurting}
dizzy = {he|she|patient|they|head|his head|her head} {is|feels|says he is|says she is|is feeling|says he feels|says \
she feels|is a bit|feels a bit|feels a little|has gone|is going|feels very|is really|feels kind of|is about to|\
might|tells me he is|tells me she is|complains of feeling|got|has got|gets} {dizzy|faint|light headed|lightheaded|\
woozy|giddy|spinning|swimming|funny in the head|wobbly|unsteady|head spinning|dizziness|a dizzy head|a spinning \
head|faint and dizzy|dizzy and sick|swimmy|light in the head|like fainting|like passing out|pass out|like the room \
is spinning|a bit faint|dizzy when sitting up|muzzy} {now|when sitting|on standing|}, {room|everything|the room|the \
whole room} {is|keeps|} {spinning|going round|spins|turning|moving|goes round} {for him|for her|he says|she says|}
comfortable = {arm|it|he|she|patient|his arm|her arm|they} {is|feels|says|says it is|says it feels|is feeling|says \
arm is|says he is|says she is|says his arm is|says her arm is|says his arm feels|says her arm feels|tells me it is|\
tells me it feels|said it is|said it feels|says arm feels} {comfortable|fine|good|okay|all right|alright|grand|\
comfy|normal|no bother|great|nice and comfortable|perfectly comfortable|quite comfortable|no different|perfectly \
fine|well|lovely|just fine|cool and comfortable|no problem} {no burning|no swelling|no burning no swelling|no \
burning or swelling|no stinging|no bother|no pain|no complaints|nothing burns|no problems|no stinging no swelling|\
not burning|not swollen|no burning and no swelling|}, {no|not any|nothing|without} {burning or swelling|burning no \
swelling|burning stinging or swelling|stinging or swelling|burning and no swelling|burning nor swelling|stinging no \
swelling} {at all|he says|she says|in arm|in the arm|there|}
burning = {arm|it|his arm|her arm|vein|that|skin} {is|feels|is a bit|feels a bit|is really|is starting|has started|\
started|} {burning|stinging|hot|on fire|hot and burning|burning up the arm|like it is on fire|stingy|burny}, {arm|\
it|his arm|her arm|vein|drip|drug} {burns|stings|is burning|is stinging|starts to burn|starts to sting} {a bit|when \
it runs|him|her|going in|a lot|up the arm|where it goes in|as it runs|as it goes in|like mad|in the arm|along the \
vein|like fire|badly}, {he|she|patient|they} {says|said|tells me|complains|told me|feels|has|is feeling|complains \
of|reports|is complaining of|says there is|has got|mentions|cries|complains that|says that} {it burns|it stings|\
burning|stinging|a burning feeling|it is burning|it is stinging|it is hot|some burning|a bit of burning|a burning|a \
stinging feeling|a stinging|that it burns|it feels hot|a burn|it burns a bit|it is burning up the arm|it stings a \
bit|a hot feeling|heat up the arm}
quiet and fine = {pump|it} {is|is still|stays|stayed|runs|} {quiet|quiet and running|silent|fine|quietly|running \
quietly|not alarming} {and|} {patient|he|she|the patient} {is|looks|feels|says he is|says she is} {fine|good|okay|\
well|comfortable|all right|fine too|grand|happy|calm}, {no|not any|without|nothing} {alarm|alarms|beeping|noise|\
beep} {and|} {patient is fine|patient fine|patient is good|he is fine|she is fine|he feels fine|she feels fine|\
patient feels fine|patient is comfortable|she is comfortable|he is comfortable|she looks fine|he looks fine|patient \
good|patient is okay|he is well|she is well|looks comfortable|patient looks fine|patient is well}
bleeding = {he|she|patient|gums|nose|they|his gums|her gums|his nose|her nose|mouth|site|cut|old site|her mouth|his \
mouth|wound} {is|are|bleeds|bleed|has|says|keeps|started|has had|had|is still|has started|are still|have started|\
has got|got|gets|noticed|saw|has noticed} {bleeding|bleeding gums|a nosebleed|blood in pee|blood in urine|blood in \
his urine|blood in her urine|blood in his pee|blood in her pee|blood in stool|bruises|new bruises|a bruise|oozing|\
bleeding a bit|a new bruise|bruising|bleeding from gums|bleeding from nose|blood when brushing teeth|pink urine|\
black stools|bruises all over|blood on toothbrush|blood on his toothbrush|blood on her toothbrush|red urine|\
nosebleeds|blood in the toilet|blood in his stool|blood in her stool|bleeding somewhere|some bruises|some bleeding|\
blood on the pillow|bruises on arm|bruises on his arm|bruises on her arm} {today|this morning|now|somewhere|he says|\
she says|}, {there is|see|found|got|can see|see some} {blood|bleeding|bruising|bruises|some blood|some bleeding|a \
bruise|new bruising|a big bruise|a new bruise|blood in his pee|blood in her pee|blood in his urine|blood in her \
urine|blood in urine|blood in pee|blood on gums|blood on the gums|blood in the catheter bag|blood in bag|blood in \
the bag|fresh bruises|blood in stool|blood in the urine|blood in his mouth|blood in her mouth|blood on the sheet|\
bleeding at the gums|bleeding from the nose|bruises on his arms|bruises on her arms|some bruising|new bruises} {he \
says|she says|there|on arm|}
none / bleeding = {no|not any|not|nothing|without|zero|denies any|no sign of|no signs of|not a drop of} {blood|\
bleeding|bruises|bruising|bleeding anywhere|blood anywhere|blood seen|bleeding seen|blood or bruises|bleeding or \
bruising|bleeding no bruises|blood at all|bleeding no bruising|blood no bruises|bleeding or bruises|bruises no \
bleeding|new bruises|bruising or bleeding} {and he says no|and she says no|i asked|he says|she says|at all|and he \
says none|and she says none|anywhere|to see|i asked too|and patient says no|on patient|and he has not noticed any|\
and she has not noticed any|he says no|she says no|}, {he|she|patient} {says|said|tells me} {no|none|nothing|no \
bleeding|no blood|no bleeding anywhere|there is none|no bleeding at all|nothing of the kind|no blood anywhere} {and \
i see none|and none to see|and there is none|and i see nothing|}, {not|is not|has not been|never} {bleeding|\
bleeding anywhere|bled|bleeding at all|bruised|bruising|bleeding from anywhere|noticed any|noticed any blood} {i \
asked|he says|she says|at all|}
a bleeding risk = {he|she|patient|they} {is|takes|has|bruises|bleeds|is taking|gets|uses|is still|is down as|is \
down for|is charted for} {on blood thinners|on thinners|blood thinners|thinners|on warfarin|warfarin|on \
anticoagulants|an anticoagulant|a bleeding risk|at risk|easily|easy|on aspirin|aspirin|on a blood thinner|a blood \
thinner|on heparin|heparin|low platelets|a bleeding disorder|bruises easily|a bleeder|on apixaban|apixaban|on \
clopidogrel|clopidogrel|on something for clots|tablets to thin the blood|something to thin the blood|on blood \
thinning tablets|blood thinning tablets|nosebleeds|a history of bleeding|haemophilia|hemophilia|on rivaroxaban|\
rivaroxaban|a clotting problem|a clotting disorder|easy bruising|bruised easily|a tendency to bleed|on tablets for \
clots|bruising easily|very easily}, {there is|got|has|see|chart shows|chart says|listed|down as|yes|shows} {a risk|\
a bleeding risk|warfarin|blood thinners|aspirin|risk|heparin|anticoagulants|thinners|a blood thinner|an \
anticoagulant|easy bruising|apixaban|clopidogrel|a history of bleeding|easy bleeding|low platelets|a bleeding \
history|rivaroxaban} {on chart|on the chart|in chart|listed|there|in the chart|written|}
none / a bleeding risk = {no|not any|not on any|not taking any|takes no|without|nothing like|not on|on no|never had \
any|neither|does not take any|not on any of those} {blood thinners|thinners|anticoagulants|risk|bleeding risk|blood \
thinners or easy bleeding|bleeding problems|such drugs|thinners or bleeding|such tablets|blood thinners no easy \
bleeding|thinners no bleeding|blood thinners and no bleeding|blood thinners nor easy bleeding|of those} {at all|\
listed|on chart|in chart|there|no bleeding|and no bleeding|and no easy bleeding|and bleeds normally|no easy \
bleeding|and does not bleed easily|does not bleed easily|and does not bleed easy|and does not bruise easily|nothing|\
on the chart|and no history|not a bleeder|}, {not|does not|he does not|she does not|never} {on anything|on anything \
like that|take any|on any|on any of those|take anything like that|at risk|on those|take them|take thinners|on \
anything like that and does not bleed easy|on anything like that and does not bleed easily|bruise or bleed easily|\
take anything and does not bleed easily}
patient unwell = {he|she|patient|they} {does not look|does not feel|is not|is not feeling|is not looking} {well|\
good|right|fine|very well|so good|too good|well at all|himself|herself} {now|at all|}, {he|she|patient} {is|feels|\
looks|has gone|says he is|says she is|says he feels|says she feels|is feeling|is looking|went|has|started|is \
getting|is a bit|looks a bit|feels a bit|has become} {unwell|ill|poorly|sick|dizzy|faint|pale|grey|sweaty|clammy|\
not well|bad|terrible|awful|worse|breathless|vomiting|shivering|shaking|in pain|short of breath|rotten|feverish|\
drowsy|rough|peaky|off colour|nauseous|pains|a headache|chest pain|hot and shivery|queasy|confused} {now|all of a \
sudden|suddenly|}
"""
"""By the alternative: patterns of ways to say it; behind a stroke, the alternative that stands beside it."""
