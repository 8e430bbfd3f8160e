"""Turns and holes of a dividing head in words."""

from tapmodel.shop.dividing import Crank


def crank_text(crank: Crank) -> str:
    """How far the crank goes: "5 turns + 15 holes on 21"."""
    turns = f"{crank.turns} turn" if crank.turns == 1 else f"{crank.turns} turns"
    if crank.holes == 0:
        return turns
    holes = "hole" if crank.holes == 1 else "holes"
    on = f"{crank.holes} {holes} on {crank.circle}"
    return f"{turns} + {on}" if crank.turns else on


def move_text(moves: tuple[Crank, ...]) -> str:
    """One move by every circle that gives it exactly, and how the sector arms stand for it."""
    first, *others = moves
    move = crank_text(first)
    if first.circle == 0:
        return f"{move}; any circle will do."
    arms = f"the sector arms enclose {first.holes + 1} holes, with the one that the pin stands in"
    same = ", ".join(f"{other.holes} on {other.circle}" for other in others)
    return f"{move}; {arms}." + (f" The same: {same}." if same else "")


def off_text(degrees: float) -> str:
    """An error of the spindle without its sign: "0.1929° (11.6′)"."""
    return f"{abs(degrees):.4f}° ({abs(degrees) * 60:.1f}′)"
