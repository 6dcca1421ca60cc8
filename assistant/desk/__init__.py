"""Pages in a browser on this machine: views of what the guide says and the record holds; nothing is decided here."""
