"""Who needs the instructor, and why: the order of the desk's rows. Pure."""

from dataclasses import dataclass
from enum import IntEnum

from assistant.desk.watched import StepSeen, Turn, Watched

SILENT_S = 60
"""So long without an entry while an answer is wanted counts as silence, seconds (common practice, no source)."""
LOST_S = 45
"""So long without a word from a station counts as no connection, seconds: longer than one wait for an order."""
UNCLEAR = 3
"""So many answers in a row that were not understood are told."""


class Level(IntEnum):
    """How much somebody needs the instructor; the smallest first."""

    UNSAFE = 1
    TROUBLE = 2
    CALL = 3
    HOLD = 4
    FOUND = 5
    LOST = 6
    SILENT = 7
    UNCLEAR = 8
    FAST = 9
    STOPPED = 10
    SIGN = 11
    QUIET = 20
    FREE = 21


WORDS = {
    Level.UNSAFE: "Unsafe",
    Level.TROUBLE: "Trouble",
    Level.CALL: "Calls you",
    Level.HOLD: "Hold",
    Level.FOUND: "Found a fault",
    Level.LOST: "No connection",
    Level.SILENT: "Silent",
    Level.UNCLEAR: "Not understood",
    Level.FAST: "Too fast",
    Level.STOPPED: "Stopped",
    Level.SIGN: "Over",
    Level.QUIET: "",
    Level.FREE: "Free",
}
"""What stands in the row."""


@dataclass(frozen=True)
class Need:
    """Why a row stands where it stands.

    Attributes:
        level: how much.
        why: the reason, a sentence or two; empty where there is none.
    """

    level: Level
    why: str = ""

    @property
    def word(self) -> str:
        """The level in a word or two."""
        return WORDS[self.level]

    @property
    def waits(self) -> bool:
        """Whether somebody at a bench needs the instructor now."""
        return self.level < Level.STOPPED


def need_of(watched: Watched | None, *, silent_s: float, unheard_s: float, left: bool = False) -> Need:
    """Why somebody needs the instructor: the first of the reasons that hold.

    Args:
        watched: the attempt at a station; None where there is none.
        silent_s: since its last entry, by the desk's clock, seconds.
        unheard_s: since the station was heard last, by the desk's clock, seconds.
        left: the station says that it lies there unfinished: it was killed, or its machine was.
    """
    lost = unheard_s > LOST_S
    if watched is None:
        return Need(Level.LOST, _unheard(unheard_s)) if lost else Need(Level.FREE)
    if watched.turn is Turn.OVER:
        return Need(Level.SIGN, f"{watched.outcome[:1].upper()}{watched.outcome[1:]}.")
    if watched.turn is Turn.STOPPED or left:
        return Need(Level.STOPPED, "It can be taken up again under Stations.")
    if watched.unsafe:
        return Need(Level.UNSAFE, f"You held it: {watched.unsafe}")
    if watched.trouble:
        return Need(Level.TROUBLE, f"{watched.trouble[:1].upper()}{watched.trouble[1:]}")
    if watched.calls:
        return Need(Level.CALL, watched.calls)
    step = watched.step
    if step is not None and step.standing == "held":
        return Need(Level.HOLD, _held(step))
    if watched.found:
        return Need(Level.FOUND, f"Says: {watched.found}")
    if lost:
        return Need(Level.LOST, _unheard(unheard_s))
    if watched.turn in (Turn.PAUSED, Turn.WITH_INSTRUCTOR):
        return Need(Level.QUIET)
    allowed_s = SILENT_S + (
        max(step.plan.seconds, SILENT_S) if step is not None and watched.turn is Turn.WAITING else 0
    )
    if silent_s >= allowed_s:
        return Need(Level.SILENT, f"Nothing for {int(silent_s)} s.")
    if watched.deaf:
        return Need(Level.UNCLEAR, "The station cannot hear; the learner types.")
    if watched.unclear >= UNCLEAR:
        return Need(Level.UNCLEAR, f"{watched.unclear} answers in a row.")
    fast = watched.step_of(watched.fast)
    if fast is not None and not fast.seen:
        return Need(
            Level.FAST, f"Step {fast.number} was done after {fast.took_s} s; reading it aloud takes {fast.reading_s} s."
        )
    return Need(Level.QUIET)


def _held(step: StepSeen) -> str:
    times = "" if step.wrong < 2 else f" ({step.wrong} times)"
    if step.said and step.plan.needed:
        return f"Said {step.said}, needed {step.plan.needed}{times}."
    return f"Said {step.said}{times}." if step.said else f"An answer does not agree{times}."


def _unheard(unheard_s: float) -> str:
    return f"Nothing heard from it for {int(unheard_s)} s. The attempt goes on at the station."
