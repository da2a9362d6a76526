"""Floor 5: one use of the program per file; the only place where the pieces meet."""
