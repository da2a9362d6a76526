"""Sentences that say a tyre is saved, and those that say something else."""

from __future__ import annotations

import pytest

from producer.stints.saved import saved


@pytest.mark.parametrize(
    ("text", "span", "corners"),
    [
        ("It saves the right rear.", "saves the right rear", ("rr",)),
        ("A stiffer RF spares the left-rear tire over a run.", "spares the left-rear tire", ("lr",)),
        ("That is easier on the rear tires.", "is easier on the rear tires", ("lr", "rr")),
        ("Gentler on the fronts, too.", "Gentler on the front", ("lf", "rf")),
        ("It looks after the RR.", "looks after the RR", ("rr",)),
        ("kinder to your right front tyre", "kinder to your right front tyre", ("rf",)),
        ("The bar is fine. This protects the left front.", "protects the left front", ("lf",)),
    ],
)
def test_said(text: str, span: str, corners: tuple[str, ...]) -> None:
    (found,) = saved(text)
    assert (text[found.start : found.end], found.corners) == (span, corners)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "It does not save the right rear.",
        "It won't save the right rear.",
        "If you save the right rear early, you have it late.",
        "Does it save the right rear?",
        "It might be easier on the rear tires.",
        "It is easier on the nerves.",
        "Save the setup first.",
        "It saves a tenth at the right rear of the field.",
        "The right rear is what gives up first.",
        "That uses up the right rear.",
        "Easier in the middle, tighter off.",
        "It is kinder than the short run to the right rear.",
        "Protect the inside line.",
    ],
)
def test_not_said(text: str) -> None:
    assert list(saved(text)) == []
