"""A second judge of food safety, written from the papers alone, and what it is held against.

`world` says what can happen, `papers` what is published, `evaluator` what follows, `histories`
makes random lives of containers, and `adapter` is the one file that knows the program.
"""
