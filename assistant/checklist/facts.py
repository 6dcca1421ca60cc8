"""What a step may look at, and the words in which its answer tells of what is wrong."""

WRISTBAND, ANOTHER_PATIENT = "wristband", "another patient"
ALLERGIC, APART, OUT_OF_RANGE, SOMETHING_MISSING = "allergic", "apart", "out of range", "something missing"
"""Faults that follow from an order alone."""
