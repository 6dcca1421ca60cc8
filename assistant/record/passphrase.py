"""Whether a passphrase is strong enough to guard an instructor's key. Pure."""

from assistant.errors import UsageError

WEAKEST = 3
"""On the scale of zxcvbn (D. L. Wheeler, "zxcvbn: Low-Budget Password Strength Estimation", USENIX Security 2016):
3 is "safely unguessable", some 10^8 guesses or more, against somebody who has the key's file.
"""
LONGEST_JUDGED = 72
"""Characters that are judged; longer ones take the estimate long and make it no weaker."""


def check_passphrase(passphrase: str) -> None:
    """Refuse a passphrase that is soon guessed.

    Raises:
        UsageError: it is weaker than `WEAKEST`; the sentence says why.
    """
    # Only here: its lists of words take a while to read.
    from zxcvbn import zxcvbn

    found = zxcvbn(passphrase[:LONGEST_JUDGED])
    if found["score"] < WEAKEST:
        why = found["feedback"]["warning"] or "It is soon guessed."
        raise UsageError(f"That passphrase is too weak. {why}", "Take four or five words that do not belong together.")
