"""Every thread form with every relief, one to three starts and either hand: refused, or closed.

A sample with each of them is built and proved whole.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache
from itertools import product

import numpy as np
import pytest
from sweeps import in_part

from tapmodel import precision
from tapmodel.checks.proof.mesh import prove_mesh
from tapmodel.checks.proof.solid import prove_solid
from tapmodel.checks.proof.verdict import faults
from tapmodel.designing.codes import Code
from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.errors import NoTapError
from tapmodel.geometry.kernel.build import build
from tapmodel.geometry.trace.keys import FaceKind
from tapmodel.geometry.trace.skin import first_skin
from tapmodel.shape.parting import AS_DESIGNED
from tapmodel.spec.designation import parse
from tapmodel.spec.job_file import checked
from tapmodel.tap.tap import Tap
from tapmodel.words import Family, Hand

# How a small size of each form is written with one, two and three starts; where only one can be
# written the others are given to the tap itself.
FORMS: dict[str, tuple[str, ...]] = {
    "metric": ("M6", "M6xPh2P1", "M6xPh3P1"),
    "miniature": ("1.00 UNM",),
    "Unified": ("1/4-20 UNC-2B",),
    "BSW": ("1/4 BSW",),
    "BSF": ("1/4 BSF",),
    "BA": ("2 BA",),
    "pipe": ("G 1/8",),
    "trapezoidal": ("Tr8x1.5", "Tr8x3P1.5", "Tr8x4.5P1.5"),
    "Acme": (
        "1/4-16 ACME-2G",
        "0.25-0.0625P-0.125L-ACME-2G",
        "0.25-0.0625P-0.1875L-ACME-2G",
    ),
}
ROUND = {"BSW", "BSF", "BA", "pipe"}
THREADS = ("concentric", "con-eccentric crest", "con-eccentric", "eccentric crest", "eccentric")
"""Reliefs of the thread: of the whole profile where nothing else is said."""
CHAMFERS = ("concentric", "con-eccentric", "eccentric")
STARTS = (1, 2, 3)
TURNS = 6


@dataclass(frozen=True, slots=True)
class Member:
    """One of the family."""

    form: str
    thread: str
    chamfer: str
    starts: int

    @property
    def refused(self) -> bool:
        """Whether a round crest would be relieved alone, which leaves it neither round nor flat."""
        return self.form in ROUND and self.thread.endswith("crest")

    def design(self, hand: Hand) -> TapDesign:
        """As designed, but with several starts that cannot be written."""
        written = FORMS[self.form]
        text = written[min(self.starts, len(written)) - 1]
        kind, _, crest = self.thread.partition(" ")
        place = {} if kind == "concentric" else {"applies_to": crest or "thread"}
        job: dict[str, object] = {
            "designation": f"{text}-LH" if hand is Hand.LEFT else text,
            "relief": {"thread": {"kind": kind} | place, "chamfer": {"kind": self.chamfer}},
            "chamfer": {"form": "bottoming"},
            "blank": {"thread_length": round(TURNS * _pitch(text), 3)},
        }
        design = settle(checked(job))
        thread = replace(design.tap.thread, starts=self.starts)
        return replace(design, tap=replace(design.tap, thread=thread))


@cache
def _pitch(designation: str) -> float:
    return settle(checked({"designation": designation})).tap.thread.pitch


def _family() -> Iterator[Member]:
    """Each form with each relief of the thread and number of starts; the chamfer's go round."""
    for (f, form), (t, thread), starts in product(enumerate(FORMS), enumerate(THREADS), STARTS):
        yield Member(form, thread, CHAMFERS[(f + t + starts) % len(CHAMFERS)], starts)


FAMILY = tuple(_family())
ADMITTED = tuple(member for member in FAMILY if not member.refused)
CLOSED = ADMITTED[::4]
"""Of which edges are found: every form, relief and number of starts."""


def test_the_family_has_every_form_and_every_relief_with_every_other() -> None:
    assert {parse(text).family for texts in FORMS.values() for text in texts} == set(Family)
    assert {(m.thread, m.chamfer) for m in ADMITTED} == set(product(THREADS, CHAMFERS))
    assert {(m.form, m.chamfer) for m in ADMITTED} == set(product(FORMS, CHAMFERS))
    assert {(m.starts, m.chamfer) for m in ADMITTED} == set(product(STARTS, CHAMFERS))
    assert {(m.starts, m.chamfer) for m in CLOSED} == set(product(STARTS, CHAMFERS))
    assert ({m.form for m in CLOSED}, {m.thread for m in CLOSED}) == (set(FORMS), set(THREADS))


@pytest.mark.parametrize("member", [m for m in FAMILY if m.refused], ids=str)
def test_a_round_crest_relieved_alone_is_refused_by_its_rule(member: Member) -> None:
    for hand in Hand:
        with pytest.raises(NoTapError) as refusal:
            member.design(hand)
        assert refusal.value.finding.code == Code.RELIEF_PLACE


@pytest.mark.parametrize("member", in_part(CLOSED), ids=str)
def test_a_member_of_the_family_is_admitted_in_either_hand_and_closes(member: Member) -> None:
    right, left = (member.design(hand) for hand in Hand)
    assert right.errors == left.errors == ()
    # Edges are those of the right hand; the solid is mirrored at the very end.
    assert left.tap == replace(right.tap, thread=replace(right.tap.thread, hand=Hand.LEFT))
    _closes(right.tap)


def _closes(tap: Tap) -> None:
    skin = first_skin(tap)
    loops = [len(found) for key, found in skin.loops.items() if key.kind is not FaceKind.RING]
    # One disc up to the joint, where a hole in a face counts as a face more instead of one less.
    over = len(skin.corners) - len(skin.edges) + sum(loops) - 1
    assert over >= 0
    assert over % 2 == 0
    cones = {key.land for key in skin.loops if key.kind is FaceKind.CONE}
    assert cones == set(range(skin.form.lands))
    if not tap.thread.rounded_crest:
        # Whatever relief falls away behind them, crest edges are where the crests are.
        reach = np.hypot(skin.corners[:, 0], skin.corners[:, 1]).max()
        foot = skin.form.turned[0].start_radius
        assert reach == pytest.approx(max(tap.thread.major / 2, foot), rel=1e-12)


PROVED = {
    Member("metric", "con-eccentric", "con-eccentric", 3): Hand.LEFT,
    Member("metric", "eccentric crest", "concentric", 1): Hand.RIGHT,
    Member("miniature", "con-eccentric crest", "eccentric", 3): Hand.RIGHT,
    Member("Unified", "concentric", "concentric", 2): Hand.LEFT,
    Member("BSW", "eccentric", "con-eccentric", 2): Hand.RIGHT,
    Member("BSF", "concentric", "concentric", 1): Hand.LEFT,
    Member("BA", "con-eccentric", "eccentric", 3): Hand.RIGHT,
    Member("pipe", "concentric", "con-eccentric", 1): Hand.RIGHT,
    Member("pipe", "eccentric", "concentric", 3): Hand.LEFT,
    Member("trapezoidal", "eccentric", "eccentric", 1): Hand.LEFT,
    # With a hole in a face.
    Member("Acme", "eccentric", "con-eccentric", 1): Hand.RIGHT,
    Member("Acme", "concentric", "eccentric", 2): Hand.LEFT,
}


def test_the_sample_has_every_kind_in_either_hand() -> None:
    assert {m.form for m in PROVED} == set(FORMS)
    assert {(m.chamfer, m.starts) for m in PROVED} == set(product(CHAMFERS, STARTS))
    assert {m.thread for m in PROVED} == set(THREADS)
    assert {(m.starts, hand) for m, hand in PROVED.items()} == set(product(STARTS, Hand))


@pytest.mark.parametrize("member", PROVED, ids=str)
def test_a_sample_is_built_and_proved(member: Member) -> None:
    tap = member.design(PROVED[member]).tap
    chord = 2 * precision.mesh_chord(tap.thread.pitch, tap.thread.major)
    built = build(tap, chord)
    proof = prove_solid(tap, built.solid, built.facets)
    assert faults(proof, prove_mesh(built.mesh, chord)) == []
    assert built.parting == AS_DESIGNED
    # Far closer than what a user's model is held to.
    assert (proof.solids, proof.genus, proof.valid) == (1, 0, True)
    assert abs(proof.volume_relative_error) < 1e-6
    assert max(proof.deviation_um_max, proof.ideal_um_max) < 1e-3
    assert (proof.sliver_faces, proof.unmeasured) == (0, ())
