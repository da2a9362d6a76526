"""What a car does, in the trade's words: effects, parts of the corner, denials, remedies.

Common practice, no source.
"""

from __future__ import annotations

from producer.language.behaviour import inflected
from producer.language.phrase_tables import each, ways
from producer.language.tokens import listed

# Effects. (polarity, kind, part of the corner if said): +1 tighter, -1 looser; a `state` is a complaint, a `change` is
# an effect as it is said, a `refusal` is either, a `quality` is what a car has or lacks and no remedy is against it.
_HOLDING = "keeps|keep|kept|keeping|holds|hold|held|holding"
_CALMING = (
    "plants|plant|planted|planting|settles|settle|settled|settling|calms|calm|calmed|calming|pins|secures|secured"
)
_REAR_END = "rear|back|tail|rear end|back end|butt|rear tires|rear tyres"
_NOSE = "nose|front|front end|front tires|front tyres"
_OVERMUCH = "much|freely|quick|quickly|fast|easily|well|easy|far"
_WITH_TIRES = (
    "light|lights|lighting|lit|spin|spins|spinning|burn|burns|burning|smoke|smokes|smoking|blow|blows|blowing|"
    "break|breaks|breaking"
)
FEEL: dict[str, object] = {
    **ways(
        _HOLDING,
        "the|my",
        _REAR_END,
        "under me|under you|planted|in line|down|behind me|stuck|on the ground|in check|"
        "put|straight|stable|settled|hooked up|in place|calm|under control|under the car|glued|still",
        data=(1, "change"),
    ),
    **ways(
        _HOLDING,
        "it|the car",
        "planted|in line|stuck|stable|settled|calm|under control|straight|hooked up|tied down",
        data=(1, "change"),
    ),
    **ways(
        _CALMING + "|ties down|tied down|stabilizes|stabilises|hooks up|glues|steadies|steadied|tightens|tightened|"
        "tames|tamed",
        "the|my",
        _REAR_END,
        "|down|up",
        data=(1, "change"),
    ),
    **ways(
        "helps|help|helped|gets|get|got|lets|let|makes|make|made",
        "the|my",
        _NOSE,
        "turn|rotate|bite|stick|turn better|point|dig|work|work better|grip|bite better|cut",
        data=(-1, "change"),
    ),
    **ways(
        "helps|help|helped|gets|get|got|lets|let|makes|make|made",
        "the|my",
        _NOSE,
        "turn in",
        data=(-1, "change", "entry"),
    ),
    **ways(
        "helps|help|helped|gets|get|got|lets|let|makes|make|made",
        "it|the car|the thing|this thing|this car|her",
        "rotate|turn|to rotate|to turn|point|rotate better|come around better|cut",
        data=(-1, "change"),
    ),
    **ways(
        "more|extra|additional",
        "rear grip|rear bite|stability|security|side bite|rear traction|drive off|forward bite",
        data=(1, "change"),
    ),
    **ways("more|extra|additional", "front grip|front bite|turn|front end", data=(-1, "change")),
    **ways(
        "takes|took|take|taking",
        "the",
        "edge|wiggle|snap|looseness|twitch|nervousness",
        "off|out of it|out|away",
        data=(1, "change"),
    ),
    **ways(
        "takes|took|take|taking",
        "the",
        "push|tight|tightness|understeer",
        "out of it|out|away|off",
        data=(-1, "change"),
    ),
    **ways(
        "stays|stay|stayed|staying|sits|sat",
        "planted|put|under me|under you|in line|stuck|stable|behind me|underneath me|"
        "straight|calm|hooked up|under control|with me",
        data=(1, "change"),
    ),
    **ways("settles|settle|settled|calms|calmed|calm", "down|it down|it|the car|the car down", data=(1, "change")),
    **each(
        "hooks up better|hook up better|hooks up|hook up|hook up as good|hook up as well|sticks better|"
        "stick better|drives off better|drives off harder|"
        "drives off straight|better forward bite|puts the power down better|put the power down better|"
        "ties the rear down|gives it more bite off",
        (1, "change"),
    ),
    **each(
        "gets to the bottom|get to the bottom|gets down to the bottom|holds the bottom|hold the bottom|"
        "stays on the bottom|gets around the corner better|gets through the middle better",
        (-1, "change"),
    ),
    **each(
        "stable|planted|secure|steady|calm|settled|hooked up|tied down|under control|composed|sure footed|"
        "buttoned down|well behaved|stability|rear grip|rear bite|side bite",
        (1, "quality"),
    ),
    **each("front grip|front bite", (-1, "quality")),
    **each(
        "snappier|twitchier|edgier|squirrelier|dartier|jumpier|more nervous|more loose|more free|sooner to rotate|"
        "freer|easier to turn|easier to rotate",
        (-1, "change"),
    ),
    **each(
        "pushier|lazier|more tight|harder to turn|harder to rotate|easier to put the power down|"
        "put the power down|puts the power down|get the power down|gets the power down|easier to drive off",
        (1, "change"),
    ),
    **ways(_WITH_TIRES, "|up|off", "the|the rear|my|my rear|those", "tires|tyres|rears", data=(-1, "state")),
    **ways(_WITH_TIRES, "the|the rear|my|my rear|those", "tires|tyres|rears", "up|loose|free", data=(-1, "state")),
    **ways("blow|blows|blowing", "the|the rear", "tires|tyres", "off|off it", data=(-1, "state")),
    **ways("turn|turns|turning|rotate|rotates|rotating|pivots", "|around", "too", _OVERMUCH, data=(-1, "state")),
    **ways("turn|turns|turning", "in", "too", _OVERMUCH, data=(-1, "state", "entry")),
    **each("too loose|way too loose|too free", (-1, "state")),
    **each("too tight|way too tight", (1, "state")),
    **each(
        "tighter|tightens|tighten|tightened|tightening|tightens up|tightens it up|tighten it up|tightened it up|"
        "tightens the car up|tighten up|tightens it|more stable|more secure|more planted|stabilizes|stabilises|"
        "stabilize|stabilise|stabilized|stabilised|stabilizing|stabilising|plants the rear|plants the back|"
        "plants the tail|plant the rear|planted the rear|plants the rear end|planting the rear|calmer|"
        "calms it|calms the|calms|steadier|steadies|settles the rear|settles the back|keeps the rear under|"
        "more understeer|more push|pins the rear",
        (1, "change"),
    ),
    **each(
        "looser|loosens|loosen|loosened|loosening|loosens up|loosens it up|loosen it up|loosened it up|"
        "loosens the car up|loosens it|frees up|free up|freed up|frees it up|free it up|freed it up|frees the car up|"
        "frees the car|frees it|frees|freer|freeing|rotates|rotate|rotated|rotating|rotates better|rotate better|"
        "more rotation|turns better|turn better|turned better|helps it turn|"
        "help it turn|helps the car turn|help the car turn|helps turn|helped it turn|helps it rotate|"
        "helps the car rotate|turns more|more oversteer|"
        "gets it to turn|lets it turn|lets the car turn|makes it turn|makes the car turn|bites",
        (-1, "change"),
    ),
    **each(
        "helps it turn in|help it turn in|helps the car turn in|turns in freely|turns in better|turn in better|"
        "helps turn in|turns in quicker|turns in sooner",
        (-1, "change", "entry"),
    ),
    **each(
        "tight|snug|push|pushes|pushing|pushed|pushy|plow|plows|plowing|plowed|plough|ploughs|understeer|understeers|"
        "understeering|wash out|washes out|washing out|washes wide|wash wide|washing wide|wash up|"
        "washes up|washing up|drift up|drifts up|drifting up|run wide|runs wide|running wide|slide up the track|"
        "slides up the track|sliding up the track|go straight|goes straight|going straight|tightness|tight condition|"
        "shove|shoves|shoving|walk up the track|walks up the track|bound up|"
        "understeery|pushy feeling|tight feeling|lazy|stubborn|sluggish|numb nose|wash|washes|washing|"
        "push up the track|"
        "pushes up the track|pushing up the track|climb the track|climbs the track|climbing the track",
        (1, "state"),
    ),
    **ways(
        "not|isn't|won't|doesn't|wouldn't|doesn't want to|won't want to|refuses to|never wants to",
        "turn in|turning in",
        data=(1, "refusal", "entry"),
    ),
    **ways("not|isn't", "turning|rotating|biting", data=(1, "refusal")),
    **each(
        "won't bite|doesn't bite|won't cut|doesn't cut|won't turn|doesn't turn|wouldn't turn|didn't turn|"
        "refuses to turn|won't point",
        (1, "refusal"),
    ),
    **each(
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
        "dart|darts|darting|darts around|darting around|hairy|scary|all over the place|all over the road|"
        "all over the track|out of control|bite me|bites me|bit me|bite you|bites you|twitch|twitches|twitching|"
        "jumpy|flighty|out of shape|"
        "bobble|bobbles|gets out from under me|move around|"
        "moves around|moving around|moved around|rear steer|light up the rears|lights up the rears|"
        "lighting up the rears|lighting up the tires|lighting up the tyres|light in the rear|light in the back|"
        "sliding around|slides around|slide around|step out on me|break traction|breaks traction|breaking traction|"
        "lose the rear|loses the rear|losing the rear|lost the rear",
        (-1, "state"),
    ),
}
_ENTRY = (
    "entry|entries|on entry|going in|getting in|goes in|go in|on the way in|way in|turn in|turning in|turns in|"
    "coming "
    "in|into the corner|into the turn|off the gas|off the throttle|off throttle|under braking|on brakes|on the brakes|"
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
_PEDAL = "gas|throttle|power|pedal"
_ONTO = "on|to|in|into|onto|back on|back to|back in|back into|back onto"
PHASE: dict[str, object] = {
    **ways(
        "get|gets|getting|got|go|goes|going|went|step|stepping|roll|rolls|rolling|squeeze|squeezing|ease|easing|hop|"
        "jump|jumping|stand|standing|come|coming|am|'m|are|'re",
        _ONTO,
        "the",
        _PEDAL,
        data="exit",
    ),
    **ways("pick|picks|picking|picked", "the|your|my", _PEDAL, "back up|up", data="exit"),
    **ways("pick|picks|picking|picked", "up|back up", "the|your|my", _PEDAL, data="exit"),
    **ways("feed|feeding|apply|applying|squeeze|squeezing|hit|hitting|touch|touching|mash|mashing|crack|cracking",
           "|in|on", "the", _PEDAL, data="exit"),
    **ways("let|letting|come|comes|coming|get|gets|getting|roll|rolling|breathe|breathing|lift|lifting|step",
           "off|out of|off of", "the", _PEDAL, data="entry"),
    **ways("i|you|we|he", "lift|brake", data="entry"),
    **ways("turn|turns|turning|bend|throw|set", "it|the car", "in|into", data="entry"),
    **ways("hit|hits|hitting|touch|touched|touching|squeeze|squeezing|stab|tap|tapped|press|mash", "the|my",
           "brakes|brake|brake pedal", data="entry"),
    **ways("get|gets|getting|got|step|stepping|go|going|stand|standing|hard", "on|to|into", "the", "brakes|brake",
           data="entry"),
    **each(_ENTRY, "entry"),
    **each("came off the gas|out of the gas|out of the throttle", "entry"),
    **each(_MIDDLE, "middle"),
    **each(_EXIT, "exit"),
}  # fmt: skip
NEG = each(
    "not|never|won't|doesn't|don't|didn't|isn't|wasn't|can't|couldn't|wouldn't|no|without|nor|hasn't|haven't|aren't|"
    "no longer|not as|not nearly as|nowhere near as|nowhere near|hardly|barely|cannot|ain't|weren't|no more|isn't as|"
    "neither|far from|free of|shy of"
    "|harder to|harder for|tougher to|tougher for|reluctant to|hesitant to|unwilling to"
    "|less likely to|less prone to|less inclined to|less willing to|less eager to|less apt to"
)
# Verbs of remedy, in every form.
_REMEDIES = inflected(
    "cure fix stop prevent eliminate remove kill tame erase solve lessen minimize minimise ease avoid combat "
    "counter curb limit address squash resolve diminish dampen correct quit weaken cancel neutralize neutralise "
    "heal"
)
# Verbs with a word of their own: "dials out the push".
_REMEDY_PHRASES = (
    ("clear|clears|cleared|clearing", "up"),
    ("dial|dials|dialed|dialled|dialing|tune|tunes|tuned|tuning|work|works|worked|knock|knocks|knocked|iron|"
     "irons|ironed", "out|out the|out that"),
    ("get|gets|got|getting", "rid of"),
    ("take|takes|took|taking", "away|care of|out the|out that|away the"),
    ("do|does|did|doing", "away with"),
    ("deal|deals|dealt|dealing", "with"),
    ("cut|cuts|cutting", "down on"),
    ("keep|keeps|kept|keeping|stop|stops|stopped|stopping|hold|holds|held|prevent|prevents|prevented", "it|me|you|that|"
     "her|us", "from"),
    ("lose|loses|lost|losing", "the|that|its|my"),
    ("wipe|wipes|wiped", "out"),
    ("calm|calms|calmed|knock|knocks|knocked", "down the|the|out the"),
)  # fmt: skip
CURE: dict[str, object] = {
    **dict.fromkeys(sorted(_REMEDIES)),
    **{phrase: None for parts in _REMEDY_PHRASES for phrase in ways(*parts)},
    **each("ends|ended|ending"),
    **ways("goes|went|go", "right|all|completely|totally", "away"),
    **each(
        "keep from|helps the tight|helped the push|helps the push|gets it to quit|goes away|go away|went away|"
        "gone|is gone|disappears|disappeared|vanishes|vanished|against|answers|answer for|isn't there|"
        "is not there|wasn't there|is history|is out of it|is behind me"
    ),
    # True: what is kept may be good, "keeps it stable".
    **each("keeps|keep the|keeps the|kept the|keeping the|kept", True),
    **ways("help|helps|helped|helping", "with", data=True),
}
# After a complaint these say that it is no more.
GONE = listed("away gone disappears disappeared vanishes vanished cured fixed stops stopped there history")
# Before a complaint these say that the setting brings it on.
CAUSES = listed(
    "make makes made making get gets got getting becomes become became turns turned too gives starts started starting "
    "begins began keep keeps kept keeping goes wants tends likes 'll will gonna ends"
)
