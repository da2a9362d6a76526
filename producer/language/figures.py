"""The bare figure that stands at a word, written or spoken: digits, parts, groups of number words."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from producer.language.number_words import MORE, OH, PARTS, SMALL, TENS, UNITS, VULGAR, group
from producer.language.tokens import Words

_HUNDRED = Decimal(100)
# "Half of the field" is no figure, "an eighth of toe out" is.
_WHOLES = frozenset({"the", "them", "you", "us", "those", "these", "my", "our", "your", "that", "this", "it", "all"})
# Before "one" these count it: "took one out".
_ADDED = frozenset({"up", "down", "by", "took", "take", "add", "added", "put", "went", "go"})
_ARTICLES = frozenset({"a", "an", "another", "extra", "one"})


@dataclass(frozen=True, slots=True)
class Said:
    """The bare figure: where it ends (a place in the words) and what it may mean."""

    next: int
    readings: tuple[Decimal, ...]
    ratios: tuple[Decimal, ...] = ()
    unit: str = ""


def figure_at(words: Words, at: int) -> Said | None:
    """The figure that starts at word `at`; readings are () where it is no figure of a setting (a time, a list)."""
    text = words.text
    word = text[at]
    if word[0].isdigit() or (word[0] == "." and word[1:2].isdigit()):
        return _written(words, at)
    if word in VULGAR:
        return Said(at + 1, (VULGAR[word],))
    if word in _ARTICLES or word in {"half", "quarter", "inch"}:
        part = _part(text, at)
        if part is not None or word not in SMALL:
            return part
    if word == "hundred":
        few = at and text[at - 1] in {"couple", "few", "several", "of"}
        return _spoken(text, at) if text[at + 1 : at + 2] and text[at + 1] in UNITS and not few else None
    if word == "point":
        return _decimals(text, at, Decimal(0))
    return _spoken(text, at)


def _written(words: Words, at: int) -> Said | None:
    """Digits: 51.5, 1,050, 51½, 3 3/4, 1-1/8, 3.90:1; times and lists with strokes are foreign."""
    text = words.text
    word = text[at].removesuffix(":1")
    if "/" in word:
        part = _stroke(word)
        return Said(at + 1, () if part is None else (part,))
    value = _digits(word)
    if value is None:
        return Said(at + 1, ())
    following = at + 1
    if following < len(text):
        part, following = _added_part(words, following)
        if part:
            return Said(following, (value + part,))
    # "a 390 gear": three figures without a point may be a ratio.
    ratios = (value / _HUNDRED,) if len(word) == 3 and word.isdigit() else ()
    return Said(following, (value,), ratios)


def _digits(word: str) -> Decimal | None:
    whole, _, rest = word.partition(".")
    if ":" in word or len(word) > 12:
        return None
    if "," in whole:
        first, *threes = whole.split(",")
        if not 1 <= len(first) <= 3 or any(len(one) != 3 for one in threes):
            return None
        whole = first + "".join(threes)
    # isdigit lets in digits of other scripts; Decimal reads them, but superscripts it does not.
    return Decimal(f"{whole or '0'}.{rest}" if rest else whole) if _decimal(whole) and _decimal(rest) else None


def _decimal(digits: str) -> bool:
    return not digits or (digits.isascii() and digits.isdigit())


def _stroke(word: str) -> Decimal | None:
    parts = word.split("/")
    if len(parts) != 2 or parts[1] not in {"2", "4", "8", "16", "32"} or not _decimal(parts[0]) or len(parts[0]) > 2:
        return None
    value = Decimal(parts[0]) / Decimal(parts[1])
    return value if 0 < value < 1 else None


def _added_part(words: Words, at: int) -> tuple[Decimal | None, int]:
    """What is added to a whole number: "½", "3/4", "-1/8", "and a half", "and three quarters"."""
    text = words.text
    word = text[at]
    if word in VULGAR:
        return VULGAR[word], at + 1
    if "/" in word and word[0].isdigit():
        part = _stroke(word)
        return part, at + 1 if part else at
    if word == "-" and at + 1 < len(text) and words.start[at + 1] == words.end[at] and "/" in text[at + 1]:
        part = _stroke(text[at + 1]) if text[at + 1][0].isdigit() else None
        return part, at + 2 if part else at
    return _and_part(text, at)


def _and_part(text: list[str], at: int) -> tuple[Decimal | None, int]:
    """As in "and a half", "and three quarters", "and five eighths"."""
    if at + 2 >= len(text) or text[at] != "and":
        return None, at
    part = PARTS.get(text[at + 2])
    if part is None:
        return None, at
    count = 1 if text[at + 1] in _ARTICLES else SMALL.get(text[at + 1], 0)
    return (part * count, at + 3) if 0 < count * part < 1 else (None, at)


def _part(text: list[str], at: int) -> Said | None:
    """Parts and single units: "a quarter inch", "half a pound", "an eighth", "an inch and a quarter", "a click"."""
    last = len(text) - 1
    word = text[at]
    if word in _ARTICLES:
        return _after_article(text, at + 1) if at < last else None
    if word == "inch":
        part, following = _and_part(text, at + 1)
        return Said(following, (1 + part,), unit="in") if part else None
    if word == "half" and at + 1 < last and text[at + 1] in {"a", "an"} and text[at + 2] in UNITS:
        return Said(at + 2, (PARTS["half"],))
    return Said(at + 1, (PARTS[word],)) if at < last and text[at + 1] in UNITS else None


def _after_article(text: list[str], at: int) -> Said | None:
    word = text[at]
    if word in {"full", "whole", "single"} and text[at + 1 : at + 2] and text[at + 1] in UNITS:
        at, word = at + 1, text[at + 1]
    if word in {"hundred", "thousand"}:
        return _spoken(text, at)
    if word == "half" and text[at + 1 : at + 2] in (["a"], ["an"]) and at + 2 < len(text) and text[at + 2] in UNITS:
        return Said(at + 2, (PARTS["half"],))
    if word in PARTS:
        of = text[at + 1 : at + 2] == ["of"]
        return None if of and _WHOLES & set(text[at + 2 : at + 3]) else Said(at + 1, (PARTS[word],))
    if word in SMALL or word in TENS or word[0].isdigit():
        return _counted_again(text, at)
    unit = UNITS.get(word, "")
    if not unit or (word == "point" and text[at + 1 : at + 2] != ["of"]) or word == "turn":
        return None
    part, following = _and_part(text, at + 1)
    value = 1 + part if part else Decimal(1)
    # "a click or two", "a step at a time": how many is not said.
    vague = text[following : following + 1] == ["or"] or text[following : following + 2] == ["at", "a"]
    return None if vague else Said(following, (value,), unit=unit)


def _counted_again(text: list[str], at: int) -> Said | None:
    """As in "another two clicks"; after a plain article the number reads for itself."""
    if text[at - 1] != "another":
        return None
    if text[at][0].isdigit():
        value = _digits(text[at])
        return None if value is None else Said(at + 1, (value,))
    return _spoken(text, at)


def _spoken(text: list[str], at: int) -> Said | None:
    """Number words from `at`: groups, hundreds, "point ...", "and a half"."""
    groups: list[tuple[int, int]] = []
    hundred = False
    while at < len(text) and len(groups) < 8:
        if text[at] in {"hundred", "thousand"} and len(groups) <= 1 and not hundred:
            value, at = _large(text, at, groups[0][0] if groups else 1)
            groups, hundred = [(value, 3)], True
            continue
        found = None if hundred else group(text, at)
        if found is None:
            break
        groups.append((found[0], found[1]))
        at = found[2]
    if not groups:
        return None
    if at < len(text) and text[at] == "point":
        return _decimals(text, at, Decimal(groups[0][0])) if len(groups) == 1 else Said(at + 1, ())
    return _ended(text, at, groups, hundred)


def _ended(text: list[str], at: int, groups: list[tuple[int, int]], hundred: bool) -> Said | None:
    if len(groups) == 1:
        value = Decimal(groups[0][0])
        word = text[at] if at < len(text) else ""
        if word in PARTS and text[at - 1] in SMALL and 0 < value * PARTS[word] < 1:
            return Said(at + 1, (value * PARTS[word],))
        part, following = _and_part(text, at)
        if part:
            return Said(following, (value + part,))
        counted = (
            word in UNITS
            or word in MORE
            or _counted_before(text, at)
            or (at > 1 and text[at - 2] in _ADDED)
            or word == "out"
        )
        if value == 1 and text[at - 1] == "one" and not counted:
            return None  # "this one", "one of them"
        return Said(at, (value,), (value / _HUNDRED,) if hundred else ())
    part, following = _and_part(text, at)
    if part and groups[-1][0] < 100:
        whole = _paired(groups)
        return Said(following, tuple(one + part for one in whole if one == one.to_integral_value()))
    return Said(at, _paired(groups))


def _counted_before(text: list[str], at: int) -> bool:
    """As in "two clicks on the left rear and one on the right rear": "one" counts what was counted before."""
    if text[at : at + 1] not in (["on"], ["in"], ["at"], ["out"], ["to"]) or at < 2 or text[at - 2] not in {"and", ","}:
        return False
    return text[at + 1 : at + 2] == ["the"] and any(word in UNITS for word in text[max(0, at - 12) : at - 1])


def _large(text: list[str], at: int, count: int) -> tuple[int, int]:
    """Hundreds and thousands from the word `hundred` or `thousand` at `at`, said after `count`."""
    scale = 100 if text[at] == "hundred" else 1000
    value, at = count * scale, at + 1
    after = at + 1 if text[at : at + 1] == ["and"] and text[at + 1 : at + 2] not in (["a"], ["an"]) else at
    rest = group(text, after)
    if rest is None:
        return value, at
    following = text[rest[2]] if rest[2] < len(text) else ""
    if scale == 1000 and following == "hundred":
        inner, after = _large(text, rest[2], rest[0])
        return value + inner, after
    if following in SMALL or following in TENS or following == "hundred" or following in PARTS:
        return value, at  # "seven hundred seven fifty" are two numbers, "three hundred and three quarters" one
    if text[rest[2] - 1] in SMALL and rest[2] - after == 1 and after > at and rest[1] == 1 and following == "and":
        return value, at
    return value + rest[0], rest[2]


def _paired(groups: list[tuple[int, int]]) -> tuple[Decimal, ...]:
    """Readings of groups said one after another; () where they are no number (a lap time, a list)."""
    if all(size == 1 for _, size in groups):
        digits = "".join(str(value) for value, _ in groups)
        if len(digits) == 2 and digits[0] == digits[1]:  # "three three" may be said twice
            return (Decimal(digits), Decimal(f"{digits[0]}.{digits[1]}"), Decimal(digits[0]))
        return (Decimal(digits), Decimal(f"{digits[0]}.{digits[1:]}"))
    (first, size), (second, width), *rest = groups
    if not rest:
        shown = f"{second:02d}" if width == 2 else str(second)
        if width == 1:
            return (Decimal(f"{first}.{shown}"),)
        return (Decimal(f"{first}{shown}"), Decimal(f"{first}.{shown}"))
    if len(rest) == 1 and rest[0][1] == 1 and size == 1 and width == 2:
        return (Decimal(f"{first}.{second:02d}{rest[0][0]}"), Decimal(f"{first}{second:02d}.{rest[0][0]}"))
    return ()


def _decimals(text: list[str], at: int, whole: Decimal) -> Said | None:
    """As in "point one two five", "point oh five", "point seventy-five" from the word `point` at `at`."""
    digits = ""
    at += 1
    while at < len(text) and len(digits) < 6:
        if text[at] in OH:
            digits, at = digits + "0", at + 1
            continue
        found = group(text, at)
        if found is None:
            break
        digits, at = digits + str(found[0]), found[2]
    return Said(at, (whole + Decimal(f"0.{digits}"),)) if digits else None
