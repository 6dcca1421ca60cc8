"""One attempt with a simulated learner, put together: typed, or synthesised and heard."""

from collections.abc import Callable, Mapping

from assistant.adapters.sources import LearnerSource, SpeakingLearnerSource
from assistant.adapters.stepping_clock import SteppingClock
from assistant.attempts.papers import AttemptPapers
from assistant.attempts.pins import ear_pins
from assistant.attempts.record_place import RecordPlace
from assistant.attempts.sitting import Sitting, end_on_signals, new_inbox
from assistant.guide.progress import Mode
from assistant.learner import Character, SimulatedLearner, Slip
from assistant.ports import Screen, Voice
from assistant.station import Station


def demonstration(
    papers: AttemptPapers,
    mode: Mode,
    pinned: Mapping[str, str],
    place: RecordPlace,
    screen: Screen,
    tell: Callable[[str], None],
    *,
    slip: Slip | None = None,
    character: Character = Character.ATTENTIVE,
    miss_rate: float = 1.0,
    seed: int = 1,
    aloud: bool = False,
    ear: str | None = None,
) -> Sitting:
    """Put a station together at which a simulated learner goes through an attempt; time passes as it is needed.

    Args:
        papers: of the attempt.
        mode: practice or check-off.
        pinned: what its record pins beside the ear and the learner.
        place: where its record goes.
        screen: where one reads along.
        tell: takes a sentence for whoever is at the machine, before the attempt begins.
        slip: the learner's one mistake.
        character: the kind of learner.
        miss_rate: share of faults that the unaware overlooks.
        seed: varies the wording and the place of the slip.
        aloud: the learner's words are synthesised and heard by a recogniser.
        ear: which one; None for the best.

    Raises:
        ModelError, DeviceError: with `aloud`, there is no recogniser or no synthesiser.
        UsageError: this checklist and order leave no place for that slip.
    """
    learner = SimulatedLearner(
        papers.checklist,
        papers.key,
        slip,
        seed,
        truth=papers.truth,
        character=character,
        miss_rate=miss_rate,
        with_instructor=mode is Mode.CHECK_OFF,
    )
    pinned = {**pinned, "simulated": f"{character.value}, seed {seed}, slip {slip.value if slip else 'none'}"}
    clock = SteppingClock()
    inbox = new_inbox()
    voice: Voice | None = None
    if aloud:
        # Only here: a demonstration without sound needs neither recogniser nor synthesiser.
        from assistant.adapters.sound import open_learner_sound

        sound = open_learner_sound(inbox.put, clock, ear)
        for notice in sound.notices:
            tell(notice)
        tell(
            f"A synthesised learner speaks at {len(papers.checklist.steps)} steps, and the recogniser hears every "
            "answer: that takes a few seconds each."
        )
        voice = sound.voice
        guide = papers.guide(mode, pinned | ear_pins(sound.recogniser))
        source: LearnerSource = SpeakingLearnerSource(learner, guide, clock, sound.synthesise, sound.recogniser)
    else:
        guide = papers.guide(mode, pinned)
        source = LearnerSource(learner, guide, clock)
    end_on_signals(inbox.put)
    station = Station(guide, place.create, clock, screen, inbox, voice=voice, source=source)
    return Sitting(papers, station, guide, lambda: place.path, inbox.put)
