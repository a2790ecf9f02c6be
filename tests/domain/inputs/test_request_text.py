"""A request as text is read whole, or what cannot be read in it is named by its field."""

from __future__ import annotations

import pytest

from checkers.domain.errors import InvalidRequest, quoted
from checkers.domain.inputs.request_text import read_request, refuse_unreadable

HALF = "\\ud83d"
REFUSED = [
    ('{"value": "> 400 ms", "value": "28"}', "value", "'> 400 ms' and '28'"),
    ('{"device": {"type": "A", "type": "AC"}}', "device.type", "'A' and 'AC'"),
    ('{"readings": [{}, {"value": "1", "value": 2}]}', "readings[1].value", "'1' and 2"),
    ('{"device": 1, "device": 1}', "device", "is given twice"),
    ("[" * 100_000, "request", "nested deeper"),
    ('{"a":' * 100_000, "request", "nested deeper"),
    ('{"readings": ' + "[" * 60 + "]" * 60 + "}", "readings" + "[0]" * 23, "nested deeper"),
    (f'{{"label": "{HALF}"}}', "label", "half a character"),
    (f'{{"device": {{"{HALF}": 1}}}}', "device", "half a character"),
    ('{"dc_residual": NaN}', "dc_residual", "NaN"),
    ('{"dc_residual": -Infinity}', "dc_residual", "infinity"),
    ("{", "request", "is not JSON"),
    (b'{"label": "\xff"}', "request", "UTF-8"),
    (b"\xff\xfe{\x00}\x00", "request", "UTF-8"),
]


@pytest.mark.parametrize(("text", "field", "says"), REFUSED, ids=range(len(REFUSED)))
def test_what_cannot_be_read_is_named_by_its_field(
    text: str | bytes, field: str, says: str
) -> None:
    """The field and the reason are those expected, in one short line."""
    with pytest.raises(InvalidRequest) as caught:
        read_request(text)

    (named, message), *more = caught.value.errors.items()
    assert not more
    assert named.startswith(field)
    assert says in message
    assert len(named) <= 80
    assert len(message) <= 250
    assert "\n" not in message


def test_a_number_of_very_many_digits_is_left_to_its_field() -> None:
    """It is kept as text, and a byte-order mark is no part of the request."""
    digits = "9" * 5000

    assert {"count": digits} == read_request(b"\xef\xbb\xbf" + f'{{"count": {digits}}}'.encode())


LONG = ["a" * 500_000, ["a" * 500] * 500, {"a": {"b": {"c": {}}}}, 10**5000, b"a" * 500, 0.5]


@pytest.mark.parametrize("value", LONG, ids=[type(one).__name__ for one in LONG])
def test_a_refused_value_is_cut_to_eighty_characters(value: object) -> None:
    """Quotation marks aside, no message repeats more of what it refuses."""
    assert len(quoted(value)) <= 82


def test_values_from_python_are_held_to_the_same() -> None:
    """A list that holds itself has no end either."""
    endless: list[object] = []
    endless.append(endless)

    with pytest.raises(InvalidRequest, match="nested deeper"):
        refuse_unreadable({"readings": endless})
