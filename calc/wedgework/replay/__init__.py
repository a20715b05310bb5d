"""A model bed that carries out the steps of a plan and judges them. It knows no planner.

    judged = replay_plan(plan)
    judged.problems, judged.rows_min, judged.rows_max, judged.stitches
"""
