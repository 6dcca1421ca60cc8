"""What a record is worth, who signed it, and what each of its entries says, in English."""

from collections.abc import Mapping

from assistant.spoken.english.result_words import ResultWords

_MARKS = {
    "during_speech": "while the assistant was speaking",
    "gap": "part of the sound was lost",
    "doubtful": "the recogniser was not sure",
    "told_apart": "the sound tells it from numbers that sound like it",
    "borne_out": "a second recogniser heard it too",
    "unaided": "the second recogniser could not be loaded",
}
"""What marks at an utterance say, by their names in the record."""


class EvidenceWords(ResultWords):
    """Texts about the record itself: warnings, verdicts, decisions, entries."""

    # What a reader must know before relying on a record.
    PROBLEMS: Mapping[str, str] = {
        "cannot be read": "cannot be read",
        "not a record": "not a record",
        "edited": "edited",
        "reordered": "reordered",
        "removed": "removed",
        "inserted": "inserted",
        "after the seal": "after the seal",
        "torn tail": "torn tail",
        "tail missing": "tail missing",
        "not sealed": "not sealed",
        "signature wrong": "signature wrong",
        "line ends were changed": "line ends were changed",
        "signed by an unknown key": "signed by an unknown key",
        "signed by a key that was not valid": "signed by a key that was not valid",
        "sound missing": "sound missing",
        "sound differs": "sound differs",
        "pinned file differs": "pinned file differs",
        "entries and result disagree": "entries and result disagree",
        "older than last seen here": "older than last seen here",
        "other than last seen here": "other than last seen here",
    }
    ANSWERS_WITHHELD = (
        "This check-off can be taken up again: what follows from its order is left out until it is sealed."
    )
    WAITS_CUT_SHORT = "Timed waits were cut short, for a rehearsal."
    NOT_SEALED_STOPPED = "This record is not sealed: the attempt was stopped before its end. It can be resumed."
    NOT_SEALED = (
        "This record is not sealed: the attempt was interrupted, still goes on, or its end was cut off. "
        "What follows is how things stood at the last entry."
    )

    # Decisions.
    NOT_SIGNED_OFF = "No instructor has signed this attempt off yet."
    DECISIONS: Mapping[str, str] = {
        "passed": "passed",
        "not-passed": "not passed",
        "withdrawn": "withdrawn",
        "overruled": "overruled",
        "corrected": "corrected",
    }
    RATINGS: Mapping[str, str] = {
        "independent": "safe and accurate every time, without supporting cues",
        "supervised": "safe and accurate every time, with an occasional supporting cue",
        "assisted": "safe and mostly accurate, with frequent verbal and some physical cues",
        "marginal": "safe only with guidance, with continuous verbal and frequent physical cues",
        "dependent": "unsafe, with continuous verbal and physical cues",
    }
    """Each level in short, in our own words, after the published definitions (see `record.decisions.Rating`)."""
    NOBODY_NAMED = "nobody named"
    UNKNOWN_LEVEL = "unknown level"
    ENTRY = "Entry"

    # Warnings and evidence.

    def caution(self, warning: str) -> str:
        """A warning on the screen."""
        return f"CAUTION: {warning}"

    def head(self, digest: str) -> str:
        """The digest of the last entry."""
        return f"Head {digest}."

    def short_head(self, groups: str) -> str:
        """The same, in groups of digits."""
        return f"Short head {groups}."

    def not_as_last_seen(self, seen: str, why: str) -> str:
        """The book of heads knows more of this record, or something else."""
        return (
            f"This record is {self.problem(seen)}. {self.found(why)} Do not sign on the strength of this report; "
            "find the record as it was."
        )

    def last_seen(self, seen: str, why: str) -> str:
        """How the record stands to the book of heads, where that is no alarm."""
        return f"Book of heads: {seen}. {self.found(why)}".rstrip()

    def result_denied(self, why: str) -> str:
        """The entries come to something else than the seal says."""
        return (
            "The result of this record does not follow from its entries: lived again, something else comes out. "
            f"{self.found(why)} Do not sign on the strength of this report."
        )

    def lived_again(self, finding: str, why: str) -> str:
        """What living the record again came to, where that is no alarm."""
        if finding == "same":
            return "Lived again, the entries and the result come out the same."
        return f"The result was not confirmed by living the attempt again ({finding}). {self.found(why)}"

    def problem(self, name: str) -> str:
        """What is wrong with a record."""
        return self.PROBLEMS.get(name, name)

    def found(self, sentence: str) -> str:
        """What verification says about a record, or what is odd in it, in this language."""
        return sentence

    def codes_refused(self, count: int) -> str:
        """How often somebody asked for the instructor without the right code."""
        return f"Somebody asked for the instructor {count} times with a wrong code, or with none."

    def torn(self, why: str, *, sealed: bool) -> str:
        """The last line is torn."""
        what = "" if sealed else ", as after a crash"
        return (
            f"The end of this record is torn{what}. {self.found(why)} Unless somebody cut the file, it was never "
            "acknowledged; every complete entry before it is intact."
        )

    def sound_broken(self, line: int | None, problem: str, why: str) -> str:
        """The sound that was kept is gone or changed."""
        return (
            f"The sound kept beside this record is not intact (line {line}: {self.problem(problem)}). "
            f"{self.found(why)} Every entry is intact."
        )

    def unknown_key(self, why: str) -> str:
        """A signer was not an instructor."""
        return (
            "This record holds an entry signed with a key that was not an instructor's then, as far as is known here; "
            f"that entry decides nothing. {self.found(why)}"
        )

    def damaged(self, line: int | None, problem: str, why: str, count: int) -> str:
        """The chain is broken after `count` entries."""
        where = f"line {line}: " if line else ""
        entries = "intact entry" if count == 1 else "intact entries"
        only = f"Only the {count} {entries} before the damage {'is' if count == 1 else 'are'} reported."
        return (
            f"This record was changed or is damaged ({where}{self.problem(problem)}). {self.found(why)} {only} Do not "
            "sign on the strength of this report."
        )

    def papers_missing(self, problem: str) -> str:
        """Checklist and order of the attempt are not at hand."""
        return (
            f"The checklist and the order of this attempt are not at hand: {self.found(problem)} "
            "Workings, reasons and the picture are left out."
        )

    def simulated(self, how: str) -> str:
        """No person made this attempt."""
        return f"Demonstration: no real learner, a simulated one ({how})."

    def record_damaged(self, count: int) -> str:
        """Verdict on a record whose chain is broken."""
        follow = "precedes the damage and is intact" if count == 1 else "before the damage follow from each other"
        return f"The record is not intact: {self.entries(count)} {follow}."

    def record_open(self, count: int) -> str:
        """Verdict on a record without a seal."""
        return (
            f"The record is not closed: {self.entries(count)}, each follows from the one before it, and nothing shows "
            "its end."
        )

    def record_whole(self, count: int) -> str:
        """Verdict on a whole record."""
        return f"The record is whole: {self._closed(count)}."

    def record_whole_but(self, count: int) -> str:
        """Verdict on a record whose entries are whole, and which has another fault."""
        return f"Apart from the problems listed above, the record is intact: {self._closed(count)}."

    def _closed(self, count: int) -> str:
        return f"{self.entries(count)}, each follows from the one before it, and a seal closes the attempt"

    def entries(self, count: int) -> str:
        """A number of entries."""
        return f"{self.number(count)} {'entry' if count == 1 else 'entries'}"

    def number(self, count: int) -> str:
        """A large whole number, grouped."""
        return f"{count:,}"

    # Decisions.

    def signed_off(self, decision: str, by: str) -> str:
        """The sign-off that counts; `by` is `signed_by`."""
        return f"Signed off as {self.DECISIONS.get(decision, decision)} {by}."

    def withdrawn(self, by: str) -> str:
        """A sign-off that was withdrawn."""
        return f"The sign-off was withdrawn {by}."

    def signed_by(self, signer: str, day: str, key: str) -> str:
        """Who signed when with which key; `key` is empty where it is not known."""
        with_key = f"signed with the key of {key}" if key else "signed with a key that is not known here"
        return f"by {signer or self.NOBODY_NAMED} on {day}, {with_key}"

    def rated(self, rating: str) -> str:
        """A level of performance."""
        return f"Rated {rating} (Bondy 1983): {self.RATINGS.get(rating, self.UNKNOWN_LEVEL)}."

    def because(self, reason: str) -> str:
        """A signer's reason."""
        return f"Reason: {reason}"

    def overruled(self, signer: str, verdict: str, reason: str) -> str:
        """What an instructor decided about a step."""
        return f"overruled by {signer}: {self.ending(verdict)}. {self.because(reason)}"

    def signed_entry(self, entry: int, at: str, kind: str, decision: str, signer: str) -> str:
        """A signed entry behind the seal."""
        decided = f", {self.DECISIONS.get(decision, decision)}" if decision else ""
        return f"{self.ENTRY} {entry}, {at}: {self.recorded(kind)}{decided}, by {signer or self.NOBODY_NAMED}."

    def signed_with(self, key: str) -> str:
        """Whose key it is, empty where that is not known; its fingerprint follows."""
        return f"Key: {key or 'not known here'}, fingerprint"

    def counts_not(self, why: str) -> str:
        """A signed entry that decides nothing."""
        return f"It decides nothing. {self.found(why)}"

    # The log of all entries.

    def taken_as(self, meaning: str) -> str:
        """What words were taken for."""
        return f"taken as {meaning}"

    def not_taken(self, why: str) -> str:
        """Words that were not understood."""
        return f"not taken: {self.recorded(why)}"

    def could_be(self, readings: str, unit: str) -> str:
        """Words with several readings."""
        return f"could be {readings} {unit}".rstrip()

    def of_step(self, step: str) -> str:
        """A step that is not in the checklist at hand."""
        return f"step: {step}"

    def seal_over(self, count: str) -> str:
        """What a seal closes."""
        return f"seal over {count} entries"

    def also_heard(self, words: str) -> str:
        """Other wordings that a recogniser held possible."""
        return f"also heard: {words}"

    def field(self, name: str, value: str) -> str:
        """Any other field of an entry, or the kind of a meaning, with its value."""
        return f"{_MARKS.get(name, self.recorded(name))}: {value}"
