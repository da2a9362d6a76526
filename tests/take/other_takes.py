"""Takes made up a second way, so that nothing is fitted to one kind of noise.

Words are dropped, doubled, run together, taken for what sounds alike ("rare spring", "toe" and "tow", "for" as "four"),
with "um" and "you know" between; captions are SubRip or WebVTT of five to twelve words a cue or rolling ones with
times of words, mostly without stops; times are off by up to a sixth of a second. Figures stand as digits or in words,
in several ways of saying them. A page or a sentence is begun again, a figure is put right at once, something is told
that has nothing to do with it, and a page is left out.

Figures themselves are never garbled, nor the word "sorry" and its like: a slip that nobody could hear is none.
"""

from __future__ import annotations

import random
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from decimal import Decimal

from producer.captions.reading import read_captions
from producer.language.number_words import SMALL, TENS
from producer.model.dossier import Dossier
from producer.model.script import Passage, Section
from producer.model.sheet import Sheet
from producer.model.take import TakeFile
from tests.take.takes import FIGURE, MARK, Made, Slip, below_hundred

ONES = (*SMALL,)
SOUNDS = {
    "rear": "rare", "right": "write", "left": "lift", "front": "frond", "spring": "string", "springs": "strings",
    "brake": "break", "weight": "wait", "wedge": "wage", "toe": "tow", "tire": "tired", "tires": "tiers",
    "camber": "chamber", "stagger": "swagger", "cross": "crossed", "bias": "buyers", "pressure": "pleasure",
    "rebound": "rebounds", "compression": "compressions", "click": "clique", "clicks": "clicked", "shocks": "shock",
    "bar": "bars", "gear": "gears", "drive": "dive", "final": "finals", "page": "paige", "wheels": "wheel",
    "scales": "scale", "garage": "garbage", "run": "ran", "to": "too", "your": "you're", "here": "hear",
    "there": "their", "by": "buy", "through": "threw", "wheel": "will", "in": "and", "an": "and", "is": "as",
    "than": "then", "loose": "lose", "tight": "type", "middle": "metal", "ballast": "ballet", "rubber": "rubbed",
    "chassis": "chessie", "damping": "dumping", "gearing": "hearing", "split": "spit", "track": "truck",
    "simulation": "stimulation", "real": "reel", "laps": "lapse", "more": "mower", "less": "lest", "tape": "tap",
}  # fmt: skip
COMMON = ("the", "a", "of", "and", "so", "it", "that", "on", "just", "was", "with", "like", "they", "be", "as")
FILLERS = ("um", "uh", "you know", "like", "er")
NUMBER_WORDS = {*ONES, *TENS, "and", "a", "half", "quarter", "quarters", "point", "minus", "hundred", "oh", "negative"}
KEPT = {"sorry", "mean", "no", "wait", "make", "correction", "scratch"}
PUT_RIGHT = ("sorry", "no", "I mean", "wait", "correction")
AGAIN = (
    "Hang on, let me take that again.", "Sorry, from the top.", "No, scratch that, once more.",
    "Let me start that one over.",
)  # fmt: skip
ASIDES = (
    "While I think of it, thank you to everybody who wrote in about the chair, it still squeaks and I have tried "
    "oil and candle wax and nothing helps, so if you hear a mouse during the long straight that is what it is.",
    "My brother raced a real one of these for a summer and all he talks about is the sandwiches at the gate, he says "
    "the driving was fine and the sandwiches were better, and I believe every word of it.",
    "There was a storm last night and the power went twice, so I drove most of this by the light of the battery, and "
    "it may have been the best driving I have done all week because I could not see the clock.",
)


@dataclass(frozen=True)
class Word:
    """A word as it is meant; `starts` the section that it begins; `pause` seconds of silence before it."""

    text: str
    starts: str = ""
    pause: float = 0.0
    figure: bool = False


@dataclass
class OtherMaker:
    """One take of one episode by the numbers of `seed`."""

    dossier: Dossier
    seed: int
    band: tuple[float, float] = (0.10, 0.25)
    slips: list[Slip] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.dice = random.Random(self.seed * 7919 + 1)
        self.rate = self.dice.uniform(*self.band)
        self.figures = self.dice.choice(("words", "digits", "either"))
        self.format = self.dice.choice(("srt", "vtt", "rolling"))
        self.stops = self.format != "rolling" and self.dice.random() < 0.35

    # --- what is said ---

    def read(self, slips: int = 2, *, leave: bool = True) -> Made:
        """The script read aloud."""
        left_out, told = self._told(leave)
        texts = {one.id: [" ".join(x.text.split()) for x in one.passages] for one in told}
        for _ in range(slips):
            self._plant(told, texts)
        self._put_right(told, texts)
        whole = self.dice.choice([one.id for one in told if len(one.passages) > 3])
        part = self.dice.choice([one.id for one in told if len(one.passages) > 3 and one.id != whole])
        aside = {self.dice.choice([one.id for one in told[:-1]]) for _ in range(2)}
        words: list[Word] = []
        for one in told:
            said = list(texts[one.id])
            if one.id == whole:
                words += self._words([*self._unmarked(said[: self.dice.randint(1, len(said) - 1)]), self._again()])
            if one.id == part:
                at = self.dice.randint(1, len(said) - 1)
                said[at:at] = [*self._unmarked([_broken_off(said[at], self.dice)]), self._again()]
            words += self._words(said, one.id)
            words += self._words([self.dice.choice(ASIDES)]) if one.id in aside else []
        return self._made(words, left_out)

    def talk(self, slips: int = 2, *, leave: bool = True) -> Made:
        """Talked from notes: every setting is named, at least once, in words of its own."""
        left_out, told = self._told(leave)
        told = [one for one in told if one.id != "laps"]
        texts = {one.id: [*self._talked(one)] for one in told}
        planted = 0
        for section in self.dice.sample(told, len(told)) * 2:
            planted += planted < slips and bool(section.page) and self._plant_talked(section, texts[section.id])
        words: list[Word] = []
        for one in told:
            words += self._words([text for _, text in texts[one.id]], one.id)
        return self._made(words, left_out)

    def _told(self, leave: bool) -> tuple[str | None, list[Section]]:
        sections = list(self.dossier.narration.sections)
        pages = [one.id for one in sections if one.page and one.setup == self.dossier.first.id]
        left_out = self.dice.choice(pages[1:]) if leave else None
        return left_out, [one for one in sections if one.id != left_out]

    def _again(self) -> str:
        return self.dice.choice(AGAIN)

    def _unmarked(self, texts: Sequence[str]) -> list[str]:
        """A first try, without the slips: the second one counts."""
        return [re.sub("[\ue000-\ue0ff]", "", text) for text in texts]

    # --- slips ---

    def _sheet(self, section: Section) -> Sheet:
        return next(one for one in self.dossier.sheets if one.id == section.setup)

    def _wrong(self, sheet: Sheet, address: str) -> str:
        """Another figure of the setting: some clicks away, or one digit of it another. No setup or advice has it."""
        setting = sheet.garage.settings.get(address)
        if setting is None:
            return ""
        value = sheet.values[address]
        clicks = (setting.grid.moved(value, x) for x in (-5, -4, -3, -2, -1, 1, 2, 3, 4, 5))
        known = {one.values.get(address) for one in self.dossier.sheets} | {setting.default}
        known |= {x for reason in sheet.reasons for one in reason.advice for x in one.to}
        good = [x for x in clicks if x is not None and x not in known]
        return setting.figure(self.dice.choice(good)) if good else ""

    def _plant(self, told: Sequence[Section], texts: dict[str, list[str]]) -> None:
        places = [
            (section, at, address)
            for section in told
            for at, passage in enumerate(section.passages)
            if passage.kind == "value" and section.setup
            for address in passage.settings
        ]
        for section, at, address in self.dice.sample(places, len(places)):
            sheet, passage = self._sheet(section), section.passages[at]
            wrong = self._wrong(sheet, address)
            taken = any(one.parameter == address and one.setup == section.setup for one in self.slips)
            span = _span(passage, sheet, address)
            if wrong and span and not taken and texts[section.id][at] == " ".join(passage.text.split()):
                self._say_wrong(section, at, address, wrong, span, texts)
                return

    def _say_wrong(
        self, section: Section, at: int, address: str, wrong: str, span: tuple[int, int], texts: dict[str, list[str]]
    ) -> None:
        text, passage = texts[section.id][at], section.passages[at]
        mark = chr(MARK + len(self.slips))
        texts[section.id][at] = f"{text[: span[0]]}{mark}{wrong}{text[span[1] :]}"
        shared = len(FIGURE.findall(text)) == 1
        also = tuple(x for x in passage.settings if x != address) if shared else ()
        self.slips.append(Slip("parameter", address, section.setup, wrong, also))

    def _put_right(self, told: Sequence[Section], texts: dict[str, list[str]]) -> None:
        """Two figures said wrongly and put right at once."""
        places = [(one, at) for one in told for at, x in enumerate(one.passages) if x.kind == "value" and one.setup]
        left = 2
        for section, at in self.dice.sample(places, len(places)):
            passage, sheet = section.passages[at], self._sheet(section)
            address = self.dice.choice(passage.settings)
            wrong, span = self._wrong(sheet, address), _span(passage, sheet, address)
            text = texts[section.id][at]
            if left and wrong and span and text == " ".join(passage.text.split()):
                head, right, tail = text[: span[0]], text[span[0] : span[1]], text[span[1] :]
                texts[section.id][at] = f"{head}{wrong}, {self.dice.choice(PUT_RIGHT)}, {right}{tail}"
                left -= 1

    # --- talking from notes ---

    def _talked(self, section: Section) -> Iterator[tuple[str, str]]:
        """(setting, sentence); "" for no setting."""
        whole = self.dossier
        if section.id == "opening":
            yield "", f"Hello and welcome back, it is {whole.channel.presenter}."
            yield "", f"Tonight it is {whole.track.name}, and we take the {whole.garage.name}."
        elif section.id == "conditions":
            for one in whole.conditions:
                yield "", f"{one.name} was {one.value.partition(' (')[0]}."
            if whole.episode.tested_with:
                yield "", f"All of it on version {whole.episode.tested_with} of the simulation."
        elif section.id == "closing":
            yield "", "Right, that's it for this one."
            yield "", "One more time, this is a simulation, so none of it is for a real car."
            yield "", "Thanks for watching."
        elif section.page:
            yield from self._page(section)

    def _page(self, section: Section) -> Iterator[tuple[str, str]]:
        dice, garage, sheet = self.dice, self.dossier.garage, self._sheet(section)
        page = (section.page or "").replace("_", " ")
        first = next(one for one in self.dossier.narration.sections if one.setup == section.setup)
        if first is section and sheet is not self.dossier.first:
            yield "", dice.choice([f"Now over to the {sheet.name.lower()}.", f"Next up, the {sheet.name.lower()}."])
        yield "", dice.choice([f"Let's go to the {page} page.", f"The {page} page.", f"So, the {page} page."])
        told = [x for one in section.passages if one.kind == "value" for x in one.settings if x in garage.settings]
        for address in dict.fromkeys(told):
            name, shown = self._name(address), garage.figure(address, sheet.values[address])
            yield address, dice.choice(
                [f"On the {name} we're at {shown}.", f"The {name} is {shown}.", f"{name}, that's {shown}.",
                 f"I've got {shown} in the {name}.", f"We run the {name} at {shown}.", f"{shown} on the {name}."]
            )  # fmt: skip
            if dice.random() < 0.5:
                yield "", dice.choice(
                    ["It sounds odd but it works.", "I went back and forth on that for an evening.",
                     "Your hands will tell you.", "That helps when the sun goes down."]
                )  # fmt: skip

    def _name(self, address: str) -> str:
        head, comma, end = self.dossier.garage.name_of(address).lower().partition(", ")
        return f"{end} of the {head}" if comma else head

    def _plant_talked(self, section: Section, texts: list[tuple[str, str]]) -> bool:
        sheet = self._sheet(section)
        for at in self.dice.sample(range(len(texts)), len(texts)):
            address, text = texts[at]
            wrong = self._wrong(sheet, address) if address else ""
            right = sheet.garage.figure(address, sheet.values[address]) if address else ""
            if wrong and text.count(right) == 1:
                texts[at] = (address, text.replace(right, f"{chr(MARK + len(self.slips))}{wrong}"))
                self.slips.append(Slip("parameter", address, section.setup, wrong))
                return True
        return False

    # --- from words to captions ---

    def _words(self, texts: Sequence[str], section: str = "") -> list[Word]:
        found: list[Word] = []
        for number, text in enumerate(texts):
            pause = self.dice.uniform(0.9, 2.0) if not number else self.dice.uniform(0.25, 0.7)
            for index, (word, figure) in enumerate(self._spoken(text.replace("\u00a0", " "))):
                first = not index and not number
                found.append(Word(word, section if first else "", 0.0 if index else pause, figure))
        return found

    def _spoken(self, text: str) -> Iterator[tuple[str, bool]]:
        """The words of a text and whether each belongs to a figure."""
        at = 0
        for one in FIGURE.finditer(text):
            yield from ((word, False) for word in text[at : one.start()].split() if not _mark_of(word))
            mark = text[one.start() - 1 : one.start()]
            ahead = mark if _mark_of(mark) else ""
            end = re.match(r"[.,;:?]*", text[one.end() :])
            tail = end[0] if end else ""
            said = self._figure(one[0]).split()
            yield from ((ahead * (not n) + x + tail * (n == len(said) - 1), True) for n, x in enumerate(said))
            at = one.end() + len(tail)
        yield from ((word, False) for word in text[at:].split())

    def _figure(self, written: str) -> str:
        """A figure as the captions have it: digits, or one of the ways to say it."""
        words = self.figures == "words" or (self.figures == "either" and self.dice.random() < 0.5)
        bare = written.lstrip("\u2212-")
        minus = "" if bare == written else self.dice.choice(("minus ", "negative ", "")) if words else "-"
        whole, _, rest = bare.partition(".")
        rest = rest.rstrip("0")
        if not words or len(whole) > 3:
            return minus + (f"{whole}.{rest}" if rest else whole) if self.dice.random() < 0.7 else minus + bare
        return minus + self._in_words(int(whole), rest)

    def _in_words(self, whole: int, rest: str) -> str:
        hundreds, below = divmod(whole, 100)
        head, tail = ONES[hundreds], below_hundred(below)
        if not hundreds:
            said = tail
        elif not below:
            said = f"{head} hundred"
        elif below < 10:
            said = self.dice.choice((f"{head} oh {tail}", f"{head} hundred {tail}"))
        else:
            said = self.dice.choice((f"{head} {tail}", f"{head} hundred {tail}", f"{head} hundred and {tail}"))
        if not rest:
            return said
        halves = {"5": "and a half", "25": "and a quarter", "75": "and three quarters"}
        if rest in halves and whole and self.dice.random() < 0.5:
            return f"{said} {halves[rest]}"
        if len(rest) == 2 and rest[0] != "0" and self.dice.random() < 0.3:
            return f"{said} point {below_hundred(int(rest))}"
        head = "" if not whole and self.dice.random() < 0.5 else f"{said} "
        return f"{head}point {' '.join(self.dice.choice(('zero', 'oh')) if x == '0' else ONES[int(x)] for x in rest)}"

    def _made(self, words: Sequence[Word], left_out: str | None) -> Made:
        dice, now, timed, starts = self.dice, 0.8, [], {}
        rate = dice.uniform(0.06, 0.085)  # seconds a letter
        for index, word in enumerate(words):
            now += word.pause
            if word.starts:
                starts[word.starts] = round(now * 1000)
            text = word.text
            for number, slip in enumerate(self.slips):
                if chr(MARK + number) in text:
                    text = text.replace(chr(MARK + number), "")
                    self.slips[number] = replace(slip, at_ms=round(now * 1000))
            following = words[index + 1] if index + 1 < len(words) else None
            timed += [(one, round(now * 1000)) for one in self._heard(replace(word, text=text), following)]
            now += 0.11 + rate * len(text)
        name = "take.srt" if self.format == "srt" else "take.vtt"
        text = self._captions(self._joined(timed), round(now * 1000))
        return Made([TakeFile("raw", read_captions(text.encode(), name))], starts, self.slips, left_out, text)

    def _heard(self, word: Word, following: Word | None) -> list[str]:
        """What the captions make of a word; a "+" at its end runs it into the next one."""
        dice = self.dice
        filler = dice.choice(FILLERS).split() if dice.random() < 0.02 and not word.figure else []
        bare = word.text.strip(".,:;?!").lower()
        tail = word.text[len(word.text.rstrip(".,:;?!")) :]
        if not self.stops:
            word, tail = replace(word, text=word.text.rstrip(".,:;?!").lower()), ""
        if word.figure or bare in NUMBER_WORDS or bare in KEPT or dice.random() > self.rate:
            return [*filler, word.text]
        kind = dice.random()
        if kind < 0.22:
            return filler
        if kind < 0.34:
            return [*filler, bare, word.text]
        if kind < 0.44 and following and not (following.figure or tail):
            return [*filler, f"{bare}+"]
        if kind < 0.60:
            return [*filler, dice.choice(COMMON) + tail]
        return [*filler, _sounds_like(bare, dice) + tail]

    @staticmethod
    def _joined(timed: Sequence[tuple[str, int]]) -> list[tuple[str, int]]:
        found: list[tuple[str, int]] = []
        for word, at in timed:
            if found and found[-1][0].endswith("+"):
                found[-1] = (found[-1][0][:-1] + word, found[-1][1])
            else:
                found.append((word, at))
        return [(word.rstrip("+"), at) for word, at in found]

    def _captions(self, timed: Sequence[tuple[str, int]], end: int) -> str:
        cues: list[list[tuple[str, int]]] = []
        room = 0
        for word, at in timed:
            if not cues or len(cues[-1]) >= room or at - cues[-1][-1][1] > 1500:
                cues.append([])
                room = self.dice.randint(5, 12)
            cues[-1].append((word, at))
        return self._rolling(cues, end) if self.format == "rolling" else self._plain(cues, end)

    def _plain(self, cues: Sequence[Sequence[tuple[str, int]]], end: int) -> str:
        comma = "," if self.format == "srt" else "."
        rows, last = ["WEBVTT\n"] if self.format == "vtt" else [], 0
        for number, cue in enumerate(cues, 1):
            following = cues[number][0][1] if number < len(cues) else end
            first = max(last, cue[0][1] + self.dice.randint(-160, 160))
            last = max(first + 300, min(following, cue[-1][1] + 600))
            index = f"{number}\n" if self.format == "srt" else ""
            text = " ".join(word for word, _ in cue)
            rows.append(f"{index}{_stamp(first, comma)} --> {_stamp(last, comma)}\n{text}\n")
        return "\n".join(rows)

    def _rolling(self, cues: Sequence[Sequence[tuple[str, int]]], end: int) -> str:
        """Two lines that roll up: the line before, then the new one with the times of its words."""
        rows, before = ["WEBVTT\nKind: captions\nLanguage: en\n"], " "
        for number, cue in enumerate(cues, 1):
            last = cues[number][0][1] if number < len(cues) else end
            text = cue[0][0] + "".join(f"<{_stamp(at, '.')}><c> {word}</c>" for word, at in cue[1:])
            settings = " align:start position:0%"
            rows.append(f"{_stamp(cue[0][1], '.')} --> {_stamp(last - 10, '.')}{settings}\n{before}\n{text}\n")
            before = " ".join(word for word, _ in cue)
            rows.append(f"{_stamp(last - 10, '.')} --> {_stamp(last, '.')}{settings}\n{before}\n \n")
        return "\n".join(rows)


def _span(passage: Passage, sheet: Sheet, address: str) -> tuple[int, int] | None:
    """Where a passage has the figure of a setting: the one in its place of several, the last of a movement."""
    text, value = " ".join(passage.text.split()), sheet.value(address)
    figures = [one.span() for one in FIGURE.finditer(text)]
    if value is None or not figures:
        return None
    index = passage.settings.index(address) if len(figures) == len(passage.settings) else -1
    first, last = figures[index]
    same = abs(Decimal(text[first:last].replace("\u2212", "-"))) == abs(value)
    return (first, last) if same else None


def _broken_off(text: str, dice: random.Random) -> str:
    words = text.split()
    return " ".join(words[: max(2, dice.randint(len(words) // 2, len(words)))])


def _mark_of(word: str) -> bool:
    return len(word) == 1 and MARK <= ord(word) < MARK + 256


def _sounds_like(word: str, dice: random.Random) -> str:
    """A word that sounds like it: from the table, else with a sound changed."""
    if word in SOUNDS:
        return SOUNDS[word]
    swaps = (("th", "d"), ("ing", "in"), ("ck", "k"), ("s", "z"), ("v", "f"), ("d", "t"), ("p", "b"), ("ea", "ee"),
             ("ou", "oo"), ("e", "i"), ("o", "u"), ("i", "e"), ("a", "e"), ("l", "w"), ("m", "n"))  # fmt: skip
    fits = [(one, other) for one, other in swaps if one in word]
    if not fits:
        return dice.choice(COMMON)
    one, other = dice.choice(fits)
    found = word.replace(one, other, 1)
    return word if found in NUMBER_WORDS else found


def _stamp(ms: int, comma: str) -> str:
    seconds, rest = divmod(max(0, ms), 1000)
    return f"{seconds // 3600:02}:{seconds // 60 % 60:02}:{seconds % 60:02}{comma}{rest:03}"
