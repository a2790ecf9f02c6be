"""Stands in for the runtime's event loop: nothing is awaited in Python."""

from __future__ import annotations

# An image of the memory can be taken only where Python holds these objects of the page's side, in
# this order: the runtime counts them.
from pyodide_js._api import scheduleCallback  # noqa: F401


def _initialize_event_loop() -> None:
    """Do nothing; the runtime's package calls this when it is imported."""
