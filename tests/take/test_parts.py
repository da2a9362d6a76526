"""The parts of hearing a take, one by one."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.captions.reading import read_captions
from producer.language.reading import reader
from producer.model.dossier import Dossier
from producer.model.take import TakeFile
from producer.take.caution import caution_at
from producer.take.chain import rising
from producer.take.crossing import matched
from producer.take.likeness import script_tokens, tokens_of
from producer.take.mending import mended, names_mended, pairs
from producer.take.sentences import sentences
from producer.take.speech import Speech, breaks, speech, with_ones
from producer.take.take import hear
from producer.take.topics import topic_names, topics
from producer.take.voting import index, last_of, places
from tests.take.conftest import GARAGES, TRACKS, Heard
from tests.take.takes import plain_srt, script_texts


def spoken(text: str) -> Speech:
    return speech(read_captions(plain_srt(text).encode(), "take.srt"))


def rolling(*words: tuple[str, int]) -> Speech:
    """Automatic captions: words with their times in ms, no stops."""
    stamps = "".join(f" <00:00:{at // 1000:02}.{at % 1000:03}><c>{word}</c>" for word, at in words[1:])
    text = f"WEBVTT\n\n00:00:{words[0][1] // 1000:02}.000 --> 00:00:59.000\n{words[0][0]}{stamps}\n"
    return speech(read_captions(text.encode(), "take.vtt"))


@pytest.mark.parametrize(
    ("text", "tokens"),
    [
        ("Left front 20.5.", "left front 205"),
        ("left front twenty and a half", "left front 205"),
        ("left front twenty point five", "left front 205"),
        ("Final drive is at 4.15", "final drive is at 415"),
        ("the four fifteen gear", "the 415 gear"),
        ("right-front spring, 750 pounds per inch", "right front spring 750 pounds per inch"),
        ("44.0 and 44", "44 and 44"),
    ],
)
def test_a_figure_is_one_token_however_it_is_said(text: str, tokens: str) -> None:
    assert " ".join(tokens_of(text.split()).text) == tokens


@given(st.lists(st.sampled_from(["a", "b", "7", "-", "½", "twenty", "five", "...", "right-front", "1/2"]), max_size=60))
def test_tokens_never_lose_their_place(words: list[str]) -> None:
    found = tokens_of(words)
    assert list(found.word) == sorted(found.word)
    assert all(0 <= at < len(words) for at in found.word)


def test_a_section_is_found_by_its_first_words_and_the_last_time_counts() -> None:
    section = [f"s{number}" for number in range(12)]
    noise = [f"w{number}" for number in range(60)]
    take = index((*noise, *section, *noise, *section[:4], "x", *section[5:], *noise))
    found = places(section, take)
    assert [one.at for one in found] == [60, 60 + len(section) + 60]
    assert found[last_of([one.score for one in found], [1.0, 0.9])].at == found[-1].at
    assert places(["nothing", "of", "the", "kind"], index(noise)) == []


@pytest.mark.parametrize(
    ("places", "chain"),
    [
        ([0, 10, 20], {0, 1, 2}), ([20, 0, 10], {1, 2}), ([0, None, 5], {0, 2}), ([None], set()), ([], set()),
        ([0, 30, 10, 20], {0, 2, 3}),
    ],
)  # fmt: skip
def test_the_longest_rising_chain(places: list[int | None], chain: set[int]) -> None:
    assert rising(places) == chain


@given(
    st.lists(
        st.one_of(st.none(), st.integers(0, 99)),
        max_size=12,
        unique_by=lambda one: one if one is not None else object(),
    )
)
def test_a_chain_rises(places: list[int | None]) -> None:
    chain = [places[at] for at in sorted(rising(places))]
    assert chain == sorted(one for one in chain if one is not None)


def test_chance_meetings_are_no_match() -> None:
    script = [f"s{number}" for number in range(12)]
    take = [*script[:6], *["x"] * 30, "s8", *["y"] * 30]
    found = matched(script, take)
    assert found.take_of[:6] == (0, 1, 2, 3, 4, 5)
    assert found.take_of[8] == -1


def test_captions_without_stops_break_at_pauses_but_not_before_a_figure() -> None:
    heard = rolling(
        ("front", 0), ("weight", 300), ("is", 700), ("at", 900), ("50.5", 2500), ("next", 5000), ("page", 5300)
    )
    assert not heard.punctuated
    assert heard.words[breaks(heard)[0] - 1] == "50.5"


def test_what_is_taken_back_stays_with_what_it_takes_back() -> None:
    heard = spoken("Front weight, 50. Sorry, 50.5. That is it.")
    assert [heard.text(*one) for one in zip([0, *breaks(heard)], breaks(heard), strict=False)] == [
        "Front weight, 50. Sorry, 50.5.", "That is it.",
    ]  # fmt: skip


def test_fillers_and_doubled_words_are_no_words() -> None:
    assert spoken("the um right right front, you know, had had 4 4").text(0, 99) == "the right front, had had 4 4"


@pytest.mark.parametrize(
    ("text", "heard"),
    [
        ("left rear five and right rear one", "1"), ("the right rear one is soft", "one"), ("front bar, one.", "1."),
        ("the right rear spring is one ninety", "one"), ("it is at one", "1"), ("one of them", "one"),
    ],
)  # fmt: skip
def test_one_is_a_figure_where_a_figure_stands(text: str, heard: str) -> None:
    words = with_ones(spoken(text), frozenset({"bar"})).words
    assert next(word for word in words if word.strip(".") in {"one", "1"}) == heard


def test_sentences_in_captions_that_have_none(sedan: Dossier) -> None:
    said = (
        "springs in pounds per inch left front 725 right front 775 this is the spring that turns the car "
        "if it is loose go up"
    )
    words = rolling(*((word, 300 * at) for at, word in enumerate(said.split())))
    cut = [words.text(*one) for one in sentences(words, reader(sedan.garage).vocabulary)]
    assert cut == [
        "springs in pounds per inch", "left front 725", "right front 775", "this is the spring that turns the car",
        "if it is loose go up",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Now the long run.", [("turn", "long")]),
        ("Okay, on to the long run setup.", [("turn", "long")]),
        ("For the long run, 750.", [("aside", "long")]),
        ("And 750 for the long run.", [("aside", "long")]),
        ("On to the undercar page.", [("page", "undercar")]),
        ("Okay, shocks.", [("page", "shocks")]),
        ("Over a long run it gets hot.", []),
        ("A click more than the short run has.", []),
        ("It is the short run with seven changes.", []),
        ("There are two setups here: the short run and the long run.", []),
        ("So it belongs to the short run, when you have some to give.", []),
        ("Shocks only speak while the car is changing its mind, and then they say a lot.", []),
    ],
)
def test_topics(sedan: Dossier, text: str, found: list[tuple[str, str]]) -> None:
    heard = spoken(text)
    names = topic_names(sedan.sheets, sedan.garage.pages)
    assert [(one.kind, one.name) for one in topics(heard.plain, 0, len(heard), names)] == found


def test_misheard_words_are_mended_by_the_script_but_no_figure_side_or_choice(sedan: Dossier) -> None:
    script = script_tokens(sedan.narration)
    text = script_texts(sedan)["short.undercar"]
    said = text.replace("right front 775", "right front 725").replace("pounds per inch: left", "bounds per itch: left")
    said = said.replace("The right front, 775", "The left front, 775")
    heard = spoken(said)
    tokens = tokens_of(heard.words)
    number = [one.id for one in sedan.narration.sections].index("short.undercar")
    found, _ = mended(heard, tokens, script, [pairs(script, number, tokens, 0, len(tokens))], frozenset())
    whole = found.text(0, len(found))
    assert "pounds per inch: left front 725, right front 725" in whole
    assert "The left front, 775" in whole


def test_misheard_names_are_mended() -> None:
    found = names_mended(
        spoken("the right frunt sprng at 750, and that is fun"), ["right front spring"], frozenset({"that", "fun"})
    )
    assert found.text(0, 99) == "the right front spring at 750, and that is fun"


@pytest.mark.parametrize(
    ("text", "there"),
    [
        ("not for a real car, this is a simulation", True), ("simulation numbers, never mind a real car", True),
        ("numbers for a simulation not advise for a reel car", True), ("it is a simulation", False), ("", False),
        ("these numbers are for a simulation and nott for a the car", True),
        ("a simulation and not for a rear what", True), ("this is a so none of it is for a real car", True),
        ("a simulation so none of it is for a thanks", True), ("for a had and not for a real with", True),
        ("the simulation has a setting for a soft rear", False), ("I ran a real race and this is not that", False),
        ("a simulation and then quite a few other words come before anybody at all says the word real", False),
    ],
)  # fmt: skip
def test_the_caution_is_heard(text: str, there: bool) -> None:
    found = caution_at(spoken(text or "x"), "Numbers for a simulation. Not advice for a real car.")
    assert (found is not None) is there


def test_the_rate_leaves_pauses_out(told: Heard) -> None:
    assert abs(told().words_per_minute - 165) <= 3  # 150 written words a minute; figures count as spoken


def test_times_of_the_episode_as_told(told: Heard, sedan: Dossier) -> None:
    take = told(short__shocks="")
    assert take.narration is not None
    assert take.timeline is not None
    assert [one.id for one in take.narration.sections] == [
        one.id for one in sedan.narration.sections if one.id != "short.shocks"
    ]
    assert take.timeline.source == "raw"
    starts = take.timeline.section_starts
    assert list(starts) == sorted(starts)
    assert {one.section: one.start_ms for one in take.sections if one.start_ms is not None} == dict(
        zip((one.id for one in take.narration.sections), starts, strict=True)
    )
    for before, after in zip(take.timeline.spans, take.timeline.spans[1:], strict=False):
        assert before.start_ms <= before.end_ms <= after.start_ms or before.section != after.section
    assert sum(len(one.passages) for one in take.narration.sections) == len(take.timeline.spans)


def test_asides_are_told(told: Heard, sedan: Dossier) -> None:
    scales = script_texts(sedan)["short.scales"]
    aside = (
        "By the way the dog ran off with my left shoe this morning and I have been limping through the yard ever since."
    )
    take = told(short__scales=f"{scales} {aside}")
    assert [one.text for one in take.asides] == [aside]
    assert take.findings == ()


@given(st.text(alphabet=st.sampled_from("ab 7.,?!½-<>&\n'…éß٣"), max_size=300))
def test_no_words_bring_it_down(sedan_dossier: Dossier, text: str) -> None:
    file = TakeFile("raw", read_captions(plain_srt(f"x {text}").encode(), "take.srt"))
    found = hear([file], sedan_dossier, TRACKS, GARAGES)
    assert found is None or found.length_ms >= 0


@pytest.fixture(scope="module")
def sedan_dossier(shelf: Mapping[str, Dossier]) -> Dossier:
    return shelf["marrow-creek-grand-sedan"]


def test_a_figure_keeps_its_readings(told: Heard) -> None:
    """ "Four fifteen" is 415 and 4.15: the reading that equals the sheet wins."""
    text = "And the drive page, the last one. Brake bias: 66. Grille tape, 40. Final drive is at four fifteen."
    assert [one for one in told(short__drive=text).findings if one.parameter == "final_drive"] == []
    wrong = told(short__drive=text.replace("four fifteen", "three eighty five"))
    assert [one.said for one in wrong.findings if one.parameter == "final_drive"] == [Decimal("3.85")]
