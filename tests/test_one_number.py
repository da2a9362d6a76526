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
from producer.jobs.stints import as_json, as_text
from producer.jobs.stints import stints as read_stints
from producer.library.load import load
from producer.model.dossier import Dossier
from producer.model.garage import Setting
from producer.model.stints import Comparison
from producer.outputs import captions, card, notes, outline, script, stints

EPISODE = "marrow-creek-grand-sedan"
WHERE = ("card-short.txt", "card-short.html", "notes.txt", "captions.csv", "captions.srt", "script.md", "script.html")


@pytest.fixture
def planned(library: Path) -> Path:
    """The copy before the take, in which a page was left out: all that is planned is shown."""
    (library / EPISODE / "take.srt").unlink()
    return library


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


def test_one_change_is_followed_everywhere(planned: Path) -> None:
    path = planned / EPISODE / "episode.yaml"
    original = path.read_text(encoding="utf-8")
    whole = whole_of(planned)
    before = texts(whole, planned)
    for address, setting in whole.garage.settings.items():
        new = another(setting, whole)
        place = whole.episode.setups[0].place("values", *address.split("."))
        lines = original.splitlines(keepends=True)
        row = lines[place.line - 1]
        start, end = place.column - 1, place.column - 1 + place.width
        lines[place.line - 1] = row[:start] + plain(new, setting.decimals) + row[end:]
        path.write_text("".join(lines), encoding="utf-8", newline="\n")
        after = texts(whole_of(planned), planned)
        for name in WHERE:
            figure = setting.figure(new)
            assert count(figure, after[name]) > count(figure, before[name]), f"{address} = {figure} in {name}"
        data = YAML(typ="safe", pure=True).load(after["card-short.yaml"])
        assert Decimal(str(data["values"][address]["value"])) == new


SHOWS_LAPS = (
    "script.md", "script.html", "notes.txt", "outline.md", "stints.html", "captions.srt", "captions.csv",
    "card-long.txt", "card-long.html", "card-long.yaml", "terminal", "json",
)  # fmt: skip


def laps_texts(root: Path) -> tuple[Comparison, dict[str, str]]:
    """What two setups' laps say, and everything that shows it, its units and line ends made alike."""
    whole, kit = whole_of(root), kit_for(root)
    made = [*script.documents(whole, kit), *notes.documents(whole, kit), *outline.documents(whole, kit)]
    made += [*captions.documents(whole, kit), *stints.documents(whole, kit), *card.texts_of(whole, kit, "long")]
    found = {one.path: one.data.decode("utf-8") for one in made if one.path in SHOWS_LAPS}
    asked = read_stints(root, EPISODE)
    found |= {"terminal": as_text(asked), "json": as_json(asked)}
    assert whole.evidence is not None
    assert whole.evidence.comparison is not None
    return whole.evidence.comparison, {name: alike(text) for name, text in found.items()}


def alike(text: str) -> str:
    bare = re.sub(r"</?b>|\*\*", "", text).replace("\u00a0seconds", " s")
    return re.sub(r"[\s/]+", " ", bare)


def shown(found: Comparison) -> list[str]:
    """The figures that are told: what is lost first and won in the end, and the laps between."""
    totals = [f"{one.figures[0]} s {one.way}, give or take {one.figures[1]}" for one in found.telling]
    assert len(totals) == 2
    assert found.crossover_lap is not None
    return [*totals, f"about lap {round(found.crossover_lap)}", f"about lap {found.ahead_from_lap}"]


def slower(root: Path, by: str) -> None:
    """Every lap of the long run as much slower."""
    path = root / EPISODE / "stints" / "long-1.csv"
    rows = [row.split(",") for row in path.read_text(encoding="utf-8").splitlines()]
    for row in rows[1:]:
        row[1] = str(Decimal(row[1]) + Decimal(by))
    path.write_text("".join(",".join(row) + "\n" for row in rows), encoding="utf-8", newline="\n")


def test_what_the_laps_say_is_the_same_everywhere_and_follows_the_laps(library: Path) -> None:
    channel = library / "channel.yaml"
    channel.write_text(channel.read_text(encoding="utf-8") + "card: { test_laps: yes }\n", encoding="utf-8")
    before, was = laps_texts(library)
    slower(library, "0.020")
    after, now = laps_texts(library)
    for name in SHOWS_LAPS:
        for old, new in zip(shown(before), shown(after), strict=True):
            assert old != new
            assert old in was[name], f"{old} in {name}"
            assert new in now[name], f"{new} in {name}"
        assert shown(before)[0] not in now[name]


def test_the_laps_change_no_card_s_digest(library: Path) -> None:
    stamps = whole_of(library).stamps
    slower(library, "0.020")
    assert whole_of(library).stamps == stamps


@pytest.mark.parametrize(
    "episode",
    ["gannet-bowl-grand-sedan", "lantern-flats-club-coupe", "marrow-creek-club-coupe", "marrow-creek-grand-sedan"],
)
def test_what_is_told_aloud_is_what_may_be_claimed(demo: Path, episode: str) -> None:
    """Each sentence about the clock has its match, figure for figure, among what the laps carry."""
    library, _ = load(demo)
    whole = dossier(library.case(library.episodes[episode]))
    assert whole is not None
    assert whole.evidence is not None
    (section,) = (one for one in whole.narration.sections if one.id == "laps")
    carried = [set(figures_in(text)) for one in whole.evidence.comparisons for text in one.may]
    doubtful = [set(figures_in(text)) for one in whole.evidence.comparisons for text in one.may_not]
    told = [one for passage in section.passages if passage.kind == "laps" for one in passage.text.split(". ")]
    assert told
    for sentence in told:
        found = set(figures_in(sentence))
        if "cannot be told apart" in sentence:
            assert any(found <= one for one in doubtful), sentence
        else:
            assert found in carried, sentence


def figures_in(text: str) -> list[str]:
    return re.findall(r"\d+(?:\.\d+)?|\b(?:ten|twenty|forty) laps|faster|slower|quicker|ahead", text)
