"""The entry as TEI P5, after the EpiDoc conventions."""
