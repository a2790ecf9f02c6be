"""One page that shows every picture, to look them over."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from pathlib import Path

from build_tools.pages.rendering import html
from build_tools.screenshots.camera import Fault, Picture


def write_contact_sheet(
    folder: Path, taken: Mapping[str, Sequence[Picture]], faults: Sequence[Fault]
) -> Path:
    """Write index.html into the folder of the pictures.

    Args:
        folder: where the pictures are.
        taken: the pictures of each view.
        faults: what is wrong with them.

    Returns:
        The page's path.
    """
    rows = {
        name: [(one.shows, os.path.relpath(one.file, folder)) for one in pictures]
        for name, pictures in taken.items()
    }
    page = folder / "index.html"
    text = html("screenshots/contact-sheet.html", rows=rows, faults=faults)
    page.write_text(text, encoding="utf-8")
    return page
