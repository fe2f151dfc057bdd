"""From the kitchen and its orders to a problem for the planner."""
