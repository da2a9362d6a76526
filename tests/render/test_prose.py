"""Figures by reference in the author's prose."""

from __future__ import annotations

import subprocess
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.render import prose
from producer.render.prose import ProseTrouble, Reference, Scope, fill, filled, references, troubles
from tests.outputs.dossiers import sample_case

SHEETS = sample_case().sheets
SCOPE = Scope.of(SHEETS[0], SHEETS)
NB = "\u00a0"
MINUS = "\u2212"


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("nothing to fill", "nothing to fill"),
        ("a brace { alone } stays", "a brace { alone } stays"),
        ("{{ spring.rf }}", "700"),
        ("a coil of {{ spring.rf }} is right", "a coil of 700 is right"),
        ("{{spring.rf}}", "700"),
        ("{{ spring.rf | with_unit }}", f"700{NB}lb/in"),
        ("{{spring.rf|with_unit}}", f"700{NB}lb/in"),
        ("{{ spring.rear_split }}", "75"),
        ("{{ spring.front_split | with_unit }}", f"{MINUS}25{NB}lb/in"),
        ("{{ camber.rf }}", f"{MINUS}3.50"),
        ("{{ final_drive | with_unit }}", "3.90:1"),
        ("{{ long.spring.rf }}", "725"),
        ("{{ short.spring.rf }}", "700"),
        ("{{ long.spring.rear_split }}", "75"),
        ("{{ tape }} percent, {{ tape }} again", "45 percent, 45 again"),
        ("{{ compression.lf | with_unit }}", "5"),
    ],
)
def test_fills(text: str, meant: str) -> None:
    assert fill(text, SCOPE) == meant
    assert troubles(text, SCOPE) == ()


@pytest.mark.parametrize(
    ("text", "marked", "message", "near"),
    [
        ("say {{ sprung.rf }} now", "{{ sprung.rf }}", "did you mean 'spring.rf'?", "spring.rf"),
        ("{{ short.sprung.rf }}", "{{ short.sprung.rf }}", "did you mean", "short.spring.rf"),
        ("{{ nothing.like.it }}", "{{ nothing.like.it }}", "'nothing.like.it' is no setting of this setup", ""),
        ("{{ spring }}", "{{ spring }}", "several values: spring.lf, spring.rf, spring.lr, spring.rr", "spring.lf"),
        ("{{ spring.rf + 25 }}", "{{ spring.rf + 25 }}", "more than a name", ""),
        ("{{ spring.rf() }}", "{{ spring.rf() }}", "more than a name", ""),
        ("{{ spring['rf'] }}", "{{ spring['rf'] }}", "more than a name", ""),
        ("{{ spring.rf | upper }}", "{{ spring.rf | upper }}", "more than a name", ""),
        ("{{ spring.rf | with_unit | upper }}", "{{ spring.rf | with_unit | upper }}", "more than a name", ""),
        ("{{ ''.__class__.__mro__ }}", "{{ ''.__class__.__mro__ }}", "more than a name", ""),
        ("{{ spring.__class__ }}", "{{ spring.__class__ }}", "did you mean", "spring.lr"),
        ("{{ range(999999999) }}", "{{ range(999999999) }}", "more than a name", ""),
        ("{{ 'x' * 999999999 }}", "{{ 'x' * 999999999 }}", "more than a name", ""),
        ("{{ }}", "{{ }}", "more than a name", ""),
        ("{{- tape -}}", "{{- tape -}}", "more than a name", ""),
        ("{{ tape", "{{ tape", "never closed", ""),
        ("a {% for x in y %} b", "{% for x in y %}", "'{% %}' does nothing here", ""),
        ("a {# note #} b", "{# note #}", "'{# #}' does nothing here", ""),
        ("{{ tape }} and {{ tap }}", "{{ tap }}", "did you mean 'tape'?", "tape"),
    ],
)
def test_refuses_with_the_place_and_what_to_do(text: str, marked: str, message: str, near: str) -> None:
    with pytest.raises(ProseTrouble) as caught:
        fill(text, SCOPE)
    trouble = caught.value
    assert text[trouble.start : trouble.end] == marked
    assert message in trouble.message
    assert trouble.near == near
    assert trouble.unknown == ("more than" not in message and "here" not in message and "closed" not in message)


def test_tells_every_trouble_in_order() -> None:
    text = "{{ tap }} {% x %} {{ tape }} {{ 1 }} {{ y"
    assert [text[one.start : one.end] for one in troubles(text, SCOPE)] == ["{{ tap }}", "{% x %}", "{{ 1 }}", "{{ y"]


def test_lists_the_references_that_are_well_formed() -> None:
    assert references("{{ tape }} x {{ nope | with_unit }} {{ 1+1 }}") == (
        Reference("tape", False, 0, 10),
        Reference("nope", True, 13, 35),
    )


def test_own_settings_come_before_a_setup_of_the_same_name() -> None:
    assert "tape" in SCOPE.names()
    assert SCOPE.names().index("tape") < SCOPE.names().index("short.tape")


def test_prose_of_no_setup_names_the_setup() -> None:
    nobody = Scope.of(None, SHEETS)
    assert fill("{{ short.tape }} then {{ long.tape }}", nobody) == "45 then 45"
    with pytest.raises(ProseTrouble):
        fill("{{ tape }}", nobody)


def test_derived_figures_have_their_unit() -> None:
    scope = Scope(SHEETS[0], SHEETS, {"final_drive.rpm": ("6761", "rpm")})
    assert fill("{{ final_drive.rpm | with_unit }}, {{ final_drive.rpm }}", scope) == f"6761{NB}rpm, 6761"


def test_a_filled_text_has_a_largest_size(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(prose, "LONGEST", 20)
    assert fill("{{ tape }} is enough", SCOPE) == "45 is enough"
    with pytest.raises(ProseTrouble, match="longer than 20 characters"):
        fill("{{ tape }} is more than it may be", SCOPE)


def test_knows_where_each_figure_came_from() -> None:
    text = "run {{ spring.rf | with_unit }} or {{ tape }}, not 750"
    found = filled(text, SCOPE)
    at = found.text.index("700")
    assert found.given(at, at + 3)
    assert text[slice(*found.written(at, at + 3))] == "{{ spring.rf | with_unit }}"
    at = found.text.index("750")
    assert not found.given(at, at + 3)
    assert text[slice(*found.written(at, at + 3))] == "750"
    assert text[slice(*found.written(0, 3))] == "run"


@given(st.lists(st.one_of(st.sampled_from(["{{ tape }}", "{{spring.rf|with_unit}}"]), st.text(alphabet="ab {}%#\n"))))
def test_every_character_that_is_no_reference_keeps_its_place(parts: list[str]) -> None:
    text = "".join(parts)
    if troubles(text, SCOPE):
        return
    found = filled(text, SCOPE)
    for index, letter in enumerate(found.text):
        if not found.given(index, index + 1):
            start, end = found.written(index, index + 1)
            assert text[start:end] == letter


@given(st.lists(st.one_of(st.sampled_from(["{{ tape }}", "{{ long.tape }}", "{{ nope }}"]), st.text(max_size=8))))
def test_says_what_the_sandbox_of_jinja_says(parts: list[str]) -> None:
    from jinja2.sandbox import ImmutableSandboxedEnvironment

    text = "".join(parts)
    if troubles(text, SCOPE) or "\r" in text:
        return  # Jinja also rewrites line ends, which we leave alone
    sandbox = ImmutableSandboxedEnvironment(keep_trailing_newline=True)
    assert fill(text, SCOPE) == sandbox.from_string(text).render(tape="45", long={"tape": "45"})


def test_a_hundred_thousand_braces_are_refused_quickly() -> None:
    assert troubles("{{" * 50_000, SCOPE)
    assert troubles("{{ " + "a." * 50_000 + " }}", SCOPE)


def test_filling_starts_no_template_engine() -> None:
    code = "import sys, producer.render.prose as p; p.has_references('x {{ y }}'); assert 'jinja2' not in sys.modules"
    subprocess.run([sys.executable, "-c", code], check=True)
