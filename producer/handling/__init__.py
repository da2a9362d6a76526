"""Floor 3: tuning rules, the adjustment guide, the author's advice, gearing and static weights."""
