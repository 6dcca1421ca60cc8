"""What stands around a number or a name and says nothing of it, in English: "it is", "on the label"."""

CARRIERS: dict[str, str | None] = {
    "it is": None,
    "that is": None,
    "it says": None,
    "it shows": None,
    "it reads": None,
    "the pump shows": None,
    "the pump says": None,
    "the display shows": None,
    "the display says": None,
    "the label says": None,
    "the bag says": None,
    "i get": None,
    "i got": None,
    "i read": None,
    "i see": None,
    "the answer is": None,
    "the rate is": "rate",
    "the volume is": "volume",
    "the time is": "time",
    "the duration is": "time",
    "the dose is": "mass",
    "rate is": "rate",
    "volume is": "volume",
    "time is": "time",
    "dose is": "mass",
}
"""What may stand before a number, and the kind of quantity that it names.

Not "I have": so the assistant's own read-back begins, and it must not answer itself.
"""

BEFORE_NUMBERS = (
    *("it is", "that is", "this is", "it says", "it shows", "it reads", "it is at", "it is on", "it is set to"),
    *("it is set at", "it is set for", "it is running at", "it is reading", "it is the", "that is the", "just the"),
    *("it is a", "that is a", "it is a little", "a little", "a", "the", "okay", "well", "so", "and so", "now"),
    *("pump says", "pump shows", "the pump says", "the pump shows", "pump is at", "the pump is at", "pump is on"),
    *("display says", "display shows", "the display says", "the display shows", "screen says", "the screen says"),
    *("label says", "the label says", "bag says", "the bag says", "says", "shows", "reads", "it runs", "it will run"),
    *("it runs for", "it will run for", "it will take", "it takes", "it runs over", "it says run over", "run over"),
    *("i have got", "i got", "i get", "i see", "i read", "i put in", "i set it to", "set it to", "set to", "set at"),
    *("i have set it to", "i entered", "i have entered", "entered", "i typed in", "typed in", "keyed in", "i made it"),
    *("i counted", "i make it", "counted", "i have put in", "this one holds", "this one says", "it holds"),
    *(
        "it is one of the",
        "one of the",
        "she is",
        "he is",
        "she weighs",
        "he weighs",
        "they weigh",
        "the patient weighs",
    ),
    *("patient weighs", "it comes out at", "it comes to", "it works out at", "the pump is set to", "it is running"),
)
"""What may stand before a number in a sentence. None denies, doubts, or names a quantity. Not "I have": so the
assistant's own read-back begins, and it must not answer itself."""

BEHIND_NUMBERS = (
    *("is what it says", "is what it shows", "it says", "it says here", "is what i have", "on the front", "here"),
    *("on the label", "on the display", "on the screen", "on the pump", "on the chart", "on the bag", "on this one"),
    *("bag", "bags", "one", "ones", "bag of it", "on it", "set", "in the bag", "in it", "now", "is what i got"),
    *("it is a micro drip", "it is a macro drip", "on the packet", "on the package", "in there", "all in all"),
)
"""What may stand behind a number and says nothing of it."""

BEFORE_NAMES = (
    *("it is", "that is", "this is", "it says", "it reads", "the label says", "label says", "the bag says", "bag says"),
    *("a bag of", "the bag of", "bag of", "a", "the", "i have got", "i have", "i have got a", "i see", "okay", "so"),
    *("it is called", "the name is", "the fluid is", "the drug is", "it is labelled", "labelled"),
)
"""What may stand before the name of a fluid or a drug and says nothing of it."""

BEHIND_NAMES = ("it says", "it says here", "here", "bag", "on the label", "on the bag", "on it", "is what it says")
"""What may stand behind such a name."""

CORRECTIONS = (
    "no",
    "no no",
    "wrong",
    "no wait",
    "no sorry",
    "sorry",
    "correction",
    "i mean",
    "no i mean",
    "sorry i mean",
    "i meant",
    "no i meant",
    "no i said",
    "i said",
    "sorry i meant",
    "actually",
    "no actually",
    "make that",
    "no make that",
    "make it",
    "rather",
    "or rather",
    "scratch that",
    "oops",
    "wait",
    "wait no",
)
"""What parts a slip of the tongue from the number that was meant: the last one counts."""

BETWEEN_AMOUNTS = (
    "in",
    "over",
    "at",
    "for",
    "with",
    "and",
    "per",
    "/",
    "to run over",
    "to run at",
    "given over",
    "infused over",
    "diluted in",
    "mixed in",
)
"""What joins the parts of "two grams in one hundred millilitres over thirty minutes"."""

BETWEEN_NUMBERS = frozenset({"and", "or", "to", "in", "over", "at", "for", "by", "then", "with", "from"})
"""Words that show, between two numbers, that there are two."""
