"""Make a folder's contents aside and put them in place as a whole, so that none is half-made."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


@contextmanager
def replacing(folder: Path) -> Iterator[Path]:
    """Give an empty folder that takes another one's place once the block ends well.

    Args:
        folder: the one to replace; it need not exist.

    Yields:
        A folder beside it. If the block raises, it is removed and the old one stays.
    """
    folder.parent.mkdir(parents=True, exist_ok=True)
    aside = Path(tempfile.mkdtemp(prefix=f"{folder.name}.", dir=folder.parent))
    new, old = aside / "new", aside / "old"
    try:
        new.mkdir()
        yield new
        if folder.exists():
            folder.rename(old)
        new.rename(folder)
    finally:
        shutil.rmtree(aside, ignore_errors=True)
