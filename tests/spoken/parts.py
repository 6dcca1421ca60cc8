"""Parts of the language core, made of the tables of English, for tests that look at one of them alone."""

from assistant.spoken import ENGLISH
from assistant.spoken.quantities import Quantities
from assistant.spoken.tokens import Tokeniser
from assistant.spoken.units import UnitWords

_TOKENISER = Tokeniser(ENGLISH.tables.writing)
_UNITS = UnitWords(ENGLISH.tables.units, _TOKENISER)
_QUANTITIES = Quantities(ENGLISH.tables, _UNITS.rules)

tokens_of = _TOKENISER.tokens_of
forms_of = _UNITS.forms_of
readings = _QUANTITIES.readings
several = _QUANTITIES.several
