"""What a file may leave out: everything but its format, its own id and its name."""

from __future__ import annotations

from pathlib import Path

from producer.handling.rules import effect_of
from producer.library.load import load

FILES = {
    "channel.yaml": "format: 1\nchannel: notebook\nname: The Notebook\n",
    "tracks/creek.yaml": "format: 1\ntrack: creek\nname: The Creek\n",
    "tracks/flats.yaml": "format: 1\ntrack: flats\nname: The Flats\ncorners: [ { turns: [1, 2] }, { banking: 8 } ]\n",
    "garages/sedan.yaml": (
        "format: 1\ngarage: sedan\nname: Sedan\npages: [chassis]\nparameters:\n"
        "  spring: { page: chassis, name: spring, role: spring, unit: lb/in, corners: {\n"
        "    lr: { min: 100, max: 500, step: 25 }, rr: { min: 100, max: 500, step: 25 } } }\n"
    ),
    "requests/first.yaml": 'format: 1\nrequests: [ { id: one, from: "@somebody", text: hello } ]\n',
}


def test_a_library_of_what_is_required(tmp_path: Path) -> None:
    for name, text in FILES.items():
        path = tmp_path / name
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, encoding="utf-8")
    library, findings = load(tmp_path)
    assert findings == []
    assert library.channel is not None
    assert library.channel.presenter == "The Notebook"
    assert library.tracks["creek"].corners == ()
    assert library.garages["sedan"].simulation.version == ""
    assert library.requests["one"].received is None
    garage = library.garages["sedan"]
    for track in library.tracks.values():
        assert effect_of(garage, track, "spring.rr", "raise", "middle") == "looser"
        assert effect_of(garage, track, "spring.lr", "raise", "middle") is None  # nobody says how steep it is
