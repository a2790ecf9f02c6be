"""The codes of each jurisdiction: their editions, tests, type rules and intervals by day."""
