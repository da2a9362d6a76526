"""The track that a message names: one of the library's, misspelt or not, else what stands where a name must stand."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from producer.language.tokens import listed, words
from producer.model.track import Track

_ASK = listed("do make cover get see have need want love request try show drop build post put record run vote give")
_LEAD = listed("a an the some any us me please you to of on one up get see have out next for at doing making do")
_NOUNS = listed("video videos setup setups episode episodes one card cards guide vid set")
_OPENERS = listed(
    "can could would will when any please need want chance plans plan next request vote hoping hope waiting do have "
    "love like got skipped missed forgot requesting about"
)
# What ends a track's name.
_STOPS = listed(
    "next please soon this that in for with on at video videos setup setups episode episodes card and but or so pls "
    "instead one ever month week weekend year time too also again thanks because , . ! ? ; : ( ) - / asap if "
    "when now "
    "is are was i you it the a an my your to of as season sometime tomorrow today tonight lol man mate bro dude jo "
    "can will we they he she u did does has had been "
    "coming out dropping happening done ready up live from by oval track guide first then since though haha please "
    "someday "
    "already yet there would could should"
)
# Common words that are the name of no track.
_COMMON = listed(
    "stock default baseline base worn hot cold fresh warm wore hotter looser tighter "
    "me us it this that these those one more some any something anything everything everyone qualifying short long "
    "run race races racing setup setups video videos card cards spring springs wedge weight tight loose car "
    "cars help "
    "tips advice same new old next other another your my his her their next qualy update series class wheel pad "
    "keyboard controller tutorial tutorials gear gears shocks dampers pressures pressure bar tape camber toe brake "
    "bias what how why which dirt road live stream less right left front rear full single bigger smaller stiffer "
    "softer lower raise change changes changing go going work works help keep stop fix fixed explain tell say show "
    "share use used make made put get got take took think know guess try tried run running better best good great "
    "lot lots all both each every few many much most not no on off up down well just still even only really very "
    "back again idea ideas thing things way ways question questions reply answer link download file files follow up"
)
# What may follow the name of a track that is asked for.
_ENDS = listed(
    "next please soon asap video videos setup setups episode episodes card this instead too track one sometime guide "
    "since forever lol all every man mate bro dude haha in for with and but again ever there already first yet "
    "coming out dropping happening done ready"
)
# What may follow a name that a message begins with.
_AFTER_A_NAME = (["please"], ["next"], ["when"], ["setup"], ["soon"])
_WANTING = listed("skipped missed forgot need want requesting request vote")
# Before a name with one of these between: "any plans for", "a setup for", "waiting on".
_LEADERS = (
    (_NOUNS, listed("for at on of")),
    (listed("chance plans planning plan"), listed("of for on")),
    (listed("asking waiting hoping wishing begging petition wish hope"), listed("for on")),
    (listed("anything something"), listed("for on at")),
    (listed("these those"), listed("for")),
)


@dataclass(frozen=True, slots=True)
class Named:
    """A track in a message: words `first` to `last` (exclusive), its id where the library has it, and if asked for."""

    first: int
    last: int
    track: str | None
    wanted: bool


class TrackNames:
    """The library's track names, ready for reading."""

    __slots__ = ("_forms", "_squashed")

    def __init__(self, tracks: Mapping[str, Track]) -> None:
        self._forms: dict[str, list[tuple[tuple[str, ...], str]]] = {}
        self._squashed: dict[str, list[tuple[str, str]]] = {}
        for name, track in tracks.items():
            for form in dict.fromkeys([tuple(words(track.name).text), tuple(words(name.replace("-", " ")).text)]):
                if form:
                    self._forms.setdefault(form[0], []).append((form, name))
                    squashed = "".join(form)
                    self._squashed.setdefault(squashed[0], []).append((squashed, name))
        for found in self._forms.values():
            found.sort(key=lambda one: -len(one[0]))

    def find(self, raw: Sequence[str], text: Sequence[str], complains: bool) -> Named | None:
        """The track in a message. `raw`: its words as written, in lower case; `text`: the same, mended."""
        known = self._known(raw)
        if known is not None:
            first, last, track = known
            return Named(first, last, track, _wanted(text, first, last, complains))
        return _unknown(text)

    def _known(self, raw: Sequence[str]) -> tuple[int, int, str] | None:
        for at, word in enumerate(raw):
            for form, name in self._forms.get(word, ()):
                if tuple(raw[at : at + len(form)]) == form:
                    return at, at + len(form), name
        return self._misspelt(raw)

    def _misspelt(self, raw: Sequence[str]) -> tuple[int, int, str] | None:
        """One or two slips in a name of seven letters or more, written together or apart."""
        for at, word in enumerate(raw):
            likely = self._squashed.get(word[0], ())
            for size in (1, 2, 3) if likely else ():
                if at + size > len(raw) or not raw[at + size - 1][0].isalpha():
                    break
                said = "".join(raw[at : at + size])
                for name, track in likely:
                    if len(name) >= 7 and near(said, name, 1 if len(name) < 10 else 2):
                        return at, at + size, track
        return None


def near(one: str, other: str, slips: int) -> bool:
    """Whether two words are at most `slips` edits apart: a letter more, less or another, two letters swapped."""
    if abs(len(one) - len(other)) > slips:
        return False
    earlier: list[int] = []
    last = list(range(len(other) + 1))
    for at, letter in enumerate(one, 1):
        row = [at]
        for place, same in enumerate(other, 1):
            cost = min(last[place] + 1, row[-1] + 1, last[place - 1] + (letter != same))
            if earlier and place > 1 and letter == other[place - 2] and one[at - 2] == same:
                cost = min(cost, earlier[place - 2] + 1)
            row.append(cost)
        if min(row) > slips:
            return False
        earlier, last = last, row
    return last[-1] <= slips


def _wanted(text: Sequence[str], first: int, last: int, complains: bool) -> bool:
    """Whether a known track is asked for, and not only the place where the car misbehaves."""
    before, after = text[max(0, first - 9) : first], text[last : last + 4]
    lead = [word for word in before if word in _ASK or word in _OPENERS]
    noun = not _NOUNS.isdisjoint([*text[max(0, first - 7) : first], *after[:2]])
    soon = not {"next", "please", "soon", "asap"}.isdisjoint(after)
    located = first > 0 and text[first - 1] in {"at", "@"} and not soon
    if located and (complains or not _NOUNS & set(before)):
        return False
    if {"how", "what", "which", "why"} & set(before) and not noun:
        return False
    if (
        noun
        and not lead
        and not soon
        and {"your", "that", "this", "loved", "great"} & set(text[max(0, first - 4) : first])
    ):
        return False
    return bool(lead) or soon or (noun and not complains) or len(text) <= last - first + 2


def _unknown(text: Sequence[str]) -> Named | None:
    """A name that the library has not, found by what stands around it."""
    for at in range(-1, len(text)):
        begin = _after_asking(text, at) if at >= 0 else _skip(text, 0)
        if begin is None:
            continue
        end = begin
        while end < len(text) and end - begin < 3 and text[end] not in _STOPS and text[end][0].isalpha():
            end += 1
        wished = list(text[end : end + 2]) == ["would", "be"]
        if at < 0 and not wished and list(text[end : end + 1]) not in _AFTER_A_NAME:
            continue  # a message may begin with the name: "quarry bend please"
        if at >= 0 and "where" in text[max(0, at - 1) : at + 1] and _NOUNS.isdisjoint(text[end : end + 1]):
            continue  # "where's the wedge"
        if end > begin and _COMMON.isdisjoint(text[begin:end]) and _closes(text, end):
            return Named(begin, end, None, True)
    return None


def _after_asking(text: Sequence[str], at: int) -> int | None:
    """Where a name may begin after "can you do", "setup for", "need", "any plans for", "you skipped"."""
    word, after = text[at], "".join(text[at + 1 : at + 2])
    before = text[max(0, at - 5) : at]
    if any(word in words and after in joints for words, joints in _LEADERS):
        asked = word not in _NOUNS or at < 3 or not (_ASK | _OPENERS).isdisjoint(text[max(0, at - 8) : at])
        return _skip(text, at + 2) if asked else None
    if (word == "where" and after == "the") or (word == "is" and before[-1:] == ["where"]):
        return _skip(text, at + 1)
    if (word == "be" and "next" in before) or (word == "is" and before[-1:] == ["when"]) or word in _WANTING:
        return _skip(text, at + 1)
    if word in {"doing", "covering", "making"} and not {"you", "plan", "about", "planning"}.isdisjoint(before[-3:]):
        return _skip(text, at + 1)
    if word not in _ASK or _mine(text, at) or not {"what", "which", "how", "why"}.isdisjoint(before):
        return None
    return _skip(text, at + 1) if at == 0 or not (_OPENERS | {"you", "we"}).isdisjoint(before) else None


def _mine(text: Sequence[str], at: int) -> bool:
    """As in "when i get on the gas"; "can i get" asks."""
    before = text[max(0, at - 4) : at]
    if not {"love", "like", "want"}.isdisjoint(before):
        return False
    return (
        "i" in before and before[:1] not in (["can"], ["could"], ["may"]) and not {"can", "could", "may"} & set(before)
    )


def _skip(text: Sequence[str], at: int) -> int | None:
    while at < len(text) and text[at] in _LEAD:
        at += 1
    return at if at < len(text) else None


def _closes(text: Sequence[str], end: int) -> bool:
    """Whether what follows fits a track that is asked for: an end, "next", "please", a noun for the video."""
    following = text[end] if end < len(text) else "."
    return following in _ENDS or following == "would" or not following[0].isalnum()
