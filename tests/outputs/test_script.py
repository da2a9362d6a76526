"""The script as Markdown and as the page to read from: the same words in both."""

from __future__ import annotations

import re
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.jobs.dossier import dossier as whole_dossier
from producer.library.load import load
from producer.model.dossier import Dossier
from producer.model.script import Narration, Passage, Section
from producer.outputs import script
from producer.outputs.script import figure_runs, view
from producer.render.kit import Kit
from producer.render.markdown import to_html
from producer.script.pace import timeline


class Words(HTMLParser):
    """The words of the elements of a class, and every address the page names."""

    def __init__(self) -> None:
        super().__init__()
        self.told: list[str] = []
        self.addresses: list[str] = []
        self.inside = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        found = dict(attrs)
        if tag == "p":
            self.inside = "told" in (found.get("class") or "")
            self.told += [""] if self.inside else []
        self.addresses += [value for name, value in attrs if name in {"src", "href"} and value]

    def handle_data(self, data: str) -> None:
        if self.inside:
            self.told[-1] += data

    def handle_endtag(self, tag: str) -> None:
        self.inside = self.inside and tag != "p"


def files(dossier: Dossier, kit: Kit) -> dict[str, str]:
    return {one.path: one.data.decode("utf-8") for one in script.documents(dossier, kit)}


def telling(dossier: Dossier, *texts: str) -> Dossier:
    narration = Narration((Section("opening", "Opening", None, None, tuple(Passage("talk", one) for one in texts)),))
    return replace(dossier, narration=narration, timeline=timeline(narration, dossier.channel))


def words(html: str) -> Words:
    found = Words()
    found.feed(html)
    return found


def test_both_files_hold_every_passage_word_for_word(dossier: Dossier, kit: Kit) -> None:
    written = files(dossier, kit)
    said = [one.text for section in dossier.narration.sections for one in section.passages]
    assert words(written["script.html"]).told == said
    plain = written["script.md"].replace("**", "")
    assert all(one in plain for one in said)


@pytest.mark.parametrize("file", ["script.md", "script.html"])
def test_titles_lengths_and_caution_are_in_both(dossier: Dossier, kit: Kit, file: str) -> None:
    written = files(dossier, kit)[file]
    for section in view(dossier).sections:
        assert section.title in written
        assert section.minutes in written
    assert dossier.channel.caution in written
    assert f"{view(dossier).total} (minutes:seconds)" in written


def test_figures_of_a_setup_are_strong_and_know_their_setup(dossier: Dossier, kit: Kit) -> None:
    html = files(dossier, kit)["script.html"]
    assert re.search(
        r'data-voice="first">\s*<h2[^>]*>Short run: suspension</h2>\s*<p[^>]*>Right front spring <b>700</b>', html
    )
    assert re.search(r'data-voice="second">\s*<h2[^>]*>Long run', html)
    assert "Right front spring **700**." in files(dossier, kit)["script.md"]


def test_the_page_asks_nothing_of_the_network(dossier: Dossier, kit: Kit) -> None:
    html = files(dossier, kit)["script.html"]
    assert "http" not in html.replace("http-equiv", "")
    assert all(one.startswith("#") for one in words(html).addresses)
    assert re.findall(r"url\(\"?([^)\"]+)", html) == ["../fonts/FiraSans-Regular.ttf", "../fonts/FiraSans-SemiBold.ttf"]


def test_the_authors_words_cannot_become_markup(dossier: Dossier, kit: Kit) -> None:
    odd = "</p><script>alert(1)</script> & 5 < 6"
    html = files(telling(dossier, odd), kit)["script.html"]
    assert "<script>alert" not in html
    assert words(html).told == [odd]


@pytest.mark.parametrize(
    "said",
    [
        "# not a heading", "- not a list", "1. not a list", "+ no", "> no quote", "4 * 5 * 6", "a `b` c", "[a](b)",
        "_thin_ and snake_case", "<b>bold</b>", "a | b", "back\\slash", "@brake_marker_bea asked", "2 - 1 is 1",
        "− 3", "750\u00a0lb/in and 51.5 %",
    ],
)  # fmt: skip
def test_markdown_shows_the_words_as_they_are_said(dossier: Dossier, said: str) -> None:
    (passage,) = view(telling(dossier, said)).sections[0].passages
    shown = to_html(passage.markdown)
    assert shown.startswith("<p>")
    from html import unescape

    assert unescape(re.sub(r"</?(?:p|strong)>", "", shown)).strip("\n") == said


@pytest.mark.parametrize(
    ("text", "figures"),
    [
        ("left front 725, right front 700.", ["725", "700"]),
        ("from \u22123.50 to -4", ["\u22123.50", "-4"]),
        ("at 14:32, 1,050 rpm and 51.5%.", ["14:32", "1,050", "51.5"]),
        ("version 3.1.", ["3.1"]),
        ("750\u00a0pounds", ["750"]),
        ("no figure", []),
        ("req-014b and v2x", []),
    ],
)
def test_figures_in_a_text(text: str, figures: list[str]) -> None:
    assert [one.text for one in figure_runs(text) if one.figure] == figures


@given(st.text(alphabet="ab 12.,:-\u2212%\u00a0", max_size=40))
def test_runs_joined_are_the_text(text: str) -> None:
    assert "".join(one.text for one in figure_runs(text)) == text


def test_the_page_knows_the_words_and_pauses_of_the_estimate(dossier: Dossier, demo: Path, kit: Kit) -> None:
    library, _ = load(demo)
    told = whole_dossier(library.case(library.episodes["marrow-creek-grand-sedan"]))
    assert told is not None
    html = files(told, kit)["script.html"]
    spoken = sum(int(one) for one in re.findall(r'data-words="(\d+)"', html))
    pauses = sum(int(one) for one in re.findall(r'data-pause="(\d+)"', html))
    assert spoken * 60_000 / 150 + pauses == pytest.approx(told.timeline.total_ms, abs=200)


def test_british_pages_say_so(dossier: Dossier, kit: Kit) -> None:
    british = replace(dossier, channel=dossier.channel.model_copy(update={"spelling": "uk"}))
    assert '<html lang="en-GB">' in files(british, kit)["script.html"]
    assert '<html lang="en-US">' in files(dossier, kit)["script.html"]
