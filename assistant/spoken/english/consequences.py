"""What may be seen or heard once a deed is done, in English: a paused pump is quiet.

Said alone it says nothing; said beside the deed itself it changes nothing. Only what fits the deed is listed: "it is
dripping" may be said of a clamp that was opened, never of one that was closed. Words of the bench (common practice,
no source).
"""

from assistant.spoken.statement import Tokens

_TABLE = """
pause stop | quiet, silent, on hold, standing still, stands still, not running, not dripping, the screen says on \
hold, the screen says paused, the screen says stopped, the display says paused, the display says stopped, it says \
paused, it says stopped, says paused, says stopped, no more drops, no drops, stopped dripping, nothing is dripping, \
nothing dripping, motor stopped, the motor stopped, the motor has stopped, heard it stop, nothing running, nothing is \
running, no flow, bag ran dry, the drops stopped, the drops have stopped, no longer running, the light is yellow, the \
pump is quiet, no longer dripping
start run restart | dripping, going, infusing, counting, running, quiet, no alarm, no alarms, the light is green, \
green light, the green light is on, drops are falling, dripping nicely, dripping away, i see drops, dripping again, \
it says running, the screen says running, the display says running, counting up, counting down
close clamp shut clip pinch | tight, nothing is dripping, no drops, no more drops, not dripping, stopped dripping, no \
flow, drops have stopped, drops stopped, drip has stopped, the drip has stopped, nothing dripping, nothing running, \
nothing coming through, nothing gets through, nothing is running, nothing runs, the drops have stopped, the drops \
stopped, no longer dripping, the dripping has stopped, the dripping stopped, dripping stopped, nothing is coming \
through, all the way down, until it stopped, till it stopped, as far as it goes, holding it, holding it shut, holding \
it closed, holding it with two fingers, holding it there
open unclamp unlock release | dripping, flowing, running, drops are falling, fluid is running, it drips, i see drops, \
drops are coming, fluid is coming, dripping again, let go
prime fill push expel | at the tip, fluid at the tip, fluid is at the tip, no air, no bubbles, no air in it, no \
bubbles in it, no bubbles left, no air left, dripping, clear, just fluid, only fluid, drop at the tip, a drop at the \
end, a drop at the tip, fluid came out, fluid is coming out, till fluid came out, until fluid came out, drops came \
out, dripping out of the tip, until it dripped, till it dripped, until a drop came out, till a drop came out, until a \
drop showed
connect attach join screw tighten | tight, snug, locked, secure, nice and tight, nice and snug, does not wobble, does \
not move, not loose, finger tight, until it stopped, till it stopped, does not come off, does not leak, no leaks, no \
leak, dry, until it clicked, till it clicked
take disconnect remove unscrew detach | port is empty, ports empty, the port is empty, the ports empty, the ports \
empty again, the port is free, ports free, pump is empty, pumps empty, the pump is empty, the pumps empty, hub is \
free, the hub is free, hubs free, the pump is clear, pumps clear, channel is empty, free, in my hand, cap is on, \
capped, the cap is on, the cap stayed on, holding it up
hang hook | primary is lower, primarys lower, the primarys lower, the primary is lower, primary is below, primary is \
below it, the primary is below, the primary is below it, primary is underneath, swinging, hanging, hangs, secure, on \
its hook, on the hook, straight
insert spike push | all the way, all the way in, seated, until it stopped, till it stopped, up to the collar, does \
not leak, no leaks, no drips, tight
load fit plug | in place, locked, the door is shut, the door is closed, closed the door, shut the door, door is shut, \
until it clicked, till it clicked, tight, straight, the light is on, the light came on, the plug light is on
free | dripping, flowing, running, dripping in the basin, dripping into the basin, it drips, fluid is coming
squeeze | let go, twice, two times, a couple of times, a few times, three times
tap | no bubbles, no air, no bubbles left, the bubbles are out, the bubbles are gone, bubbles came up, turned, \
flipped, turned over, held, no bubbles in it
draw | slow, flat, in one piece, whole, the tip is whole, slowly, not bleeding, no bleeding, came out
wash clean rub scrub wipe | dry, all dry, between the fingers, all over, front and back, twenty seconds, thirty \
seconds, both sides
tape secure fix cover dress | flat, stays, stays put, does not move, does not pull, holds, nothing pulls
label write mark date | readable, legible, in pen, in ink, stuck, stuck on, on the front, facing out
close | latched, latched shut, clicked, clicked shut, it latched, until it clicked, till it clicked, until it latched
raise rest lift | comfortable, on a pillow
"""
_LEADS = (
    "",
    "it is ",
    "it is all ",
    "is ",
    "it ",
    "they are ",
    "there is ",
    "i see ",
    "i see it ",
    "i hear it ",
    "i can hear it ",
    "now it is ",
    "and it is ",
    "that is ",
    "now ",
)


def _read() -> dict[str, tuple[Tokens, ...]]:
    found: dict[str, set[str]] = {}
    for row in _TABLE.replace("\\\n", "").strip().splitlines():
        bases, _, phrases = row.partition("|")
        for base in bases.split():
            found.setdefault(base, set()).update(phrase.strip() for phrase in phrases.split(","))
    return {
        base: tuple(tuple(f"{lead}{phrase}".split()) for phrase in sorted(phrases) for lead in _LEADS)
        for base, phrases in found.items()
    }


BESIDE = _read()
"""By the base of a verb: what may be said beside it."""
