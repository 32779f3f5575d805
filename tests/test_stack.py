"""What is called in one piece of the stack costs the system nothing, however deep it stands."""

from __future__ import annotations

import sys

import pytest

from notices.stack import roomy

resource = pytest.importorskip("resource")  # not on Windows

CALLS = 500
"""At each depth: a piece that is taken and given back costs a page fault, and so 500 of them."""

DEPTHS = 250
"""Each call takes some ten places of eight bytes, so that 16 KB are full after 200 or fewer."""


def leaf() -> int:
    return 1


def faults_at(depth: int) -> int:
    """How often the system must give memory while a small function is called at a depth."""
    if depth:
        return faults_at(depth - 1)
    before: int = resource.getrusage(resource.RUSAGE_SELF).ru_minflt
    for _ in range(CALLS):
        leaf()
    after: int = resource.getrusage(resource.RUSAGE_SELF).ru_minflt
    return after - before


@roomy
def most_faults() -> int:
    return max(faults_at(depth) for depth in range(DEPTHS))


def test_no_depth_asks_for_memory_with_every_call() -> None:
    assert most_faults() < CALLS


def test_it_is_needed() -> None:
    """At some depth, without room, each call asks: else this module can go."""
    if sys.version_info[:2] > (3, 13):
        pytest.skip("not known of later versions")
    assert max(faults_at(depth) for depth in range(DEPTHS)) >= CALLS


def test_what_a_function_does_stays() -> None:
    @roomy
    def third(of: int, *, plus: int = 0) -> int:
        return of // 3 + plus

    assert third(12, plus=1) == 5
    assert third.__name__ == "third"
