"""Record, read and collate the inscriptions on Japanese sword fittings."""

__version__ = "0.1.0"
