"""The trade's words for movements, effects and parts of a corner, as phrases: common practice, no source.

Each kind is a table phrase -> data. Phrases are written as the words of `tokens` (no hyphens). The longest phrase that
fits at a word wins, whatever its kind, so idioms that would mislead ("all right", "drop a comment", "back end") stand
here too, as plain words.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from producer.language.tokens import listed


def _each(text: str, data: object = None) -> dict[str, object]:
    """Phrases divided by `|`, all with the same data."""
    return {phrase.strip(): data for phrase in text.replace("\n", " ").split("|") if phrase.strip()}


def _all(*parts: str, data: object = None) -> dict[str, object]:
    """Every way through several tables of `|`; an empty part may be left out."""
    ways = product(*(part.split("|") for part in parts))
    return {" ".join(one for one in way if one): data for way in ways}


CORNER: dict[str, object] = {
    **_each("left front|front left|lf|left side front", ("lf",)),
    **_each("right front|front right|rf|right side front", ("rf",)),
    **_each("left rear|rear left|lr|left side rear", ("lr",)),
    **_each("right rear|rear right|rr|right side rear", ("rr",)),
    **_each("both fronts|fronts|both front|front pair", ("lf", "rf")),
    **_each("both rears|rears|both rear|rear pair", ("lr", "rr")),
    **_each("all four|all four corners", ("lf", "rf", "lr", "rr")),
}
AXLE: dict[str, object] = {
    **_each("front|up front|across the front|front end|in the front|at the front|out front", "front"),
    **_each(
        "rear|out back|across the back|across the rear|in back|in the back|at the back|in the rear|at the rear|"
        "back there",
        "rear",
    ),
}
SIDE: dict[str, object] = {
    **_each("left|left side|left end|l", "left"),
    **_each("right|right side|right end|r", "right"),
}
SPLIT = _each("split|splits|spring split")
# What makes a corner a tyre, a reading or a part of the track and no setting; True: the figures after it are readings.
FOREIGN: dict[str, object] = {
    **_each("tire|tires|tyre|tyres|tread|shoulder|wheel|wheels|fender|quarter panel"),
    **_each(
        "temp|temps|temperature|temperatures|wear|lap time|lap times|best lap|average|pyrometer|brake temps|"
        "tire temps|"
        "tyre temps|tire wear|tyre wear|tire temperatures|tyre temperatures|percent used|readings|worn|"
        "had worn",
        True,
    ),
}
# Movements. (sign, how): `verb` takes what it moves as object, `as` describes it, `way`: up, down; `much`: more.
MOVE: dict[str, object] = {
    **_each(
        "raise|raises|raised|raising|increase|increases|increased|increasing|add|adds|added|adding|bumped|bumping|"
        "stiffen|stiffens|stiffened|stiffening|stiffen up|step up|stepped up|stepping up|widen|widened|crank up|"
        "cranked up|pump up|pumped up|widening|widens|open up|opened up|opening up|opens up|"
        "spread out|spread|beef up|beefed up|"
        "jack up|jacked up|bumping up|up the|upped|upping",
        (1, "verb"),
    ),
    **_each(
        "lower|lowers|lowered|lowering|drop|drops|dropped|dropping|reduce|reduces|reduced|reducing|soften|softens|"
        "softened|softening|soften up|trim|trims|trimmed|trimming|cut|cuts|cutting|decrease|decreases|decreased|"
        "decreasing|back off|backed off|backing off|backs off|knock off|shave|shaved|narrow|narrowed|shrink|close up|"
        "closed up|closing up|narrowing|trim down|trimmed down|bring down|brought down|"
        "shave off|shaved off|dial back|dialed back|dialled back|scale back",
        (-1, "verb"),
    ),
    **_each("stiffer|higher|bigger|larger|heavier", (1, "as")),
    **_each("softer|smaller|lighter", (-1, "as")),
    **_each("up|back up", (1, "way")),
    **_each("down|back down", (-1, "way")),
    **_each("more|extra|additional", (1, "much")),
    **_each("less|fewer", (-1, "much")),
}
TAKE = _each("take|takes|took|taken|taking|pull|pulls|pulled|pulling|let|lets|letting|bleed|bled")
OUT = _each("out|out of|away|off of|off")
PUT = _each("put|puts|putting|throw|threw|stuck|stick|give|gave")
IN = _each("in|into|back in|back into")
SHIFT = _each("move|moves|moved|moving|shift|shifts|shifted|shifting")
BACK: dict[str, object] = {
    **_each("back|rearward|rearwards|to the rear", -1),
    **_each("forward|forwards|to the front", 1),
}
TO = _each("to|until|->|=>|→")
FROM = _each("from")
AT = _each("at|is|'s|are|'re|'m at|run|running|ran|runs|have|having|has|be|=|with|got|on|set")
BY = _each("by|another")
THAN = _each("than|compared to|compared with|as against|versus|vs")
COMPARED = _each("instead of|rather than|not the|in place of|as opposed to|over the")
CORRECT = _each(
    "sorry|no wait|wait|i mean|make that|scratch that|or rather|no sorry|excuse me|correction|let me correct that"
)
# Effects. (polarity, kind, part of the corner if said): +1 tighter, -1 looser; a `state` is a complaint, a `change` is
# an effect as it is said, a `refusal` is either.
_HOLDING = "keeps|keep|kept|keeping|holds|hold|held|holding"
_CALMING = (
    "plants|plant|planted|planting|settles|settle|settled|settling|calms|calm|calmed|calming|pins|secures|secured"
)
_REAR_END = "rear|back|tail|rear end|back end|butt|rear tires|rear tyres"
_NOSE = "nose|front|front end|front tires|front tyres"
FEEL: dict[str, object] = {
    **_all(
        _HOLDING,
        "the|my",
        _REAR_END,
        "under me|under you|planted|in line|down|behind me|stuck|on the ground|in check|"
        "put|straight|stable|settled|hooked up|in place|calm|under control|under the car|glued|still",
        data=(1, "change"),
    ),
    **_all(
        _HOLDING,
        "it|the car",
        "planted|in line|stuck|stable|settled|calm|under control|straight|hooked up|tied down",
        data=(1, "change"),
    ),
    **_all(
        _CALMING + "|ties down|tied down|stabilizes|stabilises|hooks up|glues|steadies|steadied|tightens|tightened|"
        "tames|tamed",
        "the|my",
        _REAR_END,
        "|down|up",
        data=(1, "change"),
    ),
    **_all(
        "helps|help|helped|gets|get|got|lets|let|makes|make|made",
        "the|my",
        _NOSE,
        "turn|rotate|bite|stick|turn better|point|dig|work|work better|grip|bite better|cut",
        data=(-1, "change"),
    ),
    **_all(
        "helps|help|helped|gets|get|got|lets|let|makes|make|made",
        "the|my",
        _NOSE,
        "turn in",
        data=(-1, "change", "entry"),
    ),
    **_all(
        "helps|help|helped|gets|get|got|lets|let|makes|make|made",
        "it|the car|the thing|this thing|this car|her",
        "rotate|turn|to rotate|to turn|point|rotate better|come around better|cut",
        data=(-1, "change"),
    ),
    **_all(
        "more|extra|additional",
        "rear grip|rear bite|stability|security|side bite|rear traction|drive off|forward bite",
        data=(1, "change"),
    ),
    **_all("more|extra|additional", "front grip|front bite|turn|front end", data=(-1, "change")),
    **_all(
        "takes|took|take|taking",
        "the",
        "edge|wiggle|snap|looseness|twitch|nervousness",
        "off|out of it|out|away",
        data=(1, "change"),
    ),
    **_all(
        "takes|took|take|taking",
        "the",
        "push|tight|tightness|understeer",
        "out of it|out|away|off",
        data=(-1, "change"),
    ),
    **_all(
        "stays|stay|stayed|staying|sits|sat",
        "planted|put|under me|under you|in line|stuck|stable|behind me|underneath me|"
        "straight|calm|hooked up|under control|with me",
        data=(1, "change"),
    ),
    **_all("settles|settle|settled|calms|calmed|calm", "down|it down|it|the car|the car down", data=(1, "change")),
    **_each(
        "hooks up better|hook up better|hooks up|sticks better|stick better|drives off better|drives off harder|"
        "drives off straight|better forward bite|puts the power down better|put the power down better|"
        "ties the rear down|gives it more bite off",
        (1, "change"),
    ),
    **_each(
        "gets to the bottom|get to the bottom|gets down to the bottom|holds the bottom|hold the bottom|"
        "stays on the bottom|gets around the corner better|gets through the middle better",
        (-1, "change"),
    ),
    **_each("too loose|way too loose|too free", (-1, "state")),
    **_each("too tight|way too tight", (1, "state")),
    **_each(
        "tighter|tightens|tighten|tightened|tightening|tightens up|tightens it up|tighten it up|tightened it up|"
        "tightens the car up|tighten up|tightens it|more stable|more secure|more planted|stabilizes|stabilises|"
        "stabilize|stabilise|stabilized|stabilised|stabilizing|stabilising|plants the rear|plants the back|"
        "plants the tail|plant the rear|planted the rear|plants the rear end|planting the rear|calmer|"
        "calms it|calms the|calms|steadier|steadies|settles the rear|settles the back|keeps the rear under|"
        "more understeer|more push|pins the rear",
        (1, "change"),
    ),
    **_each(
        "looser|loosens|loosen|loosened|loosening|loosens up|loosens it up|loosen it up|loosened it up|"
        "loosens the car up|loosens it|frees up|free up|freed up|frees it up|free it up|freed it up|frees the car up|"
        "frees the car|frees it|frees|freer|freeing|rotates|rotate|rotated|rotating|rotates better|rotate better|"
        "more rotation|turns better|turn better|turned better|helps it turn|"
        "help it turn|helps the car turn|help the car turn|helps turn|helped it turn|helps it rotate|"
        "helps the car rotate|turns more|more oversteer|"
        "gets it to turn|lets it turn|lets the car turn|makes it turn|makes the car turn|bites",
        (-1, "change"),
    ),
    **_each(
        "helps it turn in|help it turn in|helps the car turn in|turns in freely|turns in better|turn in better|"
        "helps turn in|turns in quicker|turns in sooner",
        (-1, "change", "entry"),
    ),
    **_each(
        "tight|push|pushes|pushing|pushed|pushy|plow|plows|plowing|plowed|plough|ploughs|understeer|understeers|"
        "understeering|wash out|washes out|washing out|washes wide|wash wide|washing wide|wash up|"
        "washes up|washing up|drift up|drifts up|drifting up|run wide|runs wide|running wide|slide up the track|"
        "slides up the track|sliding up the track|go straight|goes straight|going straight|tightness|tight condition|"
        "shove|shoves|shoving|skate|skates|skating|walk up the track|walks up the track|bound up|"
        "understeery|pushy feeling|tight feeling",
        (1, "state"),
    ),
    **_all(
        "not|isn't|won't|doesn't|wouldn't|doesn't want to|won't want to|refuses to|never wants to",
        "turn in|turning in",
        data=(1, "refusal", "entry"),
    ),
    **_all("not|isn't", "turning|rotating|biting", data=(1, "refusal")),
    **_each(
        "won't bite|doesn't bite|won't cut|doesn't cut|won't turn|doesn't turn|wouldn't turn|didn't turn|"
        "refuses to turn|won't point",
        (1, "refusal"),
    ),
    **_each(
        "loose|snappy|step out|steps out|stepping out|stepped out|breaking away|breaks away|break away|broke away|"
        "breaking loose|breaks loose|break loose|broke loose|oversteer|oversteers|oversteering|come around|"
        "comes around|coming around|came around|spin|spins|spinning|wiggle|wiggles|wiggling|snap|snaps|snapping|"
        "snap loose|snaps loose|twitchy|nervous|swap ends|swaps ends|slide out|slides out|sliding out|"
        "free|edgy|darty|skittish|squirrelly|squirrely|fishtail|fishtails|fishtailing|sideways|"
        "get sideways|gets sideways|"
        "getting sideways|got sideways|go sideways|goes sideways|looseness|loose condition|spin out|spins out|"
        "spinning out|spun out|swapping ends|hang out|hangs out|hanging out|kick out|kicks out|kicking out|swing out|"
        "swings out|swinging out|light up the rear tires|lights up the rear tires|lighting up the rear tires|"
        "light up the tires|lights up the tires|spin the tires|spins the tires|spin the tyres|spins the tyres|"
        "spinning the tires|spinning the tyres|spin the rears|wheel spin|wheelspin|unstable|too much rotation|"
        "over rotate|over rotates|over rotating|coming round|comes round|come round|tail happy|let go|lets go|"
        "letting go|jump out|jumps out|jumping out|get away from me|gets away from me|snap around|snaps around|"
        "break traction|breaks traction|breaking traction|lose the rear|loses the rear|losing the rear",
        (-1, "state"),
    ),
}
_ENTRY = (
    "entry|entries|on entry|going in|getting in|goes in|go in|on the way in|way in|turn in|turning in|turns in|"
    "coming "
    "in|into the corner|into the turn|off the gas|off the throttle|off throttle|under braking|on the brakes|"
    "on the brake|while braking|braking|corner entry|when you lift|when i lift|lift off|off gas|in on entry|"
    "on the way into the corner|lifting off|trail braking|on turn in|diving in|dives in|dive in|driving in|drives in|"
    "drive in|rolling in|entering|enters|entering the corner|corner entrance|off power|when you brake|when i brake|"
    "getting into the corner|going into the corner|coming into the corner|"
    "initial turn in|on the entrance|hitting the brakes|get into the corner|gets in|get in|gets into the corner"
)
_MIDDLE = (
    "middle|center|centre|mid corner|midcorner|mid turn|apex|in the middle|through the middle|through the center|"
    "through the centre|in the center|in the centre|at the apex|middle of the corner|center of the corner|"
    "centre of the corner|mid|across the middle|at the bottom|midway through the corner|through the apex|"
    "around the apex|"
    "middle of the turn|mid turn|through the corner|"
    "rolling through the center|rolling through the middle|in the corner"
)
_EXIT = (
    "exit|exits|on exit|off the corner|off of the corner|off the turn|off of the turn|off corner|coming off|"
    "comes off|"
    "come off|came off|on the gas|on the throttle|on throttle|under throttle|under power|to the gas|to the throttle|"
    "back to the gas|back to the throttle|on the way out|way out|drive off|driving off|drives off|off turn two|"
    "off turn four|off of two|off of four|corner exit|picking up the throttle|pick up the throttle|in the gas|"
    "getting off|back in the gas|back on the gas|back on the throttle|into the throttle|out of the corner|"
    "when you pick up the gas|picking up the gas|pick up the gas|"
    "under acceleration|on power|with throttle|up off the corner|"
    "off of there|out of there|coming off of there|off the bottom|leaving the corner|back to power|"
    "back on power|applying throttle|squeezing the throttle|"
    "when you get to the gas|rolling into the throttle|roll into the throttle|roll into the gas|driving out|"
    "coming out|"
    "comes out of the corner|coming out of the corner|exiting|"
    "coming off the corner|come off the corner|comes off the corner|coming off of the corner|getting off the corner"
)
PHASE: dict[str, object] = {
    **_each(_ENTRY, "entry"),
    **_each("come off the gas|coming off the gas|comes off the gas|came off the gas|get off the gas|"
            "come off the throttle|coming off the throttle|come out of the gas|out of the gas", "entry"),
    **_each(_MIDDLE, "middle"),
    **_each(_EXIT, "exit"),
}  # fmt: skip
NEG = _each(
    "not|never|won't|doesn't|don't|didn't|isn't|wasn't|can't|couldn't|wouldn't|no|without|nor|hasn't|haven't|aren't|"
    "no longer|not as|not nearly as|nowhere near as|hardly|no more|isn't as|less likely to|neither"
)
CURE = _each(
    "cure|cures|cured|curing|fix|fixes|fixed|fixing|keeps it from|keep it from|kept it from|keeps|stop|stops|"
    "stopped|stopping|prevents|prevent|prevented|preventing|gets rid of|get rid of|got rid of|takes away|"
    "took away|takes care of|took care of|takes out the|removes|kills|killed|eliminates|tames|helps with|"
    "eliminate|eliminated|eliminating|remove|removed|removing|tame|tamed|taming|erase|erases|erased|solve|solves|"
    "solved|solving|lessen|lessens|lessened|minimize|minimizes|minimized|minimise|minimises|minimised|clear up|"
    "clears up|cleared up|dial out|dials out|dialed out|dialled out|tune out|tunes out|tuned out|keep from|"
    "keeps me from|keep me from|kept me from|keeps you from|keep you from|keeps that from|does away with|"
    "did away with|helped with|help with|helping with|helps the tight|helped the push|ease|easing|cut down on|"
    "cuts down on|dealt with|deals with|take care of|taking care of|kill|killing|getting rid of|avoid|avoids|"
    "avoided|prevented|combat|combats|calms down the|knocks out the|knocked out the|knocks the|"
    "quit|quits|quitting|stops it from|stopped it from|gets it to quit|ends|ended|"
    "helps the push|goes away|go away|went away|gone|is gone|disappears|disappeared|"
    "eases|eased|keep the|against|answers|answer for"
)
# Before a complaint these say that the setting brings it on.
CAUSES = listed("make makes made making gets got getting becomes become became turns turned too gives")
IF = _each(
    "if|when|whenever|in case|once|should it|as soon as|anytime|any time|let's say|lets say|say it|say you|"
    "say the car|"
    "say your car|suppose|supposing|assuming|for a car that|with a car that|on a car that|should the car|"
    "should yours|"
    "should your car|should the rear|should the front|for cars that|if ever|in the case that|for when|every time|"
    "each time|the moment|any day|on nights when|on days when"
)
SEP = _each(
    ",|;|:|(|)|–|—|-|/|and|but|so|which|because|then|while|though|although|since|or|plus|whereas|unless|"
    "okay|so that|and then|where|~|no change|no changes|unchanged"
)
WOULD = _each("would|could|might|may|should|can|want|wanted|i'd|you'd|'d|try|'ll|will|going to|gonna|maybe|perhaps")
PAST = _each(
    "tried|used to|was|were|had|started|began|before|previously|originally|yesterday|earlier|"
    "at first|usually|usual|normally|until now|last time|last week|last year"
)
SOMEONE = _each(
    "he|they|his|their|the leader|you guys|somebody|someone|everybody|people|teammate|"
    "some of you|most of you|many of you|others|other people|folks|the fast guys|anybody|anyone|everyone"
)
PRONOUN = _each("it|she|this|that|them|these|those|both|mine|everything")
# Idioms in which a word above means something else.
PLAIN = _each(
    "all right|right now|right there|right here|right away|right by|right side up|right behind|on the right track|"
    "drop a comment|drop a like|drop me|dropped two|back end|the back end|rear end|"
    "what's left|is left|left over|left to|nothing left|turn left|turns left|turn right|left alone|"
    "split this|split it|split them|split the difference|tight race|really tight race|tight pack|tight schedule|"
    "no pressure|under pressure|pressure is on|up to you|up to speed|coming up next|coming up in|end up|ends up|"
    "ended "
    "up|set up|sets up|pick up|picked up|picks up|show up|shows up|showed up|give up|gives up|keep up|wake up|"
    "wakes up|"
    "down below|down the straight|down the line|down the road|up the track|up the banking|up the hill|drop off|"
    "drops off|dropped off|falls off|sit down|slow down|slows down|"
    "hold on|hang on|push through|pushing through|push it|pushing hard|push hard|pushing too hard|free speed|"
    "feel free|for free|cross the|crossed the|crosses the|i got|i've got|we've got|you've got|we got|you got|"
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
