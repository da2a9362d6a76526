"""The words of a take in time, and the sentences that they make, also where the captions have no stops."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from itertools import accumulate

from producer.basics.place import Place
from producer.language.numbers import STARTS
from producer.language.tokens import listed
from producer.model.said import CaptionFile, SaidLine, SaidWord
from producer.take.apart import PUT_RIGHT, figures_apart

_STOPS = (".", "?", "!")
# Captions with fewer stops than one in so many words are taken to have none: automatic ones.
_STOP_IN_WORDS = 60
_PAUSE_MS, _LONG_PAUSE_MS = 700, 1000
# A pause after or before one of these ends nothing: "the right front is at ... 775".
_LEADS = listed("at is the to of and from a an on in with by about it's i'm we're that's minus point")
# What begins a sentence that takes back the one before: the two are read as one.
_TAKEN_BACK = (
    "sorry", "no sorry", "wait", "no wait", "i mean", "make that", "scratch that", "correction", "or rather",
    "excuse me", "let me correct",
)  # fmt: skip
# What announces that a sentence is said again.
_AGAIN = tuple(
    tuple(one.split())
    for one in (
        "scratch that", "once more", "one more time", "from the top", "that again", "that one again", "it again",
        "start over", "one over", "start again",
    )
)  # fmt: skip
_LASTS = frozenset(one[-1] for one in _AGAIN)
_FILLERS = listed("um uh er erm uhh umm ah hmm mm")
_SIDES, _AXLES = listed("left right"), listed("front rear end")
_KNOWN = listed("that how what if it the why where when who this")
_TRIM = ".,;:!?\"'()[]\u2026\u2013\u2014-"


@dataclass(frozen=True, slots=True)
class Speech:
    """One caption file as one run of words.

    `words` as written in the captions, `plain` the same in lower case without punctuation at their ends ("" for a
    dash). `starts_ms` of each word. `punctuated`: the captions mark where sentences end.
    """

    file: str
    words: tuple[str, ...]
    plain: tuple[str, ...]
    starts_ms: tuple[int, ...]
    lines: tuple[SaidLine, ...]
    line_of: tuple[int, ...] = field(repr=False)
    punctuated: bool
    end_ms: int

    def __len__(self) -> int:
        return len(self.words)

    def ms(self, word: int) -> int:
        """When word `word` starts; the end for the one after the last."""
        return self.starts_ms[word] if word < len(self.starts_ms) else self.end_ms

    def place(self, word: int) -> Place:
        """The line of times of the cue that holds a word."""
        return self.lines[self.line_of[word]].place if self.lines else Place(self.file, 1, 1)

    def text(self, first: int, last: int) -> str:
        """Words `first` to `last` (exclusive) as one text."""
        return " ".join(self.words[first:last])

    def pause_after(self, word: int) -> int:
        """Milliseconds of silence after a word, as far as the times of the captions tell; 0 after the last."""
        if word + 1 >= len(self.words):
            return 0
        following = self.starts_ms[word + 1]
        line = self.line_of[word]
        if self.line_of[word + 1] != line and not self.lines[line].words[-1].timed:
            return max(0, following - self.lines[line].end_ms)
        # Spoken at leisure a letter takes some 80 ms, a figure more (common practice, no source).
        lasts = 150 + 80 * len(self.plain[word]) + 200 * sum(letter.isdigit() for letter in self.plain[word])
        return max(0, following - self.starts_ms[word] - lasts)


def speech(captions: CaptionFile) -> Speech:
    """The words of a caption file."""
    every = ((word, number) for number, line in enumerate(captions.said) for word in line.words)
    words = _without_fillers([(word, number) for word, number in every if plain(word.text) not in _FILLERS])
    texts = tuple(word.text for word, _ in words)
    bare = tuple(plain(text) for text in texts)
    starts = tuple(word.start_ms for word, _ in words)
    stops = sum(text.endswith(_STOPS) for text in texts)
    timed = sum(word.timed for word, _ in words) * 2 > len(words)
    by_silence = timed and stops * _STOP_IN_WORDS < len(texts)
    return Speech(
        captions.file,
        figures_apart(texts, bare, starts if by_silence else ()),
        bare,
        starts,
        captions.said,
        tuple(number for _, number in words),
        stops * _STOP_IN_WORDS >= len(texts),
        max(captions.end_ms, words[-1][0].start_ms if words else 0),
    )


def _without_fillers(words: list[tuple[SaidWord, int]]) -> list[tuple[SaidWord, int]]:
    """Without "you know" where it is no question of knowing, and without words that captions have twice."""
    said = [plain(word.text) for word, _ in words]
    gone = {at for at in range(1, len(said)) if said[at] == said[at - 1] and not _twice(said[at])}
    for at in range(len(said) - 1):
        if said[at] == "you" and said[at + 1] == "know" and _KNOWN.isdisjoint(said[at + 2 : at + 3]):
            gone.update((at, at + 1))
    return [one for at, one in enumerate(words) if at not in gone]


def _twice(word: str) -> bool:
    """Words that are said twice in a row: figures ("two two", "4 4"), "had had", "that that"."""
    return word in STARTS or word[:1].isdigit() or word in {"had", "that"}


def with_ones(heard: Speech, heads: frozenset[str]) -> Speech:
    """The "one" of "right rear one" as a figure; elsewhere it counts nothing: "the right rear one".

    `heads`: the last words of the settings' names.
    """
    found = list(heard.words)
    for at in range(2, len(found)):
        following = heard.plain[at + 1] if at + 1 < len(found) and found[at][-1:].isalpha() else ""
        alone = following not in STARTS and following not in ("hundred", "thousand")
        if heard.plain[at] == "one" and alone and _counts(heard.plain[max(0, at - 3) : at], heads):
            found[at] = found[at].lower().replace("one", "1")
    return replace(heard, words=tuple(found), plain=tuple(plain(one) for one in found))


def _counts(before: Sequence[str], heads: frozenset[str]) -> bool:
    """Whether a "one" after these words is a figure: "right rear one", "front bar, one", "is at one"."""
    corner = before[-1] in _AXLES and before[-2] in _SIDES and before[:-2] != ("the",)
    named = before[-1] in heads and before[-2] != "the"
    set_at = before[-1] == "at" and (before[-2] in heads or before[-2] in {"is", "it's"})
    said = before[-1] in PUT_RIGHT or (before[-1] == "it's" and before[-2] in heads)
    return corner or named or set_at or said or tuple(before[-2:]) in {("i", "run"), ("back", "to")}


def plain(word: str) -> str:
    """A word in lower case without the punctuation around it."""
    return word.strip(_TRIM).lower().replace("\u2019", "'")


def breaks(heard: Speech) -> list[int]:
    """Where a sentence ends, as the captions and the pauses have it: the place after its last word, rising."""
    found: list[int] = []
    for at in range(len(heard) - 1):
        ends = heard.words[at].endswith(_STOPS) or (not heard.punctuated and _pauses(heard, at))
        if (ends and not takes_back(heard.plain, at + 1)) or _begins_again(heard.plain, at):
            found.append(at + 1)
    return [*found, len(heard)] if len(heard) else []


def _begins_again(words: Sequence[str], at: int) -> bool:
    """Whether the words up to `at` say that something is said again from here on: "let me take that again"."""
    return words[at] in _LASTS and any(tuple(words[max(0, at + 1 - len(one)) : at + 1]) == one for one in _AGAIN)


def _pauses(heard: Speech, at: int) -> bool:
    following = heard.plain[at + 1]
    if following[:1].isdigit() or (heard.plain[at] in _LEADS and following in STARTS):
        return False
    return heard.pause_after(at) >= (_LONG_PAUSE_MS if heard.plain[at] in _LEADS else _PAUSE_MS)


def takes_back(words: Sequence[str], at: int) -> bool:
    """Whether the words at `at` take back what was said before them."""
    ahead = " ".join(words[at : at + 3])
    return any(ahead == one or ahead.startswith(f"{one} ") for one in _TAKEN_BACK)


@dataclass(frozen=True, slots=True)
class Offsets:
    """A text made of words, and which word each of its characters belongs to."""

    text: str
    first: int
    begins: tuple[int, ...]

    def word(self, character: int) -> int:
        """The word of the speech at a character; the first for what was put in front."""
        return self.first + max(0, bisect_right(self.begins, character) - 1)


def offsets(words: Sequence[str], first: int, ahead: str = "") -> Offsets:
    """`words` as a text, with `ahead` put in front of them (it belongs to the first word)."""
    lengths = [len(word) + 1 for word in words[:-1]]
    begins = tuple(accumulate(lengths, initial=len(ahead)))
    return Offsets(ahead + " ".join(words), first, begins)
