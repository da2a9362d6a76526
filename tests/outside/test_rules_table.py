"""The built-in rule table against published statements (tests/data/rules.csv, each row with its sources).

Where we differ we know it: the list below is complete, and a difference that comes or goes fails the test.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from producer.handling.rules import RULES
from producer.handling.rules_table import Row
from producer.model.words import PHASES

DATA = Path(__file__).parents[1] / "data" / "rules.csv"
SAYS = {"+": "tighter", "-": "looser", "0": None, "?": "?"}

# The statement -> the role it speaks of. Statements about what the garage's parameters do not offer (rubbers, both
# springs of an axle, trailing arms ...) are listed too, as None: a new line in the file asks for a decision.
ROLE: dict[str, str | None] = {
    "front springs, both (stiffer)": None,
    "RF spring rate": "spring.rf",
    "LF spring rate": "spring.lf",
    "rear springs, both (stiffer)": None,
    "RR spring rate": "spring.rr",
    "LR spring rate": "spring.lr",
    "rear spring split (RR rate minus LR rate)": "spring.rr",  # a rear split has the right rear's row
    "RR spring rubber added": None,
    "front anti-roll bar rate/diameter": "bar.front",
    "front anti-roll bar preload": "bar.front_preload",
    "Panhard/track bar height, both ends": "track_bar",
    "Panhard/track bar height, right (chassis) end": "track_bar.right",
    "Panhard/track bar height, left end": "track_bar.left",
    "Panhard/track bar rake (right higher than left)": None,
    "crossweight / wedge (RF+LR)": "weight.cross",
    "RR spring jack down (subtract wedge)": None,
    "front weight percent": "weight.front",
    "left-side weight percent": "weight.left",
    "RF tyre pressure": "tyre_pressure.rf",
    "LF tyre pressure": "tyre_pressure",
    "RR tyre pressure": "tyre_pressure.rr",
    "LR tyre pressure": "tyre_pressure",
    "rear stagger (RR larger)": "stagger.rear",
    "front stagger": None,
    "RF negative camber": "camber",
    "LF positive camber": "camber",
    "caster split (RF more than LF)": None,
    "caster, both sides": "caster",
    "front brake bias": "brake.front_bias",
    "front shocks compression, both": None,
    "RF shock compression": "shock_compression.rf",
    "RF shock rebound": "shock_rebound.rf",
    "LF shock compression": "shock_compression",
    "LF shock rebound": "shock_rebound",
    "RR shock compression": "shock_compression",
    "RR shock rebound": "shock_rebound",
    "LR shock compression": "shock_compression.lr",
    "LR shock rebound": "shock_rebound.lr",
    "rear gear, numerically higher": "gear.final",
    "grille tape (smaller opening)": "aero.tape",
    "grille opening (larger)": None,
    "front toe-out": "steering.toe_out",
    "rear steer right (RR wheel set back / LR ahead)": None,
    "LR trailing-arm front pivot height": None,
    "steering-wheel offset / centring": None,
}

WEAK = "weak, the sources do not agree on a sign: no opinion"
LEFT = "left-side pressures are small and change grip as much as rate: no opinion"
HEAT = "camber is set from tyre temperatures: past its optimum the sign turns round"
AERO = "tape is a trade of downforce against engine temperature: no opinion on balance"
# (statement, band of banking as written below, phase) -> (they say, we say, why we differ)
KNOWN: dict[tuple[str, str, str], tuple[str, str | None, str]] = {
    ("LF spring rate", "12 up", "middle"): ("tighter", "looser", "on banking the compressed left front carries load"),
    ("LR spring rate", "6 to 12", "exit"): ("tighter", None, "shallow banking: the sign is not sure on exit"),
    ("LF tyre pressure", "", "middle"): ("looser", None, LEFT),
    ("LR tyre pressure", "", "entry"): ("tighter", None, LEFT),
    ("LR tyre pressure", "", "middle"): ("tighter", None, LEFT),
    ("LR tyre pressure", "", "exit"): ("tighter", None, LEFT),
    ("RF negative camber", "", "entry"): ("looser", None, HEAT),
    ("RF negative camber", "", "middle"): ("looser", None, HEAT),
    ("LF positive camber", "", "entry"): ("looser", None, HEAT),
    ("LF positive camber", "", "middle"): ("looser", None, HEAT),
    ("LF shock compression", "", "entry"): ("looser", None, WEAK),
    ("LF shock rebound", "", "exit"): ("tighter", None, WEAK),
    ("RR shock compression", "", "exit"): ("looser", None, WEAK),
    ("LR shock rebound", "", "exit"): ("looser", None, "too much unloads the tyre, a little does not: no opinion"),
    ("grille tape (smaller opening)", "", "entry"): ("looser", None, AERO),
    ("grille tape (smaller opening)", "", "middle"): ("looser", None, AERO),
    ("grille tape (smaller opening)", "", "exit"): ("looser", None, AERO),
    ("front toe-out", "", "entry"): ("looser", None, "turn-in feel, not balance: no opinion"),
}


def statements() -> list[dict[str, str]]:
    with DATA.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def band(row: Row) -> str:
    if row.banking is None:
        return ""
    return f"{row.banking.low} to {row.banking.high}" if row.banking.high is not None else f"{row.banking.low} up"


def differences() -> dict[tuple[str, str, str], tuple[str | None, str | None]]:
    found = {}
    for one in statements():
        for row in RULES[ROLE[one["adjustment"]] or ""] if ROLE[one["adjustment"]] else ():
            for phase in PHASES:
                column = "increase_effect_entry" if phase == "entry" else phase
                theirs, ours = SAYS[one[column]], row.effect(phase)
                if theirs not in ("?", ours):
                    found[one["adjustment"], band(row), phase] = (theirs, ours)
    return found


def test_every_statement_has_its_role_or_none() -> None:
    assert [one["adjustment"] for one in statements()] == list(ROLE)
    assert all(role is None or role in RULES for role in ROLE.values())


def test_differences_are_the_known_ones() -> None:
    found = differences()
    assert found == {key: value[:2] for key, value in KNOWN.items()}


def test_every_known_difference_says_why() -> None:
    assert all(why for *_, why in KNOWN.values())


@pytest.mark.parametrize("role", ["spring.rf", "spring.rr", "weight.cross", "weight.front", "gear.final", "track_bar"])
def test_rows_that_a_source_states_name_it(role: str) -> None:
    assert all("no source" not in row.source.split(";")[0] for row in RULES[role])
