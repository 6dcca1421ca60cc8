"""Ears: sound in, words out; one module for each recogniser."""
