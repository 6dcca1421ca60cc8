"""What an author did who wrote something that is not TOML: at which line, and how to mend it.

The reader complains where it gave up, which may be lines below the slip: an unclosed bracket or text is looked
for above.
"""

import re
from collections.abc import Sequence

_CURLY = re.compile("[\u2018\u2019\u201c\u201d\u201e\u00ab\u00bb]")
_PAIR = re.compile(r"\s*([A-Za-z0-9_-]+)\s*=\s*(.*)")
_TEXT = re.compile(r'"(?:[^"\\]|\\.)*"|\'[^\']*\'')


def toml_remedy(lines: Sequence[str], line: int, reason: str) -> tuple[int, str]:
    """The line of the slip and what to do.

    Args:
        lines: the file.
        line: where the reader gave up, from 1.
        reason: what it says.
    """
    for number in _candidates(lines, line, reason):
        remedy = _slip(lines[number - 1])
        if remedy:
            return number, remedy
        below = lines[number].strip() if number < len(lines) else ""
        if "array" in reason and re.match("[\"']", below) and re.search("[\"']\\s*$", lines[number - 1]):
            return number, "Put a comma behind each text of a list."
    return line, _by_reason(reason)


def _candidates(lines: Sequence[str], line: int, reason: str) -> list[int]:
    """The lines to look at: the one that was named, then those above it as far as an open bracket or text reaches."""
    here = min(line, len(lines))
    far = any(word in reason for word in ("Unclosed", "Unterminated", "Expected", "Invalid value"))
    return [*range(here, max(0, here - (40 if far else 1)), -1)] if here else []


def _slip(text: str) -> str:
    """What is wrong with one line, looked at by itself; "" where nothing is seen."""
    code = _TEXT.sub('""', text).split("#")[0].rstrip()
    if not code.strip():
        return ""
    if _CURLY.search(code):
        return 'Use straight quotation marks (").'
    if re.match(r"\s*(?:id|say|more|hint|why|part|title|version|purpose|if_wrong|order)\s*:", code):
        return "Write = between the name and its value, not a colon."
    if code.count('"') % 2 or (code.count("'") % 2 and '"' not in code):
        return 'Close the text with a quotation mark; inside a text, write \\" for one.'
    pair = _PAIR.fullmatch(code)
    value = pair[2] if pair else ""
    if pair and not value:
        return f"Write a value behind {pair[1]} =."
    if value in ("True", "False", "TRUE", "FALSE", "Yes", "No", "yes", "no"):
        return "Write true or false, in small letters."
    if re.fullmatch(r"\.\d+|\d+\.|0\d+|\d[\d.]*,\d+", value):
        return "Write a number with a zero before the point and no other leading zero, such as 0.5 or 30."
    if re.match(r'""\s*\S', value) and not re.match(r'""\s*[,\]}]', value):
        return 'End the line behind the text, or write \\" for a quotation mark inside it.'
    if pair and re.match(r"[A-Za-z]", value) and value not in ("true", "false", "inf", "nan"):
        return f'Put the text behind {pair[1]} in quotation marks (").'
    if re.match(r"\[\s*[A-Za-z][\w-]*\s*[,\]]", value) and not re.match(r"\[\s*(?:true|false)\b", value):
        return 'Put each entry of the list in quotation marks (").'
    if re.match(r"\s*\[\[?[^\[\]]*\]?\s*$", code) and code.count("[") != code.count("]"):
        return "Write a header with as many closing brackets as opening ones: [[steps]]."
    if pair and value.count("[") > value.count("]") and value.count('""') and value.rstrip()[-1] not in "[,":
        return "Close the list with ]."
    if re.search(r",\s*\}", value):
        return "Take the comma before } out."
    if value.count("{") > value.count("}"):
        return "Close the braces with } on the same line."
    if re.search(r'""\s+""', code):
        return "Put a comma between the texts of a list."
    return ""


def _by_reason(reason: str) -> str:
    if "Unescaped" in reason:
        return "Write a backslash twice, or put the text between single quotation marks."
    if "overwrite" in reason:
        return "A name may stand once in a step: take one line out, or begin the new step with [[steps]]."
    if "Cannot declare" in reason:
        return "Write [[steps]] with two brackets, and each other header once."
    if "control character" in reason.lower() or "Illegal character" in reason:
        return "Take the character out, and write the text on one line."
    return "Compare the line with a file of the library."
