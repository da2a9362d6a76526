"""The comment pinned under the video: what this is, where the cards are, what to try first."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from producer.basics.spelling import spell
from producer.handling.wording import PLACES, the
from producer.model.dossier import Dossier
from producer.model.guide import Change, GuideRow
from producer.model.sheet import Sheet
from producer.model.words import Feel, Phase
from producer.outputs.description import links, setup_names, tested, without_angles
from producer.outputs.outline import stamp_line
from producer.render.kit import Kit
from producer.script.flatten import flat
from producer.script.speaker import capital, setup_name, small

# What viewers complain of first (common practice, no source): a nose that will not finish the corner, a tail that
# steps out under throttle.
_LIKELIEST: tuple[tuple[Feel, tuple[Phase, ...]], ...] = (
    ("tight", ("middle", "exit", "entry")),
    ("loose", ("exit", "entry", "middle")),
)


@dataclass(frozen=True, slots=True)
class PinnedComment:
    """What `pinned-comment.txt.j2` shows. `untested` names the setups nobody has driven ("" if none), `tries` are
    whole lines from the guide of `setup`."""

    setups: str
    place: str
    untested: str
    links: tuple[str, ...]
    revision: str
    tested: str
    setup: str
    tries: tuple[str, ...]
    caution: str


def pinned_comment(dossier: Dossier, kit: Kit) -> str:
    """The text of pinned-comment.txt, without angle brackets."""
    return without_angles(kit.text("pinned-comment.txt.j2", view(dossier)))


def view(dossier: Dossier) -> PinnedComment:
    """The comment before it is set."""
    untested = [small(one.name) for one in dossier.sheets if not one.setup.tested]
    return PinnedComment(
        setups=setup_names(dossier),
        place=f"{dossier.track.name}, {dossier.garage.name}",
        untested=", ".join(untested),
        links=links(dossier),
        revision=stamp_line(dossier),
        tested=tested(dossier)[0],
        setup=setup_name(dossier.first),
        tries=tuple(_tries(dossier)),
        caution=dossier.channel.caution,
    )


def _tries(dossier: Dossier) -> Iterator[str]:
    """One line for a tight car and one for a loose one, where the guide has them."""
    sheet = dossier.first
    guide = dossier.guides[sheet.id]
    for feel, phases in _LIKELIEST:
        rows = [row for row in guide.rows if row.feels == feel and row.changes]
        if rows:
            row = min(rows, key=lambda one: (_rank(one), phases.index(one.where)))
            yield _line(dossier, sheet, row)


def _rank(row: GuideRow) -> int:
    """What the author says for everybody comes first, then what the author says, then the rules."""
    change = row.changes[0]
    if change.voice != "author":
        return 2
    return 1 if change.tyres or change.device else 0


def _line(dossier: Dossier, sheet: Sheet, row: GuideRow) -> str:
    change = row.changes[0]
    feel = f"{capital(row.feels)} {PLACES[row.where]}{when(change)}"
    said = flat(change.say)
    return spell(f"{feel}: {moved(sheet, change)}.", dossier.channel.spelling) + (f" {said}" if said else "")


def moved(sheet: Sheet, change: Change) -> str:
    """`raise the right front spring from 700 to 725 lb/in (1 click)`."""
    garage, address = sheet.garage, change.parameter
    way = "raise" if change.clicks > 0 else "lower"
    clicks = f"{abs(change.clicks)} {'click' if abs(change.clicks) == 1 else 'clicks'}"
    figures = f"from {garage.figure(address, change.start)} to {garage.shown(address, change.to)}"
    return f"{way} {the(garage, address)} {figures} ({clicks})"


def when(change: Change) -> str:
    """`, worn tyres, with a pad`; "" where the advice is for everybody."""
    tyres = f", {change.tyres} tyres" if change.tyres else ""
    return tyres + (f", with a {change.device}" if change.device else "")
