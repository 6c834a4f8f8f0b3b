"""Sentences in the household's units: what a sentence measures in °F, lb, ft ... said in °C, kg, m.

The figures of a sentence are text (many come with the published tables), so they are found where
they stand and said anew by their words. No figure that safety rests on may come out milder: what
is at most is rounded down, what is at least is rounded up, a range never grows wider, pressure is
rounded up, and altitude down, where a process changes at it. What was merely measured is rounded
to the nearest. Factors: NIST SP 811, appendix B (from memory).

A jar of a published table keeps its name and says the metric jar it stands for, since a pint is no
half-litre (core/safety/metric_jars.py).
"""

from pantry_tui.core.metric.sentence import in_metric as in_metric
from pantry_tui.core.metric.sentence import in_us as in_us
from pantry_tui.core.metric.sentence import is_measure as is_measure
from pantry_tui.core.metric.sentence import us_contents as us_contents
