"""Sources: the documents, their names, and the words for evidence."""

from __future__ import annotations

import pytest

from checkers.domain.sources.documents import SOURCES, Evidence, cite, recognise


@pytest.mark.parametrize(
    ("name", "key"),
    [
        ("BS EN 61008", "iec-61008-1"),
        ("BS EN 61008-1:2012+A12:2017", "iec-61008-1"),
        ("bsen61008-1", "iec-61008-1"),
        ("IEC 61008-1 (2010)", "iec-61008-1"),
        ("61009", "iec-61009-1"),
        ("AS/NZS 61009.1", "iec-61009-1"),
        ("IS 12640-1:2008", "iec-61008-1"),
        ("IS 12640-2", "iec-61009-1"),
        ("SS 97:2016", "iec-61008-1"),
        ("EN 62423", "iec-62423"),
        ("DIN VDE 0664-400", "din-vde-0664-400"),
        ("IEC 60947-2", "iec-60947-2"),
        ("BS 4293:1983", "bs-4293"),
        ("bs7288", "bs-7288"),
        ("UL 943", "ul-943"),
        ("IEC 62955:2018", "iec-62955"),
    ],
)
def test_a_standard_is_recognised_as_people_write_it(name: str, key: str) -> None:
    """National adoptions, editions, case, spaces and dashes make no difference."""
    assert recognise(name) == key


@pytest.mark.parametrize(
    "name", ["", "61", "EN 60898", "BS 42930", "type A", "610081234", "BS 7671", "NEC", "IEC 60063"]
)
def test_what_is_no_known_standard_is_not_guessed(name: str) -> None:
    """A text that names no document here gives nothing."""
    assert recognise(name) is None


def test_a_product_standard_may_be_named_by_any_of_its_own_names() -> None:
    """Each name in the file leads back to its own document, and no other kind of document."""
    for source in SOURCES.values():
        expected = source.key if source.kind == "product-standard" else None
        for name in (source.key, source.designation, *source.names):
            assert recognise(name) == expected


def test_each_kind_of_evidence_is_told_in_words() -> None:
    """A practitioner reads a sentence, not a tag."""
    meanings = {word.meaning for word in Evidence}

    assert len(meanings) == len(Evidence)
    assert all(" " in meaning for meaning in meanings)


def test_a_citation_reads_as_one_line() -> None:
    """Document, edition, clause and evidence stand in that order."""
    cited = cite("iec-62955", "Table 2", "read", "2018")

    assert cited.words == "IEC 62955, 2018, Table 2 (seen in a published text)"


def test_a_citation_without_an_edition_takes_the_newest_known() -> None:
    """The source's own edition stands in."""
    assert cite("iec-62955", "6", "read").edition == SOURCES["iec-62955"].edition
