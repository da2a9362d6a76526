"""Commands that make an episode: check, build, and one output at a time."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from producer.cli import options
from producer.cli.app import MAKE, Plain

if TYPE_CHECKING:
    from producer.jobs.report import Made
    from producer.model.dossier import Dossier


def add_to(app: typer.Typer) -> None:
    """Put these commands on the program."""
    for command in (check, build, outline, script, guide, advise, card, captions, notes):
        app.command(rich_help_panel=MAKE, cls=Plain)(command)


def check(
    episodes: options.Episodes = None,
    strict: Annotated[bool, typer.Option("--strict", help="Warnings fail the check too.")] = False,
    every: Annotated[bool, typer.Option("--all", help="Show every note, not only the first three.")] = False,
    explain: Annotated[
        str | None, typer.Option("--explain", metavar="CODE", help="What a finding means, and why.")
    ] = None,
    fix: Annotated[bool, typer.Option("--fix", help="Mend what needs no judgement, and show what changed.")] = False,
    dry_run: options.DryRun = False,
    form: Annotated[str, typer.Option("--format", help="text or json.", metavar="FORM")] = "text",
    as_json: options.Json = False,
    library: options.Library = None,
    out: options.Out = None,
) -> int:
    """Read the library and say what is wrong: place, reason, what to do."""
    from producer.cli import show
    from producer.cli.progress import steps

    if dry_run and not fix:
        raise typer.BadParameter("goes with --fix: a check alone writes nothing", param_hint="--dry-run")
    if explain is not None:
        return _explain(explain)
    if form not in ("text", "json"):
        raise typer.BadParameter(f"'{form}' is not one of text, json", param_hint="--format")
    asked = tuple(episodes or ())
    root = options.root(library)
    mended = None
    if fix:
        from producer.jobs.mend import mend

        with steps() as step:
            mended = mend(root, asked, options.out(out, root), step, dry_run=dry_run)
        checked = mended.checked
    else:
        from producer.jobs.check import check as job

        with steps() as step:
            checked = job(root, asked, options.out(out, root), step)
    findings = checked.about(asked)
    if as_json or form == "json":
        print(show.findings_json(findings, mended))
    else:
        if mended is not None:
            print(show.mended_text(mended, dry_run=dry_run), end="\n\n")
        text = show.findings_text(findings, checked.library.files, every_note=every, colour=show.colour_wanted())
        print(text or show.clean_text(len(asked) or len(checked.library.episodes)))
    return show.exit_code(findings, strict=strict)


def build(
    episodes: options.Episodes = None,
    anew: Annotated[bool, typer.Option("--anew", help="Build unchanged episodes too.")] = False,
    library: options.Library = None,
    out: options.Out = None,
) -> int:
    """Make everything an episode needs; unchanged episodes are skipped."""
    from producer.cli import show
    from producer.cli.progress import steps
    from producer.jobs.build import build as job

    root = options.root(library)
    folder = options.out(out, root)
    with steps() as step:
        report = job(root, folder, tuple(episodes or ()), step, anew=anew)
    text = show.errors_text(report.findings, report.files, colour=show.colour_wanted())
    if text:
        print(text, end="\n\n")
    print(show.build_text(report, folder))
    return 1 if report.held_back else 0


def outline(episode: options.Episode, library: options.Library = None, out: options.Out = None) -> int:
    """Print the episode's outline: sections, minutes, shots to record."""
    return _one(episode, library, out, "outline", "outline.md")


def script(
    episode: options.Episode,
    text: Annotated[bool, typer.Option("--print", help="Print the script instead of naming its files.")] = False,
    library: options.Library = None,
    out: options.Out = None,
) -> int:
    """Write the narration script and its reading page."""
    return _one(episode, library, out, "script", "script.md" if text else None)


def guide(
    episode: options.Episode,
    setup: options.GuideSetup = None,
    explain: Annotated[
        str | None,
        typer.Option(
            "--explain", metavar="SETTING", help="What one setting does here: spring.rf, 'rear split', wedge."
        ),
    ] = None,
    as_json: options.Json = False,
    library: options.Library = None,
    out: options.Out = None,
) -> int:
    """Print the guide: what to change when the car is tight or loose."""
    from producer.jobs.guide import guide_json, guide_text

    if explain is not None:
        return _explain_setting(episode, setup, explain, as_json, library, out)
    whole = _made(episode, library, out, ("guide",), setup).dossier
    if whole is None:
        return 1
    print(guide_json(whole, setup) if as_json else guide_text(whole, setup))
    return 0


def advise(
    episode: options.Episode,
    feels: options.Feels,
    setup: options.AdviceSetup = None,
    tyres: options.Tyres = None,
    device: options.Device = None,
    as_json: options.Json = False,
    library: options.Library = None,
    out: options.Out = None,
) -> int:
    """Say what to change for what the car does wrong."""
    from producer.cli import show
    from producer.jobs.advise import advice_json, advice_text, advised, read_feels

    complaints = read_feels(feels)
    root = options.root(library)
    found = advised(root, options.out(out, root), episode, setup, complaints, tyres=tyres, device=device)
    if found.told is None:
        print(show.errors_text(found.findings, found.files, colour=False), file=sys.stderr)
        return 1
    print(advice_json(found.told) if as_json else advice_text(found.told))
    return 0


def card(
    episode: options.Episode,
    setup: options.Setup = None,
    library: options.Library = None,
    out: options.Out = None,
) -> int:
    """Write the setup card: picture, PDF, page, text, data."""
    return _one(episode, library, out, "card", None, setup)


def captions(
    episode: options.Episode,
    overlays: Annotated[
        bool, typer.Option("--overlays", help="Draw each caption too, as a transparent picture to lay over the video.")
    ] = False,
    library: options.Library = None,
    out: options.Out = None,
) -> int:
    """Write captions and cue sheets: what to show when, and what is said."""
    made = _made(episode, library, out, ("captions", "cues", "speech"), None)
    if made.dossier is None:
        return 1
    for path in made.written:
        print(path)
    if made.timed:
        print(made.timed)
    if overlays:
        _draw_overlays(made.dossier, library, out)
    return 0


def notes(episode: options.Episode, library: options.Library = None, out: options.Out = None) -> int:
    """Print the show notes: description, tags, pinned comment."""
    return _one(episode, library, out, "notes", "notes.md")


def _one(
    episode: str, library: Path | None, out: Path | None, module: str, printed: str | None, setup: str | None = None
) -> int:
    """Make one output's files; print the readable one, or the names of all."""
    made = _made(episode, library, out, (module,), setup)
    if made.dossier is None:
        return 1
    if printed is None:
        for path in made.written:
            print(path)
    else:
        path = next(one for one in made.written if one.name == printed)
        sys.stdout.write(path.read_text(encoding="utf-8"))
    return 0


def _draw_overlays(dossier: Dossier, library: Path | None, out: Path | None) -> None:
    from producer.cli import show
    from producer.cli.progress import steps
    from producer.jobs.overlays import overlays as job

    root = options.root(library)
    with steps() as step:
        drawn = job(root, options.out(out, root), dossier, step)
    print(show.overlays_text(drawn))


def _made(episode: str, library: Path | None, out: Path | None, modules: tuple[str, ...], setup: str | None) -> Made:
    """Make some outputs; the errors that hold an episode back go to the other stream."""
    from producer.cli import show
    from producer.jobs.build import made as job

    root = options.root(library)
    made = job(root, options.out(out, root), episode, modules, setup)
    if made.dossier is None:
        print(show.errors_text(made.findings, made.files, colour=False), file=sys.stderr)
    return made


def _explain_setting(
    episode: str, setup: str | None, setting: str, as_json: bool, library: Path | None, out: Path | None
) -> int:
    from producer.cli import show
    from producer.jobs.explain import explained, explanation_json, explanation_text

    root = options.root(library)
    found = explained(root, options.out(out, root), episode, setup, setting)
    if found.told is None:
        print(show.errors_text(found.findings, found.files, colour=False), file=sys.stderr)
        return 1
    print(explanation_json(found.told) if as_json else explanation_text(found.told))
    return 0


def _explain(code: str) -> int:
    from producer.checks.registry import manual

    print(manual(code))
    return 0
