"""Everything in English: phrases, number words, sentences."""
