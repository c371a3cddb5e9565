from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from rackboard.ui.grid import grid


def test_the_two_designed_sizes() -> None:
    large, small = grid(1920, 1080 - 26), grid(1280, 800 - 22)
    assert (large.large, large.menu, large.margin, large.gutter, large.strip) == (
        True, 26, 24, 16, 80,
    )  # fmt: skip
    assert (large.tile_w, large.tile_h) == (252, 197)
    assert large.rack == (24, 120, 1324, 623)
    assert large.box == (24, 783, 1056, 197)
    assert large.slim_row == (24, 990, 1324, 44)
    assert large.right == (1380, 92, 516, 942)
    assert (small.large, small.tile_w, small.tile_h) == (False, 163, 146)
    assert small.rack == (16, 89, 875, 468)
    assert small.slim_row == (16, 739, 875, 31)
    assert small.right == (911, 67, 353, 703)


@given(st.integers(1280, 4000), st.integers(778, 2400))
def test_nothing_overlaps_or_leaves_the_board(width: int, height: int) -> None:
    at = grid(width, height)
    rack, box, slim, right = at.rack, at.box, at.slim_row, at.right
    assert rack.y >= at.strip + at.head
    assert box.y >= rack.y + rack.h + at.head
    assert slim.y >= box.y + box.h
    assert slim.y + slim.h <= height
    assert right.x > rack.x + rack.w
    assert right.x + right.w <= width
    assert right.y + right.h <= height
    assert right.w >= 353
    assert at.gutter >= 15


@given(st.integers(1800, 4000), st.integers(1054, 2400))
def test_a_larger_window_gives_only_to_the_right_column(width: int, height: int) -> None:
    designed, at = grid(1920, 1054), grid(width, height)
    assert at.rack == designed.rack
    assert at.box == designed.box
    assert at.slim_row == designed.slim_row
