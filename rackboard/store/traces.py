"""What the past has left on the shop's furniture: whether a place or a zone may still go."""

from __future__ import annotations

from rackboard.core.bench import Stay
from rackboard.store.rows import columns
from rackboard.store.store import Store


def stays_ever(store: Store, place_id: int, limit: int = 20) -> list[Stay]:
    """Return who has ever lain at a place, those who still do first, then the latest.

    It reads the whole past, for lack of an index: asked only when somebody removes a place.
    """
    rows = store._database.rows(
        f"SELECT {columns(Stay)} FROM stay WHERE place_id = ?"
        " ORDER BY to_us IS NOT NULL, from_us DESC, id DESC LIMIT ?",
        (place_id, limit),
    )
    return [Stay(*row) for row in rows]


def zone_has_record(store: Store, zone_id: int) -> bool:
    """Return whether temperatures, answers about nights or batches hang on a zone."""
    return bool(
        store._database.value(
            "SELECT EXISTS (SELECT 1 FROM reading WHERE zone_id = ?1)"
            " OR EXISTS (SELECT 1 FROM bridge WHERE zone_id = ?1)"
            " OR EXISTS (SELECT 1 FROM batch WHERE zone_id = ?1)",
            (zone_id,),
        )
    )
