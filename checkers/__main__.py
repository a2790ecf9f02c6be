"""Run the command line: python -m checkers."""

from __future__ import annotations

import sys

from checkers.cli import main

if __name__ == "__main__":
    sys.stdout.reconfigure(encoding="utf-8", errors="replace")  # type: ignore[union-attr]  # a text stream
    try:
        sys.exit(main())
    except BrokenPipeError:
        sys.stderr.close()  # the reader, a pager say, has gone; nothing is left to say
        sys.exit(2)
