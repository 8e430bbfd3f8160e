"""A few numbers and words by name, for a sentence that is made elsewhere."""

from collections.abc import Iterator, Mapping

Value = float | str | tuple[str, ...]


class Values(Mapping[str, Value]):
    """Numbers with all their digits, and words; frozen, and fit to travel between processes."""

    __slots__ = ("_held",)

    def __init__(self, **held: Value) -> None:
        """Hold each under its name."""
        self._held = held

    def __getitem__(self, name: str) -> Value:
        """What is held under the name."""
        return self._held[name]

    def __iter__(self) -> Iterator[str]:
        """The names."""
        return iter(self._held)

    def __len__(self) -> int:
        """How many there are."""
        return len(self._held)

    def __hash__(self) -> int:
        """Of names and values alike, in any order."""
        return hash(frozenset(self._held.items()))

    def __repr__(self) -> str:
        """As it is made."""
        return f"Values({', '.join(f'{name}={value!r}' for name, value in self._held.items())})"

    def number(self, name: str) -> float:
        """The number of that name.

        Raises:
            KeyError: nothing is held under the name.
            TypeError: what is held is no number.
        """
        value = self._held[name]
        if isinstance(value, str | tuple):
            raise TypeError(name)
        return value

    def word(self, name: str) -> str:
        """The word of that name; errors as `number`."""
        value = self._held[name]
        if not isinstance(value, str):
            raise TypeError(name)
        return value

    def words(self, name: str) -> tuple[str, ...]:
        """The words of that name; errors as `number`."""
        value = self._held[name]
        if not isinstance(value, tuple):
            raise TypeError(name)
        return value


NO_VALUES = Values()
"""None at all."""
