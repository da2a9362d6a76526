"""How many words a text is when it is said aloud: figures, units and signs count as they are spoken.

"61.5 %" is five words (sixty one point five percent). Full cardinal numbers in the American manner without
"and" are counted, so 750 is three words although a presenter may say "seven fifty": a caption or a narration
may come out a little long, never too short. Decided here, for want of any standard:

- decimals are said digit by digit after "point", a leading zero is said (0.5 is "zero point five");
- 51½ and 51 1/2 are "fifty one and one half", 3/4 is "three quarters";
- 14:32 is "fourteen thirty two", 0:31.482 drops the empty minutes, 3.90:1 is "three point nine zero to one";
- .05 is "point zero five"; a " after a figure is "inches", elsewhere a quotation mark that nobody says;
- a dash between two figures is "to", a minus before one is "minus";
- lb/in is "pounds per inch" (3), psi and rpm are said by their letters (3), mph "miles per hour" (3),
  °F "degrees Fahrenheit" (2);
- capitals without a vowel are said as letters, which is also right for corners: RF is "right front" (2);
- a hyphenated word is as many words as it joins: "right-front" is two.
"""

from __future__ import annotations

import re

# Words spoken for what is written; anything not listed is one word.
_UNITS = {
    "psi": 3, "rpm": 3, "mph": 3, "kph": 3, "°f": 2, "°c": 2, "lb/in": 3, "lbs/in": 3, "lbf/in": 3,
    "n/mm": 3, "km/h": 3, "m/s": 3,
}  # fmt: skip
_SIGNS = {"±": 3, "≤": 4, "≥": 4, "<": 2, ">": 2, ":1": 2}
_HALVES = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"

# One pass over the text. The order of the alternatives matters: the longer reading first.
_TOKEN = re.compile(
    rf"""
    (?P<date>(?<![\d-])(?P<year>\d{{4}})-\d\d-(?P<day>\d\d)(?![\d-]))
  | (?P<figure>
        (?P<sign>(?<![\w%)\]])[-\u2212+±](?=\.?\d))?
        (?:
            (?:(?P<whole>\d{{1,9}}+)[ \u00a0\u202f])?+(?P<above>\d{{1,4}}+)[/\u2044](?P<below>\d{{1,4}}+)(?![/\u2044\d])
          | (?:(?P<units>\d{{1,9}}+)[ \u00a0\u202f]?)?+(?P<half>[{_HALVES}])
          | (?P<clock>\d++(?::\d\d(?!\d))++)(?P<ticks>\.\d++)?
          | (?P<number>\d{{1,3}}+(?:,\d{{3}}(?!\d))++|\d++)(?P<decimals>\.\d++)?(?P<ratio>:1\b)?
          | (?P<less>\.\d++)
        ))
  | (?P<unit>(?:lbs?|lbf)/in\b|N/mm\b|km/h\b|m/s\b|°[FfCc]\b|(?:psi|rpm|mph|kph|PSI|RPM|MPH|KPH)\b)
  | (?P<letters>(?<![^\W_])[B-DF-HJ-NP-TV-XZ]{{2,4}}(?![^\W_]))
  | (?P<word>[^\W\d_]++(?:['\u2019\u0300-\u036f]++[^\W\d_]*+)*+)
  | (?P<dash>(?<=\d)\s?[-\u2010-\u2012\u2013](?=\s?\d))
  | (?P<inches>(?<=\d)["\u2033])
  | (?P<other>[%°=+&@±×÷→≤≥<>\#$£€\u2212])
    """,
    re.VERBOSE,
)


def _cardinal(digits: str) -> int:
    """Words of a whole number in digits: 750 -> 3 (seven hundred fifty); 05 and more than 15 digits one by one."""
    if digits[0] == "0" or len(digits) > 15:
        return len(digits)
    words = 0
    for start in range(len(digits) % 3 - 3, len(digits), 3):
        group = int(digits[max(start, 0) : start + 3] or 0)
        if group:
            hundreds, rest = divmod(group, 100)
            tens = 0 if not rest else 1 if rest <= 20 or rest % 10 == 0 else 2
            thousand = 1 if start + 3 < len(digits) else 0
            words += (2 if hundreds else 0) + tens + thousand
    return words


def _clock(text: str) -> int:
    """14:32 -> 3, 0:31 -> 2: empty leading parts are not said, an empty later part is "zero"."""
    parts = text.split(":")
    while len(parts) > 1 and not parts[0].strip("0"):
        parts = parts[1:]
    return sum(_cardinal(part.lstrip("0") or "0") for part in parts)


def _figure(match: re.Match[str]) -> int:
    sign = match["sign"]
    words = _SIGNS.get(sign, 1) if sign else 0
    if above := match["above"]:
        whole = match["whole"]
        words += _cardinal(above) + _cardinal(match["below"])
        return words + (_cardinal(whole) + 1 if whole else 0)
    if match["half"]:
        units = match["units"]
        return words + 2 + (_cardinal(units) + 1 if units else 0)
    if clock := match["clock"]:
        ticks = match["ticks"]
        return words + _clock(clock) + (len(ticks) if ticks else 0)
    if less := match["less"]:
        return words + len(less)  # the point, said or as "zero point", and each digit
    words += _cardinal(match["number"].replace(",", ""))
    words += len(match["decimals"] or "")  # the point and each digit
    return words + (2 if match["ratio"] else 0)


def spoken_words(text: str) -> int:
    """Words heard when `text` is said aloud (0 for none); figures, units and signs as spoken. Never fails."""
    words = 0
    for match in _TOKEN.finditer(text):
        kind = match.lastgroup
        if kind == "word":
            words += 1
        elif kind == "figure":
            words += _figure(match)
        elif kind == "letters":
            words += match.end() - match.start()
        elif kind == "unit":
            words += _UNITS.get(match.group().lower(), 1)
        elif kind == "other":
            words += _SIGNS.get(match.group(), 1)
        elif kind == "date":
            year = match["year"]
            words += 1 + _cardinal(match["day"].lstrip("0") or "0") + _cardinal(year[:2]) + _cardinal(year[2:])
        else:
            words += 1
    return words


def figures(text: str) -> int:
    """How many figures a viewer has to take in: 750, −3.5, 14:32, 3.90:1, 51½ are one each; a range is two."""
    return sum(1 for match in _TOKEN.finditer(text) if match.lastgroup in {"figure", "date"})
