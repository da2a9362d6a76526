"""Takes made up from an episode: read from its script or talked from notes, with what goes wrong in a real one.

Word errors are of the kinds that captioning programs make: misheard, dropped, doubled, replaced by some other word.
They spare figures: a figure that the captions got wrong cannot be told from a slip of the tongue, and to be told of it
is what the author wants.
"""

from __future__ import annotations

import random
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from decimal import Decimal

from producer.captions.reading import read_captions
from producer.language.number_words import SMALL
from producer.language.number_words import TENS as TENS_SAID
from producer.model.dossier import Dossier
from producer.model.script import Section
from producer.model.take import TakeFile
from producer.take.advised import stops

ONES = (*SMALL,)
TENS = ("", "", *TENS_SAID)
PARTS = {"5": "and a half", "50": "and a half", "500": "and a half", "25": "and a quarter", "250": "and a quarter",
         "75": "and three quarters", "750": "and three quarters"}  # fmt: skip
FIGURES = {*ONES, *TENS, "half", "quarter", "hundred", "point", "minus", "oh"}
COMMON = (
    "the", "a", "and", "you", "it", "that", "this", "was", "have", "with", "from", "they", "had", "but", "what", "all",
    "were", "when", "your", "can", "there", "an", "each",
)  # fmt: skip
ADLIBS = (
    "by the way my neighbour came over while I was testing and asked why I was shouting at a screen and I had no good "
    "answer for him so I made coffee instead and we watched the replay of that last race together until it got dark",
    "hold on the dog wants out and I will be right back okay here we are again where was I yes somebody asked last "
    "week whether I ever sleep and the honest answer is that I do but only on Sundays after the flag has dropped",
)  # fmt: skip
MARK = 0xE000  # letters of private use mark the slips until the words have times
FIGURE = re.compile(r"(?<![\w.])[−-]?\d+(?:\.\d+)?(?![\w.]*\d)")


@dataclass(frozen=True)
class Slip:
    """What was planted: `about` a setting of a setup (or a condition, a name), said as `said`.

    `also`: settings that the same figure is said for ("the left front and left rear, both 15"); `at_ms`: when.
    """

    about: str
    parameter: str | None
    setup: str | None
    said: str
    also: tuple[str, ...] = ()
    at_ms: int = -1


@dataclass
class Made:
    """A take and the truth about it: where sections start (ms), what was planted, what was left out."""

    files: list[TakeFile]
    starts: dict[str, int]
    slips: list[Slip]
    left_out: str | None
    text: str = field(repr=False, default="")


@dataclass(frozen=True)
class Word:
    """A word; `starts` the section that begins with it; `pause` seconds of silence before it."""

    text: str
    starts: str = ""
    pause: float = 0.0


def spoken(figure: str, dice: random.Random) -> str:
    """A written figure in the words of the trade: `775` is seven seventy-five, `10.25` ten and a quarter."""
    minus = "minus " if figure[0] in "−-" else ""
    whole, _, rest = figure.lstrip("−-").partition(".")
    if len(whole) > 3:
        return figure
    if len(whole) == 1 and len(rest) == 2 and rest != "00" and whole in "3456" and not minus and dice.random() < 0.8:
        return f"{ONES[int(whole)]} {below_hundred(int(rest)) if int(rest) > 9 else 'hundred'}"  # a gear
    said = minus + (below_hundred(int(whole)) if int(whole) < 100 else hundreds(int(whole)))
    if not rest.strip("0"):
        return said
    if rest in PARTS and dice.random() < 0.7:
        return f"{said} {PARTS[rest]}"
    return f"{said} point {' '.join(ONES[int(one)] for one in rest.rstrip('0'))}"


def below_hundred(value: int) -> str:
    if value < 20:
        return ONES[value]
    return TENS[value // 10] + (f" {ONES[value % 10]}" if value % 10 else "")


def hundreds(value: int) -> str:
    rest = value % 100
    if rest == 0:
        return f"{ONES[value // 100]} hundred"
    return f"{ONES[value // 100]} {below_hundred(rest) if rest > 9 else f'oh {ONES[rest]}'}"


class Maker:
    """One take of one episode by the numbers of `seed`."""

    def __init__(self, dossier: Dossier, seed: int, rate: tuple[float, float] = (0.10, 0.25)) -> None:
        self.dossier = dossier
        self.dice = random.Random(seed)
        self.rate = self.dice.uniform(*rate)
        self.in_words = self.dice.random() < 0.5
        self.stops = self.dice.random() < 0.5  # captions with punctuation
        self.slips: list[Slip] = []

    # --- what is said ---

    def read(self, *, slips: int = 2, retake: bool = True, aside: bool = True, leave: bool = True) -> Made:
        """The script read aloud."""
        sections = list(self.dossier.narration.sections)
        left_out = self._left_out(sections) if leave else None
        told = [one for one in sections if one.id != left_out]
        texts = {one.id: [passage.text for passage in one.passages] for one in told}
        for _ in range(slips):
            self._plant(told, texts)
        self._correct(told, texts)
        again = self.dice.choice([one.id for one in told if len(one.passages) > 3]) if retake else ""
        aside_after = self.dice.choice([one.id for one in told[:-1]]) if aside else ""
        words: list[Word] = []
        for one in told:
            if one.id == again:
                half = texts[one.id][: max(2, len(texts[one.id]) // 2)]
                words += self._words([*half, "Sorry, let me do that again."])
            words += self._words(texts[one.id], one.id)
            if one.id == aside_after:
                words += self._words([self.dice.choice(ADLIBS) + "."])
        return self._made(words, left_out)

    def talk(self, *, slips: int = 2, leave: bool = True) -> Made:
        """The same talked freely from notes: pages and settings are named, the rest is in other words."""
        sections = list(self.dossier.narration.sections)
        left_out = self._left_out(sections) if leave else None
        told = [one for one in sections if one.id not in (left_out, "laps")]
        texts = {one.id: list(self._talked(one)) for one in told}
        for _ in range(slips):
            self._plant_talked(told, texts)
        words: list[Word] = []
        for one in told:
            words += self._words(texts[one.id], one.id)
        return self._made(words, left_out)

    def _left_out(self, sections: Sequence[Section]) -> str:
        pages = [one.id for one in sections if one.page and one.setup == self.dossier.first.id]
        return self.dice.choice(pages[1:])

    def _talked(self, section: Section) -> Iterator[str]:
        dossier = self.dossier
        if section.id == "opening":
            yield f"Hi everybody, {dossier.channel.presenter} here."
            yield f"Today we are at {dossier.track.name} in the {dossier.garage.name}."
            yield "A few of you have been asking for this one, so I spent two evenings on it."
        elif section.id == "conditions":
            options = ", ".join(f"{one.name.lower()} {_choice(one.value)}" for one in dossier.conditions)
            yield f"I tested this with {options}." if options else "I tested this tonight."
            if dossier.episode.tested_with:
                yield f"That is version {dossier.episode.tested_with} of the simulation."
            yield "Be patient with it, and let the car come to you."
        elif section.id == "closing":
            yield "That's it for tonight."
            yield "Both cars are on the cards, so pause where you like."
            yield "And remember, these numbers are for a simulation and not for a real car."
            yield "See you next time."
        elif section.page:
            yield from self._page(section)

    def _page(self, section: Section) -> Iterator[str]:
        dice, garage = self.dice, self.dossier.garage
        sheet = next(one for one in self.dossier.sheets if one.id == section.setup)
        page = (section.page or "").replace("_", " ")
        if sheet is not self.dossier.first and self._opens(section):
            yield dice.choice([f"Now the {sheet.name.lower()}.", f"Okay, on to the {sheet.name.lower()}."])
        yield dice.choice(
            [
                f"Okay, the {page} page.",
                f"Next is the {page} page.",
                f"On to the {page} page.",
                f"The {page} page next.",
            ]
        )
        told = [x for one in section.passages if one.kind == "value" for x in one.settings if x in garage.settings]
        for address in dict.fromkeys(told):
            name, shown = self._name(address), garage.figure(address, sheet.values[address])
            yield dice.choice(
                [f"{name} is at {shown}.", f"{name}, {shown}.", f"For {name.lower()} I run {shown}.",
                 f"I have the {name.lower()} at {shown}.", f"{name}. It's at {shown}."]
            )  # fmt: skip
            yield dice.choice(
                [f"So that is why the {name.lower()} is at {shown}.",
                 f"{shown} on the {name.lower()}, and it felt right.",
                 f"I tried a few things with the {name.lower()} and always came back to {shown}.",
                 "Take your time with that one.", "You will notice it mostly when the tires are going away."]
            )  # fmt: skip
            after = stops(sheet, address)
            if after and dice.random() < 0.3:
                yield f"If it is loose going in, try {garage.figure(address, after[0])} on the {name.lower()}."

    def _opens(self, section: Section) -> bool:
        return next(one for one in self.dossier.narration.sections if one.setup == section.setup) is section

    def _name(self, address: str) -> str:
        name = self.dossier.garage.name_of(address)
        head, comma, end = name.partition(", ")
        return f"{end.capitalize()} of the {head.lower()}" if comma else name

    # --- what goes wrong ---

    def _plant(self, told: Sequence[Section], texts: dict[str, list[str]]) -> None:
        """One figure of a value said wrongly, by one to three clicks."""
        garage = self.dossier.garage
        places = [
            (section, index, address)
            for section in told
            for index, passage in enumerate(section.passages)
            if passage.kind == "value" and section.setup
            for address in passage.settings
            if address in garage.settings and self._unplanted(address, section)
        ]
        self.dice.shuffle(places)
        for section, index, address in places:
            if self._put(texts[section.id], index, section, address):
                return

    def _plant_talked(self, told: Sequence[Section], texts: dict[str, list[str]]) -> None:
        garage = self.dossier.garage
        pages = [one for one in told if one.page]
        for _ in range(50):
            section = self.dice.choice(pages)
            address = self.dice.choice([x for one in section.passages for x in one.settings])
            if address not in garage.settings or not self._unplanted(address, section):
                continue
            name = self._name(address).lower()
            for index, text in enumerate(texts[section.id]):
                if (
                    name in text.lower()
                    and "If it" not in text
                    and self._put(texts[section.id], index, section, address)
                ):
                    return

    def _unplanted(self, address: str, section: Section) -> bool:
        return all((one.parameter, one.setup) != (address, section.setup) for one in self.slips)

    def _put(self, texts: list[str], index: int, section: Section, address: str) -> bool:
        sheet = next(one for one in self.dossier.sheets if one.id == section.setup)
        setting = sheet.setting(address)
        right, wrong = setting.figure(sheet.values[address]), self._wrong(address, sheet.values[address])
        part = {"lf": "left front", "rf": "right front", "lr": "left rear", "rr": "right rear",
                "left": "left end", "right": "right end"}.get(setting.part, "")  # fmt: skip
        ahead = rf"({part}[^,.;]*? )" if part and texts[index].count(right) > 1 else r"(^|.*? )"
        mark = chr(MARK + len(self.slips))
        new, count = re.subn(
            rf"{ahead}{re.escape(right)}(?![\d])", lambda m: f"{m[1]}{mark}{wrong}", texts[index], count=1
        )
        moved = re.search(r"\bfrom\b", texts[index])
        if not count or wrong == "" or moved:
            return False
        passage, texts[index] = texts[index], new
        also = next((one.settings for one in section.passages if one.text == passage), ())
        shared = tuple(x for x in also if x != address and len(FIGURE.findall(passage)) == 1)
        self.slips.append(Slip("parameter", address, section.setup, wrong, shared))
        return True

    def _wrong(self, address: str, value: Decimal) -> str:
        """Another figure of the grid, that no advice and no other setup has for this setting."""
        setting = self.dossier.garage.settings[address]
        known = {one.values.get(address) for one in self.dossier.sheets} | {setting.default}
        ways = [setting.grid.moved(value, clicks) for clicks in (-3, -2, -1, 1, 2, 3)]
        good = [x for x in ways if x is not None and x not in known]
        return setting.figure(self.dice.choice(good)) if good else ""

    def _correct(self, told: Sequence[Section], texts: dict[str, list[str]]) -> None:
        """One figure said wrongly and put right at once: nothing to tell."""
        garage = self.dossier.garage
        for section in self.dice.sample(list(told), len(told)):
            for index, passage in enumerate(section.passages):
                if (
                    passage.kind == "value"
                    and len(passage.settings) == 1
                    and section.setup
                    and "from" not in passage.text
                ):
                    (address,) = passage.settings
                    sheet = next(one for one in self.dossier.sheets if one.id == section.setup)
                    if address not in garage.settings or not self._unplanted(address, section):
                        continue
                    right, wrong = sheet.figure(address), self._wrong(address, sheet.values[address])
                    if wrong and texts[section.id][index].count(right) == 1:
                        texts[section.id][index] = texts[section.id][index].replace(right, f"{wrong}, sorry, {right}")
                        return

    # --- from words to captions ---

    def _words(self, texts: Iterable[str], section: str = "") -> list[Word]:
        found: list[Word] = []
        for number, text in enumerate(texts):
            said = FIGURE.sub(lambda m: spoken(m[0], self.dice), text) if self.in_words else text
            for index, word in enumerate(said.replace("\u00a0", " ").split()):
                pause = 1.2 if not index and not number else 0.45 if not index else 0.0
                found.append(Word(word, section if not index and not number else "", pause))
        return found

    def _made(self, words: list[Word], left_out: str | None) -> Made:
        timed: list[tuple[str, int]] = []
        starts: dict[str, int] = {}
        now = 1.5
        for word in words:
            now += word.pause
            if word.starts:
                starts[word.starts] = round(now * 1000)
            bare = self._unmarked(word.text, round(now * 1000))
            timed += [(heard, round(now * 1000)) for heard in self._heard(bare)]
            now += 0.12 + 0.055 * len(word.text) * self.dice.uniform(0.8, 1.25)
        text = self._srt(timed) if self.stops else self._vtt(timed)
        name = "take.srt" if self.stops else "take.vtt"
        return Made([TakeFile("raw", read_captions(text.encode(), name))], starts, self.slips, left_out, text)

    def _unmarked(self, word: str, at_ms: int) -> str:
        """A word without the mark of a slip, which is noted as said now."""
        for number, slip in enumerate(self.slips):
            if chr(MARK + number) in word:
                self.slips[number] = replace(slip, at_ms=at_ms)
                return word.replace(chr(MARK + number), "")
        return word

    def _heard(self, word: str) -> list[str]:
        """What the captions make of a word."""
        dice = self.dice
        filler = [dice.choice(["um", "uh", "you know"])] if dice.random() < 0.015 else []
        bare = word.strip(".,:;?!").lower()
        if not self.stops:
            word = re.sub(r"[^\w\s'%.−-]|\.(?!\d)", "", word).lower()
        figure = any(x.isdigit() for x in bare) or bare in ONES or bare in TENS or bare in {
            "half", "quarter", "quarters", "three", "point", "minus", "and", "a", "hundred", "oh", "sorry"
        }  # fmt: skip
        if figure or dice.random() > self.rate:
            return [*filler, *([word] if word else [])]
        kind = dice.random()
        tail = word[len(word.rstrip(".,:;?!")) :]
        if kind < 0.6:
            return [*filler, misheard(bare, dice) + tail]
        if kind < 0.75:
            return filler
        return [*filler, word, word] if kind < 0.85 else [*filler, dice.choice(COMMON) + tail]

    def _srt(self, timed: Sequence[tuple[str, int]]) -> str:
        """Cues of about ten words without times of words; a silence of a second begins a new one."""
        rows: list[str] = []
        for number, part in enumerate(_cues(timed, 10), 1):
            *words, (_, end) = part
            end = min(end, words[-1][1] + 700)
            rows.append(
                f"{number}\n{_stamp(words[0][1], ',')} --> {_stamp(end, ',')}\n{' '.join(x for x, _ in words)}\n"
            )
        return "\n".join(rows)

    def _vtt(self, timed: Sequence[tuple[str, int]]) -> str:
        """Cues with a time for each word and no stops, as automatic captions are."""
        rows = ["WEBVTT\n"]
        for part in _cues(timed, 12):
            *words, (_, end) = part
            text = words[0][0] + "".join(f" <{_stamp(at, '.')}><c>{word}</c>" for word, at in words[1:])
            rows.append(f"{_stamp(words[0][1], '.')} --> {_stamp(max(end, words[-1][1] + 1), '.')}\n{text}\n")
        return "\n".join(rows)


def _cues(timed: Sequence[tuple[str, int]], size: int) -> Iterator[list[tuple[str, int]]]:
    """The words of each cue, and last when the next one begins."""
    first = 0
    for at in range(1, len(timed) + 1):
        if at == len(timed) or at - first == size or timed[at][1] - timed[at - 1][1] > 1300:
            following = timed[at][1] if at < len(timed) else timed[-1][1] + 500
            yield [*timed[first:at], ("", following)]
            first = at


def misheard(word: str, dice: random.Random) -> str:
    """A word with one letter changed, lost or doubled."""
    if len(word) < 3:
        return dice.choice(COMMON)
    at = dice.randrange(len(word))
    other = dice.choice("aeiourstlnm")
    found = dice.choice(
        [word[:at] + other + word[at + 1 :], word[:at] + word[at + 1 :], word[:at] + word[at] + word[at:]]
    )
    return found if found not in FIGURES else word


def _choice(value: str) -> str:
    return value.partition(" (")[0]


def _stamp(ms: int, comma: str) -> str:
    seconds, rest = divmod(ms, 1000)
    return f"{seconds // 3600:02}:{seconds // 60 % 60:02}:{seconds % 60:02}{comma}{rest:03}"


def script_texts(dossier: Dossier) -> dict[str, str]:
    """What the script has for each section, as one text."""
    return {
        one.id: " ".join(" ".join(passage.text.split()) for passage in one.passages)
        for one in dossier.narration.sections
    }


def plain_srt(text: str, words_per_minute: int = 150) -> str:
    """A text as SubRip: eight words a cue, at one speed, without a pause."""
    words, lasts = text.split(), 60_000 // words_per_minute
    rows = []
    for number, first in enumerate(range(0, len(words), 8), 1):
        part = words[first : first + 8]
        times = f"{_stamp(first * lasts, ',')} --> {_stamp((first + len(part)) * lasts, ',')}"
        rows.append(f"{number}\n{times}\n{' '.join(part)}\n")
    return "\n".join(rows)
