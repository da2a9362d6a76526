"""Values with places into one record; pydantic's errors into findings at their place."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import replace
from difflib import get_close_matches
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from producer.basics.finding import Finding, Severity
from producer.basics.located import Path, Places
from producer.library.nodes import Unreadable, read_nodes
from producer.model.record import Record

R = TypeVar("R", bound=Record)


def build(kind: type[R], file: str, text: str) -> tuple[R | None, Places, list[Finding]]:
    """One file's record, or None with the findings that say why. Findings may come with a record too."""
    try:
        value, places, findings = read_nodes(file, text)
    except Unreadable as trouble:
        return None, Places(file, text), [trouble.finding]
    if value is None:
        hint = f"begin with {_start(kind)}"
        return None, places, [_at(places, (), "empty-file", "there is nothing in this file", hint, key=True)]
    if not isinstance(value, dict):
        message = f"a mapping (key: value) is wanted here, not {_kind_of(value)}"
        return None, places, [_at(places, (), "wrong-kind", message, f"begin with {_start(kind)}")]
    try:
        return kind.model_validate(value), places, findings
    except ValidationError as error:
        return None, places, findings + [_finding(one, kind, value, places) for one in _first_hand(error)]


def _first_hand(error: ValidationError) -> list[Any]:
    """pydantic's errors without "too short" for a list whose items are there but have errors of their own."""
    every = error.errors(include_url=False)
    around = {one["loc"][:end] for one in every for end in range(len(one["loc"]))}
    return [one for one in every if one["type"] != "too_short" or one["loc"] not in around]


def _start(kind: type[Record]) -> str:
    first = [name for name, one in kind.model_fields.items() if one.is_required()][:2]
    return " and ".join(f"'{name}: {'1' if name == 'format' else '...'}'" for name in first)


def _finding(error: Any, kind: type[Record], value: Any, places: Places) -> Finding:
    path = _real(error["loc"], value)
    problem = error["type"]
    if problem == "extra_forbidden":
        return _unknown_key(path, _keys_at(kind, error["loc"][:-1]), places)
    if error["loc"][-1:] == ("[key]",):
        return _wrong_key(path, error, places)
    if problem == "missing":
        name = str(error["loc"][-1])
        hint = f"add '{name}: {'1' if name == 'format' else '...'}'"
        found = _at(places, path, "missing-key", f"'{name}' is missing here", hint, key=True)
        return replace(found, where=places.where((*path, name)))
    message = str(error.get("ctx", {}).get("error", "")) or _plain(error)
    code = "wrong-kind" if "wanted here, not" in message else "wrong-value"
    return _at(places, path, code, message, _hint(error, message))


def _plain(error: Any) -> str:
    given, ctx = error.get("input"), error.get("ctx", {})
    shown = f"'{given[:40]}'" if isinstance(given, str) else "nothing" if given is None else _kind_of(given)
    texts = {
        "literal_error": f"{shown} is not one of {', '.join(_choices(error))}",
        "model_type": f"a mapping (key: value) is wanted here, not {shown}",
        "model_attributes_type": f"a mapping (key: value) is wanted here, not {shown}",
        "dict_type": f"a mapping (key: value) is wanted here, not {shown}",
        "tuple_type": f"a list is wanted here, not {shown}",
        "string_type": f"text is wanted here, not {shown}",
        "string_pattern_mismatch": f"{shown} is not written as it is wanted here",
        "too_short": "at least one is wanted here",
        "too_long": f"at most {ctx.get('max_length')} are wanted here",
        "int_from_float": f"a whole number is wanted here, not {shown}",
        "greater_than_equal": f"at least {ctx.get('ge')} is wanted here",
        "less_than_equal": f"at most {ctx.get('le')} is wanted here",
    }
    return texts.get(error["type"], str(error["msg"]))


def _kind_of(given: Any) -> str:
    if isinstance(given, (list, tuple)):
        return "a list"
    return "a mapping" if isinstance(given, dict) else f"'{given}'"


def _choices(error: Any) -> list[str]:
    """What pydantic lists as `'us' or 'metric'`."""
    return re.findall(r"'([^']*)'", str(error.get("ctx", {}).get("expected", "")))


def _hint(error: Any, message: str) -> str:
    given = error.get("input")
    if error["type"] == "literal_error":
        return _choice_hint(str(given), error["loc"][-1:], _choices(error))
    if error["type"] == "string_pattern_mismatch":
        pattern = str(error.get("ctx", {}).get("pattern", ""))
        hint = next((hint for part, hint in _PATTERNS.items() if part in pattern), "")
        return hint + (f", like '{_as_name(str(given))}'" if hint == _NAME else "")
    if "a number is wanted" in message and isinstance(given, str) and "," in given:
        return _comma_hint(given)
    if "a number is wanted" in message and str(given).startswith("\u2212"):
        return f"type the minus of the keyboard: -{str(given)[1:40]}"
    if given is None and "not nothing" in message:
        return _nothing_hint(error["loc"])
    return next((hint for part, hint in _HINTS.items() if part in message), "look at the line with this key again")


def _choice_hint(given: str, key: Path, choices: list[str]) -> str:
    if key == ("format",):
        return f"this program reads format {', '.join(choices)}"
    near = get_close_matches(given.lower(), choices, 1, 0.6)
    return f"did you mean '{near[0]}'?" if near else f"write one of {', '.join(choices)}"


def _comma_hint(given: str) -> str:
    """`50,5` is a decimal comma; `750, 775` a list that lacks its brackets."""
    if re.fullmatch(r"-?\d+,\d+", given):
        return f"the decimal sign is a point: {given.replace(',', '.')}"
    return f"several go in brackets: [{given[:40]}]"


def _nothing_hint(loc: Path) -> str:
    """In braces a decimal comma ends the value: `{ lf: 700,5 }` reads as lf 700 and a key 5 without a value."""
    if re.fullmatch(r"\d+", str(loc[-1])):
        return f"if the ',' before it is a decimal sign, write a point: '.{loc[-1]}'; else write '{loc[-1]}: ...'"
    return "write it, or take the key out"


def _as_name(given: str) -> str:
    """The nearest text that can be a name: accents dropped, blanks and the like as '-'."""
    plain = unicodedata.normalize("NFKD", given).encode("ascii", "ignore").decode("ascii")
    return re.sub(r"[^A-Za-z0-9_.]+", "-", plain).strip("-._")[:60] or "first-one"


_NAME = "a name is made of the letters a to z, digits, '-', '_' and '.', without blanks"
_PATTERNS = {
    "A-Za-z0-9": _NAME,
    "0-9a-f": "it is written by the program: 64 digits and letters a to f",
    r"\d{2}": "write it like 14:32 or 1:04:32",
}
_HINTS = {
    "a number is wanted": "write a bare number like 50.5",
    "with its unit": "write it like '560 ft' or '142 mph'",
    "the unit '": "write it with one of these",
    "yes or no is wanted": "write yes or no",
    "frames a second are wanted": "write it like 30000/1001, 29.97 or 25",
    "is not a frame rate": "write one of these, or 23.976, 29.97, 59.94 for the three with a fraction",
    "a mapping (key: value)": "write 'key: value' pairs, indented below, or in braces: { key: value }",
    "a list is wanted": "write it in brackets: [one, another], or each on a line of its own after '- '",
    "text is wanted": "write words; in quotes if they begin with a bracket or hold a colon",
    "a date like": "year, month and day: 2026-11-20",
    "is not a feel": "'tight' or 'loose', then 'entry', 'middle' or 'exit'; 'a little' or 'very' may go before",
    "step are wanted together": "write all three, like min: 46, max: 56, step: 0.5",
    "max is not below min": "the smaller number goes to min; a step is the size of one click",
    "clicks between min and max": "a larger step, or limits nearer to each other",
    "choices are listed": "sort them, like [3.70, 3.80, 3.90]",
    "not both": "keep the choices, or min, max and step",
    "one of: min": "keep one of these ways to say what can be set",
    "is not one we know": "write it as the garage shows it: lb/in, psi, in, %, clicks, deg ...",
    "need the setup they are": "add 'based_on: ...' with the id of another setup",
    "a setup has values": "add 'values:', or 'based_on:' and 'changes:'",
}


def _unknown_key(path: Path, known: list[str], places: Places) -> Finding:
    name = str(path[-1])
    near = get_close_matches(name[:80], known, 1, 0.6)
    hint = f"did you mean '{near[0]}'?" if near else f"known here: {', '.join(known)}" if known else "take it out"
    return _at(places, path, "unknown-key", f"'{name[:80]}' is not a key we know here", hint, key=True)


def _wrong_key(path: Path, error: Any, places: Places) -> Finding:
    """A key that is none of the fixed ones (corners), or not fit for a name."""
    if error["type"] == "literal_error":
        return _unknown_key(path, _choices(error), places)
    return _at(places, path, "wrong-value", _plain(error), _hint(error, ""), key=True)


def _keys_at(kind: type[BaseModel], loc: Path) -> list[str]:
    """The keys that a record knows at this place: the models along `loc`, indexes and mapping keys passed over."""
    for part in loc:
        named = {one.alias or name: one for name, one in kind.model_fields.items()}
        if part in named:
            found = _model_in(named[str(part)].annotation)
            if found is None:
                return []
            kind = found
    return [one.alias or name for name, one in kind.model_fields.items() if name != "source"]


def _model_in(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for inner in getattr(annotation, "__args__", ()):
        found = _model_in(inner)
        if found is not None:
            return found
    return None


def _real(loc: Path, value: Any) -> Path:
    """The part of pydantic's location that exists in the file (its own marks for keys and kinds passed over)."""
    path: list[str | int] = []
    for part in loc:
        inside = (isinstance(value, dict) and part in value) or (
            isinstance(value, list) and isinstance(part, int) and part < len(value)
        )
        if inside:
            value = value[part]
            path.append(part)
    return tuple(path)


def _at(places: Places, path: Path, code: str, message: str, hint: str = "", *, key: bool = False) -> Finding:
    place = places.key(path) if key else places.value(path)
    return Finding(code, Severity.ERROR, place, message, hint, places.where(path))
