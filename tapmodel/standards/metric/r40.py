"""The R40 series of preferred numbers, to which ISO 965-1 rounds its computed tolerances."""

import math

R40 = (
    *(100, 106, 112, 118, 125, 132, 140, 150, 160, 170),
    *(180, 190, 200, 212, 224, 236, 250, 265, 280, 300),
    *(315, 335, 355, 375, 400, 425, 450, 475, 500, 530),
    *(560, 600, 630, 670, 710, 750, 800, 850, 900, 950),
)


def round_to_r40(value: float) -> float:
    """Nearest number of the R40 series, the lower one when `value` (> 0) lies half-way.

    Source: ISO 3, series R40, rounded values (from memory).
    """
    decade = math.floor(math.log10(value))
    series = (*R40, 1000)
    return min((n / 10.0 ** (2 - decade) for n in series), key=lambda n: abs(n - value))


def whole_micrometres(value: float) -> int:
    """Nearest R40 number in whole micrometres; a half goes to the even number.

    The printed tables show that parity: 26.5 is printed 26, 31.5 is printed 32, 42.5 is 42.

    Source: ISO 965-1:1998, clause 13 (rounding to R40 from memory); parity derived here.
    """
    return round(round_to_r40(value))
