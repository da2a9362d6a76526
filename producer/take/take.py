"""A take heard whole: lined up with its script, held against the sheet, timed."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from producer.language.reading import reader
from producer.model.dossier import Dossier
from producer.model.take import HeardSection, SaidFigure, Take, TakeFile, TakeFinding, WordCount
from producer.take.advised import Misadvised, misadvised
from producer.take.as_written import AsWritten, as_written
from producer.take.caution import caution_at
from producer.take.conditions import Condition, Wanted, conditions, named, version, wanted_conditions
from producer.take.directions import FromWrong, Turned, from_wrong, turned
from producer.take.heard import Heard, Listened
from producer.take.in_turn import in_turn, order_of
from producer.take.judging import Judge, Judged
from producer.take.likeness import ScriptTokens, Tokens, script_tokens, take_tokens
from producer.take.listening import listen
from producer.take.mending import mended, names_mended
from producer.take.merged import EVERYDAY, unmerged
from producer.take.missing import unsaid, wanted
from producer.take.names import Names, misnamed, own_name_said
from producer.take.nearby import Nearby
from producer.take.pick_ups import Mends, PickUp
from producer.take.placing import by_names
from producer.take.repeats import Repeats
from producer.take.sections import Lined, Read, asides, heard_sections, line_up, reads, word_spans
from producer.take.sentences import Sentence, sentences
from producer.take.speech import Speech, speech, with_ones
from producer.take.telling import Teller, in_time
from producer.take.timing import as_told, words_per_minute
from producer.take.topics import topic_names

# Shares of the script's words, and of what is said of settings, that tell a take of something else: measured on the
# demo's episodes taken for one another, and on their own takes with one word in four wrong.
_STRANGE_WORDS, _STRANGE_VALUES = 0.15, 0.5
_ENOUGH, _FEW = 8, 3  # settings said
_SOME, _MOST = 0.7, 0.8
_PLACES = ("left right front rear page simulation version",)
_READ = 0.5  # of the sections placed by words: then what is missing was left out


@dataclass(frozen=True, slots=True)
class _Heard:
    """One caption file, read for what it says of settings, conditions and names."""

    speech: Speech
    tokens: Tokens
    read: Sequence[Sequence[Read]]
    sentences: Sequence[Sentence]
    listened: Listened
    conditions: Sequence[Condition]
    version: Condition | None
    caution: int | None
    written: AsWritten


def hear(
    files: Sequence[TakeFile], dossier: Dossier, tracks: Mapping[str, str], garages: Mapping[str, str]
) -> Take | None:
    """What a take says. `files`: those of the finished cut count alone where there is one; of raw files the first is
    the take, the others are pick-ups that mend it. `tracks` and `garages`: every name of the library by id.

    None without a word.
    """
    cut = [one for one in files if one.of == "cut"]
    chosen = (cut or [one for one in files if one.of == "raw"])[: 1 if cut else None]
    chosen = [one for one in chosen if one.captions.said]
    if not chosen:
        return None
    listener = _Listener(dossier, script_tokens(dossier.narration), frozenset(_choices(dossier, tracks, garages)))
    heard = [listener.listen(one) for one in chosen]
    return _Take(dossier, listener.script, heard[0], heard[1:], tracks, garages).told(chosen)


def _named(dossier: Dossier) -> Iterator[str]:
    """The names of settings, pages, setups and conditions."""
    garage = dossier.garage
    yield from (one.name for one in garage.parameters.values())
    yield from (page.replace("_", " ").replace("-", " ") for page in garage.pages)
    yield from (name for one in dossier.sheets for name in (one.name, one.setup.purpose) if name)
    yield from (one.name for one in garage.options.values())


def _choices(dossier: Dossier, tracks: Mapping[str, str], garages: Mapping[str, str]) -> Iterator[str]:
    """Words that a take is checked for: they are never mended into what should have been said."""
    for option in dossier.garage.options.values():
        yield from (word.lower() for one in option.choices for word in one.split())
    for name in (*tracks.values(), *garages.values()):
        yield from (word.lower() for word in name.split())


@dataclass(frozen=True, slots=True)
class _Listener:
    """Reads one caption file after another against one script."""

    dossier: Dossier
    script: ScriptTokens
    choices: frozenset[str]

    def listen(self, file: TakeFile) -> _Heard:
        """The file mended where the script or the names say what was misheard, and read."""
        dossier, garage = self.dossier, self.dossier.garage
        vocabulary = reader(garage).vocabulary
        names = frozenset(word for name in _named(dossier) for word in name.lower().replace(",", "").split())
        words = unmerged(speech(file.captions), names | EVERYDAY | frozenset(self.script.tokens.text))
        tokens = take_tokens(words)
        read = reads(self.script, tokens)
        agreed = [one.agreed for some in read for one in some]
        words, tokens = mended(words, tokens, self.script, agreed, self.choices)
        known = frozenset(self.script.tokens.text) | frozenset(vocabulary.phrases) | self.choices
        caution = caution_at(words, dossier.channel.caution)  # before "real" is taken for "rear"
        words = names_mended(words, [*_named(dossier), *_PLACES], known)
        words = with_ones(words, frozenset(one.name.lower().split()[-1] for one in garage.parameters.values()))
        cut = sentences(words, vocabulary)
        told: dict[str, frozenset[str]] = {}
        for sheet, address, _ in wanted(dossier.sheets):
            told[sheet.id] = told.get(sheet.id, frozenset()) | {address}
        listened = listen(words, cut, vocabulary, topic_names(dossier.sheets, garage.pages), told)
        options = conditions(words, wanted_conditions(garage, dossier.episode))
        tested = version(words, dossier.episode.tested_with, options)
        written = as_written(dossier.narration, dossier.sheets, self.script, tokens, read)
        return _Heard(words, tokens, read, cut, listened, options, tested, caution, written)


@dataclass(slots=True)
class _Take:
    """One take on its way to findings."""

    dossier: Dossier
    script: ScriptTokens
    main: _Heard
    pick_ups: Sequence[_Heard]
    tracks: Mapping[str, str]
    garages: Mapping[str, str]

    def told(self, files: Sequence[TakeFile]) -> Take:
        """Everything about the take."""
        dossier, main, of = self.dossier, self.main, files[0].of
        lined = self._line_up()
        spans = word_spans(lined, len(main.speech))
        judge = Judge(dossier.sheets, Repeats(main.speech, main.sentences))
        settled = judge.settled(main.listened, self._placed(spans, lined))
        judged = judge.judge(settled, main.listened, main.written)
        order = order_of(dossier.narration, dossier.sheets)
        judged = in_turn(judged, main.listened, judge, order, main.written)
        sections = heard_sections(dossier.narration, lined, main.speech)
        counted = WordCount(lined.matched.count, len(lined.script.tokens), len(lined.take))
        stranger = self._stranger(counted, judged)
        common = (of, main.speech.file, tuple(one.speech.file for one in self.pick_ups))
        rate = words_per_minute(main.speech)
        if stranger:
            finding = Teller(dossier).stranger(stranger, main.speech.file)
            return Take(*common, (), counted, (), (finding,), rate, main.speech.end_ms, None, None, stranger)
        mends = self._mends()
        findings = in_time([*self._findings(judge, settled, judged, sections, spans, mends)])
        told = as_told(dossier.narration, lined, spans, main.listened, main.speech, of)
        narration, timeline = told if told is not None else (None, None)
        return Take(*common, sections, counted, asides(lined, main.speech), findings, rate, main.speech.end_ms,
                    narration, timeline, mended=mends.in_time(), said=files[0].captions.said,
                    figures=tuple(self._figures()))  # fmt: skip

    def _figures(self) -> Iterator[SaidFigure]:
        for one in self.main.listened.heard:
            if one.figure is not None:
                yield SaidFigure(self.main.speech.ms(one.at), one.claim.parameter, frozenset(one.figures))

    def _mends(self) -> Mends:
        sheets = self.dossier.sheets
        return Mends.of(
            PickUp(one.speech, one.listened, Judge(sheets, Repeats(one.speech, one.sentences))) for one in self.pick_ups
        )

    def _line_up(self) -> Lined:
        main, dossier = self.main, self.dossier
        at = [one.at for one in main.conditions]
        by_name = by_names(
            dossier.narration, dossier.garage, main.speech, main.sentences, main.listened, at, main.caution
        )
        pages = [one.page is not None for one in dossier.narration.sections]
        return line_up(self.script, main.tokens, main.read, by_name, pages, main.speech)

    def _placed(self, spans: Sequence[tuple[int, int] | None], lined: Lined) -> dict[int, str]:
        """The setup of each statement's word, where the words of a section say it."""
        rows = sorted(
            (span[0], span[1], section.setup)
            for span, one, section in zip(spans, lined.placed, self.dossier.narration.sections, strict=True)
            if span is not None and one is not None and one.by == "words" and section.setup
        )
        begins = [row[0] for row in rows]
        found: dict[int, str] = {}
        for one in self.main.listened.heard:
            at = bisect_right(begins, one.at) - 1
            if at >= 0 and one.at < rows[at][1]:
                found[one.at] = rows[at][2] or ""
        return found

    def _stranger(self, counted: WordCount, judged: Sequence[Judged]) -> str:
        """What speaks for captions of another episode, "" for nothing."""
        every = {(sheet.id, address) for sheet, address, _ in wanted(self.dossier.sheets)}
        right = {(one.setup, one.address) for one in judged if not one.wrong} & every
        words = counted.matched / counted.script if counted.script else 1.0
        own = own_name_said(self.main.speech, self.dossier.track.name)
        others = (name for track, name in self.tracks.items() if track != self.dossier.track.track)
        other = next((name for name in others if own_name_said(self.main.speech, name)), "")
        said = {(one.setup, one.address) for one in judged}
        rightly = len(right) / len(said & every) if said & every else 1.0
        strange = (
            (len(said) >= _ENOUGH and rightly < _STRANGE_VALUES)
            or (words < _STRANGE_WORDS and (len(said) < _FEW or rightly < _SOME))
            or (other and not own and rightly < _MOST)
        )
        if not strange:
            return ""
        speak = f", and they speak of {other}" if other and not own else ""
        return f"{len(right)} of {len(every)} settings are said as on its sheets{speak}"

    def _findings(
        self,
        judge: Judge,
        settled: Sequence[Heard],
        judged: Sequence[Judged],
        sections: Sequence[HeardSection],
        spans: Sequence[tuple[int, int] | None],
        mends: Mends,
    ) -> Iterator[TakeFinding]:
        teller, main = Teller(self.dossier), self.main
        for one in judged:
            if one.wrong:
                yield from mends.left(teller.differs(one, main.speech), mends.values)
        yield from self._movements(judge, teller, main, settled, mends)
        for other in mends.others:
            yield from (teller.differs(one, other.speech) for one in other.wrongs())
        yield from self._names(teller)
        yield from self._conditions(teller, mends)
        yield from self._missing(teller, judged, spans, mends)
        yield from self._sections(teller, sections, judged, mends)

    def _movements(
        self, judge: Judge, teller: Teller, heard: _Heard, said: Sequence[Heard], mends: Mends
    ) -> Iterator[TakeFinding]:
        """Advice, directions and starts said otherwise; one finding a statement."""
        found: list[Misadvised | Turned | FromWrong] = [*misadvised(said, self.dossier.sheets, heard.sentences)]
        found += turned(heard.speech, said, judge, heard.sentences)
        found += from_wrong(said, judge)
        nearby = Nearby(judge, heard.listened)
        for one in (x for x in found if not heard.written.holds(x.heard, heard.speech.plain)):
            if isinstance(one, Misadvised):
                if one.figure is not None and nearby.anothers(one.setup, one.address, one.figure, one.heard.at):
                    continue
                yield from mends.left(teller.misadvised(one, heard.speech), mends.advice)
            elif isinstance(one, Turned):
                yield from mends.left(teller.turned(one, heard.speech), mends.values)
            else:
                yield from mends.left(teller.from_wrong(one, heard.speech), mends.values)

    def _names(self, teller: Teller) -> Iterator[TakeFinding]:
        dossier = self.dossier
        known = (
            Names("track", dossier.track.track, self.tracks), Names("class", dossier.garage.garage, self.garages),
        )  # fmt: skip
        for names in known:
            own = names.names[names.own]
            if not any(own_name_said(one.speech, own) for one in self.pick_ups):
                yield from (teller.misnamed(one, self.main.speech) for one in misnamed(self.main.speech, (names,)))

    def _conditions(self, teller: Teller, mends: Mends) -> Iterator[TakeFinding]:
        every = [self.main, *self.pick_ups]
        for want in wanted_conditions(self.dossier.garage, self.dossier.episode):
            told = [(x, one) for one in every for x in one.conditions if x.wanted.name == want.name]
            if not told and any(named(one.speech, want, one.conditions) for one in every):
                continue
            yield from self._condition(teller, want, told, mends)
        said = [(one.version, one) for one in every if one.version is not None]
        tested = self.dossier.episode.tested_with
        if tested:
            want = Wanted("Version", (tested,), (), ())
            yield from self._condition(teller, want, said, mends)
        cautions = [(one, one.caution) for one in every if one.caution is not None]
        if not cautions:
            yield teller.no_caution(self.main.speech.file)
        elif cautions[0][0] is not self.main:
            mends.strike(teller.no_caution(self.main.speech.file), cautions[-1][0].speech, cautions[-1][1])

    def _condition(
        self, teller: Teller, want: Wanted, said: Sequence[tuple[Condition, _Heard]], mends: Mends
    ) -> Iterator[TakeFinding]:
        """The condition as it was said last counts."""
        if not said:
            yield teller.no_condition(want, self.main.speech.file)
            return
        last, heard = said[-1]
        own = [one for one, where in said if where is self.main]
        if not last.right:
            yield teller.condition(last, heard.speech)
        elif not own:
            mends.strike(teller.no_condition(want, self.main.speech.file), heard.speech, last.at)
        elif not own[-1].right:
            mends.strike(teller.condition(own[-1], self.main.speech), heard.speech, last.at)

    def _missing(
        self,
        teller: Teller,
        judged: Sequence[Judged],
        spans: Sequence[tuple[int, int] | None],
        mends: Mends,
    ) -> Iterator[TakeFinding]:
        zones: dict[tuple[str, str], list[tuple[int, int]]] = {}
        for section, span in zip(self.dossier.narration.sections, spans, strict=True):
            if section.setup and section.page and span is not None:
                zones.setdefault((section.setup, section.page), []).append(span)
        for one in unsaid(self.main.speech, self.main.listened, judged, self.dossier.sheets, zones):
            yield from mends.left(teller.unsaid(one, self.main.speech.file), mends.values)

    def _sections(
        self, teller: Teller, sections: Sequence[HeardSection], judged: Sequence[Judged], mends: Mends
    ) -> Iterator[TakeFinding]:
        file = self.main.speech.file
        read = sum(one.placed_by == "words" for one in sections) >= _READ * len(sections)
        said = {(one.setup, one.address) for one in judged} | mends.values.keys()
        for heard, section in zip(sections, self.dossier.narration.sections, strict=True):
            settings = {x for one in section.passages for x in one.settings if x in self.dossier.garage.settings}
            if heard.start_ms is None:
                told = any((section.setup, one) in said for one in settings)
                # One setting alone is told by itself.
                if (len(settings) > 1 and not told) or (not settings and read):
                    yield teller.left_out(heard, section.setup, file)
                continue
            if heard.earlier:
                yield teller.said_twice(heard, file)
            if heard.moved:
                yield teller.moved(heard, file)
            if heard.otherwise_ms is not None:
                yield teller.doubtful(heard, file)
