"""Makes a reply fit: whole lines go, in a stated order; nothing is ever cut in the middle.

The order: what is offered beyond the question; side notes; reasons for the second and third setting asked about; the
third and second change; how the setup was chosen;
feels that got no change; the pages of a listing from the last; the question about being named; the second question;
the author's words to the change that is left; the rules without figures; the link; the other question; and at last
everything but greeting, thanks and caution.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from producer.replies.view import Group, Line, ReplyView


def shorter(view: ReplyView) -> Iterator[ReplyView]:
    """The view itself, then ever shorter ones."""
    yield view
    for step in _STEPS:
        while (less := step(view)) != view:
            view = less
            yield view


def _no_offer(view: ReplyView) -> ReplyView:
    return replace(view, offer=False, hint="")


def _no_notes(view: ReplyView) -> ReplyView:
    return _lines(view, lambda line: replace(line, note=""))


def _one_reason_less(view: ReplyView) -> ReplyView:
    """Without the words on the last setting asked about that has some; those on the first stay."""
    at = max((i for i, one in enumerate(view.answers) if one.words), default=0)
    return view if at == 0 else _answered(view, at)


def _one_change_less(view: ReplyView) -> ReplyView:
    """Without the last change of the feel that has most; one always stays."""
    if sum(len(one.lines) for one in view.groups) < 2:
        return view
    most = max(len(one.lines) for one in view.groups)
    at = max(i for i, one in enumerate(view.groups) if len(one.lines) == most)
    less = replace(view.groups[at], lines=view.groups[at].lines[:-1])
    groups = (*view.groups[:at], less, *view.groups[at + 1 :])
    return replace(view, groups=tuple(one for one in groups if one.lines))


def _no_why(view: ReplyView) -> ReplyView:
    return replace(view, why="")


def _no_open(view: ReplyView) -> ReplyView:
    """Without the feels that got no change, where another got one."""
    return replace(view, open=()) if view.groups else view


def _one_page_less(view: ReplyView) -> ReplyView:
    return replace(view, values=view.values[:-1], more=True) if view.values else view


def _no_consent(view: ReplyView) -> ReplyView:
    return replace(view, consent=False)


def _one_question(view: ReplyView) -> ReplyView:
    return replace(view, questions=view.questions[:1])


def _no_words(view: ReplyView) -> ReplyView:
    view = _lines(view, lambda line: replace(line, words=""))
    return _answered(view, 0) if view.answers else view


def _no_rules(view: ReplyView) -> ReplyView:
    return replace(view, rules="")


def _no_link(view: ReplyView) -> ReplyView:
    return replace(view, link="")


def _no_questions(view: ReplyView) -> ReplyView:
    return replace(view, questions=())


def _brief(view: ReplyView) -> ReplyView:
    return replace(view, brief=True)


def _lines(view: ReplyView, change: Callable[[Line], Line]) -> ReplyView:
    groups = (Group(one.feel, tuple(change(line) for line in one.lines)) for one in view.groups)
    return replace(view, groups=tuple(groups))


def _answered(view: ReplyView, at: int) -> ReplyView:
    bare = replace(view.answers[at], words="")
    return replace(view, answers=(*view.answers[:at], bare, *view.answers[at + 1 :]))


_STEPS: tuple[Callable[[ReplyView], ReplyView], ...] = (
    _no_offer,
    _no_notes,
    _one_reason_less,
    _one_change_less,
    _no_why,
    _no_open,
    _one_page_less,
    _no_consent,
    _one_question,
    _no_words,
    _no_rules,
    _no_link,
    _no_questions,
    _brief,
)
