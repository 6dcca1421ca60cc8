"""How words of the trade sound, for a voice that would guess: by the International Phonetic Alphabet, American."""

SOUNDS: dict[str, str] = {}
"""Sounds of a word, in small letters."""
