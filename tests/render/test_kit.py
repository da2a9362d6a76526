"""Templates: whose comes first, what they may do, and how a broken one is told."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest

from producer.basics.errors import ProducerError
from producer.render.kit import Kit
from tests.render.test_literal import ATTACKS

PAGE = """#set document(title: "x", date: none)
#set text(font: "Fira Sans", lang: "en")
#set page(width: 90pt, height: 60pt)
"""


@dataclass(frozen=True, slots=True)
class View:
    """What the templates of these tests get."""

    name: str = "RF"
    many: tuple[str, ...] = ("a", "b")


def kit(folder: Path, **templates: str) -> Kit:
    for name, text in templates.items():
        (folder / f"{name}.j2").write_text(text, encoding="utf-8")
    return Kit([folder])


def test_the_authors_template_comes_before_the_shipped_one(tmp_path: Path) -> None:
    (tmp_path / "card.txt.j2").write_text("mine: {{ view.name }}\n", encoding="utf-8")
    assert Kit([tmp_path]).text("card.txt.j2", View()) == "mine: RF\n"


def test_an_authors_template_may_use_the_shipped_ones(tmp_path: Path) -> None:
    own = kit(tmp_path, page='<style>{% include "look.css.j2" %}</style>')
    assert "--paper: #FAF8F3" in own.html("page.j2", View())


def test_text_is_not_escaped_and_keeps_its_last_line_end(tmp_path: Path) -> None:
    assert kit(tmp_path, a="{{ view.name }}\n").text("a.j2", View("<b> & ü")) == "<b> & ü\n"


@pytest.mark.parametrize("attack", ATTACKS)
def test_html_escapes_every_value(tmp_path: Path, attack: str) -> None:
    found = kit(tmp_path, a='<p title="{{ view.name }}">{{ view.name }}</p>').html("a.j2", View(attack))
    from html.parser import HTMLParser

    seen: list[object] = []

    class Reader(HTMLParser):
        def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
            seen.extend([tag, *attrs])

        def handle_data(self, data: str) -> None:
            seen.append(data)

    reader = Reader()
    reader.feed(found)
    reader.close()
    assert seen == ["p", ("title", attack), attack]


@pytest.mark.parametrize("attack", ATTACKS)
def test_typst_keeps_every_value_a_value(tmp_path: Path, attack: str) -> None:
    own = kit(tmp_path, a=PAGE + "#let view = {{ view }}\n= #view.name\n#{{ view.name }}\n")
    source = own.typst("a.j2", View(attack))
    assert own.pdf(source).startswith(b"%PDF-")


def test_markdown_filters_render_and_stay_safe(tmp_path: Path) -> None:
    own = kit(tmp_path, a="{{ view.name|markdown }}|{{ view.name|inline_markdown }}", b="{{ view.name|plain }}")
    assert own.html("a.j2", View("*a* <b>")) == "<p><em>a</em> &lt;b&gt;</p>\n|<em>a</em> &lt;b&gt;"
    assert own.text("b.j2", View("*a* <b>")) == "a <b>"


def test_spell_and_no_break(tmp_path: Path) -> None:
    assert kit(tmp_path, a='{{ "tyre centre"|spell("us")|nb }}').text("a.j2", View()) == "tire\u00a0center"


@pytest.mark.parametrize(
    ("template", "sentence"),
    [
        ("{{ view.nothing }}", "has no attribute 'nothing'"),
        ("{{ nothing }}", "'nothing' is undefined"),
        ("\n{% if %}", "the template 'a.j2', line 2 cannot be used"),
        ("{{ view.name|nope }}", "No filter named 'nope'"),
        ('{% include "gone.j2" %}', "there is no template 'gone.j2'"),
        ("{{ view.__class__.__mro__ }}", "cannot be used"),
        ('{{ "".__class__ }}', "cannot be used"),
        ('{% include "../../../etc/passwd" %}', "there is no template"),
        ("{% for x in range(9999999) %}{% endfor %}", "cannot be filled: Range too big"),
    ],
)
@pytest.mark.parametrize("mode", ["text", "html", "typst"])
def test_a_broken_template_is_one_sentence(tmp_path: Path, template: str, sentence: str, mode: str) -> None:
    own = kit(tmp_path, a=template)
    with pytest.raises(ProducerError) as caught:
        getattr(own, mode)("a.j2", View())
    assert sentence in str(caught.value)
    assert "\n" not in str(caught.value)


def test_typst_refuses_what_is_no_fact(tmp_path: Path) -> None:
    with pytest.raises(ProducerError, match=r"the template 'a\.j2' cannot be filled: a template cannot show"):
        kit(tmp_path, a="{{ view }}").typst("a.j2", {"x": object()})
