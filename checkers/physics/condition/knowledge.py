"""What is known of a device and its circuit before any reading is looked at."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Known:
    """The device as marked, and the circuit as measured.

    `rated` [mA], `type`, `delay` (none, G, S or set) and `set_delay` [ms] as marked;
    `loads` on, off or unknown; `dc` and `leakage` [mA] where they were measured;
    `system` tn, tt or unknown; `supply` public, own or unknown.
    """

    rated: float
    type: str
    delay: str = "none"
    set_delay: float | None = None
    loads: str = "unknown"
    dc: float | None = None
    leakage: float | None = None
    system: str = "unknown"
    supply: str = "unknown"
