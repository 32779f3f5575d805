"""Rounded sums of money: about £12,000."""

from __future__ import annotations

from babel.numbers import format_currency

from notices.wording.language import LANGUAGES

_DIGITS = 2
"""Significant digits of an estimate."""


def about(amount: float, currency: str, language: str) -> str:
    """Write an estimate to two significant digits: about £12,000."""
    rounded = float(f"{amount:.{_DIGITS}g}")
    pattern = "¤#,##0" if rounded >= 1 else "¤#,##0.00"
    text = format_currency(
        rounded,
        currency,
        pattern,
        locale=LANGUAGES[language].dates.locale,
        currency_digits=False,
    )
    return f"about {text}"
