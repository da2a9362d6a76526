r"""A file of the library is UTF-8 text of a sensible size.

It is decoded strictly: a byte that is not UTF-8 is never guessed at. A byte-order mark at the beginning is dropped.
Control characters are refused, and so are U+0085, U+2028 and U+2029: YAML 1.1 ends a line there and editors do not, so
that what you read would not be what the program reads. A file of more than 1 MiB (`too-large`) is not an episode, and
one that the system does not hand out (`unreadable-file`) is named.
Sources: The Unicode Standard, section 5.8; YAML 1.2.2, section 5.1 and 5.4.

Found (not-utf8):

    # tracks/marrow-creek.yaml (escapes)
    format: 1
    track: marrow-creek
    name: Marrow Cr\xe9ek
                   ^^^^

Found (odd-character):

    # tracks/marrow-creek.yaml (escapes)
    format: 1
    name: Marrow\u2028Creek
                ^^^^^^

Found (odd-character):

    # tracks/marrow-creek.yaml (escapes)
    format: 1\0
             ^^

Silent:

    # tracks/marrow-creek.yaml (escapes)
    \ufeffformat: 1\r
    track: marrow-creek\r
    name: Marrow Cr\xc3\xa9ek, 21 °C, the “far” end\r
    length: 1.10 mi\r
    corners: []\r
"""

from __future__ import annotations

from producer.basics.finding import Severity

CODES = {
    "not-utf8": Severity.ERROR,
    "odd-character": Severity.ERROR,
    "too-large": Severity.ERROR,
    "unreadable-file": Severity.ERROR,
}
RAISED_WHILE = "reading"
NOT_SHOWN = ("too-large", "unreadable-file")  # no sample can show a file of a mebibyte or one without permission
