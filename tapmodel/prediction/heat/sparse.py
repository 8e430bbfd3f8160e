"""Symmetric matrices of few entries: what the diffusion needs of scipy, with types.

Loading takes a third of a second, so nothing imports this that a design waits for.
"""

from importlib import import_module
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.heat.grid import Floats, Numbers

# By name: the library tells no types.
_sparse: Any = import_module("scipy.sparse")
_linalg: Any = import_module("scipy.sparse.linalg")


class Sparse:
    """A symmetric matrix."""

    def __init__(self, matrix: Any) -> None:  # noqa: ANN401  (the library's own)
        """`matrix` as the library has it."""
        self._matrix = matrix

    @classmethod
    def summed(cls, rows: Numbers, columns: Numbers, values: Floats, size: int) -> "Sparse":
        """Of entries, those of one place added up."""
        entries = _sparse.coo_array((values, (rows, columns)), shape=(size, size))
        return cls(_sparse.csc_array(entries))

    def within(self, kept: NDArray[np.bool_]) -> "Sparse":
        """The rows and columns that are kept."""
        return Sparse(_sparse.csc_array(self._matrix[kept][:, kept]))

    def times(self, vector: Floats) -> Floats:
        """The product."""
        product: Floats = self._matrix @ vector
        return product

    def solved(self, scale: float, diagonal: Floats, right: Floats) -> Floats:
        """The x of `(diagonal + scale * self) x = right`."""
        whole = _sparse.csc_array(_sparse.diags_array(diagonal) + scale * self._matrix)
        options = {"SymmetricMode": True}
        factors = _linalg.splu(whole, permc_spec="MMD_AT_PLUS_A", options=options)
        found: Floats = factors.solve(right)
        return found
