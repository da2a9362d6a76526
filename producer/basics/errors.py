"""The one exception a person may see: the environment will not let the command be done."""

from __future__ import annotations


class ProducerError(Exception):
    """The command could not be done (bad usage, no library, unreadable file): exit code 2.

    `str(error)` is one plain sentence for the author; what the author wrote wrongly is a
    `Finding` instead, and our own mistakes are ordinary exceptions (exit code 3).
    """
