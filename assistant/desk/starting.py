"""What an attempt can be started with: a checklist, its own order or a drawn one, and the sheets for the bench."""

import secrets
from dataclasses import dataclass
from datetime import date, datetime
from urllib.parse import urlencode

from pydantic import BaseModel, ConfigDict, Field

from assistant.checklist.load import load
from assistant.checklist.teaching_order import in_teaching_order
from assistant.desk.hub import new_id
from assistant.errors import AssistantError, UsageError
from assistant.link.messages import Start
from assistant.orders.draw import LEVELS
from assistant.orders.draw_for import draw_for
from assistant.orders.load import load_order
from assistant.orders.model import Order
from assistant.orders.planting import FAULTS, FaultKind
from assistant.orders.plausible import table
from assistant.orders.truth import truth_of
from assistant.orders.write import text_of
from assistant.report.bench_sheets_pdf import Sheets, sheets_pdf
from assistant.spoken import ENGLISH

DEFAULT_CHECKLIST = "primary-line"
LARGEST_SEED = 10**9 - 1
LEVEL_WORDS = {
    1: "every rate comes out without rounding",
    2: "one rounding, or one conversion of units",
    3: "two or more of these",
}
"""What each level of a draw asks for, in a few words."""


class Wanted(BaseModel):
    """What the form asks for; every field comes as text.

    Attributes:
        station: where.
        checklist: by its name in the library.
        learner, mode, typed: as in `assistant.link.messages.Start`.
        drawn: an order is drawn; the next three say how.
    """

    model_config = ConfigDict(frozen=True, extra="ignore")

    station: str = ""
    checklist: str = Field(default=DEFAULT_CHECKLIST, max_length=64)
    learner: str = ""
    mode: str = "practice"
    typed: bool = False
    drawn: bool = False
    level: int = 1
    seed: int = Field(default=1, ge=0, le=LARGEST_SEED)
    fault: str = ""
    day: date | None = None

    def order(self) -> Order:
        """The order of the attempt: the checklist's own, or the drawn one.

        Raises:
            AssistantError: there is no such checklist, or such an order cannot be drawn.
        """
        names = dict(in_teaching_order())
        if self.checklist not in names:
            raise UsageError("There is no such checklist.", "Choose one of the list.")
        checklist = load(self.checklist)
        if not self.drawn:
            return load_order(checklist.order)
        if self.level not in LEVELS:
            raise UsageError("There is no such level.", "Choose one of the list.")
        (order,) = draw_for(
            checklist, seed=self.seed, level=self.level, count=1, day=self.day or today(), fault=self._fault()
        )
        return order

    def start(self, code: str) -> Start:
        """The order to the station.

        Args:
            code: what an instructor types there; empty where nobody is to know it.

        Raises:
            AssistantError: as for `order`.
            ValidationError: the code or the mode is none.
        """
        order = self.order()
        return Start.model_validate(
            {
                "id": new_id(),
                "checklist": self.checklist,
                "order": order.name,
                "order_text": text_of(order) if self.drawn else "",
                "learner": self.learner,
                "mode": self.mode,
                "typed": self.typed,
                "code": code,
            }
        )

    def query(self) -> str:
        """The same order, for the address of a sheet."""
        told = {"checklist": self.checklist}
        if self.drawn:
            drawn = {"drawn": "yes", "level": self.level, "seed": self.seed, "fault": self.fault}
            told |= {name: str(value) for name, value in drawn.items()} | {"day": (self.day or today()).isoformat()}
        return urlencode(told)

    def _fault(self) -> FaultKind | None:
        found = [fault for fault in FAULTS if fault == self.fault]
        if self.fault and not found:
            raise UsageError("There is no such fault.", "Choose one of the list.")
        return found[0] if found else None


@dataclass(frozen=True)
class OrderShown:
    """An order as the instructor sees it before the start.

    Attributes:
        sentences: the order itself.
        faults: what is laid out wrong, and what would reach the patient.
        query: for the addresses of its sheets.
    """

    sentences: tuple[str, ...]
    faults: tuple[str, ...]
    query: str


def order_shown(wanted: Wanted) -> OrderShown:
    """What the page shows of an order.

    Raises:
        AssistantError: it cannot be drawn.
    """
    order = wanted.order()
    faults = tuple(f"{fault.what} {fault.reaches}".strip() for fault in truth_of(order, table()).faults)
    return OrderShown(tuple(order.sentences()), faults, wanted.query())


def sheet(wanted: Wanted, kind: str) -> bytes:
    """A PDF to print: for the instructor, labels, or for the learner.

    Raises:
        KeyError: there is no such document.
        AssistantError: the order cannot be drawn, or a formula refuses its numbers.
    """
    kinds = {one.value: one for one in Sheets}
    order = wanted.order()
    return sheets_pdf(kinds[kind], [order], ENGLISH.report, order.written or today())


def titles() -> dict[str, str]:
    """The title of each checklist that can be used, by its name, in the order in which they are taught."""
    found = {}
    for name, _ in in_teaching_order():
        try:
            found[name] = load(name).title
        except AssistantError:
            continue
    return found


def a_seed() -> int:
    """The number of a new draw."""
    return 1 + secrets.randbelow(9999)


def today() -> date:
    """The day of the lab's own clock."""
    return datetime.now().astimezone().date()
