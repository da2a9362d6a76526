"""What drivers say of a car and of a corner when they write in a hurry: common practice, no source.

Each table maps phrases (words of `tokens` after `misspelt`) to data. The longest phrase at a word wins, whatever its
kind, so what would mislead ("tight race", "brake pads", "feel free") stands here too, as plain words.
"""

from __future__ import annotations

from collections.abc import Mapping

from producer.language.phrase_tables import each, ways
from producer.language.tokens import listed

Entry = tuple[tuple[str, ...], str, object]  # words after the first, kind, data


# Data: +1 tight, -1 loose, and the part of the corner where the words say it.
_FEEL: dict[str, object] = {
    **each(
        "tight|push|pushes|pushing|pushed|pushy|plow|plows|plowing|plowed|plough|ploughs|ploughing|understeer|"
        "understeers|understeering|understeery|washes out|washing out|wash out|washes up|washing up|wash up|"
        "washes wide|washing wide|wash wide|runs wide|running wide|run wide|drifts up|drifting up|drift up|"
        "drifts wide|"
        "drifting wide|drives straight|goes straight|going straight|go straight|straight to the wall|"
        "straight into the wall|straight for the wall|straight at the wall|shoves|shoving|shove the nose|"
        "gets tighter|getting tighter|got tighter|tightens up|goes up the track|slides up the track|"
        "sliding up the track|slide up the track|walks up the track|snow plow|snowplow|won't stay down|"
        "can't stay down|"
        "won't hold the bottom|can't hold the bottom|lazy nose|no front end|no front grip|no front bite|"
        "feels like a dump truck|turns like a truck|turns like a bus|heavy steering|"
        "snug|bound up|doesn't want to turn|"
        "won't go left|quits turning|quit turning|stops turning|stop turning|stopped turning|tightness|"
        "too much push|wants to go straight|keeps going straight|doesn't turn",
        (1,),
    ),
    **each("won't turn in|doesn't turn in|refuses to turn in|can't turn in|doesn't want to turn in|"
            "won't want to turn in|slow to turn in|lazy on turn in", (1, "entry")),
    **each(
        "loose|oversteer|oversteers|oversteering|oversteery|snappy|snap|snaps|snapping|snap loose|snaps loose|"
        "snapping loose|snaps around|snaps on me|twitchy|nervous|edgy|skittish|squirrelly|squirrely|squirly|darty|"
        "spin|spins|spins out|spin out|spinning|spinning out|spin it|spins around|spun out|keep spinning|loops it|"
        "loop it|wiggle|wiggles|wiggling|fishtails|fishtailing|fishtail|sideways|gets sideways|goes sideways|"
        "swap ends|swaps ends|swapping ends|step out|steps out|stepping out|stepped out|hangs out|hanging out|"
        "breaks loose|breaking loose|break loose|breaks away|breaking away|break away|breaks traction|"
        "comes around|coming around|come around|comes round|coming round|come round|gets around on me|"
        "tail happy|gets looser|getting looser|got looser|loosens up|looseness|no rear grip|no rear end|no rear bite|"
        "no side bite|too much rotation|rotates too much|over rotates|turns too much|on ice in the rear|"
        "wags its tail|wants to swap|wants to spin|dives off the corner sideways|pirouettes|"
        "gets away from me|goes around on me|goes round on me|backs it in|backing it in|backs in|"
        "lose the back|lose the rear|lose the back end|lose the rear end|loses the back|loses the rear|"
        "losing the back|"
        "losing the rear|losing the back end|losing the rear end|loses the rear end|loses the back end|lost the rear|"
        "kicks out|kicking out|kick out|swings out|swinging out|swing out|swings around|swinging around|free|"
        "too free|"
        "wheel spin|wheelspin|spins the tires|spins the tyres|lights up the tires|lights up the tyres|unstable|"
        "unsettled",
        (-1,),
    ),
}  # fmt: skip
_SLIP = each(
    "slide|slides|sliding|slid|slide out|slides out|sliding out|slip|slips|slipping|slips out|skate|skates|skating|"
    "drift|drifts|drifting|drifts out|wash|washes|washing|float|floats|floating|let go|lets go|letting go|go out|"
    "goes out|going out|kick|kicks|swing|swings|hop|hops|hopping|wander|wanders|moves around|moving around|give up|"
    "gives up|loses grip|lose grip|losing grip|loses traction|lose traction|no grip|no bite|no traction|has no grip|"
    "zero grip|passes me|pass me|passing me|overtakes me|wants to pass|drops off|jumps out|jump out|kick around|"
    "dances|dancing|walks|walking|gets away|goes away|breaks|break|breaking|comes out|coming out on me|"
    "wants out|slews|"
    "catch up|catches up|beats me|beat me|skatey|skaty|slidey|slidy|slippery|floaty|wiggly|hopping around|"
    "on ice|like ice|its on ice|skid|skids|skidding|skidded|moves on me|slides around|sliding around|wanders|"
    "gets light|goes light|"
    "all over the place|all over|"
    "just goes|goes on me|takes off on me|walks out|light|numb|greasy|wants to slide|"
    "wants to kick|hangs|squirms|squirming|steps|stepping"
)
_TURNS = each(
    "turn|rotate|rotating|turning|bite|point|steer|cut|roll|respond|come down|get down|stay down|get to the bottom|"
    "hold the bottom|hold the line|hold a line|hit the bottom|make the corner|make the turn|stick|grip|"
    "hook up|grab|hold|plant|settle|get to turn|get around|rotate in|bend"
) | each("turn in", "entry")
_REAR = each(
    "rear|rear end|back|back end|the back|tail|tail end|ass|ass end|arse|butt|backside|rears|rear tires|rear tyres|"
    "rear wheels|back tires|back tyres"
)
_FRONT = each("front|front end|nose|front tires|front tyres|front wheels|fronts|fronts tires")
_FINE = each(
    "fine|good|great|ok|okay|perfect|perfectly|solid|stable|money|awesome|better|planted|hooked up|decent|dialed|"
    "no issues|no problem|no problems|on rails|mint|spot on|neutral|balanced|amazing|brilliant|excellent|nice|sweet|"
    "happy|comfortable|glued|love it|not bad|sticks|rotates|turns|turns well|turns fine|turns great|rotates fine|"
    "rotates well|drives great|handles great|flies"
)
_NEG = each(
    "not that it|not really|not|isn't|wasn't|aren't|don't|doesn't|didn't|won't|can't|"
    "couldn't|wouldn't|hasn't|haven't|never|no|without|"
    "no longer|not even|no more|never want to|doesn't feel|zero|neither|nor|refuses|refuse|refusing|hardly|barely|"
    "unable|fails|hard|struggles|struggling|struggle|trouble|harder|stubborn|impossible|no way|tough|fighting"
)
_CURES = each(
    "fixed|cured|solved|killed|got rid of|gone|sorted|eliminated|disappeared|took care of|fixes|cures|went away"
)
_WISHES = each(
    "fix|stop|stops|cure|solve|kill|get rid of|avoid|prevent|reduce|tame|quit|keep it from|keep from|keep the|"
    "keep the car from|keep it|keep my|calm down|calm|settle down|help with|make it stop|tune out|dial out|get out|"
    "take out|deal with|against|lose the"
)
_CAR = "it|the car|my car|this thing|this car"
# Said as a wish, these complain: "how do i get it to turn", "calm the rear down".
_LACKS: dict[str, object] = {
    **ways("get|make|help|getting", "it|the car|my car|the nose|the front|the front end|her|this thing|this car",
           "to turn|to rotate|turn|rotate|to point|to bite|to stick up front|bite|rotating|turning", data=(1,)),
    **ways("get|make|help|getting", "it|the car|my car|the nose|the front|the front end|her|this thing|this car",
           "to turn in|turn in", data=(1, "entry")),
    **ways("make|get|making|have|want|like|need", _CAR, "looser|to be looser|freer|loosened up", data=(1,)),
    **ways("make|get|making|have|want|like|need", _CAR, "tighter|to be tighter|tightened up|"
           "more stable|calmer|more planted|more secure", data=(-1,)),
    **ways("loosen|free", _CAR + "|her", "up|", data=(1,)),
    **ways("tighten", _CAR + "|her", "up|", data=(-1,)),
    **each("looser|freer|loosen up|free up", (1,)),
    **each("tighter|tighten up", (-1,)),
    **each("more rotation|more front grip|more front bite|more turn|more front end", (1,)),
    **ways("calm|calm down|settle|settle down|tame|plant|stabilize|stabilise|secure|hook up|stick|keep|hold|tie down|"
           "control|get|make", "the rear|the back|the rear end|the back end|the tail|my rear|that rear",
           "|down|under me|in line|planted|to stick|stick|to hook up|settle|calm", data=(-1,)),
    **each("more rear grip|more rear bite|more side bite|more stability|more stable|more drive off|more forward bite",
            (-1,)),
}  # fmt: skip
_WOULD = each(
    "better to be|better to have it|would|will|could|might|gonna|going to|afraid of|worried|so it|so that|"
    "does it make|will it"
)
_PAST = each("was|were|used to|had been|before")
_MAKES = each("make|makes|making|made")
_VERY = each(
    "way too|so|super|really|very|insanely|crazy|real|way|extremely|stupid|hella|wicked|massively|ridiculously|"
    "unbelievably|terribly|horribly|badly|awfully|seriously|incredibly|mega|mad|soo|so damn|so freaking|so bloody|"
    "dead|proper|super duper|far too|wildly|violently|crazily|insane|ridiculous|massive|huge|stupidly|totally|"
    "absolutely|completely|much too|big|terrible|horrible|awful|serious|crazy bad|ungodly|unreal"
)
_VERY_AFTER = each(
    "real bad|like crazy|so bad|badly|like hell|big time|as hell|so much|so hard|really bad|very bad|af|like mad|"
    "bad|hard|a lot|lots|terribly|horribly|not even funny|so badly|really badly|"
    "super bad|really hard|a ton|massively|insanely"
)
_LITTLE = each(
    "bit|a bit|slightly|touch|a touch|tad|a tad|kinda|kind of|sort of|little|a little|a little bit|little bit|hair|"
    "a hair|smidge|a smidge|somewhat|slight|mild|mildly|a fraction|a tiny bit|tiny bit|ever so slightly|marginally|"
    "a smidgen|a wee bit|barely|just a bit|a shade|a tick|a pinch"
)
_ENTRY = (
    "entry|on entry|entries|going in|goes in|go in|getting in|get in|gets in|coming in|come in|comes in|turn in|"
    "on turn in|turning in|turns in|way in|on the way in|on the way into|into the corner|into the corners|"
    "into the turn|into the turns|into corners|into turns|going into|goes into|getting into|coming into|corner entry|"
    "corner entrance|entering|enter|enters|entering the corner|when i enter|driving in|diving in|drive in|drives in|"
    "initial turn in|rolling in|roll in|start of the corner|beginning of the corner|entrance|into a corner|"
    "into a turn|first part of the corner|before the middle|going down into"
)
_MIDDLE = (
    "middle|center|centre|mid corner|midcorner|mid turn|midturn|mid|apex|in the middle|in the center|in the centre|"
    "through the middle|through the center|through the centre|at the apex|middle of the corner|center of the corner|"
    "centre of the corner|middle of the turn|at the bottom|middle of|center of|centre of|mid way|midway|halfway|"
    "half way through|through the corner|through the corners|through the turns|mid of|rolling the center|"
    "rolling through|through the turn|in the corner|in the corners|middle part"
)
_EXIT = (
    "exit|on exit|exits|corner exit|exiting|off the corner|off of the corner|off corner|off corners|off the corners|"
    "off the turn|off turn|off the turns|coming off|comes off|come off|came off|getting off|get off|gets off|"
    "coming out|comes out|come out|out of the corner|out of the corners|out of the turn|out of corners|way out|"
    "on the way out|way off|drive off|driving off|drives off|up off|off the bottom|leaving the corner|leaving|"
    "last part of the corner|end of the corner|coming up off|corner off"
)
_PEDALS: dict[str, object] = {
    **each(
        "under braking|on the brakes|on the brake|on brakes|braking|when i brake|while braking|hit the brakes|"
        "hit the brake|touch brakes|hitting the brakes|hitting the brake|touch the brakes|touch the brake|"
        "use the brakes|"
        "use the brake|when braking|under breaking|when breaking|on the breaks|trail braking|trailbraking|"
        "trail brake|"
        "press the brake|i brake|get on the brakes|tap the brakes|tap the brake|brake for|slow down for|the brakes|"
        "touching the brake|brake hard|braking hard|brake|off the brake|off the brakes|heavy braking|"
        "hard braking|breaking into|in braking",
        ("braking", "entry"),
    ),
    **each(
        "i lift|lift|lifting|lift off|lifting off|off the gas|off the throttle|off throttle|off gas|let off|"
        "let off the gas|lets off|get out of the gas|out of the gas|out of the throttle|come off the gas|"
        "coming off the gas|let off the throttle|come out of the gas|lift the throttle|lift the gas|liftoff|"
        "get out of the throttle|come off the throttle|coming off the throttle|letting off|back off the gas|coasting|"
        "roll out of the gas|roll out of the throttle|release the throttle|release the gas|coast",
        (None, "entry"),
    ),
    **each(
        "on the gas|on gas|on throttle|on the throttle|under throttle|under power|on power|touch the gas|"
        "touch the throttle|touch gas|touch throttle|hit gas|hit throttle|hit the gas|hit the throttle|"
        "get on the gas|get on the throttle|get to the gas|"
        "get back on the gas|get back to the gas|get back on the throttle|back on the gas|back on the throttle|"
        "back to the gas|back to the throttle|getting on the gas|"
        "pick up the throttle|pick up the gas|picking up the throttle|pick up throttle|picking up throttle|"
        "give it gas|"
        "give it throttle|give it the gas|give it some gas|giving it gas|apply throttle|applying throttle|"
        "apply the throttle|apply gas|into the gas|into the throttle|in the gas|in the throttle|squeeze the throttle|"
        "squeeze the gas|squeeze on the gas|roll on the throttle|roll back into the throttle|"
        "roll back into the gas|roll back to the gas|roll into the throttle|roll into the gas|"
        "mash the gas|"
        "step on the gas|stepping on the gas|put the power down|power down|full throttle|go to throttle|"
        "go to the gas|"
        "to throttle|to gas|press the gas|with throttle|with the throttle|accelerate|accelerating|acceleration|"
        "under acceleration|the gas|the throttle|i throttle|on the power|get to the throttle|breathe on the throttle|"
        "breathe on the gas|use the throttle|floor it|go full throttle|throttle up|throttle on|touching the gas|"
        "touching the throttle|hitting the gas|hitting the throttle|gas it|get to power|some throttle|"
        "any throttle|throttle|add gas|"
        "add throttle|adding throttle|adding gas|feed in the gas",
        ("throttle", "exit"),
    ),
}
_TYRES: dict[str, object] = {
    **ways(
        "new|fresh|sticker|cold|brand new|fresh set of|new set of|good", "tires|tyres|rubber|tire|tyre", data="new"
    ),
    **each("stickers|sticker tires|tires are new|tyres are new|tires are fresh|tyres are fresh|fresh stickers|"
            "fresh ones|new ones|new boots|green tires|first few laps|first laps|new rubber|fresh stops", "new"),
    **ways("old|worn|worn out|used|older|dead|cooked|hot|bald|shot|scuffed|wore out|burnt|burned|fried",
           "tires|tyres|rubber|tire|tyre", data="worn"),
    **ways("tires|tyres|rubber|tire|tyre", "|are|get|got|gets|went|go|is|start to|start|getting|when", "old|worn|"
    "worn out|off|"
           "go off|go away|goes away|away|going away|gone|shot|dead|cooked|fade|give up|wear|wear out|wear down|"
           "older|wore out|bald|fall off|falls off|"
           "goes off|wore|wears|fading|wearing|drop off|greasy", data="worn"),
    **each("old ones|worn ones|long run tires|end of the run|end of a run|late in the run|late in a run|"
            "end of a stint|end of the stint|on a long run|on long runs|over a long run|later in the run|"
            "deep in the run|deep into a run|used ones|scuffs|fall off of the tires", "worn"),
}  # fmt: skip
_SEP = each(",|.|;|:|?|!|but|then|and|or|/|while|though|although|so then|however|yet|after that|except|because|plus|&")
_PRONOUN = each("it|i|she|that|this|car|the car|my car|mine|thing|we|he")
# What would mislead.
_PLAIN = each(
    "tight between the|tight up front|tight at the front|tight at the top|tight at the end|tight points|"
    "tight race|tight races|tight racing|tight finish|tight pack|tight battle|tight field|tight budget|"
    "tight schedule|"
    "tight corners|tight corner|tight turn|tight turns|tight radius|tight track|tight line|tight lines|sit tight|"
    "tight points|tight group|tight fit|tight one at the line|tight bullring|too tight of a race|hold tight|"
    "tight fight|tight edit|tight ship|tight around the top|"
    "loose lips|loose ends|loose change|loose cannon|loose wheel|loose lug|loose screw|loose bolt|cut loose|"
    "let loose|"
    "loose stuff|hang loose|loose material|loose dirt|loose cable|came loose|"
    "feel free|for free|free time|free to|free setup|free setups|free download|free card|free video|free stuff|"
    "caution free|free pass|free agent|trouble free|is free|are free|free of charge|free of|free practice|free speed|"
    "push the button|push through|push for|push the car|push him|push me|push my|pushed me|pushed him|pushing for|"
    "push too hard|pushed too hard|pushing too hard|"
    "push hard|pushing hard|push it|pushing it|push harder|pushed the|bump draft|push the leader|push that|pushes me|"
    "push notifications|push back|push yourself|bump drafting|pushing the|pushing through|pushing my|push each other|"
    "spin the wheel|took a spin|for a spin|spin on it|spin the video|got spun|spun me|spun him|spun by|spin zone|"
    "no matter what|no matter how|no matter|no idea|no clue|no luck|no joke|no lie|no difference|no help|not sure|"
    "don't know|can't figure|can't figure out|can't understand|don't understand|don't get why|no effect|"
    "not helping|doesn't help|didn't help|don't help|won't help|nothing helps|no good|no change|can't believe|"
    "don't get me wrong|not gonna lie|not kidding|can't drive|hard to drive|impossible to drive|can't race|"
    "can't win|can't keep up|can't stand|can't take|hard time|why not|no doubt|can't seem|do not|won't lie|"
    "to turn 1|good luck|good job|good work|good video|great video|great videos|great setup|great setups|nice video|"
    "good setup|great stuff|good stuff|great work|great job|love the video|awesome video|good idea|good ideas|"
    "better idea|any good|good way|good place|good start|good starting point|better way|get back to me|back to back|"
    "go back|come back|came back|going back|get back|put back|way back|back then|back in the day|back up|back off|"
    "looking back|back down|back in the|write back|hear back|back here|back home|back marker|backmarker|"
    "in front|in front of|front row|front runners|front runner|up front|out front|front page|out back|"
    "whats up|hold up|hold on|a hold of|stick with|stick to|turn it off|turn off|turn on|turn it on|"
    "turn up|turned up|turn my|turn the|turn it up|turn it down|in turn|my turn|your turn|whose turn|"
    "point me|point of|whats the point|starting point|what's the point|no point|points|the point|at this point|"
    "cut the|cut my|roll with|get around to|get around|sliding scale|let it slide|slide show|"
    "real quick|real fast|really good|really like|really helpful|really helped|really appreciate|really enjoy|"
    "so much for|so far|so i|so what|so it|so is|so do|so we|so can|so could|so how|so my|so the|so if|so when|"
    "so good|so great|so helpful|so fast|so that|so you|so many|so why|so should|so any|so no|so helpful|so yeah|"
    "very good|very helpful|very nice|very well|super helpful|super fast|super easy|super good|super fun|"
    "big fan|big thanks|huge fan|huge thanks|huge help|real car|real life|real truck|real one|real deal|real world|"
    "a bit of|bit of help|little help|a little help|little bit of help|little advice|a little advice|"
    "little brother|little guy|hard to find|hard work|works hard|hard to say|hardest|bad luck|not bad at all|"
    "any way|anyway|by the way|which way|the way|no way|way to go|this way|that way|way better|way faster|way more|"
    "in the way|way less|way slower|one way|some way|best way|a way|way easier|only way|way ahead|way behind|"
    "first time|last time|next time|this time|on time|every time|brake pads|brake pad|brake bias|brake balance|"
    "front brake|front brakes|front bias|front bar|front weight|front toe|front spring|front springs|"
    "front pressure|front pressures|front sway bar|front percentage|front tire pressure|front tyre pressure|"
    "front split|rear split|rear spring split|front spring split|front shocks|rear shocks|front compression|"
    "rear spring|rear springs|rear gear|rear pressure|rear pressures|rear weight|rear rebound|rear compression|"
    "front rebound|rear shock|front shock|rear stagger|nose weight|right rear|left rear|right front|left front|"
    "right front tire|right rear tire|left rear tire|left front tire|right front tyre|right rear tyre|"
    "rear view|rear bumper|front bumper|rear ended|got rear ended|rear tire pressure|rear tyre pressure|"
    "make sense|makes sense|make a|make the video|make an|make more|making a|made it|made a|made me|make it to|"
    "will this|will it work|would you|would love|could you|could we|would this|would that|"
    "old setup|old video|new video|new setup|new here|new subscriber|new to this|new wheel|new pedals|new season|"
    "new car|new update|new build|new version|old version|last year|old man|"
    "center screen|middle of the pack|middle of nowhere|middle of the race|middle of the night|middle of the field|"
    "middle lane|middle groove|middle line|"
    "the exit row|exit the game|exit the garage|exit the menu|exit out|enter the race|enter the garage|enter a|"
    "log in|check in|tuned in|checking in|plug in|sign in|chime in|put in|type in|sucks in|"
    "come out|came out|comes out next|coming out next|coming out with|coming out soon|come out with|video comes out|"
    "comes out with|get in a race|get in the top|get in the car|coming off a win|coming off a season|take off|"
    "day off|"
    "show off|off topic|kick off|hats off|paid off|pays off|wheel to wheel|steering wheel|behind the wheel"
)

TABLES: tuple[tuple[str, dict[str, object]], ...] = (
    ("word", _PLAIN), ("feel", _FEEL), ("pedal", _PEDALS), ("tyres", _TYRES), ("phase", each(_ENTRY, "entry")),
    ("phase", each(_MIDDLE, "middle")), ("phase", each(_EXIT, "exit")), ("rear", _REAR), ("front", _FRONT),
    ("lacks", _LACKS), ("slip", _SLIP), ("turn", _TURNS), ("fine", _FINE), ("neg", _NEG), ("cure", _CURES),
    ("wish", _WISHES),
    ("would", _WOULD), ("past", _PAST), ("makes", _MAKES), ("very", _VERY), ("after", _VERY_AFTER),
    ("little", _LITTLE), ("sep", _SEP), ("pronoun", _PRONOUN),
)  # fmt: skip

# Words of a corner's number: "into 3", "off turn four", "between 3 and 4".
TURN_WORDS = listed("turn turns t corner corners")
ENTERING = listed("into entering enter to toward towards")
AT = listed("in at around on for")
LEAVING = listed("off from leaving exiting out exit")
ACROSS = listed("between through across mid middle center centre throughout apex")


def phrases() -> Mapping[str, tuple[Entry, ...]]:
    """Every phrase by its first word, the longest first; of one phrase in two tables the first counts."""
    table: dict[str, dict[tuple[str, ...], Entry]] = {}
    for kind, rows in TABLES:
        for phrase, data in rows.items():
            first, *rest = phrase.split()
            table.setdefault(first, {}).setdefault(tuple(rest), (tuple(rest), kind, data))
    return {first: tuple(sorted(rows.values(), key=lambda one: -len(one[0]))) for first, rows in table.items()}
