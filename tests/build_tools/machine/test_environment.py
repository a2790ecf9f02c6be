"""The environment is made once, made again when it must be, and never used half-made."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.files import paths
from build_tools.machine import environment
from build_tools.machine.problems import Problem
from build_tools.machine.programs import ProgramFailedError


@pytest.fixture
def made(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Put the environment into a temporary folder and note what is done instead of doing it."""
    done: list[str] = []
    venv = tmp_path / "venv"

    def make(_: Path) -> None:
        done.append("make")
        environment._python(venv).parent.mkdir(parents=True, exist_ok=True)
        environment._python(venv).touch()

    monkeypatch.setattr(paths, "VENV", venv)
    monkeypatch.setattr(environment, "MARKER", venv / "finished")
    monkeypatch.setattr(environment, "is_ready", lambda: READY(venv, venv / "finished"))
    monkeypatch.setattr(environment, "find", lambda _: Path("/a/python"))
    monkeypatch.setattr(environment, "_make", make)
    monkeypatch.setattr(environment, "_fill", lambda: done.append("fill"))
    return done


READY = environment.is_ready


def test_a_second_run_makes_nothing(made: list[str]) -> None:
    """The marker says that all is there."""
    environment.ensure()
    environment.ensure()

    assert made == ["make", "fill"]


def test_a_half_finished_environment_is_made_again(
    made: list[str], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The run that stopped left no marker, and the next one says what it does."""

    def stops() -> None:
        raise Problem("No network.", "connect.")

    with monkeypatch.context() as patched:
        patched.setattr(environment, "_fill", stops)
        with pytest.raises(Problem):
            environment.ensure()
    assert not environment.is_ready()

    environment.ensure()

    assert environment.is_ready()
    assert made == ["make", "make", "fill"]
    assert "not finished" in capsys.readouterr().out


def test_changed_requirements_make_the_environment_again(
    made: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """One pin more, and the marker no longer holds."""
    environment.ensure()
    other = tmp_path / "requirements.txt"
    other.write_text("another==1.0")
    marker = environment.wanted_marker(other)
    monkeypatch.setattr(environment, "wanted_marker", lambda: marker)

    assert not environment.is_ready()
    environment.ensure()

    assert made == ["make", "fill", "make", "fill"]


def test_an_environment_whose_python_is_gone_is_not_ready(made: list[str]) -> None:
    """Removing the Python that it was made with breaks it."""
    environment.ensure()
    environment._python(paths.VENV).unlink()

    assert not environment.is_ready()
    assert made


@pytest.mark.parametrize(
    ("output", "cause"),
    [
        ("Failed to establish a new connection: name resolution", "no network"),
        ("ERROR: THESE PACKAGES DO NOT MATCH THE HASHES", "DO NOT MATCH THE HASHES"),
    ],
)
def test_a_failed_fetch_gives_one_line_with_cause_and_remedy(output: str, cause: str) -> None:
    """Whatever pip said at length."""
    problem = environment._fetch_problem(ProgramFailedError("pip", output, Path("log.txt")))

    assert cause in str(problem)
    assert "Remedy: " in str(problem)
    assert "log.txt" in str(problem)
    assert "\n" not in str(problem)
