"""Plates rendered as photographs, by several authors' looks; ``contract`` says what a look is."""
