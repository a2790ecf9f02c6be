"""The words of the forms by path, as the job log shows a request with them."""

from __future__ import annotations

from build_tools.site.input_labels import input_labels
from checkers.catalogue import CHECKERS


def test_an_input_has_the_label_of_its_form() -> None:
    """Groups, lists and choices are found by their paths."""
    labels = input_labels()["readings"]

    assert labels["device"]["label"] == "Device"
    assert labels["device.type"]["choices"]["AC"] == "AC: alternating only"
    assert labels["readings[].waveform"]["label"] == "Waveform"
    assert labels["readings"]["label"] == "Reading"
    assert "choices" not in labels["readings[].value"]


def test_every_checker_has_its_labels() -> None:
    """Each has at least its code and its day, and no label is empty."""
    all_labels = input_labels()

    assert set(all_labels) == {checker.slug for checker in CHECKERS}
    for labels in all_labels.values():
        assert {"code", "on"} <= set(labels)
        assert all(words["label"] for words in labels.values())
