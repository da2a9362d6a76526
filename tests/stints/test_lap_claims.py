"""Sentences that name the lap from which a setup is ahead, and those that name a lap for something else."""

from __future__ import annotations

import pytest

from producer.stints.lap_claims import lap_claims


@pytest.mark.parametrize(
    ("text", "of", "lap", "span"),
    [
        ("The totals crossed a little past lap twenty.", "total", 20, "crossed a little past lap twenty"),
        ("It is ahead from lap 25.", "total", 25, "ahead from lap 25"),
        ("In total it is ahead by about lap twenty-five.", "total", 25, "ahead by about lap twenty-five"),
        ("It earns its keep from about lap thirty five, so", "either", 35, "earns its keep from about lap thirty five"),
        ("The totals are level by lap seventeen or so.", "total", 17, "are level by lap seventeen"),
        ("It is the quicker of the two from lap six on.", "either", 6, "quicker of the two from lap six"),
        ("Equal pace comes at lap 12.", "pace", 12, "Equal pace comes at lap 12"),
        ("The two cross at lap 40.", "either", 40, "cross at lap 40"),
    ],
)  # fmt: skip
def test_named(text: str, of: str, lap: int, span: str) -> None:
    (found,) = lap_claims(text)
    assert (found.of, found.lap, text[found.start : found.end]) == (of, lap, span)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "It is not ahead by lap twenty.",
        "It is still ahead by lap ten.",
        "If it is ahead by lap twenty, keep it.",
        "Is it ahead from lap 20?",
        "It is behind until lap twenty and ahead from there.",
        "On lap 52 the tires are gone.",
        "It is faster at lap five.",
        "Ahead of the field. From lap 20 on it is quiet.",
        "They crossed the line together.",
        "It is faster than last year by a lap.",
        "The totals after lap ten differ by a second.",
        "Run five laps, then look.",
    ],
)
def test_not_named(text: str) -> None:
    assert list(lap_claims(text)) == []
