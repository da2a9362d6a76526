"""Words of a hurried message made plain: texting, letters left out or doubled, apostrophes left out.

Only words that matter to the trade are mended, and only into what one slip of the finger makes of them; an ordinary
word that happens to lie as near is left alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from producer.language.message_words import TABLES
from producer.language.tokens import Words, listed

_SHORTENED = {
    "you": "u ya yall", "your": "ur", "are": "r", "what": "wat wut wht whats", "through": "thru", "with": "w wit",
    "please": "plz pls plss pl", "little": "lil", "help": "halp", "bit": "abit", "thanks": "thx tnx thanx ty tysm",
    "tight": "tite tyt", "i": "im ive id", "it": "its", "that": "thats", "how": "hows", "where": "wheres",
    "why": "whys", "before": "b4", "because": "cuz cos coz bc", "though": "tho", "should": "shud shuld",
    "could": "cud", "would": "wud", "video": "vid", "videos": "vids", "kinda": "sorta", "gonna": "gunna",
    "tomorrow": "tmrw", "really": "rly rlly", "lots": "alot", "idk": "dunno", "them": "em", "the": "da teh",
    "when": "wen", "back": "bak", "from": "frm", "out": "outta", "off": "offa", "tires": "tiers",
    "tyres": "tyers tryes", "pushes": "pushs", "center": "cntr", "especially": "esp", "probably": "prolly",
    "about": "bout abt", "sorry": "sry", "people": "ppl", "ok": "k",
}  # fmt: skip
_TEXTING = {short: plain for plain, shorts in _SHORTENED.items() for short in shorts.split()}
_DENIALS = "won't don't can't doesn't isn't didn't wasn't aren't couldn't wouldn't hasn't haven't shouldn't"
_NEGATIONS = {one.replace("'", ""): one for one in listed(_DENIALS)} | {
    "aint": "isn't", "cannot": "can't", "dosent": "doesn't", "dosnt": "doesn't",
}  # fmt: skip
# What a slip of the finger is mended to.
_TRADE = listed(
    "loose tight understeer understeers understeering oversteer oversteers oversteering pushes pushing plows "
    "plowing middle center centre corner exit entry entering exiting apex throttle brakes braking tires tyres "
    "controller gamepad keyboard spring springs pressure pressures rebound compression camber weight wedge "
    "panhard rotate rotates rotating slightly really little suggestions suggestion advice please thanks thank "
    "appreciate stickers through between coming getting going turning sliding slides spinning snaps snapping "
    "setup garage wheel nervous twitchy insanely extremely super steering straight change qualifying video "
    "front should would could anything something tried trying using because every"
)
# Ordinary words that lie as near to one of them, and forms of the trade's own words.
_ORDINARY = listed(
    "advise angle ape apes apexes app applying baking barking braces bracing brake brakes braves break "
    "breaking breaks bushes canter center centers centres chamber chance changed changes charge cloud combing "
    "comes coming corer corner corners devise eager entire entity even ever exist exists exits font front "
    "getting going gong letter loosen looser lose loser loses losing meddle muddle overseer place places "
    "planning plans playing plays pleas pleased plowed pushed pusher qualify rally reality returning rotated "
    "rotation setting setups shoulder siding sightly sinning slices slide slider sliding snap snaps spinning "
    "sprang sprint sprung strait string strings supper tank tanks thanked think thinking thinks though thought "
    "threw through thrust tighten tighter tights tire tired tiring title trees tried tries trough trying "
    "tuning turned turns typing tyre using very wedges weigh weighs weights wheel wheeled wheels while world "
    "coding controlled cooking editing emitting existing garbage greeting relay sides sided snips spanning springy "
    "staring stemming stirring storing thorough twitch"
)
# Words that the reader of messages knows are spelt as they should be.
_KNOWN = frozenset(word for _, table in TABLES for phrase in table for word in phrase.split())
_RUN = re.compile(r"([a-z])\1{2,}")
_TWICE = re.compile(r"([a-z])\1")
_VOWELS = "aeiouy"
# "Its lose off 4" is loose, "I lose the rear" is not.
_BEFORE_LOOSE = listed(
    "too so bit really very super way it little is getting gets get got kinda slightly touch tad real"
)
_AFTER_LOSE = listed("it the my a an grip control time spots positions rear everything all ground this that")


def mended(run: Words) -> Words:
    """The same words with the same places, misspellings and texting made plain."""
    text = [_mend(word) for word in run.text]
    for at, word in enumerate(text):
        if word == "lose" and at and text[at - 1] in _BEFORE_LOOSE and not _AFTER_LOSE & set(text[at + 1 : at + 2]):
            text[at] = "loose"
    return Words(text, run.start, run.end)


def _mend(word: str) -> str:
    if word in _NEGATIONS:
        return _NEGATIONS[word]
    if word in _TEXTING:
        return _TEXTING[word]
    if len(word) < 3 or not word[0].isalpha() or word in _TRADE or word in _ORDINARY or word in _KNOWN:
        return word
    if _RUN.search(word):
        return _drawn_out(word)
    if word.endswith("in") and len(word) > 3 and word + "g" in _DROPPED_G:
        return word + "g"
    return _SLIPS.get(_TWICE.sub(r"\1", word), word) if len(word) > 4 else word


def _drawn_out(word: str) -> str:
    """As in "soooo", "wayyy", "looooose"."""
    for kept in (r"\1\1", r"\1"):
        short = _RUN.sub(kept, word)
        if short in _TRADE or short in _TEXTING or short in _SHOUTED:
            return _TEXTING.get(short, short)
    return _RUN.sub(r"\1", word)


_SHOUTED = listed("so way too please help push free loose tight super very off")
_DROPPED_G = listed(
    "getting going coming turning pushing plowing sliding spinning snapping stepping breaking braking entering "
    "exiting "
    "running using driving racing playing hitting touching lifting letting doing making kicking swinging washing "
    "wiggling rolling loosing trying putting giving picking killing dropping understeering oversteering"
)


def _slips() -> dict[str, str]:
    """Every one-slip misspelling of the trade's words, doubled letters written once."""
    found: dict[str, str] = {}
    for word in sorted(_TRADE):
        once = _TWICE.sub(r"\1", word)
        for slip in _of(once):
            found.setdefault(_TWICE.sub(r"\1", slip), word)
    for word in _TRADE:
        found[_TWICE.sub(r"\1", word)] = word
    return found


def _of(word: str) -> Iterator[str]:
    for at in range(1, len(word)):
        yield word[:at] + word[at + 1 :] if len(word) > 5 else word
        if at + 1 < len(word):
            yield word[:at] + word[at + 1] + word[at] + word[at + 2 :]
        if word[at] in _VOWELS:
            yield from (word[:at] + vowel + word[at + 1 :] for vowel in _VOWELS)
        if len(word) > 5:
            yield from (word[:at] + one + word[at:] for one in "abcdefghiklmnoprstuvwyz")
            yield from (word[:at] + one + word[at + 1 :] for one in "abcdefghiklmnoprstuvwyz")


_SLIPS = _slips()
