"""Pasted text into messages."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.replies.pasted import Pasted, pasted, same


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("loose off 4\n", [(None, "loose off 4")]),
        ("loose off 4\nany ideas\n\ntight in\n", [(None, "loose off 4\nany ideas"), (None, "tight in")]),
        ("@gus_12: loose off 4", [("@gus_12", "loose off 4")]),
        ("@gus_12 : loose off 4\nhelp", [("@gus_12", "loose off 4\nhelp")]),
        ("@gus\nloose off 4", [("@gus", "loose off 4")]),
        ("@gus\n\nloose off 4\n\ntight in", [("@gus", "loose off 4"), (None, "tight in")]),
        ("@gus \u2022 3 days ago\nloose off 4", [("@gus", "loose off 4")]),
        ("@gus 2h ago (edited)\nloose off 4", [("@gus", "loose off 4")]),
        ("@gus\r\nloose  off 4  \r\n\r\n\r\n@ann: x", [("@gus", "loose  off 4"), ("@ann", "x")]),
        ("  loose\n\t\n  tight", [(None, "loose"), (None, "tight")]),
        ("a\u00a0b\u202ec\x1b[31m\x00", [(None, "a bc[31m")]),
        # Nobody says who the sender is: a name in a sentence may be who it is for.
        ("@jo can you do oak hollow", [(None, "@jo can you do oak hollow")]),
        ("question: how do i", [(None, "question: how do i")]),
        ("mail me at gus@example.org: ok", [(None, "mail me at gus@example.org: ok")]),
        ("loose\n---\ntight\n\n ===== \n\nfine\n---", [(None, "loose"), (None, "tight"), (None, "fine")]),
        ("loose -- very\n--\nhelp -----", [(None, "loose -- very\n--\nhelp -----")]),
        ("---\n", []),
        ("@gus", []),
        ("", []),
        (" \n\n\t\n", []),
    ],
)
def test_pasted(text: str, found: list[tuple[str | None, str]]) -> None:
    assert list(pasted(text)) == [Pasted(*one) for one in found]


@given(st.text(st.sampled_from("@a_1.: \n\r\t\u00a0\u202e\u2028x,-()"), max_size=60))
def test_every_message_can_be_kept(text: str) -> None:
    for one in pasted(text):
        assert one.text == one.text.strip() != ""
        assert "\n\n" not in one.text
        assert all(letter.isprintable() or letter == "\n" for letter in one.text)
        assert one.handle is None or one.handle.startswith("@")


@pytest.mark.parametrize(
    ("one", "other", "alike"),
    [("Loose off 4", "loose  off\n4", True), ("loose off 4", "loose off 3", False), ("", " \n", True)],
)
def test_same(one: str, other: str, alike: bool) -> None:
    assert same(one, other) is alike
