"""How closely the core between the flutes is held."""

from tapmodel.standards.general_tolerances import Zone, general_zone

CORE_SHARE = 0.05
"""Share by which a core may be off at most: what is milled deeper or less deep changes the rake.
Rule of this program."""


def core_zone(core: float) -> Zone:
    """Least and greatest core [mm].

    Source: ISO 2768-1:1989, medium (from memory), within `CORE_SHARE`, a rule of this program.
    """
    widest = core * (1 - CORE_SHARE), core * (1 + CORE_SHARE)
    low, high = general_zone(core) or widest
    return max(low, widest[0]), min(high, widest[1])
