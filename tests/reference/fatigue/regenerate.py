"""Rows of ../fatigue.toml that nobody printed: Miner sums worked out without calc-core.

    python3 regenerate.py

Exact arithmetic where the numbers allow it, otherwise fifty digits.
"""

from decimal import Decimal, getcontext

getcontext().prec = 50


def cycles(constant, range_ksi):
    """N from F = 1000*(C/N)^0.333 ksi."""
    return Decimal(constant) * (Decimal(1000) / Decimal(range_ksi)) ** (
        Decimal(1) / Decimal("0.333")
    )


def damage(constant, full_ksi, blocks):
    return sum(
        Decimal(n) / cycles(constant, Decimal(full_ksi) * Decimal(s)) for s, n in blocks
    )


def equivalent(blocks, miles, slope):
    total = sum(Decimal(n) * Decimal(s) ** Decimal(slope) for s, n in blocks)
    return (total * Decimal(miles) / Decimal(2_000_000)) ** (Decimal(1) / Decimal(slope))


three = [("1", "0.01"), ("0.5", "2"), ("0.25", "40")]
print("miner-open-hole damage_per_mile", damage("2.2", "15", three))
print("miner-bolt damage_per_mile", damage("0.39", "20", three))
print("equivalent share", equivalent(three, "30000", "3"))
