"""How many small faults the tests notice: ``python -m tests.mutate --state FOLDER [--sample N] [--seed K]``.

Each mutant is the program with one small fault (another comparison, a number more, a text changed), as mutmut makes
them. Needs the extra ``mutation``: ``python -m pip install -e ".[test,mutation]"``.

1. `mutants.py` lists every mutant of the chosen rooms; a sample is drawn from the list by a seed.
2. `reach.py` runs the tests once, to learn which of them reach which line, and how long each takes.
3. `bench.py` tries a mutant: in a copy of the project, in a forked process, only the tests that reach its lines,
   the quickest files first, up to the first failure.

Every result is on disk at once; the same command with the same folder goes on where it was interrupted.
"""
