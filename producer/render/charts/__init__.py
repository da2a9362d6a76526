"""Charts: what is to be seen as records, its geometry computed here, drawn by `chart.svg.j2`.

A chart is a `Drawing` of lines, shapes and texts with every position worked out; the template only writes them down.
"""
