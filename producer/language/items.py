"""A sentence as a row of items: numbers, mentions of settings, movements, effects, and plain words between them."""

from __future__ import annotations

from dataclasses import dataclass, replace

from producer.language.lexicon import FILLERS, GLUE
from producer.language.number_words import SMALL
from producer.language.numbers import STARTS, Number, read
from producer.language.senses import DOUBTFUL, driven, other_sense
from producer.language.terms import Mention, Vocabulary
from producer.language.tokens import Words, listed
from producer.model.grid import Grid

_PLACED = frozenset({"param", "corner", "axle", "side", "split"})
_BETWEEN = frozenset({"word", "at", "in", "pronoun"})
_NOUNS_AFTER = listed("the these those a over of every some big its no many and")
_TO_A_FIGURE = listed(
    "'s is at to up down back goes went moved moves -> => → : = sits stays from by now here was set bar front out"
)
_RISES = listed("comes goes climbs rises gains builds went came come go")
_SIZES = listed("smaller bigger stiffer softer larger lighter heavier")
_MIDDLES = listed("middle center centre")


@dataclass(slots=True)
class Item:
    """`kind` is one of the lexicon's kinds, `number`, `set` (data: Mention) or `word`; `word` its last word."""

    kind: str
    word: str
    data: object
    start: int
    end: int


def items(sentence: Words, vocabulary: Vocabulary) -> list[Item]:
    """The sentence's items with mentions put together, slips of the tongue and fillers left out."""
    return _clusters(_scan(_smooth(sentence), vocabulary), vocabulary)


def _smooth(sentence: Words) -> Words:
    """Without fillers and without what was said twice in a row ("i'm i'm", "up to a up to a")."""
    text = sentence.text
    kept = [at for at, word in enumerate(text) if word not in FILLERS] if not FILLERS.isdisjoint(text) else None
    if kept is None:
        if len(set(text)) == len(text):
            return sentence
        kept = list(range(len(text)))
    clean: list[int] = []
    for at in kept:
        clean.append(at)
        for size in (3, 2, 1):
            if len(clean) < 2 * size:
                continue
            said = [text[one] for one in clean[-size:]]
            again = said == [text[one] for one in clean[-2 * size : -size]]
            if again and not (size == 1 and SMALL.get(said[0], 99) < 10):
                del clean[-size:]
                break
    return Words([text[at] for at in clean], [sentence.start[at] for at in clean], [sentence.end[at] for at in clean])


def _scan(sentence: Words, vocabulary: Vocabulary) -> list[Item]:
    text, starts, ends = sentence.text, sentence.start, sentence.end
    found: list[Item] = []
    at, last = 0, len(text)
    while at < last:
        word = text[at]
        if word in STARTS or word[0] in ".0123456789":
            number, following = read(sentence, at)
            if number is not None:
                found.append(Item("number", word, number, number.start, number.end))
                at = following
                continue
        size, kind, data = _phrase(sentence, at, found, vocabulary)
        if word in DOUBTFUL and kind == "word" and (at == 0 or text[at - 1] not in _NOUNS_AFTER):
            kind, data = "move", (1, "verb")
        size, kind, data = driven(text, at, size, kind, data)
        if kind == "feel" and found and found[-1].kind == "feel" and found[-1].data == data:
            found[-1].word, found[-1].end = text[at + size - 1], ends[at + size - 1]  # "snapping loose"
        else:
            found.append(Item(kind, text[at + size - 1], data, starts[at], ends[at + size - 1]))
        at += size
    return found


def _phrase(sentence: Words, at: int, found: list[Item], vocabulary: Vocabulary) -> tuple[int, str, object]:
    """The longest phrase at a word that means there what it says: (number of words, kind, data)."""
    text = sentence.text
    for length, rest, kind, data in vocabulary.phrases.get(text[at], ()):
        if length > 1 and text[at + 1 : at + length] != rest:
            continue
        if kind == "short":
            grid = vocabulary.grids[str(data)]
            if _among_its_like(found, str(data), text, at, vocabulary) and _figure_beside(
                sentence, at, length, found, grid
            ):
                return length, "param", data
        elif kind == "param" and other_sense(text, at, length):
            if length > 1:
                return length, "word", None  # "the rear end steps out"
        elif kind in {"phase", "back", "axle"} and _before_setting(text, at + length, kind, vocabulary):
            continue
        elif kind == "word" and text[at] == "split" and found and found[-1].kind in _PLACED:
            continue  # "with less rear split it will ..."
        elif not (_turning_in(text[at : at + length]) and not _MIDDLES.isdisjoint(text[at + length : at + length + 3])):
            return length, kind, data  # but "never want to turn in the middle"
    return 1, "word", None


def _before_setting(text: list[str], after: int, kind: str, vocabulary: Vocabulary) -> bool:
    """Whether words for a part of the corner or an end of the car are a setting's: "on the brake | bias"."""
    if kind == "axle":
        return text[after - 2 : after - 1] == ["the"] and text[after : after + 1] == ["end"]  # "in the rear end"
    if after >= len(text) or (kind == "phase" and not text[after - 1].startswith("brak")):
        return False
    if kind == "phase":
        return text[after] in {"bias", "balance"}
    return text[after - 1] in {"rear", "front"} and any(
        one[2] == "param" for one in vocabulary.phrases.get(text[after], ())
    )


def _turning_in(said: list[str]) -> bool:
    """Phrases that mean something else before "the middle": "turn in", "pushing through"."""
    return said[-1] == "through" or (said[-1] == "in" and not {"turn", "turning", "turns"}.isdisjoint(said))


def _among_its_like(found: list[Item], parameter: str, text: list[str], at: int, vocabulary: Vocabulary) -> bool:
    """Whether "left" can be the left weight: where weights are spoken of, and no corner or end."""
    if vocabulary.role(parameter) != "weight.left":
        return True
    named = [str(one.data) for one in found if one.kind == "param"]
    if len(text) > at + 1 and text[at + 1] == "side":
        return not any(vocabulary.garage.parameters[one].parts for one in named)
    weighty = any(vocabulary.role(one).startswith("weight.") for one in named) or "weights" in text
    return weighty and not any(vocabulary.garage.parameters[one].parts for one in named)


def _figure_beside(sentence: Words, at: int, length: int, found: list[Item], grid: Grid) -> bool:
    """Whether a figure that the setting could have stands beside its short name: "bias is at 62", "1.25 bar"."""
    text = sentence.text
    if found and found[-1].word in _SIZES and text[at] == "bar":
        return True  # "a smaller bar up front"
    for one in reversed(found[-3:]):
        if one.kind == "number":
            if any(map(grid.inside, number_of(one).readings)):
                return True
            break
        if one.word not in {"on", "the", "in", "at", "my"}:
            break
    if _measured_out(found):
        return True
    after = at + length
    while after < len(text) and after - at - length < 5 and text[after] in _TO_A_FIGURE:
        after += 1
    if after >= len(text):
        return False
    number = read(sentence, after)[0]
    if number is None or number.foreign:
        return False
    told = text[after] in {"+", "-"} or text[after - 1] in {"up", "down", "by", "another"}
    moved = told and grid.step and all(abs(x) <= 10 * grid.step for x in number.readings)
    return bool(moved) or any(map(grid.inside, number.readings))


def _measured_out(found: list[Item]) -> bool:
    """As in "half a percent of nose", "a percent out of the nose"."""
    said = [one for one in found[-4:] if one.word not in {"the", "my", "your", "this", "that"}]
    if len(said) < 2 or said[-1].word not in {"of", "in", "out", "into", "off"} or said[-2].kind != "number":
        return False
    return bool(number_of(said[-2]).unit)


def _clusters(row: list[Item], vocabulary: Vocabulary) -> list[Item]:
    found: list[Item] = []
    at = 0
    while at < len(row):
        if row[at].kind not in _PLACED:
            found.append(row[at])
            at += 1
            continue
        cluster, following = _cluster(row, at, vocabulary)
        after = row[following] if following < len(row) else None
        airy = _of_air(row, at) or _air_moved(row, following + 1)
        if after is not None and after.kind == "foreign" and not after.data and airy:
            name = vocabulary.of_role("tyre_pressure")
            cluster.append(Item("param", after.word, name, after.start, after.end)) if name else None
            following += 1
        named = _mention(cluster, row[following] if following < len(row) else None, vocabulary)
        if found and isinstance(found[-1].data, tuple) and found[-1].data[-1] == "much":
            named = _both_ends(named, vocabulary)
        if found and found[-1].word in {"two", "2"} and len(getattr(named.data, "addresses", ())) == 2:
            found[-1] = Item("word", found[-1].word, None, found[-1].start, found[-1].end)  # "the two rear springs"
        found.append(named)
        at = following
    return found


def _both_ends(named: Item, vocabulary: Vocabulary) -> Item:
    """As in "less rear rebound": no corner, so both."""
    one = named.data
    if not isinstance(one, Mention) or one.addresses or one.split or one.side or one.parts or not one.axle:
        return named
    if not vocabulary.cornered(one.parameter):
        return named
    both = replace(one, addresses=vocabulary.resolve(one.parameter, vocabulary.pair(one.axle)))
    return Item(named.kind, named.word, both, named.start, named.end)


def _of_air(row: list[Item], at: int) -> bool:
    """As in "half a pound in the left front tire": pounds go into a tyre, and come out of it."""
    near = row[max(0, at - 5) : at]
    into = any(one.kind in {"in", "out", "to"} or one.word in {"in", "out"} for one in near)
    counted = any(one.kind == "number" and number_of(one).unit in {"lb", "psi"} for one in near)
    return into and counted and not any(one.kind == "param" for one in near)


def _air_moved(row: list[Item], at: int) -> bool:
    """As in "both front tires are up a pound"."""
    way = next((look for look in range(at, min(at + 3, len(row))) if row[look].kind == "move"), None)
    if way is None or way + 1 >= len(row) or row[way + 1].kind != "number" or row[way - 1].word in _RISES:
        return False  # "the right rear tyre comes up 5 psi over a run"
    number = number_of(row[way + 1])
    return number.unit in {"lb", "psi"} and all(0 < one <= 10 for one in number.readings)


def _cluster(row: list[Item], at: int, vocabulary: Vocabulary) -> tuple[list[Item], int]:
    """The placed items from `at` that belong together, at most one of each kind, and the item after them."""
    cluster = [row[at]]
    following = look = at + 1
    while look < len(row) and look - following < 4:
        one = row[look]
        if one.kind in _PLACED:
            if not _joins(one, cluster, vocabulary):
                break
            cluster.append(one)
            following = look + 1
        elif one.word == "and":
            if not _union(row, look, cluster):
                break
            cluster.append(row[look + 1])
            look += 1
            following = look + 1
        elif not (one.word in GLUE and one.kind in _BETWEEN) and not (
            one.word == "between" and cluster[-1].kind == "split"
        ):
            break
        look += 1
    return cluster, following


def _joins(one: Item, cluster: list[Item], vocabulary: Vocabulary) -> bool:
    """Whether a placed item can belong to a cluster: no kind twice, a corner says axle and side, shapes agree."""
    kinds = {other.kind for other in cluster}
    if one.kind in kinds or (one.kind in {"axle", "side"} and "corner" in kinds):
        return False
    if one.kind == "corner" and kinds & {"axle", "side"}:
        return False
    named = next((str(other.data) for other in (*cluster, one) if other.kind == "param"), "")
    placed = {"corner", "axle", "side", "split"} & (kinds | {one.kind})
    if not named:
        return True
    if vocabulary.cornered(named):
        return True
    return placed == {"side"} and bool(vocabulary.garage.parameters[named].ends)


def _union(row: list[Item], at: int, cluster: list[Item]) -> bool:
    """As in "left front and right rear springs": two corners of one parameter named after them."""
    if at + 2 >= len(row) or row[at + 1].kind != "corner" or cluster[-1].kind != "corner":
        return False
    return row[at + 2].kind == "param" and row[at + 2].word.endswith("s") and len(cluster) == 1


def _mention(cluster: list[Item], following: Item | None, vocabulary: Vocabulary) -> Item:
    said = {one.kind: one for one in cluster}
    parameter = str(said["param"].data) if "param" in said else ""
    start, end = cluster[0].start, cluster[-1].end
    split = "split" in said
    if following is not None and following.kind == "foreign" and not parameter and not split:
        return Item("foreign", cluster[0].word, following.data, start, following.end)
    parts = tuple(part for one in cluster if one.kind == "corner" for part in _parts(one.data))
    axle, side = (str(said[kind].data) if kind in said else "" for kind in ("axle", "side"))
    mention = Mention(start, end, parameter, parts, (), axle, side, split)
    if split and not axle and len({part[1] for part in parts}) == 1:
        mention = replace(mention, axle=vocabulary.axle_of(parts[0]))  # "fifty pounds of split across the back"
    if parameter:
        plural = said["param"].word.endswith("s")
        mention = replace(mention, addresses=_addresses(mention, plural, said.get("side"), vocabulary))
    return Item("set", cluster[-1].word, mention, start, end)


def _addresses(one: Mention, plural: bool, side: Item | None, vocabulary: Vocabulary) -> tuple[str, ...]:
    """What a cluster with a parameter means: "front springs" are both, "right side pressures" too."""
    if vocabulary.cornered(one.parameter) and not one.split:
        if one.axle and plural and not one.side:
            return vocabulary.resolve(one.parameter, vocabulary.pair(one.axle))
        if side is not None and side.word == "side" and not one.axle:
            return vocabulary.resolve(one.parameter, vocabulary.flank(one.side))
    return vocabulary.resolve(one.parameter, one.parts, one.axle, one.side, one.split)


def _parts(data: object) -> tuple[str, ...]:
    return data if isinstance(data, tuple) else ()


def number_of(item: Item) -> Number:
    """The number that an item of kind `number` holds."""
    if not isinstance(item.data, Number):
        raise TypeError(item.kind)
    return item.data


def mention_of(item: Item) -> Mention:
    """The mention that an item of kind `set` holds."""
    if not isinstance(item.data, Mention):
        raise TypeError(item.kind)
    return item.data
