"""How far the tailstock is set over to cut the back taper of a tap between centres."""

from tapmodel.tap.tap import Tap


def tailstock_set_over(tap: Tap) -> float:
    """Half the taper over the whole length that is held between the centres [mm].

    Set over so that the tool cuts deeper towards the shank; the shank, which stays a cylinder, is
    turned before. The thread's pitch is then that of the lathe within a millionth.

    Args:
        tap: any.

    Source: common practice of turning tapers between centres.
    """
    return tap.thread.narrowing * tap.blank.overall_length
