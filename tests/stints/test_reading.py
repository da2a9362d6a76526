"""Files of laps as people write them: every lap is there, everything odd is told with its line."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.model.stints import Lap
from producer.stints.reading import MOST_LAPS, read_laps

FOUR = "1 31.482 17.6 out lap | 2 31.501 17.2 | 3 31.530 16.8 traffic | 4 31.612 16.4"


def shown(laps: tuple[Lap, ...]) -> str:
    """Laps in one line: number, seconds, fuel, note."""
    parts = ((one.number, one.seconds, one.fuel, one.note) for one in laps)
    return " | ".join(" ".join(str(x) for x in part if x is not None and x != "") for part in parts)


def told(text: str) -> list[str]:
    """`code line:column` of each finding."""
    return [f"{one.code} {one.place.line}:{one.place.column}" for one in read_laps(text, "a.csv", "stints[0].file")[1]]


COMMA = "lap,time,fuel,note\n1,31.482,17.6,out lap\n2,31.501,17.2,\n3,31.530,16.8,traffic\n4,31.612,16.4\n"


@pytest.mark.parametrize(
    "text",
    [
        COMMA,
        COMMA.split("\n", 1)[1],
        COMMA.replace("\n", "\r\n"),
        COMMA.replace("\n", "\r"),
        COMMA.replace("lap,time,fuel,note", "Lap No.,Lap Time (s),Fuel left [gal],Comments"),
        COMMA.replace("lap,time,fuel,note", "# , Time , FUEL , notes"),
        "# Tuesday\n\n" + COMMA + "\n,,,\n",
        COMMA.replace("31.", "0:31."),
        COMMA.replace(",out lap", ',"out lap"'),
        COMMA.replace(",", ", "),
        COMMA.replace(".", "~").replace(",", ";").replace("~", ","),
        "sep=;\n" + COMMA.replace(",", ";"),
        COMMA.replace(",", "\t"),
        "note,fuel,time,lap\nout lap,17.6,31.482,1\n,17.2,31.501,2\ntraffic,16.8,31.530,3\n,16.4,31.612,4\n",
    ],
)
def test_four_laps_however_they_are_written(text: str) -> None:
    laps, findings = read_laps(text, "a.csv")
    assert findings == ()
    assert shown(laps) == FOUR
    assert [one.left_out for one in laps] == ["out lap", "", "traffic", ""]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("31.482\n31.501\n1:02.3\n", "1 31.482 | 2 31.501 | 3 62.3"),
        ("1 31.482\n2 31.501 traffic in 3\n", "1 31.482 | 2 31.501 traffic in 3"),
        ("1,31.482,out lap\n2,31.501\n", "1 31.482 out lap | 2 31.501"),
        ("lap,time,note\n1,31.482,out lap, cold tires\n", "1 31.482 out lap, cold tires"),
        ('lap,time,note\n1,31.482,"felt ""fine"", really"\n', '1 31.482 felt "fine", really'),
        ('1,"31,482"\n2,"31,501"\n', "1 31.482 | 2 31.501"),
        ("out;31,482\n2;31,501\n", "1 31.482 out | 2 31.501"),
        ("time\n31.482\n31.501\n", "1 31.482 | 2 31.501"),
        ("lap,time\n2,31.482\n3,31.501\n", "2 31.482 | 3 31.501"),
        ("31.482,17.6\n31.501,17.2\n", "1 31.482 17.6 | 2 31.501 17.2"),
        ("31,482\n31,501\n31,48\n", "1 31.482 | 2 31.501 | 3 31.48"),
        ("1 31,482 out lap\n2 31,501\n", "1 31.482 out lap | 2 31.501"),
        ("1,31\n2,32\n3,31\n", "1 31 | 2 32 | 3 31"),
        ("1,100\n2,101\n3,100\n", "1 100 | 2 101 | 3 100"),
        ("31.482,out lap\n31.501\n31.530\n31.6,traffic\n", "1 31.482 out lap | 2 31.501 | 3 31.530 | 4 31.6 traffic"),
        ("1 31.482\n2 31.501 traffic, held up\n3 31.53\n", "1 31.482 | 2 31.501 traffic, held up | 3 31.53"),
        ("lap,time,fuel\n1,31.482,18\n2,31,18\n3,31.5,17\n", "1 31.482 18 | 2 31 18 | 3 31.5 17"),
        ("LapNumber,LapTime,FuelLeft\n1,31.482,18\n2,31.5,17\n", "1 31.482 18 | 2 31.5 17"),
        ("LAP_NO;LAP_TIME\n1;31.482\n2;31.5\n", "1 31.482 | 2 31.5"),
    ],
)
def test_odd_but_clear(text: str, expected: str) -> None:
    laps, findings = read_laps(text, "a.csv")
    assert (shown(laps), findings) == (expected, ())


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("", ["lap-columns 1:1"]),
        ("a,b\nc,d\n", ["lap-columns 1:1"]),
        ("lap,time\n", ["lap-columns 1:1"]),
        ("lap,fuel\n1,17.6\n2,17.2\n", ["lap-columns 1:1"]),
        ("lap,fuel,gap\n1,17.6,\n2,17.2,\n", ["lap-columns 1:1"]),
        ("lap,Zeit\n1,31.482\n", ["lap-columns 1:5"]),
        ("Runde,Zeit\n1,31.482\n", ["lap-unreadable 1:1"]),
        ("a\nb\nc\nd\ne\nf\nlap,time\n1,31.482\n", [f"lap-unreadable {line}:1" for line in range(1, 7)]),
        ("1,DNF\n2,31.482\n3,31.5\n", ["lap-unreadable 1:3"]),
        ("oops\n31.482\n31.5\n", ["lap-unreadable 1:1"]),
        ("lap,time\n1,31.482,traffic\n2,31.5\n", ["lap-columns 2:10"]),
        ("lap,note,time\n1,,31.482,17.6\n2,,31.5\n", ["lap-columns 2:11"]),
        ("lap,time,note\n1,31.482,\n2,31,501,\n3,31.5,\n", ["lap-unreadable 3:3"]),
        ("1,31.482\n2,31,501\n3,31.5\n", ["lap-unreadable 2:3"]),
        ("lap,time\n1,31.482\n2,31.5\nTotal,62.982\nAverage:,31.491\n", ["lap-numbers 4:1", "lap-numbers 5:1"]),
        ("lap,time,fuel\n1,31.482,98%\n2,31.5,97 %\n", ["fuel-odd 2:10", "fuel-odd 3:8"]),
        ("1,31,482\n2,31,501\n", ["lap-columns 1:1"]),
        ("lap,time\n1,31,482\n2,31,501\n", ["lap-columns 2:1"]),
        ("lap,time,gap\n1,31.482,0\n", ["lap-columns 1:10"]),
        ("lap,time,seconds\n1,31.482,31.482\n", ["lap-columns 1:10"]),
        ("Marrow Creek\nlap,time\n1,31.482\n", ["lap-unreadable 1:1"]),
        ("lap,time\n1,31.482\n2,\n3,31.5\n", ["lap-unreadable 3:1"]),
        ("lap,time\n1,31.482\n2,DNF\n3,31.5\n", ["lap-unreadable 3:3"]),
        ("lap,time\n1,31482\n2,31.5\n", ["lap-unreadable 2:3"]),
        ('lap,time,note\n1,31.482,"out lap\n2,31.5,\n', ["lap-unreadable 2:10"]),
        ("lap,time\n1,31.482\nx1,31.5\n", ["lap-numbers 3:1"]),
        ("lap,time\n1,31.482\n,31.5\n", ["lap-numbers 3:1"]),
        ("lap,time\n1,31.482\n1,31.5\n", ["lap-numbers 3:1"]),
        ("lap,time\n1,31.482\n3,31.5\n2,31.6\n", ["lap-numbers 4:1"]),
        ("1,31.1\n2,31.2\n3,31.3\n1,31.1\n2,31.2\n", ["lap-numbers 4:1"]),
        ("lap,time\n1,31.482\n2,31.5\n4,31.6\n", ["laps-missing 4:1"]),
        ("lap,time\n14,31.482\n15,31.5\n", ["laps-missing 2:1"]),
        ("lap,time,fuel\n1,31.482,full\n2,31.5,17\n", ["fuel-odd 2:10"]),
        ("lap,time,fuel\n1,31.482,3\n2,31.5,-1\n", ["fuel-odd 3:8"]),
        ("lap,time,fuel\n1,31.482,3\n2,45.5,18\n3,31.5,17\n", ["fuel-odd 3:1"]),
    ],
)
def test_what_is_odd_is_told(text: str, expected: list[str]) -> None:
    assert told(text) == expected


def test_a_column_that_does_not_say_so_is_taken_for_the_times_where_it_is_the_only_one() -> None:
    laps, findings = read_laps("lap,Zeit,gap\n1,31.482,a\n2,31.5,b\n", "a.csv")
    assert shown(laps) == "1 31.482 | 2 31.5"
    assert [one.message for one in findings] == [
        "the column 'Zeit' is taken for the lap times",
        "the column 'gap' is not read",
    ]


def test_a_note_without_a_column_of_its_own_counts_all_the_same() -> None:
    laps, _ = read_laps("lap,time\n1,31.482,traffic\n2,31.5\n", "a.csv")
    assert [one.left_out for one in laps] == ["traffic", ""]


def test_a_spreadsheet_s_sums_are_shown_and_are_no_laps() -> None:
    laps, _ = read_laps("lap,time\n1,31.482\n2,31.5\nTotal,62.982\n", "a.csv")
    assert [(one.number, one.seconds is None, one.left_out) for one in laps][2:] == [(3, True, "no lap")]


@pytest.mark.parametrize(
    ("header", "level", "unit", "expected"),
    [
        ("fuel", "17.6", "gal", "17.6"),
        ("fuel", "17.6 gal", "gal", "17.6"),
        ("fuel", "10 L", "gal", "2.642"),
        ("litres", "10", "gal", "2.642"),
        ("Fuel [l]", "10", "L", "10"),
        ("fuel (kg)", "10", "lb", "22.046"),
        ("fuel (kg)", "10", "gal", None),
        ("fuel", "10 x", "gal", None),
        ("fuel", "98 %", "", None),
        ("fuel", "10 L", "", "10"),
    ],
)
def test_fuel_is_turned_into_the_stint_s_unit(header: str, level: str, unit: str, expected: str | None) -> None:
    laps, findings = read_laps(f"lap,time,{header}\n1,31.482,{level}\n", "a.csv", "", unit)
    assert (str(laps[0].fuel) if laps[0].fuel is not None else None) == expected
    assert [one.code for one in findings] == ([] if expected else ["fuel-odd"])


def test_a_second_stint_is_shown_and_left_out() -> None:
    laps, findings = read_laps("1,31.1\n2,31.2\n3,31.3\n1,31.1\n2,31.2\n", "a.csv")
    assert [one.kept for one in laps] == [True, True, True, False, False]
    assert "begin again" in findings[0].message


def test_the_second_of_two_laps_with_one_number_is_left_out() -> None:
    laps, _ = read_laps("1,31.1\n2,31.2\n2,31.9\n", "a.csv")
    assert [one.left_out for one in laps] == ["", "", "lap 2 a second time"]


def test_a_lap_without_a_time_leaves_its_number_to_the_next() -> None:
    laps, findings = read_laps("1,31.1\n2,oops\n2,31.2\n", "a.csv")
    assert [one.left_out for one in laps] == ["", "no time", ""]
    assert [one.code for one in findings] == ["lap-unreadable"]


def test_very_many_laps() -> None:
    text = "".join(f"{lap},31.5\n" for lap in range(1, MOST_LAPS + 100))
    laps, findings = read_laps(text, "a.csv")
    assert len(laps) == MOST_LAPS + 99
    assert sum(one.kept for one in laps) == MOST_LAPS
    assert [one.code for one in findings] == ["lap-unreadable"]


def test_findings_name_file_and_place() -> None:
    _, (found,) = read_laps("1,31.1\n2,oops\n", "oval/stints/a.csv", "stints[2].file")
    assert str(found.place) == "oval/stints/a.csv:2:3"
    assert found.place.width == 4
    assert found.where == "stints[2].file"
    assert found.hint


LINES = st.lists(st.text(st.sampled_from("0123456789.,;:\t \"'#-abclptmieuo\n\r"), max_size=24), max_size=12)


@given(LINES)
def test_nothing_makes_it_stumble_and_no_line_is_two_laps(lines: list[str]) -> None:
    text = "\n".join(lines)
    laps, findings = read_laps(text, "a.csv")
    count = len(text.splitlines()) or 1
    assert all(1 <= one.line <= count for one in laps)
    assert all(1 <= one.place.line <= count for one in findings)
    assert len({one.line for one in laps}) == len(laps)
    assert all(one.kept or one.left_out for one in laps)


@given(st.lists(st.integers(20_000, 40_000), min_size=1, max_size=60), st.sampled_from([",", ";", "\t"]))
def test_written_and_read_back(thousandths: list[int], mark: str) -> None:
    rows = [f"{lap}{mark}{one // 1000}.{one % 1000:03}" for lap, one in enumerate(thousandths, 1)]
    laps, findings = read_laps("\n".join([f"lap{mark}time", *rows]), "a.csv")
    assert findings == ()
    assert [int(one.seconds * 1000) for one in laps if one.seconds is not None] == thousandths


def test_the_demo_is_read_without_a_word(demo_stints: dict[str, str]) -> None:
    for file, text in demo_stints.items():
        laps, findings = read_laps(text, file)
        assert findings == ()
        assert len(laps) == text.count("\n") - 1
