"""What a message asks for: a track, a correction, help, or nothing but to say thanks."""

from __future__ import annotations

from collections.abc import Sequence

from producer.language.number_words import TENS
from producer.language.tokens import listed
from producer.model.request import Asks

_THANKS = listed(
    "thanks thank cheers appreciate appreciated grateful kudos props legend lifesaver goat respect bravo congrats"
)
_PRAISE = listed(
    "awesome great brilliant amazing fantastic excellent love loved best nice good perfect helpful incredible superb "
    "wonderful cool sweet stellar solid top"
)
_PRAISED = listed(
    "video videos stuff work job content channel series card cards tutorial guide explanation info episode episodes "
    "jo mate man setup setups watch advice tip tips one work"
)
_WORKED = (
    "learned a lot", "saved my", "made my", "helped me", "helped a", "helps a", "fixed my", "fixed it", "cured my",
    "works great", "works perfectly", "worked great", "worked perfectly", "worked like", "works like",
    "much better now", "keep it up", "keep up the", "hats off", "you rock", "well done", "needed this",
    "exactly what i",
    "just what i needed", "what i was looking", "owe you", "youre the best",
    "a wizard", "a genius", "a legend", "a beast", "a hero", "the goat", "a magician", "you are the best", "subscribed",
    "that did it", "did the trick",
    "nice one", "worked a treat", "got my first win", "keep them coming", "keep em coming",
)  # fmt: skip
_PUZZLED = (
    "don't get what", "don't get how", "don't get why", "don't understand", "can't figure", "not sure what",
    "not sure how", "not sure if", "not sure which", "no idea what", "no idea how", "no idea why", "no clue",
    "wondering", "confused", "idk what", "idk how", "idk why", "idk where", "don't know what", "don't know how",
    "don't know why", "don't know which", "don't know where", "curious", "can't find", "cant seem", "can't seem",
)  # fmt: skip
_HELP = listed(
    "help tips tip advice suggestion suggestions suggest idea ideas thoughts recommend recommendation "
    "recommendations opinion question stuck clueless advise pointers pointer hints guidance"
)
_ASKING = listed("what how why which where when who whats")
_VERBS = listed(
    "do does did is are am was should shall would can could will to i you it much many come about else now gives the "
    "this that a my your kind if or in be exactly causes makes helps fixes setup"
)
_OPENS = listed("can could should would will do does did is are am any was has have may anyone anybody")
_AFTER_OPEN = listed(
    "i you it this that the there my your a we anyone somebody someone they these those one u he she jo more less "
    "lowering raising adding changing going chance help ideas idea tips advice suggestions thoughts way "
    "pointers plans"
)
# A question may begin after these.
_BEFORE = listed("so and but lol also mate jo hey hi please btw just man dude bro ok okay or yo wondering")
# Questions about no car, setup or garage.
_ASIDE = listed(
    "camera mic microphone stream streaming streamed discord music song intro outro monitor monitors pc rig name "
    "merch shirt software old song screen live giveaway country accent dog cat wife phone hat"
)
_SAID = (
    "you said", "you say", "you says", "video says", "video said", "in the video", "you mention", "you mentioned",
    "you told", "you read", "video has", "said in", "the video is", "video you", "you called", "you call",
    "you have it", "out loud", "you were saying", "video it", "in video", "video shows", "video at", "you go", "audio",
    "video and", "you talk", "video showed", "you used", "voice", "you put", "you set", "you showed", "on screen",
    "on the screen", "screen shows", "heard you", "spoken", "narration", "screen says", "screen has", "you run",
)  # fmt: skip
_WRITTEN = listed("card cards sheet description pdf graphic picture caption captions image notes pinned text")
_WRONG = listed(
    "wrong typo mistake mismatch mismatched error incorrect differ differs different disagree disagrees contradict "
    "contradicts conflict conflicts match"
)


def asks(text: Sequence[str], complains: bool, wants_track: bool, names_setting: bool) -> Asks:
    """What the mended words `text` ask for.

    `complains`: something is wrong with the car now; `wants_track`: a track is asked for; `names_setting`: a setting
    is named. A complaint asks for help without saying so.
    """
    said = " ".join(text)
    if wants_track:
        return "track request"
    if _corrects(text, said, names_setting):
        return "correction"
    thankful = thanks(text)
    if complains:
        return "help"
    if _questions(text, names_setting):
        return "help"
    if thankful:
        return "thanks"
    return "help" if _begs(text) else "other"


def thanks(text: Sequence[str]) -> bool:
    """Whether a message thanks or praises."""
    if not _THANKS.isdisjoint(text) and "no" not in text[max(0, _first(text, _THANKS) - 1) : _first(text, _THANKS)]:
        return not _in_advance(text)
    said = " ".join(text)
    if any(one in said for one in _WORKED):
        return True
    return any(
        word in _PRAISE
        and text[max(0, at - 1) : at] not in (["felt"], ["feel"], ["feels"], ["was"])
        and not _PRAISED.isdisjoint(text[at + 1 : at + 4])
        and not _asked(text, at)
        for at, word in enumerate(text)
    )


def _first(text: Sequence[str], words: frozenset[str]) -> int:
    return next(at for at, word in enumerate(text) if word in words)


def _in_advance(text: Sequence[str]) -> bool:
    return "in advance" in " ".join(text)


def _asked(text: Sequence[str], at: int) -> bool:
    """As in "what's a good setup", "any good tip"."""
    return not {"what", "any", "which", "a", "is"}.isdisjoint(text[max(0, at - 3) : at])


def _corrects(text: Sequence[str], said: str, names_setting: bool) -> bool:
    written = not _WRITTEN.isdisjoint(text)
    figures = sum(word[0].isdigit() or word in TENS or word == "hundred" for word in text)
    spoken = any(one in said for one in _SAID) or ("video" in text and figures > 1)
    if written and spoken:
        return names_setting or any(word[0].isdigit() for word in text) or not _WRONG.isdisjoint(text)
    if written and "video" in text and not _WRONG.isdisjoint(text):
        return True
    wrong = not _WRONG.isdisjoint(text) and not {"what", "doing"} <= set(text)
    return (written or spoken or "video" in text) and wrong and (names_setting or "match" in text or "typo" in text)


def _questions(text: Sequence[str], names_setting: bool) -> bool:
    """Whether something of the car is asked: a question mark, or a question without one."""
    said = " ".join(text)
    aside = not _ASIDE.isdisjoint(text) or any(one in said for one in ("who else", "anyone else", "anybody else"))
    if aside and _HELP.isdisjoint(text) and not (names_setting or _of_setup(text)):
        return False
    if any(word.startswith("?") or (word[0] in ".!" and "?" in word) for word in text):
        return True
    if not _HELP.isdisjoint(text) and _begs(text):
        return True
    if any(one in said for one in _PUZZLED):
        return True
    return any(_question_at(text, at) for at in range(len(text)))


def _of_setup(text: Sequence[str]) -> bool:
    return not {"setup", "spring", "springs", "wedge", "garage", "loose", "tight", "car"}.isdisjoint(text)


def _question_at(text: Sequence[str], at: int) -> bool:
    word = text[at]
    after = text[at + 1] if at + 1 < len(text) else ""
    begins = at == 0 or text[at - 1][0] in ".,!?;:()-" or text[at - 1] in _BEFORE
    if word in _ASKING:
        if word in {"how", "why"} and (after in _VERBS or not after or begins):
            return after not in {"cool", "nice", "awesome", "great", "good", "ever"}
        if word == "what" and after in {"a", "an"}:
            return text[at + 2 : at + 3] in (["good"], ["decent"], ["safe"], ["reasonable"])
        if word == "what" and after in {"i", "you", "it", "this", "that", "the"} and not begins:
            return False
        if word in {"when", "where", "who"}:
            if word == "where" and begins and after in {"in", "on", "the", "abouts"}:
                return True
            return begins and after in {"do", "does", "should", "can", "is", "are", "to", "would", "will", "could"}
        return (begins and bool(after)) or after in {
            "do",
            "should",
            "would",
            "can",
            "could",
            "to",
            "else",
            "now",
            "does",
        }
    if at == 0 and word in {"is", "are", "does", "do", "can", "should", "could", "will", "would"}:
        return bool(after)
    if not begins or word not in _OPENS:
        return False
    return after in _AFTER_OPEN or (word in {"is", "are", "does"} and after[:1].isdigit())


def _begs(text: Sequence[str]) -> bool:
    """A word for help that is not said of help given ("your tips helped")."""
    places = [at for at, word in enumerate(text) if word in _HELP]
    return any(
        {"your", "the", "for", "this", "that", "bit", "my"}.isdisjoint(text[max(0, at - 1) : at]) for at in places
    )
