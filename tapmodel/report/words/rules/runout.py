"""Sentences of the rules on the ends of the flutes."""

from tapmodel.designing.codes import Code
from tapmodel.report.words.sentence import Sentences, always

SENTENCES: Sentences = {
    Code.FLUTE_LENGTH: always("The flutes end inside the thread."),
    Code.RUNOUT_SQUARE: always("The flutes run out too near the square."),
    Code.CORE_BEHIND: always("Neck or shank is thinner than the web of the flutes."),
    Code.RUNOUT_SHOULDER: always("The cutter runs out of the neck and cuts the shoulder again."),
    Code.STEP_ROOT: always("The blank behind the thread is as thick as its root."),
}
