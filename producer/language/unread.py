"""What a sentence says of the car and the reader did not understand: a claim beside it may lack its effect."""

from __future__ import annotations

from collections.abc import Sequence

from producer.language.items import Item
from producer.language.stretches import stretches
from producer.language.tokens import listed
from producer.model.claim import Claim

# What stands after these is no effect of a setting.
_REASONS = listed("because since unless while")
_SAYS = frozenset({"feel", "phase"})


def _of_a_corner(stretch: list[Item], at: int) -> bool:
    """As in "frees up the right rear to do its job"."""
    return stretch[at].kind == "feel" and any(one.kind in {"set", "foreign"} for one in stretch[at + 1 : at + 3])


def _of_a_load(stretch: list[Item]) -> bool:
    """As in "so the right rear tyre carries more of the load off the corner": a tyre's work, not the car's."""
    kinds = [one.kind for one in stretch]
    return "feel" not in kinds and "foreign" in kinds[: kinds.index("phase") if "phase" in kinds else None]


def unread(row: list[Item], found: Sequence[Claim]) -> tuple[bool, ...]:
    """For each claim of a sentence whether an effect or a condition may be missing from it.

    `row`: the sentence's items, conditions put together. A part of the corner or a word for the balance that no claim
    has taken, after the claim or in an "if" before it, says that there was more to understand.
    """
    after, before = [], []
    for stretch, joint in stretches(row):
        if joint in _REASONS or _of_a_load(stretch):
            continue
        if stretch[0].kind == "condition":
            before += [one.start for one in stretch if getattr(one.data, "feels", "") is None]
            continue
        asks = next((at for at, one in enumerate(stretch) if one.kind == "if"), len(stretch))
        for at, one in enumerate(stretch):
            if (
                one.kind in _SAYS
                and not _of_a_corner(stretch, at)
                and not any(claim.start <= one.start < claim.end for claim in found)
            ):
                after.append(one.start)
                if at > asks:
                    before.append(one.start)
    return tuple(
        not (claim.feel or claim.if_feels)
        and (any(start >= claim.end for start in after) or any(start < claim.start for start in before))
        for claim in found
    )
