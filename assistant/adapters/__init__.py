"""The hardware: microphone, recognisers, voices, keyboard, clock, model store."""
