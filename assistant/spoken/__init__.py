"""The words: numbers, units, phrases, interpretation, values to speech."""
