-- The client file: who, what was asked and measured, what was planned and
-- what was printed. The same text runs on SQLite and on PostgreSQL: BYTEA holds
-- sealed bytes in both, moments and dates are ISO text, measurements have the
-- unit in their name.

-- +goose Up
CREATE TABLE client (
    id             TEXT NOT NULL PRIMARY KEY,
    created_at     TEXT NOT NULL,
    updated_at     TEXT NOT NULL,
    last_opened_at TEXT NOT NULL,
    archived_at    TEXT,
    next_visit     TEXT
);
CREATE INDEX client_by_next_visit ON client (next_visit);

CREATE TABLE record (
    id        TEXT NOT NULL PRIMARY KEY,
    client_id TEXT NOT NULL REFERENCES client (id) ON DELETE CASCADE,
    kind      TEXT NOT NULL,
    version   INTEGER NOT NULL CHECK (version > 0),
    saved_at  TEXT NOT NULL,
    body      BYTEA NOT NULL,
    UNIQUE (client_id, kind, version)
);
CREATE INDEX record_by_kind ON record (kind, client_id, version);

CREATE TABLE draft (
    id        TEXT NOT NULL UNIQUE,
    client_id TEXT NOT NULL REFERENCES client (id) ON DELETE CASCADE,
    form      TEXT NOT NULL,
    revision  INTEGER NOT NULL CHECK (revision > 0),
    saved_at  TEXT NOT NULL,
    body      BYTEA NOT NULL,
    PRIMARY KEY (client_id, form)
);

CREATE TABLE intake (
    id         TEXT NOT NULL PRIMARY KEY,
    client_id  TEXT NOT NULL REFERENCES client (id) ON DELETE CASCADE,
    visit_date TEXT NOT NULL,
    height_cm  DOUBLE PRECISION NOT NULL CHECK (height_cm > 0),
    weight_kg  DOUBLE PRECISION NOT NULL CHECK (weight_kg > 0),
    waist_cm   DOUBLE PRECISION CHECK (waist_cm > 0),
    pal        DOUBLE PRECISION CHECK (pal > 0),
    made_at    TEXT NOT NULL,
    body       BYTEA NOT NULL,
    UNIQUE (id, client_id)
);
CREATE INDEX intake_by_client ON intake (client_id, visit_date, made_at);

CREATE TABLE plan_version (
    id               TEXT NOT NULL PRIMARY KEY,
    client_id        TEXT NOT NULL REFERENCES client (id) ON DELETE CASCADE,
    intake_id        TEXT NOT NULL,
    number           INTEGER NOT NULL CHECK (number > 0),
    made_at          TEXT NOT NULL,
    body             BYTEA NOT NULL,
    handout_settings BYTEA NOT NULL,
    UNIQUE (client_id, number),
    UNIQUE (id, client_id),
    FOREIGN KEY (intake_id, client_id) REFERENCES intake (id, client_id) ON DELETE CASCADE
);
CREATE INDEX plan_version_by_intake ON plan_version (intake_id, client_id);

CREATE TABLE handout (
    id              TEXT NOT NULL PRIMARY KEY,
    client_id       TEXT NOT NULL REFERENCES client (id) ON DELETE CASCADE,
    plan_version_id TEXT NOT NULL,
    kind            TEXT NOT NULL,
    made_at         TEXT NOT NULL,
    sha256          TEXT NOT NULL,
    FOREIGN KEY (plan_version_id, client_id) REFERENCES plan_version (id, client_id) ON DELETE CASCADE
);
CREATE INDEX handout_by_client ON handout (client_id, made_at);
CREATE INDEX handout_by_plan_version ON handout (plan_version_id, client_id);
