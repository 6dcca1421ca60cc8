"""Every entry of a record as one line that a person can read."""

from collections.abc import Mapping, Sequence

from assistant.record.signer import Signer
from assistant.report.content import Decision, Happening
from assistant.report.reading import mapping, shown, text
from assistant.report.times import moment, since
from assistant.spoken.language import ReportWords

_CHAIN = frozenset({"sequence", "previous", "digest", "signature", "ticks", "format"})
"""What the chain is made of; it is checked, not read."""
_COLUMNS = frozenset(
    {"at", "kind", "source", "step", "state", "words", "meaning", "verdict", "input", "token", "results"}
)
_ORDERED = frozenset({"order", "undoes", "proven", "asked"})
"""What belongs to a mark from the desk as an order; who marked it is told as `by`."""
_SIGNED = frozenset({"at", "kind", "source", "signer", "decision", "reason", "key"})
_OPENING, _DESK = "opened", "desk"


def happenings(
    entries: Sequence[Mapping[str, object]], places: Mapping[str, int], words: ReportWords
) -> tuple[Happening, ...]:
    """All entries in their order.

    Args:
        entries: of the whole record.
        places: number of each step in the checklist, by its id.
        words: the language of the report.
    """
    began = moment(entries[0])
    undone = {text(entry.get("undoes")) for entry in entries if entry.get("took_back")} - {""}
    return tuple(
        Happening(
            entry=number,
            at=text(entry.get("at")),
            clock=since(began, moment(entry)),
            step=places.get(text(entry.get("step")), 0),
            kind=text(entry.get("kind")),
            source=text(entry.get("source")),
            words=text(entry.get("words")),
            taken_as=taken_as(mapping(entry.get("meaning")), words),
            verdict=text(entry.get("verdict")),
            details=_details(entry, places, words, undone=text(entry.get("order")) in undone),
            undone=text(entry.get("order")) in undone,
        )
        for number, entry in enumerate(entries, 1)
    )


def taken_as(meaning: Mapping[str, object], words: ReportWords) -> str:
    """What words were taken to mean."""
    if not meaning:
        return ""
    if "refused" in meaning:
        return words.not_taken(text(meaning["refused"]))
    if "readings" in meaning:
        return words.could_be(text(meaning["readings"]), text(meaning.get("unit")))
    value = f"{text(meaning.get('value'))} {text(meaning.get('unit'))}".strip()
    kind = text(meaning.get("kind"))
    return value if kind in ("confirm", "done", "number", value) else words.field(kind, value)


def _details(
    entry: Mapping[str, object], places: Mapping[str, int], words: ReportWords, *, undone: bool
) -> tuple[str, ...]:
    if entry.get("kind") == _OPENING:
        return ()  # what it pins stands in the report itself
    step = text(entry.get("step"))
    found = [words.of_step(step)] if step and step not in places else []
    found += [words.TAKEN_BACK] if undone else []
    left_out = _CHAIN | _COLUMNS | (_ORDERED if entry.get("source") == _DESK else frozenset())
    for name, value in entry.items():
        if name in left_out or value in (None, "", False, []):
            continue
        if name == "seal":
            found.append(words.seal_over(text(mapping(value).get("count"))))
        elif name == "alternatives":
            found.append(words.also_heard(text(value)))
        else:
            found.append(words.field(name, shown(value, words)))
    return tuple(found)


def decisions(
    signed: Sequence[Mapping[str, object]],
    fingerprints: Mapping[int, str],
    signers: Mapping[int, Signer],
    words: ReportWords,
) -> tuple[Decision, ...]:
    """The signed entries behind the seal.

    Args:
        signed: those entries.
        fingerprints: of the key of each, by its sequence number.
        signers: who signed, by the number of the entry; of one that is not there nothing is known.
        words: the language of the report.
    """
    found = []
    for entry in signed:
        number = entry.get("sequence")
        number = number if isinstance(number, int) else 0
        signer = signers.get(number)
        found.append(
            Decision(
                entry=number,
                kind=text(entry.get("kind")),
                at=text(entry.get("at")),
                signer=text(entry.get("signer")),
                decision=text(entry.get("decision")),
                reason=text(entry.get("reason")),
                key_name=signer.title if signer is not None else "",
                fingerprint=fingerprints.get(number, ""),
                counts=signer is not None and signer.decides,
                why_not=words.counts_not(signer.why) if signer is not None and not signer.decides else "",
                details=tuple(
                    words.field(name, shown(value, words))
                    for name, value in entry.items()
                    if name not in _CHAIN and name not in _SIGNED and value not in (None, "", [])
                ),
            )
        )
    return tuple(found)
