"""How English is written: contractions, spellings of one word, fillers."""

CONTRACTIONS = {
    "that's": "that is",
    "thats": "that is",
    "it's": "it is",
    "what's": "what is",
    "whats": "what is",
    "where's": "where is",
    "wheres": "where is",
    "isn't": "is not",
    "isnt": "is not",
    "doesn't": "does not",
    "doesnt": "does not",
    "don't": "do not",
    "dont": "do not",
    "didn't": "did not",
    "haven't": "have not",
    "havent": "have not",
    "hasn't": "has not",
    "aren't": "are not",
    "wasn't": "was not",
    "can't": "can not",
    "cannot": "can not",
    "couldn't": "could not",
    "i've": "i have",
    "ive": "i have",
    "i'm": "i am",
    "they're": "they are",
    "let's": "let us",
    "we're": "we are",
    "we've": "we have",
    "she's": "she is",
    "he's": "he is",
    "there's": "there is",
    "theres": "there is",
    "here's": "here is",
    "won't": "will not",
    "wouldn't": "would not",
    "shouldn't": "should not",
    "weren't": "were not",
    "hadn't": "had not",
    "i'll": "i will",
    "i'd": "i would",
    "you're": "you are",
    "you've": "you have",
    "they've": "they have",
    "everything's": "everything is",
    "nothing's": "nothing is",
    "something's": "something is",
    "none's": "none is",
    "them's": "them is",
    "nobody's": "nobody is",
    "one's": "one is",
    "it'll": "it will",
    "it'd": "it would",
    "who's": "who is",
    "how's": "how is",
    "mustn't": "must not",
    "needn't": "need not",
    "ain't": "is not",
    "couldnt": "could not",
    "wont": "will not",
    "ns": "n s",
    "lr": "l r",
    "d5ns": "d 5 n s",
    "wasnt": "was not",
    "arent": "are not",
    "hasnt": "has not",
}
"""Short forms, written out before anything is compared."""

SAME_WORD = {
    "ok": "okay",
    "okey": "okay",
    "fourty": "forty",
    "ninty": "ninety",
    "fourtyfive": "forty five",
    "yeah": "yes",
    "yep": "yes",
    "yup": "yes",
    "ya": "yes",
    "yea": "yes",
    "aye": "yes",
    "nope": "no",
    "nah": "no",
    "naught": "nought",
    "umm": "um",
    "uhh": "uh",
    "uhm": "um",
    "ehm": "um",
    "erm": "um",
    "er": "uh",
    "ah": "uh",
    "hm": "um",
    "hmm": "um",
    "mm": "um",
    "gramme": "gram",
    "grammes": "grams",
    "milligramme": "milligram",
    "milligrammes": "milligrams",
    "microgramme": "microgram",
    "microgrammes": "micrograms",
}
"""Spellings that mean one word."""

HESITATIONS = frozenset({"um", "uh"})
"""Sounds of thinking: dropped wherever they stand; inside a number they make it doubtful."""

COURTESIES = (
    "please",
    "thank you",
    "thanks",
    "well",
    "so",
    "now then",
    "let me see",
    "let us see",
    "you know",
    "sir",
    "maam",
    "madam",
    "mate",
)
"""Words that add nothing: dropped at the beginning and at the end only."""

SAID_AFTER = ("please", "thank you", "thanks")
"""Those of them that people put behind an answer or a command; recognisers listen for them there."""

SHORT_FORMS = {"that is": "that's", "it is": "it's", "what is": "what's", "i have": "i've", "is not": "isn't"}
"""How the written-out forms are also said; used to list what may be heard."""

ONE_LETTER_WORDS = frozenset({"a", "i"})
"""Single letters that are words, and no short forms."""

CAPITALS = {"i": "I", "i'm": "I'm", "i've": "I've", "ok": "OK"}
"""Words that are written with capitals inside a sentence too."""
