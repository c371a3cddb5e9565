PRAGMA application_id=1918985067;
PRAGMA user_version=3;
CREATE TABLE setting (
        key TEXT PRIMARY KEY NOT NULL,
        value TEXT NOT NULL
    ) STRICT, WITHOUT ROWID;
CREATE TABLE person (
        initials TEXT PRIMARY KEY NOT NULL,
        last_used_us INTEGER NOT NULL
    ) STRICT, WITHOUT ROWID;
CREATE TABLE customer (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        name TEXT NOT NULL,
        phone TEXT NOT NULL,
        erased_us INTEGER
    ) STRICT;
CREATE TABLE job (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        number TEXT NOT NULL UNIQUE,
        customer_id INTEGER NOT NULL REFERENCES customer (id),
        created_us INTEGER NOT NULL,
        promised_us INTEGER,
        ready_us INTEGER,
        ready_by TEXT
    ) STRICT;
CREATE INDEX job_customer ON job (customer_id);
CREATE TABLE club (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        job_id INTEGER NOT NULL REFERENCES job (id),
        name TEXT NOT NULL,
        sort INTEGER NOT NULL
    ) STRICT;
CREATE INDEX club_job ON club (job_id, sort);
CREATE TABLE epoxy (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        sheet_json TEXT NOT NULL,
        typical INTEGER NOT NULL CHECK (typical IN (0, 1)),
        retired_us INTEGER
    ) STRICT;
CREATE TABLE zone (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        name TEXT NOT NULL,
        sort INTEGER NOT NULL,
        heating_json TEXT
    ) STRICT;
CREATE TABLE place (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        zone_id INTEGER REFERENCES zone (id),
        kind TEXT NOT NULL,
        name TEXT NOT NULL,
        prefix TEXT NOT NULL,
        rows INTEGER NOT NULL CHECK (rows >= 0),
        columns INTEGER NOT NULL CHECK (columns >= 0),
        sort INTEGER NOT NULL
    ) STRICT;
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
    ) STRICT;
CREATE INDEX batch_number ON batch (number);
CREATE INDEX batch_epoxy ON batch (epoxy_id);
CREATE INDEX batch_zone ON batch (zone_id);
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
    ) STRICT;
CREATE INDEX joint_club ON joint (club_id);
CREATE INDEX joint_batch ON joint (batch_id);
CREATE INDEX joint_unglued ON joint (club_id)
        WHERE glued_us IS NULL AND ended_us IS NULL;
CREATE TABLE stay (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        club_id INTEGER NOT NULL REFERENCES club (id),
        place_id INTEGER NOT NULL REFERENCES place (id),
        slot INTEGER CHECK (slot >= 0),
        from_us INTEGER NOT NULL,
        to_us INTEGER
    ) STRICT;
CREATE UNIQUE INDEX stay_slot_taken ON stay (place_id, slot)
        WHERE to_us IS NULL AND slot IS NOT NULL;
CREATE UNIQUE INDEX stay_of_club ON stay (club_id) WHERE to_us IS NULL;
CREATE INDEX stay_at_place ON stay (place_id) WHERE to_us IS NULL;
CREATE INDEX stay_history ON stay (club_id, from_us);
CREATE TABLE reading (
        zone_id INTEGER NOT NULL REFERENCES zone (id),
        at_us INTEGER NOT NULL,
        temperature_mc INTEGER NOT NULL,
        u_mc INTEGER NOT NULL,
        source TEXT NOT NULL,
        PRIMARY KEY (zone_id, at_us)
    ) STRICT, WITHOUT ROWID;
CREATE TABLE bridge (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        zone_id INTEGER NOT NULL REFERENCES zone (id),
        from_us INTEGER NOT NULL,
        to_us INTEGER NOT NULL CHECK (to_us > from_us),
        low_mc INTEGER NOT NULL,
        u_mc INTEGER NOT NULL,
        said_us INTEGER NOT NULL,
        by TEXT
    ) STRICT;
CREATE INDEX bridge_zone ON bridge (zone_id, to_us);
CREATE TABLE permission_grant (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        joint_id INTEGER NOT NULL,
        milestone TEXT NOT NULL,
        late_us INTEGER NOT NULL,
        printed_us INTEGER NOT NULL,
        given_us INTEGER NOT NULL,
        withdrawn_us INTEGER,
        reason TEXT
    ) STRICT;
CREATE INDEX permission_grant_joint ON permission_grant (joint_id);
CREATE TABLE hold (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        joint_id INTEGER NOT NULL REFERENCES joint (id),
        reason TEXT NOT NULL,
        detail TEXT NOT NULL,
        from_us INTEGER NOT NULL,
        to_us INTEGER,
        outcome TEXT,
        by TEXT
    ) STRICT;
CREATE INDEX hold_joint ON hold (joint_id);
CREATE INDEX hold_open ON hold (joint_id) WHERE to_us IS NULL;
CREATE TABLE event (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        at_us INTEGER NOT NULL,
        recorded_us INTEGER NOT NULL,
        kind TEXT NOT NULL,
        subject TEXT NOT NULL,
        subject_id INTEGER NOT NULL,
        by TEXT,
        data_json TEXT NOT NULL
    ) STRICT;
CREATE INDEX event_at ON event (at_us);
CREATE INDEX event_kind ON event (kind, at_us);
CREATE INDEX event_subject ON event (subject, subject_id, at_us);
CREATE TABLE former (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        table_name TEXT NOT NULL,
        row_key TEXT NOT NULL,
        column_name TEXT NOT NULL,
        old_json TEXT NOT NULL,
        new_json TEXT NOT NULL,
        changed_us INTEGER NOT NULL,
        by TEXT
    ) STRICT;
CREATE INDEX former_row ON former (table_name, row_key);
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
    ) STRICT;
CREATE INDEX alert_due ON alert (due_us);
CREATE INDEX alert_kind ON alert (kind, due_us);
CREATE INDEX alert_open ON alert (due_us) WHERE closed_us IS NULL;
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
    ) STRICT;
CREATE INDEX telling_at ON telling (at_us);
CREATE INDEX permission_grant_standing ON permission_grant (late_us)
        WHERE withdrawn_us IS NULL;
CREATE INDEX permission_grant_withdrawn ON permission_grant (withdrawn_us)
        WHERE withdrawn_us IS NOT NULL;
CREATE INDEX telling_untold ON telling (at_us) WHERE couriers_json IS NULL;
CREATE TABLE release (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        joint_id INTEGER NOT NULL REFERENCES joint (id),
        milestone TEXT NOT NULL,
        by TEXT NOT NULL,
        at_us INTEGER NOT NULL,
        reason TEXT NOT NULL
    ) STRICT;
CREATE INDEX release_joint ON release (joint_id);
