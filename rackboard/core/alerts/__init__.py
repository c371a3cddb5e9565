"""When the board speaks, and when it stays silent."""
