"""Lists that are typed as one text: "1/8in, 1/4in"."""


def entries_of(value: object) -> object:
    """The entries of a text with commas between; whatever else it is, as it is."""
    if not isinstance(value, str):
        return value
    return [entry.strip() for entry in value.strip().removesuffix(",").split(",")]
