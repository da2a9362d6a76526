"""Where English may be broken: what each gap between two words costs.

Rules of the BBC Subtitle Guidelines 1.2.5, section 3.4: break at punctuation; keep together article and noun,
preposition and the phrase after it, conjunction and the phrase after it, pronoun and verb, the parts of a verb.
The trade's own: a corner (right front), a counted thing (two clicks), a place or time by number (turn 3, lap 52).
"""

from __future__ import annotations

import re

SENTENCE, CLAUSE, BEFORE_PHRASE, PLAIN, LOOSE, BOUND, NEVER = 0, 1, 3, 5, 10, 25, 1000
"""Cost of a break: after a sentence, after a clause, before a phrase, anywhere else, at a gap better kept, at a gap
to be kept unless a line would be lost, at a gap to be kept unless nothing else fits."""


def _set(words: str) -> frozenset[str]:
    return frozenset(words.split())


_ARTICLES = _set("a an the this that these those my your our his her its their every each no some any another")
_PREPOSITIONS = _set(
    "at by for from in into of off on onto through to under with without between against across around over than "
    "per about after before during until toward towards near behind like as via along past above below"
)
_AUXILIARIES = _set(
    "am is are was were be been being have has had do does did will would shall should can could may might must "
    "don't doesn't didn't won't wouldn't can't cannot couldn't shouldn't isn't aren't wasn't weren't hasn't haven't "
    "hadn't not never i'm i've i'd i'll you're you've you'd you'll he's she's it's it'll we're we've we'd we'll "
    "they're they've they'd they'll that's that'll there's let's"
)
_CONJUNCTIONS = _set(
    "and but or nor so because if when while where which who that although though unless once since whether until then"
)
_PRONOUNS = _set("i you he she it we they who what there")
_SIDES = _set("left right front rear lower upper")
_ENDS = _set("front rear left right side sides end corner fronts rears")
_BY_NUMBER = _set("turn turns lap laps step part page setup number rule chapter stint row class")
_NUMBERS = _set(
    "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen "
    "eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred thousand half quarter point "
    "minus"
)
_QUOTES = "\"'\u2018\u201c([\u2019\u201d)]"
_FIGURE = re.compile(r"[-+\u2212±$£€#]?(?:\d(?:[\d.,:/]*\d)?|\.\d+)[¼½¾⅛⅜⅝⅞]?|[¼½¾⅛⅜⅝⅞]")
_UNIT = re.compile(
    r"(?:in|inch|inches|mm|cm|ft|feet|m|mi|miles?|km|lbs?|pounds?|kg|lbf|N|(?:lbs?|lbf)/in|N/mm|psi|kPa|bar|mph|km/h"
    r"|m/s|gal|gallons?|L|lit(?:re|er)s?|°[FC]?|s|sec|seconds?|min|minutes?|rpm|deg|degrees?|%|percent|:1|clicks?"
    r"|points?|steps?|turns?|rounds?|laps?|words?|ft\.lb|N\u00a0m|lbf\u00a0ft)[.,;:!?)]*",
)


def is_figure(word: str) -> bool:
    """Whether a word is a figure in digits, brackets and quotes around it left aside: `750`, `−3.5`, `(51½`."""
    return _FIGURE.fullmatch(word.strip(_QUOTES)) is not None


def measures(figure: str, word: str) -> bool:
    """Whether `word` is the unit or the counted thing of the figure before it: `750 lb/in`, `2 clicks`."""
    return is_figure(figure) and _UNIT.fullmatch(word) is not None


def break_cost(before: str, after: str) -> int:
    """What a break between two neighbouring words costs, 0 (wanted) to NEVER."""
    last = before.rstrip("\"'\u2019\u201d)]")[-1:]
    if last in ".?!…":
        return SENTENCE
    if last in ",;:" or before in {"–", "—", "-"} or last == "—":
        return CLAUSE
    if after in {"–", "—", "-"}:
        return NEVER
    return _between(_bare(before), _bare(after))


def _bare(word: str) -> str:
    return word.strip(_QUOTES + ".,;:?!…").replace("\u2019", "'").lower()


def _between(before: str, after: str) -> int:
    if before in _ARTICLES or before in _PREPOSITIONS or before in _AUXILIARIES:
        # "whether it is" before "and": nothing follows that belongs to it.
        return LOOSE if after in _CONJUNCTIONS and before not in _ARTICLES else NEVER
    if _one_figure(before, after) or (before in _SIDES and after in _ENDS):
        return NEVER
    if _numeral(before) and _names_a_thing(after):
        return BOUND
    if before in _CONJUNCTIONS or before in _PRONOUNS:
        return BOUND
    if after in _CONJUNCTIONS:
        return CLAUSE + 1
    if after in _PREPOSITIONS or after in _AUXILIARIES:
        return BEFORE_PHRASE
    if after in _ARTICLES or after in _PRONOUNS:
        return PLAIN
    return LOOSE


def _numeral(word: str) -> bool:
    return word in _NUMBERS or is_figure(word)


def _one_figure(before: str, after: str) -> bool:
    """A number said in words, a figure and its unit, a thing known by its number."""
    if _numeral(before):
        return after in _NUMBERS or _UNIT.fullmatch(after) is not None
    return before in _BY_NUMBER and _numeral(after)


def _names_a_thing(word: str) -> bool:
    """Whether a word may be what a figure before it counts."""
    small = (_CONJUNCTIONS, _PREPOSITIONS, _AUXILIARIES, _PRONOUNS, _ARTICLES)
    return not any(word in words for words in small)
