"""Every figure and movement that is heard of a setting, with the setup spoken of.

Claims are read sentence by sentence from the whole take, wherever it stands in the script. What a sentence leaves out
is taken from the one before: the parameter of a bare corner ("Track bar. Left end nine and a half."), the setting of a
bare figure ("Front weight. Fifty and a half.").
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from decimal import Decimal
from itertools import takewhile

from producer.language.mentions import mentions
from producer.language.numbers import Number, numbers, settle
from producer.language.statements import Statement, statements
from producer.language.terms import Mention, Vocabulary
from producer.language.tokens import listed
from producer.model.claim import Claim
from producer.take.heard import Heard, Listened, Turn
from producer.take.phrasing import chained, comes_to, more_than_names, only_figures, possible, spoken_of, stands_for
from producer.take.sentences import Sentence
from producer.take.speech import Offsets, Speech, offsets
from producer.take.topics import Topic, TopicNames, topics

# A parameter stays the topic of bare corners for so many words, a setting that of bare figures for so many sentences.
_TOPIC_WORDS = 250
_FIRST = re.compile(r"\bfirst\b", re.IGNORECASE)
_LEAD_WORDS = 7
_CLOSE = 2  # words from a setup's name to its figure
_SUBJECT_SENTENCES = 3
_FEELS = listed("tight loose pushes pushing push")
_ADVISES = listed("if when whenever should")


@dataclass(slots=True)
class _State:
    """What carries over from one sentence to the next."""

    setup: str
    base: str
    doubt: bool = False
    aside: str = ""
    page: str = ""
    waiting: list[int] = field(default_factory=list)
    pages: dict[str, set[str]] = field(default_factory=dict)
    parameter: str = ""
    parameter_at: int = -_TOPIC_WORDS
    stated: set[str] = field(default_factory=set)
    addresses: tuple[str, ...] = ()
    addresses_at: int = -9
    asked_at: int = -9
    advice_at: int = -9
    advised: tuple[str, ...] = ()


def listen(
    heard: Speech,
    sentences: Sequence[Sentence],
    vocabulary: Vocabulary,
    names: TopicNames,
    told: Mapping[str, frozenset[str]],
) -> Listened:
    """What a take says of settings. `told`: each setup in its order with the settings that are told for it; the first
    setup is spoken of until another is named.
    """
    order = tuple(told)
    listener = _Listener(heard, vocabulary, names, order, sentences, told, _State(order[0], order[0]))
    for index, sentence in enumerate(sentences):
        listener.take(index, sentence)
    turns = tuple(sorted(listener.turns, key=lambda one: one.at))
    return Listened(
        tuple(listener.heard), turns, tuple(listener.setups), tuple(listener.named), tuple(listener.figures)
    )


@dataclass(slots=True)
class _Listener:
    """One pass over the sentences of a take."""

    speech: Speech
    vocabulary: Vocabulary
    names: TopicNames
    order: Sequence[str]
    sentences: Sequence[Sentence]
    told: Mapping[str, frozenset[str]]
    state: _State
    heard: list[Heard] = field(default_factory=list)
    turns: list[Turn] = field(default_factory=list)
    setups: list[tuple[str, ...]] = field(default_factory=list)
    named: list[tuple[int, str]] = field(default_factory=list)
    figures: list[tuple[int, tuple[Decimal, ...]]] = field(default_factory=list)

    def take(self, index: int, sentence: Sentence) -> None:
        """Read one sentence."""
        first, last = sentence
        words, state = self.speech.plain[first:last], self.state
        told = topics(self.speech.plain, first, last, self.names)
        before = (state.setup, state.aside, state.doubt)
        self._turn(told)
        either = self._following(state.base) if state.doubt else state.base
        self.setups.append(tuple(dict.fromkeys((state.aside or state.setup, state.setup, state.base, either))))
        text = self.speech.text(first, last)
        where = offsets(self.speech.words[first:last], first)
        # "39.5 first, then 39" counts nothing: no ordinal is meant.
        counted = [one for one in numbers(_FIRST.sub("xxxxx", text)) if not one.foreign]
        self.figures += [(where.word(one.start), one.readings + one.ratios) for one in counted]
        found = mentions(text, self.vocabulary)
        if found or counted or state.addresses_at >= index - _SUBJECT_SENTENCES:
            if not found and counted and only_figures(words):
                self._bare_figures(index, sentence, counted, where)
            else:
                self._statements(index, sentence, found, counted, told, before)
        for one in found:
            self.named += [(where.word(one.start), address) for address in one.addresses or (one.parameter,) if address]
        self._carry_over(index, sentence, found, where)
        self._unnamed_page(index)

    def _turn(self, told: Sequence[Topic]) -> None:
        state = self.state
        for one in told:
            if one.kind == "turn":
                state.setup = state.base = one.name
                state.aside, state.doubt = "", False
                self.turns.append(Turn(one.at, "", one.name))
            elif one.kind == "aside":
                state.aside = one.name if one.name != state.setup else ""
            else:
                self._page(one.name)
                self.turns.append(Turn(one.at, one.name, state.setup, state.doubt))

    def _unnamed_page(self, index: int) -> None:
        """A page whose name was lost: its settings are told one after the other, two at least."""
        state, settings = self.state, self.vocabulary.garage.settings
        for at in range(len(self.heard) - 1, -1, -1):
            one = self.heard[at]
            if one.sentence != index:
                break
            setting = settings.get(one.claim.parameter)
            if one.figure is None or one.advice or setting is None or not one.named:
                continue
            if setting.page == state.page:
                state.waiting.clear()
                continue
            first = self.heard[state.waiting[0]] if state.waiting else None
            if first is not None and settings[first.claim.parameter].page != setting.page:
                state.waiting.clear()
            state.waiting.append(at)
            # A later setup is told where it differs: one setting may be all of a page.
            several = len({self.heard[x].claim.parameter for x in state.waiting}) > 1
            if several or (state.base != self.order[0] and one.claim.parameter in self.told.get(state.base, ())):
                self._turned_unnamed(setting.page)

    def _turned_unnamed(self, page: str) -> None:
        state = self.state
        waiting = sorted(state.waiting)
        parameter, addresses = state.parameter, state.addresses
        self._page(page)
        state.parameter, state.addresses = parameter, addresses
        first, _ = self.sentences[self.heard[waiting[0]].sentence]
        self.turns.append(Turn(self._lead(self.heard[waiting[0]].sentence, first), page, state.setup, state.doubt))
        for at in waiting:
            if self.heard[at].sure:
                self.heard[at] = replace(self.heard[at], setup=state.setup, sure=not state.doubt)

    def _lead(self, sentence: int, first: int) -> int:
        """The start of a short sentence before one, where it speaks of a page: "Okay, the [lost] page"."""
        for back in (1, 2):
            begin, end = self.sentences[max(0, sentence - back)]
            if end - begin <= _LEAD_WORDS and "page" in self.speech.plain[begin:end]:
                return begin
        return first

    def _page(self, page: str) -> None:
        """A page that was told before begins the next setup, if it is not told again: which stays open. Once it has
        begun so, a page that was left out before is its own.
        """
        state = self.state
        state.aside, state.parameter, state.page = "", "", page
        state.stated.clear()
        state.waiting.clear()
        told, following = state.pages.setdefault(state.base, set()), self._following(state.base)
        pages = (*self.vocabulary.garage.pages, page)
        passed = state.doubt and not told.isdisjoint(pages[pages.index(page) + 1 :])
        again = (page in told or passed) and following != state.base
        state.doubt = state.doubt or again
        state.setup = following if again else state.base
        told.add(page)

    def _following(self, setup: str) -> str:
        """The setup that is told after one; the last itself."""
        at = self.order.index(setup) if setup in self.order else len(self.order) - 1
        return self.order[min(at + 1, len(self.order) - 1)]

    def _carry_over(self, index: int, sentence: Sentence, found: Sequence[Mention], where: Offsets) -> None:
        state, words = self.state, self.speech.plain[sentence[0] : sentence[1]]
        for one in found:
            if one.parameter:
                if one.parameter != state.parameter:
                    here = {x.claim.parameter for x in self.heard if x.sentence == index and x.figure is not None}
                    state.stated &= here
                state.parameter, state.parameter_at = one.parameter, where.word(one.start)
            addresses = one.addresses or self._of_topic(one, sentence[0])
            if addresses:
                state.addresses, state.addresses_at = addresses, index
        said = [one.claim.parameter for one in reversed(self.heard) if one.sentence == index]
        if said and not any(one.addresses for one in found):
            state.addresses, state.addresses_at = (said[0],), index
        asks = any(one.endswith("?") for one in self.speech.words[sentence[0] : sentence[1]])
        if _FEELS.intersection(words) and (asks or not self.speech.punctuated or _ADVISES.intersection(words)):
            state.asked_at = state.advice_at = index
            state.advised = state.addresses
        elif index == state.asked_at + 1 and state.addresses_at == index and more_than_names(where.text, found):
            # "Tight in the middle, with a wheel? Go back a size on the front bar."
            state.advice_at, state.advised = index, state.addresses

    def _of_topic(self, one: Mention, first: int) -> tuple[str, ...]:
        """The addresses of a bare corner or end of the parameter named last."""
        state = self.state
        if not state.parameter or one.parameter or first - state.parameter_at > _TOPIC_WORDS:
            return ()
        return self.vocabulary.resolve(state.parameter, one.parts, one.axle, one.side, one.split)

    def _bare_figures(self, index: int, sentence: Sentence, counted: Sequence[Number], where: Offsets) -> None:
        """ "That is 800, then 825" after an advice; "Fifty and a half" after a setting's name."""
        state = self.state
        if 0 <= index - state.advice_at <= 2 and state.advised and state.addresses_at <= state.advice_at:
            state.advice_at = index
            grid = self.vocabulary.grids[state.advised[0]]
            for one in counted:
                if not any(map(grid.inside, one.readings + one.ratios)):
                    continue  # another setting's, whose name the captions lost
                at = where.word(one.start)
                claim = Claim(self.speech.text(at, at + 1), one.start, one.end, state.advised[0], to=one.readings[0])
                self.heard.append(
                    Heard(claim, frozenset(), *sentence, at, one.readings + one.ratios, state.aside or state.setup,
                          not (state.aside or state.doubt), True, True, False, False, index)
                )  # fmt: skip
        elif len(state.addresses) == 1 and index - state.addresses_at <= 1:
            name = self.vocabulary.garage.name_of(state.addresses[0])
            vague = comes_to(self.speech.plain[sentence[0] : sentence[1]], counted)
            self._read(index, sentence, f"{name}, ", (), [], (state.setup, state.aside, state.doubt), vague=vague)

    def _statements(
        self,
        index: int,
        sentence: Sentence,
        found: Sequence[Mention],
        counted: Sequence[Number],
        told: Sequence[Topic],
        before: tuple[str, str, bool],
    ) -> None:
        state = self.state
        if self._paired(index, sentence, found, counted, told, before):
            return
        # More settings than figures after them: which is whose stays open.
        several = len(self._meant(sentence, found)) > max(1, len(counted))
        vague = several and bool(counted) and counted[0].start >= found[-1].end
        own = any(one.parameter for one in found)
        if found and not own and self._carries(sentence, found):
            name = self.vocabulary.garage.parameters[state.parameter].name
            if self._read(index, sentence, f"{name}, ", (), told, before, vague=vague):
                return
        subject = state.addresses if not found and index - state.addresses_at <= _SUBJECT_SENTENCES else ()
        self._read(index, sentence, "", subject, told, before, vague=vague)

    def _paired(
        self,
        index: int,
        sentence: Sentence,
        found: Sequence[Mention],
        counted: Sequence[Number],
        told: Sequence[Topic],
        before: tuple[str, str, bool],
    ) -> bool:
        """Read "left front and left rear, 20.5 and 22": as many figures as settings, straight after the last one."""
        text = self.speech.text(*sentence)
        ahead = [one for one in found if counted and one.end <= counted[0].start]
        addresses = self._meant(sentence, ahead)
        counted = chained(text, counted)[: len(addresses)]
        if len(addresses) < 2 or len(counted) < len(addresses) or any(len(one) != 1 for one in addresses):
            return False
        where = offsets(self.speech.words[sentence[0] : sentence[1]], sentence[0])
        for (address,), number in zip(addresses, counted, strict=True):
            at = where.word(number.start)
            value = settle(number.candidates(self.vocabulary.garage.unit_of(address)), self.vocabulary.grids[address])
            claim = Claim(text, number.start, number.end, address, value=value)
            setup, sure = spoken_of(at, sentence[1], told, before)
            self.heard.append(
                Heard(claim, frozenset(), *sentence, at, number.readings + number.ratios, setup, sure, True, False,
                      True, True, index)
            )  # fmt: skip
        return True

    def _meant(self, sentence: Sentence, found: Sequence[Mention]) -> list[tuple[str, ...]]:
        """The settings that mentions come to, once each, those that come to nothing ("the rear") left out."""
        meant = (one.addresses or self._of_topic(one, sentence[0]) for one in found)
        return list(dict.fromkeys(one for one in meant if one))

    def _carries(self, sentence: Sentence, found: Sequence[Mention]) -> bool:
        """Whether bare corners or ends can belong to the parameter named last."""
        state = self.state
        if not state.parameter or sentence[0] - state.parameter_at > _TOPIC_WORDS:
            return False
        parts = self.vocabulary.garage.parameters[state.parameter].parts
        return any(set(one.parts) & set(parts) or one.side in parts for one in found) and bool(parts)

    def _read(
        self,
        index: int,
        sentence: Sentence,
        ahead: str,
        subject: tuple[str, ...],
        told: Sequence[Topic],
        before: tuple[str, str, bool],
        *,
        vague: bool = False,
    ) -> bool:
        """Keep what a sentence says; with `ahead` only what has a figure that its setting could have.

        `vague`: its figures may be another setting's.
        """
        where = offsets(self.speech.words[sentence[0] : sentence[1]], sentence[0], ahead)
        said = statements(where.text, self.vocabulary, subject)
        if ahead and not any(possible(one, self.vocabulary) for one in said):
            return False
        row = [self._heard(index, sentence, one, where, bool(ahead), vague) for one in said]
        for one in row:
            setup, sure = spoken_of(one.at, self._following_figure(one.at, sentence, told), told, before)
            self.heard.append(replace(one, setup=setup, sure=sure))
        self.state.stated.update(one.claim.parameter for one in row if one.figure is not None)
        self.heard += self._for_another(index, sentence, row, told)
        return True

    def _for_another(
        self, index: int, sentence: Sentence, row: Sequence[Heard], told: Sequence[Topic]
    ) -> Iterator[Heard]:
        """The figure without a name in "right rear 40, and for the long run 39"."""
        taken = {one.at for one in row}
        for at, readings in self._figures_in(sentence):
            topic = next((one for one in told if one.kind == "aside" and 0 <= at - one.end <= _CLOSE), None)
            owner = next((one for one in reversed(row) if one.at < at and one.figure is not None), None)
            if at in taken or topic is None or owner is None:
                continue
            address = owner.claim.parameter
            value = settle(readings, self.vocabulary.grids[address])
            if owner.at < topic.at and value is not None and self.vocabulary.grids[address].inside(value):
                claim = Claim(self.speech.text(at, at + 1), owner.claim.start, owner.claim.end, address, value=value)
                yield Heard(claim, frozenset(), owner.first, at + 1, at, readings, topic.name, True, True, False, True,
                            False, index)  # fmt: skip

    def _figures_in(self, sentence: Sentence) -> list[tuple[int, tuple[Decimal, ...]]]:
        """The figures of the sentence that is read, (word, readings) in order."""
        return list(takewhile(lambda one: one[0] >= sentence[0], reversed(self.figures)))[::-1]

    def _following_figure(self, at: int, sentence: Sentence, told: Sequence[Topic]) -> int:
        """How far a setup named after the figure at word `at` may be its own: to the next figure; not at all where the
        sentence names its setups before their figures.
        """
        figures = [one for one, _ in self._figures_in(sentence)]
        last = max((one.at for one in told if one.kind != "page"), default=sentence[1])
        if any(one > last for one in figures):
            return at
        return next((one for one in figures if one > at), sentence[1])

    def _heard(
        self, index: int, sentence: Sentence, one: Statement, where: Offsets, inferred: bool, vague: bool
    ) -> Heard:
        span = next((one.spans[name] for name in ("value", "to", "amount", "frm") if name in one.spans), None)
        readings: tuple[Decimal, ...] = ()
        if span is not None:
            counted = numbers(where.text[span[0] : span[1]])
            readings = counted[0].readings + counted[0].ratios if counted else ()
        begin, end = where.word(one.claim.start), where.word(max(one.claim.start, one.claim.end - 1)) + 1
        at = where.word(span[0]) if span else begin
        words = self.speech.plain[sentence[0] : at]
        asks = any(one.endswith("?") for one in self.speech.words[sentence[0] : at])
        # Without stops "tight in the middle" can be told from a question by nothing.
        asks = asks or not self.speech.punctuated or bool(_ADVISES.intersection(words))
        asked = bool(_FEELS.intersection(words)) and asks
        follows = index - self.state.advice_at <= 2 and stands_for(self.speech.plain, at)
        # "That is 250": an advice whose "if" was lost, as likely as a value.
        vague = vague or (inferred and not possible(one, self.vocabulary))
        vague = vague or stands_for(self.speech.plain, at) or self.speech.plain[at + 1 : at + 2] == ("would",)
        hedges = one.hedges | {"vague"} if vague else one.hedges
        advice = asked or follows or "if" in one.hedges or one.claim.if_feels is not None
        again = inferred and one.claim.parameter in self.state.stated
        return Heard(
            one.claim, hedges, begin, max(end, at + 1), at, readings, "", True, inferred, advice, one.named, again,
            index,
        )  # fmt: skip
