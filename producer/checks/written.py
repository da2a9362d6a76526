"""The figures an author writes down, each with its place: what the checks of values and changes go through."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

from producer.basics.finding import Finding, Severity
from producer.basics.place import Place
from producer.basics.units import quantity
from producer.model.episode import Reason, Setup
from producer.model.garage import Garage, Setting
from producer.model.library import Case
from producer.model.record import Record


@dataclass(frozen=True, slots=True)
class Written:
    """One figure of `values`, `changes` or `compared_with`: `record` and `path` say where it stands."""

    record: Record
    path: tuple[str | int, ...]
    setting: Setting
    value: Decimal

    @property
    def text(self) -> str:
        """The figure as it stands in the file: `750`, `750 lb/in`."""
        source = self.record.source
        return source.places.texts.get((*source.path, *self.path), "") if source else ""

    @property
    def unit(self) -> str:
        """The unit it is written with, "" for a bare figure."""
        text = self.text
        return quantity(text).unit if text and not text[-1].isdigit() else ""

    @property
    def foreign(self) -> bool:
        """Whether it is written in another unit than the garage's: then its number says nothing about the limits."""
        return self.unit not in ("", self.setting.unit)

    @property
    def place(self) -> Place:
        """The place of the figure."""
        return self.record.place(*self.path)

    @property
    def where(self) -> str:
        """Its path in the author's words."""
        return self.record.where(*self.path)

    def finding(self, code: str, severity: Severity, message: str, hint: str = "") -> Finding:
        """A finding about this figure."""
        return Finding(code, severity, self.place, message, hint, self.where)


def written(case: Case) -> Iterator[Written]:
    """Every figure of the episode that is typed into a setting the garage has, in the order written."""
    garage = case.garage
    if garage is None:
        return
    for setup in case.episode.setups:
        yield from in_setup(setup, garage, ("values", "changes"))
        yield from _compared(setup, garage)


def in_setup(setup: Setup, garage: Garage, keys: tuple[str, ...]) -> Iterator[Written]:
    """The figures under `values` or `changes` of one setup."""
    for key in keys:
        for name, value in getattr(setup, key).items():
            parts = value.items() if isinstance(value, Mapping) else ((None, value),)
            for part, figure in parts:
                setting = garage.settings.get(f"{name}.{part}" if part else name)
                if setting is not None:
                    yield Written(setup, (key, name, part) if part else (key, name), setting, figure)


def _compared(setup: Setup, garage: Garage) -> Iterator[Written]:
    """Figures that a reason compares with, where it is about one setting: they were typed in once, too."""
    for reason in setup.reasons:
        if isinstance(reason.compared_with, Decimal) and len(reason.for_) == 1:
            setting = garage.settings.get(reason.for_[0])
            if setting is not None:
                yield Written(reason, ("compared_with",), setting, reason.compared_with)


def listed(words: list[str] | tuple[str, ...]) -> str:
    """`lf`, `lf and rf`, `lf, rf and lr`."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}" if words else ""


def stated(case: Case) -> Iterator[Written]:
    """Figures that reasons state (`is`); those of a split in its corners' unit."""
    for reason, setting in _single(case):
        if reason.is_ is not None:
            yield Written(reason, ("is",), setting, reason.is_)


def advised(case: Case) -> Iterator[Written]:
    """The stops of the advice, in order; those of a split in its corners' unit."""
    for reason, setting in _single(case):
        for advice in reason.if_:
            for index, stop in enumerate(advice.to):
                path = ("to", index) if advice.written("to", index) else ("to",)
                yield Written(advice, path, setting, stop)


def _single(case: Case) -> Iterator[tuple[Reason, Setting]]:
    garage = case.garage
    if garage is None:
        return
    for setup in case.episode.setups:
        for reason in setup.reasons:
            target = reason.for_[0] if len(reason.for_) == 1 else ""
            setting = garage.settings.get(garage.splits.get(target, (target,))[0])
            if setting is not None:
                yield reason, setting


def default_path(setting: Setting) -> tuple[str, ...]:
    """The path of a setting's default below its parameter."""
    if not setting.part:
        return ("default",)
    return ("corners" if setting.part in setting.parameter.corners else "ends", setting.part, "default")
