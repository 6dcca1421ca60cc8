"""The words with which English says a time of day."""

HOUR = 60
"""Minutes of an hour."""
DAY = 24 * HOUR
"""Minutes of a day."""
HALF_DAY = 12
"""Hours of half a day."""
HOURS = "hours"
"""What a time by the 24-hour clock may end in."""
