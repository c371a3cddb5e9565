"""rackboard: says what each glued golf-club joint on the drying rack may bear."""

__version__ = "0.1.0"
