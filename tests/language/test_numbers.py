"""Numbers as people say and write them."""

from __future__ import annotations

import time
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from producer.language.numbers import Number, numbers, settle
from producer.language.terms import Vocabulary
from producer.model.grid import Grid

SPRING = Grid(Decimal(300), Decimal(1300), Decimal(25))
GEAR = Grid(
    Decimal("3.70"),
    Decimal("4.11"),
    None,
    (Decimal("3.70"), Decimal("3.80"), Decimal("3.90"), Decimal("4.00"), Decimal("4.11")),
)
WEIGHT = Grid(Decimal(46), Decimal(56), Decimal("0.5"))
BAR = Grid(Decimal("0.75"), Decimal("1.5"), Decimal("0.125"))


def one(text: str) -> Number:
    (found,) = numbers(text)
    return found


@pytest.mark.parametrize(
    ("text", "readings"),
    [
        ("51.5", ["51.5"]),
        ("51½", ["51.5"]),
        ("fifty-one and a half", ["51.5"]),
        ("fifty-one and a half percent", ["51.5"]),
        ("1,050", ["1050"]),
        ("ten fifty", ["1050", "10.50"]),
        ("twelve twenty-five", ["1225", "12.25"]),
        ("three ninety", ["390", "3.90"]),
        ("three-eighty", ["380", "3.80"]),
        ("a four-eleven", ["411", "4.11"]),
        ("four oh five", ["405", "4.05"]),
        ("one point one two five", ["1.125"]),
        ("one twelve five", ["1.125", "112.5"]),
        ("one one two five", ["1125", "1.125"]),
        ("fifty one five", ["51.5"]),
        ("fifty one point five", ["51.5"]),
        ("point oh five", ["0.05"]),
        ("point seventy-five", ["0.75"]),
        ("minus three and a half", ["-3.5"]),
        ("negative three point two five", ["-3.25"]),
        ("-3 3/4", ["-3.75"]),
        ("−3.5", ["-3.5"]),
        ("six and three quarters", ["6.75"]),
        (".05", ["0.05"]),
        ("a quarter inch", ["0.25"]),
        ("a quarter of an inch", ["0.25"]),
        ("three quarters of an inch", ["0.75"]),
        ("three-quarter inch", ["0.75"]),
        ("five eighths", ["0.625"]),
        ("an eighth", ["0.125"]),
        ("1/4", ["0.25"]),
        ("1-1/8", ["1.125"]),
        ("an inch and a quarter", ["1.25"]),
        ("inch and a quarter", ["1.25"]),
        ("half a pound", ["0.5"]),
        ("half a percent", ["0.5"]),
        ("two and a half", ["2.5"]),
        ("seven hundred and fifty", ["750"]),
        ("one thousand two hundred and twenty-five", ["1225"]),
        ("a hundred pounds", ["100"]),
        ("3.90:1", ["3.90"]),
        ("51.5\u00a0%", ["51.5"]),
        ("a click", ["1"]),
        ("another click", ["1"]),
    ],
)
def test_reads(text: str, readings: list[str]) -> None:
    assert one(text).readings == tuple(Decimal(x) for x in readings)


@pytest.mark.parametrize(
    ("text", "unit", "more", "again"),
    [
        ("25 pounds", "lb", 0, False),
        ("750-pound spring", "lb", 0, False),
        ("700 lb/in", "lb/in", 0, False),
        ("seven hundred pounds per inch", "lb/in", 0, False),
        ("24 psi", "psi", 0, False),
        ("half a percent", "%", 0, False),
        ("two more clicks", "click", 1, False),
        ("2 fewer clicks", "click", -1, False),
        ("another half a percent", "%", 0, True),
        ("two steps", "step", 0, False),
        ("3 degrees", "deg", 0, False),
        ("nine and a half inches", "in", 0, False),
        ('9.5"', "in", 0, False),
        ("25 in the left rear", "", 0, False),
    ],
)
def test_units(text: str, unit: str, more: int, again: bool) -> None:
    found = one(text)
    assert (found.unit, found.more, found.again) == (unit, more, again)


@pytest.mark.parametrize(
    "text",
    [
        "lap fifty two",
        "lap 52",
        "25 laps",
        "twenty third",
        "11th",
        "18:00",
        "0:31.482",
        "84/91/97",
        "thirty one four eighty two",
        "$250",
        "episode twelve",
        "two tenths",
        "forty likes",
        "seven hundred and fifty of you",
        "12 minutes",
        "142 mph",
        "turn 4",
        "99999999999999999999",
        "1,05",
    ],
)
def test_no_figure_of_a_setting(text: str) -> None:
    assert all(found.foreign for found in numbers(text))


@pytest.mark.parametrize(
    "text", ["this one", "one of them", "a spring", "half the field", "inch by inch", "point", "oh"]
)
def test_no_number(text: str) -> None:
    assert numbers(text) == ()


def test_two_springs_in_a_row_are_two_numbers() -> None:
    assert [x.readings[0] for x in numbers("seven hundred seven fifty")] == [700, 750]


@pytest.mark.parametrize(
    "text", ["Right front at 51½, they said.", "it is at minus three and a half degrees now", "1,050"]
)
def test_spans_are_the_words_of_the_number(text: str) -> None:
    found = one(text)
    inside = text[found.start : found.end]
    assert numbers(inside)[0].readings == found.readings


@pytest.mark.parametrize(
    ("text", "grid", "unit", "value"),
    [
        ("twelve twenty-five", SPRING, "lb/in", "1225"),
        ("seven fifty", SPRING, "lb/in", "750"),
        ("three ninety", GEAR, ":1", "3.90"),
        ("four hundred", GEAR, ":1", "4.00"),
        ("four hundred", SPRING, "lb/in", "400"),
        ("a 390 gear", GEAR, ":1", "3.90"),
        ("four-eleven", GEAR, ":1", "4.11"),
        ("fifty one five", WEIGHT, "%", "51.5"),
        ("one twelve five", BAR, "in", "1.125"),
        ("730", SPRING, "lb/in", "730"),
        ("seven thirty", SPRING, "lb/in", "730"),
        ("fourteen fifty", SPRING, "lb/in", "1450"),
        ("60", WEIGHT, "%", "60"),
        ("three fifty", GEAR, ":1", "3.50"),
    ],
)
def test_the_grid_settles(text: str, grid: Grid, unit: str, value: str) -> None:
    assert settle(one(text).candidates(unit), grid) == Decimal(value)


@pytest.mark.parametrize(
    ("candidates", "grid"),
    [
        (("50", "50.5"), WEIGHT),
        (("1000", "1225"), SPRING),
        (("1", "2"), SPRING),
        ((), SPRING),
    ],
)
def test_two_that_fit_are_none(candidates: tuple[str, ...], grid: Grid) -> None:
    assert settle(tuple(Decimal(x) for x in candidates), grid) is None


@settings(deadline=None)
@given(st.integers(0, 9999))
def test_a_spoken_number_is_what_the_referee_reads(value: int) -> None:
    """text2num, an independent reader, agrees on plain cardinal numbers written in words."""
    from text_to_num import text2num

    said = _cardinal(value)
    assert text2num(said, "en") == value
    if value != 1:  # "one" alone is a pronoun until something follows
        assert [x.readings[0] for x in numbers(said)] == [value]


_ONES = """zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen
seventeen eighteen nineteen"""
_TENS = "_ _ twenty thirty forty fifty sixty seventy eighty ninety"


def _cardinal(value: int) -> str:
    ones, tens = _ONES.split(), _TENS.split()
    if value < 20:
        return ones[value]
    if value < 100:
        return tens[value // 10] + (f" {ones[value % 10]}" if value % 10 else "")
    size, name = (1000, "thousand") if value >= 1000 else (100, "hundred")
    rest = f" {_cardinal(value % size)}" if value % size else ""
    return f"{_cardinal(value // size)} {name}{rest}"


@given(st.decimals(min_value="-9999", max_value="9999", places=3))
def test_written_decimals_are_exact(value: Decimal) -> None:
    assert one(f"at {value}").readings[0] == value


@given(st.text(max_size=400))
def test_any_text_is_read(text: str) -> None:
    for found in numbers(text):
        assert 0 <= found.start < found.end <= len(text)


@settings(max_examples=8, deadline=None)
@given(st.text(alphabet="0123456789.,-/:½ abn'", min_size=20, max_size=60))
def test_noise_costs_one_pass(piece: str) -> None:
    text = (piece * (100_000 // len(piece) + 1))[:100_000]
    begin = time.process_time()
    numbers(text)
    assert time.process_time() - begin < 5


def test_every_setting_of_the_garage_reads_its_own_figures(vocabulary: Vocabulary) -> None:
    for setting in vocabulary.garage.settings.values():
        for index in (0, setting.grid.last // 2, setting.grid.last):
            value = setting.grid.at(index)
            assert value is not None
            assert settle(one(f"at {setting.figure(value)}").candidates(setting.unit), setting.grid) == value
