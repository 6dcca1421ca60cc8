"""How the reader of answers is trained, and what it is trained on; it needs the extra "training"."""
