"""The demo library in memory, and replies from it to messages made up on the spot."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

import pytest

from producer.handling.guide import guide
from producer.jobs.kit import kit_for
from producer.jobs.opinions import SecondOpinion
from producer.jobs.prose import filled
from producer.jobs.reading import Reader
from producer.library.load import load
from producer.model.channel import Replies
from producer.model.guide import Guide
from producer.model.library import Case, Library
from producer.model.opinion import Opinions
from producer.model.request import Request
from producer.render.kit import Kit
from producer.replies.choose import Choice, choose
from producer.replies.reply import Reply, reply


class Desk:
    """`desk(request)`: the reply, and where its figures come from."""

    def __init__(self, log: Library, kit: Kit) -> None:
        self.log, self.kit, self.reader = log, kit, Reader(log)
        self.told = lru_cache(maxsize=None)(self._told)

    def __call__(
        self, request: Request, setup: str | None = None, *, characters: int = 1500, spelling: str = "us"
    ) -> tuple[Reply, Choice]:
        assert self.log.channel is not None
        limit = Replies.model_validate({"characters": str(characters)})
        channel = self.log.channel.model_copy(update={"replies": limit, "spelling": spelling})
        whole = self.reader.understood(request)
        choice = choose(self.log, whole.request, setup)
        case = rows = opinions = None
        if choice.episode is not None and choice.setup is not None:
            case, rows, opinions = self.told(choice.episode.episode, choice.setup)
        return reply(self.log, channel, whole, choice, case, rows, self.kit, opinions), choice

    def _told(self, episode: str, setup: str) -> tuple[Case, Guide, Opinions]:
        case = self.log.case(filled(self.log.case(self.log.episodes[episode])))
        sheet = case.sheet(setup)
        assert sheet is not None
        opinions = SecondOpinion().of(case)[setup]
        return case, guide(case, sheet, opinions), opinions


@pytest.fixture(scope="session")
def log(demo: Path) -> Library:
    library, findings = load(demo)
    assert findings == []
    return library


@pytest.fixture(scope="session")
def answer(log: Library, demo: Path) -> Desk:
    return Desk(log, kit_for(demo))
