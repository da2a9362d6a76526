"""The adjustment guide: to read as a table and a page, and as the data that other programs rely on."""

from __future__ import annotations

import json
import os
import re
from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from producer.basics.figures import NO_BREAK
from producer.basics.spelling import spell
from producer.model.dossier import Dossier
from producer.model.guide import Change, Guide, GuideRow
from producer.model.opinion import Opinion, PhaseOpinion
from producer.model.words import FEELS, PHASES, Effect, Feel, Phase
from producer.outputs import guide
from producer.outputs.guide import Step, view
from producer.render.kit import Kit
from producer.render.markdown import to_html
from tests.outputs.dossiers import sample_dossier
from tests.outputs.modelled import HALF, modelled_dossier

GOLDEN = Path(__file__).parent / "golden"
KEYS = {"parameter", "from", "to", "clicks", "unit", "voice", "agreement", "effects", "headroom", "also"}
SILENT: dict[Phase, Effect | None] = {"entry": None, "middle": None, "exit": None}


def texts(dossier: Dossier, kit: Kit) -> dict[str, str]:
    return {one.path: one.data.decode("utf-8") for one in guide.documents(dossier, kit)}


def steps(dossier: Dossier, setup: str, feel: Feel, where: Phase) -> tuple[Step, ...]:
    found = next(one for one in view(dossier).setups if one.id == setup)
    return next(one.steps for one in found.complaints if one.id == f"{setup}-{feel}-{where}")


def change(**parts: Any) -> Change:
    usual: dict[str, Any] = {
        "parameter": "spring.rf", "start": Decimal(700), "to": Decimal(725), "clicks": 1, "unit": "lb/in",
        "voice": "rule", "headroom": 3,
    }  # fmt: skip
    return Change(**{**usual, **parts})


def with_change(dossier: Dossier, one: Change | None, feel: Feel = "loose", where: Phase = "entry") -> Dossier:
    """The dossier with that change alone in one row of the first setup, and nothing in the others."""
    rows = tuple(
        GuideRow(a, b, (one,) if one is not None and (a, b) == (feel, where) else ()) for a in FEELS for b in PHASES
    )
    first = dossier.first.id
    return replace(dossier, guides={**dossier.guides, first: Guide(dossier.episode.episode, first, rows)})


def shown(dossier: Dossier, feel: Feel = "loose", where: Phase = "entry", **parts: Any) -> Step:
    (step,) = steps(with_change(dossier, change(**parts), feel, where), dossier.first.id, feel, where)
    return step


def table(markdown: str) -> list[list[str]]:
    """The cells of every row of every table, as a reader of Markdown sees them."""
    rows = re.findall(r"<tr>(.*?)</tr>", to_html(markdown), re.DOTALL)
    return [re.findall(r"<t[dh][^>]*>(.*?)</t[dh]>", one, re.DOTALL) for one in rows]


@pytest.fixture(scope="module")
def modelled() -> Dossier:
    return modelled_dossier()


@pytest.mark.parametrize("name", ["guide.md", "guide-with-model.md"])
def test_the_table_is_as_it_was_agreed(dossier: Dossier, modelled: Dossier, kit: Kit, name: str) -> None:
    """`UPDATE_GOLDEN=1` writes it anew; read the difference before it is committed."""
    made = texts(dossier if name == "guide.md" else modelled, kit)["guide.md"]
    if os.environ.get("UPDATE_GOLDEN"):
        (GOLDEN / name).write_bytes(made.encode("utf-8"))
    assert made == (GOLDEN / name).read_text(encoding="utf-8")


def test_there_is_a_page_a_table_and_data_for_each_setup(dossier: Dossier, kit: Kit) -> None:
    assert list(texts(dossier, kit)) == ["guide.md", "guide.html", "guide.json", "guide-short.json", "guide-long.json"]


def test_the_data_is_that_of_the_guide(dossier: Dossier, kit: Kit) -> None:
    made = texts(dossier, kit)
    assert made["guide.json"] == made["guide-short.json"]
    for setup in ("short", "long"):
        data = json.loads(made[f"guide-{setup}.json"])
        assert (data["format"], data["episode"], data["setup"]) == (1, "marrow-creek-grand-sedan", setup)
        assert [(one["feels"], one["where"]) for one in data["rows"]] == [(a, b) for a in FEELS for b in PHASES]
        for row, written in zip(dossier.guides[setup].rows, data["rows"], strict=True):
            for one, line in zip(row.changes, written["changes"], strict=True):
                assert set(line) >= KEYS
                assert line["parameter"] == one.parameter
                assert (Decimal(str(line["from"])), Decimal(str(line["to"]))) == (one.start, one.to)
                assert (line["clicks"], line["headroom"], line["voice"]) == (one.clicks, one.headroom, one.voice)
                assert line["effects"] == {"entry": None, "middle": None, "exit": None}


def test_page_and_table_say_every_change_of_every_setup(dossier: Dossier, kit: Kit) -> None:
    made = texts(dossier, kit)
    told = [step for setup in view(dossier).setups for one in setup.complaints for step in one.steps]
    assert len(told) == sum(len(row.changes) for one in dossier.guides.values() for row in one.rows) > 20
    rows = table(made["guide.md"])
    assert [len(one) for one in rows] == [6] * len(rows)
    body = [one for one in rows if one[0] != "When the car is"]
    assert [one[2] for one in body] == [f"{x.start} to <strong>{x.to}</strong>, {x.clicks}" for x in told]
    for step in told:
        assert f'<span class="start">{step.start} to</span> <span class="to">{step.to}</span>' in made["guide.html"]


def test_the_author_comes_first_and_is_quoted(dossier: Dossier, kit: Kit) -> None:
    first, *_ = steps(dossier, "short", "tight", "middle")
    assert (first.name, first.start, first.to) == ("Cross weight", "52.0", f"51.5{NO_BREAK}%")
    assert (first.said, first.voice, first.by_author) == ("Take half a percent out.", "Jo", True)
    made = texts(dossier, kit)
    assert "“Take half a percent out.”" in made["guide.md"]
    assert "“Take half a percent out.”" in made["guide.html"]


def test_a_rule_is_called_one_and_quotes_nobody(dossier: Dossier) -> None:
    ruled = [x for one in view(dossier).setups for row in one.complaints for x in row.steps if not x.by_author]
    assert ruled
    assert {(one.voice, one.said) for one in ruled} == {("rule", "")}


@pytest.mark.parametrize(
    ("conditions", "only"),
    [
        ({"tyres": "worn"}, "on worn tires"),
        ({"device": "pad"}, "with a pad"),
        ({"tyres": "new", "device": "wheel"}, "on new tires, with a wheel"),
        ({}, ""),
    ],
)
def test_for_whom_a_change_is(dossier: Dossier, conditions: dict[str, str], only: str) -> None:
    assert shown(dossier, voice="author", **conditions).only == only


@pytest.mark.parametrize(
    ("rule", "effects"),
    [
        ({"entry": "tighter", "middle": "tighter", "exit": "tighter"}, "Also tighter in the middle and on exit."),
        ({"entry": "tighter", "middle": "tighter"}, "Also tighter in the middle."),
        ({"entry": "tighter", "exit": "looser"}, "Looser on exit."),
        (
            {"entry": "tighter", "middle": "tighter", "exit": "looser"},
            "Also tighter in the middle, but looser on exit.",
        ),
        # Only a garage that says so settles that nothing happens; silence is no promise.
        ({"entry": "tighter", "middle": "none", "exit": "none"}, "Nothing elsewhere."),
        ({"entry": "tighter"}, "No rule for the rest of the corner."),
        ({"entry": "tighter", "middle": "none"}, "No rule for the rest of the corner."),
        ({}, "No rule speaks of it."),
    ],
)
def test_what_else_it_does(dossier: Dossier, rule: dict[Phase, Effect], effects: str) -> None:
    assert shown(dossier, rule={**SILENT, **rule}).effects == effects


@pytest.mark.parametrize(
    ("clicks", "headroom", "said", "room"),
    [
        (1, 3, "1 click up", "3 clicks left"),
        (-2, 1, "2 clicks down", "1 click left"),
        (1, 0, "1 click up", "none left, it is the limit"),
    ],
)
def test_clicks_and_room(dossier: Dossier, clicks: int, headroom: int, said: str, room: str) -> None:
    step = shown(dossier, clicks=clicks, headroom=headroom)
    assert (step.clicks, step.room) == (said, room)


def test_a_feel_without_a_change_says_so_and_keeps_its_row(dossier: Dossier, kit: Kit) -> None:
    made = texts(with_change(dossier, None), kit)
    for name in ("guide.md", "guide.html"):
        assert made[name].count("No rule speaks of it, or nothing is left inside the limits.") == len(FEELS) * len(
            PHASES
        )
        assert "No rule speaks of it" not in texts(dossier, kit)[name]
    assert {len(one) for one in table(made["guide.md"])} == {6}


def test_an_untested_setup_is_marked_in_both(dossier: Dossier, kit: Kit) -> None:
    setup = dossier.first.setup.model_copy(update={"tested": False})
    made = texts(replace(dossier, sheets=(replace(dossier.first, setup=setup), *dossier.others)), kit)
    for name in ("guide.md", "guide.html"):
        assert made[name].count("Untested: nobody has driven these numbers yet.") == 1
        assert "Untested" not in texts(dossier, kit)[name]


def test_words_of_the_author_stay_words(dossier: Dossier, kit: Kit) -> None:
    odd = "a | pipe, a * star, <script>alert(1)</script>\nand a # second line"
    made = texts(with_change(dossier, change(voice="author", say=odd)), kit)
    plain = "a | pipe, a * star, &lt;script&gt;alert(1)&lt;/script&gt; and a # second line"
    (cell,) = [one[3] for one in table(made["guide.md"]) if len(one) == 6 and "pipe" in one[3]]
    assert f"“{plain}”" in cell
    assert f"“{plain}”" in made["guide.html"]
    # A viewer of Markdown that lets HTML through gets none either.
    assert not re.search(r"(?<!\\)<", made["guide.md"])


def test_spelling_follows_the_channel(dossier: Dossier, kit: Kit) -> None:
    british = replace(dossier, channel=dossier.channel.model_copy(update={"spelling": "uk"}))
    worn = change(voice="author", tyres="worn", also="the right front tyre works harder")
    american_page, british_page = (texts(with_change(one, worn), kit)["guide.html"] for one in (dossier, british))
    assert "on worn tires" in american_page
    assert "tyre" not in american_page
    assert "The right front tyre works harder." in british_page
    assert 'lang="en-GB"' in british_page


@pytest.mark.parametrize("name", ["guide.md", "guide.html"])
def test_revision_conditions_and_caution_are_on_it(name: str, kit: Kit) -> None:
    dossier = sample_dossier(revision=2)
    made = texts(dossier, kit)[name]
    assert "Revision 2, 2026-11-20" in made
    assert "tested with version 2.4" in made
    for line in dossier.conditions:
        assert f"{spell(line.name, 'us')}: {line.value}" in made
    assert made.index(dossier.channel.caution) > max(made.rindex(one.name) for one in dossier.sheets)


def test_every_link_of_the_page_leads_somewhere(dossier: Dossier, kit: Kit) -> None:
    page = texts(dossier, kit)["guide.html"]
    links = re.findall(r'href="#([^"]+)"', page)
    assert len(links) == len(dossier.sheets) * len(FEELS) * len(PHASES)
    ids = re.findall(r'\bid="([^"]+)"', page)
    assert len(set(ids)) == len(ids)
    assert set(links) <= set(ids)


# --- the third voice ---

SURE = PhaseOpinion(0.99, 0.01, 0.5, "rf")
AGAINST = PhaseOpinion(0.03, 0.97, -0.5, "rr")
DOUBT = PhaseOpinion(0.6, 0.4, 0.1, "rf")
NOTHING = PhaseOpinion(0.0, 0.0, 0.0)
SMALL = PhaseOpinion(1.0, 0.0, 0.001, "rf")


def test_page_and_table_say_what_the_model_makes_of_each_change(modelled: Dossier, kit: Kit) -> None:
    made = texts(modelled, kit)
    told = [step for setup in view(modelled).setups for one in setup.complaints for step in one.steps]
    assert {bool(one.model) for one in told} == {True, False}
    rows = [one for one in table(made["guide.md"]) if one[0] != "When the car is"]
    for step, cells in zip(told, rows, strict=True):
        assert cells[5] == (f"{step.voice}; {step.model}" if step.model else step.voice)
        assert cells[3].endswith(step.much or "")
        if step.much:
            assert f'<p class="much">{step.much}</p>' in made["guide.html"]
    for step in told:
        if step.model:
            assert f"; {step.model}</td>" in made["guide.html"]


@pytest.mark.parametrize(
    ("opinion", "model", "much"),
    [
        (
            SURE,
            "the model agrees (99 of 100 cars)",
            "By the model about as much as one percent of cross weight; the right front tire pays.",
        ),
        (SMALL, "the model agrees (all cars)", "By the model hardly enough to feel."),
        (DOUBT, "the model: depends on the car (60 of 100)", ""),
        (AGAINST, "the model is against it (97 of 100 cars)", ""),
        (NOTHING, "the model: nothing happens", ""),
    ],
)
def test_what_the_model_says_of_a_change(modelled: Dossier, opinion: PhaseOpinion, model: str, much: str) -> None:
    step = shown(modelled, opinion=Opinion(opinion, NOTHING, NOTHING), rule={**SILENT, "entry": "tighter"})
    assert (step.voice, step.model, step.much) == ("rule", model, much)


def test_for_a_tight_car_the_model_agrees_with_looser(modelled: Dossier) -> None:
    step = shown(modelled, "tight", "exit", opinion=Opinion(NOTHING, NOTHING, AGAINST))
    assert step.model == "the model agrees (97 of 100 cars)"
    assert step.much.endswith("the right rear tire pays.")


def test_where_the_garage_settles_it_the_model_is_not_asked(modelled: Dossier) -> None:
    step = shown(modelled, opinion=Opinion(SURE, SURE, SURE), rule={**SILENT, "entry": "none"})
    assert (step.model, step.much) == ("", "")


def test_without_an_opinion_only_the_others_speak(dossier: Dossier, modelled: Dossier, kit: Kit) -> None:
    step = shown(modelled)
    assert (step.voice, step.model, step.much) == ("rule", "", "")
    for name in ("guide.md", "guide.html"):
        assert "model" not in re.sub(r"<style>.*?</style>", "", texts(dossier, kit)[name], flags=re.DOTALL).lower()


@pytest.mark.parametrize(("spelling", "word"), [("us", "tire"), ("uk", "tyre")])
def test_the_legend_tells_whose_voices_they_are(modelled: Dossier, spelling: str, word: str) -> None:
    whole = replace(modelled, channel=modelled.channel.model_copy(update={"spelling": spelling}))
    legend = " ".join(view(whole).legend)
    assert "What Jo says is advice for this very setup; a rule is one click by the usual rule" in legend
    assert "The chassis model is a second opinion and decides nothing" in legend
    assert f"which {word} pays" in legend
    assert f"the right rear {word} pays" in " ".join(one.much for one in steps(whole, "short", "tight", "entry"))


def test_a_size_without_a_measure_is_not_told(modelled: Dossier) -> None:
    bare = {setup: replace(one, half_percent={}) for setup, one in modelled.opinions.items()}
    step = shown(replace(modelled, opinions=bare), opinion=Opinion(SURE, NOTHING, NOTHING))
    assert (step.model, step.much) == ("the model agrees (99 of 100 cars)", "")
    assert set(HALF) == set(PHASES)
