"""The trade's short forms in words, and how words sound that a voice would say wrongly: one table each.

`tests/spoken/test_lexicon.py` holds every drug, fluid and unit that may be named against it.
"""

import re
from collections.abc import Callable

from assistant.spoken.english.numbers import cardinal, ordinal

Said = str | Callable[[re.Match[str]], str]


def _count(match: re.Match[str]) -> str:
    return cardinal(int(match["count"]))


def _every(match: re.Match[str]) -> str:
    unit = {"h": "hour", "hr": "hour", "hrs": "hour", "min": "minute", "d": "day"}[match["unit"].lower()]
    return f"every {unit}" if match["count"] in ("", "1") else f"every {_count(match)} {unit}s"


ABBREVIATIONS: tuple[tuple[re.Pattern[str], Said], ...] = (
    # Fluids and drugs.
    (re.compile(r"\bKCl\b"), "potassium chloride"),
    (re.compile(r"\bNaCl\b"), "sodium chloride"),
    (re.compile(r"\bCaCl2\b"), "calcium chloride"),
    (re.compile(r"\bMgSO4\b"), "magnesium sulfate"),
    (re.compile(r"\bNaHCO3\b"), "sodium bicarbonate"),
    (re.compile(r"\bD(?P<count>5|10)W\b"), lambda match: f"{_count(match)} percent dextrose in water"),
    (re.compile(r"(?:\b1/2|\u00bd) ?NS\b"), "half normal saline"),
    (re.compile(r"\bNS\b"), "normal saline"),
    (re.compile(r"\bLR\b"), "lactated Ringer's"),
    # How and how often.
    (re.compile(r"\bIVPB\b"), "intravenous piggyback"),
    (re.compile(r"\bIVP\b"), "intravenous push"),
    (re.compile(r"\bIV\b"), "intravenous"),
    (re.compile(r"\bIM\b"), "intramuscular"),
    (re.compile(r"\b(?:PO|p\.o\.)(?!\w)"), "by mouth"),
    (re.compile(r"\bb\.i\.d\.|\bBID\b"), "twice a day"),
    (re.compile(r"\bt\.i\.d\.|\bTID\b"), "three times a day"),
    (re.compile(r"\bq\.i\.d\.|\bQID\b"), "four times a day"),
    (re.compile(r"\b[qQ]\.? ?(?P<count>\d*) ?(?P<unit>hrs?|h|min|d)\b"), _every),
    (re.compile(r"\b(?:PRN|prn|p\.r\.n\.)(?!\w)"), "as needed"),
    (re.compile(r"\b(?:KVO|TKO)\b"), "to keep the vein open"),
    (re.compile(r"\bVTBI\b"), "volume to be infused"),
    (re.compile(r"\bMAR\b"), "medication administration record"),
    # Lines, and what is measured.
    (re.compile(r"\b(?P<count>1[4-9]|2[0-9])(?:[- ]?gauge|[- ]?G)\b"), lambda match: f"{_count(match)} gauge"),
    (re.compile(r"\bPICC\b"), "pick"),
    (re.compile(r"\bCVC\b"), "central venous catheter"),
    (re.compile(r"\bSp[Oo][2\u2082]"), "oxygen saturation"),
    (re.compile(r"\bBP\b"), "blood pressure"),
    (re.compile(r"\bHR\b"), "heart rate"),
    (re.compile(r"(?<=[bB]lood pressure )(\d{2,3})/(\d{2,3})\b"), r"\1 over \2"),
    # Any text's.
    (re.compile(r"\b(?P<count>\d{1,3})(?:st|nd|rd|th)\b"), lambda match: ordinal(int(match["count"]))),
    (re.compile(r"(?<![\w.,)\]-])-(?=\d)"), "minus "),
    (re.compile(r"\bm L\b"), "m l"),
    (re.compile(r"\be\.g\.,?"), "for example"),
    (re.compile(r"\bi\.e\.,?"), "that is"),
    (re.compile(r"\betc\."), "and so on"),
    (re.compile(r"\bDr\.? (?=[A-Z])"), "Doctor "),
    (re.compile(r"\bNo\. (?=\d)"), "number "),
    (re.compile(r"\bapprox\."), "about"),
    (re.compile(r"\bmax\."), "at most"),
    (re.compile(r"\bmin\. (?=\d)"), "at least "),
    (re.compile(r"\bvs\.?(?= )"), "against"),
    (re.compile(r"\band/or\b"), "or"),
    (re.compile(r"(?<=\d) in(?= [=\u00d7\u00f7]|$)"), " inches"),
)
"""Short forms as they are written, and what is said for them, first of all (common practice, no source)."""

SOUNDS: dict[str, str] = {
    "acetaminophen": "əsˌitəmˈɪnəfən",
    "aciclovir": "eɪsˈaɪkləvˌɪɹ",
    "acyclovir": "eɪsˈaɪkləvˌɪɹ",
    "aminoglycosides": "əmˌinoʊɡlˈaɪkəsˌaɪdz",
    "amiodarone": "əmˈioʊdəɹˌoʊn",
    "azithromycin": "æzˌɪθɹoʊmˈaɪsɪn",
    "cefazolin": "sɛfˈæzoʊlɪn",
    "cefepime": "sˈɛfəpˌim",
    "cefotaxime": "sˌɛfətˈæksim",
    "cefoxitin": "səfˈɑksɪtɪn",
    "ceftazidime": "sɛftˈeɪzɪdˌim",
    "ceftriaxone": "sˌɛftɹaɪˈæksoʊn",
    "cefuroxime": "sˌɛfjʊɹˈɑksim",
    "cephazolin": "sɛfˈæzoʊlɪn",
    "ciprofloxacin": "sˌɪpɹoʊflˈɑksəsɪn",
    "diltiazem": "dɪltˈaɪəzˌɛm",
    "dobutamine": "doʊbjˈutəmˌin",
    "famotidine": "fəmˈoʊtɪdˌin",
    "fluconazole": "flukˈɑnəzˌoʊl",
    "frusemide": "fɹˈusəmˌaɪd",
    "ketorolac": "kˌitəɹˈoʊlæk",
    "levofloxacin": "lˌivoʊflˈɑksəsɪn",
    "meropenem": "mˌɛɹoʊpˈɛnəm",
    "metronidazole": "mˌɛtɹoʊnˈaɪdəzˌoʊl",
    "milliequivalent": "mˌɪliɪkwˈɪvələnt",
    "milliequivalents": "mˌɪliɪkwˈɪvələnts",
    "ondansetron": "ɑndˈænsətɹˌɑn",
    "pantoprazole": "pæntˈoʊpɹəzˌoʊl",
    "paracetamol": "pˌæɹəsˈitəmˌɔl",
    "propofol": "pɹˈoʊpəfˌɑl",
    "vancomycin": "vˌæŋkoʊmˈaɪsɪn",
}
"""Sounds of words that a voice would stress or read wrongly, in small letters, American.

Source: the pronunciations that MedlinePlus prints with each drug, "sef a' zoe lin" (from memory).
"""

HISSED: dict[str, str] = {"six": "sˈɪkss"}
"""Digits that end in a hiss, where one is a breath of its own, with that hiss as long as within a sentence.

By itself, the voice's "six" had 0.09 s of it and then a hum, within a sentence 0.16 s and none.
"""
