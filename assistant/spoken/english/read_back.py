"""The read-back, in English."""


def i_have(number: str, digits: str, unit: str) -> str:
    """A number that was heard, read back for a yes or a no; `digits` may be empty."""
    heard = f"{number}, {digits}, {unit}" if digits else f"{number} {unit}"
    return f"I have {heard}. Is that right?"
