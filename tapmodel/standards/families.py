"""What the standards of each family of threads give: form, sizes, limits of hole and tap.

A new family: its rules in a module of its own, and a line here.
"""

from tapmodel.standards.acme import rules as acme
from tapmodel.standards.family_rules import FamilyRules
from tapmodel.standards.metric import rules as metric
from tapmodel.standards.trapezoidal import rules as trapezoidal
from tapmodel.standards.unified import miniature
from tapmodel.standards.unified import rules as unified
from tapmodel.standards.whitworth import ba, pipe
from tapmodel.standards.whitworth import rules as whitworth
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
