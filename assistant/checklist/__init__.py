"""The paper: model, load, lint."""
