"""What the site is for works in Firefox and WebKit as it does where it was made."""

from __future__ import annotations

from tests.engines.engine import Engine

CASE = (
    "checkers/readings/#code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA"
    "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac&readings.0.value=28"
)


def test_readings_typed_pass_and_fail(engine: Engine) -> None:
    """A trip time of 28 ms at the rating passes for a device of 30 mA, and one of 410 ms fails."""
    engine.open(CASE)
    engine.waits_for_outcome("pass")
    engine.types("410", "readings", "0", "value")
    engine.waits_for_outcome("fail")
    engine.types("28", "readings", "0", "value")
    engine.waits_for_outcome("pass")
