"""The guide: the procedure as a machine without input or output of its own. Everything a caller needs is here.

Ten lines embed it (this example is run by the tests)::

    >>> from datetime import UTC, datetime
    >>> from assistant.guide import Append, Guide, Opened, Papers, Recorded, Say, Typed
    >>> from assistant.checklist.load import load
    >>> from assistant.orders.load import load_order
    >>> from assistant.orders.solve import answer_key
    >>> from assistant.spoken import ENGLISH
    >>> checklist, order = load("saline-lock"), load_order(load("saline-lock").order)
    >>> guide = Guide(Papers(checklist, order.sentence(), answer_key(order), ENGLISH))
    >>> for event in (Opened(datetime.now(UTC)), Typed(datetime.now(UTC), "where am I")):
    ...     [entry] = guide.receive(event)  # an Append: put entry.body on disk, then say so
    ...     effects = guide.receive(Recorded(1, "the digest of the entry"))
    >>> [effect.text for effect in effects if isinstance(effect, Say)][0][:17]
    'You are at step 1'

`Guide` gives the rules of this protocol; breaking them raises `GuideMisuseError`. `Guide.preview` says what an
event would lead to, `Guide.replay` takes up an attempt from its entries, `Guide.results` gives the result.
"""

from assistant.guide.effects import Adjust, Append, Cover, Effect, Finish, Listen, Outcome, Say, StepLine, Tone, WakeAt
from assistant.guide.events import (
    Directed,
    Direction,
    EarBack,
    EarLost,
    Event,
    Happened,
    Happening,
    Heard,
    InputEnded,
    InstructorCame,
    Mark,
    Marked,
    NotUnderstood,
    Opened,
    Recorded,
    Resumed,
    Typed,
    VoiceLost,
    Woke,
)
from assistant.guide.guide import KEEP_SOUND, WITH_CODE, Guide, GuideMisuseError, ReplayError
from assistant.guide.papers import Papers
from assistant.guide.progress import Consent, Mode, Person, Progress, State, Status, StepProgress
from assistant.guide.result import Ending, Results, StepResult

__all__ = [
    "KEEP_SOUND",
    "WITH_CODE",
    "Adjust",
    "Append",
    "Consent",
    "Cover",
    "Directed",
    "Direction",
    "EarBack",
    "EarLost",
    "Effect",
    "Ending",
    "Event",
    "Finish",
    "Guide",
    "GuideMisuseError",
    "Happened",
    "Happening",
    "Heard",
    "InputEnded",
    "InstructorCame",
    "Listen",
    "Mark",
    "Marked",
    "Mode",
    "NotUnderstood",
    "Opened",
    "Outcome",
    "Papers",
    "Person",
    "Progress",
    "Recorded",
    "ReplayError",
    "Results",
    "Resumed",
    "Say",
    "State",
    "Status",
    "StepLine",
    "StepProgress",
    "StepResult",
    "Tone",
    "Typed",
    "VoiceLost",
    "WakeAt",
    "Woke",
]
