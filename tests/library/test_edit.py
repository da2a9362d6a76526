"""An edit changes what was meant, and not a character more."""

from __future__ import annotations

from pathlib import Path as File
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from ruamel.yaml import YAML

from producer.basics.errors import ProducerError
from producer.basics.located import Path
from producer.library.edit import Draft, EditError, new_file
from producer.library.nodes import Unreadable, read_nodes
from producer.library.spans import spans
from tests.library.untidy import WORDS, files

PROSE = """\
# mine
reasons:
  - for: spring.rf       # the right front
    because: >
      I run 700 on the right front, and 52
      of cross.
    if:
      - { feels: loose entry, say: Go to 725 first. }
      - feels: tight exit
        say: "Then 775, the \\"soft\\" one."
      - feels: loose exit
        say: 'It''s 300 there'
      - feels: loose middle
        say: 300 is where it
          stops
"""


def draft(text: str) -> Draft:
    return Draft("x.yaml", text.encode("utf-8"))


def value(text: str) -> Any:
    return read_nodes("x.yaml", text)[0]


@pytest.mark.parametrize(
    ("before", "new", "after"),
    [
        ("a: new\nb: 1\n", "answered", "a: answered\nb: 1\n"),
        ("a:   new   # why\n", "answered", "a:   answered   # why\n"),
        ("a: 'new' # why\n", "it's", "a: 'it''s' # why\n"),
        ('a: "new"\n', 'say "x"', 'a: "say \\"x\\""\n'),
        ("a: { b: 1 }\n", None, None),
        ("{ a: new, b: 2 }\n", "x", "{ a: x, b: 2 }\n"),
        ("{ a: new, b: 2 }\n", "x, y", '{ a: "x, y", b: 2 }\n'),
        ("a: new\n", "one: two", 'a: "one: two"\n'),
        ("a: new\n", "x #y", 'a: "x #y"\n'),
        ("a: new\n", "@jo", 'a: "@jo"\n'),
        ("a: new\n", "null", 'a: "null"\n'),
        ("a: new\n", "two\nlines\n", 'a: "two\\nlines\\n"\n'),
        ("a:\nb: 1\n", "x", "a: x\nb: 1\n"),
        ("a:   # none yet\nb: 1\n", "x", "a: x   # none yet\nb: 1\n"),
        ("a: ~\r\nb: 1\r\n", "x", "a: x\r\nb: 1\r\n"),
        ("a: |\n  old\n  text\n\nb: 1\n", "new\n", "a: |\n  new\n\nb: 1\n"),
        ("a: |  # kept\r\n    old\r\nb: 1\r\n", "new\nones\n", "a: |  # kept\r\n    new\r\n    ones\r\nb: 1\r\n"),
        ("a: |\n  old\nb: 1\n", "no end", 'a: "no end"\nb: 1\n'),
        ("a: new", "x", "a: x"),
        ("\ufeffa: new\n", "x", "\ufeffa: x\n"),
    ],
)
def test_set_value(before: str, new: str | None, after: str | None) -> None:
    made = draft(before)
    if new is None:
        with pytest.raises(EditError, match=r"x\.yaml, a: .*by hand"):
            made.set_value(("a",), "x")
        assert not made.changed
        return
    made.set_value(("a",), new)
    assert made.data.decode("utf-8") == after
    assert value(made.text)["a"] == new


@pytest.mark.parametrize(
    ("path", "old", "line"),
    [
        (("reasons", 0, "because"), "700", "      I run {{ spring.rf }} on the right front, and 52"),
        (("reasons", 0, "because"), "52", "      I run 700 on the right front, and {{ spring.rf }}"),
        (
            ("reasons", 0, "if", 0, "say"), "725",
            '      - { feels: loose entry, say: "Go to {{ spring.rf }} first." }',
        ),
        (("reasons", 0, "if", 1, "say"), "775", '        say: "Then {{ spring.rf }}, the \\"soft\\" one."'),
        (("reasons", 0, "if", 2, "say"), "300", "        say: 'It''s {{ spring.rf }} there'"),
        (("reasons", 0, "if", 3, "say"), "300", '        say: "{{ spring.rf }} is where it'),
    ],
)  # fmt: skip
def test_replace_inside(path: Path, old: str, line: str) -> None:
    made = draft(PROSE)
    held = read_nodes("x.yaml", PROSE)[1].texts[path]
    made.replace_inside(path, held.index(old), held.index(old) + len(old), "{{ spring.rf }}")
    before, after = PROSE.split("\n"), made.text.split("\n")
    assert line in after
    assert len([one for one in after if one not in before]) == (2 if path[-2] == 3 else 1)
    assert read_nodes("x.yaml", made.text)[1].texts[path] == held.replace(old, "{{ spring.rf }}", 1)


@pytest.mark.parametrize(
    ("start", "end"),
    [(34, 40), (-1, 3), (5, 5), (0, 999)],
    ids=["over the end of a line", "before", "nothing", "behind"],
)
def test_what_does_not_stand_in_one_line_is_refused(start: int, end: int) -> None:
    made = draft(PROSE)
    with pytest.raises(EditError):
        made.replace_inside(("reasons", 0, "because"), start, end, "x")
    assert not made.changed


@pytest.mark.parametrize(
    ("before", "path", "after_key", "after"),
    [
        ("a:\n  b: 1   # one\n  c: 2\n", ("a",), "b", "a:\n  b: 1   # one\n  new: x\n  c: 2\n"),
        ("a:\n  b: 1\n", ("a",), None, "a:\n  b: 1\n  new: x\n"),
        ("a:\n  b: 1\n# end\n", (), None, "a:\n  b: 1\nnew: x\n# end\n"),
        ("a:\n  - b: 1\n    c: 2\n  - d: 3\n", ("a", 0), "b", "a:\n  - b: 1\n    new: x\n    c: 2\n  - d: 3\n"),
        ("a: { b: 1, c: 2 }\n", ("a",), "b", "a: { b: 1, new: x, c: 2 }\n"),
        ("a: { b: 1 }\n", ("a",), "gone", "a: { b: 1, new: x }\n"),
        ("a: {}  # why\n", ("a",), None, "a: { new: x }  # why\n"),
        ("a:\n  b: |\n    text\n\n  c: 2\n", ("a",), "b", "a:\n  b: |\n    text\n  new: x\n\n  c: 2\n"),
        ("a:\n  b: |+\n    text\n\n  c: 2\n", ("a",), "b", "a:\n  b: |+\n    text\n\n  new: x\n  c: 2\n"),
        ("a:\r\n  b: 1", ("a",), "b", "a:\r\n  b: 1\r\n  new: x\r\n"),
        (
            "a:\n  b:\n    c: 1\n    d: 2 # d\n  e: 1\n",
            ("a",),
            "b",
            "a:\n  b:\n    c: 1\n    d: 2 # d\n  new: x\n  e: 1\n",
        ),
    ],
)
def test_add_key(before: str, path: Path, after_key: str | None, after: str) -> None:
    made = draft(before)
    made.add_key(path, "new", "x", after_key)
    assert made.text == after


@pytest.mark.parametrize("path", [("a", "b"), ("gone",), ("l", 0)])
def test_no_key_where_there_is_no_mapping_or_it_is_there(path: Path) -> None:
    made = draft("a:\n  b: 1\nl: [1]\nnew: here\n")
    with pytest.raises(EditError):
        made.add_key(path, "new", "x")
    with pytest.raises(EditError):
        made.add_key((), "new", "x")
    assert not made.changed


NEW = {"id": "c", "text": "one\n  two\n", "feels": ["loose exit"], "on": {"a": "@b"}}


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("r:\n  - id: a\n", "r:\n  - id: a\n  - id: c\n    text: |\n      one\n        two\n"),
        ("r:\n- id: a # x\nb: 1\n", "r:\n- id: a # x\n- id: c\n  text: |\n    one\n      two\n"),
        ("r:\n  -   id: a\n", "r:\n  -   id: a\n  -   id: c\n      text: |\n        one\n          two\n"),
        # Commented keys below an item are its own, a comment in line with the list is not.
        (
            "r:\n  - id: a\n    # credit: yes\n  # the end\nb: 1\n",
            "r:\n  - id: a\n    # credit: yes\n  - id: c\n    text: |\n      one\n        two\n",
        ),
        (
            "r:\n  - id: a\n\n  - id: b\n",
            "r:\n  - id: a\n\n  - id: b\n\n  - id: c\n    text: |\n      one\n        two\n",
        ),
        ("r: []  # none\n", "r:  # none\n  - id: c\n    text: |\n      one\n        two\n"),
        ("r:\nb: 1\n", "r:\n  - id: c\n    text: |\n      one\n        two\n"),
        ("b: 1\n", "b: 1\nr:\n  - id: c\n    text: |\n      one\n        two\n"),
        (
            "r: [{ id: a }, 2]\n",
            'r: [{ id: a }, 2, { id: c, text: "one\\n  two\\n", feels: [loose exit], on: { a: "@b" } }]\n',
        ),
        ("r:\r\n  - id: a", "r:\r\n  - id: a\r\n  - id: c\r\n    text: |\r\n      one\r\n        two\r\n"),
    ],
)  # fmt: skip
def test_add_items(before: str, after: str) -> None:
    made = draft(before)
    made.add_items(("r",), [NEW])
    assert made.text.startswith(after)
    assert value(made.text)["r"][-1] == NEW
    gone = [line for line in before.splitlines() if line not in made.text.splitlines()]
    assert gone in ([], [before.splitlines()[0]])


@pytest.mark.parametrize("before", ["r: text\n", "r: { a: 1 }\n", "r:\n  - a: |\n      no line end"])
def test_no_items_where_there_is_no_list(before: str) -> None:
    made = draft(before)
    with pytest.raises(EditError):
        made.add_items(("r",), [NEW])
    assert not made.changed


def test_a_new_file_begins_with_its_head() -> None:
    made = new_file({"format": "1"}, {"requests": [NEW]}, "# Kept here.\n")
    assert made.decode().startswith("# Kept here.\nformat: 1\nrequests:\n  - id: c\n")
    assert value(made.decode())["requests"] == [NEW]


@pytest.mark.parametrize(
    "data", [b"a: [1\n", b"a: \xff\n", b"a: &x 1\nb: *x\n", b"a: \x00\n"], ids=["no yaml", "no text", "alias", "nul"]
)
def test_what_cannot_be_read_is_not_edited(data: bytes) -> None:
    with pytest.raises(ProducerError, match="nothing was changed"):
        Draft("x.yaml", data).set_value(("a",), "x")


def test_the_diff_shows_the_change_alone() -> None:
    made = draft("".join(f"k{number}: {number}\r\n" for number in range(9)))
    assert made.diff() == ""
    made.set_value(("k4",), "x")
    assert made.diff().splitlines() == [
        "--- x.yaml", "+++ x.yaml", "@@ -3,5 +3,5 @@", " k2: 2", " k3: 3", "-k4: 4", "+k4: x", " k5: 5", " k6: 6",
    ]  # fmt: skip


def test_of_a_key_written_twice_the_first_is_changed() -> None:
    made = draft("a: 1\na: { b: 2 }\n")
    made.set_value(("a",), "x")
    assert made.text == "a: x\na: { b: 2 }\n"


READABLE = files()


def parts(text: str) -> tuple[Any, list[Path]]:
    body = text.removeprefix("\ufeff")
    try:
        found = read_nodes("x.yaml", body)[0]
    except Unreadable:
        assume(False)
    return found, [path for path, span in spans(body).values.items() if span.kind == "scalar" and path]


def without(found: Any, path: Path) -> Any:
    """The values without the one at `path`."""
    if not path:
        return "gone"
    pairs = found.items() if isinstance(found, dict) else enumerate(found)
    return [(key, without(one, path[1:]) if key == path[0] else one) for key, one in pairs]


def referee(text: str) -> Any:
    """What another reader makes of it; it knows kinds, so `yes` and `1` are compared as it reads them."""
    return YAML(typ="safe", pure=True).load(text.removeprefix("\ufeff"))


@settings(max_examples=150)
@given(text=READABLE, new=WORDS, data=st.data())
def test_setting_one_value_changes_nothing_else(text: str, new: str, data: st.DataObject) -> None:
    found, paths = parts(text)
    assume(paths)
    path = data.draw(st.sampled_from(paths))
    made = Draft("x.yaml", text.encode())
    span = spans(made.text).values[path]
    made.set_value(path, new)
    after = made.data.decode()
    assert read_nodes("x.yaml", made.text)[1].texts[path] == new
    assert without(value(made.text), path) == without(found, path)
    body = text.removeprefix("\ufeff")
    assert made.text.startswith(body[: span.start])
    assert made.text.endswith(body[span.end :])
    assert without(referee(after), path) == without(referee(text), path)


@settings(max_examples=100)
@given(text=READABLE, data=st.data())
def test_a_new_key_changes_no_line(text: str, data: st.DataObject) -> None:
    _, paths = parts(text)
    maps = [(), *(path[:-1] for path in paths if isinstance(path[-1], str))]
    path = data.draw(st.sampled_from(maps))
    made = Draft("x.yaml", text.encode())
    try:
        made.add_key(path, "brand new", "some: thing", data.draw(st.sampled_from(["id", "status", None])))
    except EditError:
        assert made.data == text.encode()
        assert not text.endswith("\n") or "|+" in text
        return
    without_it = [row for row in made.text.splitlines() if "brand new" not in row]
    rows = text.removeprefix("\ufeff").splitlines()
    assert [row for row in without_it if row not in rows] == []
    assert len(rows) - len(without_it) <= 1
    assert read_nodes("x.yaml", made.text)[1].texts[(*path, "brand new")] == "some: thing"


@settings(max_examples=100)
@given(text=READABLE, said=WORDS, data=st.data())
def test_a_new_item_changes_no_line(text: str, said: str, data: st.DataObject) -> None:
    parts(text)
    body = text.removeprefix("\ufeff")
    lists = [path for path, span in spans(body).values.items() if span.kind == "sequence" and isinstance(path[-1], str)]
    assume(lists)
    path = data.draw(st.sampled_from(lists))
    made = Draft("x.yaml", text.encode())
    item = {"id": "req-1", "from": said, "text": f"a{said}\nb\n"}
    try:
        made.add_items(path, [item])
    except EditError:
        assert made.data == text.encode()
        assert "|+" in text
        return
    at = value(made.text)
    for part in path:
        at = at[part]
    assert at[-1] == item
    before, after = body.splitlines(), made.text.splitlines()
    changed = [row for row in before if row not in after]
    assert len(changed) <= 1
    assert len(after) >= len(before)


@settings(max_examples=100)
@given(text=READABLE, new=WORDS, data=st.data())
def test_a_word_inside_a_text_is_replaced_or_nothing_is(text: str, new: str, data: st.DataObject) -> None:
    found, paths = parts(text)
    texts = read_nodes("x.yaml", text.removeprefix("\ufeff"))[1].texts
    path = data.draw(st.sampled_from([one for one in paths if texts.get(one)] or [None]))
    assume(path is not None)
    held = texts[path]
    start = data.draw(st.integers(0, len(held) - 1))
    end = data.draw(st.integers(start + 1, len(held)))
    made = Draft("x.yaml", text.encode())
    try:
        made.replace_inside(path, start, end, new)
    except EditError:
        assert made.data == text.encode()
        return
    assert read_nodes("x.yaml", made.text)[1].texts[path] == held[:start] + new + held[end:]
    assert without(value(made.text), path) == without(found, path)


@pytest.mark.parametrize("text", ["r: []", "r:", "r: [1, 2]"])
def test_the_pure_parser_gives_the_same_edit(text: str, monkeypatch: pytest.MonkeyPatch) -> None:
    import yaml

    def made() -> str:
        one = draft(f"a: {{ b: x }}\n{text}\nc: |\n  t\nd: 'e'\n")
        one.set_value(("a", "b"), "y")
        one.set_value(("c",), "u\n")
        one.add_items(("r",), [NEW])
        one.add_key(("a",), "f", "g")
        return one.text

    fast = made()
    for module in ("producer.library.nodes.LOADER", "producer.library.spans.LOADER"):
        monkeypatch.setattr(module, yaml.SafeLoader)
    assert made() == fast


def test_the_demo_takes_every_kind_of_edit(library: File) -> None:
    for file in sorted(library.rglob("*.yaml")):
        before = file.read_bytes()
        made = Draft(file.name, before)
        scalars = [path for path, span in spans(made.text).values.items() if span.kind == "scalar"]
        for path in scalars[:: max(1, len(scalars) // 12)]:
            once = Draft(file.name, before)
            once.set_value(path, "Z z")
            assert len(once.diff().splitlines()) >= 5
