"""Sentences of the rules on the steel of the tap."""

from tapmodel.designing.codes import Code
from tapmodel.findings import Finding
from tapmodel.report.words.sentence import Sentences, Writer, judged, low


def _in_stock(finding: Finding, _write: Writer) -> str:
    stock = ", ".join(finding.values.words("stock"))
    return f"The steel {finding.actual} is not among those of shop.steels ({stock})."


def _cold(finding: Finding, write: Writer) -> str:
    values = finding.values
    reached, asked = (write.temperature(at) for at in (judged(finding), low(finding)))
    why = "is to be carburised and hardened" if values.number("case") else "is to be hardened"
    nearest, bought = values.word("nearest"), values.word("bought")
    if nearest:
        rest = f"the nearest steel that it hardens is {nearest}"
    elif bought:
        rest = f"no steel in stock can be hardened in it; {bought} could"
    else:
        rest = "no steel of the tables can be hardened in it: have it done"
    return f"The furnace reaches {reached}, and {values.word('steel')} {why} from {asked}: {rest}."


SENTENCES: Sentences = {
    Code.STEEL_AT_HAND: _in_stock,
    Code.FURNACE_COLD: _cold,
}
