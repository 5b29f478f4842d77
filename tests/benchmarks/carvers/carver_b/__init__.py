"""A simulated carver as a physicist sees him: sign sizes walk at random, he looks ahead at times.

The graver goes down the plate stroke by stroke. The logarithm of the sign size is a random walk
with drift and a weak pull home. Now and then the carver looks ahead an exponentially
distributed number of signs; only when the end (of column or text) lies within that view does he
feel pressure, and then he squeezes, shortens or drops. Some never look. Callipers then measure
with an offset, a scale error, scatter, favourite digits and rare blunders. Lengths are mm; a
size is the column advance of a sign of weight 1.
"""

from carvers.carver_b.plates import plates as plates
