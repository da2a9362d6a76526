"""What is left out of a reply that is too long, and in which order."""

from __future__ import annotations

from producer.replies.shorten import shorter
from producer.replies.view import Group, Line, ReplyView


def line(name: str) -> Line:
    return Line(name, "1", "2 in", f"words of {name}", f"note of {name}", False, "")


WHOLE = ReplyView(
    handle="@x", presenter="Jo", caution="Careful.", spelling="us", why="why", hint="hint",
    groups=(Group("tight", (line("a"),)), Group("loose", (line("b"), line("c")))),
    open=("open",), values=("one", "two"), questions=("first?", "second?"), consent=True, link="link", rules="rules",
)  # fmt: skip


def left(view: ReplyView) -> str:
    lines = [one.setting for group in view.groups for one in group.lines]
    marks = {
        "offer": view.offer, "hint": view.hint, "why": view.why, "open": view.open, "consent": view.consent,
        "rules": view.rules, "link": view.link, "brief": view.brief,
        "notes": any(one.note for group in view.groups for one in group.lines),
        "words": any(one.words for group in view.groups for one in group.lines),
    }  # fmt: skip
    counted = [f"{len(view.values)} pages", f"{len(view.questions)} questions"]
    return " ".join([*lines, *counted, *(name for name, there in marks.items() if there)])


def test_the_order_in_which_things_go() -> None:
    assert [left(one) for one in shorter(WHOLE)] == [
        "a b c 2 pages 2 questions offer hint why open consent rules link notes words",
        "a b c 2 pages 2 questions why open consent rules link notes words",
        "a b c 2 pages 2 questions why open consent rules link words",
        "a b 2 pages 2 questions why open consent rules link words",
        "a 2 pages 2 questions why open consent rules link words",
        "a 2 pages 2 questions open consent rules link words",
        "a 2 pages 2 questions consent rules link words",
        "a 1 pages 2 questions consent rules link words",
        "a 0 pages 2 questions consent rules link words",
        "a 0 pages 2 questions rules link words",
        "a 0 pages 1 questions rules link words",
        "a 0 pages 1 questions rules link",
        "a 0 pages 1 questions link",
        "a 0 pages 1 questions",
        "a 0 pages 0 questions",
        "a 0 pages 0 questions brief",
    ]


def test_an_empty_reply_has_only_two_lengths_to_go() -> None:
    plain = ReplyView(handle="@x", presenter="Jo", caution="Careful.", spelling="us")
    assert [one.brief for one in shorter(plain)] == [False, False, True]


def test_a_listing_says_that_the_rest_is_missing() -> None:
    views = list(shorter(WHOLE))
    assert not views[0].more
    assert all(one.more for one in views if len(one.values) < 2)


def test_open_feels_stay_where_there_is_no_change() -> None:
    alone = ReplyView(handle="@x", presenter="Jo", caution="Careful.", spelling="us", open=("open",))
    assert all(one.open for one in shorter(alone))
