"""The options of everything that is printed on paper."""

import argparse

from assistant.report.paper import Size


def add_paper_options(parser: argparse.ArgumentParser) -> None:
    """Add the size of the paper and of the letters."""
    add_paper_size(parser)
    parser.add_argument("--large-print", action="store_true", help="18 points in place of 12")


def add_paper_size(parser: argparse.ArgumentParser) -> None:
    """Add the size of the paper."""
    parser.add_argument("--paper", choices=[size.value for size in Size], default=Size.A4.value, help="default: a4")
