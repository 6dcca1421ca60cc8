"""The verbs of the program; the only room that prints or sets an exit code."""
