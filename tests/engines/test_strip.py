"""A reading is drawn where it belongs in every engine, also with greater letters."""

from __future__ import annotations

from tests.browser.reply.strip_shape import CASE, MEASURE, ROOM, check
from tests.engines.engine import Engine


def test_a_reading_is_drawn_where_it_belongs(engine: Engine) -> None:
    """Limits, figures, words and the mark, each in its place, and no word over another."""
    engine.open(CASE)
    engine.waits_for_outcome("pass")
    engine.waits_for("document.querySelector('.strip')")

    for letters, words in ROOM.items():
        check(engine.run(MEASURE, letters), *words)
