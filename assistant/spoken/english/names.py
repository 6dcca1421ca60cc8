"""Names of fluids as people say them. The first is canonical; none is a brand."""

FLUIDS: tuple[tuple[str, ...], ...] = (
    (
        "0.9 % sodium chloride",
        "normal saline",
        "sodium chloride 0.9 %",
        "isotonic saline",
        "physiological saline",
        "0.9 % saline",
        "saline 0.9 %",
        "n s",
        "0.9 saline",
        "0.9 % normal saline",
    ),
    (
        "0.45 % sodium chloride",
        "half normal saline",
        "half strength saline",
        "half normal",
        "sodium chloride 0.45 %",
        "0.45 % saline",
    ),
    ("3 % sodium chloride", "sodium chloride 3 %", "3 % saline"),
    (
        "5 % dextrose in water",
        "5 % dextrose",
        "dextrose 5 %",
        "dextrose 5 % in water",
        "dextrose 5 in water",
        "5 % glucose",
        "glucose 5 %",
        "d 5 w",
        "d 5 water",
    ),
    (
        "10 % dextrose in water",
        "10 % dextrose",
        "dextrose 10 %",
        "dextrose 10 % in water",
        "10 % glucose",
        "glucose 10 %",
        "d 10 w",
    ),
    (
        "5 % dextrose in 0.9 % sodium chloride",
        "5 % dextrose in normal saline",
        "dextrose 5 % in normal saline",
        "dextrose 5 % in 0.9 % sodium chloride",
        "5 % dextrose with 0.9 % sodium chloride",
        "5 % dextrose and 0.9 % sodium chloride",
        "d 5 normal saline",
        "d 5 n s",
    ),
    (
        "5 % dextrose in 0.45 % sodium chloride",
        "5 % dextrose in half normal saline",
        "dextrose 5 % in half normal saline",
        "dextrose 5 % in 0.45 % sodium chloride",
        "5 % dextrose with 0.45 % sodium chloride",
        "5 % dextrose and 0.45 % sodium chloride",
        "d 5 half normal saline",
        "d 5 half normal",
        "d 5 and half normal",
    ),
    (
        "lactated Ringer's solution",
        "lactated ringers",
        "lactated ringer",
        "ringers lactate",
        "ringer lactate",
        "l r",
    ),
    ("Ringer's solution", "ringers", "ringer"),
    ("compound sodium lactate", "hartmanns"),
    ("sterile water", "water for injection", "sterile water for injection"),
)
"""Common fluids; terms of the trade (common practice, no source)."""

DRUGS: tuple[tuple[str, ...], ...] = (
    ("acetaminophen", "paracetamol"),
    ("acyclovir", "aciclovir"),
    ("ampicillin",),
    ("azithromycin",),
    ("cefazolin", "cephazolin"),
    ("cefepime",),
    ("cefotaxime",),
    ("cefoxitin",),
    ("ceftazidime",),
    ("ceftriaxone",),
    ("cefuroxime",),
    ("ciprofloxacin",),
    ("clindamycin",),
    ("famotidine",),
    ("fluconazole",),
    ("furosemide", "frusemide"),
    ("gentamicin",),
    ("levofloxacin",),
    ("magnesium sulfate", "magnesium sulphate"),
    ("meropenem",),
    ("metronidazole",),
    ("ondansetron",),
    ("pantoprazole",),
    ("penicillin g",),
    ("potassium chloride",),
    ("vancomycin",),
)
"""Drugs that are often given as a secondary; international and American generic names."""

LEFT_OUT = frozenset({"solution", "injection", "intravenous", "infusion"})
"""Words that labels carry and people leave out."""

NO_NUMBERS = frozenset({"half", "a", "quarter"})
"""Words that begin a number elsewhere: "half normal saline" holds none."""

ONE_WORD = {"per cent": "percent", "%": "percent"}
"""Ways to say and to write one word of a name."""
