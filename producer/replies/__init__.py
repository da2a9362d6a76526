"""Replies to viewers: which setup answers a message, what is said, and what is left out where it gets too long."""
