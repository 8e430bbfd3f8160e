"""Cures in words, as the end of a sentence."""

from tapmodel.findings import Cure, Setting


def setting_text(setting: Setting) -> str:
    """One value, as the middle of a sentence that begins with "set"."""
    words = f"{setting.field} {setting.bound} {setting.text} {setting.unit}".rstrip()
    gone = f" (in place of {' and '.join(setting.replaces)})" if setting.replaces else ""
    return words + gone


def cure_text(cure: Cure) -> str:
    """All values of a cure, as the middle of such a sentence."""
    return " and ".join(map(setting_text, cure.settings))


def applied(cure: Cure) -> str:
    """What a job was given by a cure: "flutes.count = 3"."""
    values = (f"{each.field} = {each.text} {each.unit}".rstrip() for each in cure.settings)
    return ", ".join(values)


def advice(cures: tuple[Cure, ...]) -> str:
    """What to set, one cure or another: "set ..."; "" without cures."""
    if not cures:
        return ""
    apart = ", or " if any(len(cure.settings) > 1 for cure in cures) else " or "
    return f"set {apart.join(map(cure_text, cures))}"
