"""A simulated carver who works from a print that may differ, plans or not, and cuts to the foot.

Written by one who knew the trade's page and no model, weight or other carver.
"""

from .plates import plates

__all__ = ["plates"]
