"""Lines and captions: a table of breaks, and the laws of what outranks what."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.captions.breaking import break_lines, fits, split_text
from producer.captions.phrases import NEVER, break_cost, measures
from producer.captions.speed import needed_ms
from producer.model.cue import ReadingProfile

WEB = ReadingProfile.web()
NARROW = ReadingProfile(characters_per_line=20)

LINES = [
    ("", WEB, ()),
    ("Cross weight", WEB, ("Cross weight",)),
    ("Cross\nweight", WEB, ("Cross weight",)),
    ("x" * 60, WEB, ("x" * 60,)),
    # at punctuation, though it is less balanced
    (
        "Right front spring: 725 lb/in, down from 750.",
        WEB,
        ("Right front spring:", "725 lb/in, down from 750."),
    ),
    # before the preposition, not after it
    (
        "The right front holds the car up through the middle of it.",
        WEB,
        ("The right front holds the car up", "through the middle of it."),
    ),
    # article and noun stay together
    ("It is tight in the middle", NARROW, ("It is tight", "in the middle")),
    # auxiliary and verb
    ("The nose has been pushing", NARROW, ("The nose", "has been pushing")),
    # figure and unit, joined or not
    ("Set the spring to 750 lb/in", NARROW, ("Set the spring", "to 750 lb/in")),
    ("Set the spring to 750\u00a0lb/in", NARROW, ("Set the spring", "to 750\u00a0lb/in")),
    # a corner, a thing known by its number
    ("Stiffer at the left rear", NARROW, ("Stiffer", "at the left rear")),
    ("Loose here in turn 3 again", NARROW, ("Loose here", "in turn 3 again")),
]


@pytest.mark.parametrize(("text", "profile", "lines"), LINES)
def test_lines(text: str, profile: ReadingProfile, lines: tuple[str, ...]) -> None:
    assert break_lines(text, profile) == lines


CAPTIONS = [
    ("", ()),
    ("Cross weight 51.5 %", (("Cross weight 51.5 %",),)),
    (
        "If it is tight going in, drop the track bar two clicks. If it is loose off, raise it one. "
        "Numbers for a simulation. Not advice for a real car.",
        (
            ("If it is tight going in,", "drop the track bar two clicks."),
            ("If it is loose off, raise it one.", "Numbers for a simulation."),
            ("Not advice for a real car.",),
        ),
    ),
    (
        "So the right front goes from 750 down to 725 lb/in, and that keeps it from pushing off 4 on old tires.",
        (
            ("So the right front goes", "from 750 down to 725 lb/in,"),
            ("and that keeps it from pushing", "off 4 on old tires."),
        ),
    ),
]


@pytest.mark.parametrize(("text", "captions"), CAPTIONS)
def test_captions(text: str, captions: tuple[tuple[str, ...], ...]) -> None:
    assert split_text(text, WEB) == captions


@pytest.mark.parametrize(
    ("text", "captions"),
    [
        # no first word of a sentence is left behind
        (
            "Now to the garage, and the short run. I start on the wheels page. Pressure, in psi: left front 20.5.",
            (
                ("Now to the garage, and the short run.", "I start on the wheels page."),
                ("Pressure, in psi: left front 20.5.",),
            ),
        ),
        # nor the last word of one taken along
        (
            "It rolls through the middle of the far end without any help. Good. Then it takes the throttle.",
            (
                ("It rolls through the middle", "of the far end without any help."),
                ("Good. Then it takes the throttle.",),
            ),
        ),
    ],
)
def test_captions_end_with_sentences(text: str, captions: tuple[tuple[str, ...], ...]) -> None:
    assert split_text(text, WEB) == captions


def test_a_text_of_figures_is_divided_by_the_time_it_takes() -> None:
    captions = split_text("61.5 % " * 12, WEB)
    assert len(captions) > 1
    assert all(needed_ms("\n".join(lines), WEB) <= WEB.longest_ms for lines in captions)


def test_a_text_that_does_not_fit_is_refused() -> None:
    with pytest.raises(ValueError, match="do not fit"):
        break_lines("word " * 60, WEB)
    assert not fits("word " * 60, WEB)


@pytest.mark.parametrize("text", ["", "Track bar", "The right front goes down to 725 lb/in and holds the car up"])
def test_a_text_that_fits(text: str) -> None:
    assert fits(text, WEB)
    assert len(break_lines(text, WEB)) <= 2


TRADE = (
    "the a in of and it is tight loose spring bar right front turn 3 750 51.5 lb/in % off. on, has 750\u00a0lb/in "
    "minus two clicks entry; stabilises \u22123.5 extraordinarily"
)
WORDS = st.sampled_from(TRADE.split(" "))
TEXTS = st.lists(WORDS, max_size=60).map(" ".join)
PROFILES = st.builds(
    ReadingProfile, characters_per_line=st.integers(5, 45), lines=st.integers(1, 4), longest_ms=st.just(9000)
)


@given(TEXTS, PROFILES)
def test_lines_keep_the_limit_and_all_words(text: str, profile: ReadingProfile) -> None:
    captions = split_text(text, profile)
    for lines in captions:
        assert 1 <= len(lines) <= profile.lines
        assert all(len(line) <= profile.characters_per_line or len(line.split()) == 1 for line in lines)
    assert " ".join(" ".join(lines) for lines in captions).split() == text.split()


@given(TEXTS, PROFILES)
def test_captions_can_be_read_in_their_longest_time(text: str, profile: ReadingProfile) -> None:
    for lines in split_text(text, profile):
        one_thing = len(lines) == 1 and len(lines[0].split()) <= 2
        assert one_thing or needed_ms("\n".join(lines), profile) <= profile.longest_ms


@given(TEXTS)
def test_a_figure_and_its_unit_share_a_line(text: str) -> None:
    lines = [line for caption in split_text(text, WEB) for line in caption]
    assert not any(measures(above.split(" ")[-1], below.split(" ")[0]) for above, below in pairwise(lines))
    assert sum(line.count("750\u00a0lb/in") for line in lines) == text.count("750\u00a0lb/in")


@given(TEXTS)
def test_phrases_are_parted_only_where_nothing_else_fits(text: str) -> None:
    """Every two-line break at a gap that should be kept: no other gap gives two lines that fit."""
    if not text or not fits(text, WEB):
        return
    lines = break_lines(text, WEB)
    for above, below in pairwise(lines):
        if break_cost(above.split(" ")[-1], below.split(" ")[0]) < NEVER:
            continue
        words = " ".join(lines).split(" ")
        for at in range(1, len(words)):
            one, other = " ".join(words[:at]), " ".join(words[at:])
            if max(len(one), len(other)) <= WEB.characters_per_line:
                assert break_cost(words[at - 1], words[at]) >= NEVER


@given(st.text())
def test_any_text_is_laid_out(text: str) -> None:
    assert all(line.strip() for lines in split_text(text, NARROW) for line in lines)


def test_no_break_spaces_give_way_only_to_the_line() -> None:
    long = "\u00a0".join(["word"] * 20)
    assert all(len(line) <= 42 for lines in split_text(long, WEB) for line in lines)
