"""The samples in a check's docstring: read, laid over the small valid base library, and run.

A sample is an indented block under `Found:`, `Found (code):` or `Silent:`. It holds one or more files, each begun by a
comment line with its path in the library. The top-level keys of a file replace those of the base's file or are added
at its end. After the path may stand, in brackets:

    whole      the file is what the sample shows and nothing else (so is every file that the base lacks)
    escapes    whole, with \\t, \\r, \\0, \\xff, \\u2028 standing for themselves
    missing    the file is taken away

A line of nothing but `^` marks the stretch of the line above it where the finding must stand (line 1 of a file that
shows no line). The pseudo-file `summary` gives fields of the episode's summary as YAML.
"""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from dataclasses import dataclass, field, fields
from inspect import cleandoc
from pathlib import Path
from types import ModuleType
from typing import Any

import yaml

from producer.basics.finding import Finding
from producer.checks.registry import run
from producer.jobs.opinions import SecondOpinion
from producer.library.load import load
from producer.model.summary import Summary

BASE = Path(__file__).parent / "base"
EPISODE = "marrow-creek-grand-sedan"
_HEAD = re.compile(r"(Found|Silent)(?: \(([a-z0-9-]+)\))?:")
_FILE = re.compile(r"# (summary|[\w./-]+\.(?:ya?ml|csv|srt|vtt))(?: \((whole|escapes|missing)\))?")
_KEY = re.compile(r"([^\s#:'\"-][^:]*):(?:\s|$)")
_MARK = re.compile(r" *(\^+) *")
_ESCAPE = re.compile(r"\\(?:x([0-9a-fA-F]{2})|u([0-9a-fA-F]{4})|([tr0n]))")


@dataclass(frozen=True)
class Mark:
    """Where a finding must stand: file, line and column from 1, width."""

    file: str
    line: int
    column: int
    width: int


@dataclass
class SampleFile:
    """One file of a sample: its lines, and (index of the line marked, start, end) for each mark."""

    path: str
    mode: str
    lines: list[str] = field(default_factory=list)
    marks: list[tuple[int, int, int]] = field(default_factory=list)


@dataclass(frozen=True)
class Sample:
    """One sample: `code` is "" for a silent one, which must raise none of its module's codes."""

    code: str
    silent: bool
    files: tuple[SampleFile, ...]


def samples(module: ModuleType) -> list[Sample]:
    """The samples of a check's docstring in order. Raises ValueError for one that cannot be read."""
    found: list[Sample] = []
    for head, body in _blocks(cleandoc(module.__doc__ or "")):
        match = _HEAD.fullmatch(head)
        assert match is not None
        silent = match.group(1) == "Silent"
        code = match.group(2) or ("" if silent else _only_code(module))
        found.append(Sample(code, silent, tuple(_files(body))))
    return found


def _only_code(module: ModuleType) -> str:
    if len(module.CODES) != 1:
        raise ValueError(f"{module.__name__}: 'Found:' must name its code, the module has several")
    return str(next(iter(module.CODES)))


def _blocks(text: str) -> Iterator[tuple[str, list[str]]]:
    head, body = "", []
    for line in text.splitlines():
        if line and not line.startswith(" "):
            if head:
                yield head, body
            head, body = (line, []) if _HEAD.fullmatch(line) else ("", [])
        elif head:
            body.append(line[4:])
    if head:
        yield head, body


def _files(body: list[str]) -> Iterator[SampleFile]:
    one: SampleFile | None = None
    for line in body:
        opened = _FILE.fullmatch(line)
        if opened:
            if one is not None:
                yield _trimmed(one)
            one = SampleFile(opened.group(1), opened.group(2) or "")
        elif one is None:
            if line.strip():
                raise ValueError(f"a sample begins with '# path/of/file.yaml', not '{line}'")
        elif _MARK.fullmatch(line):
            start = line.index("^")
            one.marks.append((max(0, len(one.lines) - 1), start, start + len(line.strip().split(" ")[0])))
        else:
            one.lines.append(line)
    if one is not None:
        yield _trimmed(one)


def _trimmed(one: SampleFile) -> SampleFile:
    while one.lines and not one.lines[-1].strip():
        one.lines.pop()
    return one


def write(sample: Sample, root: Path) -> list[Mark]:
    """The base library with the sample over it, written below `root` (which must not exist); the marks in it."""
    shutil.copytree(BASE, root)
    marks: list[Mark] = []
    for one in sample.files:
        if one.path == "summary":
            continue
        path = root / one.path
        if one.mode == "missing":
            path.unlink()
            marks += [Mark(one.path, 1, 1, end - start) for _, start, end in one.marks]
        elif one.mode or not path.exists():
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(_bytes("\n".join([*one.lines, ""]) if one.lines else "", one.mode == "escapes"))
            marks += [_mark(one, mark, mark[0] + 1) for mark in one.marks]
        else:
            lines, shown_at = _laid_over(path.read_text(encoding="utf-8").splitlines(), one.lines)
            path.write_text("\n".join([*lines, ""]), encoding="utf-8", newline="\n")
            marks += [_mark(one, mark, shown_at[mark[0]] + 1) for mark in one.marks]
    return marks


def _mark(one: SampleFile, mark: tuple[int, int, int], line: int) -> Mark:
    index, start, end = mark
    shown = one.lines[index] if index < len(one.lines) else ""
    if one.mode == "escapes":
        before = len(_bytes(shown[:start], True).decode("utf-8", "replace"))
        width = len(_bytes(shown[start:end], True).decode("utf-8", "replace")) + max(0, end - max(start, len(shown)))
        return Mark(one.path, line, before + 1, max(1, width))
    return Mark(one.path, line, start + 1, end - start)


def _bytes(text: str, escapes: bool) -> bytes:
    if not escapes:
        return text.encode()
    data, at = b"", 0
    for match in _ESCAPE.finditer(text):
        data += text[at : match.start()].encode()
        byte, point, letter = match.groups()
        if byte:
            data += bytes([int(byte, 16)])
        else:
            data += (chr(int(point, 16)) if point else {"t": "\t", "r": "\r", "0": "\0", "n": "\n"}[letter]).encode()
        at = match.end()
    return data + text[at:].encode()


def _laid_over(base: list[str], over: list[str]) -> tuple[list[str], dict[int, int]]:
    """The base's lines with the top-level keys of `over` in place of its own, and where each line of `over` went."""
    blocks = _by_key(base)
    new = _by_key(over)
    known = {key for key, _ in blocks}
    replacing = dict(new)
    if len(replacing) != len(new) or ("" in replacing and any(line for line in [over[at] for at in replacing[""]])):
        raise ValueError("a sample shows each top-level key once and nothing before the first")
    order = [(key, key in replacing, at) for key, at in blocks]
    order += [(key, True, []) for key, _ in new if key not in known]
    lines: list[str] = []
    shown_at: dict[int, int] = {}
    for key, replaced, own in order:
        for at in replacing[key] if replaced else own:
            if replaced:
                shown_at[at] = len(lines)
            lines.append(over[at] if replaced else base[at])
    return lines, shown_at


def _by_key(lines: list[str]) -> list[tuple[str, list[int]]]:
    """(top-level key, indexes of its lines) in order; "" for what stands before the first key."""
    found: list[tuple[str, list[int]]] = []
    for index, line in enumerate(lines):
        key = _KEY.match(line)
        if key:
            found.append((key.group(1), []))
        elif not found:
            found.append(("", []))
        found[-1][1].append(index)
    return found


def findings(sample: Sample, root: Path, module: ModuleType) -> tuple[list[Finding], list[Mark]]:
    """Everything that reading and the checks say about the sample, and the marks it must meet.

    The chassis model is asked where the check wants to know what it thinks: that costs time.
    """
    marks = write(sample, root)
    library, found = load(root)
    summaries = {name: summary(sample, one.title) for name, one in library.episodes.items()}
    second = SecondOpinion().of if hasattr(module, "check_opinions") else None
    return found + run(library, summaries, second=second), marks


def summary(sample: Sample, title: str) -> Summary:
    values: dict[str, Any] = {
        "title": title, "description": "", "description_bytes": 900, "tags_characters": 90, "chapter_problem": "",
        "chapters": ((0, "Hello"), (30_000, "Short run"), (300_000, "Long run")), "fast_captions": (),
        "digest": "0" * 64, "length_ms": 600_000,
    }  # fmt: skip
    for one in sample.files:
        if one.path == "summary":
            values.update(yaml.safe_load("\n".join(one.lines)))
    unknown = set(values) - {one.name for one in fields(Summary)}
    if unknown:
        raise ValueError(f"a summary has no {', '.join(sorted(unknown))}")
    values["fast_captions"] = tuple(tuple(one) for one in values["fast_captions"])
    values["chapters"] = tuple(tuple(one) for one in values["chapters"])
    return Summary(**values)
