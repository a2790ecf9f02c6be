"""The gate: its steps, and how its tests are started."""
