"""Pure values and functions of the bench: no files, no Qt, no clock of their own."""
