"""Which setting somebody means who names it his own way: `rf spring`, `wedge`, `rear split`, `Track bar, left end`.

Words count, not their order: `spring.rf`, `rf spring` and `right front springs` are one setting. Known are the
addresses, the names, the garage's `say` words and what the trade calls a setting of that role.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from difflib import get_close_matches

from producer.basics.errors import ProducerError
from producer.language.terms import Vocabulary
from producer.model.garage import Garage
from producer.model.words import CORNER_NAMES, ENDS

_WORD = re.compile(r"[^\W_]+")
_NEAR = 0.8  # likeness of two words from which one may be the other misspelt
_NAMED, _LISTED = 3, 8
_Bag = frozenset[str]
_NOWHERE: _Bag = frozenset()
_SPLITS = (frozenset({"rear", "split"}), frozenset({"front", "split"}))


def which(garage: Garage, wanted: str) -> str:
    """The address of the setting or split that is meant.

    Raises ProducerError that lists them where several may be meant, and else names the nearest or where to look.
    """
    plain, asked = " ".join(wanted.lower().split()), _words(wanted)
    if plain in garage.settings or plain in garage.splits:
        return plain
    bags = _bags(garage)
    found = _matching(asked, bags) or _matching(_as_spring(asked, garage), bags) or _within(asked, bags)
    if len(found) == 1:
        return found[0]
    shown = wanted.strip()[:60]
    if found:
        more = f" and {len(found) - _LISTED} more" if len(found) > _LISTED else ""
        raise ProducerError(f"'{shown}' has several: {', '.join(found[:_LISTED])}{more}")
    near = _nearest(wanted, bags)
    hint = f"did you mean {_either(near)}?" if near else f"its settings stand in garages/{garage.garage}.yaml"
    raise ProducerError(f"the garage '{garage.garage}' has no setting '{shown}'; {hint}")


def _words(text: str) -> _Bag:
    return frozenset(_WORD.findall(text.casefold()))


def _bags(garage: Garage) -> Mapping[str, tuple[_Bag, ...]]:
    """The words that each address may be called by, settings first; a word of its parameter is always among them."""
    forms: dict[str, list[_Bag]] = {name: [_words(name)] for name in garage.parameters}
    for first, candidates in Vocabulary(garage).phrases.items():
        for _, rest, kind, parameter in candidates:
            if kind == "param":
                forms[str(parameter)].append(_words(" ".join((first, *rest))))
    every = (*garage.settings, *garage.splits)
    return {
        one: tuple(form | place for place in _places(one) for form in forms[one.partition(".")[0]]) for one in every
    }


def _places(address: str) -> Iterator[_Bag]:
    """What the corner, the end or the split may be called, also together with the other one of its axle or side."""
    part = address.partition(".")[2]
    if not part:
        yield _NOWHERE
    elif part.endswith("_split"):
        yield _words(part)
    else:
        yield from (frozenset({part}), _words(CORNER_NAMES[part]))
        if part not in ENDS:
            yield from (frozenset({one}) for one in CORNER_NAMES[part].split())


def _matching(asked: _Bag, bags: Mapping[str, Sequence[_Bag]]) -> list[str]:
    return [address for address, known in bags.items() if asked in known]


def _within(asked: _Bag, bags: Mapping[str, Sequence[_Bag]]) -> list[str]:
    """Those that have all of the words and more: `spring`, `rf`, `bar`."""
    return [address for address, known in bags.items() if asked and any(asked <= one for one in known)]


def _as_spring(asked: _Bag, garage: Garage) -> _Bag:
    """`rear split` alone is that of the springs: the trade knows no other."""
    springs = [name for name, one in garage.parameters.items() if one.role == "spring"]
    return asked | _words(springs[0]) if len(springs) == 1 and asked in _SPLITS else asked


def _nearest(wanted: str, bags: Mapping[str, Sequence[_Bag]]) -> list[str]:
    """At most three addresses: with each unknown word put right, else those written most alike without spaces."""
    known = sorted({word for several in bags.values() for one in several for word in one})
    right = frozenset(_put_right(one, known) for one in _words(wanted))
    found = _matching(right, bags) or _within(right, bags)
    if not found:
        joined = {_joined(one): one for one in bags}
        found = [joined[one] for one in get_close_matches(_joined(wanted), joined, _NAMED, _NEAR)]
    return found[:_NAMED]


def _joined(text: str) -> str:
    return "".join(_WORD.findall(text.casefold()))


def _put_right(word: str, known: Collection[str]) -> str:
    """The known word that it may be: with letters changed round (`fr`), or nearly the same."""
    if word in known:
        return word
    turned = next((one for one in known if sorted(one) == sorted(word)), None)
    return turned or next(iter(get_close_matches(word, known, 1, _NEAR)), word)


def _either(names: Sequence[str]) -> str:
    """`'a'`, `'a' or 'b'`, `'a', 'b' or 'c'`."""
    quoted = [f"'{one}'" for one in names]
    return " or ".join([", ".join(quoted[:-1]), quoted[-1]] if len(quoted) > 1 else quoted)
