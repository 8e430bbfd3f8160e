"""Sentences of the rules on the chamfer and the point."""

from tapmodel.designing.codes import Code
from tapmodel.report.words.sentence import Sentences, always

SENTENCES: Sentences = {
    Code.CHAMFER_ANGLE: always("The chamfer is no usable cone."),
    Code.CHAMFER_LENGTH: always("The chamfer leaves no full thread."),
    Code.POINT_DRILL: always("The tap will not start: its point is as thick as the drilled hole."),
    Code.POINT_SLIM: always("The point is a needle."),
}
