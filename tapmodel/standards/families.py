"""What the standards of each family of threads give: form, sizes, limits of hole and tap.

A new family: its rules in a module of its own, and a line here.
"""

from tapmodel.standards import (
    acme,
    ba,
    metric,
    miniature,
    pipe,
    trapezoidal,
    unified,
    whitworth,
)
from tapmodel.standards.family_rules import FamilyRules
from tapmodel.words import Family

FAMILIES: dict[Family, FamilyRules] = {
    Family.METRIC: metric.RULES,
    Family.MINIATURE: miniature.RULES,
    Family.WHITWORTH: whitworth.RULES,
    Family.BA: ba.RULES,
    Family.PIPE: pipe.RULES,
    Family.TRAPEZOIDAL: trapezoidal.RULES,
    Family.UNIFIED: unified.RULES,
    Family.ACME: acme.RULES,
}
