"""Schedules of many devices: from a file's bytes to rows that can be judged, and out again."""
