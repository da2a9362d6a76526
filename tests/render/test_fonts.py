"""The fonts that travel with everything rendered."""

from __future__ import annotations

from producer.render.fonts import REGULAR, STRONG, folder, font_documents, licence


def test_two_weights_and_their_licence_go_beside_the_episodes() -> None:
    found = {one.path: one.data for one in font_documents()}
    assert list(found) == [f"fonts/{REGULAR}", f"fonts/{STRONG}", "fonts/OFL.txt"]
    assert found[f"fonts/{REGULAR}"] == (folder() / REGULAR).read_bytes()
    # The tag of a TrueType file, OpenType specification, "Table Directory".
    assert found[f"fonts/{STRONG}"][:4] == b"\x00\x01\x00\x00"


def test_the_licence_is_the_open_font_licence() -> None:
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence()
