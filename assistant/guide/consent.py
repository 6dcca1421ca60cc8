"""Consent: the learner's sound is kept only after a clear yes, asked for once."""

from assistant.guide.effects import Tone
from assistant.guide.moving import begin_steps
from assistant.guide.progress import Consent
from assistant.guide.turn import Turn
from assistant.spoken.english.sentences import SENTENCES as sentences


def give_consent(turn: Turn) -> None:
    """Yes: from the next utterance on, sound may be kept."""
    _settle(turn, Consent.GIVEN, sentences.CONSENT_GIVEN)


def refuse_consent(turn: Turn) -> None:
    """No: no sound is kept; nothing else changes."""
    _settle(turn, Consent.REFUSED, sentences.CONSENT_REFUSED)


def _settle(turn: Turn, consent: Consent, sentence: str) -> None:
    turn.draft.consent = consent
    turn.note["consent"] = consent.value
    turn.note["verdict"] = f"consent {consent.value}"
    turn.say(sentence, Tone.NOTICE)
    begin_steps(turn)
