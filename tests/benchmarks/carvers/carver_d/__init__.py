"""A simulated carver who works from a print that may differ, plans or not, and cuts to the foot.

Written by one who knew what the trade says of space, and had read no weights and no other carver.
"""

from carvers.carver_d.plates import plates

__all__ = ["plates"]
