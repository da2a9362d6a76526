"""What holds for every chart: nothing outside the sheet, no text on another, no bar on a text."""

from __future__ import annotations

from itertools import combinations

from producer.render.charts.drawing import Drawing, Extent

SLACK = 0.5  # of a unit, for rounding


def troubles(drawing: Drawing) -> list[str]:
    """Every breach of the laws, in words."""
    sheet = Extent(-SLACK, -SLACK, drawing.width + SLACK, drawing.height + SLACK)
    texts = [(one.text, _smaller(one.extent)) for one in drawing.texts]
    found = [f"'{text}' leaves the sheet: {extent}" for text, extent in texts if not sheet.holds(extent)]
    found += [f"'{a}' lies on '{b}'" for (a, one), (b, other) in combinations(texts, 2) if one.meets(other)]
    found += [f"a bar leaves the sheet: {one}" for one in drawing.boxes if not sheet.holds(one.extent)]
    for box in drawing.boxes:
        found += [f"a bar lies on '{text}'" for text, extent in texts if extent.meets(_smaller(box.extent))]
        hatched = [at for line in box.hatching for at in line.points]
        frame = Extent(box.x - SLACK, box.y - SLACK, box.x + box.width + SLACK, box.y + box.height + SLACK)
        found += [f"hatching leaves its bar at {at}" for at in hatched if not frame.holds(Extent(*at, *at))]
    points = [at for line in (*drawing.strokes, *drawing.areas) for at in line.points]
    found += [f"a line leaves the sheet at {at}" for at in points if not sheet.holds(Extent(*at, *at))]
    return found


def _smaller(extent: Extent) -> Extent:
    return Extent(extent.left + SLACK, extent.top + SLACK, extent.right - SLACK, extent.bottom - SLACK)
