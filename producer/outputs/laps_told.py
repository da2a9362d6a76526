"""What the test laps say, in writing: for the notes, the outline and the card, in the sentences of the evidence."""

from __future__ import annotations

from dataclasses import dataclass

from producer.basics.spelling import spell
from producer.model.dossier import Dossier
from producer.model.stints import Comparison, Stint
from producer.model.told_laps import alone, behind, compared
from producer.script.speaker import counted, small


@dataclass(frozen=True, slots=True)
class LapsTold:
    """`driven` says how many laps are behind it, `sentences` are whole ones.

    `may` and `may_not`: everything that may be claimed of them, and what not.
    """

    driven: str
    sentences: tuple[str, ...]
    may: tuple[str, ...]
    may_not: tuple[str, ...]


def laps_told(dossier: Dossier, setup: str = "") -> LapsTold | None:
    """What is told of the laps of an episode, or of those of one setup; None where they carry nothing.

    Setups that were driven differently are said to be so.
    """
    evidence, setups = dossier.evidence, {one.id for one in dossier.sheets}
    if evidence is None:
        return None
    pairs = [one for one in compared(evidence, setups) if setup in ("", one.first, one.second)]
    single = [one for one in alone(evidence, setups) if setup in ("", one.setup)]
    if not pairs and not single:
        return None
    refusals = (text for one in pairs for text in one.why_not if not one.comparable)
    told = [text for one in pairs for text in (one.paragraph, *one.notes)] + [one.may[0] for one in single]
    every: list[Comparison | Stint] = [*pairs, *single]
    may = [text for one in every for text in one.may]
    may_not = dict.fromkeys([*refusals, *(text for one in every for text in one.may_not)])
    names = {name for one in pairs for name in (one.first, one.second)} | {one.setup for one in single}
    spelled = (tuple(spell(x, dossier.channel.spelling) for x in some) for some in (told, may, may_not))
    return LapsTold(_driven(dossier, names), *spelled)


def _driven(dossier: Dossier, setups: set[str]) -> str:
    """`short run 66 in two stints, long run 42`."""
    evidence = dossier.evidence
    found = behind(evidence, setups) if evidence else {}
    parts = []
    for sheet in dossier.sheets:
        stints = found.get(sheet.id, ())
        if stints:
            several = f" in {counted(len(stints))} stints" if len(stints) > 1 else ""
            parts.append(f"{small(sheet.name)} {sum(len(one.laps) for one in stints)}{several}")
    return ", ".join(parts)
