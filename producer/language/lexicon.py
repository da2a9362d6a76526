"""The trade's words for movements, effects and parts of a corner, as phrases: common practice, no source.

Each kind is a table phrase -> data. Phrases are written as the words of `tokens` (no hyphens). The longest phrase that
fits at a word wins, whatever its kind, so idioms that would mislead ("all right", "drop a comment", "back end") stand
here too, as plain words.
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.language.effect_words import CURE, FEEL, NEG, PHASE
from producer.language.phrase_tables import each, ways
from producer.language.tokens import listed

CORNER: dict[str, object] = {
    **each("left front|front left|lf|left side front", ("lf",)),
    **each("right front|front right|rf|right side front", ("rf",)),
    **each("left rear|rear left|lr|left side rear", ("lr",)),
    **each("right rear|rear right|rr|right side rear", ("rr",)),
    **each("both fronts|fronts|both front|front pair|across the front|all across the front", ("lf", "rf")),
    **each(
        "both rears|rears|both rear|rear pair|across the rear|across the back|out back|all across the rear|"
        "all across the back",
        ("lr", "rr"),
    ),
    **each("lefts|both lefts|both left sides", ("lf", "lr")),
    **each("rights|both rights|both right sides", ("rf", "rr")),
    **each("all four|all four corners|all the way around|all around|all four of them", ("lf", "rf", "lr", "rr")),
}
AXLE: dict[str, object] = {
    **each("front|up front|front end|in the front|at the front|out front", "front"),
    **each(
        "rear|in back|in the back|at the back|in the rear|at the rear|back there",
        "rear",
    ),
}
SIDE: dict[str, object] = {
    **each("left|left side|left end|l", "left"),
    **each("right|right side|right end|r", "right"),
    **each("both ends|both sides", "both"),
}
SPLIT = each("split|splits|spring split")
# What makes a corner a tyre, a reading or a part of the track and no setting; True: the figures after it are readings.
FOREIGN: dict[str, object] = {
    **each("tire|tires|tyre|tyres|tread|shoulder|wheel|wheels|fender|quarter panel"),
    **each(
        "temp|temps|temperature|temperatures|wear|lap time|lap times|best lap|average|pyrometer|brake temps|"
        "tire temps|"
        "tyre temps|tire wear|tyre wear|tire temperatures|tyre temperatures|percent used|readings|worn|"
        "had worn",
        True,
    ),
}
# Movements. (sign, how): `verb` takes what it moves as object, `as` describes it, `way`: up, down; `much`: more.
MOVE: dict[str, object] = {
    **each(
        "raise|raises|raised|raising|increase|increases|increased|increasing|add|adds|added|adding|bumped|bumping|"
        "stiffen|stiffens|stiffened|stiffening|stiffen up|step up|stepped up|stepping up|widen|widened|crank up|"
        "cranked up|pump up|pumped up|widening|widens|open up|opened up|opening up|opens up|"
        "spread out|spread|beef up|beefed up|"
        "rise|rises|rose|jack up|jacked up|bumping up|up the|upped|upping",
        (1, "verb"),
    ),
    **each("open|opens|opened|opening", (1, "verb")),
    **each("close|closes|closed|closing", (-1, "verb")),
    **each(
        "lower|lowers|lowered|lowering|drop|drops|dropped|dropping|reduce|reduces|reduced|reducing|soften|softens|"
        "softened|softening|soften up|trim|trims|trimmed|trimming|cut|cuts|cutting|decrease|decreases|decreased|"
        "decreasing|back off|backed off|backing off|backs off|knock off|shave|shaved|narrow|narrowed|shrink|close up|"
        "closed up|closing up|narrowing|trim down|trimmed down|bring down|brought down|"
        "shave off|shaved off|dial back|dialed back|dialled back|scale back",
        (-1, "verb"),
    ),
    **each("wider|stiffer|higher|bigger|larger|heavier", (1, "as")),
    **each("narrower|softer|smaller|lighter", (-1, "as")),
    **each("up|back up", (1, "way")),
    **each("down|back down", (-1, "way")),
    **each("more|extra|additional", (1, "much")),
    **each("less|fewer", (-1, "much")),
}
TAKE = each("take|takes|took|taken|taking|pull|pulls|pulled|pulling|let|lets|letting|bleed|bled|backs|backed|backing")
OUT = each("out|out of|away|off of|off")
PUT = each("put|puts|putting|throw|threw|stuck|stick|give|gave")
IN = each("in|into|back in|back into")
SHIFT = each("move|moves|moved|moving|shift|shifts|shifted|shifting")
BACK: dict[str, object] = {
    **each("back|rearward|rearwards|to the rear", -1),
    **each("forward|forwards|to the front", 1),
}
TO = each("to|until|->|=>|→")
FROM = each("from")
AT = each("at|is|'s|are|'re|'m at|run|running|ran|runs|have|having|has|be|=|with|got|on|set")
BY = each("by|another")
THAN = each("than|compared to|compared with|as against|versus|vs")
COMPARED = each("instead of|rather than|not the|in place of|as opposed to|over the")
CORRECT = each(
    "sorry|actually no|no actually|well no|"
    "no wait|wait|i mean|make that|scratch that|or rather|no sorry|excuse me|correction|let me correct that"
)
_WHOSE = ways("for", "those|those of you|anyone|anybody|everyone|you guys|guys|people|folks|drivers|you", "who|that")
IF = _WHOSE | each(
    "if|when|whenever|in case|once|should it|as soon as|anytime|any time|let's say|lets say|say it|say you|"
    "say the car|"
    "say your car|suppose|supposing|assuming|for a car that|with a car that|on a car that|should the car|"
    "should yours|"
    "should your car|should the rear|should the front|for cars that|if ever|in the case that|for when|every time|"
    "each time|the moment|any day|on nights when|on days when"
)
SEP = each(
    ",|;|:|(|)|–|—|-|/|and|but|so|which|because|then|while|though|although|since|or|plus|whereas|unless|"
    "okay|so that|and then|where|~|no change|no changes|unchanged"
)
WOULD = each("would|could|might|may|should|can|want|wanted|i'd|you'd|'d|try|'ll|will|going to|gonna|maybe|perhaps")
PAST = each(
    "tried|used to|was|were|had|started|began|before|previously|originally|yesterday|earlier|"
    "at first|usually|usual|normally|until now|last time|last week|last year"
)
SOMEONE = each(
    "he|they|his|their|the leader|you guys|somebody|someone|everybody|people|teammate|"
    "some of you|most of you|many of you|others|other people|folks|the fast guys|anybody|anyone|everyone"
)
PRONOUN = each("it|she|this|that|them|these|those|both|mine|everything")
# Idioms in which a word above means something else.
PLAIN = each(
    "all right|right now|right there|right here|right away|right by|right side up|right behind|on the right track|"
    "if you want|if you want to|if you like|if you'd like|if you can|if anything|if need be|if possible|"
    "if you have to|if you prefer|drop a comment|drop a like|drop me|dropped two|back end|the back end|rear end|"
    "what's left|is left|left over|nothing left|turn left|turns left|turn right|left alone|"
    "split this|split it|split them|split the difference|tight race|really tight race|tight pack|tight schedule|"
    "no pressure|under pressure|pressure is on|up to you|up to speed|coming up next|coming up in|end up|ends up|"
    "ended "
    "up|set up|sets up|pick up|picked up|picks up|show up|shows up|showed up|give up|gives up|keep up|wake up|"
    "wakes up|"
    "down below|down the straight|down the line|down the road|up the track|up the banking|up the hill|drop off|"
    "drops off|dropped off|falls off|sit down|slow down|slows down|"
    "hold on|hang on|push through|pushing through|push it|pushing hard|push hard|pushing too hard|free speed|"
    "feel free|for free|crossed the|crosses the|i got|i've got|we've got|you've got|we got|you got|"
    "got to|have to|has to|get to|get back|get it|cut to|back straight|backstretch|"
    "right rear of the field|more or less|once again|at once|add up|adds up|"
    "of the two|the two|these two|those two|one of|the other two|both of you|two of you|"
    "catch up|more than once|at least|at most|at the end|at the start|at all"
)

FILLERS = listed("um uh er erm uhh umm ah hmm mm")
GLUE = listed("of the my on in at for that your our this these a their its")

TABLES: tuple[tuple[str, dict[str, object]], ...] = (
    ("word", PLAIN), ("corner", CORNER), ("axle", AXLE), ("side", SIDE), ("split", SPLIT), ("foreign", FOREIGN),
    ("move", MOVE), ("take", TAKE), ("out", OUT), ("put", PUT), ("in", IN), ("shift", SHIFT), ("back", BACK),
    ("to", TO), ("from", FROM), ("at", AT), ("by", BY), ("than", THAN), ("compared", COMPARED), ("correct", CORRECT),
    ("feel", FEEL), ("phase", PHASE), ("neg", NEG), ("cure", CURE), ("if", IF), ("sep", SEP),
    ("would", WOULD), ("past", PAST), ("someone", SOMEONE), ("pronoun", PRONOUN),
)  # fmt: skip


def phrases() -> Iterator[tuple[tuple[str, ...], str, object]]:
    """Every phrase as its words, with its kind and data; of one phrase in two tables the first kind counts."""
    seen: set[str] = set()
    for kind, table in TABLES:
        for phrase, data in table.items():
            if phrase not in seen:
                seen.add(phrase)
                yield tuple(phrase.split()), kind, data
