"""SubRip written. No standard exists; this is what its readers agree on.

The text is meant as UTF-8 without a byte order mark; its line ends are LF and a blank line ends each cue.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from producer.captions.payload import check_rising, time_stamp, written
from producer.model.cue import Cue

# Players take anything between < and > for a tag and anything in braces for a style, and hide it; `\N`, `\n` and
# `\h` are line end and hard space to some. SubRip has no way to escape them.
_TAG = re.compile(r"<.*>", re.DOTALL)
_ARROW = re.compile(r"--+>")
_CODE = re.compile(r"\\(?=[Nnh])")
_ANGLES = str.maketrans("<>", "‹›")
_BRACES = str.maketrans("{}", "()")


def to_srt(cues: Iterable[Cue]) -> str:
    """Captions as SubRip: numbered from 1, starts rise, a cue without any text is left out.

    The author's text is always made legal: `-->` becomes `→`, what players take for tags and styles is written
    with ‹ › and ( ), blank lines and controls are dropped. Raises CaptionError for times that can't be written.
    """
    legal = tuple(written(cues))
    check_rising([cue.start_ms for cue in legal], "cue")
    return "".join(_block(number, cue) for number, cue in enumerate(legal, 1))


def plain_text(text: str) -> str:
    """A payload in which nothing is taken for markup or for a time line."""
    arrows = _CODE.sub(r"\\ ", _ARROW.sub("→", text).translate(_BRACES))
    return arrows.translate(_ANGLES) if _TAG.search(arrows) else arrows


def _block(number: int, cue: Cue) -> str:
    times = f"{time_stamp(cue.start_ms, ',')} --> {time_stamp(cue.end_ms, ',')}"
    return f"{number}\n{times}\n{plain_text(cue.text)}\n\n"
