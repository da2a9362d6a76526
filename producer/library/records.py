"""Values with places into one record; pydantic's errors into findings at their place."""

from __future__ import annotations

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
        return (
            None,
            places,
            [_at(places, (), "empty-file", "there is nothing in this file", f"start with {_start(kind)}")],
        )
    if not isinstance(value, dict):
        return None, places, [_at(places, (), "wrong-kind", "a mapping (key: value) is wanted here")]
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
        return _unknown_key(path, kind, error["loc"], places)
    if problem == "missing":
        name = str(error["loc"][-1])
        return _at(places, path, "missing-key", f"'{name}' is missing here", f"add '{name}: ...'", key=True)
    message = str(error.get("ctx", {}).get("error", "")) or _plain(error)
    return _at(places, path, "wrong-kind" if problem != "value_error" else _code(message), message)


def _code(message: str) -> str:
    return "wrong-kind" if "is wanted here" in message else "wrong-value"


def _plain(error: Any) -> str:
    given, ctx = error.get("input"), error.get("ctx", {})
    shown = f"'{given[:40]}'" if isinstance(given, str) else "nothing" if given is None else "this"
    texts = {
        "literal_error": f"{shown} is not one of {ctx.get('expected', '')}".replace(" or ", ", "),
        "model_type": f"a mapping (key: value) is wanted here, not {shown}",
        "model_attributes_type": f"a mapping (key: value) is wanted here, not {shown}",
        "dict_type": f"a mapping (key: value) is wanted here, not {shown}",
        "tuple_type": f"a list is wanted here, not {shown}",
        "string_type": f"text is wanted here, not {shown}",
        "string_pattern_mismatch": f"{shown} cannot be used here: letters, digits, '-', '_' and '.' make a name",
        "too_short": "at least one is wanted here",
        "int_from_float": f"a whole number is wanted here, not {shown}",
        "greater_than_equal": f"at least {ctx.get('ge')} is wanted here",
        "less_than_equal": f"at most {ctx.get('le')} is wanted here",
    }
    return texts.get(error["type"], str(error["msg"]))


def _unknown_key(path: Path, kind: type[Record], loc: Path, places: Places) -> Finding:
    name = str(loc[-1])
    known = _keys_at(kind, loc[:-1])
    near = get_close_matches(name, known, 1, 0.6)
    hint = f"did you mean '{near[0]}'?" if near else f"known here: {', '.join(known)}" if known else ""
    return _at(places, path, "unknown-key", f"'{name}' is not a key we know here", hint, key=True)


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
