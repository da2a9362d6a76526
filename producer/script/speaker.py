"""Fills the sentences of `wording` and says figures, units, names and feels as they are heard."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from decimal import Decimal

from producer.basics.figures import NO_BREAK
from producer.basics.spelling import spell
from producer.model.episode import Advice
from producer.model.garage import Garage, Setting
from producer.model.sheet import Sheet
from producer.model.words import CORNER_NAMES, ENDS, PHASES, Complaint
from producer.script import wording

_METRE = re.compile(r"metre(s?)\b")
_LITRE = re.compile(r"litre(s?)\b")


class Speaker:
    """One telling of one episode: takes the patterns of each kind in turn, spelled `us` or `uk`."""

    def __init__(self, spelling: str) -> None:
        self._spelling = spelling
        self._used: Counter[str] = Counter()

    def say(self, kind: str, **parts: str) -> str:
        """The next pattern of that kind, filled; `{Name}` takes the part `name` with a capital letter.

        Only the pattern is spelled the channel's way: what is filled in may be the author's prose. KeyError for an
        unknown kind or a missing part is a bug of ours.
        """
        patterns = wording.PATTERNS[kind]
        pattern = patterns[self._used[kind] % len(patterns)]
        self._used[kind] += 1
        return self.own(pattern).format(**parts, **{key.capitalize(): capital(text) for key, text in parts.items()})

    def own(self, text: str) -> str:
        """The program's or the garage's words in the channel's spelling."""
        spelled = spell(text, self._spelling)
        if self._spelling == "us":
            # Units are one word with their prefix: millimeter, kiloliter.
            spelled = _LITRE.sub(r"liter\1", _METRE.sub(r"meter\1", spelled))
        return spelled

    def unit(self, symbol: str, figure: str = "") -> str:
        """What is said for a unit; one that has no words is said as it is written."""
        one, many = wording.UNITS.get(symbol, (symbol, symbol))
        return self.own(one if figure.lstrip("\u2212") == "1" else many)

    def amount(self, figure: str, symbol: str) -> str:
        """A figure and its spoken unit, never to be broken apart before the unit's first word."""
        unit = self.unit(symbol, figure)
        return f"{figure}{NO_BREAK}{unit}" if unit else figure

    def value(self, garage: Garage, address: str, value: Decimal) -> str:
        """A value of a setting or a split with its unit in words: `750 pounds per inch`."""
        return self.amount(garage.figure(address, value), garage.unit_of(address))

    def name(self, garage: Garage, address: str) -> str:
        """What a setting or a split is called inside a sentence: `right front spring`, `rear spring split`."""
        setting = garage.settings.get(address)
        if setting is None:
            return self.own(small(garage.name_of(address)))
        if setting.part in ENDS:
            return self.own(f"{CORNER_NAMES[setting.part]} of the {small(setting.parameter.name)}")
        return self.own(small(setting.name))

    def part(self, setting: Setting) -> str:
        """The corner or end alone, `right front`; a whole-car setting's name."""
        return CORNER_NAMES[setting.part] if setting.part else self.own(small(setting.parameter.name))

    def split_name(self, garage: Garage, split: str, *, alone: bool) -> str:
        """`rear split` where it is clear of what, else `rear spring split`."""
        return split.rpartition(".")[2].replace("_", " ") if alone else self.name(garage, split)

    def group_name(self, setting: Setting) -> str:
        """What the values of a parameter are called together: `springs` where the garage lists that form."""
        name = setting.parameter.name
        plural = next((form for form in setting.parameter.say if form.lower() == f"{name.lower()}s"), None)
        return self.own(small(plural or name))

    def feel(self, complaint: Complaint) -> str:
        """`a little loose going in`; without a place only the feel."""
        feel = wording.MUCH[complaint.how_much] + complaint.feel
        return self.own(wording.FEELS[complaint.where].format(feel=feel) if complaint.where else feel)

    def when(self, advice: Advice) -> str:
        """` on worn tires, and you drive with a pad`; "" where the advice is for everybody."""
        tyres = wording.TYRES[advice.tyres] if advice.tyres else ""
        return self.own(tyres + (wording.DEVICES[advice.device] if advice.device else ""))

    def effects(self, stated: dict[str, str]) -> str:
        """`looser going in and in the middle, tighter coming off`; "" where nothing happens."""
        feels = dict.fromkeys(stated[phase] for phase in PHASES if stated.get(phase, "none") != "none")
        where = {one: [wording.PHASES[phase] for phase in PHASES if stated.get(phase) == one] for one in feels}
        return ", ".join(f"{feel} {listed(phases)}" for feel, phases in where.items())

    def page(self, page: str) -> str:
        """A page of the garage as it is said."""
        return self.own(page.replace("_", " "))


def setup_name(sheet: Sheet) -> str:
    """What a setup is called inside a sentence: its name; `the short run`, `the qualifying setup` by its purpose."""
    purpose = sheet.setup.purpose
    if purpose is None or purpose != sheet.name.lower():
        return sheet.name
    return f"the {purpose}" if purpose.endswith(" run") else f"the {purpose} setup"


def listed(items: Sequence[str]) -> str:
    """`a`, `a and b`, `a, b and c`."""
    return " and ".join(part for part in (", ".join(items[:-1]), *items[-1:]) if part)


def counted(number: int) -> str:
    """A small count in words, a larger one in digits."""
    return wording.COUNTS[number] if number < len(wording.COUNTS) else str(number)


def capital(text: str) -> str:
    """The text with its first letter large."""
    return text[:1].upper() + text[1:]


def small(name: str) -> str:
    """A name as it stands inside a sentence: `Front weight` -> `front weight`; `RPM limit` and `Zed bar` as they are.

    A second word with a capital, or a capital after the first letter, marks a name of its own.
    """
    return name if any(letter.isupper() for letter in name[1:]) else name[:1].lower() + name[1:]
