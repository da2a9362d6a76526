"""Floor 2: the trade's English. Numbers, settings and claims about them; silence rather than a wrong reading."""
