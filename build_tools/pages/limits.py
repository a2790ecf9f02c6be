"""The limit tables as pages: one a document, every row with where it stands."""

from __future__ import annotations

from build_tools.pages.rendering import html, markdown
from checkers.domain.limits.rows import Row, Table
from checkers.domain.limits.tables import TABLES
from checkers.domain.limits.words import describe
from checkers.domain.sources.documents import SOURCES


def documents() -> dict[str, list[Table]]:
    """Return the tables of each document, by the document's key."""
    found: dict[str, list[Table]] = {}
    for table in TABLES.values():
        found.setdefault(table.document, []).append(table)
    return found


def limit_pages() -> dict[str, str]:
    """Return the pages: a list of all tables, then one page a document."""
    listed = {SOURCES[key]: tables for key, tables in documents().items()}
    pages = {
        f"limits/{source.key}.md": markdown("pages/limits.md", source=source, tables=tables)
        for source, tables in listed.items()
    }
    return {"limits/index.md": markdown("pages/all-limits.md", documents=listed), **pages}


def limits_macro(key: str, root: str) -> str:
    """Show one table, by its key as in iec-61008-1/break-times-ac. Raises KeyError."""
    del root
    table = TABLES[key]
    return html("macros/limits.html", table=table, rows=[_cells(row) for row in table.rows])


def _cells(row: Row) -> dict[str, str]:
    """Return a row's cells; where it stands and how it is known are one cell."""
    words = describe(row)
    source = ", ".join(words[name] for name in ("document", "edition", "clause") if words[name])
    return {
        "Device": words["device"],
        "Test": words["test"],
        "Limit": words["limit"],
        "Where it stands": f"{source}: {words['evidence']}",
        "Days": words["days"],
        "Note": words["note"],
    }
