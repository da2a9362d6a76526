"""Where sentences end in captions that mark none: around each setting and its figure, at pages and at conditions.

The claims reader lives on sentences. Automatic captions have none, so that a figure would reach into whatever is said
next; here each figure ends its sentence, and each setting that a figure follows begins one (common practice of the
trade's talk, no source).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from producer.language.mentions import mentions
from producer.language.numbers import STARTS, numbers
from producer.language.terms import Vocabulary
from producer.language.tokens import LONGEST, listed
from producer.take.speech import Speech, breaks, offsets, takes_back

Sentence = tuple[int, int]  # words, the last one exclusive
# What may stand between a setting and its figure.
_GLUE = listed(
    "is at it's its i'm we're i we run running runs set in psi pounds per inch inches degrees clicks percent of the "
    "goes comes went go from up down to with a sits stays now here on that's that was are both and minus point by"
)
_REACH, _NEAR = 8, 3
# Words between a setting and its figure that are none of the glue misheard.
_MEANS = listed(
    "try tried but more less than if when or stiffer softer higher lower tighter looser first then minus plus not no "
    "sorry default stock laps would could should left right front rear page"
)
_SENTENCE = 40  # words
# After a figure these go on with it.
_GOES_ON = listed(
    "and to on for in up down from first then or more less extra fewer at with of stiffer softer higher lower out by "
    "instead is would"
)
_BEFORE = listed("the my our now and on so then a for both your")
_LEADS_TO = listed("on to the next is okay ok now then and let's go i start with onto")
_FRESH = listed("so okay but now and the i it")
_FEELS = listed("tight loose pushing free")
_TO = listed("to up down back")
_IF_WHO = listed("it it's its the you you're your yours")


def sentences(heard: Speech, vocabulary: Vocabulary) -> list[Sentence]:
    """The sentences of a take, as ranges of its words."""
    edges = [0, *(one for one in breaks(heard) if not _asks(heard, one))]
    found = [(first, last) for first, last in pairwise(edges) if last > first]
    if heard.punctuated:
        return found
    return [part for one in found for piece in _pieces(heard.plain, one) for part in _whole(heard, piece, vocabulary)]


def _whole(heard: Speech, piece: Sentence, vocabulary: Vocabulary) -> Iterator[Sentence]:
    """A sentence that the script ended stays whole; any other is parted around its figures."""
    first, last = piece
    if last - first <= _SENTENCE and heard.words[last - 1].endswith((".", "?", "!")):
        yield piece
    else:
        yield from _parted(heard, piece, vocabulary)


def _asks(heard: Speech, end: int) -> bool:
    """Whether words before `end` ask how the car feels: "Tight in the middle?" goes with the advice that follows."""
    if end == len(heard) or not heard.words[end - 1].endswith("?"):
        return False
    first = max(0, end - 2 * _REACH)
    start = next((at + 1 for at in range(end - 2, first - 1, -1) if heard.words[at].endswith((".", "?", "!"))), first)
    return not _FEELS.isdisjoint(heard.plain[start:end])


def _pieces(words: Sequence[str], one: Sentence) -> Iterator[Sentence]:
    """No longer than the reader takes at once, cut where a thought begins."""
    first, last = one
    while last - first > LONGEST:
        fresh = (at for at in range(first + LONGEST, first + LONGEST // 2, -1) if words[at] in _FRESH)
        cut = next((at for at in fresh if words[at - 1] not in STARTS and not words[at - 1][:1].isdigit()), 0)
        cut = cut or first + LONGEST
        yield first, cut
        first = cut
    yield first, last


def _parted(heard: Speech, piece: Sentence, vocabulary: Vocabulary) -> Iterator[Sentence]:
    first, last = piece
    whole = offsets(heard.words[first:last], first)
    named = [(whole.word(one.start), whole.word(one.end - 1) + 1) for one in mentions(whole.text, vocabulary)]
    counted = [(one, whole.word(one.end - 1) + 1) for one in numbers(whole.text)]
    # "-3.5 set by the thermometer": without a stop the reader takes it for a count of sets.
    meant = [(one, end) for one, end in counted if not one.foreign or heard.plain[end - 1 : end + 1][-1:] == ("set",)]
    said = [(whole.word(one.start), end) for one, end in meant]
    cuts = {*_around_figures(heard.plain, named, said), *_turns(heard.plain, piece)}
    edges = sorted({first, last, *(one for one in cuts if first < one < last)})
    yield from pairwise(edges)


def _around_figures(words: Sequence[str], named: Sequence[Sentence], said: Sequence[Sentence]) -> Iterator[int]:
    """Before a setting that its figure follows, and after that figure."""
    ended = False
    for index, (begin, end) in enumerate(said):
        before = said[index - 1][1] if index else -1
        if before > 0 and 0 < begin - before <= 2 and all(one in _TO for one in words[before:begin]):
            before = said[index - 2][1] if index > 1 else -1  # "from 775 down to 750"
        if words[begin - 2 : begin] == ("that", "is"):
            yield begin - 2  # "that is 800, then 825" is a thought of its own
        elif words[begin - 1 : begin] in (("that's",), ("so",)):
            yield begin - 1
        owner = next((one for one in reversed(named) if before <= one[0] and one[1] <= begin), None)
        if owner is None and index and words[before:begin] == ("and",) and ended:
            yield from (end,) if end < len(words) else ()  # "20.5 and 22"
        ended = owner is not None and _close(words, owner[1], begin)
        if owner is None or not ended:
            continue
        start = _first_of_pair(words, named, owner, before)
        while start > max(before, 0) and words[start - 1] in _BEFORE:
            start -= 1
        yield start
        if end < len(words) and words[end] not in _GOES_ON and not takes_back(words, end):
            yield end


def _first_of_pair(words: Sequence[str], named: Sequence[Sentence], owner: Sentence, before: int) -> int:
    """Where "left front and left rear, 20.5 and 22" begins: at the first of the two."""
    start = owner[0]
    if start > 1 and words[start - 1] == "and":
        return next((one[0] for one in named if one[1] == start - 1 and one[0] >= before), start)
    return start


def _close(words: Sequence[str], first: int, last: int) -> bool:
    strange = [one for one in words[first:last] if not one[:1].isdigit() and one not in _GLUE]
    if last - first <= _NEAR and len(strange) == 1:
        return strange[0] not in _MEANS  # one word of it misheard: "front bar this 1.250"
    return last - first <= _REACH and not strange


def _turns(words: Sequence[str], piece: Sentence) -> Iterator[int]:
    """Before "if it ...", and around "on to the ... page"."""
    first, last = piece
    for at in range(first, last):
        if words[at] == "if" and at + 1 < last and words[at + 1] in _IF_WHO:
            yield at
        elif words[at] == "page":
            yield at + 1
            begin = at - 1
            while begin > first and words[begin - 1] in _LEADS_TO:
                begin -= 1
            yield begin
