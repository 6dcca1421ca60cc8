"""How people say what an order, a label, a chart or a table says, as patterns in English: see `choices`."""

PATTERNS = """
all there = {everything|all} {is on it|on it|is written|written|written down|filled in|is present|accounted for|\
ticked}
    {nothing|not a thing|not anything|nothing else} {missing|lacking|left out|left off|omitted|wanting|forgotten}
    not {missing|lacking} {anything|a thing|any}, no {part|item|bit|box|detail} {missing|left out|blank|empty}
    {got|have} {all of it|all of them|the lot|everything}, {full|complete} order, the lot is there, it has {it all|\
got it all}
    {has|got} {all it needs|everything it needs|everything it should|all the parts|all its parts}
    {everything|all of it} {there|is there} {and clear|and legible|and signed|and readable|clear and signed|clear \
signed|}
    {complete|all complete|it is complete} {and legible|and readable|clear signed|legible and signed|and all signed}
    {all|everything|each box|every box} {filled|ticked|written} {in|out|} {and signed|and clear|}, no {gaps|blanks|\
holes}
    {signed|signature} {and everything|and all|and all there|and complete|is there too|there too|on it too}
    {easy to read|legible|readable|clear} and {signed|complete}, see {signature|signed} also
    every {thing|single thing|detail|line|item|part} {is there|there|on it|is on it|written|is written}
something missing = {somebody|someone|they|nobody|doctor|prescriber|he|she} {forgot to|did not|has not|never} {sign|\
sign it|date|date it}
    {somebody|someone|they|doctor|prescriber|he|she} forgot {signature|the signature|date|dose|rate|volume}
    {is missing|missing|lacks|lacking|wants|needs|has no} {signature|a signature|a sign|an initial}
    not {all|everything} {there|on it|written|filled in|complete|clear}, {not|never} been signed {off|}
    {it does not|order does not|does not} {say|state|give|show|tell|mention} {how fast|how much|how long|which \
fluid|what fluid|what rate|what dose}
    {no|not any|not a} {signature|sign|initials|initial} {on it|there|at the bottom|anywhere|from doctor|yet|at all|\
to see|}
    {unreadable|illegible} {writing|handwriting|rate|dose|signature|}
    {signature|sign|signing} {is missing|missing|not there|not on it|lacking|absent|blank|empty}
    one {box|part|thing|item|detail|bit} {is blank|blank|empty|missing|left blank|left empty|not filled in|not \
there|short}
    {something|a bit|a part|one part|one item} {is not there|not there|not written|not filled in|blank|absent|\
omitted|lacking|unclear|not clear}
    incomplete order, order {incomplete|is incomplete|not complete|not signed|is not signed|unsigned}, there is \
something missing
    {isn't|not} {signed|dated|complete} {yet|by anyone|by anybody|by doctor|by the doctor|}
together = {fine|okay|safe|good|all right|alright} together {with saline|with it|with that|with the fluid|with \
running fluid|with the saline|with each other}, together {is fine|fine|okay|is okay|is safe|safe|allowed|is allowed|\
good|no problem|yes}, {no problem|no problems} {together|with it}
    {fine|okay|safe|good|compatible|all right|alright|ok} {together|with it|with that|with each other|with saline|\
with running fluid|with the fluid|with one another|in one line}
    {together|compatible} with {saline|it|dextrose|normal saline|that fluid|running fluid|the fluid}, {they are|\
both|two are|two|these are|are} compatible
    {can|may|could} {go|run|be run|be given|be mixed|go in|run in|mix} {together|with it|in one line|same line|in \
same line|through one line|side by side}
    {can|may} {both run|both go|mix|be mixed|go with it|share a line|share line}, {no|not any|no known} \
{incompatibility|interaction|interactions|clash|problem mixing}
    {okay|fine|safe|allowed} to {run|give|mix|go} {together|with it|them together|in one line|}, {not|nothing} \
incompatible
    {runs|run|goes|go|works|mixes|mix} {fine|well|okay|happily|safely} {together|with it|with saline|with each \
other|}, they {get on|get along|agree|match|mix fine}
    {listed|shown|marked|down} as compatible, {green|a tick|a green tick|a yes} {for both|for together|}, \
compatible {at y site|in the table|in the book}
apart = {must|has to|have to|need to|needs to|got to|should|should be|must be|to be|better} {stay|be kept|be|run|be \
run|go|kept} {apart|separate|separately|alone}
    {keep|kept|stay|stays|run|give|leave} {apart|separate|separated|separately|alone} {from each other|from it|from \
one another}
    {not|never|in no way} {compatible|together|to be mixed|to be run together|to go together|mixable|allowed|a good \
mix}
    {not|never} {run|go|give|mix|put|be run|be given|be mixed} {together|with it|with that|in one line|with saline|\
in same line|in the same tubing|same tubing|in same tube|side by side}
    {can not|may not|must not|should not|do not|cannot} {run|go|be run|be given|be mixed|mix|be together|share|\
give} {together|with it|in one line|them|one line|in same line|a line|}
    {they are|both are|two are|these are|it is|that is|} incompatible {with it|with saline|with each other|with the \
fluid|with dextrose|}
    {two|two separate|separate|different|own|its own|another} {lines|line|sets|set|tubing|access} {each|needed|for \
each|please|}
    {it|they} {would|will|might|can|could} {precipitate|clash|react|crystallise|clump|go cloudy}, {they|they would|\
two} {clash|react|fight}
    {one|each} {line|set} each, {needs|need|wants|want} {own|its own|their own|a separate|another|different} {line|\
set|access|tubing}
    {not|do not} {get along|get on|mix well|go well together|go|mix at all}, {listed|shown|marked|down} as \
{incompatible|not compatible}
share one set = {can|may|okay to|fine to|safe to|allowed to} {share|use|go in|run in|both use|both share} {one set|\
a set|same set|the same set|one|one tubing}
    {one|same|the same} set {is fine|is okay|is enough|for the two|works|does both|is safe|allowed|for both of them|\
will do for both}
    {both|two|they} {fit|fine|okay|safe|go|can go|can run} {in one set|in same set|through one set|through same set|\
on one set|together}
    {fine|okay|safe|compatible|all right|good} {in one set|in same set|sharing|to share|with one set|to share one|\
together}, sharing {is fine|fine|okay|allowed}
rinse it in = {rinse|flush|wash|push|run} {rest|remainder|it|drug|what is left|whats left|residue|the rest|the \
remainder|last of it|last bit|dead space} {in|through|into patient|into him|into her|into vein|to patient|}
    {we|they} {rinse|flush|wash} {it|rest|remainder|drug|the rest|the remainder} {in|through|into patient|into the \
patient|into vein|} {here|}
    {rinse|flush} {line|set|tubing} {in|through|with saline|}, {it|rest|drug} {gets|is|must be|has to be|should be|\
to be} {rinsed|flushed|washed} {in|through|}
    so rinse, so it is rinsed in, must {rinse|rinse it|flush it in}, {rinsing|flushing} {in|through|rest in|rest \
through}
leave it = {just|} leave {what is in there|whats in there|what in there|rest|the rest|remainder|as is|it as it is|\
it alone|it all|set as it is|drug where it is|it in there|in there}
    {do not|not|never|no need to|not to|without} {rinse|flush|rinse it|flush it|rinse it in|push it in|flush it in|\
flush it through|wash it in|rinse through}
    {stays|stay|remains|remain|to stay|is left} {in set|in line|in tubing|in there|behind|where it is|as it is}, \
{no|not any} {rinse|rinsing|flush|flushing} {here|needed|allowed|at all|}
    {bin it|throw it|discard it|dispose of it|goes in bin|thrown out|throw it out} {with set|with the set|with it}, \
so leave, we leave {it|rest|that} {here|}
in date = {good|fine|valid|okay|in date|still good|still valid|fresh|current} {for another day|for a day yet|for \
days|for a while|for a while yet|a while yet|two more days|another day|one more day}
    {well|still|comfortably|nicely|easily|definitely} {in date|within date|within time|inside its date|in its time},\
 {date|label} {is fine|fine|says fine|okay|is good|is okay|all right}
    not {out of date|past it|due|due yet|expired|overdue|past its date|old|old enough} {yet|}, plenty of {time|\
days} {left|yet|on it}
    {has|got|have|still has} {time|days|a day|two days|one day|hours|three days} {left|to go|yet|on it|to run}, {up|\
hung|hanging|changed|put up|new|started|from} {yesterday|today|this morning|only yesterday|only today}
    {not|only} {a day|one day|two days|a day or two} {old|up}, {only|just} {went up|put up|hung|changed|started} \
{yesterday|today|this morning|last night}
overdue = {one|two|three|four|five|six|seven|a|few} {days|day|weeks|week} {old|late|over|past|overdue|over date|too \
old|too long|out|out of date|past its date}
    {should|ought to|was meant to|meant to|supposed to|was supposed to|was to|had to} {have been|be|come|have come} \
{changed|replaced|down|off|swapped} {yesterday|already|last night|last week|days ago|by now|ages ago|two days ago|}
    {was|is} {due|due out|due off|due to be changed|due for changing} {yesterday|last night|last week|days ago|two \
days ago|the other day|ages ago|before now}
    {gone|went|ran|run} {over|past|out|past its date|over its date|past due|beyond} {its time|its date|yesterday|\
date|limit|}, {past|over|beyond} {it|its time|its limit|its days|due date|due|four days|limit|change date}
    {not|no longer|not any more} {in date|current|valid|good|fresh|within date}, {out of date|late|over} by {a day|\
two days|days|one day}
    {older|longer|more} than {allowed|four days|it should|should be|a week|it may}, {been|hung|hanging|up} {up|on|\
there|too long|for} {too long|five days|six days|a week|over four days|more than four days|since last week}
no label = {no|not any|not a|not one|without} {label|labels|sticker|tag|date sticker|label on it} {on it|at all|to \
be seen|there|anywhere|on set|on line|on bag|to find|that i can find|I can see|in sight|whatsoever|}
    {label|sticker} {has come off|has fallen off|is off|came away|has gone|is gone|not there|is missing|missing|\
fell away|lost|not found|was never put on}
    {can not|not|could not} {find|see} {a label|the label|any label|one|a sticker|any sticker|any date}, {nobody|no \
one|they|somebody} {labelled it|put a label|forgot to label|forgot label|did not label|labelled this}
    {nothing|not anything} {stuck on|written on|stuck on it|written on it|on it anywhere|written there}, \
{unlabelled|not labelled} {set|line|bag|at all}, forgot {to label it|label}
in time = {all|both|each|every one|every bag|all of them|both of them|each one|they are all|all bags|both bags} \
{still|} {within|in|inside} {time|their time|date|limit|time limit|its time|a day|the day|24 hours}
    {none|neither|not one|no bag} {too long|over|overdue|late|over time|past|over its time|hanging too long|out of \
time|up too long|past its time}
    {all|both|each} {hung|put up|changed|up|from|started} {today|this morning|this shift|since morning|less than a \
day}, {well|still} {within|inside|in} {time|their time|its time|24 hours|day}
    {not|nothing} {over|past} {time|its time|a day|24 hours|a day yet}, {under|less than|not yet} {a day|24 hours|\
twenty four hours}, {all|both} {bags|} {fine|good|okay} {for time|on time|in time}
hanging too long = {should|ought to|was meant to|was supposed to|was to} have {come down|been down|been changed|\
been taken down|come off|gone} {yesterday|last night|by now|already|hours ago|this morning|before now|long ago|}
    {one|this one|that one|small one|big one|first one|second one|a bag} {has been up|is over|over|over its time|up \
too long|hanging too long|too old|is too old|been up too long|past its time|overdue|expired|out of time}
    {over|past|more than|longer than} {a day|its time|24 hours|its limit|twenty four hours|time|limit|a day now|day \
and a half}
    {been|hung|hanging|up|has been|it has been} {up|there|hanging|on|} {since yesterday|since yesterday morning|for \
two days|two days|for days|since the weekend|too long|over a day|more than a day|ages}
    {needs|need|has} to {come down|be changed|be taken down|go}, {was|been} due {down|yesterday|last night|to come \
down|hours ago}
due = {it is|dose is|set is|is|} due {now|today|by now|right now|this minute|for it|for changing|for a change|for a \
new one|for replacement}, {past|over|beyond} {its date|four days|its time|time|the date|it}
    {time|high time|about time} {for it|for a change|for the next|for next|to give it|to change|to change it|it was \
changed|for a new one|it went}
    {needs|need|must be|has to be|wants|to be} {changing|changed|a change|replacing|replaced|swapping|a new one} \
{today|now|}
    should have been {changed|replaced} {today|now|yesterday|by now|already}, {long|hours} enough {since|after} \
{last|last one|last dose|the last}, {can|may|should} {have it|be given|go in|give it} now
still fresh = {only|just} {hung|put up|changed|went up|started|up|opened} {yesterday|today|this morning|last night|\
since yesterday|one day|a day|last evening}
    {hung|put up|changed|went up|from} {yesterday|today|this morning|last night}, {good|fine|fresh|okay|in date} \
{for another day|for days|for two more days|two more days|a while yet|another day|for a while|yet|still}
    {not|no need to be|does not need} {changing|changed|a change|old|due|due yet|old yet|changing yet|due today|due \
till tomorrow|due for days}, {plenty of time|days|has days|time|two days|days to go} {left|left on it|yet|to go}
    {not|only} {a day|one day|two days|a day or two} {old|up}, {still|nice and|quite|pretty} {new|fresh|young}, \
{well|still} {within|inside|in} {its time|time|date|its date|four days}
too early = {had|got|given|gave|been given|had one} {it|one|} {an hour ago|two hours ago|one hour ago|half an hour \
ago|just now|already|not long ago}
    {not|is not|not yet|it is not} {due|time|due yet|time yet|due for an hour|due for hours|due till noon|due till \
tonight|due until tonight|due for two hours|long enough|been long enough|due for a while}
    {only|just} {two|one|three|an|a couple of} {hours|hour} {since|after|from} {last|last one|last dose|the last \
one}, {hour|two hours|bit|few hours|an hour|couple of hours} {too early|too soon|early|to go|to wait}
    {too|far too|much too|way too|bit too|a bit too} {early|soon|close}, {next|it is due|due|not due until|next \
due} {later|at noon|tonight|this evening|this afternoon|in an hour|in two hours}
    {have to|must|has to|got to|need to|should} wait {for it|a bit|another hour|an hour|longer|till noon|two hours|\
}, {already|just} {given|had|got|signed for|charted} {it|this one|that|}
safe to give = {no|not any|nil|zero|not a single|no known|no recorded} {allergy|allergies|reactions|reaction} {on \
chart|in chart|on record|listed|to this|to that|to drug|to fluid|to anything|to saline|known|down|noted|on file|\
here|at all|}
    {not|never|nothing} {allergic|allergic to it|allergic to this|allergic to that|allergic to anything|allergic to \
this drug|reacted|reacted to it|listed|against it|noted|sensitive}
    {he|she|patient|this patient|they} {can|may|is allowed to} {have|get|take|receive} {it|this|that|this one|this \
drug|fluid|drug}, {allergies|allergy} {nil|none|none known|says none|says nil}
    {safe|fine|okay|good|clear|all right|alright|ok} {for this patient|to go ahead|to give it|to have|to have it|to \
start|to run|for patient|with this|with this drug|with it|as far as allergies go}
    chart {says none|says no allergies|is clear|has none|shows none|shows nothing|says nothing against it|is clean|\
clean}, {safe|clear} {on allergies|allergy wise}, {tolerates|tolerated|takes} it {well|fine|before|}
safe to use = {no|not any|nil|zero|none|no known} {allergy|allergies|reactions} {on chart|to tape|to latex|to wipe|\
to any of it|to any of these|to latex tape or wipe|to latex or tape|to latex tape wipe|to the wipe|there|recorded|\
listed|noted|here|}
    {not|nothing} {allergic|allergic to any of it|allergic to any of these|allergic to none|recorded|listed|against \
any|against any of it|against them|sensitive}
    {fine|okay|safe|good|all right|alright|no problem|no problems|ok} {with latex tape and wipe|with latex tape and \
wipes|with all of them|with all three|with all of it|with them all|with all four|with them|with everything|with \
these|with those|for this patient|for patient}
    {all|all three|all four|all of them|everything|each|every one} {safe|is safe|are safe|fine|okay|good|clear|can \
be used|may be used|safe to use|okay to use|fine to use}
    {can|may} {use|be used|use them|use them all|use all of them|use everything|use all}, {none|not one|neither} of \
{them|these|those|three|it} {a problem|listed|on chart|an issue|in chart|recorded}, {tolerates|tolerated} {all|them|\
it all}
allergic = {allergic|reacts|reacted|sensitive|an allergy|allergy} to {this|that|it|tape|latex|wipe|the wipe|wipes|\
the tape|penicillin|this drug|drug|this one|adhesive|plaster|chlorhexidine|one of them|one of these|saline|\
antiseptic|the drug|plasters|that drug|gloves}
    {has|got|have|there is|listed|down|known|noted|says|recorded|written} {an allergy|allergy|a reaction|allergic|\
an allergy to it|allergy to it|a latex allergy|a tape allergy|an allergy here|a known allergy}
    {comes|came|come|breaks|broke|gets|got|get} {up|out|} {in a rash|in hives|in spots|in bumps|hives|a rash|in \
welts|itchy} {with it|from it|from tape|from latex|to it|with tape|with latex|with that|from that|}
    {can not|not|must not|should not|may not|not allowed to|not supposed to} {have|get|take|have it|get it|have \
this|have that|be given it|have this one|take it|have this drug|get this|be given this|use it|use latex|use tape}
    {latex|tape|wipe|penicillin|antiseptic|adhesive|drug} {is a problem|a problem|is on his list|is on her list|is \
listed|listed|no good|makes him itch|makes her itch|gives her a rash|gives him a rash|brings him out in a rash|\
brings her out in a rash}
    {swelled|swells|swelled up|itched|blistered|went red|came out in rash} {last time|with it|from it|from tape|to \
latex|with latex|from latex|when given it}, {not|is not|no longer} {safe|safe for him|safe for her|safe for patient|\
safe for this patient|okay to give|fine to give|safe to use}
it stays = {keep|keeping|leave|leaving|to keep|to leave|kept|left} {it|cannula|catheter|iv|the line|line|it all} \
{in|in place|there|where it is|in situ|as it is|for now|in him|in her|}, {cannula|catheter|it|iv|line|this one} \
{stays|remains|stays in|stays put|is to stay|to stay|stays where it is|is staying|can stay|may stay|has to stay|\
must stay|is left in|is kept|is to remain}
    {not|do not|never|no need to} {remove|take out|pull|taken out|removed|coming out|take it out|pull it|to be \
removed|remove it|remove catheter|to come out|come out|for removal}, stay {in|there|in place|put}, in situ
it comes out = {take|taking|took|pull|pulling|get|to take|whip} {it|cannula|catheter|iv|this|line|it all} {out|off},\
 {remove|removing|to remove} {it|cannula|catheter|iv|line|this}
    {cannula|catheter|it|iv|line|this one} {comes out|out|is to come out|to come out|is coming out|goes|is to go|\
has to come out|must come out|has to go|can come out|to be removed|is to be removed|gets removed|is for removal|\
should come out|gets pulled|to go|can go}
    {not|does not|no longer|it does not} {stay|stays|staying|staying in|to stay|needed|kept|keep it|to be kept|stay \
in|wanted}, {comes|come|coming|goes} out {today|now|after this|}
stays in = {keep|keeping|leave|leaving|to keep|to leave|kept|left} {it|cannula|catheter|iv|the line|line|it all} \
{in|in place|there|where it is|in situ|as it is|for now|in him|in her|}, {cannula|catheter|it|iv|line|this one} \
{stays|remains|stays in|stays put|is to stay|to stay|stays where it is|is staying|can stay|may stay|has to stay|\
must stay|is left in|is kept|is to remain}
    {not|do not|never|no need to} {remove|take out|pull|taken out|removed|coming out|take it out|pull it|to be \
removed|remove it|remove catheter|to come out|come out|for removal}, stay {in|there|in place|put}, in situ
comes out = {take|taking|took|pull|pulling|get|to take|whip} {it|cannula|catheter|iv|this|line|it all} {out|off}, \
{remove|removing|to remove} {it|cannula|catheter|iv|line|this}
    {cannula|catheter|it|iv|line|this one} {comes out|out|is to come out|to come out|is coming out|goes|is to go|\
has to come out|must come out|has to go|can come out|to be removed|is to be removed|gets removed|is for removal|\
should come out|gets pulled|to go|can go}
    {not|does not|no longer|it does not} {stay|stays|staying|staying in|to stay|needed|kept|keep it|to be kept|stay \
in|wanted}, {comes|come|coming|goes} out {today|now|after this|}
it goes on = {infusion|it|drip|order|fluid|this} {goes on|continues|carries on|keeps going|keeps running|is ongoing|\
runs on|is to continue|is still on|still running|still active|is still ordered|still ordered|to continue|is to go \
on|stays on|stays up|has to go on}
    {not|has not|is not|not yet} {ended|finished|stopped|over|ended yet|done|done yet|over yet|been stopped|stopped \
yet|to be stopped|finished yet|cancelled}, {keep|keeping} {going|it going|it running|running|on}
    {carry|go|keep} on {with it|as before|for now|}, {runs|goes|continues|carries on} {till|until} {morning|\
tomorrow|tonight|evening|noon}, {another|one more} {bag|litre|round} {ordered|is ordered|to follow|to come}
it has ended = {infusion|it|drip|order|fluid|this} {has ended|is over|is done|is finished|has stopped|stops|is to \
stop|is stopped|was stopped|has been stopped|is complete|ended|finished|over|is cancelled|to be stopped|is to be \
stopped|comes to an end|ends here|ends|completed}
    order {says stop|says to stop|says stop it|says end|says it is over|to stop|says finished|has run out|has \
ended}, {says|told to} {stop|stop it|to stop|end it|to stop it}
    {not|no longer|no more} {going on|to continue|to go on|continuing|ordered|running on|to be continued|needed|\
carrying on|active}, {stop|end} {it|infusion|now|it now|the infusion|drip}
    {no|not any} {further|more} {infusion|fluid|bags|bag|orders|order}, {done|finished|over|stopped} {with|now|for \
good|as of today|today|as of now}
same fluid = {another|one more|a second|next|a new|a fresh} {bag|litre|one|bag of it|round} {of same|of same fluid|\
of same stuff|of the same thing|same fluid|same as before|same as this|the same|of that|like this one|of what is \
running|of what is up|of what is hanging|like the last}
    {same|the same|exactly the same|identical|very same|exact same} {fluid|bag|stuff|solution|thing|one|order|again|\
kind|type} {as before|again|as now|as last time|as this one|as the last one|as hanging|as running|as the one up|as \
up there|as the old one|as what is up|as what is running|as on the pole|as first|}
    {not|nothing|no} {a different|different|changed|change|change there|changed there|new|new there|switch} {one|\
fluid|bag|from before|at all|}, {matches|equals|like} {what is hanging|what is running|what is up|the one hanging|\
the one running|the old one|the old bag|last one}
something else = {different|a different|another|a new|new|not the same|other|some other} {fluid|one|solution|drug|\
bag|kind|stuff|sort|thing|order|kind of fluid|type} {ordered|now|this time|is ordered|is prescribed now|prescribed|\
prescribed now|altogether|is prescribed|next|}
    {not|not at all|no longer} {same|the same|the same fluid|the same one|the same bag|same as before|what is \
hanging|what is running|what is up|what was up|identical|the same again|like before|same as hanging}
    {changed|swapped|switched|it changes|changes|change|they switch|switching|changing} {to|over to|it to|him to|\
her to} {dextrose|glucose|saline|ringers|half saline|something else|another|another one|another fluid|a different \
one|plain saline|potassium|hartmanns}
within range = {well|safely|comfortably|nicely|easily|right|just|still|bang|squarely} {within|in|inside} {range|\
limits|the limits|the usual range|usual range|the usual|the usual limits|what is usual|normal limits|the range|bounds}
    {within|in|inside|between} {what is allowed|what is usual|what they allow|allowed range|recommended range|the \
table|bounds|the two|min and max|minimum and maximum|the recommended|stated range|listed range|range given|the \
normal range}
    {dose|rate|it|speed|dose and time|both|all|time and dose|dose rate|amount} {is in range|in range|is within \
range|within range|within limits|is within limits|is usual|is normal|is fine|is okay|in the range|falls in range|is \
inside the limits|is in the usual range|sits in range|are in range|are within range|are fine|are usual|are both in \
range}
    {usual|normal|ordinary|typical|standard|common|a normal|a usual} {dose|rate|amount|range|speed|for it|for this \
drug|for that drug}
out of range = {well|way|far|just|slightly|a bit|much|a little|bit|clearly|too far} {out of range|above range|\
outside|outside range|over limit|over the limit|above the limit|above limit|below range|over|under|beyond|above|too \
high|too much|too fast|too strong|higher than usual|faster than usual|above usual|below usual|too slow|too low|over \
the maximum|above the maximum|over max|above what is usual|outside the range|outside the limits|over the top}
    {more|higher|faster|lower|less|slower|bigger|stronger} than {allowed|it allows|is allowed|the limit|max|the max|\
the maximum|usual|normal|recommended|the book says|the range|the table|the book allows|the usual dose|the usual \
rate|the top of the range|should be|it should be|they recommend|what is usual|what is allowed}
    {twice|double|three times|ten times|half} {usual|usual dose|normal|normal dose|the limit|the usual|the usual \
dose|the usual rate|max|the max|what it should be|maximum|the maximum|the normal dose}
    {dose|rate|it|speed|dose rate} {is too high|is too much|too high|is too fast|is too low|is too strong|goes over|\
is over|is over the limit|is above range|is out of range|is outside|exceeds it|exceeds the limit|is over the max|is \
above the limit|is above the usual|goes beyond|is off the chart|tops the limit}
    not {in|within|inside|between} {range|limits|the range|usual range|the usual range|the limits|bounds|the usual \
limits|normal range|it}, off the {chart|scale|top}, {runs|goes} {too fast|in too fast|too quick|in too quickly|over \
it|over the limit|over}
low = {it|that|result|potassium|level} {is|reads|comes|came} {low|too low|on the low side|below range|below normal|\
under|under range|down|a bit low|back low}, {under|below|beneath} {three point five|the range|the limit|the normal \
range|the line|what it should be|3 5}
    {not|is not} {enough|high enough}, {bit|little|slightly|quite|very|pretty|rather|well} {low|below|below normal|\
below range|on the low side|under|down}
normal = {it|that|result|potassium|level} {is|reads|comes|came|came back|comes back} {normal|fine|in range|within \
range|in the normal range|okay|good|where it should be|in the middle|spot on}, {neither|not} {high nor low|low nor \
high|too high or too low|too low or too high|high or low|low or high}
    {nice and|perfectly|all|completely|well} {normal|in range|within range|within normal}, bang on normal, {in|\
within|inside} {the limits|the range|normal limits|the normal limits|reference range|the reference range|the normal|\
its range}
high = {it|that|result|potassium|level} {is|reads|comes|came} {high|too high|on the high side|above range|above \
normal|over|over range|raised|up|a bit high|elevated|back high}, {over|above} {five point five|five|the range|the \
limit|the normal range|the line|what it should be|5 5}
    {bit|little|slightly|quite|very|pretty|rather|well} {high|above|above normal|above range|on the high side|\
raised|up|over}
ready-mixed = {came|comes|come|arrived|arrives|delivered|supplied|bought|is|was} {ready mixed|premixed|already \
mixed|mixed already|pre mixed|made up|already made up|ready made|ready made up|ready to hang|ready to use} {from \
pharmacy|from supplier|from manufacturer|from factory|from maker|by pharmacy|by manufacturer|from the company|}
    {pharmacy|factory|manufacturer|maker|supplier|company|pharmacist} {mixed|made|made up|prepared|supplied|mixed \
it|made it|made it up|prepared it|sent it|sent it mixed|sent it ready|did it|sealed it}, {mixed|made|made up|\
prepared|labelled|supplied|filled} {by|in|at|from} {pharmacy|factory|manufacturer|maker|supplier|pharmacist|company|\
the pharmacy|the factory}
    {ready|factory|pharmacy|pre} {mixed|made|made up|prepared|mix|labelled} {bag|one|}, {from|off} {pharmacy|the \
pharmacy|the factory|the manufacturer|the maker|the supplier|the company}, off the shelf, {no|not any} {added drug \
label|additive label|drug added|ward label}
mixed on this ward = {mixed|made|made up|prepared|added|done|drawn up|mixed up} {on ward|on the ward|on this ward|\
on the unit|on unit|here|in here|here on ward|by us|by a nurse|by nurse|by the nurse|by hand here|by night shift|by \
staff|by ward staff|locally|by my colleague|in the treatment room|upstairs} {today|this morning|this afternoon|just \
now|earlier|}
    {we|i|nurse|staff|colleague|night nurse|they|someone|somebody|one of us|the nurse|ward nurse|the ward} {mixed \
it|made it|made it up|prepared it|mixed this|added it|mixed it up|added the drug|put the drug in} {here|today|this \
morning|on ward|on the ward|on this ward|earlier|just now|}
    {has|got|there is|with|see|wears} {an added drug label|an additive label|a ward label|a drug added label|a \
handwritten label|an additive sticker|the added drug label}, {drug|potassium|antibiotic} {added|was added|got \
added} {here|on ward|on the ward|by us|by nurse}, {not|never} {premixed|ready mixed|from pharmacy|ready made|from \
the pharmacy|factory made}
as ordered = {entry|it|display|screen|they|both|numbers|figures|all|everything|rate and volume|values} {matches|\
match|agrees|agree|is right|is the same|same|tallies|tally|are the same|are equal|is correct|are right|is as \
ordered|fits the order|equals the order|line up|are identical|is what was ordered|reads the same|say the same|says \
the same|corresponds} {with order|the order|to order|as order|with the paper|the paper|on both|}
    {same|identical|equal} {numbers|figures|number|entry|value|values|amounts|thing} {on both|in both|as order|as \
the order|both places|on each|as ordered|as on paper|on screen and paper|on order and display|both sides|}
    {no|not any|nothing} {slip|slips|typo|difference|mistake|error|mismatch|wrong|different|wrong there|\
discrepancy} {there|at all|in it|between them|anywhere|}, {just|exactly|precisely|word for word} {what is ordered|\
what was ordered|as ordered|like the order|what it says|what the order says|as it says|like it says}
a slip = {i|i have|we|i must have|someone|somebody} {slipped|mistyped|typed it wrong|made a slip|made a mistake|\
keyed it wrong|hit the wrong key|put it in wrong|put in the wrong one|swapped two digits|missed a zero|missed the \
point|left out a zero|added a zero|missed a digit|pressed twice|typed it backwards|entered it wrong|got it wrong|\
swapped the numbers|put the wrong number|typed wrong|fat fingered it|mixed up the digits}
    {entry|it|display|screen|number|figure|rate|they|numbers|one number|one digit|a digit|one figure|volume} {does \
not match|do not match|not match|is wrong|differs|differ|is different|are different|not the same|is off|is not as \
ordered|is out|not agree|is not what is ordered|is not right|says something else|disagree|is missing a zero|has a \
zero too many|has an extra zero}
    {extra|one|missing|wrong|a missing|an extra|a wrong} {zero|digit|number|key|figure|decimal|nought|point|decimal \
point|entry} {in it|there|too many|too few|typed|pressed|in the entry|}, {not|is not} {same|the same|as ordered|as \
on paper|what is ordered|what the order says|right|the same as order|equal|what it says on paper}
    {digits|numbers|figures} {swapped|turned round|mixed up|the wrong way round|switched|back to front}, {slip|\
slipped|slip of finger} {my|of mine|there|on my side|by me|of my finger|on my part}
from the library = {picked|chose|took|selected|found|got|pulled|used|had|tapped|scrolled to|entered|came|pulled up|\
clicked|looked up} {it|drug|this|that|one|the drug|the entry|fluid|the name|} {from|in|off|out of|through|on} \
{library|list|menu|drug library|the library|the list|pump list|its list|its library|drug list|the pump library|the \
database|pump menu|the menu|database}
    {was|it was|is|there|right there|listed|up} {in|on} {library|list|menu|drug library|pump list|the library|the \
list|the menu|its library}, {name|drug|it|entry} {came up|was listed|is listed|was there|popped up|is in the list|\
was in the list|was in the library|is in the library|was on the list}, {library|list} {had it|has it|entry used|it is}
by hand = {typed|keyed|punched|put|entered|wrote|dialled|programmed|set|tapped} {it|drug|everything|numbers|them|\
name|rate|that|all of it|the numbers|values|the drug|rate and volume|it all} {in|} {myself|by hand|manually|by \
finger|on my own|on keypad|on the keypad|on pad|by myself|digit by digit|with the keys}
    {not|without|did not use|no|not using|bypassed|skipped|instead of|went around} {library|the library|drug \
library|list|the list} {so by hand|so i typed it|so typed it in|used|}, {manual|hand|own|free|basic} {entry|entered|\
mode|typed|input|programming}, {had|i had} to {type|key|enter|put|do} {it|it in|it by hand|it manually|it myself|it \
all in}
    did it {by hand|manually|myself by hand|the manual way|the long way}, {with|using} {my own|own} {hands|fingers|\
numbers}
not listed = {not|is not|was not|wasn't|isn't|nowhere} {in|on} {list|library|menu|drug library|the library|the list|\
the menu|pump list|there|the pump|its list|the database|drug list|its library} {at all|anywhere|so far|}
    {it|drug} does not {come up|show up|appear|exist|pop up} {in list|in library|there|in the list|in the library|}
    {drug|it|library|pump|list} {is missing|missing|is absent|is not there|not listed|is not listed|does not have \
it|has not got it|does not know it|lacks it|does not list it|has no entry|is nowhere|not known}, {no|not any} \
{entry|match|such drug|listing|drug by that name|such entry|such name|trace} {for it|of it|in list|in library|there|\
in the library|}
a second drug = {another|a second|one more|second|a further|two} {drug|one|antibiotic|infusion|drugs|dose|bag|\
medicine|piggyback} {after|after it|after that|after the first|follows|to follow|next|comes after|is ordered|\
ordered|to come|comes next|on the order|follows the first|to give|still to come|after this|}
    {then|followed by|after that|after it|and then} {a second|another|another one|a second one|another drug|second \
drug|a second drug|one more|the second}, {there is|there are|has|says} {two|a second|another|two drugs|one more|two \
of them}
"""
"""By the alternative: patterns of ways to say it; behind a stroke, the alternative that stands beside it."""
