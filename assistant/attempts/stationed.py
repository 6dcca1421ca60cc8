"""A station that takes its attempts from a desk: waits, begins what it is told to, and lets the desk read along.

An order is carried out once: the record holds the id of each order that led to one of its entries, so that also a
station that was killed knows which ones it has carried out. A mark that came too late for the attempt that was killed
keeps until it is taken up: what an instructor saw stays seen. A direction is for its moment, and is refused.
"""

import hashlib
import queue
import secrets
import threading
import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from functools import partial
from pathlib import Path

from filelock import FileLock

from assistant.adapters.reporter import Reported, Reporter
from assistant.attempts.begun import NewAttempt, ResumedAttempt
from assistant.attempts.instructor_code import code_pins
from assistant.attempts.kept_papers import keep_order, papers_to_send
from assistant.attempts.own_records import START, STATION, Delivered, OwnRecord, orders_in, own_records
from assistant.attempts.papers import AttemptPapers, papers_of, take_papers
from assistant.attempts.pins import pins
from assistant.attempts.plan import plan_of
from assistant.attempts.record_place import RecordPlace
from assistant.attempts.sitting import AtDesk, Sitting, Wishes, sit_down
from assistant.checklist.library import is_path
from assistant.errors import AssistantError, ChecklistError, LinkError, RecordError, UsageError
from assistant.guide.effects import Outcome
from assistant.guide.events import Directed, Direction, Event, Happened, Happening, InstructorCame, Marked, Typed
from assistant.guide.events import Mark as MarkKind
from assistant.guide.guide import Guide
from assistant.guide.progress import Mode
from assistant.link.addresses import DeskAddress
from assistant.link.messages import (
    LONGEST_ORDER,
    LONGEST_PAPER,
    Answered,
    Begun,
    Direct,
    Happen,
    Hello,
    Mark,
    Order,
    PlanStep,
    Start,
    TakeUp,
)
from assistant.ports import Clock, Page, Post, Screen, Source
from assistant.record.disk import make_folder, take_lock
from assistant.record.file import RecordFile
from assistant.record.head_book import HeadBook
from assistant.station import Interrupted, Ordered
from assistant.text import shown

BUSY = "An attempt is going on at this station."
NOT_HERE = "This attempt is not going on at this station."
OVER = "The attempt was over before this came."
POLL_S = 0.5
"""Longest wait without looking up, so that a signal is seen, seconds."""
LAST_REPORT_S = 3.0
"""At its end a station tries to report the rest for so long, seconds."""


@dataclass(frozen=True)
class Bench:
    """What a station works with.

    Attributes:
        station: its name in the lab.
        records: folder of its records.
        remembers: folder in which it remembers what the desk has.
        book: of the heads of its records.
        school: path of the school's file; empty for none.
        wishes: how one talks with it.
        screen, page: where the learner reads along, and types.
        hands: connects typed input with an attempt (`AtDesk`).
        tell: takes a sentence for whoever is at the machine.
        ended: is given each attempt at its end.
        sends_papers: the desk is on another computer, and gets the papers with the record.
        sound: this machine has a microphone and a loudspeaker.
        alone_s: a station without an attempt ends after so long without its desk, seconds; 0: never. What a desk has
            started must not stay for ever where that desk was killed.
    """

    station: str
    records: Path
    remembers: Path
    book: HeadBook
    school: str
    wishes: Wishes
    screen: Screen
    page: Page | None
    hands: Callable[[Guide, Clock, Post], tuple[Source | None, Callable[[], None]]]
    tell: Callable[[str], None]
    ended: Callable[[Sitting, Outcome], None]
    sends_papers: bool = False
    sound: bool = False
    alone_s: float = 0.0


@dataclass
class _Live:
    """The attempt that goes on.

    Attributes:
        reported: what the desk is told; None until its first entry is on disk.
        post: puts an event into its inbox.
        waiting: orders that are in the inbox, by their ids.
        done: ids of orders that were carried out.
    """

    reported: Reported | None = None
    post: Post = lambda event: None
    waiting: dict[str, Mark | Happen | Direct] = field(default_factory=dict)
    done: set[str] = field(default_factory=set)

    def is_of(self, attempt: str) -> bool:
        """Whether it is the attempt with this digest."""
        return self.reported is not None and self.reported.begun.attempt == attempt


class DeskStation:
    """The station.

    Args:
        bench: what it works with.
        find: where the desk is now.

    Raises:
        LinkError: a station of this name runs already on this machine.
    """

    def __init__(self, bench: Bench, find: Callable[[], DeskAddress | None]) -> None:
        self._bench = bench
        name = hashlib.sha256(bench.station.encode()).hexdigest()[:16]
        self._lock_file = _the_only_one(bench.remembers / f"station-{name}", bench.station)
        self._delivered = Delivered(bench.remembers / f"delivered-{name}")
        self._lock = threading.Lock()
        self._todo: queue.SimpleQueue[Start | TakeUp | None] = queue.SimpleQueue()
        self._busy = False
        self._live: _Live | None = None
        self._ending = False
        self._left: dict[str, OwnRecord] = {}
        self._kept: list[Mark | Happen | Direct] = []  # marks for attempts that were left
        self._own = {one.attempt: one for one in own_records(bench.records, bench.station)}
        self._started = {one.start: one.attempt for one in self._own.values()}
        self._reporter = Reporter(bench.station, find, self._hello, self._carry_out, bench.tell)

    def run(self) -> None:
        """Take orders until the end is asked for."""
        try:
            self._recall()
            self._reporter.start()
            while not self._ending:
                try:
                    order = self._todo.get(timeout=POLL_S)
                except queue.Empty:
                    # A signal's handler may set it between these lines; it is never set back.
                    if self._is_forgotten():
                        self._ending = True
                    continue
                if order is not None and not self._ending:
                    self._live_through(order)
        finally:
            self._reporter.close(LAST_REPORT_S)
            self._lock_file.release(force=True)

    def end(self) -> None:
        """Stop the attempt that goes on, its record whole, then end; may be called from a signal's handler."""
        self._ending = True
        live = self._live
        if live is not None:
            live.post(Interrupted())
        self._todo.put(None)

    def _is_forgotten(self) -> bool:
        alone_s = self._bench.alone_s
        return bool(alone_s) and not self._busy and time.monotonic() > self._reporter.heard_at + alone_s

    # What was before.

    def _recall(self) -> None:
        """Find what was left, and report what the desk may not have."""
        for own in self._own.values():
            if own.attempt in self._delivered:
                continue
            reading = own.read()
            if not reading.verdict.sealed:
                self._left[own.attempt] = own
            try:
                papers = papers_of(own.opening, own.path)
                guide = papers.guide(Mode(str(own.opening.get("mode"))), {})
                begun = self._begun(own, papers, plan_of(guide.papers))
            except AssistantError:  # its papers are gone: it can be neither shown nor taken up
                continue
            reported = Reported(begun, own.path, reading.verdict.count, partial(self._delivered.add, own.attempt))
            reported.over = reading.verdict.sealed
            self._reporter.report(reported)

    def _begun(self, own: OwnRecord, papers: AttemptPapers, plan: tuple[PlanStep, ...]) -> Begun:
        return Begun(
            station=self._bench.station,
            attempt=own.attempt,
            file=own.path.name,
            plan=plan,
            order=papers.order.sentence()[:LONGEST_ORDER],
            papers=papers_to_send(own.path.parent, own.opening, LONGEST_PAPER) if self._bench.sends_papers else {},
        )

    def _hello(self) -> Hello:
        with self._lock:
            left = tuple(self._left)[-100:]
            return Hello(station=self._bench.station, busy=self._busy, sound=self._bench.sound, left=left)

    # Orders; in the thread that waits for them.

    def _carry_out(self, order: Order) -> None:
        if isinstance(order, Start | TakeUp):
            why = self._take_on(order)
            if why is not None:
                self._answer(order.id, why)
            return
        if self._passed_on(order, keep=False):
            return
        own = self._own.get(order.attempt)
        is_done = own is not None and order.id in own.orders()
        if is_done or not self._passed_on(order, keep=isinstance(order, Mark)):
            self._answer(order.id, "" if is_done else NOT_HERE)

    def _passed_on(self, order: Mark | Happen | Direct, *, keep: bool) -> bool:
        """Whether the attempt that goes on has it now, or else it is kept until its attempt is taken up."""
        with self._lock:
            live = self._live
            if live is not None and live.is_of(order.attempt) and order.id not in live.done:
                self._post(live, order)
                return True
            if keep and order.attempt in self._left:
                self._kept.append(order)
                return True
            return False

    def _post(self, live: _Live, order: Mark | Happen | Direct) -> None:
        live.waiting[order.id] = order
        live.post(Ordered(order.id, partial(_events, order), partial(self._taken, live, order.id)))

    def _post_kept(self, live: _Live, attempt: str) -> None:
        """What was marked while the attempt lay there, and is not on record; once it goes on."""
        for order in [one for one in self._kept if one.attempt == attempt]:
            self._kept.remove(order)
            self._post(live, order)

    def _take_on(self, order: Start | TakeUp) -> str | None:
        """Have an attempt begun by the thread that lives it; or why not, "" where that was done before."""
        own = self._own.get(order.attempt) if isinstance(order, TakeUp) else None
        if order.id in self._started or (own is not None and order.id in own.orders()):
            return ""
        with self._lock:
            if self._busy:
                return BUSY
            if isinstance(order, TakeUp) and order.attempt not in self._left:
                return "There is no such attempt to take up at this station."
            self._busy = True
        self._todo.put(order)
        return None

    def _taken(self, live: _Live, order: str, why: str) -> None:
        """What became of an order in the attempt; called in its thread."""
        with self._lock:
            live.waiting.pop(order, None)
            if not why:
                live.done.add(order)
        self._answer(order, why)

    def _answer(self, order: str, why: str) -> None:
        self._reporter.answer(Answered(order=order, why=why[:500]))

    # The attempt; in the main thread.

    def _live_through(self, order: Start | TakeUp) -> None:
        live = _Live()
        try:
            sitting = self._new(order, live) if isinstance(order, Start) else self._resumed(order, live)
            with self._lock:
                live.post = sitting.post
                self._live = live
            if self._ending:
                sitting.post(Interrupted())
            outcome = sitting.live()
            self._bench.ended(sitting, outcome)
            self._over(live, outcome)
        except AssistantError as error:
            self._bench.tell(str(error))
            if live.reported is None:
                self._answer(order.id, str(error))
            else:
                self._over(live, Outcome.STOPPED)
        finally:
            with self._lock:
                self._live, self._busy = None, False
                kept = [one for one in live.waiting.values() if isinstance(one, Mark) and one.attempt in self._left]
                self._kept += kept
            for left in live.waiting.values():
                if left not in kept:
                    self._answer(left.id, OVER)
            self._reporter.poke()

    def _new(self, start: Start, live: _Live) -> Sitting:
        bench, mode = self._bench, Mode(start.mode)
        if is_path(start.checklist):
            raise ChecklistError("A desk names a checklist of the library, not a file.", "Choose one from the list.")
        if start.short_waits and mode is Mode.CHECK_OFF:
            raise UsageError("A check-off has no short waits.", "Leave them out, or practise.")
        order: str | None = start.order or None
        if start.order_text:
            order = str(keep_order(bench.records, start.order or "drawn", start.order_text))
        papers = take_papers(start.checklist, order, short_waits=start.short_waits, school=bench.school)
        code = start.code or secrets.token_hex(16)
        pinned = pins(papers, mode, start.learner, start.checklist, order) | code_pins(code)
        pinned |= {STATION: bench.station, START: start.id}
        place = RecordPlace(bench.records, papers.checklist.name, start.learner, datetime.now(UTC), bench.book)
        attempt = NewAttempt(papers, mode, pinned, place)
        wishes = replace(bench.wishes, typed=bench.wishes.typed or start.typed, instructor_code=code)
        return self._sit(attempt, papers, wishes, live, start.id)

    def _resumed(self, take_up: TakeUp, live: _Live) -> Sitting:
        bench, own = self._bench, self._left[take_up.attempt]
        record = RecordFile.reopen(own.path, book=bench.book)
        try:
            papers = papers_of(record.entries[0], own.path)
            attempt = ResumedAttempt(papers, record, bench.book.path.parent, take_up.id)
            live.done |= orders_in(record.entries)
            wishes = replace(bench.wishes, instructor_code=take_up.code)
            return self._sit(attempt, papers, wishes, live, take_up.id, own)
        except BaseException:
            record.close()
            raise

    def _sit(
        self,
        attempt: NewAttempt | ResumedAttempt,
        papers: AttemptPapers,
        wishes: Wishes,
        live: _Live,
        order: str,
        taken_up: OwnRecord | None = None,
    ) -> Sitting:
        bench = self._bench
        plan: tuple[PlanStep, ...] = ()

        def told(sequence: int, digest: str, body: Mapping[str, object]) -> None:
            if live.reported is not None:
                live.reported.count = sequence
                self._reporter.poke()
                return
            own = taken_up or OwnRecord(attempt.path, {**body, "digest": digest})
            begun = self._begun(own, papers, plan)
            with self._lock:
                live.reported = Reported(begun, own.path, sequence, partial(self._delivered.add, own.attempt))
                self._own[own.attempt] = own
                self._started[own.start] = own.attempt
                self._left.pop(own.attempt, None)
                self._post_kept(live, own.attempt)
            self._reporter.report(live.reported)
            self._answer(order, "")

        sitting = sit_down(attempt, wishes, bench.screen, bench.tell, bench.page, AtDesk(bench.hands, told))
        plan = plan_of(sitting.guide.papers)  # before the first entry, so that nobody waits for it
        return sitting

    def _over(self, live: _Live, outcome: Outcome) -> None:
        """The attempt has ended; what was stopped can be taken up."""
        if live.reported is None:
            return
        if outcome is Outcome.STOPPED:
            attempt = live.reported.begun.attempt
            with self._lock:
                self._left[attempt] = self._own[attempt]
        else:
            live.reported.over = True


def _events(order: Mark | Happen | Direct, at: datetime) -> tuple[Event, ...]:
    """What an order amounts to at a station."""
    match order:
        case Mark(id=name, mark=mark, step=step, words=words, undoes=undoes):
            return (Marked(at, MarkKind(mark), step, words, name, undoes),)
        case Happen(id=name, what=what, words=words):
            return (Happened(at, Happening(what), words, name),)
        case Direct(what="say", words=words):
            return (InstructorCame(at, proven=True), Typed(at, words)) if words.strip() else ()
        case Direct(id=name, what=what):
            return (Directed(at, Direction(what), name),)


def _the_only_one(path: Path, station: str) -> FileLock:
    try:
        make_folder(path.parent)
        return take_lock(path)
    except RecordError as cause:
        raise LinkError(
            f"The station {shown(station)} runs already on this machine.",
            "Give this one another name, or end that one.",
        ) from cause
