"""The training of the recogniser for the bench: what is said, who says it, and how the model learns it."""
