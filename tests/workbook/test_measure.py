"""Room for words: widths against known ones of Arial, lines counted by hand."""

from __future__ import annotations

import pytest

from farmbook.layout.measure import BOLD, REGULAR, height_of, lines_of, width_of


def test_every_sign_from_the_space_to_the_tilde_has_a_width() -> None:
    assert len(REGULAR) == len(BOLD) == 95


@pytest.mark.parametrize(
    ("sign", "regular", "bold"),
    # Adobe's metrics of Helvetica, which Arial and Liberation Sans keep; from memory
    [
        (" ", 278, 278),
        ("i", 222, 278),
        ("m", 833, 889),
        ("W", 944, 944),
        ("0", 556, 556),
        ("a", 556, 556),
        ("f", 278, 333),
    ],
)
def test_widths_are_those_of_the_type(sign: str, regular: int, bold: int) -> None:
    assert width_of(sign, 75) == pytest.approx(regular / 10)
    assert width_of(sign, 75, bold=True) == pytest.approx(bold / 10)


def test_words_wrap_where_they_no_longer_fit() -> None:
    # at 75 points a 0 is 55.6 pixels wide and a space 27.8; eight pixels of the column are never written on
    assert lines_of("00 00", 55.6 * 4 + 27.8 + 8.1, 75) == 1
    assert lines_of("00 00", 55.6 * 4 + 27.8 + 7.9, 75) == 2
    assert lines_of("00 00 00", 55.6 * 4 + 27.8 + 8.1, 75) == 2
    assert lines_of("0000000", 55.6 * 3 + 8.1, 75) == 3
    assert lines_of("00\n00\n", 500, 75) == 3


def test_a_row_grows_by_its_lines() -> None:
    one, two = height_of("bags", 200, 10), height_of("bags\nbags", 200, 10)
    assert one == 20
    assert two - one == pytest.approx(10 * 4 / 3 * 1.15, abs=1)


def test_an_accent_takes_no_room_and_an_unknown_sign_much() -> None:
    assert width_of("\u00e4", 10) == width_of("a", 10)
    assert width_of("\u4e00", 75) == pytest.approx(100)


@pytest.mark.parametrize(
    ("sign", "regular", "bold"),
    # read from Liberation Sans 2.1.5
    [("\u201c", 333, 500), ("\u2019", 222, 278), ("\u00ef", 278, 278), ("\u00d7", 584, 584), ("\u25b2", 990, 990)],
)
def test_widths_of_other_signs_are_those_of_the_type(sign: str, regular: int, bold: int) -> None:
    assert width_of(sign, 75) == pytest.approx(regular / 10)
    assert width_of(sign, 75, bold=True) == pytest.approx(bold / 10)
