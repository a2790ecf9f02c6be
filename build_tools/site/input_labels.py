"""The words of each checker's form by the path of the input, for showing a request again later."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checkers.catalogue import CHECKERS
from checkers.domain.inputs.fields import Kind, Spec, inputs_of


def input_labels() -> dict[str, dict[str, dict[str, Any]]]:
    """Return the label, and the labels of the choices, by checker and by path.

    A path is as in `device.type`; `readings[].value` stands for that input of every reading,
    and a list has the label of one of its entries.
    """
    return {checker.slug: dict(_labels(checker.inputs, "")) for checker in CHECKERS}


def _labels(inputs: type[Any], path: str) -> Iterator[tuple[str, dict[str, Any]]]:
    for one in inputs_of(inputs):
        here = f"{path}{one.name}"
        yield here, _words(one.spec)
        if one.spec.group is not None:
            yield from _labels(
                one.spec.group, f"{here}[]." if one.spec.kind is Kind.MANY else f"{here}."
            )


def _words(spec: Spec) -> dict[str, Any]:
    choices = {choice.value: choice.label for choice in spec.choices}
    label = spec.each or spec.label
    return {"label": label, "choices": choices} if choices else {"label": label}
