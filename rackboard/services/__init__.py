"""Use cases of the bench. No Qt, no SQL: they are handed a store and a clock."""
