"""The page of test laps and the chart: what is said is what the record says, and nothing is dropped silently."""

from __future__ import annotations

import os
import re
import struct
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from producer.basics.units import Quantity
from producer.model.dossier import Dossier
from producer.model.guide import Change
from producer.model.stints import Interval, Total
from producer.model.tyre_readings import Tyres
from producer.outputs import stints
from producer.outputs.laps_picture import finding, laps_picture, laps_sheet
from producer.render.kit import Kit
from tests.outputs.driven import comparison, driven, evidence, stint
from tests.render.charts.laws import troubles

GOLDEN = Path(__file__).parent / "golden" / "laps.svg"


def files(dossier: Dossier, kit: Kit) -> dict[str, bytes]:
    return {one.path: one.data for one in stints.documents(dossier, kit)}


def page(dossier: Dossier, kit: Kit) -> str:
    return files(dossier, kit)["stints.html"].decode("utf-8")


def plain(html: str) -> str:
    return " ".join(re.sub(r"<[^>]*>", " ", html.partition("<body>")[2]).split())


def test_the_chart_is_as_it_was_agreed(dossier: Dossier, kit: Kit) -> None:
    """`UPDATE_GOLDEN=1` writes it anew; look at it before it is committed."""
    made = files(driven(dossier), kit)["laps.svg"]
    if os.environ.get("UPDATE_GOLDEN"):
        GOLDEN.write_bytes(made)
    assert made.decode("utf-8") == GOLDEN.read_text(encoding="utf-8")


def test_a_page_and_the_chart_twice(dossier: Dossier, kit: Kit) -> None:
    made = files(driven(dossier), kit)
    assert list(made) == ["stints.html", "laps.svg", "laps.png"]
    # Width and height as the header of a PNG says (PNG specification, IHDR): the shape of a video.
    assert struct.unpack(">II", made["laps.png"][16:24]) == (1920, 1080)
    assert files(driven(dossier), Kit()) == made


@pytest.mark.parametrize("none", [None, evidence()])
def test_without_test_laps_there_is_nothing(dossier: Dossier, kit: Kit, none: object) -> None:
    assert files(replace(dossier, evidence=none), kit) == {}  # type: ignore[arg-type]


def test_the_title_says_the_finding_and_the_alt_text_too(dossier: Dossier, kit: Kit) -> None:
    found = laps_picture(driven(dossier))
    assert found is not None
    assert found.title == "Long run is ahead from lap 19"
    assert (
        found.wide.alt
        == found.narrow.alt
        == ("Long run is ahead from lap 19. In total time the long run is ahead from about lap 19.")
    )
    sheet = laps_sheet(driven(dossier))
    assert sheet is not None
    said = [one.text for one in sheet.texts]
    assert "Long run is ahead from lap 19" in said
    assert dossier.channel.caution in said
    assert any("Marrow Creek, Grand Sedan" in one and "episode\u00a07" in one for one in said)
    for drawing in (found.wide, found.narrow, sheet):
        assert troubles(drawing) == []


def test_every_lap_left_out_is_named_with_its_reason(dossier: Dossier, kit: Kit) -> None:
    text = plain(page(driven(dossier), kit))
    assert "Short run lap 1 (out lap), 7 (traffic); Long run lap 1 (out lap), 7 (traffic)." in text
    assert text.count("Left out: 1 (out lap), 7 (traffic).") == 2
    clean = evidence(stint("short", "Short run", laps=tuple(x for x in stint("short", "Short run").laps if x.kept)))
    assert "eft out" not in plain(page(driven(dossier, clean), kit))


def test_what_may_be_claimed_and_what_not(dossier: Dossier, kit: Kit) -> None:
    text = plain(page(driven(dossier), kit))
    assert "What may be claimed The long run saves its tires." in text
    assert "What may not Nothing about more than 20 laps." in text
    assert "Equal pace at lap 10 (95 %: lap 6 to 13, Fieller)." in text
    assert "Keep in mind The color of the flag was green." in text


def test_tyres_are_told_in_the_order_of_the_car(dossier: Dossier, kit: Kit) -> None:
    text = plain(page(driven(dossier), kit))
    assert "Tire Outside Middle Inside Spread Used LF 12 % RF 201 °F 206 °F 211 °F 10 °F 24 %" in text
    assert "Right front: the tire is hotter in the middle" in text
    tyres = stint("short", "Short run").tyres
    worn = evidence(stint("short", "Short run", tyres=replace(tyres, temperatures=())))
    assert "Tire Used LF 12 % RF 24 %" in plain(page(driven(dossier, worn), kit))
    hot = evidence(stint("short", "Short run", tyres=replace(tyres, wear=None)))
    assert "Tire Outside Middle Inside Spread RF 201 °F 206 °F 211 °F 10 °F Right" in plain(
        page(driven(dossier, hot), kit)
    )
    bare = evidence(stint("short", "Short run", tyres=Tyres()))
    assert "Outside" not in plain(page(driven(dossier, bare), kit))


def test_which_tyre_gives_up_first_and_the_click_that_answers_a_finding(dossier: Dossier, kit: Kit) -> None:
    setting = dossier.first.setting("pressure.rf")
    start = dossier.first.values["pressure.rf"]
    to = setting.grid.moved(start, -1)
    assert to is not None
    change = Change("pressure.rf", start, to, -1, setting.unit, "rule", 4)
    tyres = stint("short", "Short run").tyres
    worn = replace(tyres.wear, text="The right front tyre gives up first: 24 % used.") if tyres.wear else None
    hot = replace(tyres, wear=worn, findings=(replace(tyres.findings[0], change=change),))
    text = plain(page(driven(dossier, evidence(stint("short", "Short run", tyres=hot))), kit)).replace("\u00a0", " ")
    assert "The right front tire gives up first: 24 % used. Right front: the tire is hotter" in text
    said = f"wants less air. One click: {setting.name} from {setting.figure(start)} to {setting.shown(to)}."
    assert said.replace("\u00a0", " ") in text


@pytest.mark.parametrize(
    ("fuel", "noted", "says"),
    [
        (Quantity(Decimal(18), "gal"), "17.6", "18 gal of fuel at the start"),
        (None, "17.6", "17.6 gal of fuel on lap 2"),
        (None, None, ""),
    ],
)
def test_fuel_is_told_as_it_is_known(
    dossier: Dossier, kit: Kit, fuel: Quantity | None, noted: str | None, says: str
) -> None:
    laps = [replace(one, fuel=Decimal(noted)) if noted and one.number > 1 else one for one in stint("short", "S").laps]
    told = evidence(stint("short", "Short run", laps=tuple(laps), fuel=fuel))
    text = plain(page(driven(dossier, told), kit)).replace("\u00a0", " ")
    assert says in text
    assert ("of fuel" in text) is bool(says)


def test_it_is_spelled_the_channel_s_way(dossier: Dossier, kit: Kit) -> None:
    british = replace(dossier, channel=dossier.channel.model_copy(update={"spelling": "uk"}))
    text = page(driven(british), kit)
    assert '<html lang="en-GB">' in text
    assert "The long run saves its tyres." in text
    assert "The colour of the flag" in text
    assert "tire" not in plain(text).replace("Tire use", "").replace("entire", "")


def test_what_cannot_be_compared_has_no_marks_and_says_why(dossier: Dossier, kit: Kit) -> None:
    apart = comparison(
        comparable=False, why_not=("The weather was another one.",), may=(), crossover_lap=None, ahead_from_lap=None,
        crossover_text="", ahead_text="", title="Short run and long run cannot be compared",
    )  # fmt: skip
    told = driven(dossier, evidence(stint("short", "Short run"), stint("long", "Long run"), compared=apart))
    found = laps_picture(told)
    assert found is not None
    assert not [one for one in found.wide.dots if one.look == "ink"]
    assert "The weather was another one." in found.notes
    assert "What may not The weather was another one." in plain(page(told, kit))


def test_without_a_crossing_nothing_is_marked(dossier: Dossier) -> None:
    never = comparison(crossover_lap=None, interval=None, ahead_from_lap=None, ahead_interval=None)
    found = laps_picture(
        driven(dossier, evidence(stint("short", "Short run"), stint("long", "Long run"), compared=never))
    )
    assert found is not None
    assert not [one for one in found.wide.dots if one.look == "ink"]
    one_mark = laps_picture(
        driven(dossier, evidence(stint("short", "Short run"), compared=comparison(ahead_from_lap=None)))
    )
    assert one_mark is not None
    assert len([one for one in one_mark.wide.dots if one.look == "ink"]) == 1


def test_the_mark_is_the_first_setup_s_where_it_is_the_one_that_passes(dossier: Dossier) -> None:
    turned = comparison(
        falloff_difference=0.01, ahead_from_lap=None, ahead_interval=None, first_ahead_from=15,
        first_ahead_interval=(11, 18), totals=(Total(20, 0.9, Interval(0.2, 1.6)),),
    )  # fmt: skip
    found = laps_picture(driven(dossier, evidence(stint("short", "Short run"), compared=turned)))
    assert found is not None
    marks = [one.text for one in found.wide.texts if "lap " in one.text]
    assert marks == ["equal pace at lap 10", "ahead in total from lap 15"]


def test_what_chance_may_have_done_is_not_marked(dossier: Dossier) -> None:
    level = comparison(totals=(Total(20, -0.1, Interval(-0.9, 0.7)),))
    found = laps_picture(driven(dossier, evidence(stint("short", "Short run"), compared=level)))
    assert found is not None
    assert [one.text for one in found.wide.texts if "lap " in one.text] == ["equal pace at lap 10"]


def test_one_setup_alone_says_what_it_loses(dossier: Dossier, kit: Kit) -> None:
    made = files(driven(dossier, evidence(stint("short", "Short run"))), kit)
    assert "Short run loses 0.030 s a lap" in made["laps.svg"].decode("utf-8").replace("\u00a0", " ")


@pytest.mark.parametrize("interval", [None, Interval(-0.01, 0.07)])
def test_falloff_in_doubt_is_no_finding(dossier: Dossier, interval: Interval | None) -> None:
    alone = evidence(stint("short", "Short run"))
    doubtful = replace(alone.lines[0], robust=replace(alone.lines[0].robust, slope_interval=interval))
    found = replace(alone, lines=(doubtful,))
    assert finding(dossier, found) == "Short run: no falloff that these laps could tell"


def test_too_few_laps_for_a_line_leave_the_page_without_a_chart(dossier: Dossier, kit: Kit) -> None:
    short = stint("short", "Short run", last=2, pace=None, refusal="one lap counts", may=(), may_not=("Too few laps.",))
    made = files(driven(dossier, evidence(short)), kit)
    assert list(made) == ["stints.html"]
    assert "What may not Too few laps." in plain(made["stints.html"].decode("utf-8"))


def test_several_stints_of_a_setup_have_numbers(dossier: Dossier, kit: Kit) -> None:
    several = evidence(stint("short", "Short run"), stint("short", "Short run", 2), stint("long", "Long run"))
    text = page(driven(dossier, several), kit)
    assert 'id="stint-short-2"' in text
    assert "Short run, stint 2, lap 1 (out lap)" in plain(text)
    assert "Long run lap 1 (out lap)" in plain(text)


def test_names_of_the_author_stay_text(dossier: Dossier, kit: Kit) -> None:
    odd = evidence(stint("short", '<script>alert("1")</script>'))
    made = files(driven(dossier, odd), kit)
    for name in ("stints.html", "laps.svg"):
        assert "<script>alert" not in made[name].decode("utf-8")
        assert "&lt;script&gt;" in made[name].decode("utf-8")
