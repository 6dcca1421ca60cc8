"""An attempt before, between and after its sittings: papers, pins, its record's place, and the station put together."""
