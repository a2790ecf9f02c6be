"""A schedule as one HTML page that needs nothing else, and prints in black and white."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from checkers.judgement.schedule.output.base import in_words, outcome_words, whole_in_words
from checkers.judgement.schedule.rows.entry import RowKind
from checkers.judgement.schedule.rows.row import Row
from checkers.judgement.schedule.rows.schedule import Schedule
from checkers.judgement.schedule.rows.summary import rate_sentence, sentence_of
from checkers.wording.book import part

STYLE = """
body { font: 1rem/1.4 system-ui, sans-serif; color: #111; background: #fff; margin: 1rem; }
h1 { font-size: 1.4rem; } h2 { font-size: 1.1rem; margin-top: 1.5rem; }
table { border-collapse: collapse; width: 100%; }
th, td { border: 1px solid #777; padding: .25rem .4rem; text-align: left; vertical-align: top; }
thead th { border-bottom: 3px double #111; }
td { overflow-wrap: break-word; } .written { overflow-wrap: anywhere; min-width: 12rem; }
tr { break-inside: avoid; } thead { display: table-header-group; }
.fail { border-left: .6rem solid #111; } .fail .outcome { font-weight: bold; }
.borderline, .cannot-say { border-left: .6rem double #111; }
.written span { display: inline-block; margin-right: .8em; }
@page { margin: 12mm; } @media print { body { margin: 0; font-size: 9pt; } }
@media screen and (max-width: 50rem) {
  .rows thead { position: absolute; clip-path: inset(50%); }
  .rows tr, .rows th, .rows td { display: block; border-width: 0; }
  .rows tr { border: 1px solid #777; margin-bottom: .5rem; }
  .rows tr.fail { border-left: .6rem solid #111; }
  .rows tr.borderline, .rows tr.cannot-say { border-left: .6rem double #111; }
  .rows td:empty { display: none; }
  .rows td::before, .rows th[scope="row"]::before { content: attr(data-name) ": "; color: #777; }
}
"""
# The library's html module would bring its table of two thousand entities to the browser.
ESCAPES = str.maketrans(
    {"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#x27;", "\n": "<br>"}
)
# By the part that heads a column of the table, the class of its cells.
COLUMNS = {
    "schedule.row-device": "",
    "schedule.row-outcome": "outcome",
    "schedule.row-why": "",
    "schedule.row-what-to-do": "",
    "schedule.row-as-written": "written",
    "schedule.row-limits": "",
}
OF_A_COLUMN = ("schedule.column-number", "schedule.column-heading", "schedule.column-taken-for")


class HtmlOutput:
    """Writes the page; sources are numbered in the order in which rows first use them."""

    def __init__(self, schedule: Schedule) -> None:
        """Begin; the schedule tells the headings once they are read."""
        self._schedule = schedule
        self._sources: dict[str, int] = {}
        self._line = part("schedule.row-line")
        self._columns = {part(code): kind for code, kind in COLUMNS.items()}

    def row(self, row: Row) -> str:
        """Return one row of the table."""
        kind = f' class="{row.outcome.value}"' if row.outcome else ""
        cells = (
            _text(row.device or row.kind.value),
            _text(outcome_words(row)),
            _text(row.why or row.kind.value),
            _text(row.do_next),
            self._written(row),
            self._cited(row),
        )
        first = f'<th scope="row" data-name="{self._line}">{row.line}</th>'
        others = "".join(
            f'<td class="{kind}" data-name="{name}">{cell}</td>'
            for (name, kind), cell in zip(self._columns.items(), cells, strict=True)
        )
        return f'<tr id="line-{row.line}"{kind}>{first}{others}</tr>\n'

    def _written(self, row: Row) -> str:
        """Return the cells as they were, each under its heading, save in a row of headings."""
        columns = self._schedule.layout.columns if row.kind is not RowKind.HEADING else ()
        headings = [column.heading for column in columns]
        headings += [""] * (len(row.cells) - len(headings))
        return "".join(
            f"<span><small>{_text(heading)}</small> {_text(cell)}</span> "
            for heading, cell in zip(headings, row.cells, strict=False)
            if cell.strip()
        )

    def _cited(self, row: Row) -> str:
        words = [source.words for finding in row.findings for source in finding.sources]
        numbers = [self._sources.setdefault(w, len(self._sources) + 1) for w in words]
        return " ".join(f'<a href="#source-{n}">[{n}]</a>' for n in dict.fromkeys(numbers))

    def head(self, reply: Mapping[str, Any], schedule: Schedule) -> str:
        """Return the page down to the headings of its table."""
        answer, totals = reply["answer"], schedule.totals
        title, edition = part("schedule.page-title"), reply["edition"] or reply["code"]
        where = part("schedule.page-where", edition=edition, day=reply["on"])
        return "".join(
            (
                '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n',
                '<meta name="viewport" content="width=device-width">\n',
                f"<title>{title}</title>\n<style>{STYLE}</style>\n</head>\n<body>\n",
                f"<h1>{title}</h1>\n<p><strong>{_text(whole_in_words(reply))}</strong>",
                f" ({_text(where)})</p>\n",
                f"<p>{_text(sentence_of(totals))} {_text(rate_sentence(totals))}</p>\n",
                _first(answer["first"], answer["need_a_person"]),
                _section(
                    "schedule.page-still-to-do", (one["words"] for one in reply["still_to_do"])
                ),
                _section("schedule.page-asked-back", answer["questions"]),
                _section("schedule.page-taken-for-granted", answer["assumed"]),
                _section("schedule.page-cautions", [*reply["cautions"], reply["local_note"]]),
                _mapping(answer["mapping"]),
                _surveys(answer["surveys"]),
                f'<h2>{part("schedule.page-every-row")}</h2>\n<table class="rows">\n<thead><tr>',
                "".join(f'<th scope="col">{name}</th>' for name in (self._line, *self._columns)),
                "</tr></thead>\n<tbody>\n",
            )
        )

    def tail(self, reply: Mapping[str, Any], schedule: Schedule) -> str:
        """Return the end of the table, and the sources by number."""
        del reply, schedule
        listed = "".join(
            f'<li id="source-{number}">{_text(words)}</li>\n'
            for words, number in self._sources.items()
        )
        return (
            f"</tbody>\n</table>\n<h2>{part('schedule.page-sources')}</h2>\n"
            f"<ol>\n{listed}</ol>\n</body>\n</html>\n"
        )


def _text(text: str) -> str:
    return text.translate(ESCAPES)


def _section(code: str, sentences: Iterable[str]) -> str:
    listed = "".join(f"<li>{_text(one)}</li>\n" for one in sentences if one)
    return f"<h2>{part(code)}</h2>\n<ul>\n{listed}</ul>\n" if listed else ""


def _first(rows: Sequence[Mapping[str, Any]], count: int) -> str:
    if not rows:
        return ""
    listed = "".join(
        f'<li><a href="#line-{row["line"]}">{part("schedule.page-line", line=row["line"])}</a> '
        f"{_text(row['device'])}: <strong>{in_words(row['outcome'])}</strong>. {_text(row['why'])} "
        f"{_text(row['do_next'])}</li>\n"
        for row in rows
    )
    rest = count - len(rows)
    more = f"<p>{part('schedule.page-more', count=rest)}</p>\n" if rest > 0 else ""
    return f"<h2>{part('schedule.page-first')}</h2>\n<ol>\n{listed}</ol>\n{more}"


def _mapping(columns: Iterable[Mapping[str, Any]]) -> str:
    not_used = part("schedule.column-not-used")
    rows = "".join(
        f'<tr><th scope="row">{one["column"]}</th><td>{_text(one["heading"])}</td>'
        f"<td>{_text(one['means'] if one['used'] else not_used)}</td></tr>\n"
        for one in columns
    )
    head = "".join(f'<th scope="col">{part(one)}</th>' for one in OF_A_COLUMN)
    return f"<h2>{part('schedule.page-columns')}</h2>\n<table>\n<tr>{head}</tr>\n{rows}</table>\n"


def _surveys(surveys: Iterable[Mapping[str, Any]]) -> str:
    return _section("schedule.page-surveys", map(_survey, surveys))


def _survey(survey: Mapping[str, Any]) -> str:
    facts = {"percent": survey["failed"]["value"], "source": survey["source"]}
    return part("schedule.page-survey", says=survey["says"], **facts)
