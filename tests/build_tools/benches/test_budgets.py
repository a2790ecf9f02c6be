"""Each figure is held against its budget, and one that does not keep it is told."""

from __future__ import annotations

import importlib
from types import SimpleNamespace

import pytest

from build_tools.benches.budgets import Budget, Measurement, read_budgets
from build_tools.commands import bench


@pytest.mark.parametrize(
    ("budget", "value", "keeps"),
    [
        (Budget("ms", at_most=16), 16.0, True),
        (Budget("ms", at_most=16), 16.1, False),
        (Budget("rows", at_least=20), 20.0, True),
        (Budget("rows", at_least=20), 19.9, False),
    ],
)
def test_a_budget_is_kept_up_to_its_limit(budget: Budget, value: float, *, keeps: bool) -> None:
    """The limit itself keeps it."""
    assert budget.keeps(value) is keeps


def test_every_budget_is_a_limit() -> None:
    """One that limits nothing is a slip."""
    for budget in read_budgets().values():
        assert (budget.at_most is None) != (budget.at_least is None)


def test_a_figure_over_its_budget_gives_status_one(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """All are still measured and told."""
    measurements = [
        Measurement("first-verdict-gzip", 99.0),
        Measurement("first-verdict-brotli", 0.1),
    ]
    monkeypatch.setattr(
        importlib, "import_module", lambda _: SimpleNamespace(measure=lambda: measurements)
    )

    assert bench.run(["sizes"]) == 1
    first, second = capsys.readouterr().out.splitlines()
    assert first.startswith("OVER  first-verdict-gzip")
    assert second.startswith("ok    first-verdict-brotli")


def test_an_unknown_bench_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    """By name, with the list of those there are."""
    with pytest.raises(SystemExit):
        bench.run(["size"])

    assert "there is no bench size" in capsys.readouterr().err
