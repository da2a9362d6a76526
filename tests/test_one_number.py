"""One number, one source: each value of a setup is the same figure wherever it is shown, and all follow one change."""

from __future__ import annotations

import re
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


def another(setting: Setting, whole: Dossier) -> Decimal:
    """A value some clicks off that no setup has: the next click stands in the line about the gears."""
    taken = {sheet.values[setting.address] for sheet in whole.sheets}
    for clicks in (3, -3, 4, -4, 2, -2, 1, -1):
        moved = setting.grid.moved(whole.first.values[setting.address], clicks)
        if moved is not None and moved not in taken:
            return moved
    raise AssertionError(f"{setting.address} has no room for another value")


def count(figure: str, text: str) -> int:
    """How often a figure stands by itself, not as a part of a longer one."""
    return len(re.findall(rf"(?<![\d.,:{MINUS}-]){re.escape(figure)}(?!\d|[.,]\d|:\d\d)", text))


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
    for address, setting in whole.garage.settings.items():
        new = another(setting, whole)
        place = whole.episode.setups[0].place("values", *address.split("."))
        lines = original.splitlines(keepends=True)
        row = lines[place.line - 1]
        start, end = place.column - 1, place.column - 1 + place.width
        lines[place.line - 1] = row[:start] + plain(new, setting.decimals) + row[end:]
        path.write_text("".join(lines), encoding="utf-8", newline="\n")
        after = texts(whole_of(library), library)
        for name in WHERE:
            figure = setting.figure(new)
            assert count(figure, after[name]) > count(figure, before[name]), f"{address} = {figure} in {name}"
        data = YAML(typ="safe", pure=True).load(after["card-short.yaml"])
        assert Decimal(str(data["values"][address]["value"])) == new
