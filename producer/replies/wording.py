"""The program's words that replies are put together from; British forms, spelled the channel's way by whoever fills.

The sentences around them stand in `templates/reply-*.txt.j2`, where the author may change them.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from string import capwords

from producer.basics.figures import NO_BREAK
from producer.handling.wording import PLACES
from producer.model.request import Request
from producer.model.sheet import Sheet
from producer.model.words import Complaint

_MUCH = {"little": "a little ", "plain": "", "very": "very "}
_MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def feel(complaint: Complaint) -> str:
    """`very tight in the middle`, `loose`."""
    where = f" {PLACES[complaint.where]}" if complaint.where else ""
    return f"{_MUCH[complaint.how_much]}{complaint.feel}{where}"


def understood(request: Request) -> str:
    """What was read out of a message, in one line: `loose on exit, on worn tyres, with a pad`; "" without a feel."""
    if not request.feels:
        return ""
    tyres = f", on {request.tyres} tyres" if request.tyres else ""
    device = f", with a {request.device}" if request.device else ""
    return listed([feel(one) for one in request.feels]) + tyres + device


def listed(parts: Sequence[str], last: str = "and") -> str:
    """`a`, `a and b`, `a, b and c`."""
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} {last} {parts[-1]}" if parts else ""


def day(when: date, spelling: str) -> str:
    """`November 6, 2026` or `6 November 2026`."""
    month = _MONTHS[when.month - 1]
    return f"{month} {when.day}, {when.year}" if spelling == "us" else f"{when.day} {month} {when.year}"


def small(name: str) -> str:
    """A name in the middle of a sentence: `Short run` -> `short run`; one in capitals keeps them."""
    return f"{name[0].lower()}{name[1:]}" if name[:1].isupper() and name[1:2].islower() else name


def setup_name(sheet: Sheet) -> str:
    """`short run setup`."""
    name = small(flat(sheet.name))
    return name if "setup" in name.lower() else f"{name} setup"


def place(track: str, garage: str) -> str:
    """`Gannet Bowl in the Grand Sedan`, or the track alone."""
    return f"{track} in the {garage}" if garage else track


def readable(name: str) -> str:
    """A name that the library has not, for people: `oak-hollow` and `oak hollow` -> `Oak Hollow`."""
    return capwords(name.replace("-", " ").replace("_", " ")) if name.islower() else name


def flat(text: str) -> str:
    """The author's text on one line with plain spaces, as it can be pasted anywhere."""
    return " ".join(text.replace(NO_BREAK, " ").split())


def counted(number: int, what: str) -> str:
    """`1 viewer`, `2 viewers`."""
    return f"{number} {what}{'' if number == 1 else 's'}"
