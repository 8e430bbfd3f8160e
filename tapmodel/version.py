"""The program's version; it stands in every record."""

__version__ = "0.4.0"
