"""The evidence: entries, canonical bytes, chain, seal, file."""
