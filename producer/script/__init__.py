"""Floor 3: what is said, in which order, how long it takes, and what stands on the screen meanwhile."""
