"""The table of prose fields: every text is found once with what it belongs to, and changing all of them misses none."""

from __future__ import annotations

from pathlib import Path

from producer.library.load import load
from producer.model.episode import Episode, Setup
from producer.model.prose import FIELDS, prose, with_prose

# Texts that are read out or printed as prose; every other text of an episode is a name, an id or a choice.
LONG = {"title", "approach", "because", "say", "opening", "closing"}


def episode(demo: Path) -> Episode:
    return load(demo)[0].episodes["marrow-creek-grand-sedan"]


def test_every_long_text_is_in_the_table() -> None:
    assert {name for names in FIELDS.values() for name in names} == LONG
    assert all(name in record.model_fields for record, names in FIELDS.items() for name in names)


def test_each_text_stands_where_it_says(demo: Path) -> None:
    found = list(prose(episode(demo)))
    assert len(found) == len({(id(one.record), one.path) for one in found}) > 50
    for one in found:
        assert one.text == getattr(one.record, one.path[0]) != ""
        assert one.where.endswith(one.path[0])
        assert (one.reason is None) == (one.setup is None)
        if one.reason is not None and one.setup is not None:
            assert one.reason in one.setup.reasons
        if one.advice is not None:
            assert one.reason is not None
            assert one.advice in one.reason.if_


def test_all_are_changed_and_nothing_else(demo: Path) -> None:
    before = episode(demo)
    seen: list[tuple[str, str | None]] = []

    def change(text: str, setup: Setup | None) -> str:
        seen.append((text, setup.setup if setup else None))
        return text.upper()

    after = with_prose(before, change)
    assert [one.text for one in prose(after)] == [one.text.upper() for one in prose(before)]
    assert set(seen) >= {(one.text, one.setup.setup if one.setup else None) for one in prose(before)}
    assert with_prose(before, lambda text, _: text) == before
    assert [one.place(0, 1) for one in prose(after)] == [one.place(0, 1) for one in prose(before)]
