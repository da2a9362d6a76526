"""Choosing among movements in plain numbers: order of what is best, few settings, what is given."""

from __future__ import annotations

import pytest

from producer.handling.choosing import Given, Movement, answered, choose, weighed
from producer.handling.wants import Want, wants
from producer.model.words import PHASES
from tests.handling.advising import feels


def asked(text: str) -> tuple[Want, ...]:
    """Half a percent of cross weight is 1."""
    return wants(feels(text), dict.fromkeys(PHASES, 1.0))


def move(place: int, clicks: int, entry: float = 0, middle: float = 0, leave: float = 0, helps: int = 1) -> Movement:
    return Movement(place, clicks, (entry, middle, leave), helps)


@pytest.mark.parametrize(
    ("movements", "best"),
    [
        # The nearest to the target of -1, then the fewest clicks, then the garage's order.
        ([move(0, 1, -0.5), move(1, 1, -0.9), move(2, 1, -2)], 1),
        ([move(0, 2, -0.75), move(1, 1, -1.25)], 1),
        ([move(0, 1, -0.75), move(1, 1, -1.25)], 0),
        # Two that hit the target together do not beat one that helps.
        ([move(0, 1, -0.4), move(1, 1, -0.6)], 1),
        # Adding up the other way round leaves the same.
        ([move(1, 1, -0.1 - 0.2), move(0, 1, -0.3)], 1),
    ],
)
def test_the_best_single_movement(movements: list[Movement], best: int) -> None:
    assert choose(movements, asked("tight entry"), Given()) == (movements[best],)


def test_nothing_to_choose_from() -> None:
    assert choose([], asked("tight entry"), Given()) == ()
    assert choose([], (), Given()) == ()


def test_a_second_setting_only_for_a_complaint_more() -> None:
    both, one, other = move(0, 1, -0.2, 0, 0.1, 0b11), move(1, 1, -1), move(2, 1, leave=1, helps=0b10)
    want = asked("tight entry, loose exit")
    assert choose([both, one, other], want, Given()) == (both,)
    assert choose([one, other], want, Given()) == (one, other)


def test_a_setting_moves_once() -> None:
    up, down = move(0, 1, -1, 0, -1, 0b01), move(0, -1, 1, 0, 1, 0b10)
    assert choose([up, down], asked("tight entry, loose exit"), Given()) == (up,)


def test_a_third_setting_where_two_spoil_the_sum() -> None:
    """The second helps the exit and unsays the first on entry; only a third makes both good, of two for one alone."""
    first, second, third = move(0, 1, -0.5), move(1, 1, 0.75, 0, 1, 0b10), move(2, 1, -0.5)
    want = asked("tight entry, loose exit")
    assert choose([first, second, third], want, Given()) == (first, second, third)
    assert answered([first, second], want, Given()) == 0b10


def test_no_three_for_one_complaint_alone() -> None:
    against = Given((move(0, 1, 1.0),))
    three = [move(place, 1, -0.4) for place in (1, 2, 3)]
    assert choose(three, asked("tight entry"), against) == ()
    two = [move(1, 1, -0.6), move(2, 1, -0.6)]
    assert choose(two, asked("tight entry"), against) == ()
    another = Given((Movement(0, 1, (1.0, 0, 1), 0b10),))
    assert choose(two, asked("tight entry, loose exit"), another) == tuple(two)


def test_what_is_given_counts() -> None:
    want = asked("tight entry, loose exit")
    given = Given((move(0, 1, -1),))
    assert choose([move(0, 2, -1, 0, 1, 0b11), move(1, 1, leave=1, helps=0b10)], want, given) == (
        move(1, 1, leave=1, helps=0b10),
    )
    assert weighed((), want, given).deviation == 1.0


def test_the_author_s_word_counts_until_something_pulls_against_it() -> None:
    want = asked("tight entry, loose exit")
    given = Given((move(0, 1),), word=0b01)
    assert answered((), want, given) == 0b01
    assert answered([move(1, 1, leave=1, helps=0b10)], want, given) == 0b11
    assert answered([move(1, 1, 0.1, 0, 1, 0b10)], want, given) == 0b10
