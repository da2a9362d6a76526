"""Floor 4: one file per check. Its docstring is the manual; registry.py finds it by its folder."""
