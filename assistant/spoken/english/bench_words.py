"""Words of statements at the bench, in English: which change nothing, which deny, which may turn the meaning round.

Words of every day and of the trade (common practice, no source).
"""

import re


def _set(text: str) -> frozenset[str]:
    return frozenset(text.split())


def _phrases(text: str) -> tuple[str, ...]:
    return tuple(" ".join(phrase.split()) for phrase in text.split(",") if phrase.strip())


DENIALS = _set("not no never none nothing nobody without neither nowhere")
DENIALS_ALONE = _set("none nothing neither")
"""Those that answer by themselves where something is looked for."""
SUBJECTS = _set("it that i we she he they the looks this on at listed found seen there at")
AUXILIARIES = _set("is are am do does did have has can could should shall will would may might must was were")
TURNING = _set("""
    almost nearly about try tried trying maybe perhaps probably possibly think thought guess hope believe suppose
    supposed should would could might may going gonna will shall must need needs want wants wait if unless until till
    when while before after seems seem seemingly half partly partially mostly somewhat kind sort or else
    rather forgot forget forgotten wrong other another hardly barely soon later unsure uncertain doubt let lets
    enough supposedly apparently roughly approximately least most either tomorrow yesterday had was were ought meant
    gotta better instead more less far what which who whose where why how whether yet can nor
    you your keep keeps assume assumes assuming assumed presume presumes presumed bet gather expect expects expecting
    trust figure reckon suspect suspected wish pray wager fancy surmise appears appear swear
""")
"""Words of doubt, of intention, of the past that is over, of an exception, of a question."""
TURNS_ONLY_GOOD = _set("but last first only except")
"""Words after which something is not as it should be."""
OTHERS = _set("he she they you somebody someone nobody everybody partner instructor nurse teacher")
"""Whoever is not the learner: "she closed it"."""
REPORTS = _set("""
    say says said saying tell tells told telling thinks thought reckons claims swears asks asked asking make sure check
    ensure remind pretend imagine mean means wonder supposed
""")
"""Words after which somebody else's words follow, or what ought to be: "make sure it's closed"."""
FAULTS = _set("""
    loose loosely wobbly wobbles wobbled crooked bent torn stuck undone slipped slipping slips popped pops pop sliding
    weird funny strange odd weirdly oddly slow slower wet dirty empty dry dead broken fell falling falls dropped drops
    drop touched touch touches stopped stops stop restarted undid unclamped unpaused reopened halfway sideways backwards
    backward twisted kinked kink air bubble bubbles leak leaks leaking blood bleeding alarm alarms alarming
    beeping beeps
    error pain hurts sore red swollen mistake oops missed missing lost gone hmm whoops spilled spilt spill mess problem
    trouble resistance short long late early cracked split scratched sneezed coughed
    case provided assuming supposing whenever
    pretending joking kidding kind sort about enough loosely badly poorly barely sloppy messy
""")
"""Words of what may have gone wrong, beside which nothing is taken with words that are not known."""
UNREAL = _set("case kidding joking pretending provided supposing whenever imagine fancy")
"""Words by which what is said is not meant, or not yet so."""
DETERMINERS = _set("the a an my its his her their this that these those all both each every any one our")
ARTICLES = _set("the a an my its his her their our")
PRONOUNS = _set("it i we they she he there that this")
SMALL_WORDS = _set("a an any the more sign signs of visible at all single see")
PARTICLES = _set("on off up down in out away over together through back shut open closed tight")
PREPOSITIONS = _set("""
    to into onto on in at with over round from of for by near above below along within between against through
    under next around beside off out than like inside up down away onto behind per beneath underneath toward towards
""")
FRAME = _set(
    "it is they are that there the a an i we see have got looks look feels just now here okay so yes this one and"
)
"""What makes a sentence of an answer and adds nothing: "it looks cloudy"."""
_APART = "above below, left right, upper lower, higher lower, primary secondary, old new, big small, top bottom"
_APART += ", empty full, first second, long short, thin thick, roller slide, inner outer, labelled flush"
OTHER_PLACES: dict[str, frozenset[str]] = {}
"""What is another place or another thing than the one that a line names, by the word for it."""
for _one, _other in (pair.split() for pair in _APART.split(", ")):
    OTHER_PLACES[_one] = OTHER_PLACES.get(_one, frozenset()) | {_other}
    OTHER_PLACES[_other] = OTHER_PLACES.get(_other, frozenset()) | {_one}
NEUTRAL = _set("""
    i we it that this they them these those there here he she his him her the a an its my our us me both all every each
    everything anything any some one ones of and so now then already just really very quite nicely well fully completely
    properly firmly tightly securely carefully slowly gently smoothly too also okay fine good nice tight easily is are
    am be been being has have having got get gets getting to into in onto on at by with from for over under around round
    along through up down off out away back as than next together apart clean new old whole near entire full way ready
    set looks look feels feel clearly safely correctly perfectly totally entirely straight absolutely definitely alright
    yes per oh exactly come comes came went goes go gone says said see sees sitting seated place same identical bit
    little lot single above below behind inside beside between within against across month months year years week day
    days january february march april june july august september october november december ml mil mils millilitres
    milliliters minute minutes second seconds hour hours inch inches foot feet happy aware left right hand self anymore
    alone even hangs hanging sits hung listed ok deep wide much loud long high right neat nicely gentle still again
    today two three four five six seven eight nine ten eleven twelve fifteen twenty thirty forty fifty sixty seventy
    eighty ninety hundred thousand clock oclock noon midnight morning evening tonight nurse colleague mister mrs miss
    comfortable comfy relaxed calm lovely beautifully steady steadily freely quietly softly firm home deep round wide
    main big thing things everyone people brand whole lots couple few inwards outwards upwards downwards upright
    sideways flat level straightforward standing read checked looked wrote written put placed turned gave given kept
    held pushed pulled moved pressed heard made signed followed used took taken found saw told reached fixed stayed
    stays sat lifted wiped cleaned hear keeping because since using perfect great brilliant cool spare fresh hospital
    ward room lab trolley local policy rules yellow orange red green blue white clinical sharps biohazard medium size
    sized extra proper exact final inner outer upper lower higher sterile signed timed hello began begun since eye
    natural normally usual usually meter meters metre metres untouched ran kindly simply basically actually obviously
    certainly quiet ahead along anyway finally lastly meanwhile together twice once todays tonights myself ourselves wee
    throughout straightaway thing things whole full palm palms thumb thumbs fingertip fingertips aseptically cleanly
    snugly evenly smoothly swiftly quickly promptly accurately legibly cautiously thoroughly successfully crisply
    soundly squarely individually separately personally thankfully luckily happily effortlessly seamlessly immediately
    directly precisely solidly audibly visibly calmly politely patiently sweetly finely snug fits brown
    black amber silver
    dark
""")
"""Words that change nothing about what is claimed."""
PLAIN = _set("""
    i we it that this they them these those there here he she his him her the a an its my our us me both all every each
    everything and so now then already just really very quite nicely well fully completely properly firmly tightly
    securely carefully slowly gently smoothly too also okay fine good nice tight easily is are am been have has having
    got to into in onto on at by with from for over under around round along through up down off out away back as across
    together apart entire full way ready set clearly safely correctly perfectly totally entirely straight absolutely
    definitely alright yes exactly neat neatly beautifully freely quietly softly firm home perfect great brilliant cool
    anyway finally simply basically actually obviously certainly ok steadily steady hand above wide do does did went
    goes pair sitting sits sat high hear today todays tonights standing clean whole full myself ourselves wee thing
    things throughout forward straightaway aseptically cleanly snugly evenly smoothly swiftly quickly promptly steadily
    accurately legibly cautiously thoroughly successfully finely crisply soundly squarely individually separately
    personally thankfully luckily happily effortlessly seamlessly immediately directly precisely solidly audibly visibly
    calmly politely patiently sweetly anymore snug fits
""")
"""Those of them with which a claim is taken at once; with another one the learner is asked whether it is done."""
MANNER = _set("""
    snapped clicked slid rolled twisted turned pushed pulled moved eased lifted lowered pressed squeezed flicked screwed
    tugged pinched wiggled
""")
"""How a thing was brought into a state: "snapped it shut"; what the state is, is said beside."""
PLAIN_TO_A_QUESTION = _set("see sees feel hear any single still left looks feels clean get gets says say comes came")
"""The same, where something is to be looked at."""
_TOUCH = r"(?:touch(?:ed|ing)?|spill(?:ed|ing)?|spilt|los(?:e|ing|t)|wast(?:e|ed|ing)|contaminat(?:ed|e|ing))"
_END = r"(?:(?:the |its |my )?(?:tip|spike|port|hub|end|ends|tips|cap|connector|ports))"
_WHAT = rf"(?:anything|it|either one|either|any of it|any|them|a drop|a thing|{_END}(?: (?:or|nor|and) {_END})?)"
UNTOUCHED = re.compile(
    r"(?:(?:(?:i |we |is |are |have |has |had |did |and )*(?:not|never|without|nobody|nothing|no)(?: has been| has|"
    r" is| have| got| was| were)? "
    rf"{_TOUCH}(?: {_WHAT})?)|(?:kept (?:{_END}|it|them|both|both ends|everything) (?:sterile|clean|untouched))|"
    rf"(?:{_TOUCH} (?:nothing|neither|none of it))) "
)
"""What is said besides: that nothing was touched or lost."""
_FLAW = r"(?:air bubbles?|bubbles?|air|leaks?|drips|kinks?|problems?|issues?|trouble|spills?"
_FLAW += r"|drops lost|fluid lost|drug lost|drug wasted|drug spilled"
_FLAW += (
    r"|cloudiness|particles|bits|sediment|swelling|redness|puffiness|wobble|errors?|resistance|contact|drag|tension"
)
_FLAW += r"|strain|pull|pulling|tugging|light getting in|light gets in|light coming in)"
FLAWLESS = re.compile(
    rf"(?:(?:with |there (?:is|are) |and |i see )*(?:no|without|without any) {_FLAW}"
    r"(?: (?:in it|at all|anywhere|in the line|in there|left))?"
    r"|nothing (?:is |has )?(?:gone |went )?wrong(?: with it)?) "
)
"""What is said besides of something done: that there is no flaw."""
NEUTRAL_PHRASES = tuple(
    tuple(phrase.split())
    for phrase in (
        *("line by line", "one by one", "side by side", "nice and slow", "nice and slowly", "as i can see"),
        *("as far as i can see", "that i can see", "that i see", "i can see", "up to the collar", "once more"),
        *("so far as i can see", "right to the end", "right up", "right in", "right on", "right at"),
        *("right down", "right through", "for you", "what is coming", "what i am going to do", "right there"),
        *("first drop", "a moment ago", "just now", "all the way", "i can tell", "any more"),
        *("on my watch", "by my watch", "on my phone", "the lot", "the whole lot", "the whole thing", "the full lot"),
        *("every bit of it", "every last bit", "every last one", "every single one", "each and every one", "the pair"),
        *("the pair of them", "the two of them", "the three of them", "the both of them", "on the two", "in one go"),
        *("in one piece", "all in one piece", "took my time", "slow and steady", "nice and steady", "no rush"),
        *(
            "for that one",
            "for this one",
            "on that one",
            "from start to finish",
            "start to finish",
            "by feel",
            "by touch",
        ),
        *("with both hands", "with one hand", "in my other hand", "with my other hand", "in the other hand"),
        *("with the other hand", "top to bottom", "from top to bottom", "end to end", "from end to end"),
        *("slow but steady", "slowly but steadily", "slow and steadily", "all along the line"),
        *(
            "a second ago",
            "a minute ago",
            "at the first go",
            "first go",
            "as well",
            "of course",
            "for sure",
            "good and",
        ),
        *("all by myself", "by myself", "on my own", "one after the other", "one after another", "one at a time"),
        *("where it belongs", "where it goes", "as it should be", "as they should be", "like it should be", "dead on"),
        *("to be safe", "to be sure", "just to be safe", "just to be sure", "on the safe side", "in my hand"),
    )
)
"""What is said of how it was done."""
NOUNS = _set("""
    block blockage kink clot rest
    bag bags line lines set sets pump pumps tube tubing clamp clamps roller slide spike port ports hub lock cap caps
    chamber drip pole stand hook hooks tip end ends collar connector syringe flush needle catheter cannula dressing
    site skin arm hand hands finger fingers wrist wristband band name names date dates birthday birth label labels
    sticker order orders chart charts notes note record paper form sheet pen bed pillow rail table tray counter floor
    bin trash garbage sink drawer shelf patient client family mother father door latch screen display button list
    library menu settings rate volume dose drug medicine medication fluid solution saline alarm battery mains socket
    wall wipe wipes swab gloves glove gown tape loop bell wrapper wrap packet package pouch pack seal signature
    doctor prescriber physician instructor air bubble bubbles drop drops blood side top bottom middle mark
    level time times motion push pause test check checks color colour light lamp primary secondary area spot vein
    allergies allergy
    luer cannula forearm basin bowl dish waste shoulder hilt slot channel groove packaging plastic cover overwrap wheel
    machine device monitor trolley station bench desk curtain gown mask apron goggles towel dispenser pedal lever
    knob switch cable lead plug valve filter piggyback extension strip strips bandage gauze plaster film elbow
    balance flow key keys word words number numbers value values reading readings message page box packet glass
    joint joints thread buzzer foil sleeve phone watch cradle holder hanger extender stopcock pinch square biro
    marker computer tablet laptop system cupboard chair blanket folder clipboard change
    connection connections weight plunger flange outlet outlets gap catheters colleague nurse reason
    rundown state condition place spot corner edge edges
""")
"""Things at the bench. One that the line does not name may only say where, or by what."""
WHERE_OR_BY_WHAT = _set("""
    pole stand hook hooks rail rest bed pillow bedside table tray counter shelf trolley station bench desk curtain
    bin trash garbage sink drawer waste basin bowl dish hand hands finger fingers thumb door side top bottom middle
    end ends level time times place spot position corner edge edges mark tip bell button screen display light lamp
    chart charts notes note record paper form sheet pen order orders label labels
    wipe wipes swab tape tissue soap gel water loop push motion balance flow
    wrist wrists elbow packet slot channel groove wall mains socket foil sleeve collar list menu library
    phone watch cradle holder hanger extender biro marker computer tablet laptop system folder clipboard
""")
"""Nouns that, behind a preposition, only say where or by what something was done, whatever it was done to."""
CLAMPED_AT_THE_VEIN = _set("extension hub lock nearest")
"""Where a line that says so wants a clamp closed or opened, the roller of the set is another one."""
TOLD_APART = _set("old long short large spare thin thick primary secondary")
"""What tells a thing from others: where the line does not, it is another thing."""
SIDES = _set("upper lower higher above below top bottom front back")
"""Where one of several things is; nothing follows where the line speaks of heights itself."""
ASKED_OF = _set("site skin arm area spot hand patient doctor prescriber physician everything band wristband")
"""What a question may be answered of, though it does not name it."""
LOOKED = _set("checked compared looked verified read counted confirmed traced double inspected went put typed entered")
"""How a learner knows: "I checked both"."""

FINISHED = _phrases("""
    done, finished, complete, completed, all set, sorted, i did it, i did that, did it, did that, done it, job done,
    that is me, taken care of, took care of it, i did both, i did, did both, done both, it is all sorted
""")
UNFINISHED = _phrases("""
    not yet, i did not, i have not, did not do it, did not do that, have not done it, have not done that, not ready,
    have not started, not really, not quite, not all of it, still have to, still to do, not done yet
""")
UNFINISHED_ENDS = _set("and or but so the a an because to of with my your its is are am have has i at from if")
"""Words with which no statement ends."""
STARTED = _phrases("""
    start, starting, started, begin, beginning, begun, go, start now, starting now, start the clock, start the timer,
    timer on, let go, from now, off we go, here we go, here goes, time starts, start counting, counting, start time,
    holding pressure, pressure on, pressing, time, drying time, clock is running, you can start, you can start now, off
    you go, start please, and go, count me down, count me in, clock on, start it, you may start, you can begin, you can
    start counting, you can start the clock, you can start the timer
""")
ALL_GOOD = _phrases("""
    all good, all fine, fine, looks good, looks fine, look good, look fine, all okay, looks okay, is good, are
    good, perfect, looks perfect, is okay, are okay, looks normal, normal, is fine, are fine, healthy, looks
    healthy, feels fine, feels normal, is normal, feels good
""")
ALL_RIGHT = _phrases("correct, all correct, is right, are right, looks right, is correct, are correct")
"""What says that it is as asked, where nothing is looked for."""
ASKING_ENDS = frozenset(
    tuple(phrase.split())
    for phrase in (
        *("right", "is it", "are they", "is not it", "is it not", "are they not", "or not", "does it", "do they"),
        *("did i", "have i", "yet", "is that right", "no", "huh", "eh", "or what", "or is it", "am i", "have we"),
    )
)
"""Ends that make a question of a statement."""
