"""Where pages break, in plain numbers; `test_printed` looks at the printed sides of both books."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from farmbook.layout.book import Sheet
from farmbook.layout.flow import FOOT, HIGHEST_ROW, LOWER_ROW, Part, flow, set_spaces, side_height
from farmbook.layout.grid import PRINTED, ROW_HEIGHT, SPACE

SIDE, TITLE = 700.0, 50.0
PARTS = st.lists(
    st.lists(st.sampled_from([20.0, 31.0, 46.0]), min_size=1, max_size=45).map(lambda rows: Part((30.0, *rows))),
    min_size=1,
    max_size=25,
)


def sides(first: float, parts: list[Part], spaces: list[float]) -> list[list[int]]:
    """For each block, the numbers of the sides on which its rows stand, printed as any program prints."""
    side, left, found = 0, SIDE - first, []
    for part, space in zip(parts, spaces, strict=True):
        stands = []
        for height in (space, *part.heights):
            if height > left + 1e-9:
                side, left = side + 1, SIDE - TITLE
            left -= height
            stands.append(side)
        found.append(stands[1:])
    return found


def left_over(first: float, parts: list[Part], spaces: list[float], number: int) -> float:
    """What is left of the side where the space above a block begins, less what it must clear the foot by."""
    left = SIDE - first
    for part, space in zip(parts[:number], spaces[:number], strict=True):
        for height in (space, *part.heights):
            left = SIDE - TITLE - height if height > left + 1e-9 else left - height
    return left - FOOT


@given(PARTS)
def test_no_space_is_higher_than_a_row_can_be(parts: list[Part]) -> None:
    assert max(flow(50.0, parts, 800.0, TITLE)) <= HIGHEST_ROW


@given(PARTS, st.sampled_from([50.0, 100.0, 300.0]))
def test_no_block_under_a_side_is_cut_and_no_heading_stands_alone(parts: list[Part], first: float) -> None:
    spaces = flow(first, parts, SIDE, TITLE)
    for number, (part, stands) in enumerate(zip(parts, sides(first, parts, spaces), strict=True)):
        if number and part.height <= SIDE - TITLE - FOOT and left_over(first, parts, spaces, number) <= HIGHEST_ROW:
            assert len(set(stands)) == 1, number
        if number:
            assert len(set(stands[: min(part.together, len(stands))])) == 1, number


@given(PARTS)
def test_a_space_grows_only_where_a_side_ends(parts: list[Part]) -> None:
    spaces = flow(100.0, parts, SIDE, TITLE)
    assert all(space >= SPACE for space in spaces)
    for number, space in enumerate(spaces):
        if space > SPACE:
            stands = sides(100.0, parts, spaces)
            assert stands[number][0] > stands[number - 1][-1]


def test_blocks_that_fit_stand_close() -> None:
    assert flow(100.0, [Part((30.0, 20.0))] * 3, SIDE, TITLE) == [SPACE] * 3
    high = Part((30.0, *[20.0] * 20))
    assert flow(100.0, [high, high], SIDE, TITLE)[1] == pytest.approx(700 - 100 - SPACE - 430 - FOOT)


def test_of_two_empty_rows_the_upper_one_grows() -> None:
    """So that, where a side is a little shorter, only the lower one goes over, and the gap there is small."""
    sheet = Sheet("Shed", "Shed", "What is in it?", "worked", [100] * PRINTED)
    first, second = 3, 33
    sheet.starts += [first, second]
    sheet.printed_rows = 63
    sheet.heights |= {row: SPACE / 2 for start in sheet.starts for row in (start - 1, start)}
    side = side_height(sheet.widths, "a4")
    set_spaces(sheet, "a4")
    above = sum(sheet.heights.get(row, ROW_HEIGHT) for row in range(second + 1))
    assert above == pytest.approx(side - FOOT)
    assert sheet.heights[second] == LOWER_ROW
    assert sheet.heights[second - 1] > 0
    assert (sheet.heights[first - 1], sheet.heights[first]) == (SPACE / 2, SPACE / 2)
