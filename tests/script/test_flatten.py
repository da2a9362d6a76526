"""The author's Markdown is read aloud as words."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.script.flatten import flat, paragraphs


@pytest.mark.parametrize(
    ("prose", "heard"),
    [
        ("It *turns* and it **stays**.", "It turns and it stays."),
        ("It _turns_ and it __stays__.", "It turns and it stays."),
        ("***Both*** at once.", "Both at once."),
        ("See [the cards](https://example.org/cards) below.", "See the cards below."),
        ('See [the cards](https://example.org/a_(b) "cards") below.', "See the cards below."),
        ("Run `spring.rf` soft.", "Run spring.rf soft."),
        ("A line\nand another.", "A line and another."),
        ("A line  \nand another.", "A line and another."),
        ("A line\\\nand another.", "A line and another."),
        ("> Quoted\n> words.", "Quoted words."),
        ("A \\* star.", "A * star."),
        ("<https://example.org> is where.", "is where."),
    ],
)
def test_marks_are_not_said(prose: str, heard: str) -> None:
    assert flat(prose) == heard


@pytest.mark.parametrize(
    "prose",
    [
        "Two times 4 * 5 is twenty.",
        "@brake_marker_bea asked.",
        "spring_rate_rf stays.",
        "From −3.50 to 52.5 percent.",
        "Half of 3/4, that is 0.375.",
        "A dash - in a sentence.",
        "It is < 5 and > 2.",
        "750\u00a0lb/in keeps its space.",
        "(in brackets) and [in others].",
    ],
)
def test_plain_words_and_figures_stay_as_they_are(prose: str) -> None:
    assert flat(prose) == prose


@pytest.mark.parametrize(
    ("prose", "parts"),
    [
        ("", ()),
        (" \n\n ", ()),
        ("One.\n\nTwo.", ("One.", "Two.")),
        ("One.\r\n\r\nTwo.", ("One.", "Two.")),
        ("# Head\nWords.", ("Head", "Words.")),
        ("Do this:\n- brake\n- wait\n1. squeeze", ("Do this:", "brake", "wait", "squeeze")),
        ("Above\n\n---\n\nbelow", ("Above", "below")),
        ("```\ncode\n```\n", ("code",)),
    ],
)
def test_what_is_said_apart(prose: str, parts: tuple[str, ...]) -> None:
    assert paragraphs(prose) == parts


@given(st.text(alphabet="ab 1.*_`[]()#>\\-\n~<:/", max_size=60))
def test_any_text_becomes_single_lines_without_empty_ones(prose: str) -> None:
    assert all(part.strip() and "\n" not in part for part in paragraphs(prose))


@given(st.lists(st.sampled_from(["set", "it", "52.5", "and", "turn", "750"]), min_size=1, max_size=12))
def test_words_alone_are_kept(words: list[str]) -> None:
    assert flat(" ".join(words)) == " ".join(words)
