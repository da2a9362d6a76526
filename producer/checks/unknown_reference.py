"""A name stands for something that is there.

An episode names its track, its garage, the requests it answers, the setups it compares, the options and choices of
the garage; a parameter names its page; prose names the figures that are filled in (`{{ spring.rf }}`). A name that
stands for nothing is a slip or a file that is missing, and the nearest name is suggested. A public copy of a library
has no `requests` folder: then nothing is said about `thanks`. What a viewer asks for may well be a track that is not
there yet. A waiver for a code that no check has is found here, too.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    track: marow-creek
           ^^^^^^^^^^^
    thanks: [req-014, req-140]
                      ^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    garage: grand_sedan
            ^^^^^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - for: spring.rf
            compared_with: shrot
                           ^^^^^
            because: "With {{ spring.rg }} it takes a set sooner."
                           ^^^^^^^^^^^^^^^
      - setup: long
        name: Long run
        based_on: shorter
                  ^^^^^^^
    stints:
      - { setup: lang, file: stints/short-1.csv, conditions: { use_speed: doubel, tire_use: hard } }
                 ^^^^
                                                                          ^^^^^^
                                                                                  ^^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    conditions: { tyre_use: { me: hard, team: hard }, use_speed: doubel }
                                        ^^^^
                                                                 ^^^^^^

Found:

    # garages/grand-sedan.yaml
    pages: [ballast, driveline]
    parameters:
      tape: { page: drivline, name: Grille tape, unit: "%", min: 0, max: 100, step: 5, default: 40 }
                    ^^^^^^^^
    handling:
      tap: { entry: tighter }
      ^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    allow:
      - { code: unexplaned-change, why: I explain it on the track. }
                ^^^^^^^^^^^^^^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - for: spring.rf
            compared_with: long
            because: "With {{ spring.rf | with_unit }} it takes a set sooner than with {{ long.spring.rf }}."
          - for: front_weight
            compared_with: default
            because: The nose goes in.
      - setup: long
        name: Long run
        based_on: short
        changes: { spring: { rf: 775 } }
        reasons:
          - { for: spring.rear_split, because: "A split of {{ spring.rear_split }} is enough." }
    conditions: { tyre_use: usual, use_speed: triple }
    stints:
      - { setup: long, file: stints/short-1.csv, conditions: { use_speed: double } }

Silent:

    # requests/2026-12.yaml
    format: 1
    requests:
      - id: req-020
        received: 2026-12-02
        from: "@late_apex_lou"
        text: any chance of the big one by the lake
        track: lake-oval
        garage: hatchback
        episode: marrow-creek-grand-sedan
        setup: long
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from difflib import get_close_matches

from producer.basics.finding import Finding, Severity
from producer.checks.conditions import Given, driven, given
from producer.model.episode import Episode
from producer.model.garage import Garage
from producer.model.library import Case, Library
from producer.model.prose import Prose, prose
from producer.model.record import Record
from producer.model.request import Request

CODES = {"unknown-reference": Severity.ERROR}


def check_library(library: Library) -> Iterator[Finding]:
    """Episodes and setups that requests name."""
    for request in library.requests.values():
        yield from _request(request, library)


def check_garage(_library: Library, garage: Garage) -> Iterator[Finding]:
    """Pages of parameters, and what the handling block is about."""
    for parameter in garage.parameters.values():
        if parameter.page not in garage.pages:
            yield _unknown(parameter, ("page",), "page of this garage", parameter.page, garage.pages)
    roles = {one.role for one in garage.settings.values()} | {one.role or "" for one in garage.parameters.values()}
    known = dict.fromkeys([*garage.settings, *garage.splits, *garage.parameters, *sorted(roles - {""})])
    for name in garage.handling:
        if name not in known:
            yield _unknown(garage, ("handling", name), "setting or role of this garage", name, known, key=True)


def check_episode(case: Case) -> Iterator[Finding]:
    """Everything that an episode names."""
    yield from _files(case)
    yield from _thanks(case)
    yield from _setups(case.episode)
    if case.garage is not None:
        for record in driven(case.episode):
            for one in given(record):
                yield from _condition(one, case.garage)
    if case.sheets:
        for text in prose(case.episode):
            yield from _prose(text, case)


def _request(request: Request, library: Library) -> Iterator[Finding]:
    if request.episode is None or request.episode in library.broken:
        return
    episode = library.episodes.get(request.episode)
    if episode is None:
        yield _unknown(request, ("episode",), "episode here", request.episode, library.episodes)
    elif request.setup is not None and episode.setup(request.setup) is None:
        yield _unknown(request, ("setup",), f"setup of '{request.episode}'", request.setup, _ids(episode))


def _files(case: Case) -> Iterator[Finding]:
    episode, library = case.episode, case.library
    # A file that is there but could not be built has findings of its own.
    if case.track is None and f"tracks/{episode.track}.yaml" not in library.files:
        yield _unknown(episode, ("track",), "track here", episode.track, library.tracks)
    if case.garage is None and f"garages/{episode.garage}.yaml" not in library.files:
        yield _unknown(episode, ("garage",), "garage here", episode.garage, library.garages)


def _thanks(case: Case) -> Iterator[Finding]:
    library = case.library
    if not library.has_requests:
        return
    for index, name in enumerate(case.episode.thanks):
        if name in library.requests or _in_a_broken_file(name, library):
            continue
        path = ("thanks", index) if case.episode.written("thanks", index) else ("thanks",)
        yield _unknown(case.episode, path, "request in the log", name, library.requests)


def _in_a_broken_file(name: str, library: Library) -> bool:
    return any(file.startswith("requests/") and name in places.text for file, places in library.files.items())


def _setups(episode: Episode) -> Iterator[Finding]:
    ids = _ids(episode)
    kind = "setup of this episode"
    for setup in episode.setups:
        if setup.based_on is not None and setup.based_on not in ids:
            yield _unknown(setup, ("based_on",), kind, setup.based_on, ids)
        for reason in setup.reasons:
            name = reason.compared_with
            if isinstance(name, str) and name not in (*ids, "default"):
                yield _unknown(reason, ("compared_with",), f"number, 'default' or {kind}", name, (*ids, "default"))
    for stint in episode.stints:
        if stint.setup not in ids:
            yield _unknown(stint, ("setup",), kind, stint.setup, ids)


def _condition(one: Given, garage: Garage) -> Iterator[Finding]:
    option = garage.options.get(one.option)
    if option is None:
        yield from _unknown_option(one, garage)
        return
    if one.who and one.who not in option.for_:
        known = option.for_ or ("one choice for everybody",)
        kind = f"one whom {one.option} is set for"
        yield _unknown(one.record, one.path, kind, one.who, known, key=True)
    elif one.choice not in option.choices:
        shown = one.choice if isinstance(one.choice, str) else "this"
        yield _unknown(one.record, one.path, f"choice of {one.option}", shown, option.choices)


def _unknown_option(one: Given, garage: Garage) -> Iterator[Finding]:
    first = next(iter(one.record.conditions[one.option]), "") if one.who else ""
    if one.who == first:  # once for the option, not for each whom it is set for
        path = ("conditions", one.option)
        yield _unknown(one.record, path, "option of the garage", one.option, garage.options, key=True)


def _prose(text: Prose, case: Case) -> Iterator[Finding]:
    if "{" not in text.text:
        return
    from producer.render.prose import Scope, troubles

    own = case.sheet(text.setup.setup) if text.setup else case.sheets[0]
    for trouble in troubles(text.text, Scope.of(own, case.sheets)) if own else ():
        if trouble.unknown:
            place = text.place(trouble.start, trouble.end)
            hint = "a setting or a split of this setup can stand here, or another setup's: {{ long.spring.rf }}"
            yield Finding("unknown-reference", Severity.ERROR, place, trouble.message, hint, text.where)


def _ids(episode: Episode) -> tuple[str, ...]:
    return tuple(one.setup for one in episode.setups)


def _unknown(
    record: Record, path: tuple[str | int, ...], kind: str, name: str, known: Iterable[str], *, key: bool = False
) -> Finding:
    listed = list(known)
    near = get_close_matches(name[:80], listed, 1, 0.6)
    shown = ", ".join(listed[:8]) + (" ..." if len(listed) > 8 else "")
    hint = f"did you mean '{near[0]}'?" if near else f"there is: {shown}" if listed else "there is none yet"
    place = record.key_place(*path) if key else record.place(*path)
    return Finding("unknown-reference", Severity.ERROR, place, f"'{name[:80]}' is no {kind}", hint, record.where(*path))
