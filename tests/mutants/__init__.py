"""Small faults put into the core, one at a time: a fault that no test notices is a test to write.

`python -m tests.mutants pantry_tui/core/keeping/rotation.py` tries every fault in that file;
without a file, in the whole core (hours). What a fault is says faults.py; which tests are asked
about which file, table.py; why a fault cannot matter, reasons.py.

A fault lives in the memory of a forked process and never on the disk, so that the tree may be
worked on meanwhile, and nothing is left behind. Needs a system that forks.
"""
