"""Drawings of plates, to scale."""
