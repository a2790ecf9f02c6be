"""The one developer command: `python3 -m build_tools help`.

This file keeps to words that any Python understands, so that an old one can say what is wrong.
"""

import sys

if sys.version_info < (3, 11):  # noqa: UP036 - the whole point is to speak on an older Python
    sys.exit(
        "build_tools: this is Python " + sys.version.split()[0] + ", and 3.11 or newer is needed. "
        "Remedy: install it and start again with it, as in: python3.13 -m build_tools serve"
    )

from build_tools.command_line import main

if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
