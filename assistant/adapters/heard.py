"""What a recogniser has heard, as the event that the guide takes."""

from datetime import datetime

from assistant.guide.events import Heard, NotUnderstood
from assistant.ports import Hearing


def heard_from(
    hearing: Hearing, at: datetime, ear: str, *, gap: bool = False, sound: bytes = b""
) -> Heard | NotUnderstood:
    """The event of an utterance.

    Args:
        hearing: what the recogniser makes of it; without words it was not understood.
        at: the time, UTC.
        ear: name of the recogniser.
        gap: sound was lost within the utterance, or its end was cut off.
        sound: mono 16-bit samples at `assistant.ports.SAMPLE_RATE_HZ`, where they are to be kept.
    """
    if not hearing.words:
        return NotUnderstood(at, ear, unaided=hearing.unaided, sound=sound)
    best = next((found for found in hearing.alternatives if found.words == hearing.words), None)
    return Heard(
        at,
        hearing.words,
        alternatives=tuple(found.words for found in hearing.alternatives if found.words != hearing.words),
        confidence=None if best is None else f"{best.confidence:.3f}",
        ear=ear,
        gap=gap,
        doubtful=hearing.doubtful,
        told_apart=hearing.told_apart,
        borne_out=hearing.borne_out,
        unaided=hearing.unaided,
        sound=sound,
    )
