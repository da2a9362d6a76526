"""A message as a row of pieces: complaints, parts of the corner, pedals, tyres, degrees, and the words between."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from producer.language.message_words import ACROSS, AT, ENTERING, LEAVING, TURN_WORDS, Entry
from producer.language.number_words import FOREIGN_AFTER, ORDINALS, SMALL, UNITS
from producer.language.tokens import Words
from producer.model.track import Track

_CLITICS = frozenset({"'s", "'m", "'re", "'ve", "'ll", "'d"})
_PARTS = frozenset({"entry", "exit", "middle", "center", "centre", "apex", "mid", "entrance"})
_JOINED = frozenset({"and", "&", "/", "-", "–", "n", "to", ","})


@dataclass(frozen=True, slots=True)
class Piece:
    """`kind` is one of the message's tables or `word`; `word` its last word; `start`, `end` characters of the text."""

    kind: str
    word: str
    data: object
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Turns:
    """Which turns of the track begin a corner and which end one: odd and even where the track does not say."""

    first: frozenset[int]
    last: frozenset[int]

    @staticmethod
    def of(track: Track | None) -> Turns:
        """The turns as the track's corners group them."""
        groups = [[int(one) for one in corner.turns] for corner in track.corners if corner.turns] if track else []
        if not groups:
            return Turns(frozenset({1, 3, 5, 7}), frozenset({2, 4, 6, 8}))
        alone = [one for one in groups if len(one) > 1]
        return Turns(frozenset(one[0] for one in alone), frozenset(one[-1] for one in alone))

    def at(self, number: int) -> str:
        """The part of the corner that a turn is by itself."""
        return "entry" if number in self.first else "exit" if number in self.last else "middle"


def without_clitics(run: Words) -> Words:
    """Without "'s", "'m" and the like, which say nothing here."""
    kept = [at for at, word in enumerate(run.text) if word not in _CLITICS]
    return Words([run.text[at] for at in kept], [run.start[at] for at in kept], [run.end[at] for at in kept])


def row(run: Words, phrases: Mapping[str, tuple[Entry, ...]], turns: Turns) -> list[Piece]:
    """The pieces of a message whose words were mended."""
    text, found, at = run.text, [], 0
    while at < len(text):
        size, kind = 1, "word"
        data: object = None
        turn = _turn(text, at, turns)
        if turn is not None:
            size, kind, data = turn[0], "phase", turn[1]
        else:
            for rest, named, meant in phrases.get(text[at], ()):
                length = len(rest)
                if length and _unlike_before_middle(text[at], rest) and _of_middle(text, at + 1 + length):
                    continue  # "get it to turn in the middle", "pushing through the center"
                if not length or text[at + 1 : at + 1 + length] == list(rest):
                    size, kind, data = length + 1, named, meant
                    break
        found.append(Piece(kind, text[at + size - 1], data, run.start[at], run.end[at + size - 1]))
        at += size
    return found


def _unlike_before_middle(first: str, rest: Sequence[str]) -> bool:
    if rest[-1] == "through":
        return first.startswith("push")
    return rest[-1] == "in" and "turn" in (first, *rest)


def _of_middle(text: Sequence[str], at: int) -> bool:
    return not {"middle", "center", "centre"}.isdisjoint(text[at : at + 2])


def _turn(text: Sequence[str], at: int, turns: Turns) -> tuple[int, str] | None:
    """A turn by its number from word `at`: (how many words, part of the corner)."""
    word = text[at]
    if word in TURN_WORDS:
        numbers, end = _numbers(text, at + 1)
        return _bare(text, at, end, numbers, turns) if numbers else None
    if word not in ENTERING and word not in AT and word not in LEAVING and word not in ACROSS:
        return None
    begin = at + 1
    while text[begin : begin + 1] and text[begin] in {"of", "the", "in"}:
        begin += 1
    if text[begin : begin + 1] and text[begin] in TURN_WORDS:
        begin += 1
    numbers, end = _numbers(text, begin)
    if not numbers:
        return None
    if word in LEAVING:
        return end - at, "exit"
    if word in ACROSS:
        return end - at, "middle"
    if word in AT:
        return (end - at, "middle") if len(numbers) > 1 else (end - at, turns.at(numbers[0]))
    return end - at, "entry"


def _bare(text: Sequence[str], at: int, end: int, numbers: list[int], turns: Turns) -> tuple[int, str] | None:
    """As in "turns 1 and 2" (the middle), "turn 1" (where it lies); in "turn 4 exit" the next word tells."""
    if text[end : end + 1] and text[end] in _PARTS:
        return None
    return end - at, "middle" if len(numbers) > 1 else turns.at(numbers[0])


def _numbers(text: Sequence[str], at: int) -> tuple[list[int], int]:
    """The turn numbers from word `at`, one or two, and the word after them; none where they count something."""
    first = _number(text, at)
    if first is None:
        return [], at
    joint = at + 1
    if joint < len(text) and text[joint] in _JOINED:
        second = joint + 2 if text[joint + 1 : joint + 2] and text[joint + 1] in TURN_WORDS else joint + 1
        other = _number(text, second)
        if other is not None:
            return [first, other], second + 1
    if "/" in text[at]:
        one, _, other_turn = text[at].partition("/")
        return [int(one), int(other_turn)], at + 1
    return [first], at + 1


def _number(text: Sequence[str], at: int) -> int | None:
    if at >= len(text):
        return None
    word = text[at]
    after = text[at + 1] if at + 1 < len(text) else ""
    if after in UNITS or after in FOREIGN_AFTER or after in ORDINALS:
        return None
    if len(word) == 3 and word[1] == "/" and word[0] in "1357" and word[2] in "2468":
        return int(word[0])
    if len(word) == 1 and word in "12345678":
        return int(word)
    number = SMALL.get(word, 0)
    return number if 0 < number < 9 else None
