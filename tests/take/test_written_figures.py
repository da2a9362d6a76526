"""Numbers of what was said as figures: whose they are, which reading is meant, what unit is written, what stays words.

In a text `{spring.rf:seven hundred}` marks a figure that was heard of a setting.
"""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.basics.place import Place
from producer.language.numbers import numbers
from producer.model.said import SaidLine, SaidWord
from producer.model.take import SaidFigure
from producer.take.written_figures import Known, with_figures
from tests.outputs.dossiers import sample_dossier

HERE = Place("take.srt", 1, 1)
STEP = 300


@pytest.fixture(scope="module")
def known() -> Known:
    dossier = sample_dossier()
    return Known.of(dossier.sheets, dossier.garage)


def said(*lines: str, step: int = STEP) -> tuple[list[SaidLine], list[SaidFigure]]:
    """Lines of words `step` ms apart, and the figures marked in them."""
    found: list[SaidLine] = []
    figures: list[SaidFigure] = []
    now = 0
    for line in lines:
        words: list[SaidWord] = []
        for piece in re.split(r"(\{.*?\})", line):
            address, _, text = piece.strip("{}").partition(":") if piece.startswith("{") else ("", "", piece)
            if address:
                readings = frozenset(abs(x) for one in numbers(text) for x in one.readings + one.ratios)
                figures.append(SaidFigure(now, address, readings))
            for word in text.split():
                if re.fullmatch(r"[.,;:!?]+", word) and words:
                    words[-1] = SaidWord(words[-1].text + word, words[-1].start_ms, words[-1].timed)
                    continue
                words.append(SaidWord(word, now, timed=True))
                now += step
        found.append(SaidLine(words[0].start_ms, now, " ".join(one.text for one in words), tuple(words), HERE))
    return found, figures


def written(known: Known, *lines: str) -> str:
    made = with_figures(*said(*lines), known)
    return " / ".join(one.text for one in made).replace("\u00a0", "_")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        # The unit where it was said, and where the figure is the sheet's.
        ("the right front spring is {spring.rf:seven hundred pounds per inch}", "the right front spring is 700_lb/in"),
        ("the right front spring is {spring.rf:seven hundred} .", "the right front spring is 700_lb/in."),
        ("wedge {cross_weight:fifty two and a half percent} ,", "wedge 52.5_%,"),
        ("Front weight, {front_weight:50.5} .", "Front weight, 50.5_%."),
        ("split of {spring.rear_split:seventy five pounds}", "split of 75_lb/in"),
        # The reading that the sheet has, or the advice, or the grid.
        ("bar at {track_bar.left:nine twenty five}", "bar at 9.25_in"),
        ("spring at {spring.lf:seven twenty five}", "spring at 725_lb/in"),
        (
            "go back to {spring.rf:seven twenty five} , then {spring.rf:seven fifty} .",
            "go back to 725, then 750_lb/in.",
        ),
        ("with {spring.lr:two twenty five} in it", "with 225_lb/in in it"),
        # A wrong figure stays wrong, and gets only what was said.
        ("front weight, {front_weight:fifty} .", "front weight, 50."),
        ("front weight, {front_weight:fifty percent} .", "front weight, 50_%."),
        # Ratios, minus, clicks.
        ("gear at {final_drive:three ninety}", "gear at 3.90:1"),
        ("right front {camber.rf:minus three and a half degrees} of camber", "right front −3.5_deg of camber"),
        ("compression on the left front, {compression.lf:five clicks} .", "compression on the left front, 5_clicks."),
        # A row has its unit once.
        (
            "left front {pressure.lf:twenty one} and right front {pressure.rf:forty three} .",
            "left front 21 and right front 43_psi.",
        ),
        (
            "Pressure, in psi: left front {pressure.lf:twenty one} , right front {pressure.rf:forty three} .",
            "Pressure, in psi: left front 21, right front 43.",
        ),
        ("{pressure.lf:twenty one} . Then {pressure.rf:forty three} .", "21_psi. Then 43_psi."),
        # A movement.
        ("from seven fifty down to {spring.rf:seven hundred pounds}", "from 750 down to 700_lb/in"),
        ("gear at {final_drive:3.85:1} now", "gear at 3.85:1 now"),
        ("camber {camber.rf:minus 3.5} now", "camber −3.5_deg now"),
        # Other numbers.
        ("give it 20 pounds of it", "give it 20_lb of it"),
        ("thirty percent of the time", "30_% of the time"),
        ("go two clicks up", "go 2_clicks up"),
        ("into turn three on lap twenty", "into turn 3 on lap 20"),
        ("a hundred and forty two miles an hour", "142 miles an hour"),
        ("about twelve cars", "about 12 cars"),
        ("it was (fifty two percent) then", "it was (52_%) then"),
    ],
)
def test_as_figures(known: Known, text: str, expected: str) -> None:
    assert written(known, text) == expected


@pytest.mark.parametrize(
    "text",
    [
        "one of the two setups",
        "the right rear one",
        "a step or another click",
        "half a pound of air",
        "a quarter inch of it",
        "three things to know",
        "the first two laps",
        "I won by thirty-one four eight two",
        "thirteen ninety two",  # two readings, neither of this episode
        "a twenty-first-century car",
        "nothing is counted here, I said to nobody.",
        "two more clicks of that",
    ],
)
def test_what_stays_in_words(known: Known, text: str) -> None:
    assert written(known, text) == text


@pytest.mark.parametrize("text", ["750", "lap 12", "0:31.482", "v2.4", "12-inch", "x2", "$5", "3.90:1", "1,050 people"])
def test_figures_that_are_written_already_stay(known: Known, text: str) -> None:
    assert written(known, text) == text


def test_a_figure_across_two_lines_stands_in_the_first(known: Known) -> None:
    lines, _ = said("wedge at fifty", "two percent and on")
    figures = [SaidFigure(2 * STEP, "cross_weight", frozenset(numbers("52")[0].readings))]
    made = with_figures(lines, figures, known)
    assert [one.text for one in made] == ["wedge at 52\u00a0%", "and on"]
    assert [word.start_ms for one in made for word in one.words] == [0, 300, 600, 1500, 1800]


def test_a_line_whose_words_all_moved_up_is_gone(known: Known) -> None:
    lines, _ = said("wedge at fifty", "two percent")
    figures = [SaidFigure(2 * STEP, "cross_weight", frozenset(numbers("52")[0].readings))]
    assert [one.text for one in with_figures(lines, figures, known)] == ["wedge at 52\u00a0%"]


def test_a_silence_parts_two_numbers(known: Known) -> None:
    lines, _ = said("thirty two pounds", step=2000)
    assert with_figures(lines, [], known)[0].text == "30 2\u00a0lb"


def test_a_figure_of_a_changed_sheet_loses_the_unit_that_was_not_said() -> None:
    dossier = sample_dossier()
    from tests.outputs.dossiers import with_values

    other = with_values(dossier, "short", {"front_weight": "51.5"})
    text = "front weight, {front_weight:fifty and a half} ."
    assert written(Known.of(dossier.sheets, dossier.garage), text) == "front weight, 50.5_%."
    assert written(Known.of(other.sheets[:1], other.garage), text) == "front weight, 50.5."


WORDS = st.sampled_from(
    re.findall(
        r"\S+",
        "the right front spring at seven fifty two and a half percent three quarters of an inch minus one point oh 725 "
        "9.5 lap turn clicks twenty-one, hundred. (forty) -- oh- thousand pounds per to from",
    )
)


@given(st.lists(st.lists(WORDS, min_size=1, max_size=12), max_size=5), st.integers(0, 2000))
def test_every_other_word_stays_and_times_never_go_back(known: Known, rows: list[list[str]], step: int) -> None:
    lines, _ = said(*(" ".join(row) for row in rows), step=step)
    words = [word for line in lines for word in line.words]
    figures = [
        SaidFigure(word.start_ms, "spring.rf", frozenset(numbers("700 50 2.5 725")[0].readings)) for word in words
    ]
    made = [word for line in with_figures(lines, figures, known) for word in line.words]
    starts = [word.start_ms for word in made]
    assert starts == sorted(starts)
    assert all(word.text for word in made)
    kept = {word.text for word in made if not any(letter.isdigit() for letter in word.text)}
    assert kept <= {word.text for word in words}
