"""The sums: units, flow, drops, dose, course, limits, working."""
