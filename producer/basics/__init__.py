"""Floor 0: places, findings, quantities, figures, errors. Nothing here knows about cars or video."""
