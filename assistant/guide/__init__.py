"""The procedure: a state machine without input or output of its own."""
