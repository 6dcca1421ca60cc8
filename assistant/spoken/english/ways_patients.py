"""How people say the alternatives of a patient, a site, a catheter, in English: see `choices`."""

WAYS = """
safe to give | no allergies, no known allergies, no allergy, not allergic, she not allergic, he not allergic, safe, \
no allergies on file, no allergies listed, no allergies in chart, okay to give, fine to give, none listed, nothing \
listed, no allergy to it, allergic to nothing, no allergy on, no allergies on, nothing on allergies, none known, no \
allergies recorded, no allergies charted, safe for him, safe for her, safe to go, good to give, all right to give, \
alright to give, ok to give, can have it, can have, allowed to have it, no allergies to it, no allergies at all, not \
got any allergies, has no allergies, no allergies known, no drug allergies, not allergic to anything, no known drug \
allergies, allergies none, chart clear, nothing on chart, nothing against it, nothing written under allergies, no \
reactions, no reaction, okay for him, okay for her, fine for her, fine for him, nil known, nkda, safe to use, clear \
to give, allergy box says none, none on record, no history of allergy
allergic | she allergic, he allergic, patient allergic, allergy, allergic to, allergic to it, not safe, not safe to \
give, an allergy, she has allergy, he has allergy, known allergy, allergic to this, allergic to that, allergies, has \
allergy, allergy to it, allergy on, there allergy, allergic to drug, reacts to it, reacts, reacts badly, reacts to \
tape, reacts to latex, reacts to wipe, had reaction, has reaction, reaction to it, reaction before, rash before, had \
rash, comes out in rash, comes up in rash, breaks out, breaks out in rash, comes up in hives, hives, anaphylaxis, \
anaphylactic, can not have it, can not have, not allowed it, must not have it, red band, allergy band, tape allergy, \
latex allergy, penicillin allergy, antiseptic allergy, chlorhexidine allergy, allergic to one, allergic to tape, \
allergic to latex, allergic to wipe, allergic to antiseptic, allergic to chlorhexidine, allergic to penicillin, \
allergic to one of them, allergy written, allergy listed, allergy documented, is down as allergic, down as allergic, \
listed as allergic, flagged as allergic, intolerant, sensitive to it, swells up with it
healthy | good, fine, all good, all fine, normal, clean and dry, soft and cool, nothing wrong, no problems, not red \
not swollen, okay, cool and soft, no redness or swelling, pink and healthy, perfect, looks normal, soft and dry, \
clean, nothing to see, no changes, no signs of anything, unremarkable, cool soft and dry, no redness no swelling, no \
redness no swelling no pain, not red not swollen not painful, all well, clean dry and flat, flat and cool, flat soft \
cool, cool and flat, soft flat, nice and soft, normal colour, normal color, normal skin, skin normal, skin looks \
normal, skin fine, skin good, looks all right, looks well, nothing abnormal, nothing wrong there, nothing unusual, \
site good, site fine, site looks good, site clean, all clear, no issues, no change, no change at all, unchanged, same \
as before, clean and healthy
red | bit red, little red, reddened, pink, redness, some redness, red around site, slightly red, inflamed, pinkish, \
reddish, flushed, redness around it, red streak, gone red, red ring, red patch, red all round, red all around, little \
pink, bit pink, pink ring, rosy, redness round it, red mark, red line, angry, angry looking, looks angry, looks red, \
bright red, blotchy, pink round it, red round needle, red at edges
swollen | puffing up, puffy, swelling, bit swollen, some swelling, little swollen, slightly swollen, bit puffy, \
swelled up, swells, puffed up, bigger, lump, bulging, swelled, swelling up, swollen up, gone puffy, puffing, \
ballooned, blown up, raised, bump, bumpy, lumpy, fat, fatter, tight and puffy, squishy, spongy, filled up, bit of \
swelling, little puffy, some puffiness, puffiness, feels puffy, looks puffy, puffed, bigger than other, bulge, egg \
there
painful | hurts, sore, tender, painful to touch, in pain, hurting, pain, she in pain, he in pain, it hurts her, it \
hurts him, pain there, hurts there, burns, stings, aching, aches, soreness, tenderness, hurts to touch, hurts when \
touched, sore to touch, tender to touch, bit sore, little sore, bit tender, quite sore, winced, winces, wincing, \
flinched, flinches, ouch, ow, says ouch, says it hurts, says it sore, says hurts, said ouch, pain when touched, pain \
on touch, stinging, jumpy when touched, pulled away, does not like it touched, pain at site, cried out
runs freely | freely, flushes easily, runs easily, no resistance, goes in easily, smooth, flushes well, easy, easily, \
went in easily, flushes freely, running freely, ran freely, flows freely, free, runs well, flows well, flushes fine, \
goes in fine, went in fine, runs fine, without resistance, smoothly, flushed easily, flushed freely, easy to push, \
pushes easily, no problem, no trouble at all, no problem pushing, no trouble pushing, no resistance at all, no \
resistance no pain, no resistance no swelling, no resistance no pain no swelling, no pain no swelling no resistance, \
goes in lovely, goes in nicely, goes in well, goes in smoothly, goes in smooth, goes in no problem, going in nicely, \
going in fine, going in easy, going in well, went in lovely, went in nicely, went in well, went in smooth, went in \
smoothly, went in no problem, slides in, slid in, like butter, goes in like butter, went in like butter, flushes \
lovely, flushes nicely, flushes beautifully, flushes great, flushes smoothly, flushes like dream, flushed fine, \
flushed nicely, flushed well, flushed lovely, flushed no problem, flows nicely, runs lovely, runs nicely, runs \
smoothly, runs in freely, runs in easily, runs in nicely, pushed easily, pushes in easily, easy push, easy in, soft \
push, freely yes
resistance | hard to push, stiff, blocked, will not flush, some resistance, hard, will not go in, resisting, resists, \
stuck, tight, hard going, stiff to push, not go in, not flush, can not push, not move, occluded, clotted, clogged, \
difficult to push, does not flush, not run freely, hard to flush, bit of resistance, some resistance there, feel \
resistance, meets resistance, met resistance, there resistance, pushing back, pushes back, springs back, fights me, \
fighting me, fighting, hard push, hard to get in, stiff going, stiff push, bit stiff, very stiff, really stiff, \
hardly goes in, barely goes in, hardly goes, barely moves, hardly moves, plunger not move, plunger stuck, plunger \
stiff, not go in at all, not go through, not push, not push through, not go, not go any further, can not push it, can \
not get it in, have to push hard, have to press hard, need to push hard, takes force, need force, jammed, jam, \
plugged, seized, no go, slow and stiff, will not push, will not push through, will not budge, not budge, does not \
budge, not flush at all, not want to go in
pain | hurts, painful, she has pain, he has pain, some pain, hurting, it hurts her, it hurts him, burns, stings, \
sore, aching, says ouch, says it hurts, says it stings, says ow, ouch, ow, stinging, it stings, hurts when push, \
hurt, hurting her, hurting him, winced, wincing, flinched, flinches, winces, complains, grimaced, grimacing, sharp \
pain, burning, burning feeling, pain there, uncomfortable, discomfort, sore when push, she felt pain, he felt pain, \
says sore, stung, cried out, tender
swelling | puffy, swells, swollen, some swelling, bit swollen, puffing up, lump, swells up, swelling up, swelled, \
swelled up, blowing up, blows up, puffs up, bump, bump coming up, lump coming up, bulge, bulging, puffiness, coming \
up, raised, ballooning, getting bigger, filling up, skin lifting, tissue filling, going puffy, gone puffy, bubble \
under skin, egg
whole | intact, complete, in one piece, tip there, all there, nothing missing, undamaged, entire, in one, unbroken, \
all of it, complete tip, nothing broken, nothing broken off, all one piece, in one piece whole, complete and whole, \
tip intact, tip on it, tip still on, tip there and all, nothing missing off it, no piece missing, no bits missing, \
not broken, nothing snapped, nothing snapped off, full length, all came out, came out whole, came out in one piece, \
out in one piece, in tact, all intact, not missing anything, end intact, no damage, not damaged
piece missing | tip missing, broken, part missing, not whole, bit missing, broken off, not complete, snapped, snapped \
off, incomplete, part gone, tip gone, bit gone, shorter, too short, piece gone, cut off, not all there, end missing, \
end gone, end snapped off, tip snapped, tip snapped off, tip broken, tip broke off, broke off, bit broke off, bit \
broken off, bit snapped off, piece broke off, piece broken off, piece snapped off, ragged, jagged, not all of it, \
missing end, missing tip, missing bit, missing piece, tip left behind, left behind, some left behind, shorter than \
should be, short, broken end, cracked off, torn off, not in one piece
dry | no bleeding, stopped, has stopped, no blood, not bleeding, no more blood, bleeding stopped, all dry, no blood \
coming, bleeding has stopped, stopped now, no oozing, not oozing, no longer bleeding, not bleeding any more, clean \
and dry, no blood any more, no bleeding any more, bone dry, dry as bone, dry now, dry and clean, clean, clean now, \
nice and dry, not bleeding now, not bleeding any longer, bleeding stopped now, stopped bleeding, sealed, sealed over, \
clotted, clotted over, no more bleeding, no bleeding now, no ooze, no oozing now, not wet, not a drop, no drops, \
closed over, closed up, healed over, scabbed, no blood at all, no fresh blood, all joints dry, every joint dry, \
totally dry, no leaks, no leak, no wet, no wet spots, no moisture, no damp, dry all way, dry all along, dry \
everywhere, no drips, nothing wet, nothing leaking, tight and dry
still bleeding | bleeding, oozing, blood, still oozing, bleeds, still blood, bit of blood, bleeding still, bleeds \
still, oozes, drop of blood, some blood, blood coming, not stopped, not dry, wet, trickling, bleeding some, bleeding \
bit, bleeding a bit, still bit bloody, still bloody, bloody, still dripping, dripping, still wet, still red, still \
coming, still trickling, still seeping, seeping, weeping, still weeping, little blood, little bleeding, bit bleeding, \
bit of bleeding, some bleeding, some oozing, still some blood, still some bleeding, still blood there, not stopped \
yet, not dry yet, not done bleeding, has not stopped, blood on gauze, blood still coming, fresh blood, spot of blood, \
blood spot, oozing still, oozing bit, oozing a bit, oozing little, oozing yet, leaking blood, running blood, started \
again, needs longer, keeps bleeding
feeling fine | fine, good, well, comfortable, okay, feels fine, feels good, she fine, he fine, feeling good, feeling \
okay, feels well, all right, feels all right, happy, no problems, feels okay, fine in self, not any complaints, says \
fine, no complaints, doing fine, doing okay, doing well, doing good, feels grand, grand, feels great, great, feels \
right as rain, right as rain, feeling well, feeling grand, feeling great, feels all good, all good, all fine, all \
well, says okay, says good, says well, says all right, says all good, says grand, says great, says feels fine, says \
feels good, says feels okay, says feels well, says feeling fine, says feeling good, says feeling well, says feeling \
okay, says nothing wrong, no bother at all, no complaint, no complaints at all, not complaining, nothing wrong, \
nothing bothering, perfectly fine, absolutely fine, comfy, fit as fiddle, no symptoms, tip top, normal, feels normal, \
feels himself, feels herself, fine thanks, good thanks
in pain | pain, hurts, sore, hurting, she in pain, he in pain, has pain, painful, aching, has some pain, feels pain, \
complains of pain, says hurts, says it hurts, says sore, says in pain, says has pain, says painful, complaining of \
pain, complains, hurt, hurting a lot, hurts a lot, hurts bit, sore arm, arm hurts, arm sore, chest hurts, chest \
hurting, chest is hurting, chest pain, chest sore, chest aching, back hurts, head hurts, headache, tummy hurts, belly \
hurts, stomach hurts, aches, ache, grimacing, wincing, groaning, moaning, crying, clutching chest, holding chest, \
uncomfortable, discomfort, pains, bit sore, little pain, bit of pain, there pain, tender, sharp pain, stabbing, \
throbbing, burning, stinging, hurts him, hurts her
itching | itchy, itches, itch, scratching, hives, itchy skin, itching all over, has rash, rash, itching bit, bit \
itchy, little itchy, feels itchy, says itchy, says itches, says itching, has itch, started itching, started to itch, \
keeps scratching, scratching away, scratching arm, itchy all over, itchy arm, itchy arms, itchy back, has hives, come \
out in hives, come out in rash, coming up in hives, coming up in rash, blotches, blotchy, spots, bumps, welts, \
wheals, nettle rash, tingly, prickly, skin itches, skin itchy
short of breath | breathless, not catch breath, not catch his breath, not catch her breath, out of breath, hard to \
breathe, short breath, struggling to breathe, can not breathe, not breathe, gasping, breathing hard, trouble \
breathing, wheezing, puffing, struggling for breath, breathing fast, can not get breath, can not get his breath, can \
not get her breath, not get breath, not get his breath, not get her breath, can not catch breath, can not catch his \
breath, can not catch her breath, can not get enough air, can not get air, not get enough air, not get air, can not \
finish sentence, not finish sentence, bit breathless, little breathless, short on breath, breath short, breathing \
quickly, breathing heavily, breathing heavy, heavy breathing, laboured, labored, laboured breathing, panting, puffed, \
puffed out, winded, struggling, struggling with breath, struggling for air, gasping for air, gasping for breath, \
fighting for breath, wheezy, hard time breathing, having trouble breathing, having difficulty breathing, difficulty \
breathing, difficult to breathe, finding it hard to breathe, tight chest, chest tight, rapid breathing, blue lips, \
lips blue, choking, suffocating, out of puff, getting breathless
breathing easily | breathing fine, breathing normally, easy, comfortable, breathing well, breathing okay, breathes \
easily, breathing easy, no trouble breathing, no trouble with breath, breathing calmly, breathing calm, breathing \
quietly, breathing steadily, breathing steady, breathing nicely, breathing lovely, breathing grand, breathing \
comfortably, breathing freely, breathing regular, breathing regularly, breathing slow and steady, breathing good, \
breathing all right, breathing without trouble, breathing no problem, breathing no trouble, breathing like normal, \
breathing as normal, breathing slowly, breath fine, breath easy, breathing fine no pain, breathes fine, breathes \
easy, breathes normally, breathes well, chest rising nicely, no trouble with breathing, no trouble with breathing at \
all, no trouble with breath at all, no problem breathing, no problem with breathing, no difficulty, no difficulty \
breathing, no distress, chatting away, talking away, talking fine, talking normally, chatting normally, comfortable \
and breathing fine
changed | not healthy, different, not normal, looks bad, different now, worse, got worse, redder, not same, not as \
before, something changed, swelled up, has swollen up, swollen up, gone red, gone puffy, gone hard, gone pale, redder \
than before, bigger than before, puffier than before, not like before, not like it was, not same as before, looks \
different, looks worse, looks puffy, looks red, looks swollen, feels different, warm, puffed up, swelling, redness, \
pink, bit pink, bit red, bit swollen, bit puffy, inflamed, angry, bruised, blistered, blister, white, pale and cold, \
cold and puffy, red and warm, not right, not looking good, not looking right, changed colour, changed since, gone bad
soft | feels soft, soft and flat, smooth, no cord no pus, soft all way, supple, nice and soft, soft all along, soft \
all way along, soft all way up, squashy, bouncy, springy, pliable, spongy and soft, gives under finger, gives, \
normal, feels normal, feels fine, nothing there, smooth all along, smooth and soft, stays soft, vein soft
safe to use | no allergies, no known allergies, no allergy, not allergic, safe, okay to use, fine to use, none \
listed, nothing listed, none known, allergic to nothing, safe for him, safe for her, safe to go, good to use, all \
right to use, alright to use, no allergies to any, no allergies to any of those, no allergies to any of them, none of \
them, none of those, no to all, no allergies at all, not allergic to any, not allergic to any of them, not allergic \
to any of those, not allergic to anything, no reactions, nothing on chart, chart clear, none on record, okay for her, \
okay for him, fine for her, fine for him, fine with all, okay with all, no allergies to those, nil known, nkda, none \
of these
freely | free, easy, easily, smooth, smoothly, no resistance, without resistance, goes in easily, goes in fine, went \
in easily, went in fine, runs well, runs easily, flows freely, flushed easily, flushed freely, easy to push, pushes \
easily, runs fine, flushes fine
patent | open, flushes freely with blood return, patent with blood return, flushes freely blood return, blood return \
and flushes, flushes well with blood return, flushes freely with blood, flushes fine with blood return, good flush \
and blood return, flushes freely, flushes and returns, flushes with blood, flushes good return, clear and flushing, \
blood back and flushes, blood back and flushes easily, flushes easily blood back, flushes freely blood back, flushes \
and blood back, good flush good blood, good flush and blood
no blood | nothing coming back, nothing comes back, nothing came back, blood not come back, no blood comes, no blood \
coming, no blood back, no flashback, not see blood, not get blood, not get any blood, not see any blood, nothing \
back, blood did not come, no blood return, without blood, no return of blood, not any blood, no blood comes back, no \
blood coming back, no blood there, no blood in it, no blood at all, no flash, no flash of blood, no return, no return \
at all, nothing comes, nothing came, nothing coming, nothing when i pull, nothing when i draw, nothing when pull \
back, not getting blood, not getting any blood, not getting any, not getting blood back, not getting any blood back, \
not got blood, not got any blood, can not get blood, can not get any blood, can not draw blood, will not bleed back, \
not bleed back, does not bleed back, will not draw, not draw, does not draw, not give blood, does not give blood, \
gives no blood, gives none, dry pull, pulls dry, clear only, only clear, just clear, just saline, only saline, no \
red, not see red, not see any red, draws nothing, pulled nothing, got nothing, got nothing back, flushes but no \
blood, flushes okay but no blood, flushes fine but no blood, blood does not come, blood not come, blood not returning
blood return | blood, blood back, blood coming back, blood comes back, see blood, got blood, good blood return, \
flashback, flash of blood, get blood, blood returns, returns blood, blood in syringe, red, some blood, got return, \
got blood return, got blood back, got flash, got flash of blood, got flashback, good return, good flash, nice return, \
nice flash, nice flash of blood, lovely return, blood came back, blood came, blood coming, blood comes, blood in \
tube, blood in tubing, blood in line, blood in it, blood there, blood flashed, blood flashed back, blood returning, \
blood returned, blood is back, there blood, red in syringe, red in line, red in tube, see red, bit of blood, little \
blood, drop of blood, plenty of blood, yes blood, bleeds back, bled back, it bled back, it draws, draws fine, draws \
well, draws blood, drew blood, pulled back blood, drawing blood
dizzy | light headed, dizziness, faint, woozy, lightheaded, giddy, feels dizzy, bit dizzy, little dizzy, says dizzy, \
light in head, head spinning, head spins, room spinning, room spins, spinning, spinny, swimmy, unsteady, wobbly, \
swaying, about to faint, going to faint, might faint, fainting, fainty, feels faint, feels light headed, feels woozy, \
muzzy, seeing stars, seeing spots
a change | changed, different, site changed, site red, site swollen, site puffy, swelling, swollen, red, redness, \
sore, painful, puffy, leaking, something changed, not same, worse, got worse, looks different, something at site, \
hurts, pain, wet, site wet, arm red, arm puffy, arm swollen, arm puffing up, puffing up, swelling up, gone red, gone \
puffy, going red, going puffy, redder, puffier, wetter, pink round it, bit red, bit pink, bit puffy, little red, \
little pink, looks puffy, looks red, looks swollen, leaks, leaking at site, something different, different at site, \
not like before, not same as before, changed colour
quiet and healthy | both good, both fine, all good, all fine, everything fine, nothing wrong, no alarm no change, \
everything quiet and healthy, all well, no problems, everything good, fine, quiet and fine, quiet and looks fine, \
quiet and looks good, quiet and site fine, quiet and site good, quiet site fine, quiet site healthy, quiet no change, \
no alarm and site fine, no alarm and site healthy, no alarm site fine, no alarm site healthy, no beeping no change, \
no alarm no change at site, no alarm and no change, pump quiet site fine, pump quiet site good, pump quiet and site \
fine, pump quiet and site good, pump fine site fine, both quiet and fine, running and healthy, running fine and \
healthy, quiet no redness no swelling
quiet and fine | both good, all good, all fine, all well, everything fine, no alarm and patient fine, all calm, no \
problems, quiet and comfortable, quiet and patient good, quiet and patient well, quiet and patient comfortable, quiet \
and patient okay, quiet patient fine, quiet patient good, no alarm patient fine, no alarm and patient good, no alarm \
and patient well, no alarm and comfortable, no alarm and looks comfortable, no noise and comfortable, no noise and \
looks comfortable, no beeping and patient fine, pump quiet patient fine, pump quiet patient good, pump quiet and \
patient good, pump fine patient fine, pump fine and patient fine, both quiet and fine, both well, both okay, running \
quietly patient fine
patient unwell | unwell, poorly, ill, sick, not well, feels sick, feels unwell, dizzy, worse, not fine, not feeling \
well, gone pale, pale, grey, gray, sweating, sweaty, clammy, feels faint, faint, feels bad, feels ill, feels poorly, \
feels rotten, feels terrible, feels funny, not feeling good, not well at all, not good, not so good, looks ill, looks \
poorly, looks bad, looks pale, looks unwell, looks sick, nauseous, nausea, vomiting, being sick, threw up, shivering, \
shaking, breathless, short of breath, in pain, hurts, itchy, complains, complaining, worse off, unwell patient, \
patient bad, patient not good, patient not well, patient not fine
the same | same, both same, alike, identical, no difference, no differences, equal, matching, match, all alike, same \
on both, same both sides, same in both, not different, same both, same both hands, same in both hands, same on both \
hands, same as other, same as other hand, same as other one, same as other side, both alike, both pink, both warm, \
both pink and warm, both pink warm, both warm and pink, pink and warm both, no difference at all, no difference \
between, no difference either side, nothing different, nothing different there, equal both, equal both sides, equal \
on both, equals, match each other, both match, matches other, matches other hand, matches other side, like other one, \
like other hand, just like other, alike both, all same both sides, all same both, all three same, all equal, good \
pulse both, good pulses both
different | difference, differences, differs, one different, not same, not alike, not equal, unlike, paler, colder, \
cooler, weaker, bluer, pale, cold, blue, weak, no pulse, one colder, one paler, one weaker, less feeling, numb, \
tingling, warmer, mismatched, not match, one cold, one cold and pale, one cool, one pale, one numb, one weak, one \
blue, one white, cold one, cold hand, cold fingers, fingers cold, fingers blue, fingers numb, fingers pale, fingers \
white, hand cold, hand colder, hand pale, pale hand, pulse weak, pulse weaker, pulse gone, weak pulse, weaker pulse, \
not feel pulse, no feeling, lost feeling, can not feel fingers, not feel fingers, pins and needles, tingles, numb \
fingers, discoloured, discolored, dusky, mottled, slower, sluggish, bigger, swollen, this one colder, this one paler, \
this one cooler, this one numb, colder than other, paler than other, cooler than other, weaker than other, not same \
as other, not like other, not as warm, not as pink
hard cord | cord, like cord, hard, firm, rope, like rope, hard line, like string, stiff, corded, hardened, hard bit, \
hard bits, hard lump, hard ropey bit, ropey, ropey bit, ropy, feels like rope, feels like cord, feels like string, \
like piece of string, piece of string, cordlike, cord like, cordy, stringy, ridge, hard ridge, hard streak, hard \
string, hard vein, hardened vein, vein hard, vein gone hard, gone hard, lump along vein, lumpy, lumps, solid, thick \
cord, thick line, wire, like wire, pencil, like pencil, stick, firm rope, firm cord, firm line, knotty, knots, stiff \
line, tight cord, track
pus | discharge, oozing pus, yellow stuff, pus out, pus coming, weeping, yellow discharge, yellow stuff coming out, \
yellow stuff oozing, yellow ooze, yellow fluid, yellow goo, gunk, goo, ooze, oozing, bit of pus, some pus, pus there, \
pus coming out, pussy, matter, green stuff, green discharge, discharge coming out, drop of pus, weeping yellow, \
creamy stuff, infected, infection, smelly stuff, white stuff, leaking pus, stuff coming out
low | too low, lowish, below normal, below range, under range, under normal, on low side, below, low side, lower than \
normal, decreased, reduced, bit low, little low, slightly low, quite low, very low, on low, lower than should be, \
lower than range, bit down, lowish side, low one
normal | in range, within range, in normal range, within normal, within normal range, normal range, in limits, within \
limits, fine, within normal limits, inside range, not low or high, neither low nor high, not low and not high, not \
low not high, not high not low, in between, all normal, nothing wrong, in middle, middle of range, mid range, normal \
value, healthy, where it should be
high | too high, above normal, above range, over range, over normal, on high side, raised, elevated, above, high \
side, higher than normal, increased, bit high, little high, slightly high, quite high, very high, on high, higher \
than should be, higher than range, bit up, highish, gone up, high one
dry and soft | soft dry, soft and dry, dry soft, fine, all good, normal, healthy, soft and dry both, soft no \
swelling, dry no swelling, soft dry no swelling, dry soft flat, flat and dry, flat dry, flat soft dry, dry flat soft, \
no swelling no wet, no swelling not wet, not wet not swollen, not swollen not wet, dry and not swollen, nice and dry \
and soft, all dry and soft, good dry and soft, looks good, looks fine, looks normal, no change, unchanged
wet | moist, soaked, damp, leaking, leaks, soggy, weeping, bit wet, little wet, slightly wet, wet there, wet under, \
wet dressing, dressing wet, wet gauze, feels wet, wet round it, bit damp, little damp, damp dressing, damp there, \
moist dressing, soggy dressing, dripping, drips, fluid under, fluid under dressing, fluid coming out, oozing, \
seeping, leak there, leaks there, weeps, leaking bit, leaking little, soaking, soaking wet, sopping
comfortable | fine, okay, good, feels good, feels okay, comfy, all right, no complaints, feels grand, feels all \
right, feels great, grand, no burning no swelling, no problems, comfy yes, nice and comfortable, quite comfortable, \
feels nothing, fine so, says comfortable, says comfy, says fine, says okay, says good, says all right, says feels \
fine, says feels good, says feels okay, arm fine, arm good, arm okay, no discomfort, at ease, not complaining
burning | burns, stings, stinging, burn, burning feeling, bit of burning, little burning, some burning, burns bit, \
burns little, burns a bit, stings bit, stings a bit, stings little, bit stingy, hot, feels hot, hot feeling, like \
fire, on fire, smarting, smarts, sharp, prickling, says burns, says it burns, says stings, says it stings, says \
burning, says hot, burning up arm
safe for tissue | not vesicant, no vesicant, no harm, no damage, not damage tissue, non vesicant, not harmful, \
harmless, not damage, irritates nothing, safe for skin, safe all of them, all safe, all safe for tissue, does no \
harm, does not harm, does not hurt tissue, does not harm tissue, does not damage, does not damage tissue, no harm to \
tissue, will not harm, will not damage tissue, will not hurt tissue, nothing harmful, nothing that damages, nothing \
dangerous, just saline, only saline, plain saline, just fluid, just salt water, mild, gentle, not irritant, non \
irritant, no irritant, not damaging, not harmful at all, okay for tissue, fine for tissue, kind to tissue
damages tissue | vesicant, harmful, damages it, damaging, harms tissue, not safe, not harmless, burns tissue, kills \
tissue, hurts tissue, bad for tissue, harmful to tissue, harms it, does damage, does harm, does damage tissue, can \
damage, can damage tissue, could damage tissue, would damage tissue, damages skin, dangerous, dangerous for tissue, \
irritant, irritates, irritates tissue, one of them damages, one damages tissue, one vesicant, there vesicant, \
vesicant there, on vesicant list, listed as vesicant, marked as vesicant, caustic, corrosive, necrosis, blisters \
tissue, not safe for tissue, toxic
large vein | big vein, big one, large one, good vein, large, big, in big vein, in big one, in good vein, in good big \
vein, nice big vein, nice big one, good big vein, fat vein, thick vein, wide vein, in elbow, in crook of elbow, elbow \
vein, forearm vein, upper arm, big one in forearm, central, chest vein, neck vein, antecubital
small vein | little vein, tiny vein, small one, thin vein, small, thin, in little vein, in small one, in tiny vein, \
in tiny one, wee vein, in wee vein, narrow vein, fine vein, hand vein, in back of hand, back of hand, in hand, finger \
vein, wrist vein, thin one, tiny one, little one, skinny vein, thready
bleeding | bleeds, blood, some bleeding, bruises, bruising, blood somewhere, bleeding somewhere, new bruise, \
nosebleed, gums bleeding, gums bleed, nose bleeding, nose bleeds, bleeding gums, bleeding nose, nosebleeds, blood in \
urine, blood in pee, blood in stool, black stool, pink urine, red urine, bruise, bruised, new bruising, bruise coming \
up, oozing, spots of blood, blood on gums, blood on pillow, bleeds from gums, purple patches, coughing blood
a bleeding risk | risk, bleeding risk, at risk, has risk, on thinners, on blood thinner, takes thinners, takes blood \
thinner, bleeds easily, bruises easily, yes to thinners, blood thinners, anticoagulants, on anticoagulants, takes \
anticoagulants, anticoagulant, thinners, easy bleeding, takes thinner, on thinner, on warfarin, on aspirin, takes \
apixaban, takes warfarin, takes aspirin, takes heparin, takes clopidogrel, takes rivaroxaban, takes anticoagulant, on \
apixaban, on clopidogrel, on rivaroxaban, on heparin, on anticoagulant, on blood thinners, on thinners yes, taking \
warfarin, taking aspirin, taking thinners, taking blood thinners, bleeds easy, bruises easy, bruises badly, \
haemophilia, hemophilia, bleeder, bleeding disorder, low platelets, bleeding history, history of bleeding, bled \
before, yes on blood thinners
none / a bleeding risk | no risk, no risks, no thinners, no blood thinners, not on thinners, not on blood thinners, \
not on any, no bleeding, no blood thinners no bleeding, no thinners no bleeding, no anticoagulants, not at risk, no \
easy bleeding, not bleed easily, no blood thinners and no bleeding, no blood thinners no easy bleeding, nothing \
there, no thinners no easy bleeding, not on anything, not on any thinners, not on any blood thinners, not on any \
anticoagulants, not taking any, not taking thinners, takes none, takes no thinners, takes no blood thinners, on none, \
on nothing, no history, no history of bleeding, no bleeding history, no bleeding problems, no bleeding disorder, no \
clotting problems, clots fine, chart clear, all clear, nothing on chart, nothing in chart, nothing written, neither \
one, no to both, no risk there, no thinners no history
freely with blood return | flushes freely and blood returns, flushes freely and blood comes back, flushes freely \
blood back, flushes freely got blood, flushes well got blood, flushes and returns, flushes and bleeds back, flushes \
and gives blood, flushes fine blood back, flushes fine and blood comes back, flushes easily blood comes back, flushes \
easily and blood back, flushes easily with blood, flushes lovely and blood back, flushes lovely blood back, works \
fine both ways, works both ways, both ways fine, good both ways, pushes and pulls, pushes and pulls fine, goes in \
easily and blood comes back, goes in fine and blood comes back, patent, patent both ways, good flush good return, \
good flush and good return, flush and return good, flush fine return fine, blood both, flash and flushes
none / bleeding | no bleeding at all, no blood, no blood at all, no blood anywhere, nothing anywhere, no bleeding \
anywhere, nothing bleeding, not bleeding, not bleeding anywhere, no signs of bleeding, no sign of bleeding, no sign \
of blood, clean everywhere
not sure | can not say, can not tell, could not say, could not tell, do not know, not know, no idea, not certain, \
uncertain, hard to say, hard to tell, label not say, does not say, not clear, unclear, have to ask, would have to \
ask, need to ask, have to look it up, need to look it up, have to check, need to check
cool and swollen | cold and swollen, cool and puffy, cold and puffy, puffy and cold, puffy and cool, swollen and \
cool, swollen and cold, pale and puffy, pale and swollen, swollen pale cold, pale cool swollen, cool pale and \
swollen, tight and cool, boggy, spongy, like a balloon, swelling, not red
red and sore | red and painful, red and tender, red and warm, red and hot, red hot and sore, hot and red, warm and \
red, sore and red, painful and red, inflamed, red hurts, red and hurts, it red and it hurts, angry and sore, angry, \
tender, painful, red line and sore, red streak, pink and sore
"""
"""Each alternative and its ways; behind a stroke, the alternative that stands beside it where that matters."""
