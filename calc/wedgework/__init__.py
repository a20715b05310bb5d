"""Wedgework: blocks of colour by short rows, from a swatch to steps that a model bed has knitted.

The smallest use, from a design file to a plan that has been carried out and judged:

    from wedgework.formats import read_design
    from wedgework.plan import plan_piece
    from wedgework.replay import replay_plan

    plan = plan_piece(read_design(text))
    judged = replay_plan(plan)

The rooms, from the ground up: say, problems, units, exact, gauge, bed, formats and declare, layout,
plan and replay, words and draw, calculators, catalogue, faces. Imports go down only.
"""
