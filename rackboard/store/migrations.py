"""The schema, in numbered steps that never change once they are released.

A step runs in one transaction together with its number (`user_version`), so a file is
always at a whole step. To change the schema add a step below and a dump of the last
released schema to the tests; never edit a step.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from rackboard.store.connection import APPLICATION_ID, Database

_STEP_1: Final = (
    """
    CREATE TABLE setting (
        key TEXT PRIMARY KEY NOT NULL,
        value TEXT NOT NULL
    ) STRICT, WITHOUT ROWID""",
    """
    CREATE TABLE person (
        initials TEXT PRIMARY KEY NOT NULL,
        last_used_us INTEGER NOT NULL
    ) STRICT, WITHOUT ROWID""",
    """
    CREATE TABLE customer (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        name TEXT NOT NULL,
        phone TEXT NOT NULL,
        erased_us INTEGER
    ) STRICT""",
    """
    CREATE TABLE job (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        number TEXT NOT NULL UNIQUE,
        customer_id INTEGER NOT NULL REFERENCES customer (id),
        created_us INTEGER NOT NULL,
        promised_us INTEGER,
        ready_us INTEGER,
        ready_by TEXT
    ) STRICT""",
    "CREATE INDEX job_customer ON job (customer_id)",
    """
    CREATE TABLE club (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        job_id INTEGER NOT NULL REFERENCES job (id),
        name TEXT NOT NULL,
        sort INTEGER NOT NULL
    ) STRICT""",
    "CREATE INDEX club_job ON club (job_id, sort)",
    """
    CREATE TABLE epoxy (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        sheet_json TEXT NOT NULL,
        typical INTEGER NOT NULL CHECK (typical IN (0, 1)),
        retired_us INTEGER
    ) STRICT""",
    """
    CREATE TABLE zone (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        name TEXT NOT NULL,
        sort INTEGER NOT NULL,
        heating_json TEXT
    ) STRICT""",
    """
    CREATE TABLE place (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        zone_id INTEGER REFERENCES zone (id),
        kind TEXT NOT NULL,
        name TEXT NOT NULL,
        prefix TEXT NOT NULL,
        rows INTEGER NOT NULL CHECK (rows >= 0),
        columns INTEGER NOT NULL CHECK (columns >= 0),
        sort INTEGER NOT NULL
    ) STRICT""",
    """
    CREATE TABLE batch (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        number INTEGER NOT NULL,
        epoxy_id INTEGER NOT NULL REFERENCES epoxy (id),
        sheet_json TEXT NOT NULL,
        lot TEXT NOT NULL,
        zone_id INTEGER NOT NULL REFERENCES zone (id),
        mixed_us INTEGER,
        racked_us INTEGER,
        looked_us INTEGER,
        mass_mg INTEGER
    ) STRICT""",
    "CREATE INDEX batch_number ON batch (number)",
    "CREATE INDEX batch_epoxy ON batch (epoxy_id)",
    "CREATE INDEX batch_zone ON batch (zone_id)",
    """
    CREATE TABLE joint (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        club_id INTEGER NOT NULL REFERENCES club (id),
        kind TEXT NOT NULL,
        lag_s INTEGER NOT NULL CHECK (lag_s >= 0),
        batch_id INTEGER REFERENCES batch (id),
        glued_us INTEGER,
        parts TEXT NOT NULL,
        parts_mc INTEGER,
        graphics TEXT NOT NULL,
        ended_us INTEGER,
        ended_as TEXT
    ) STRICT""",
    "CREATE INDEX joint_club ON joint (club_id)",
    "CREATE INDEX joint_batch ON joint (batch_id)",
    """
    CREATE INDEX joint_unglued ON joint (club_id)
        WHERE glued_us IS NULL AND ended_us IS NULL""",
    """
    CREATE TABLE stay (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        club_id INTEGER NOT NULL REFERENCES club (id),
        place_id INTEGER NOT NULL REFERENCES place (id),
        slot INTEGER CHECK (slot >= 0),
        from_us INTEGER NOT NULL,
        to_us INTEGER
    ) STRICT""",
    """
    CREATE UNIQUE INDEX stay_slot_taken ON stay (place_id, slot)
        WHERE to_us IS NULL AND slot IS NOT NULL""",
    "CREATE UNIQUE INDEX stay_of_club ON stay (club_id) WHERE to_us IS NULL",
    "CREATE INDEX stay_at_place ON stay (place_id) WHERE to_us IS NULL",
    "CREATE INDEX stay_history ON stay (club_id, from_us)",
    """
    CREATE TABLE reading (
        zone_id INTEGER NOT NULL REFERENCES zone (id),
        at_us INTEGER NOT NULL,
        temperature_mc INTEGER NOT NULL,
        u_mc INTEGER NOT NULL,
        source TEXT NOT NULL,
        PRIMARY KEY (zone_id, at_us)
    ) STRICT, WITHOUT ROWID""",
    """
    CREATE TABLE bridge (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        zone_id INTEGER NOT NULL REFERENCES zone (id),
        from_us INTEGER NOT NULL,
        to_us INTEGER NOT NULL CHECK (to_us > from_us),
        low_mc INTEGER NOT NULL,
        u_mc INTEGER NOT NULL,
        said_us INTEGER NOT NULL,
        by TEXT
    ) STRICT""",
    "CREATE INDEX bridge_zone ON bridge (zone_id, to_us)",
    # No reference: the journal of permissions outlives the undoing of a joint.
    """
    CREATE TABLE permission_grant (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        joint_id INTEGER NOT NULL,
        milestone TEXT NOT NULL,
        late_us INTEGER NOT NULL,
        printed_us INTEGER NOT NULL,
        given_us INTEGER NOT NULL,
        withdrawn_us INTEGER,
        reason TEXT
    ) STRICT""",
    "CREATE INDEX permission_grant_joint ON permission_grant (joint_id)",
    """
    CREATE TABLE hold (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        joint_id INTEGER NOT NULL REFERENCES joint (id),
        reason TEXT NOT NULL,
        detail TEXT NOT NULL,
        from_us INTEGER NOT NULL,
        to_us INTEGER,
        outcome TEXT,
        by TEXT
    ) STRICT""",
    "CREATE INDEX hold_joint ON hold (joint_id)",
    "CREATE INDEX hold_open ON hold (joint_id) WHERE to_us IS NULL",
    """
    CREATE TABLE event (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        at_us INTEGER NOT NULL,
        recorded_us INTEGER NOT NULL,
        kind TEXT NOT NULL,
        subject TEXT NOT NULL,
        subject_id INTEGER NOT NULL,
        by TEXT,
        data_json TEXT NOT NULL
    ) STRICT""",
    "CREATE INDEX event_at ON event (at_us)",
    "CREATE INDEX event_kind ON event (kind, at_us)",
    "CREATE INDEX event_subject ON event (subject, subject_id, at_us)",
    """
    CREATE TABLE notice (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        key TEXT NOT NULL UNIQUE,
        kind TEXT NOT NULL,
        subject TEXT NOT NULL,
        subject_id INTEGER NOT NULL,
        due_us INTEGER NOT NULL,
        raised_us INTEGER NOT NULL,
        seen_us INTEGER,
        withdrawn_us INTEGER,
        couriers_json TEXT
    ) STRICT""",
    "CREATE INDEX notice_raised ON notice (raised_us)",
    "CREATE INDEX notice_subject ON notice (subject, subject_id)",
    """
    CREATE INDEX notice_open ON notice (due_us)
        WHERE seen_us IS NULL AND withdrawn_us IS NULL""",
    """
    CREATE TABLE former (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        table_name TEXT NOT NULL,
        row_key TEXT NOT NULL,
        column_name TEXT NOT NULL,
        old_json TEXT NOT NULL,
        new_json TEXT NOT NULL,
        changed_us INTEGER NOT NULL,
        by TEXT
    ) STRICT""",
    "CREATE INDEX former_row ON former (table_name, row_key)",
)

# Alerts have journals of their own; the notices of whole jobs become their first lines. What
# was raised before is not told again, whatever its couriers did.
_STEP_2: Final = (
    """
    CREATE TABLE alert (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        kind TEXT NOT NULL,
        subject_id INTEGER NOT NULL,
        batch_id INTEGER NOT NULL,
        episode INTEGER NOT NULL CHECK (episode > 0),
        phase TEXT NOT NULL,
        due_us INTEGER NOT NULL,
        raised_us INTEGER NOT NULL,
        data_json TEXT NOT NULL,
        ended_us INTEGER,
        taken_us INTEGER,
        taken_by TEXT,
        until_us INTEGER,
        accepted_mc INTEGER,
        first_told_us INTEGER,
        told_us INTEGER,
        closed_us INTEGER,
        closed_as TEXT,
        UNIQUE (kind, subject_id, batch_id, episode)
    ) STRICT""",
    "CREATE INDEX alert_due ON alert (due_us)",
    "CREATE INDEX alert_kind ON alert (kind, due_us)",
    "CREATE INDEX alert_open ON alert (due_us) WHERE closed_us IS NULL",
    """
    CREATE TABLE telling (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        key TEXT NOT NULL,
        kind TEXT NOT NULL,
        group_key TEXT NOT NULL,
        at_us INTEGER NOT NULL,
        sounded INTEGER NOT NULL CHECK (sounded IN (0, 1)),
        counted INTEGER NOT NULL CHECK (counted IN (0, 1)),
        data_json TEXT NOT NULL,
        couriers_json TEXT
    ) STRICT""",
    "CREATE INDEX telling_at ON telling (at_us)",
    """
    CREATE INDEX permission_grant_standing ON permission_grant (late_us)
        WHERE withdrawn_us IS NULL""",
    """
    CREATE INDEX permission_grant_withdrawn ON permission_grant (withdrawn_us)
        WHERE withdrawn_us IS NOT NULL""",
    "CREATE INDEX telling_untold ON telling (at_us) WHERE couriers_json IS NULL",
    """
    INSERT INTO alert (kind, subject_id, batch_id, episode, phase, due_us, raised_us, data_json,
        taken_us, first_told_us, told_us, closed_us, closed_as)
    SELECT 'job safe', subject_id, 0,
        row_number() OVER (PARTITION BY subject_id ORDER BY raised_us, id),
        CASE WHEN withdrawn_us IS NOT NULL THEN 'closed' WHEN seen_us IS NOT NULL THEN 'seen'
            ELSE 'due, unseen' END,
        due_us, raised_us, '{}', seen_us, raised_us, raised_us, withdrawn_us,
        CASE WHEN withdrawn_us IS NOT NULL THEN 'withdrawn' END
    FROM notice WHERE kind = 'job safe'""",
    # Nor is what was withdrawn before there were alarms of it.
    """
    INSERT INTO alert (kind, subject_id, batch_id, episode, phase, due_us, raised_us, data_json,
        closed_us, closed_as)
    SELECT 'withdrawn', joint_id, 0, 1, 'closed', max(withdrawn_us), max(withdrawn_us),
        json_object('grants', json_group_array(id), 'milestone', milestone, 'was_us', printed_us,
            'reason', coalesce(reason, '')),
        max(withdrawn_us), 'before there were alarms'
    FROM permission_grant WHERE withdrawn_us IS NOT NULL GROUP BY joint_id""",
    "DROP TABLE notice",
)

# A person lets a joint go before the board does.
_STEP_3: Final = (
    """
    CREATE TABLE release (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        joint_id INTEGER NOT NULL REFERENCES joint (id),
        milestone TEXT NOT NULL,
        by TEXT NOT NULL,
        at_us INTEGER NOT NULL,
        reason TEXT NOT NULL
    ) STRICT""",
    "CREATE INDEX release_joint ON release (joint_id)",
)

STEPS: Final[tuple[tuple[str, ...], ...]] = (_STEP_1, _STEP_2, _STEP_3)
"""Step n stands at n - 1."""

NEWEST: Final = len(STEPS)


def migrate(
    database: Database,
    before: Callable[[], object] | None = None,
    steps: tuple[tuple[str, ...], ...] | None = None,
) -> int:
    """Bring a file to the newest schema, step by step.

    Parameters
    ----------
    database : Database
        An open file that `connect` has checked.
    before : callable, optional
        Called once before the first step, if the file already holds data: the backup.
    steps : tuple, optional
        Other steps than `STEPS`; given by tests.

    Returns
    -------
    int
        How many steps were taken.

    Raises
    ------
    StoreError
        If the disk is full or the file is damaged; the file stays at a whole step.
    """
    version = int(database.value("PRAGMA user_version"))
    todo = (STEPS if steps is None else steps)[version:]
    if todo and version > 0 and before is not None:
        before()
    for number, step in enumerate(todo, start=version + 1):
        database.begin()
        try:
            for statement in step:
                database.rows(statement)
            database.rows(f"PRAGMA application_id={APPLICATION_ID}")
            database.rows(f"PRAGMA user_version={number}")
        except BaseException:
            database.rollback()
            raise
        database.commit()
    return len(todo)
