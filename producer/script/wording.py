"""The program's own sentences in the narration: one table, and the one place to change how it talks.

They stand here and not in `templates/` because this floor may not render. Each kind of sentence has one or more
patterns, used in turn so that a page of settings does not sound like a list: the order is fixed, the same library
gives the same script. `{...}` are filled by the teller. Write British forms: what is spoken follows the channel's
`spelling`. The author's prose never passes through the spelling.
"""

from __future__ import annotations

PATTERNS: dict[str, tuple[str, ...]] = {
    # opening
    "episode": ("This is episode {number}: {track} in the {garage}.",),
    "episode-unnumbered": ("This one is {track} in the {garage}.",),
    "one-setup": ("There is one setup here, {names}, and I go through it page by page.",),
    "two-setups": (
        "There are two setups here: {names}. I go through the first one page by page, "
        "and after that only what the other one changes.",
    ),
    "more-setups": (
        "There are {count} setups here: {names}. I go through the first one page by page, "
        "and after that only what the others change.",
    ),
    "thanks": ("Thank you to {names} for asking.",),
    # how it was tested
    "conditions": ("Here is how I tested it, so you can set yours the same: {options}.",),
    "version": ("That was on version {version} of the simulation.",),
    "conditions-and-version": (
        "Here is how I tested it, so you can set yours the same: {options}. "
        "That was on version {version} of the simulation.",
    ),
    # a setup begins
    "first": ("Now to the garage, and {name}.",),
    "first-alone": ("Now to the garage.",),
    "other": ("Now {name}. It is {first} with {count} changes, so if I do not name a setting, leave it where it is.",),
    "other-one": ("Now {name}. It is {first} with a single change; leave everything else where it is.",),
    "other-none": ("Now {name}. It has the same numbers as {first}.",),
    "untested": ("A warning before you copy it: I have not driven this one yet.",),
    "page-first": ("I start on the {page} page.",),
    "page": ("The {page} page.", "On to the {page} page.", "Next is the {page} page.", "Then the {page} page."),
    "page-last": ("And the {page} page, the last one.",),
    "page-other": ("On the {page} page:",),
    # values
    "value": ("{Name}: {figure}.", "{Name}, {figure}.", "{Name} is at {figure}."),
    "group": ("{Name}, in {unit}: {list}.",),
    "group-bare": ("{Name}: {list}.",),
    "split": ("That makes the {name} {figure}.", "The {name} comes to {figure}."),
    "lead": ("The {parts}, {figures}.", "Now the {parts}, {figures}.", "The {parts} is at {figures}."),
    "lead-many": ("The {parts}, {figures}.", "Now the {parts}, {figures}."),
    "lead-same": ("The {parts}, {both} {figures}.", "Now the {parts}, {both} {figures}."),
    "lead-named": ("The {parts}.", "Now the {parts}."),
    "lead-all": ("{Parts} together.",),
    # values that differ from the first setup
    "move": ("{Name}, from {start} to {end}.", "The {name} goes from {start} to {end}."),
    "move-up": ("{Name}, from {start} up to {end}.", "The {name} goes up from {start} to {end}."),
    "move-down": ("{Name}, from {start} down to {end}.", "The {name} comes down from {start} to {end}."),
    "group-moves": ("{Name}, in {unit}: {list}.",),
    "group-moves-bare": ("{Name}: {list}.",),
    "part-move": ("{part} from {start} to {end}",),
    "split-move": ("So the {name} goes from {start} to {end}.", "With that the {name} goes from {start} to {end}."),
    "as-in": ("As in {name}.",),
    # reasons without words of the author's
    "effect": ("That makes the car {effects}.",),
    # advice
    "advice-if": ("{Feel}{when}? {say}",),  # the author's words begin with "if" themselves
    "advice": ("If it is {feel}{when}: {say}", "{Feel}{when}? {say}"),
    "to": ("That is {first}.", "So that is {first}."),
    "to-then": ("That is {first}, then {rest}.", "So {first} first, then {rest}."),
    "corner-to": ("That is {first} on the {part}.",),
    "corner-to-then": ("That is {first} on the {part}, then {rest}.",),
    "do": ("Try the {name} at {first}.",),
    "do-then": ("Take the {name} to {first}, then {rest}.",),
    "do-up": ("Raise the {name}.",),
    "do-down": ("Lower the {name}.",),
    # gearing
    "rpm": ("At {speed} that is {rpm} rpm.",),
    "rpm-margin": ("At {speed} that is {rpm} rpm, {margin} short of the limiter.",),
    "rpm-limit": ("At {speed} that is {rpm} rpm, right on the limiter.",),
    "rpm-over": ("At {speed} that is {rpm} rpm, and the limiter is {margin} below that.",),
    "gear-steps": ("A gear of {lower} would turn {lower_rpm} rpm there, and {higher} would turn {higher_rpm}.",),
    "gear-step": ("A gear of {gear} would turn {rpm} rpm there.",),
    "rpm-per-ten": ("Every {ten} is worth {rpm} rpm.",),
    # test laps
    "clock": ("Now the clock. I ran {laps}.",),
    "against": ("{Second} against {first}.", "Then {second} against {first}."),
    "total-slower": ("Over {laps} {name} is {amount} slower, give or take {give}.",),
    "total-faster": ("Over {laps} {name} is {amount} faster, give or take {give}.",),
    "quicker-from": ("From about lap {lap} {name} is the quicker of the two.",),
    "ahead-from": ("In total time {name} is ahead from about lap {lap}.",),
    "level": ("Over {laps} the clock cannot tell {first} and {second} apart.",),
    "level-total": ("Over {laps} their total times cannot be told apart.",),
    "driven-differently": (
        "I drove {first} and {second} differently, so their laps do not say which of the two is better.",
    ),
    "fuel": ("{Second} began with {start_second} of fuel, {first} with {start_first}.",),
    "worth-once": (
        "I drove each of them once, so that is one evening on my clock, and no further than lap {lap}.",
        "One evening again, and no further than lap {lap}.",
    ),
    "worth-one": ("{Name} I drove only once, so that is one evening on my clock, and no further than lap {lap}.",),
    "worth": ("That is my clock, and no further than lap {lap}.", "My clock again, and no further than lap {lap}."),
    "own-loses": ("{Name} starts at {start} and loses {amount} a lap, give or take {give}.",),
    "own-gains": ("{Name} starts at {start} and gains {amount} a lap, give or take {give}.",),
    "own-steady": ("{Name} starts at {start}, and whether it falls off these laps do not tell.",),
    # closing
    "one-change": ("Change one thing at a time, run a few laps, and write down what it did before the next change.",),
    "caution": ("One last thing, as always. {caution}",),
}

FEELS = {"entry": "{feel} going in", "middle": "{feel} in the middle", "exit": "{feel} coming off"}
PHASES = {"entry": "going in", "middle": "in the middle", "exit": "coming off"}
MUCH = {"little": "a little ", "plain": "", "very": "very "}
TYRES = {"new": " on new tyres", "worn": " on worn tyres"}
DEVICES = {
    "wheel": ", and you drive with a wheel",
    "pad": ", and you drive with a pad",
    "keyboard": ", and you drive with the keyboard",
}
COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
# Symbol -> what is said, for one and for many; British forms. A gear ratio is said bare: "four fifteen".
UNITS: dict[str, tuple[str, str]] = {
    "%": ("percent", "percent"), "in": ("inch", "inches"), "mm": ("millimetre", "millimetres"),
    "cm": ("centimetre", "centimetres"), "ft": ("foot", "feet"), "m": ("metre", "metres"),
    "mi": ("mile", "miles"), "km": ("kilometre", "kilometres"), "lb": ("pound", "pounds"),
    "kg": ("kilogram", "kilograms"), "lbf": ("pound of force", "pounds of force"), "N": ("newton", "newtons"),
    "lb/in": ("pounds per inch", "pounds per inch"), "N/mm": ("newtons per millimetre", "newtons per millimetre"),
    "kPa": ("kilopascal", "kilopascals"), "lbf ft": ("foot-pound", "foot-pounds"),
    "N m": ("newton metre", "newton metres"), "mph": ("mile an hour", "miles an hour"),
    "km/h": ("kilometre an hour", "kilometres an hour"), "m/s": ("metre a second", "metres a second"),
    "gal": ("gallon", "gallons"), "L": ("litre", "litres"), "deg": ("degree", "degrees"), "s": ("second", "seconds"),
    "°F": ("degree", "degrees"), "°C": ("degree", "degrees"), "clicks": ("click", "clicks"), "turns": ("turn", "turns"),
    ":1": ("", ""),
}  # fmt: skip
