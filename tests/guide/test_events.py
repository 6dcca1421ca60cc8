"""How events are written into a record and read back, and what a caller is told who breaks the guide's protocol."""

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

import pytest

from assistant.guide import (
    Directed,
    Direction,
    EarBack,
    Guide,
    GuideMisuseError,
    Happened,
    Happening,
    Mark,
    Marked,
    NotUnderstood,
    Papers,
    ReplayError,
    VoiceLost,
)
from assistant.guide.events import LONGEST_WORDS, body_of, event_of, meaning_body, stamp
from assistant.spoken import ENGLISH
from assistant.spoken.meaning import Ambiguous, Answer, Command, Kind, NoMatch, Reason
from tests.guide.lived import (
    CHECKLIST,
    KEY,
    START,
    Append,
    EarLost,
    Event,
    Heard,
    InputEnded,
    InstructorCame,
    Mode,
    Opened,
    Recorded,
    Resumed,
    Typed,
    Woke,
    begin,
    guide,
)

AT = START + timedelta(microseconds=1)
STATION = {"source": "station"}
HEARD = {
    "kind": "heard",
    "source": "voice",
    "words": "done",
    "alternatives": ["don", "dun"],
    "confidence": "0.5",
    "ear": "ear",
}
MARKED = {"kind": "marked", "source": "desk", "step": "", "words": "", "order": "", "undoes": "", "proven": True}
EVENTS: list[tuple[Event, dict[str, object]]] = [
    (Opened(AT), {"kind": "opened", **STATION}),
    (Resumed(AT), {"kind": "resumed", **STATION}),
    (Resumed(AT, ear="ear"), {"kind": "resumed", **STATION, "ear": "ear"}),
    (
        Resumed(AT, "ear", "model", "3"),
        {"kind": "resumed", **STATION, "ear": "ear", "ear_model": "model", "clock_behind_s": "3"},
    ),
    (Heard(AT, "done", ("don", "dun"), "0.5", "ear"), HEARD),
    (Heard(AT, "done", ("don", "dun"), "0.5", "ear", during_speech=True), HEARD | {"during_speech": True}),
    (Heard(AT, "done", ("don", "dun"), "0.5", "ear", gap=True), HEARD | {"gap": True}),
    (Heard(AT, "done", ("don", "dun"), "0.5", "ear", doubtful=True), HEARD | {"doubtful": True}),
    (Heard(AT, "done", ("don", "dun"), "0.5", "ear", told_apart=True), HEARD | {"told_apart": True}),
    (Heard(AT, "done", ("don", "dun"), "0.5", "ear", borne_out=True), HEARD | {"borne_out": True}),
    (Heard(AT, "done", ("don", "dun"), "0.5", "ear", unaided=True), HEARD | {"unaided": True}),
    (
        Heard(AT, "done"),
        {"kind": "heard", "source": "voice", "words": "done", "alternatives": [], "confidence": None, "ear": ""},
    ),
    (NotUnderstood(AT, "ear"), {"kind": "not understood", "source": "voice", "ear": "ear"}),
    (
        NotUnderstood(AT, "ear", unaided=True),
        {"kind": "not understood", "source": "voice", "ear": "ear", "unaided": True},
    ),
    (Typed(AT, "done"), {"kind": "typed", "source": "typed", "words": "done"}),
    *(
        (InstructorCame(AT, proven=proven), {"kind": "instructor here", "source": "instructor", "proven": proven})
        for proven in (True, False)
    ),
    (Woke(AT, "wait:3"), {"kind": "time is up", "source": "clock", "token": "wait:3"}),
    (EarLost(AT, "It is gone."), {"kind": "microphone lost", **STATION, "reason": "It is gone."}),
    (EarBack(AT), {"kind": "microphone back", **STATION}),
    (VoiceLost(AT, "It is gone."), {"kind": "voice lost", **STATION, "reason": "It is gone."}),
    (InputEnded(AT), {"kind": "input ended", **STATION}),
    (Marked(AT, Mark.SEEN, "hands", order="a"), MARKED | {"mark": "seen", "step": "hands", "order": "a"}),
    (Marked(AT, Mark.NOTE, words="Calm."), MARKED | {"mark": "note", "words": "Calm."}),
    (Marked(AT, Mark.UNDO, order="b", undoes="a"), MARKED | {"mark": "undo", "order": "b", "undoes": "a"}),
    (Marked(AT, Mark.CUE, proven=False), MARKED | {"mark": "cue", "proven": False}),
    (
        Happened(AT, Happening.ALARM, "It beeps.", "a"),
        {"kind": "happened", "source": "desk", "what": "alarm", "words": "It beeps.", "order": "a"},
    ),
    (Directed(AT, Direction.GO_ON), {"kind": "directed", "source": "desk", "what": "go on", "order": ""}),
]


@pytest.mark.parametrize(("event", "body"), EVENTS)
def test_an_event_comes_back_from_its_entry(event: Event, body: dict[str, object]) -> None:
    """Its entry says all of it, with microseconds, and gives the same event."""
    assert body_of(event) == {"at": "2031-05-06T09:00:00.000001+00:00", **body}
    assert event_of(body_of(event)) == event


def test_what_the_recogniser_got_is_in_no_entry() -> None:
    """Sound lies beside the record; a replay has none."""
    with_sound = Heard(AT, "done", sound=b"x")
    assert event_of(body_of(with_sound)) == replace(with_sound, sound=b"")


def test_words_are_cut_in_an_entry() -> None:
    """What is longer than any answer is not kept whole."""
    long = "x" * (LONGEST_WORDS + 1)
    assert body_of(Typed(AT, long))["words"] == "x" * LONGEST_WORDS == "x" * 1000
    heard = body_of(Heard(AT, long, (long, "a")))
    assert (heard["words"], heard["alternatives"]) == ("x" * 1000, ["x" * 1000, "a"])


def test_an_entry_of_another_version_gives_an_event_all_the_same() -> None:
    """What is missing or of another form is as if nothing were there; what is no event is none."""
    bare = {"at": stamp(AT)}
    empty = {
        "heard": Heard(AT, ""),
        "typed": Typed(AT, ""),
        "not understood": NotUnderstood(AT),
        "resumed": Resumed(AT),
    }
    empty |= {"instructor here": InstructorCame(AT, proven=False), "time is up": Woke(AT, "")}
    empty |= {"microphone lost": EarLost(AT, ""), "voice lost": VoiceLost(AT, "")}
    for kind, event in empty.items():
        assert event_of({"kind": kind, **bare}) == event
    assert event_of({"kind": "heard", **bare, "alternatives": "a", "confidence": 1}) == Heard(AT, "", confidence="1")
    assert event_of({"kind": "heard", **bare, "alternatives": (1, "a")}) == Heard(AT, "", ("1", "a"))
    for kind in ("finished", "recovered", "signed off", None):
        assert event_of({"kind": kind, **bare}) is None


def test_an_entry_without_a_zone_is_refused() -> None:
    """No guide writes one."""
    with pytest.raises(ValueError, match=r"^the time 2031-05-06 09:00:00 has no zone$"):
        event_of({"kind": "opened", "at": "2031-05-06T09:00:00"})


def test_what_words_mean_as_an_entry_holds_it() -> None:
    """Numbers are decimal text; a refusal says why."""
    assert meaning_body(Answer(Kind.NUMBER, Decimal("83.30"), "mL/h")) == {
        "kind": "number",
        "value": "83.30",
        "unit": "mL/h",
    }
    assert meaning_body(Answer(Kind.COMMAND, Command.PAUSE)) == {"kind": "command", "value": "pause"}
    both = Ambiguous((Decimal(1), Decimal(1000)), "mL")
    assert meaning_body(both) == {"readings": ["1", "1000"], "unit": "mL"}
    assert meaning_body(NoMatch(Reason.TOO_LONG)) == {"refused": Reason.TOO_LONG.value}


# The caller's mistakes.


def misuse(call, *given) -> str:
    """What the caller is told."""
    with pytest.raises(GuideMisuseError) as caught:
        call(*given)
    return str(caught.value)


def test_each_breach_of_the_protocol_is_named() -> None:
    """Too early, twice, out of turn, after the end, without a zone: each in a sentence, and nothing changes."""
    fresh = guide()
    before = fresh.progress
    assert misuse(fresh.receive, Typed(AT, "done")) == "Typed came before Opened."
    assert misuse(fresh.receive, "done") == "str is no event."
    nothing_waits = "Recorded came, but no entry is waiting to be put on disk."
    assert misuse(fresh.receive, Recorded(1, "d")) == nothing_waits
    naive = Opened(AT.replace(tzinfo=None))
    assert misuse(fresh.receive, naive) == "The time of Opened has no zone, so no record could hold it."
    assert fresh.progress == before
    (append,) = fresh.receive(Opened(AT))
    assert isinstance(append, Append)
    assert misuse(fresh.receive, Typed(AT, "done")) == "Typed came before Recorded: the last entry is not on disk yet."
    fresh.receive(Recorded(1, "d"))
    assert misuse(fresh.receive, Opened(AT)) == "Opened came twice."
    assert fresh.receive(Woke(AT, "stale:9")) == []
    lived = begin()
    lived.type("close the attempt", "close the attempt")
    after = "Typed came after the end; only Resumed takes an attempt up again."
    assert misuse(lived.guide.receive, Typed(AT, "done")) == after
    assert lived.guide.receive(Woke(AT, "stale:9")) == []


def test_a_guide_of_something_else() -> None:
    """Papers, a mode, and pins that are texts: nothing else makes a guide."""
    papers = Papers(CHECKLIST, "The order.", KEY, ENGLISH)
    told = misuse(Guide, "papers", "practice")
    assert told == "Papers and a Mode are needed, not 'papers' and 'practice'."
    assert misuse(Guide, papers, "practice").endswith(" and 'practice'.")
    for pins in ({"sound": 1}, {1: "sound"}):
        assert misuse(Guide, papers, Mode.PRACTICE, pins) == "Pins are text to text, for a record keeps nothing else."


def test_entries_of_another_guide_are_not_lived_again() -> None:
    """The first entry that does not follow is named, whatever in it is different."""
    lived = begin()
    lived.type("done", "again", "what is my order")
    for name, other in (
        ("step", "gloves"),
        ("input", "yes"),
        ("verdict", "agrees"),
        ("meaning", {"kind": "done"}),
    ):
        entries = [dict(entry) for entry in lived.entries]
        entries[1][name] = other
        with pytest.raises(ReplayError) as caught:
            guide().replay(entries)
        assert caught.value.sequence == 2
        assert str(caught.value) == "entry 2 does not follow from the ones before it"
    for missing in (lived.entries[1:], [lived.entries[0], *lived.entries]):
        with pytest.raises(ReplayError):
            guide().replay(missing)
    stale = {"kind": "time is up", "at": stamp(lived.at), "token": "stale:9", "sequence": 5}
    with pytest.raises(ReplayError, match="entry 5"):
        guide().replay([*lived.entries, stale])
    whole = guide()
    whole.replay([*lived.entries, {"kind": "recovered", "at": "no time"}])
    assert whole.progress == lived.guide.progress


def test_a_preview_changes_nothing() -> None:
    """What would follow is told, and the guide stays as it is; a stale call would do nothing."""
    lived = begin()
    before = lived.guide.progress
    effects = lived.guide.preview(Typed(AT, "done"))
    assert effects and effects == lived.give(Typed(AT, "done"))
    again = begin().guide
    assert again.preview(Woke(AT, "stale:9")) == []
    again.preview(Typed(AT, "done"))
    assert again.progress == before
