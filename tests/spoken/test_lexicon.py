"""What is said for the trade's short forms, and the sounds of every drug, fluid and unit that may be named."""

import importlib.util
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.spoken import ENGLISH, speech
from assistant.spoken.english.names import DRUGS, FLUIDS
from assistant.spoken.english.units import ONLY_SAID, UNITS

LIBRARY = Path(__file__).parent.parent.parent / "checklists"


@pytest.mark.parametrize(
    ("shown", "spoken"),
    [
        ("KCl 20 mEq", "potassium chloride twenty milliequivalents"),
        ("NaCl 0.9 %", "sodium chloride zero point nine percent"),
        ("D5W", "five percent dextrose in water"),
        ("1/2 NS", "half normal saline"),
        ("by IVPB", "by intravenous piggyback"),
        ("q12h", "every twelve hours"),
        ("q 8 h", "every eight hours"),
        ("qd", "every day"),
        ("b.i.d.", "twice a day"),
        ("TID", "three times a day"),
        ("q.i.d., not a bid", "four times a day, not a bid"),
        ("PRN", "as needed"),
        ("an 18-gauge catheter", "an eighteen gauge catheter"),
        ("24 G", "twenty four gauge"),
        ("2 g", "two grams"),
        ("SpO2 94 %", "oxygen saturation ninety four percent"),
        ("BP 120/80", "blood pressure one hundred and twenty over eighty"),
        ("-3 mL", "minus three millilitres"),
        ("from -3 to 5", "from minus three to five"),
        ("\u22123 mL", "minus three millilitres"),
        ("950-1,000 mL", "nine hundred and fifty to one thousand millilitres"),
        ("1st, 2nd, 3rd and 21st dose", "first, second, third and twenty first dose"),
        ("the 12th hour, the 40th", "the twelfth hour, the fortieth"),
        ("1,250 mg", "one thousand two hundred and fifty milligrams"),
        ("0.05 mg", "zero point zero five milligrams"),
        ("5 units per mL", "five units per millilitre"),
        ("14:05", "fourteen zero five"),
    ],
)
def test_short_forms_are_spoken_in_words(shown: str, spoken: str) -> None:
    """What a label or an order writes short is said in full (common practice, no source)."""
    assert speech(shown) == spoken


MEDLINEPLUS = {
    "acetaminophen": 4,
    "ampicillin": 3,
    "azithromycin": 4,
    "cefazolin": 2,
    "cefepime": 1,
    "cefotaxime": 3,
    "cefoxitin": 2,
    "ceftazidime": 2,
    "ceftriaxone": 3,
    "cefuroxime": 3,
    "ciprofloxacin": 3,
    "clindamycin": 3,
    "diltiazem": 2,
    "dobutamine": 2,
    "dopamine": 1,
    "famotidine": 2,
    "fluconazole": 2,
    "furosemide": 2,
    "gentamicin": 3,
    "heparin": 1,
    "levofloxacin": 3,
    "meropenem": 3,
    "metronidazole": 3,
    "nitroprusside": 3,
    "ondansetron": 2,
    "pantoprazole": 2,
    "vancomycin": 3,
}
"""Which syllable of a drug bears the stress: the pronunciations of MedlinePlus, "sef a' zoe lin" (from memory)."""


def named() -> Iterator[str]:
    """Every drug and fluid of the shelf, of the labels, and of the names that are understood."""
    shelf = tomllib.loads((LIBRARY / "shelf.toml").read_text("utf-8"))
    yield from (entry["name"] for kind in ("fluids", "drugs", "rates") for entry in shelf[kind])
    labels = tomllib.loads((LIBRARY / "names.toml").read_text("utf-8"))
    yield from (*labels["fluids"], *labels["drugs"])
    yield from (form for forms in (*FLUIDS, *DRUGS) for form in forms if re.fullmatch(r"[a-z]{2}.*", form))


needs_voice = pytest.mark.skipif(importlib.util.find_spec("hibari") is None, reason="the neural voice is not installed")


@pytest.fixture(scope="module")
def sounds_of():
    """What the neural voice reads for words, in its own signs, with the lexicon's own sounds."""
    from hibari import Hibari

    from assistant.adapters.lasting_process import LastingProcess
    from assistant.adapters.neural_voice import NeuralVoice

    engine = Hibari()
    voice = NeuralVoice(LastingProcess(("no-such-program",)), ENGLISH.diction)
    return lambda words: " ".join(
        sounds for one in voice.stretches(words) for sounds in engine.phonemize(str(voice.request(one)["words"]))
    )


VOWELS = "AIOQWYaeiou\u0251\u0250\u0252\u00e6\u0254\u0259\u025a\u025b\u025c\u026a\u028a\u028c\u1d4a\u1d7b"
"""Signs of the voice that make a syllable (misaki's signs, from the package's vocabulary)."""


@pytest.mark.sound
@needs_voice
@pytest.mark.parametrize(("name", "syllable"), MEDLINEPLUS.items())
def test_every_drug_is_stressed_as_it_is_said(name: str, syllable: int, sounds_of) -> None:
    """The strong stress lies on the syllable that bears it."""
    before, stress, _ = sounds_of(name).partition("\u02c8")
    assert stress
    assert len(re.findall(f"[{VOWELS}]", before)) + 1 == syllable, sounds_of(name)


@pytest.mark.sound
@needs_voice
def test_every_name_and_unit_has_sounds(sounds_of) -> None:
    """Nothing that may be named is left out, spelled letter by letter, or held by no list of stresses."""
    units = [word for unit in UNITS for word in (unit.one, unit.many)] + [
        w for said in ONLY_SAID.values() for w in said
    ]
    for words in (*(speech(name) for name in named()), *units):
        assert len(sounds_of(words)) >= len(words) / 2, words
    drugs = {tuple(name.split()) for name in named() if not re.search(r"\d|saline|ringer|dextrose|normal", name, re.I)}
    single = {name[0] for name in drugs if len(name) == 1}
    other_names = {"aciclovir", "acyclovir", "paracetamol", "cephazolin", "frusemide", "hartmanns"}
    assert single - other_names <= set(MEDLINEPLUS)
