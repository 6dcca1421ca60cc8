"""British and American English: one table of spellings and trade words, and what turns a text from one to the other.

Everything in this program is written in British words. What a learner says needs no table: both shores sound alike,
and `units.py` takes both spellings.
"""

import re

AMERICAN_FOR = {
    # Spelling: Merriam-Webster's and the Oxford dictionary's first entries (from memory).
    "millilitre": "milliliter",
    "litre": "liter",
    "centimetre": "centimeter",
    "metre": "meter",
    "colour": "color",
    "labelled": "labeled",
    "unlabelled": "unlabeled",
    # The trade's own words: "giving set" in the Royal Marsden Manual, "administration set" in the Infusion Therapy
    # Standards of Practice; "call light" in Open RN Nursing Skills (from memory).
    "giving set": "administration set",
    "call bell": "call light",
    "plaster": "bandage",
}
"""The American word for each British one, as singular; a plural takes its s on both sides."""
_BRITISH = re.compile(rf"\b({'|'.join(sorted(AMERICAN_FOR, key=len, reverse=True))})(s?)\b", re.IGNORECASE)


def american(text: str) -> str:
    """A text in American spelling and trade words; a capital at the front stays one.

    Args:
        text: in British words, as this program writes.
    """
    return _BRITISH.sub(_american_word, text)


def _american_word(found: re.Match[str]) -> str:
    word = AMERICAN_FOR[found[1].lower()] + found[2]
    return word[0].upper() + word[1:] if found[1][0].isupper() else word
