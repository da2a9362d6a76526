"""One number, one source: each value of a setup is the same figure wherever it is shown, and all follow one change."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path

import pytest
from ruamel.yaml import YAML

from producer.basics.figures import MINUS, plain
from producer.handling.guide_json import json_number
from producer.jobs.dossier import dossier
from producer.jobs.kit import kit_for
from producer.library.load import load
from producer.model.dossier import Dossier
from producer.model.garage import Setting
from producer.outputs import captions, card, notes, script

EPISODE = "marrow-creek-grand-sedan"
WHERE = ("card-short.txt", "card-short.html", "notes.txt", "captions.csv", "captions.srt", "script.md", "script.html")


def whole_of(root: Path) -> Dossier:
    library, findings = load(root)
    assert findings == []
    whole = dossier(library.case(library.episodes[EPISODE]))
    assert whole is not None
    return whole


def texts(whole: Dossier, root: Path) -> dict[str, str]:
    kit = kit_for(root)
    made = (*card.texts_of(whole, kit, whole.first.id), *notes.documents(whole, kit))
    made = (*made, *captions.documents(whole, kit), *script.documents(whole, kit))
    return {one.path: one.data.decode("utf-8") for one in made}


def unused(setting: Setting, value: Decimal, shown: str) -> Decimal:
    """A value on the grid whose figure stands nowhere yet."""
    for clicks in _outward():
        moved = setting.grid.moved(value, clicks)
        if moved is not None and setting.figure(moved) not in shown:
            return moved
        if abs(clicks) > 2000:
            break
    pytest.skip(f"every figure of {setting.address} stands somewhere already")


def _outward() -> Iterator[int]:
    for distance in range(1, 2002):
        yield distance
        yield -distance


@pytest.fixture(scope="module")
def as_it_is(demo: Path) -> tuple[Dossier, dict[str, str]]:
    whole = whole_of(demo)
    return whole, texts(whole, demo)


def test_every_value_stands_everywhere(as_it_is: tuple[Dossier, dict[str, str]]) -> None:
    whole, made = as_it_is
    for address in whole.garage.settings:
        for name in WHERE:
            assert whole.first.figure(address) in made[name], f"{address} in {name}"


def test_the_data_file_has_every_value(as_it_is: tuple[Dossier, dict[str, str]]) -> None:
    whole, made = as_it_is
    data = YAML(typ="safe", pure=True).load(made["card-short.yaml"])
    for address, value in whole.first.values.items():
        written = data["values"][address]["value"]
        assert Decimal(str(written)) == value, address


def test_the_guide_starts_from_the_sheet(as_it_is: tuple[Dossier, dict[str, str]]) -> None:
    whole, _ = as_it_is
    for sheet in whole.sheets:
        for row in whole.guides[sheet.id].rows:
            for change in row.changes:
                assert change.start == sheet.values[change.parameter]
                assert json_number(change.start) == float(sheet.values[change.parameter])


def test_one_change_is_followed_everywhere(library: Path, as_it_is: tuple[Dossier, dict[str, str]]) -> None:
    path = library / EPISODE / "episode.yaml"
    original = path.read_text(encoding="utf-8")
    whole, before = as_it_is
    followed = 0
    for address, setting in whole.garage.settings.items():
        old = whole.first.values[address]
        new = unused(setting, old, "".join(before.values()))
        place = whole.episode.setups[0].place("values", *address.split("."))
        lines = original.splitlines(keepends=True)
        row = lines[place.line - 1]
        start, end = place.column - 1, place.column - 1 + place.width
        lines[place.line - 1] = row[:start] + plain(new, setting.decimals) + row[end:]
        path.write_text("".join(lines), encoding="utf-8", newline="\n")
        after = texts(whole_of(library), library)
        for name in (*WHERE, "card-short.yaml"):
            figure = setting.figure(new)
            figure = figure.replace(MINUS, "-") if name == "card-short.yaml" else figure
            assert figure.rstrip("0").rstrip(".") in after[name], f"{address} = {figure} in {name}"
        followed += 1
    assert followed == len(whole.garage.settings)
