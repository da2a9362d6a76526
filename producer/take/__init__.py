"""Floor 3: what was really said. Places the script in a recorded take and holds every figure against the sheet."""
