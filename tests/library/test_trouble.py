"""What people slip over in YAML, told at the line where it happened. Both parsers must agree."""

from __future__ import annotations

from typing import Any

import pytest
import yaml

from producer.basics.finding import Finding
from producer.library import nodes
from producer.library.nodes import Unreadable, read_nodes

PURE = yaml.SafeLoader


@pytest.fixture(params=[getattr(yaml, "CSafeLoader", PURE), PURE], ids=["fast", "pure"], autouse=True)
def loader(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> Any:
    monkeypatch.setattr(nodes, "LOADER", request.param)
    return request.param


def told(text: str) -> Finding:
    with pytest.raises(Unreadable) as caught:
        read_nodes("a.yaml", text)
    return caught.value.finding


@pytest.mark.parametrize(
    ("text", "line", "column", "message", "hint"),
    [
        ("a:\n\tb: 1\n", 2, 1, "a tab stands in the indentation", "spaces"),
        ("from: @gus\n", 1, 7, "cannot begin with '@'", 'in quotes: "@gus"'),
        ("a: { from: @gus, b: 1 }\n", 1, 12, "cannot begin with '@'", 'in quotes: "@gus"'),
        ("gap: %x\n", 1, 6, "cannot begin with '%'", '"%x"'),
        ("title: First: two setups\n", 1, 13, "a second colon", "in quotes"),
        ("title: \u201cFirst: two setups\u201d\n", 1, 14, "curly quotes", "straight quotes"),
        ("a:\n\u00a0 b: 1\n  c: { d: 2 }\n", 2, 1, "a no-break space", "plain spaces"),
        ("a: 1\n  b: { c: 2, d: 3 }\n", 2, 4, "has a value already", "in line with"),
        ("a: 1\n  b: 2\n", 2, 4, "has a value already", "in line with"),
        ("a: 1\nstatus testing\nb: 2\n", 2, 1, "no colon", "key: value"),
        ("a: 1\nstatus:testing\nb: 2\n", 2, 1, "no colon", "key: value"),
        ('a: 1\nb: "open\nc: 2\nd: "1.0"\n', 2, 4, "a quote opens here", "line 4"),
        ('a: 1\nb: "open\nc: 2\n', 2, 4, "a quote opens here", "close it"),
        ("a: 'it's gone'\n", 1, 8, "after a closing quote", "it''s"),
        ('a: "one" two\n', 1, 10, "after a closing quote", "'this'"),
        ("a: { b: 1 c: 2 }\n", 1, 12, "a comma or '}' is missing", "{ one: 1, another: 2 }"),
        ("a: [1, 2\nb: 3\n", 1, 4, "a bracket opens here", "']'"),
        ("a: |text\n  more\n", 1, 5, "'|'", "next line"),
        ('file: "stints\\short.csv"\n', 1, None, "a backslash", "single quotes"),
        ("a:\n    b: 1\n   c: 2\n", 3, 4, "does not line up", "under the keys"),
        ("a:\n  - b: 1\n   c: 2\n", 3, 4, "does not line up", "under the keys"),
        ("say: {{ spring.rf }} is enough\n", 1, 7, "{{ }} without quotes", '"{{ spring.rf }}"'),
        ("say: {{ spring.rf }}\n", 1, 7, "{{ }} without quotes", '"{{ spring.rf }}"'),
    ],
)  # fmt: skip
def test_a_slip_is_told_in_plain_words(text: str, line: int, column: int | None, message: str, hint: str) -> None:
    finding = told(text)
    assert finding.code == "not-yaml"
    assert (finding.place.line, finding.place.column) == (line, column or finding.place.column)
    assert message in finding.message
    assert hint in finding.hint


@pytest.mark.parametrize(
    "text",
    [
        "title: 'First: two setups'\n",
        'from: "@gus"\n',
        "a: it's gone\n",
        'a: say "two" of them\n',
        'say: "{{ spring.rf }} is enough"\n',
        "say: Go to {{ spring.rf }} then\n",
        "a: |\n  one: two: three\n  \t@ % ` ' \"\n",
        "a: { b: 1, c: [2, 3] }\n",
        "file: 'stints\\short.csv'\n",
        "a: at 1:30\n",
    ],
)
def test_what_only_looks_like_a_slip_is_read(text: str) -> None:
    _, _, findings = read_nodes("a.yaml", text)
    assert findings == []


def test_a_braces_rule_leaves_quoted_references_alone() -> None:
    assert "backslash" not in told('a: "{{ x }}": b\n').message
    assert "without quotes" not in told('a: "{{ x }}": b\n').message


def test_a_missing_dash_is_thought_of_where_an_item_would_begin() -> None:
    _, _, findings = read_nodes("a.yaml", "setups:\n  - setup: short\n    name: S\n    setup: long\n    name: L\n")
    assert ["put '- ' before" in one.hint for one in findings] == [True, False]
    _, _, findings = read_nodes("a.yaml", "a: 1\na: 2\n")
    assert "'- '" not in findings[0].hint
