"""The planner at work in a process of its own."""
