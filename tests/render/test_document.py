"""One finished file."""

from __future__ import annotations

from producer.render.document import Document


def test_text_is_utf_8_without_a_mark_and_with_its_own_line_ends() -> None:
    assert Document.of_text("a.txt", "−1\u00a0lb\n") == Document("a.txt", b"\xe2\x88\x921\xc2\xa0lb\n")
