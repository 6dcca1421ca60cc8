"""How two numbers come to sound alike."""

from enum import StrEnum


class Confusion(StrEnum):
    """What is changed between what is said and what is heard."""

    TEEN_TY = "teen for ty"  # 15 and 50, 115 and 150, 980 and 918
    ONE_TEN = "six for sixty"  # 6 and 60, 106 and 160
    PAIR = "pair for ten"  # 980 ("nine eighty") and 90
    EIGHT_A = "a for eight"  # 800 and 100
    HUNDRED_LOST = "hundred lost"  # 200 and 2, 205 and 25
    POINT_LOST = "point lost"  # 83.3 and 833
    DIGIT_LOST = "digit lost"  # 117 and 11, 28 and 8
    FIVE_NINE = "five for nine"  # 5 and 9, 125 and 129
    TWO_TEN = "two for ten"  # 2 and 10


NEARLY_THE_SAME = frozenset({Confusion.TEEN_TY, Confusion.PAIR, Confusion.TWO_TEN})
"""Kinds so common, or so often told of, that a number which has such a neighbour is taken only digit by digit."""
