"""A schedule as one JSON object: the reply of the checker, with every row in `rows`."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from checkers.judgement.schedule.rows.row import Row
from checkers.judgement.schedule.rows.schedule import Schedule


def row_as_values(row: Row) -> dict[str, Any]:
    """Return a row as JSON values."""
    return {
        "line": row.line,
        "row": row.kind.value,
        "device": row.device,
        "outcome": row.outcome.value if row.outcome else None,
        "still_to_do": row.missing,
        "why": row.why,
        "do_next": row.do_next,
        "limits_from": row.sources,
        "cells": list(row.cells),
    }


class JsonOutput:
    """Writes the reply first, then the rows, so that one object comes of it."""

    def __init__(self) -> None:
        """Begin before the first row."""
        self._between = "\n"

    def row(self, row: Row) -> str:
        """Return one row, set apart from the one before."""
        between, self._between = self._between, ",\n"
        return between + json.dumps(row_as_values(row), ensure_ascii=False)

    def head(self, reply: Mapping[str, Any], schedule: Schedule) -> str:
        """Return the reply, left open for the rows."""
        del schedule
        return json.dumps(reply, ensure_ascii=False).removesuffix("}") + ', "rows": ['

    def tail(self, reply: Mapping[str, Any], schedule: Schedule) -> str:
        """Return what closes the object."""
        del reply, schedule
        return "\n]}\n"
