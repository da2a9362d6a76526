"""The cue sheet as a table."""

from __future__ import annotations

import pytest

from producer.basics.frame_rate import frame_rate
from producer.captions.sheet_csv import marks_csv, safe_cell
from producer.model.cue import Mark

MARKS = [
    Mark(60_060, 61_000, "pick-up", "Right front spring", "said 705, the sheet has 725"),
    Mark(0, 12_000, "section", 'Opening, "night"'),
]


def test_a_whole_sheet() -> None:
    assert marks_csv(MARKS, frame_rate("29.97")) == (
        "number,timecode_in,timecode_out,start,end,kind,name,note\r\n"
        '1,00:00:00;00,00:00:11;29,00:00:00.000,00:00:12.000,section,"Opening, ""night""",\r\n'
        "2,00:01:00;02,00:01:01;00,00:01:00.060,00:01:01.000,pick-up,Right front spring,"
        '"said 705, the sheet has 725"\r\n'
    )


def test_without_a_rate_there_are_no_timecodes() -> None:
    row = marks_csv(MARKS, None).splitlines()[2]
    assert row.startswith("2,,,00:01:00.060,00:01:01.000,pick-up,")


@pytest.mark.parametrize("cell", ["=1+1", "+1", "-1", "@a"])
def test_a_spreadsheet_runs_nothing(cell: str) -> None:
    assert safe_cell(cell) == f"'{cell}"
    assert f"'{cell}" in marks_csv([Mark(0, 1, "section", cell)], None)


@pytest.mark.parametrize("cell", ["", "a=b", "725", "\u22123.5", "'x"])
def test_other_cells_stay(cell: str) -> None:
    assert safe_cell(cell) == cell
