"""A copy held against its source: alignment, differences, fidelity, space."""
