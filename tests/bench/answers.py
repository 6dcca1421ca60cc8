"""How much of what learners say at a step is understood, typed: `python -m tests.bench.answers`.

Each table of `tests/data/answers`: how many clear answers are taken, and what is taken for something else, by the rules
alone and (in brackets) with the second reader.
"""

from collections import Counter

from assistant.adapters.answer_reader import answer_reader
from assistant.spoken import ENGLISH
from assistant.spoken.meaning import Surety
from tests.bench.printing import say
from tests.spoken.answers import NAMES, TABLES, Row, is_asked_about, is_wrong, rows, taken, weighed


def _with_the_reader(table: list[Row]) -> str:
    """The same with the second reader: taken at once, asked about (a yes takes it), taken wrongly, asked in vain."""
    language = ENGLISH.weighed_by(answer_reader())
    read = [(row, *weighed(row, language)) for row in table]
    taken_at_once = [(row, meaning) for row, meaning, surety in read if surety is not Surety.LIKELY]
    asked_about = [(row, meaning) for row, meaning, surety in read if surety is Surety.LIKELY]
    at_once = sum(row.is_clear and meaning == row.means for row, meaning in taken_at_once)
    asked = sum(row.is_clear and meaning == row.means for row, meaning in asked_about)
    wrong = sum(is_wrong(row, meaning) for row, meaning in taken_at_once)
    in_vain = sum(not row.is_clear for row, _ in asked_about)
    return f"{at_once} at once, {asked} asked, {wrong} wrongly, {in_vain} others asked about"


def main() -> None:
    """Print one line a table, and each row that is taken wrongly."""
    folders = ("held_out", "tuning")
    further = (f"{folder}/{path.stem}" for folder in folders for path in sorted((TABLES / folder).glob("*.tsv")))
    for name in (*NAMES, *further):
        table = [row for row in rows(name) if row.is_clear or row.means in ("no", "not taken")]
        clear = Counter(taken(row) == row.means for row in table if row.is_clear)
        others = [row for row in table if not row.is_clear]
        wrong = [row for row in table if is_wrong(row, taken(row))]
        asked = sum(row.is_clear and is_asked_about(row) for row in table)
        understood = f"{clear[True]:4} of {clear.total():4} taken at once, {asked:3} more asked about"
        say(f"{name:21} {understood}, {len(others):4} others, {len(wrong):2} taken wrongly ({_with_the_reader(table)})")
        for row in wrong:
            say(f"    {row.line} | {row.words} | taken as {taken(row)}, means {row.means}")


if __name__ == "__main__":
    main()
