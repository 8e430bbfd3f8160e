"""How long a wrench bears a torque by hand."""

HAND_FORCE = 150.0
"""What one hand gives a wrench at its end and still feels what the tap does [N]: some 15 kg, less
than half of what an arm can pull (common practice)."""

WRENCH, INCH_WRENCH = 250.0, 254.0
"""Overall length of a tap wrench as small shops have one for M6 to M12, and the round number of
inches next to it [mm] (common practice)."""


def pull(torque: float, length: float) -> float:
    """Force of each of two hands at the ends of a wrench that give a torque [N].

    Args:
        torque: [N·m].
        length: of the wrench over both hands [mm].

    Source: the lever's law.
    """
    return 1e3 * torque / length


def wrench_length(torque: float, hand_force: float = HAND_FORCE) -> float:
    """Overall length of a two-handed wrench with which two hands give just a torque [mm].

    A longer one passes it before the hands notice.

    Args:
        torque: [N·m].
        hand_force: of each hand, at an end [N].

    Source: the lever's law.
    """
    return 1e3 * torque / hand_force
