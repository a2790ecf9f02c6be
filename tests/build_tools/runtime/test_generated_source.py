"""The texts of data classes are compiled at the build as `dataclasses` would compile them."""

from __future__ import annotations

import dataclasses
import marshal
from hashlib import sha256
from typing import Any

import pytest

from build_tools.runtime.generated_source import generated_source_module, module_text


def _codes(module: bytes) -> dict[bytes, bytes]:
    values: dict[str, Any] = {}
    exec(module.decode(), values)  # noqa: S102  # it is what was just made
    return dict(values["CODES"])


def test_a_text_is_found_by_its_hash_and_does_what_it_says() -> None:
    """As compiled here; one that differs by a letter is not found."""
    codes = _codes(module_text(["x = 1 + 1"]).encode())
    values: dict[str, Any] = {}
    exec(marshal.loads(codes[sha256(b"x = 1 + 1").digest()]), values)  # noqa: S102, S302

    assert values["x"] == 2
    assert sha256(b"x = 1 + 2").digest() not in codes


def test_the_module_has_the_texts_of_the_packages_classes_and_is_made_alike_twice(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """A class of the same fields as one of the package's, made here, needs only what is known."""
    made = generated_source_module()
    codes = _codes(made)
    heard: list[str] = []

    def run(text: str, outer: dict[str, Any], names: dict[str, Any]) -> None:
        heard.append(text)
        exec(text, outer, names)  # noqa: S102  # what the library itself does with the text

    monkeypatch.setattr(dataclasses, "exec", run, raising=False)
    fields = [("title", str), ("request", dict), ("outcome", str)]
    dataclasses.make_dataclass("Example", fields, frozen=True, slots=True)

    assert [text for text in heard if sha256(text.encode()).digest() not in codes] == []
    assert heard
    assert generated_source_module() == made
