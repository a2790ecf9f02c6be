"""The milliamps shown for each test are those of the published multiples."""

from __future__ import annotations

import re

from build_tools.pages.macros.currents import bands_macro, currents_macro


def _rows(page: str, caption: str) -> dict[str, list[str]]:
    """The cells of the table with a caption, by their rating."""
    table = page.split(f"<figcaption>{caption}</figcaption>")[1].split("</table>", maxsplit=1)[0]
    rows = re.findall(r'<th scope="row"[^>]*>(.*?)</th>(.*?)</tr>', table)
    return {rated: re.findall(r"<td>(.*?)</td>", cells) for rated, cells in rows}


def test_ac_currents_of_a_30_ma_device() -> None:
    """30 mA, 60 mA and 150 mA or 250 mA: IEC 61008-1, as quoted by trade articles."""
    cells = _rows(currents_macro("AC none", ""), "AC (sine)")["30 mA"]

    assert cells == ["30 mA (×1)", "60 mA (×2)", "150 mA (×5) or 250 mA"]


def test_half_wave_currents_of_a_30_ma_device() -> None:
    """42 mA, 84 mA, 210 mA or 350 mA: 1.4 times the AC currents."""
    cells = _rows(currents_macro("A none", ""), "Half wave, 0°")["30 mA"]

    assert cells == ["42 mA (×1.4)", "84 mA (×2.8)", "210 mA (×7) or 350 mA"]


def test_smooth_dc_currents_of_a_type_b_device() -> None:
    """60 mA, 120 mA, 300 mA for 30 mA: twice, four and ten times (IEC 62423)."""
    cells = _rows(currents_macro("B none", ""), "Smooth DC")["30 mA"]

    assert cells == ["60 mA (×2)", "120 mA (×4)", "300 mA (×10)"]


def test_a_type_ac_device_has_no_half_wave_currents() -> None:
    """No current is shown that the type is not built to see."""
    assert "Half wave" not in currents_macro("AC none", "")


def test_the_band_of_a_type_a_device_on_half_waves() -> None:
    """10.5 mA to 42 mA for 30 mA at 0 degrees: 0.35 and 1.4 times the rating."""
    page = bands_macro("A", "")

    assert '<th scope="row">Half wave, 0°</th>' in page
    assert "<td>10.5 mA to 42 mA</td>" in page


def test_every_shown_current_names_its_source() -> None:
    """Under each table stand the documents with the word for how the numbers are known."""
    page = currents_macro("B none", "")

    assert page.count("<figure") == page.count('<details class="sources">')
    assert "IEC 62423" in page
