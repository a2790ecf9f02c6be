"""A program's words are kept whole, and its failure is told with them."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from build_tools.files import paths
from build_tools.machine.problems import Problem
from build_tools.machine.programs import ProgramFailedError, no_network, run_logged


@pytest.fixture(autouse=True)
def logs(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Keep the logs of these tests apart."""
    monkeypatch.setattr(paths, "LOGS", tmp_path)
    return tmp_path


def test_output_comes_line_by_line_and_stays_in_the_log(logs: Path) -> None:
    """Both streams, in the order they came."""
    seen: list[str] = []
    script = "import sys; print('one', flush=True); print('two', file=sys.stderr)"

    output = run_logged("talk", [sys.executable, "-c", script], each_line=seen.append)

    assert output == "one\ntwo\n"
    assert seen == ["one\n", "two\n"]
    assert (logs / "talk.txt").read_text() == output


def test_a_failed_program_leaves_its_words(logs: Path) -> None:
    """With the log's place."""
    with pytest.raises(ProgramFailedError) as failed:
        run_logged("fail", [sys.executable, "-c", "print('why'); raise SystemExit(3)"])

    assert failed.value.output == "why\n"
    assert failed.value.log == logs / "fail.txt"


def test_a_program_that_is_not_there_is_a_problem_with_a_remedy() -> None:
    """It is named."""
    with pytest.raises(Problem, match=r"no-such-program cannot be started.*Remedy"):
        run_logged("absent", ["no-such-program"])


@pytest.mark.parametrize(
    ("output", "expected"),
    [
        ("npm error code EAI_AGAIN", True),
        ("error sending request for url", True),
        ("socket.gaierror: Temporary failure in name resolution", True),
        ("ERROR: THESE PACKAGES DO NOT MATCH THE HASHES", False),
        ("", False),
    ],
)
def test_a_missing_network_is_told_from_other_failures(*, output: str, expected: bool) -> None:
    """By the words that pip, npm and uv use."""
    assert no_network(output) is expected
