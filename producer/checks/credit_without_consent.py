"""Nobody is named who did not say yes.

Handles are personal. A request says `credit: yes` or `no`; left out means that nobody asked, and counts as no.
Whoever consents is credited by the program, whoever does not is simply left out. This check looks for the handle in
the author's own texts (title, approach, reasons, advice, talking points, names), in the channel's and in the notes of
the tracks: there it would be read out and published. Consent is given with a request: it counts where the episode
answers that request, or where all requests of that viewer agree. A handle is recognised with or without `@`, small or
large; without `@` only where it cannot be an ordinary word (a digit, `_`, `-` or `.` in it). The request log itself
stays on this machine.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    title: "Marrow Creek for @Gravel_Gus"
                             ^^^^^^^^^^^
    approach: |
      Brake early, wait, and be late on the gas,
      which is what wall_to_wall keeps asking about.
                    ^^^^^^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5 }
        reasons:
          - for: front_weight
            because: >
              The nose goes in, whatever @gravel_gus...ah, says.
                                         ^^^^^^^^^^^
    # tracks/marrow-creek.yaml
    notes: As @wall_to_wall said, two ends.
              ^^^^^^^^^^^^^

Found:

    # requests/2026-12.yaml
    format: 1
    requests:
      - { id: req-030, received: 2026-12-01, from: Curbside Ned, text: hello }
    # marrow-creek-grand-sedan/episode.yaml
    talking_points: { opening: Evening to Curbside Ned and the rest. }
                                          ^^^^^^^^^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    approach: |
      Brake early, as @late_apex_lou does, on the gravel; the bus goes wall to wall. Mail gus@gravel.example.
    talking_points: { opening: "Thanks to @late_apex_lou, and to @gravel_gustav." }
    thanks: [req-014, req-015, req-016]

Silent:

    # requests/2026-12.yaml
    format: 1
    requests:
      - { id: req-030, received: 2026-12-01, from: "@gravel_gus", credit: yes, text: "name me then" }
    # marrow-creek-grand-sedan/episode.yaml
    thanks: [req-030]
    approach: |
      Brake early, says @gravel_gus...and waits.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from producer.basics.finding import Finding, Severity
from producer.checks.texts import names
from producer.model.channel import Channel
from producer.model.episode import Episode
from producer.model.library import Library
from producer.model.prose import Prose, prose
from producer.model.request import Request

CODES = {"credit-without-consent": Severity.ERROR}
_WORD = re.compile(r"(?<![\w@.-])@?\w(?:[\w.-]*\w)?")
_MARKS = re.compile(r"[\d_.-]")


@dataclass(frozen=True, slots=True)
class _Log:
    """`consents`: each handle as it may stand in a text, in small letters, and whether all requests of that viewer say
    yes. `phrases` are those of more than one word; `marks` finds out quickly that a text has none of the others."""

    consents: Mapping[str, bool]
    phrases: tuple[str, ...]
    marks: re.Pattern[str]


def check_library(library: Library) -> Iterator[Finding]:
    """Every text of the library that may be published, against the log."""
    log = _log(library)
    if not log.consents:
        return
    for text in _shared(library):
        yield from _text(text, log, frozenset())
    for episode in library.episodes.values():
        thanked = _thanked(episode, library)
        for text in (*prose(episode), *names(episode)):
            yield from _text(text, log, thanked)


def _log(library: Library) -> _Log:
    found: dict[str, bool] = {}
    for request in library.requests.values():
        for form in _forms(request):
            found[form] = found.get(form, True) and request.credit is True
    found.pop(library.channel.presenter.casefold() if library.channel else "", None)
    marks = {letter for form in found for letter in _MARKS.findall(form)} | {"@"}
    return _Log(
        found, tuple(form for form in found if " " in form), re.compile(f"[{re.escape(''.join(sorted(marks)))}]")
    )


def _forms(request: Request) -> Iterator[str]:
    handle = " ".join((request.from_ or "").casefold().split())
    bare = handle.removeprefix("@")
    if bare:
        yield f"@{bare}"
        if _MARKS.search(bare) or (not handle.startswith("@") and " " in bare):
            yield bare


def _thanked(episode: Episode, library: Library) -> frozenset[str]:
    """The handles of those who consented in a request that this episode answers."""
    asked = (library.requests.get(name) for name in episode.thanks)
    return frozenset(form for one in asked if one is not None and one.credit is True for form in _forms(one))


def _shared(library: Library) -> Iterator[Prose]:
    for track in library.tracks.values():
        if track.notes:
            yield Prose(track, ("notes",), track.notes)
    if library.channel is not None:
        yield from _channel(library.channel)


def _channel(channel: Channel) -> Iterator[Prose]:
    voice = channel.voice
    for key, text in (("greeting", voice.greeting), ("sign_off", voice.sign_off)):
        if text:
            yield Prose(voice, (key,), text)
    if channel.written("caution"):
        yield Prose(channel, ("caution",), channel.caution)


def _text(text: Prose, log: _Log, thanked: frozenset[str]) -> Iterator[Finding]:
    for start, end, form in _named(text.text, log):
        if log.consents[form] or form in thanked:
            continue
        message = f"'{text.text[start:end]}' did not say that they may be named"
        hint = "leave the name out, or ask and write 'credit: yes' into their request"
        place = text.place(start, end)
        yield Finding("credit-without-consent", Severity.ERROR, place, message, hint, text.where)


def _named(text: str, log: _Log) -> Iterator[tuple[int, int, str]]:
    for match in _WORD.finditer(text) if log.marks.search(text) else ():
        form = match.group().casefold()
        while form not in log.consents and (cut := max(form.rfind("."), form.rfind("-"))) > 0:
            form = form[:cut].rstrip(".-")  # a dot or a dash may end a handle
        if form in log.consents:
            yield match.start(), match.start() + len(form), form
    small = text.casefold() if log.phrases else ""
    for form in log.phrases:
        if len(small) == len(text) and form in small:
            start = small.index(form)
            yield start, start + len(form), form
