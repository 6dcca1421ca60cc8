"""Offline, hands-free checklist assistant for nursing skills labs.

For training only: it controls no pump and treats no patient.
"""

__version__ = "0.1.0"
