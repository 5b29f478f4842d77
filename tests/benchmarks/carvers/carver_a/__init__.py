"""A simulated engraver who plans with a brush draft on a paper strip, well or badly.

The text passes through four hands: the print it was taken from (wording), the writer's habits,
his eye and memory (slips), and the draft: he judges by eye how much the strip holds, saves
signs until he believes it fits, then cuts, and only while cutting finds out whether strip, seal
and metal agree. Lengths in mm: invented or from memory, unmeasured.
"""

from carvers.carver_a.plates import plates as plates
