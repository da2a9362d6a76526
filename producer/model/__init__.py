"""Floor 1: frozen records - what the author writes, and what one engine hands to another. No input or output."""
