"""What was said as captions: on the times of the words, broken by sense, never two at once."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.basics.place import Place
from producer.captions.speech import PAUSE_MS, speech_captions
from producer.model.cue import Cue, ReadingProfile
from producer.model.said import SaidLine, SaidWord

PROFILE = ReadingProfile()
HERE = Place("take.vtt", 1, 1)


def line(text: str, start: int, step: int = 400) -> SaidLine:
    words = tuple(SaidWord(word, start + number * step, timed=True) for number, word in enumerate(text.split()))
    return SaidLine(start, start + step * len(words), text, words, HERE)


def test_lines_of_the_file_do_not_matter() -> None:
    said = [line("the right front spring goes", 0), line("from 750 lb/in", 2000), line("down to 725", 3200)]
    # Shown longer than it is said: figures take time to read, and nothing follows.
    assert speech_captions(said, PROFILE) == (
        Cue(0, 6600, ("the right front spring goes", "from 750 lb/in down to 725")),
    )


def test_a_caption_begins_with_its_first_word() -> None:
    said = [line("so we soften the right front one step. it turns now all the way through the middle", 1000)]
    cues = speech_captions(said, PROFILE)
    assert [cue.lines for cue in cues] == [
        ("so we soften the right front one step.",),
        ("it turns now all the way", "through the middle"),
    ]
    assert [(cue.start_ms, cue.end_ms) for cue in cues] == [(1000, 4200), (4200, 7800)]


def test_silence_ends_a_caption() -> None:
    cues = speech_captions([line("loose off", 0), line("tight in", 800 + 200 + PAUSE_MS)], PROFILE)
    assert [(cue.start_ms, cue.text) for cue in cues] == [(0, "loose off"), (2000, "tight in")]


@pytest.mark.parametrize(
    ("stop", "captions"),
    [("", ["it turns in well", "then it pushes"]), (".", ["it turns in well then it pushes."])],
)
def test_without_stops_a_shorter_silence_ends_a_sentence(stop: str, captions: list[str]) -> None:
    """With stops it is a breath."""
    said = [line("it turns in well", 0), line(f"then it pushes{stop}", 4 * 400 + 700)]
    assert [cue.text.replace("\n", " ") for cue in speech_captions(said, PROFILE)] == captions


def test_a_long_last_word_is_a_pause() -> None:
    """Where a file holds its cue on the screen, the word has long been said."""
    still = SaidLine(0, 9000, "loose off", (SaidWord("loose", 0), SaidWord("off", 400)), HERE)
    cues = speech_captions([still, line("tight in", 9000)], PROFILE)
    assert [(cue.start_ms, cue.end_ms, cue.text) for cue in cues] == [(0, 1000, "loose off"), (9000, 9833, "tight in")]


def test_a_figure_keeps_its_unit() -> None:
    said = [line("and with that the left rear wants to stay right there at 225 lb/in of spring all day long", 0)]
    shown = "\n".join(cue.text for cue in speech_captions(said, PROFILE))
    assert "225 lb/in" in shown


def test_a_figure_joined_to_its_unit_moves_no_caption() -> None:
    """Captions begin with their own first words, however many figures came before."""
    text = "the spring is at 725\u00a0lb/in and the bar at 9.5\u00a0in and the air at 44\u00a0psi now"
    row = text.split(" ")
    words = tuple(SaidWord(word, number * 400) for number, word in enumerate(row * 6))
    said = [SaidLine(0, 400 * len(words), " ".join(row * 6), words, HERE)]
    begins = {word.start_ms: word.text for word in words}
    cues = speech_captions(said, PROFILE)
    assert len(cues) > 5
    assert [begins[cue.start_ms] for cue in cues] == [
        next(word for word in row if cue.lines[0].startswith(word)) for cue in cues
    ]


@pytest.mark.parametrize("said", [[], [SaidLine(0, 0, "", (), HERE)]])
def test_nothing_said(said: list[SaidLine]) -> None:
    assert speech_captions(said, PROFILE) == ()


WORDS = st.sampled_from(["the", "spring", "725\u00a0lb/in", "9.5", "in", "goes.", "right", "front", "x" * 50, "a-b"])
SAID = st.lists(
    st.tuples(st.integers(0, 60_000), st.lists(WORDS, min_size=1, max_size=25), st.integers(0, 900)), max_size=6
)


@given(SAID)
def test_every_word_is_shown_once_and_no_two_captions_at_once(rows: list[tuple[int, list[str], int]]) -> None:
    said = [line(" ".join(words), start, step) for start, words, step in sorted(rows)]
    cues = speech_captions(said, PROFILE)
    assert all(before.end_ms <= after.start_ms for before, after in pairwise(cues))
    assert all(PROFILE.shortest_ms <= cue.duration_ms <= PROFILE.longest_ms for cue in cues)
    shown = sorted(word for cue in cues for word in cue.text.split())
    assert shown == sorted(word for one in said for word in one.text.split())
