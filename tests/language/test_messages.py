"""What single messages say: complaints, what is asked, devices, tracks; and what must not be heard."""

from __future__ import annotations

import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from producer.language.messages import MessageReader, message_reader
from producer.model.garage import Garage
from producer.model.message import Message
from producer.model.track import Track

TRACKS = {
    "marrow-creek": Track.model_validate({"format": "1", "track": "marrow-creek", "name": "Marrow Creek"}),
    # A track whose first corner is one long bend of three turns.
    "three-bends": Track.model_validate(
        {
            "format": "1",
            "track": "three-bends",
            "name": "Three Bends",
            "corners": [{"turns": ["1", "2", "3"]}, {"turns": ["4", "5"]}],
        }
    ),
}


@pytest.fixture(scope="module")
def reader(garage: Garage) -> MessageReader:
    return message_reader({garage.garage: garage}, TRACKS)


def felt(one: Message) -> list[str]:
    return [str(x.complaint) for x in one.feels]


@pytest.mark.parametrize(
    ("text", "feels"),
    [
        ("loose off 4", ["loose exit"]),
        ("way too loose into 3", ["very loose entry"]),
        ("a bit tight between 1 and 2", ["a little tight middle"]),
        ("pushes thru turns three and four", ["tight middle"]),
        ("loose in and off", ["loose entry", "loose exit"]),
        ("tight in the middle, loose on the gas", ["tight middle", "loose exit"]),
        ("in the middle it pushes and off the corner its loose", ["tight middle", "loose exit"]),
        ("the rear end just slides when i lift", ["loose entry"]),
        ("the nose slides up the track off 2", ["tight exit"]),
        ("no grip in the rear on throttle", ["loose exit"]),
        ("it wont rotate at the apex", ["tight middle"]),
        ("the front wont stick getting in", ["tight entry"]),
        ("cant keep it from getting loose off the corner", ["loose exit"]),
        ("its not loose, its tight off", ["tight exit"]),
        ("fine getting in but snaps when i get on the gas", ["loose exit"]),
        ("how do i get it to turn in the middle", ["tight middle"]),
        ("how do i calm the rear down going in", ["loose entry"]),
        ("can you make it a bit tighter off", ["a little loose exit"]),
        ("washes out off 2 real bad", ["very tight exit"]),
        ("i was tight in the center and now im loose off", ["loose exit"]),
        ("super loose", ["very loose"]),
        ("turn 4 exit its loose", ["loose exit"]),
        ("its tight in and loose out, help. i race on pad", ["tight entry", "loose exit"]),
    ],
)
def test_complaints(reader: MessageReader, text: str, feels: list[str]) -> None:
    assert felt(reader.read(text)) == feels


@pytest.mark.parametrize(
    "text",
    [
        "that was a tight race",
        "3 wide with 2 to go, so tight, what a race",
        "loose lips sink ships",
        "feel free to share it",
        "is the card free?",
        "no push in the middle at all",
        "not loose off 4 any more, cheers",
        "the push is gone, thank you",
        "this fixed my loose entry",
        "it used to be so loose into 3 and now its perfect",
        "does more wedge make it tight off?",
        "he got loose and took out half the field",
        "i pushed too hard and hit the wall",
        "what makes a car loose on exit?",
    ],
)
def test_no_complaint(reader: MessageReader, text: str) -> None:
    assert felt(reader.read(text)) == []


@pytest.mark.parametrize(
    ("text", "asks"),
    [
        ("loose off 4", "help"),
        ("what gear do you run here", "help"),
        ("any tips for the track bar", "help"),
        ("i dont get what toe out does", "help"),
        ("thanks jo", "thanks"),
        ("great video as always", "thanks"),
        ("thanks in advance, how do i fix the push", "help"),
        ("the card says 51 wedge but you said 52", "correction"),
        ("video: 52 cross. card: 51.5. which is right?", "correction"),
        ("why is the card different from the video", "correction"),
        ("can you do harrow point next", "track request"),
        ("do you have anything for marrow creek", "track request"),
        ("at marrow creek its loose off 2, any ideas", "help"),
        ("lap 12 and already a lap down haha", "other"),
        ("what a race", "other"),
        ("who else broke their wheel haha", "other"),
        ("what's the cross weight you run, couldn't read it on my phone", "help"),
        ("what phone do you use", "other"),
    ],
)
def test_what_is_asked(reader: MessageReader, text: str, asks: str) -> None:
    assert reader.read(text).asks == asks


@pytest.mark.parametrize(
    ("text", "device"),
    [
        ("on a wheel", "wheel"),
        ("wheel user here", "wheel"),
        ("loose off. pad. help", "pad"),
        ("w/ a controller", "pad"),
        ("i play with keyboard", "keyboard"),
        ("i dont have a wheel, im on a pad", "pad"),
        ("lost a wheel on lap 3", None),
        ("brake pads", None),
        ("do you use a wheel or a pad?", None),
        ("wheel to wheel all night", None),
        ("bought a new wheel", None),
    ],
)
def test_device(reader: MessageReader, text: str, device: str | None) -> None:
    assert reader.read(text).device == device


@pytest.mark.parametrize(
    ("text", "track", "known"),
    [
        ("do marrow creek please", "marrow creek", "marrow-creek"),
        ("tight off 2 at Marow Creek", "Marow Creek", "marrow-creek"),
        ("marrowcreek next?", "marrowcreek", "marrow-creek"),
        ("can we get quarry bend soon", "quarry bend", None),
        ("Quarry Bend please", "Quarry Bend", None),
        ("any plans for slate heath?", "slate heath", None),
        ("can you do that again", None, None),
        ("when i get on the gas its loose", None, None),
        ("what pressures do you run cold", None, None),
        ("can you make it tighter", None, None),
    ],
)
def test_track(reader: MessageReader, text: str, track: str | None, known: str | None) -> None:
    one = reader.read(text)
    assert (one.track, one.track_id) == (track, known)


@pytest.mark.parametrize(
    ("text", "settings"),
    [
        ("should i go up on the right rear spring or the wedge", ("spring.rr", "cross_weight")),
        ("tried 250 in the left rear", ("spring.lr",)),
        ("whats the left side pressures", ("tyre_pressure.lf", "tyre_pressure.lr")),
        ("what does rear split do", ("spring.rear_split",)),
        ("track bar?", ("track_bar",)),
        ("the rear end comes around", ()),
        ("right rear tire is shot", ()),
    ],
)
def test_settings(reader: MessageReader, text: str, settings: tuple[str, ...]) -> None:
    assert reader.read(text).parameters_named == settings


def test_turns_are_those_of_the_track(reader: MessageReader) -> None:
    assert felt(reader.read("loose in turn 3")) == ["loose entry"]
    assert felt(reader.read("loose in turn 3", track="three-bends")) == ["loose exit"]
    assert felt(reader.read("three bends: loose in turn 2")) == ["loose middle"]


def test_tyres_and_pedals(reader: MessageReader) -> None:
    (one,) = reader.read("snaps under braking on old tires").feels
    assert (one.tyres, one.pedal) == ("worn", "braking")
    assert reader.read("how long do new tires last?").tyres == "new"


def test_spans_are_the_words(reader: MessageReader) -> None:
    text = "Way too loose off 4 at Marrow Creek, wheel user. Right rear spring?"
    one = reader.read(text)
    assert [(x.part, text[x.start : x.end]) for x in one.spans] == [
        ("feel", "loose off 4"),
        ("track", "Marrow Creek"),
        ("device", "wheel"),
        ("parameter", "Right rear spring"),
    ]


def test_a_library_without_garages_or_tracks_reads_too() -> None:
    one = message_reader({}, {}).read("loose off 4 with 52 wedge, pad user, help")
    assert (felt(one), one.device, one.parameters_named) == (["loose exit"], "pad", ())


@settings(deadline=None)
@given(st.text(max_size=300))
def test_any_text_is_read(reader: MessageReader, text: str) -> None:
    for one in reader.read(text).spans:
        assert 0 <= one.start < one.end <= len(text)


_SAID = """way 2 loose off 4 on old tires wheel user any ideas tight in the middle wont turn card says you said 51 but
not it the rear nose slides gone thanks can you do marrow creek next please , . ? between 3 and when i lift gas pad"""


@settings(deadline=None)
@given(st.lists(st.sampled_from(_SAID.split()), max_size=50).map(" ".join))
def test_any_words_of_viewers_are_read(reader: MessageReader, text: str) -> None:
    one = reader.read(text)
    assert one.asks in {"help", "track request", "thanks", "correction", "other"}
    assert len({(x.feel, x.where) for x in one.feels}) == len(one.feels)
    assert one == reader.read(text)


@settings(max_examples=8, deadline=None)
@given(st.lists(st.sampled_from(_SAID.split()), min_size=5, max_size=40).map(" ".join))
def test_noise_costs_one_pass(reader: MessageReader, piece: str) -> None:
    text = ((piece + " ") * (100_000 // len(piece) + 1))[:100_000]
    begin = time.process_time()
    reader.read(text)
    assert time.process_time() - begin < 5
