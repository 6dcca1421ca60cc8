"""What an attempt is given and never changes: procedure, order, answer key, mode."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from assistant import dosing
from assistant.checklist.model import Checklist
from assistant.guide.progress import Mode
from assistant.orders.key import KeyEntry


@dataclass(frozen=True)
class Given:
    """The papers and the mode of one attempt.

    Attributes:
        checklist: the authored procedure.
        order_text: the order in sentences, as shown.
        key: the answer key.
        mode: practice or check-off.
        asks_consent: sound is to be kept, if the learner agrees.
        instructor_code: the instructor has a code, and speaks only with it.
    """

    checklist: Checklist
    order_text: str
    key: Mapping[str, KeyEntry]
    mode: Mode
    asks_consent: bool = False
    instructor_code: bool = False

    @property
    def practice(self) -> bool:
        """Whether answers and their working may be told."""
        return self.mode is Mode.PRACTICE

    def values(self) -> dict[str, str | dosing.Amount]:
        """The answer key as conditions compare it: names as text, numbers as amounts."""
        return {
            name: entry.value if isinstance(entry.value, str) else self.amount(name) for name, entry in self.key.items()
        }

    def amount(self, key: str) -> dosing.Amount:
        """The number with this name in the answer key.

        Raises:
            TypeError: it is a name.
        """
        entry = self.key[key]
        if not isinstance(entry.value, Decimal):
            raise TypeError(f"{entry.name} is a name, not a number")
        return dosing.Amount(entry.value, entry.unit or "")

    def working(self, key: str) -> tuple[str, ...]:
        """The working of a value; none where the order states it, or where the key does not hold it."""
        return self.key[key].working if key in self.key else ()

    def other_amounts(self, key: str) -> dict[str, dosing.Amount]:
        """Every other number of the answer key, by name."""
        return {
            name: self.amount(name)
            for name, entry in self.key.items()
            if name != key and isinstance(entry.value, Decimal)
        }
