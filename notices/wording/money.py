"""Sums of money as one says them: about £12,300."""

from __future__ import annotations

from babel.numbers import format_currency

from notices.wording.language import LANGUAGES

_DIGITS = 2
"""An estimate is no more exact than that."""


def about(amount: float, currency: str, language: str) -> str:
    """Write a sum to two digits, as an estimate has them: about £12,000."""
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
