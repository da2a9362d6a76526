"""Whole replies: the ten of the demo as they would be sent, and what holds for every reply."""

from __future__ import annotations

import re
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from producer.basics.errors import ProducerError
from producer.basics.figures import MINUS, NO_BREAK
from producer.model.library import Library
from producer.model.request import Request
from producer.model.sheet import Sheet
from producer.model.words import Complaint
from producer.replies.changes import Offered
from producer.replies.choose import Choice
from producer.replies.fill import open_sentences

Answer = Any  # the desk of conftest.py
GOLDEN = Path(__file__).parent / "golden"
TEN = [f"req-{number}" for number in range(101, 111)]
CHANGE = re.compile(r"- (?P<name>[^:(]+?)(?: \([^)]*\))?: from (?P<start>\S+) to (?P<to>\S+?)(?P<unit> \S+?)?\.(?: |$)")
NUMBER = re.compile(r"\d+(?:\.\d+)?")


def asked(**parts: Any) -> Request:
    plain = {"id": "req-x", "received": "2026-10-01", "from": "@somebody", "credit": "no", "text": "hello"}
    return Request.model_validate({key: one for key, one in {**plain, **parts}.items() if one is not None})


def number(text: str) -> Decimal:
    return Decimal(text.removesuffix(":1").replace(MINUS, "-"))


def moves(text: str, sheet: Sheet) -> list[tuple[str, Decimal, Decimal]]:
    """(address, from, to) of every change in a reply."""
    named = {one.name: one.address for one in sheet.garage.settings.values()}
    lines = [one for one in text.splitlines() if one.startswith("- ") and ": from " in one]
    found = [CHANGE.match(one) for one in lines]
    assert all(found), lines
    return [(named[one["name"]], number(one["start"]), number(one["to"])) for one in found if one]


def sheet_of(log: Library, choice: Choice) -> Sheet:
    assert choice.episode is not None
    assert choice.setup is not None
    sheet = log.case(choice.episode).sheet(choice.setup)
    assert sheet is not None
    return sheet


@pytest.mark.parametrize("name", TEN)
def test_the_ten_as_they_would_be_sent(log: Library, answer: Answer, name: str) -> None:
    made, _ = answer(log.requests[name])
    assert made.text + "\n" == (GOLDEN / f"{name}.txt").read_text(encoding="utf-8")


def test_the_whole_log_is_covered(log: Library) -> None:
    assert sorted(log.requests) == TEN == sorted(path.stem for path in GOLDEN.glob("*.txt"))


def known_numbers(log: Library) -> set[Decimal]:
    """Every number that stands in the library, whichever way it is written."""
    texts = [places.text for name, places in log.files.items() if not name.startswith("requests/")]
    return {abs(Decimal(one)) for text in texts for one in NUMBER.findall(text)}


@pytest.mark.parametrize("name", TEN)
def test_every_number_is_in_the_library(log: Library, answer: Answer, name: str) -> None:
    made, choice = answer(log.requests[name])
    allowed = known_numbers(log)
    if choice.setup is not None:
        allowed |= {to for _, _, to in moves(made.text, sheet_of(log, choice))}
    written = {Decimal(one) for one in NUMBER.findall(made.text.split("\n", 1)[1])}
    assert written <= allowed


FEELS = st.lists(
    st.builds(
        lambda *parts: " ".join(one for one in parts if one),
        st.sampled_from(["", "a little", "very"]),
        st.sampled_from(["tight", "loose"]),
        st.sampled_from(["", "entry", "middle", "exit"]),
    ),
    max_size=4,
)
MESSAGES = st.builds(
    lambda **parts: asked(**{key: value for key, value in parts.items() if value is not None}),
    feels=FEELS,
    asks=st.sampled_from([None, "help", "track request", "thanks", "correction", "other"]),
    track=st.sampled_from([None, "gannet-bowl", "marrow-creek", "lantern-flats", "oak-hollow"]),
    garage=st.sampled_from([None, "grand-sedan", "club-coupe", "truck"]),
    tyres=st.sampled_from([None, "new", "worn"]),
    device=st.sampled_from([None, "wheel", "pad", "keyboard"]),
    credit=st.sampled_from([None, "yes", "no"]),
    status=st.sampled_from(["new", "declined"]),
)


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(request=MESSAGES, characters=st.one_of(st.just(1500), st.integers(160, 1500)))
def test_what_holds_for_every_reply(answer: Answer, request: Request, characters: int) -> None:
    made, choice = answer(request, characters=characters)
    log = answer.log
    assert len(made.text) <= characters
    assert log.channel is not None
    assert log.channel.caution in made.text
    assert made.text.startswith("Hi @somebody,\n")
    assert not any(one.from_ in made.text for one in log.requests.values())
    assert not any(mark in made.text for mark in (NO_BREAK, "{{", "}}", "\n\n\n", "None", "tyre", "!"))
    assert made.text.count("?") <= 2 + (request.credit is None)
    assert (made.episode is None) == (made.setup is None)
    if choice.setup is None:
        assert ": from " not in made.text
        return
    found = moves(made.text, sheet_of(log, choice))
    assert len(found) <= 3
    for address, start, to in found:
        sheet = sheet_of(log, choice)
        setting = sheet.setting(address)
        assert start == sheet.values[address] != to
        place = setting.grid.index(to)
        assert place is not None
        assert setting.grid.at(place) == to


@settings(max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(request=MESSAGES, lower=st.integers(160, 1400))
def test_a_shorter_reply_only_leaves_lines_out(answer: Answer, request: Request, lower: int) -> None:
    whole, less = (answer(request, characters=one)[0].text for one in (1500, lower))
    own = ("The rest is on the card.", "Thank you for writing. I have your message and will come back to it.", "")
    for line in less.splitlines():
        assert line in own or any(one.startswith(line.rstrip(".")) for one in whole.splitlines()), line


@pytest.mark.parametrize("characters", [1, 40, 80])
def test_a_limit_that_nothing_fits_is_said(answer: Answer, characters: int) -> None:
    with pytest.raises(ProducerError, match=r"channel\.yaml.*alone have \d+"):
        answer(asked(asks="thanks"), characters=characters)


@pytest.mark.parametrize(
    ("text", "there", "not_there"),
    [
        (
            "gannet: you say 55 for the tape but the card says 60",
            ["Grille tape: 60 % (40", "go by these"],
            ["Wheels"],
        ),
        ("gannet card has 3.80 for the gear, you said 3.90", ["Final drive: 3.40:1", "I do not find"], ["go by these"]),
        ("gannet card and video dont match", ["- Wheels: ", "- Drive: "], ["I do not find"]),
        ("what gear should i run at gannet", ["- Final drive: 3.40:1. A long gear"], ["tight or loose, and is it"]),
        ("what gear should i run", ["need to know a little more", "Which track"], ["Is the car tight", ": from "]),
        ("how do i load this into my garage?", ["few lines myself", "If you ever want"], ["Is the car", "Which track"]),
        ("thx jo the long run one at gannet is great", ["the long run setup for Gannet Bowl"], ["setups for"]),
        ("thx jo great stuff on gannet", ["the setups for Gannet Bowl in the Grand Sedan work"], []),
        ("tight off 4 at gannet, up or down on the right rear spring?", ["Right rear spring: from 350 to 375"], []),
        ("tight off 4 at gannet, tried the right rear spring already", [": from "], ["Right rear spring"]),
        ("can we have a qualifying setup for gannet", ["is out, with", "no qualifying setup for it yet"], ["Which"]),
        ("can we have a long run setup for gannet", ["is out, with"], ["There is no"]),
        ("club coupe at lantern flats wont turn in, wheel", ["Brake bias: from 62.0 to 61.0 %"], ["Which"]),
    ],
)
def test_what_is_said_to_a_text(answer: Answer, text: str, there: list[str], not_there: list[str]) -> None:
    said = answer(asked(text=text))[0].text
    assert [one for one in there if one not in said] == [], said
    assert [one for one in not_there if one in said] == [], said


def test_who_answered_about_their_name_is_not_asked_again(answer: Answer) -> None:
    said = {"asks": "thanks", "credit": None}
    assert "may I name you" not in answer(asked(**said, **{"from": "@Torque_Tilly"}))[0].text
    assert "may I name you" in answer(asked(**said, **{"from": "@pit_road_pen"}))[0].text
    assert "may I name you" in answer(asked(**said, **{"from": None}))[0].text


@pytest.mark.parametrize(
    ("parts", "there", "not_there"),
    [
        # No setup: it says so, gives no figures, and the message is logged.
        (
            {"asks": "help", "feels": ["loose exit"], "track": "oak-hollow", "garage": "grand-sedan"},
            ["no setup for Oak Hollow in the Grand Sedan yet", "not guess", "in my log", "Until then"],
            ["from "],
        ),
        (
            {"asks": "help", "feels": ["loose exit"], "track": "marrow-creek", "garage": "club-coupe"},
            ["still testing Marrow Creek in the Club Coupe", "November 20, 2026", "not guess"],
            [": from "],
        ),
        ({"asks": "help"}, ["Is the car tight or loose", "Which track is it, and which car class?"], ["I read it"]),
        (
            {"asks": "help", "episode": "gannet-bowl-grand-sedan"},
            ["I have the numbers for Gannet Bowl in the Grand Sedan here", "Is the car tight or loose"],
            [": from ", "Which"],
        ),
        (
            {"asks": "help", "feels": ["loose"], "episode": "gannet-bowl-grand-sedan", "tyres": "new"},
            ["Where in the corner is it loose", ": from "],
            ["Are the tires"],
        ),
        ({"asks": "help", "garage": "grand-sedan", "feels": ["loose exit"]}, ["Which track is it?"], ["class"]),
        # A preview says that it is one; what is out does not.
        ({"feels": ["loose exit"], "episode": "lantern-flats-club-coupe"}, ["preview", "not out yet"], ["The video:"]),
        ({"feels": ["loose exit"], "episode": "gannet-bowl-grand-sedan"}, ["The video: https"], ["preview"]),
        # The setup's choice is explained where the viewer made none.
        ({"feels": ["loose exit"], "episode": "gannet-bowl-grand-sedan", "setup": "long"}, [": from "], ["so I took"]),
        (
            {"feels": ["loose exit"], "episode": "gannet-bowl-grand-sedan", "tyres": "worn"},
            ["The tires are worn, so I took that one."],
            ["try the long run"],
        ),
        (
            {"feels": ["loose exit"], "episode": "gannet-bowl-grand-sedan", "tyres": "worn", "setup": "short"},
            ["try the long run setup as well"],
            ["so I took"],
        ),
        ({"feels": ["loose exit"], "track": "gannet-bowl"}, ["I take it that you are in the Grand Sedan."], []),
        (
            {"feels": ["loose exit"], "track": "gannet-bowl", "garage": "grand-sedan"},
            ["You did not say which setup"],
            ["I take it"],
        ),
        # Two feels that pull against each other.
        (
            {"feels": ["tight middle", "loose middle"], "episode": "gannet-bowl-grand-sedan"},
            ["For tight in the middle:", "What helps loose in the middle would make tight in the middle worse"],
            ["For loose"],
        ),
        (
            {
                "feels": ["tight entry", "tight middle", "very tight exit", "tight exit"],
                "episode": "gannet-bowl-grand-sedan",
            },
            ["Write again about tight on exit once that is better."],
            ["For tight on exit"],
        ),
        ({"asks": "track request"}, ["It is in my log now", "Which track is it, and which car class?"], []),
        ({"asks": "track request", "track": "oak-hollow"}, ["nothing on Oak Hollow yet", "Which car class"], []),
        (
            {"asks": "track request", "track": "oak-hollow", "garage": "grand-sedan", "status": "declined"},
            ["no plans for Oak Hollow in the Grand Sedan"],
            ["your vote"],
        ),
        (
            {"asks": "track request", "track": "marrow-creek", "garage": "club-coupe"},
            ["testing Marrow Creek in the Club Coupe at the moment, and the video is planned for November 20, 2026"],
            [],
        ),
        ({"asks": "thanks"}, ["glad it helped"], ["may I name you"]),
        ({"asks": "thanks", "credit": None}, ["may I name you"], []),
        ({"asks": "correction"}, ["which video it is", "Which track is it"], [": from "]),
        (
            {"asks": "correction", "track": "oak-hollow", "garage": "grand-sedan"},
            ["no finished setup for Oak Hollow in the Grand Sedan"],
            [],
        ),
        (
            {"asks": "correction", "episode": "lantern-flats-club-coupe", "setup": "long"},
            ["my long run setup", "stagger 1.50 in", "final drive 4.88:1", f"RF {MINUS}3.0 deg"],
            ["The rest"],
        ),
    ],
)
def test_what_is_said(answer: Answer, parts: dict[str, Any], there: list[str], not_there: list[str]) -> None:
    text = answer(asked(**parts))[0].text
    assert [one for one in there if one not in text] == [], text
    assert [one for one in not_there if one in text] == [], text


def test_a_feel_with_nothing_left_is_said() -> None:
    nothing = Offered(Complaint("tight", "exit"), (), "nothing")
    assert list(open_sentences((nothing,))) == [
        "For tight on exit I have nothing to change: no rule speaks of it, or nothing is left inside the limits."
    ]


def test_a_long_listing_leaves_out_whole_pages(answer: Answer) -> None:
    request = asked(asks="correction", episode="gannet-bowl-grand-sedan", setup="short")
    text = answer(request, characters=700)[0].text
    assert "- Wheels: " in text
    assert "The rest is on the card." in text
    assert "- Drive: " not in text


def test_british_spelling_for_the_programs_words(answer: Answer) -> None:
    text = answer(asked(feels=["loose exit"], tyres="worn", track="marrow-creek"), spelling="uk")[0].text
    assert "on worn tyres" in text
    assert "The tyres are worn" in text
    assert "6 November 2026" in answer(asked(asks="track request", track="marrow-creek"), spelling="uk")[0].text
