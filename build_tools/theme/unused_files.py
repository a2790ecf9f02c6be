"""What the theme brings that nobody here asks for: it is left out of the built site.

Word lists for searching in other languages than ours. Maps that show other programs the theme's
source: they no longer fit, since its scripts are changed here.
"""

from __future__ import annotations

import re
import shutil
from pathlib import Path

OTHER_LANGUAGES = "assets/javascripts/lunr"
MAPS = "assets/**/*.map"
NAMES_A_MAP = re.compile(r"\n?(//# sourceMappingURL=\S+|/\*# sourceMappingURL=\S+ \*/)\s*$")


def leave_out(site: Path) -> None:
    """Take them from a built site. Raises OSError where the theme brings no such word lists."""
    shutil.rmtree(site / OTHER_LANGUAGES)
    for map_ in site.glob(MAPS):
        map_.unlink()
        of = map_.with_suffix("")
        text = of.read_text(encoding="utf-8")
        of.write_text(NAMES_A_MAP.sub("\n", text), encoding="utf-8", newline="\n")
