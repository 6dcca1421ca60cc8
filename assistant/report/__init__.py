"""The reader: entries to results."""
