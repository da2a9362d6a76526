"""Everything that is known and computed about one episode: what outputs are made from.

Outputs choose and arrange; they never compute a figure again. One number, one source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date

from producer.model.channel import Channel
from producer.model.episode import Episode
from producer.model.garage import Garage
from producer.model.gearing import Gearing
from producer.model.guide import Guide
from producer.model.opinion import Opinions
from producer.model.script import Narration, Pace, Timeline
from producer.model.sheet import Sheet
from producer.model.stints import Evidence
from producer.model.take import Take
from producer.model.track import Track


@dataclass(frozen=True, slots=True)
class Stamp:
    """Which revision this is: `number` 0 is a draft (no date). `digest` is SHA-256 (hexadecimal) of the card's data."""

    number: int
    day: date | None
    digest: str

    @property
    def label(self) -> str:
        """`draft` or `revision 2, 2026-11-20`."""
        return "draft" if self.number == 0 or self.day is None else f"revision {self.number}, {self.day.isoformat()}"


@dataclass(frozen=True, slots=True)
class ConditionLine:
    """One option of the garage as it was driven: `Tyre use`, `me hard, field hard`."""

    name: str
    value: str


@dataclass(frozen=True, slots=True)
class Dossier:
    """One episode, whole. Prose in `episode` and `sheets` is rendered: references are figures already.

    `guides`, `gearing`, `opinions` by setup id (gearing only where the garage allows it); `stamps` by setup id;
    `conditions` in the garage's order; `credits` the handles of those who consented, in the order of `thanks`;
    `links` of the channel are in `channel`; `evidence` None where there are no test laps,
    `take` None where there are no captions of one; `pace` is the rate that `timeline` is estimated with.
    """

    channel: Channel
    track: Track
    garage: Garage
    episode: Episode
    sheets: tuple[Sheet, ...]
    guides: Mapping[str, Guide]
    gearing: Mapping[str, Gearing]
    conditions: tuple[ConditionLine, ...]
    credits: tuple[str, ...]
    stamps: Mapping[str, Stamp]
    narration: Narration
    timeline: Timeline
    opinions: Mapping[str, Opinions] = field(default_factory=dict)
    evidence: Evidence | None = None
    take: Take | None = None
    pace: Pace | None = None

    @property
    def told(self) -> Dossier:
        """The same with the sections as they were told and their real times, where there is a take: what captions,
        chapters and cue sheets are made from. What is still to be read keeps the script and its estimate.
        """
        if self.take is None or self.take.narration is None or self.take.timeline is None:
            return self
        timeline, video = self.take.timeline, self.episode.video
        if timeline.source == "cut" and video is not None and video.length_ms > timeline.total_ms:
            # Captions end with the last word, the video may go on.
            timeline = replace(timeline, total_ms=video.length_ms)
        return replace(self, narration=self.take.narration, timeline=timeline, take=None)

    @property
    def first(self) -> Sheet:
        """The setup that is told whole."""
        return self.sheets[0]

    @property
    def others(self) -> tuple[Sheet, ...]:
        """The setups that are told where they differ from the first."""
        return self.sheets[1:]
