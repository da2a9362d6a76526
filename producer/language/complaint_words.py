"""Whether a word of a message is a complaint about the car, by the words around it."""

from __future__ import annotations

from typing import cast

from producer.language.message_row import Piece
from producer.language.tokens import listed

STOPS = listed(". ! ? ; but then while though although however yet after")
# "How do i calm the rear down" complains, "this calms the rear" does not.
_WISHING = listed(
    "how what need want trying tried can't get which would should help cannot wish trouble way possible you can"
)
_MAKING = listed("make want need have like prefer")
_DESCRIBES = listed("skatey skaty slidey slidy slippery floaty wiggly light numb greasy")
# What follows "tight" or "loose" where it is the car's.
_FOLLOWS = listed(
    "goosy goosey in off out on at when with after once for from as if to the my what how why which any should do "
    "does is was has here there now still again lately every each all until till up down everywhere overall "
    "condition handling car feeling feel side also too idea ideas help tips please plz need needs i'm lol mate "
    "man bro jo guys thing way going coming getting under during over a an this that not no by i've tho wtf wat "
    "wheel pad controller keyboard"
)


def sign(pieces: list[Piece], at: int, subject: str) -> tuple[int | None, str]:
    """+1 tight, -1 loose, 0 fine, None for no such word; and the part of the corner that the word says itself.

    `subject`: the end of the car that is spoken of, `rear` or `front`, or "".
    """
    one = pieces[at]
    if one.kind == "slip":
        return _slips(pieces, at, subject), ""
    if one.kind == "turn":
        return _refuses(pieces, at, subject)
    if one.kind == "wish" and one.word == "down" and subject == "rear" and _wont(pieces, at):
        return -1, ""  # "my rear end won't settle down"
    if one.kind == "fine":
        better = at > 0 and pieces[at - 1].kind in {"lacks", "turn"}  # "make it turn better in the middle"
        return (None if better else 1 if one.word in {"turns", "rotates"} and _wont(pieces, at) else 0), ""
    if one.kind not in {"feel", "lacks"} or not _meant(pieces, at):
        return None, ""
    polarity, *phase = cast("tuple[int, str]", one.data)
    return polarity, str(phase[0]) if phase else ""


def _meant(pieces: list[Piece], at: int) -> bool:
    """Whether a word for a complaint is said of the car, and a wish is one."""
    one = pieces[at]
    if one.kind == "lacks" and one.end - one.start == len(one.word):
        return not _MAKING.isdisjoint(x.word for x in pieces[max(0, at - 5) : at])
    if one.kind == "lacks":
        return not _WISHING.isdisjoint(x.word for x in pieces[max(0, at - 8) : at])
    if one.word == "free":
        return _is_so(pieces, at)
    return one.word not in {"tight", "loose"} or not _of_a_thing(pieces, at)


def _refuses(pieces: list[Piece], at: int, subject: str) -> tuple[int | None, str]:
    """As in "won't turn" (tight) and "the rear won't stick" (loose)."""
    one = pieces[at]
    gripping = one.word in {"stick", "grip", "up", "grab", "hold", "plant", "settle"}
    subject = subject or _behind(pieces, at)
    if not _wont(pieces, at) or (gripping and not subject):
        return None, ""
    return (-1 if subject == "rear" and gripping else 1), "entry" if one.data == "entry" else ""


def _of_a_thing(pieces: list[Piece], at: int) -> bool:
    """As in "loose screws", "a tight budget": said of another noun."""
    after = pieces[at + 1] if at + 1 < len(pieces) else None
    if after is None or after.kind != "word" or not after.word[0].isalpha() or after.word in _FOLLOWS:
        return False
    before = pieces[at - 1] if at else None
    return (
        before is None
        or before.word in {"a", "an", "the", "some", "these", "those", "with", "my", "of", "no"}
        or (before.kind == "sep")
    )


def _slips(pieces: list[Piece], at: int, subject: str) -> int | None:
    """Who slides: the rear is loose, the front tight, a car up the track tight, else loose for the plain verbs."""
    if subject:
        return -1 if subject == "rear" else 1
    one = pieces[at]
    if one.word in {"grip", "bite", "traction"} or one.word in _DESCRIBES:
        return {"rear": -1, "front": 1}.get(_behind(pieces, at))
    if {"wide", "wall", "up"} & {x.word for x in pieces[at + 1 : at + 5]}:
        return 1
    return -1 if one.word in {"slide", "slides", "sliding", "ice"} else None


def _behind(pieces: list[Piece], at: int) -> str:
    """Which end is named after a word: "no grip in the rear"."""
    return next((one.kind for one in pieces[at + 1 : at + 5] if one.kind in {"rear", "front"}), "")


def _is_so(pieces: list[Piece], at: int) -> bool:
    """Whether "free" is said of the car: after a degree or a verb of being, or before a part of the corner."""
    before = pieces[at - 1] if at else None
    after = pieces[at + 1] if at + 1 < len(pieces) else None
    said = listed("is gets get getting got feels feel too been goes go just so it was")
    near = before is None or before.word in said or before.kind in {"very", "little", "sep", "pronoun"}
    return near or (after is not None and (after.kind in {"phase", "pedal"} or after.word in {"in", "off", "out"}))


def _wont(pieces: list[Piece], at: int) -> bool:
    """As in "won't turn", "can't get it to rotate", "doesn't want to turn in"."""
    for back in range(at - 1, max(-1, at - 7), -1):
        one = pieces[back]
        if one.kind == "neg":
            return True
        if one.kind in {"feel", "fine", "slip", "phase", "pedal", "tyres"} or one.word in STOPS or one.word == ",":
            return False
    return False
