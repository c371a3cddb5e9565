"""The data file and the folders: SQLite behind plain values of the bench."""

from rackboard.store.store import Store

__all__ = ["Store"]
