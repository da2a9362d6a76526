"""The author's Markdown as HTML and as plain text."""

from __future__ import annotations

import pytest

from producer.render.markdown import safe_link, to_html, to_inline_html, to_plain


@pytest.mark.parametrize(
    ("text", "html"),
    [
        ("I brake *early*.", "<p>I brake <em>early</em>.</p>\n"),
        ("a\n\nb", "<p>a</p>\n<p>b</p>\n"),
        ("[cards](https://example.org/a)", '<p><a href="https://example.org/a">cards</a></p>\n'),
        ("[mail](mailto:a@example.org)", '<p><a href="mailto:a@example.org">mail</a></p>\n'),
        ("[up](../b.html#c)", '<p><a href="../b.html#c">up</a></p>\n'),
        ("<b>bold</b>", "<p>&lt;b&gt;bold&lt;/b&gt;</p>\n"),
        ("<script>alert(1)</script>", "<p>&lt;script&gt;alert(1)&lt;/script&gt;</p>\n"),
        ("![the <car>](https://example.org/x.png)", "<p>the &lt;car&gt;</p>\n"),
        ("[x](javascript:alert(1))", "<p>[x](javascript:alert(1))</p>\n"),
        ('[x](https://e.org "\'onclick=1")', '<p><a href="https://e.org" title="\'onclick=1">x</a></p>\n'),
    ],
)
def test_html(text: str, html: str) -> None:
    assert to_html(text) == html


def test_tables_are_tables() -> None:
    assert "<td>700</td>" in to_html("| a | b |\n|---|---|\n| 700 | 2 |\n")


def test_inline_has_no_paragraph() -> None:
    assert to_inline_html("a *b* <i>") == "a <em>b</em> &lt;i&gt;"


@pytest.mark.parametrize(
    "link",
    ["https://e.org", "http://e.org/a?b=c:d", "mailto:a@e.org", "a.html", "../a/b.html", "#top", "?q=1", "a/b:c"],
)
def test_links_that_are_followed(link: str) -> None:
    assert safe_link(link)


@pytest.mark.parametrize(
    "link",
    ["javascript:alert(1)", "JaVaScRiPt:x", "data:text/html,x", "file:///etc/passwd", "//e.org", "\\\\e.org",
     "vbscript:x", " javascript:x", "java\nscript:x", "\u202ehttps://e.org", "ftp://e.org", "http:e.org"],
)  # fmt: skip
def test_links_that_are_not(link: str) -> None:
    assert not safe_link(link)


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("# Title\n\nOne *two*\nthree.", "Title\n\nOne two three."),
        ("- a\n- b\n  - c\n- d", "- a\n- b\n  - c\n- d"),
        ("Before\n\n3. x\n4. y\n\nAfter", "Before\n\n3. x\n4. y\n\nAfter"),
        ("| a | b |\n|---|---|\n| 1 | 2 |\n\nAfter", "a; b\n1; 2\n\nAfter"),
        ("[cards](https://e.org)", "cards (https://e.org)"),
        ("<https://e.org>", "https://e.org"),
        ("one  \ntwo", "one\ntwo"),
        ("`code` and ![a car](x.png)", "code and a car"),
        ("    fixed\n    text", "fixed\ntext"),
        ("a & b < c", "a & b < c"),
        ("", ""),
    ],
)
def test_plain(text: str, plain: str) -> None:
    assert to_plain(text) == plain
