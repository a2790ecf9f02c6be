"""A tick in a column of no-trip tests means what its heading, or a person, says; and no more."""

from __future__ import annotations

from typing import Any

import pytest

from checkers import run
from checkers.judgement.schedule.cells.cells import word_of_no_trip
from checkers.judgement.schedule.headings.headings import meaning_of

ASKED = {"code": "gb", "on": "2026-11-24"}
OLD = {"code": "gb", "on": "2015-06-01"}  # BS 7671:2008 required half the rating too
NAMED = ("No trip ½", "RCD ½ × no trip", "½ held", "x0.5 holds")
UNNAMED = ("x0.5", "½ (ms)", "0.5 × IΔn", "½ trip?")
GOOD = ("OK", "ok", "✓", "pass", "satisfactory", "in Ordnung")
BAD = ("fail", "✗", "unsatisfactory")
YES = ("yes", "Y", "Ja")
NO = ("no", "N", "nein")


def judged(heading: str, *cells: str, **more: Any) -> dict[str, Any]:
    """Return the reply to devices with a good time, and a cell each under a heading."""
    rows = "".join(f"RCD {n},A,30 mA,26,{cell},ok\n" for n, cell in enumerate(cells, 1))
    text = f"RCD no.,RCD type,IΔn,x1 (ms),{heading},button\n{rows}"
    return run("schedule", {**ASKED, "text": text, **more})


def counts(reply: dict[str, Any]) -> dict[str, int]:
    """Return how many devices pass, fail, and cannot be judged."""
    return {name: reply["answer"]["devices"][name] for name in ("pass", "fail", "cannot-say")}


def questions(reply: dict[str, Any]) -> list[str]:
    """Return what is asked back of the fifth column."""
    return [one for one in reply["answer"]["questions"] if one.startswith("Column 5")]


@pytest.mark.parametrize("heading", NAMED)
def test_under_a_heading_that_says_no_trip_a_tick_means_held(heading: str) -> None:
    """Nearly every paper sheet records it so (common practice): nothing is asked."""
    reply = judged(heading, *GOOD)

    assert counts(reply) == {"pass": len(GOOD), "fail": 0, "cannot-say": 0}
    assert questions(reply) == []


@pytest.mark.parametrize("heading", NAMED)
def test_under_such_a_heading_what_is_bad_tripped(heading: str) -> None:
    """It failed a test in which it was to hold."""
    assert counts(judged(heading, *BAD))["fail"] == len(BAD)


@pytest.mark.parametrize("heading", UNNAMED)
def test_under_any_other_half_heading_the_column_is_asked_about_once(heading: str) -> None:
    """Until then no such cell is judged, and a figure beside them is."""
    words = (*GOOD, *BAD, *YES, *NO)
    reply = judged(heading, *words, ">1999")

    assert counts(reply) == {"pass": 1, "fail": 0, "cannot-say": len(words)}
    assert len(questions(reply)) == 1


@pytest.mark.parametrize("heading", [*NAMED, *UNNAMED])
@pytest.mark.parametrize("words", [YES, NO])
def test_yes_and_no_are_always_asked_about(heading: str, words: tuple[str, ...]) -> None:
    """Yes, it held; or yes, it tripped: once a column, never once a row."""
    reply = judged(heading, *words)

    assert counts(reply)["cannot-say"] == len(words)
    assert len(questions(reply)) == 1


@pytest.mark.parametrize("heading", [*NAMED, *UNNAMED])
@pytest.mark.parametrize(("place", "good"), [(0, "pass"), (1, "fail")])
def test_the_answer_to_the_question_settles_the_column(heading: str, place: int, good: str) -> None:
    """One of the two meanings that the mapping offers, given back as the column's meaning."""
    (column,) = (
        one for one in judged(heading, "Y")["answer"]["mapping"] if one["heading"] == heading
    )
    mapping = [{"column": "5", "means": column["answers"][place]}]
    bad = {"pass": "fail", "fail": "pass"}[good]

    reply = judged(heading, *YES, *GOOD, mapping=mapping)
    assert counts(reply)[good] == len(YES) + len(GOOD)
    assert questions(reply) == []
    assert counts(judged(heading, *NO, *BAD, mapping=mapping))[bad] == len(NO) + len(BAD)


@pytest.mark.parametrize("cell", ["N/T", "n/t", "NT"])
def test_n_t_under_half_is_not_tested_and_does_nothing_that_is_required(cell: str) -> None:
    """BS 7671:2008, Part 6, as quoted, required the test at half the rating."""
    for n_t in ("unsaid", "not-tested", "no-trip"):
        reply = judged("½ (ms)", cell, n_t=n_t, **OLD)

        tests = [one["test"] for one in reply["still_to_do"]]
        assert "no-trip" in tests
        assert all("½" not in one["says"] for one in reply["findings"])


def test_n_t_where_the_device_must_trip_leaves_its_row_open() -> None:
    """Not tested, or no trip, which fails: one question, and the answer settles it."""
    text = "RCD no.,RCD type,IΔn,x1 (ms),x5 (ms),button\nRCD 1,A,30 mA,26,N/T,ok\n"
    outcomes = {
        n_t: run("schedule", {**ASKED, "text": text, "n_t": n_t})["outcome"]
        for n_t in ("unsaid", "not-tested", "no-trip")
    }

    assert outcomes == {"unsaid": "cannot-say", "not-tested": "pass", "no-trip": "fail"}
    asked = run("schedule", {**ASKED, "text": text})["answer"]["questions"]
    assert [one for one in asked if one.startswith("n/t")] != []


@pytest.mark.parametrize("cell", ["no action", "does nothing", "No response"])
def test_what_a_button_does_not_do_is_an_answer_of_the_button(cell: str) -> None:
    """Under a button's heading it fails; under a no-trip test it is no answer at all."""
    text = f"RCD no.,RCD type,IΔn,x1 (ms),button\nRCD 1,A,30 mA,26,{cell}\n"

    assert run("schedule", {**ASKED, "text": text})["outcome"] == "fail"
    assert word_of_no_trip(cell, meaning_of("No trip ½")) == ""
    assert judged("No trip ½", cell)["outcome"] == "cannot-say"


@pytest.mark.parametrize("value", ["no action", "does nothing", "no response"])
def test_the_page_for_one_device_takes_it_too(value: str) -> None:
    """A dead button, in the words people have for it."""
    reading = {"test": "button", "value": value}
    device = {"type": "A", "rated_residual_current": "30 mA"}

    assert run("readings", {"device": device, "readings": [reading]})["outcome"] == "fail"
