"""Fills the view of a reply: every figure is the answering setup's, every word the author's or the rule table's."""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal

from producer.basics.spelling import spell
from producer.model.channel import Channel
from producer.model.garage import Setting
from producer.model.guide import Change, Guide
from producer.model.library import Case, Library
from producer.model.opinion import Opinions
from producer.render.markdown import to_plain
from producer.replies import asked_about, wording
from producer.replies.changes import Offered, directions, matters, offered
from producer.replies.choose import Choice
from producer.replies.setup_said import purpose_lacking
from producer.replies.understand import Understood, kind, missing, questions
from producer.replies.view import Answer, Group, Line, ReplyView, Stage

_STAGES: dict[str, Stage] = {
    "idea": "idea", "testing": "testing", "scripted": "preview", "recorded": "preview", "published": "out",
}  # fmt: skip


_FIGURE = re.compile(r"(?<![\w.])-?\d{1,6}(?:\.\d{1,4})?(?![\w])")
# "Tried the track bar already" does not ask for it.
_TRIED = re.compile(r"\b(?:tried|trying|already|done)\b", re.IGNORECASE)


class Filler:
    """Everything that one reply is made from; `case` has its prose filled in, None where no setup answers."""

    def __init__(
        self,
        library: Library,
        channel: Channel,
        whole: Understood,
        choice: Choice,
        case: Case | None,
        guide: Guide | None,
        opinions: Opinions | None = None,
    ) -> None:
        self.library, self.channel, self.choice = library, channel, choice
        self.request, self.named, self.elsewhere = whole.request, whole.named, whole.elsewhere
        self.case, self.guide, self.opinions = case, guide, opinions
        self.sheet = case.sheet(choice.setup) if case is not None and choice.setup is not None else None
        self.answers = tuple(self._answers())

    @property
    def lacking(self) -> tuple[str, ...]:
        """What is missing in the message and matters."""
        case, sheet = self.case, self.sheet
        if self.elsewhere:
            return ()
        tyres_matter = bool(case and sheet and matters(case, sheet, self.request))
        return missing(self.request, self.choice, tyres_matter, bool(self.answers or self.named))

    def view(self) -> ReplyView:
        """The whole reply, nothing left out."""
        episode = self.choice.episode or self.choice.coming
        found = self._offered()
        classes = tuple(self._garage(one) for one in self.choice.garages)
        asked = questions(self.lacking, self.request, classes)
        return ReplyView(
            handle=wording.flat(self.request.from_ or ""),
            presenter=wording.flat(self.channel.presenter),
            caution=wording.flat(self.channel.caution),
            spelling=self.channel.spelling,
            about=wording.flat(self._about()),
            understood=self._own(wording.understood(self.request)),
            stage=self._stage(),
            state=episode.status if episode else "",
            when=wording.day(episode.planned, self.channel.spelling) if episode and episode.planned else "",
            setup=wording.setup_name(self.sheet) if self.sheet else "",
            setups=self._setups(),
            thanked=self._thanked(),
            lacks=self._lacks(),
            version=(episode.tested_with or "") if episode and self.sheet else "",
            why=self._why(),
            hint=self._hint(),
            untested=bool(self.sheet and not self.sheet.setup.tested),
            groups=self._groups(found),
            open=tuple(self._own(one) for one in open_sentences(found)),
            rules=self._rules(),
            values=tuple(self._values()),
            unfound=self._unfound(),
            answers=self.answers,
            setting=bool(self.named) and not self.request.feels,
            questions=tuple(self._own(one) for one in asked),
            consent=self._never_asked(),
            link=self._link(),
            classes=wording.listed([f"the {one}" for one in classes]),
        )

    def _own(self, text: str) -> str:
        return spell(text, self.channel.spelling)

    def _garage(self, name: str) -> str:
        return self.library.garages[name].name if name in self.library.garages else wording.readable(name)

    def _about(self) -> str:
        track = self.choice.track or ""
        if not track:
            return ""
        named = self.library.tracks[track].name if track in self.library.tracks else wording.readable(track)
        return wording.place(named, self._garage(self.choice.garage) if self.choice.garage else "")

    def _stage(self) -> Stage:
        episode = self.choice.episode or self.choice.coming
        if episode is not None:
            return _STAGES[episode.status]
        return "declined" if self.request.status == "declined" else "none"

    def _setups(self) -> str:
        if self.case is None:
            return ""
        return wording.listed([f"a {wording.setup_name(one)}" for one in self.case.sheets])

    def _lacks(self) -> str:
        """The run type of a setup that is asked for and not there."""
        episode = self.choice.episode or self.choice.coming
        if episode is None or kind(self.request) not in ("help", "track request"):
            return ""
        return purpose_lacking(self.request.text, episode) or ""

    def _thanked(self) -> str:
        """What a viewer is glad of: the setup where the message names it, else what the episode has."""
        if self.case is None or self.sheet is None:
            return ""
        many = len(self.case.sheets) > 1 and self.choice.because == "first"
        what = "setups" if many else wording.setup_name(self.sheet)
        return f"{what} for {wording.flat(self._about())} {'work' if many else 'works'}"

    def _why(self) -> str:
        """How class and setup were chosen where the viewer named neither."""
        guessed = self.sheet is not None and self.choice.guessed
        car = f"I take it that you are in the {self._garage(self.choice.garage or '')}." if guessed else ""
        return wording.flat(f"{self._why_setup()} {car}")

    def _why_setup(self) -> str:
        if self.sheet is None or self.case is None or len(self.case.sheets) < 2:
            return ""
        if self.choice.because == "worn":
            return self._own("The tyres are worn, so I took that one.")
        if self.choice.because == "first":
            return "You did not say which setup you are on, so I took that one."
        return ""

    def _hint(self) -> str:
        """Where the tyres are worn and the setup is another one: that there is a setup for it."""
        if self.case is None or self.sheet is None or self.request.tyres != "worn" or not self.request.feels:
            return ""
        long = next((one for one in self.case.sheets if one.setup.purpose == "long run"), None)
        if long is None or long.id == self.sheet.id or self.sheet.setup.purpose == "long run":
            return ""
        name = wording.setup_name(long)
        return self._own(f"If most of your laps are on worn tyres, try the {name} as well; it is made for that.")

    def _link(self) -> str:
        episode = self.choice.episode
        if episode is not None and episode.status == "published" and episode.video is not None:
            return f"The video: {wording.flat(episode.video.url)}"
        first = next(iter(self.channel.links), None)
        return f"{wording.flat(first.name)}: {wording.flat(first.url)}" if first else ""

    def _rules(self) -> str:
        garage = self.library.garages.get(self.choice.garage or "")
        if self.sheet is not None or garage is None:
            return ""
        track = self.library.tracks.get(self.choice.track or "")
        return wording.listed(directions(garage, track, self.request), "or")

    def _offered(self) -> tuple[Offered, ...]:
        if self.case is None or self.sheet is None or self.guide is None:
            return ()
        if kind(self.request) not in ("help", "track request"):
            return ()
        named = () if _TRIED.search(self.request.text) else self.named
        return offered(self.case, self.sheet, self.guide, self.request, self.opinions, named)

    def _groups(self, found: tuple[Offered, ...]) -> tuple[Group, ...]:
        answered = [one for one in found if one.changes]
        many = len(found) > 1
        return tuple(
            Group(wording.feel(one.complaint) if many else "", tuple(self._line(change) for change in one.changes))
            for one in answered
        )

    def _line(self, change: Change) -> Line:
        assert self.sheet is not None  # noqa: S101 - a change is always one of this setup
        setting = self.sheet.setting(change.parameter)
        words = wording.flat(to_plain(change.say))
        return Line(
            setting=wording.flat(setting.name),
            start=wording.flat(_start(setting, change)),
            to=wording.flat(setting.shown(change.to)),
            words="" if self._names_another(words) else words,
            note=self._own(wording.flat(_note(change))),
            rule=change.voice == "rule",
            when=self._own(self._when(change)),
        )

    def _when(self, change: Change) -> str:
        parts = []
        if change.tyres is not None and self.request.tyres is None:
            parts.append(f"on {change.tyres} tyres")
        if change.device is not None and self.request.device is None:
            parts.append(f"if you drive with a {change.device}")
        return ", ".join(parts)

    def _values(self) -> Iterator[str]:
        """What the sheet has, for someone who says that video and card differ: what they speak of, else everything."""
        if self.case is None or self.sheet is None or kind(self.request) != "correction":
            return iter(())
        spoken_of = tuple(asked_about.values_of(self.case, self.sheet, self.named))
        return iter(spoken_of) if spoken_of else asked_about.every_value(self.sheet)

    def _unfound(self) -> bool:
        """Whether a correction names figures and none of them is on a card of this episode: it is about another."""
        if self.case is None or kind(self.request) != "correction":
            return False
        spoken_of = asked_about.addresses(self.case.sheets[0], self.named)
        said = {Decimal(one) for one in _FIGURE.findall(self.request.text)}
        known = {one.value(address) for one in self.case.sheets for address in spoken_of}
        return bool(said and spoken_of) and said.isdisjoint(known)

    def _answers(self) -> Iterator[Answer]:
        """What the sheet has for settings that are asked about, where nothing is said to be wrong."""
        if self.case is None or self.sheet is None or self.request.feels or kind(self.request) != "help":
            return
        for setting, figure, words in asked_about.answers(self.case, self.sheet, self.named):
            yield Answer(setting, figure, "" if self._names_another(words) else words)

    def _never_asked(self) -> bool:
        """Whether this viewer was never asked for consent, in this message or another."""
        handle = (self.request.from_ or "").casefold()
        known = (one.credit for one in self.library.requests.values() if (one.from_ or "").casefold() == handle)
        return self.request.credit is None and not (handle and any(one is not None for one in known))

    def _names_another(self, words: str) -> bool:
        others = (one.from_ for one in self.library.requests.values() if one.from_ != self.request.from_)
        return any(one.casefold() in words.casefold() for one in others if one)


def _start(setting: Setting, change: Change) -> str:
    """`from 5.14:1 to 4.88:1`, but `from 825 to 850 lb/in`."""
    return setting.shown(change.start) if setting.unit.startswith(":") else setting.figure(change.start)


def _note(change: Change) -> str:
    """What the author's words do not say: what a split becomes; of a rule, everything else to know."""
    if change.voice == "rule":
        return change.also
    first = change.also.split("; ")[0]
    return first if " becomes " in first else ""


def open_sentences(found: tuple[Offered, ...]) -> Iterator[str]:
    """A sentence for each feel that got no change, and why."""
    for one in found:
        others = wording.listed([wording.feel(x.complaint) for x in found if x.changes])
        feel = wording.feel(one.complaint)
        if one.trouble == "against":
            yield f"What helps {feel} would make {others} worse, so I would sort that out first."
        elif one.trouble == "later":
            yield f"Write again about {feel} once that is better."
        elif one.trouble == "nothing":
            yield f"For {feel} I have nothing to change: no rule speaks of it, or nothing is left inside the limits."
