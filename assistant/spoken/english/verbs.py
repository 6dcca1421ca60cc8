"""Verbs of the bench, in English: their forms, what is so once they are done, and what is so while they are not."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Verb:
    """One verb.

    Attributes:
        base: "close".
        past: "closed"; also the participle, British and American spellings.
        ing: "closing".
        states: what may be said of the thing once it is done: "shut", "on".
        undone: what may be said of it while it is not: "open", "off".
    """

    base: str
    past: tuple[str, ...]
    ing: str
    states: tuple[str, ...] = ()
    undone: tuple[str, ...] = ()


def _regular(base: str, states: str = "", undone: str = "", *, double: bool = False) -> Verb:
    stem = base + base[-1] if double else base.removesuffix("e")
    if base.endswith("y") and base[-2] not in "aeiou":
        past = f"{base[:-1]}ied"
    else:
        past = f"{stem}ed"
    ing = f"{base}ing" if base.endswith("y") else f"{stem}ing"
    return Verb(
        base, (past,), ing, tuple(states.split("|")) if states else (), tuple(undone.split("|")) if undone else ()
    )


def _irregular(base: str, past: str, ing: str, states: str = "", undone: str = "") -> Verb:
    return Verb(
        base,
        tuple(past.split("|")),
        ing,
        tuple(states.split("|")) if states else (),
        tuple(undone.split("|")) if undone else (),
    )


VERBS = {
    verb.base: verb
    for verb in (
        _regular("close", "closed|shut", "open|opened|unclamped"),
        _regular("shut", "shut|closed", "open", double=True),
        _regular("clamp", "closed|shut", "open|unclamped"),
        _regular("unclamp", "open|opened|unclamped", "closed|clamped|shut"),
        _regular("open", "open|running", "closed|shut|clamped"),
        _irregular("hang", "hung|hanged", "hanging", "hanging|up", "down"),
        _regular("spike", "in|spiked"),
        _regular("squeeze", "full|filled"),
        _regular("prime", "full|filled|primed"),
        _regular("fill", "full", "empty"),
        _regular("push", "in", "out"),
        _regular("pull", "out"),
        _regular("insert", "in|inside", "out"),
        _regular("uncover", "off|open"),
        _regular("cover", "on|covered"),
        _regular("cap", "on|capped", "off|uncapped", double=True),
        _irregular("put", "put", "putting", "on|in place|there|on hold", "off"),
        _irregular("wear", "wore|worn", "wearing", "on", "off"),
        _regular("don", "on", "off", double=True),
        _regular("apply", "on", "off"),
        _regular("wash", "clean|washed", "dirty"),
        _regular("clean", "clean|washed|gelled|sanitised|sanitized|rubbed", "dirty"),
        _regular("rub", "clean|dry", double=True),
        _regular("sanitise", "clean"),
        _regular("sanitize", "clean"),
        _regular("disinfect", "clean"),
        _regular("wipe", "clean|wiped"),
        _regular("scrub", "clean|scrubbed", double=True),
        _regular("dry", "dry|dried", "wet|damp"),
        _regular("wait"),
        _irregular("let", "let", "letting"),
        _irregular("take", "took|taken", "taking", "off|out|away|gone", "on"),
        _regular("remove", "off|out|away|gone", "on|in"),
        _regular("discard", "gone|away"),
        _regular("dispose", "gone|away"),
        _irregular("throw", "threw|thrown", "throwing", "gone|away"),
        _regular("connect", "on|in|tight|attached|hooked|joined", "off|loose|disconnected"),
        _regular("attach", "on|tight|connected|hooked", "off|loose"),
        _regular("join", "connected|attached|on"),
        _regular("hook", "on|up|connected|attached"),
        _regular("screw", "on|tight|in", "loose"),
        _regular("tighten", "tight|firm", "loose"),
        _regular("disconnect", "off|away", "on|connected"),
        _regular("detach", "off", "on|attached"),
        _irregular("label", "labelled|labeled", "labelling", "on|dated|marked", "unlabelled|unlabeled"),
        _regular("mark", "marked|labelled|labeled|on", "unmarked"),
        _regular("date", "dated|labelled|labeled"),
        _irregular("stick", "stuck", "sticking", "on"),
        _irregular("slide", "slid", "sliding", "there|in place"),
        _regular("move", "there|in place|over"),
        _regular("place", "in place|there|on"),
        _regular("position", "in place|there"),
        _irregular("lay", "laid", "laying", "out|there"),
        _irregular("set", "set", "setting", "in|up"),
        _regular("enter", "in|set|entered"),
        _regular("key", "in|set"),
        _regular("type", "in|set"),
        _regular("program", "set|in|programmed", double=True),
        _irregular("choose", "chose|chosen", "choosing", "selected"),
        _regular("select", "chosen|picked"),
        _regular("pick", "chosen|selected"),
        _regular("load", "in|loaded"),
        _regular("press"),
        _regular("start", "running|going|on|flowing|started|infusing", "off|stopped"),
        _irregular("begin", "began|begun", "beginning", "running|going|on"),
        _irregular("run", "ran|run", "running", "running|going|flowing"),
        _regular("stop", "stopped|off", "running|on|going", double=True),
        _regular("pause", "paused|stopped|on hold", "running|going"),
        _regular("turn"),
        _regular("switch"),
        _regular("lower", "down|lower|lowered", "up"),
        _regular("raise", "up|higher|raised", "down"),
        _regular("lift", "up|higher"),
        _regular("document", "charted|written down|recorded|signed"),
        _regular("chart", "documented|written down|recorded"),
        _irregular("write", "wrote|written", "writing", "documented|down|noted"),
        _regular("record", "documented|charted|written down"),
        _regular("note", "noted|written down"),
        _irregular("tell", "told", "telling", "informed"),
        _regular("inform", "told"),
        _irregular("say", "said", "saying"),
        _regular("ask"),
        _regular("introduce"),
        _regular("explain", "told"),
        _regular("name"),
        _regular("identify", "checked"),
        _regular("call", "called|rang|paged"),
        _irregular("bring", "brought", "bringing", "here|there"),
        _regular("gather", "here|ready|laid out"),
        _regular("collect", "here"),
        _irregular("get", "got|gotten", "getting", "here"),
        _regular("fetch", "here"),
        _regular("check", "checked|verified"),
        _regular("verify", "checked"),
        _regular("confirm", "checked|verified"),
        _regular("inspect", "checked|looked at"),
        _regular("look", "checked"),
        _regular("watch"),
        _regular("observe"),
        _irregular("read", "read", "reading"),
        _regular("follow", "checked|traced"),
        _regular("trace", "checked|followed"),
        _regular("compare", "checked"),
        _regular("count"),
        _regular("measure"),
        _regular("feel", "felt"),
        _regular("assess", "checked"),
        _regular("flush", "flushed"),
        _regular("lock", "locked"),
        _regular("aspirate", "drawn back"),
        _irregular("draw", "drew|drawn", "drawing", "up"),
        _regular("tape", "taped|secured|on"),
        _regular("fix", "fixed|secured|taped"),
        _regular("secure", "secured|taped|fixed|tight", "loose"),
        _regular("anchor", "secured|taped"),
        _regular("dress", "dressed|covered|on"),
        _irregular("hold", "held", "holding"),
        _irregular("keep", "kept", "keeping"),
        _irregular("leave", "left", "leaving"),
        _regular("support"),
        _regular("tap", double=True),
        _regular("invert", "upside down"),
        _regular("adjust", "set"),
        _regular("expel", "out|gone", double=True),
        _regular("drain", "empty|drained"),
        _regular("clear", "clear|gone"),
        _regular("mix", "mixed"),
        _regular("report", "told"),
        _regular("position", "in place"),
        _regular("plug", "plugged|in", double=True),
        _regular("unpack", "out|open"),
        _regular("unwrap", "out|open", double=True),
        _irregular("tear", "tore|torn", "tearing", "open"),
        _irregular("twist", "twisted", "twisting", "on|off|tight"),
        _irregular("use", "used", "using"),
        _irregular("see", "saw|seen", "seeing"),
        _irregular("do", "did|done", "doing"),
        _irregular("give", "gave|given", "giving"),
        _irregular("sign", "signed", "signing"),
        _irregular("match", "matched", "matching", "matches|match|the same|identical", "different|differ"),
        _irregular("agree", "agreed", "agreeing", "agrees|agree|the same", "different|differ|disagree|disagrees"),
        _irregular("drip", "dripped", "dripping", "drips|dripping|drips|falling|flowing"),
        _irregular("fall", "fell|fallen", "falling", "falls|falling|dripping"),
        _irregular("flow", "flowed", "flowing", "flows|flowing|running|dripping"),
        _irregular("come", "came|come", "coming", "comes|coming|back"),
        _irregular("return", "returned", "returning", "returns|back"),
        _irregular("finish", "finished", "finishing", "over|done"),
        _irregular("stay", "stayed", "staying", "stays"),
        _irregular("want", "wanted", "wanting"),
        _irregular("fit", "fitted|fit", "fitting", "fits"),
    )
}
"""Every verb by its base."""
