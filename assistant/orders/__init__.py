"""Fictional orders: model, load, answer key."""
