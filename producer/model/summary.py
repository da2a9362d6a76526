"""What an episode would publish, in the figures that the platform limits: handed to the checks by a job."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Summary:
    """`description_bytes` counts UTF-8 bytes of the whole description; `tags_characters` all tags joined by commas.

    `chapters` are (start_ms, title); `chapter_problem` says why no legal list of chapters exists ("" if one does).
    `fast_captions` are (start_ms, text, why) of on-screen captions that cannot be read in their time. `digest` is
    the SHA-256 (hexadecimal) of the cards' data as it is now. `length_ms` is the estimated or real length.
    """

    title: str
    description: str
    description_bytes: int
    tags_characters: int
    chapters: tuple[tuple[int, str], ...]
    chapter_problem: str
    fast_captions: tuple[tuple[int, str, str], ...]
    digest: str
    length_ms: int
