"""A simulated learner: shows a newcomer the whole job without a microphone, and drives the tests."""

from assistant.learner.sight import Character
from assistant.learner.simulated import Reply, SimulatedLearner
from assistant.learner.slips import Slip

__all__ = ["Character", "Reply", "SimulatedLearner", "Slip"]
