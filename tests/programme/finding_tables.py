"""What holds of every finding in a table of plans: one that brings it, one that just does not."""

from __future__ import annotations

from notices.findings import Finding, Weight
from notices.programme.model import Programme


def found(programme: Programme, code: str) -> list[Finding]:
    return [finding for finding in programme.findings if finding.code == code]


def assert_found(programme: Programme, code: str, weight: Weight) -> Finding:
    """The finding is there once, with a place, and in sentences to which the full stop is added."""
    findings = found(programme, code)
    assert [finding.weight for finding in findings] == [weight]
    (finding,) = findings
    assert finding.path
    assert not finding.message.endswith(".")
    assert not finding.suggestion.endswith(".")
    return finding


def assert_quiet(programme: Programme, code: str) -> None:
    assert found(programme, code) == []
