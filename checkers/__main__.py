"""Run the command line: python -m checkers."""

from __future__ import annotations

import os
import sys

from checkers.domain.errors import DataError

BAD_REQUEST = 2
DAMAGED = 4


def main() -> int:
    """Run the command line on the words given; returns the exit status."""
    sys.stdout.reconfigure(encoding="utf-8", errors="replace")  # type: ignore[union-attr]  # a text stream
    try:
        from checkers.command_line.main import main as run

        status = run()
        sys.stdout.flush()
    except DataError as bad:
        print(f"The data of this copy is damaged: {bad}. Fetch a sound copy.", file=sys.stderr)
        return DAMAGED
    except BrokenPipeError:
        # The reader, a pager say, has gone: nothing is left to say, nor to write at the end.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return BAD_REQUEST
    return status


if __name__ == "__main__":
    sys.exit(main())
