"""``python -m assistant`` is the same program as ``checkoff``."""

from assistant.cli.main import main

if __name__ == "__main__":
    raise SystemExit(main())
