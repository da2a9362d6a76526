"""The guide's table for the terminal: columns, and what the model says in them."""

from __future__ import annotations

from dataclasses import replace

import pytest

from producer.jobs.guide import guide_text
from producer.model.dossier import Dossier
from producer.model.guide import Guide
from producer.model.opinion import Opinions
from tests.outputs.dossiers import sample_dossier
from tests.outputs.modelled import modelled_dossier


@pytest.fixture(scope="module")
def modelled() -> Dossier:
    return modelled_dossier()


def row(text: str, feel: str, name: str) -> str:
    """The line of a setting below a feel of the first setup."""
    block = text.split(f"\n{feel}\n", 1)[1].split("\n\n", 1)[0]
    (line,) = (one for one in block.splitlines() if name in one)
    return line


def test_without_the_model_its_columns_stay_empty_and_untold() -> None:
    text = guide_text(sample_dossier(), "short")
    heads = text.splitlines()[2]
    assert heads.split() == ["clicks", "left", "who"]
    assert row(text, "tight middle", "Cross weight").split()[-3:] == ["-1", "11", "author"]
    assert "second opinion" not in text


@pytest.mark.parametrize(
    ("feel", "name", "ends"),
    [
        # The author's word, the rule, doubt, and the model against them.
        ("tight middle", "Cross weight", ["author", "1.0×", "99"]),
        ("tight entry", "Brake bias", ["rule", "0.4×", "99"]),
        ("tight middle", "Left rear spring", ["rule", "0.6×", "70"]),
        ("loose entry", "Right front spring", ["author", "-0.3×", "1"]),
        # No opinion, no figure.
        ("tight exit", "Left rear compression", ["3", "rule"]),
    ],
)
def test_size_and_cars_stand_in_their_columns(modelled: Dossier, feel: str, name: str, ends: list[str]) -> None:
    line = row(guide_text(modelled, "short"), feel, name)
    assert line.split()[-len(ends) :] == ends
    assert len(line) <= 80


def test_the_columns_stand_below_their_heads(modelled: Dossier) -> None:
    lines = guide_text(modelled, "short").splitlines()
    heads = lines[2]
    line = next(one for one in lines if "Cross weight" in one and "author" in one)
    assert heads.split() == ["clicks", "left", "who", "size", "cars"]
    for head, cell in (("clicks", "-1"), ("left", "11"), ("size", "1.0×"), ("cars", "99")):
        end = heads.index(head) + len(head)
        assert line[:end].endswith(cell)
    assert line[heads.index("who") :].startswith("author")


def test_what_nobody_feels_is_no_number(modelled: Dossier) -> None:
    assert row(guide_text(modelled, "short"), "tight exit", "Final drive").split()[-2:] == ["<0.1×", "99"]


def test_every_line_fits_and_the_columns_are_told(modelled: Dossier) -> None:
    lines = guide_text(modelled, None).splitlines()
    assert max(map(len, lines)) <= 80
    assert lines[-2].startswith("the chassis model's second opinion - size: how much it helps")
    assert lines[-1].endswith("how many of 100 plausible cars agree")


def test_a_condition_stands_below_its_change(modelled: Dossier) -> None:
    guide = modelled.guides["short"]
    row = guide.rows[1]
    first, *rest = row.changes
    changes = (replace(first, tyres="worn"), replace(rest[0], tyres="new", device="pad"), *rest[1:])
    rows = (guide.rows[0], replace(row, changes=changes), *guide.rows[2:])
    text = guide_text(replace(modelled, guides={**modelled.guides, "short": replace(guide, rows=rows)}), "short")
    block = text.split("\ntight middle\n", 1)[1].split("\n\n", 1)[0].splitlines()
    assert (block[1], block[3]) == ("    only on worn tires", "    only on new tires, with a pad")
    assert len(block) == len(changes) + 2
    assert text.count("    only ") == guide_text(modelled, "short").count("    only ") + 2


def test_too_few_cars_say_nothing(modelled: Dossier) -> None:
    silent = replace(modelled, opinions={"short": Opinions(0), "long": Opinions(0)})
    assert "second opinion" not in guide_text(silent, None)


def test_a_row_with_nothing_says_so(modelled: Dossier) -> None:
    rows = tuple(replace(one, changes=()) for one in modelled.guides["short"].rows)
    bare = replace(modelled, guides={**modelled.guides, "short": Guide("x", "short", rows)})
    assert guide_text(bare, "short").count("no rule speaks of it, or nothing is left inside the limits") == 6
