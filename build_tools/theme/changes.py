"""Changes to what the theme writes: each where it is expected, and once, or the build stops."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

SCRIPT = "assets/javascripts/bundle.*.js"


def changed(text: str, changes: Mapping[str, str], told_in: str) -> str:
    """Change a text of the theme.

    Args:
        text: what the theme writes.
        changes: what is to stand there instead, by what stands there.
        told_in: the module that tells why, for whoever meets another theme.

    Returns:
        The text with every change made.

    Raises:
        ValueError: a place is not there, or is there twice: nothing is guessed at.
    """
    for written, wanted in changes.items():
        if text.count(written) != 1:
            raise ValueError(f"the theme writes {written} in another way now: see {told_in}")
        text = text.replace(written, wanted)
    return text


def change_file(site: Path, pattern: str, changes: Mapping[str, str], told_in: str) -> None:
    """Change the one file of a built site with a name of this pattern. Raises ValueError."""
    (file,) = site.glob(pattern)
    text = changed(file.read_text(encoding="utf-8"), changes, told_in)
    file.write_text(text, encoding="utf-8", newline="\n")
