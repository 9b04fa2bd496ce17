-- The audit trail: who was opened, changed, printed, exported, deleted and when.
-- An entry has no reference to the client, because it outlives it; the subject
-- is a one-way name of the client's id. Each link is a hash over the entry and
-- the link before, the head says how many entries there are.

-- +goose Up
CREATE TABLE audit (
    number   INTEGER NOT NULL PRIMARY KEY CHECK (number > 0),
    at       TEXT NOT NULL,
    action   TEXT NOT NULL,
    subject  TEXT NOT NULL,
    body     BYTEA NOT NULL,
    body_sum BYTEA NOT NULL,
    link     BYTEA NOT NULL
);
CREATE INDEX audit_by_subject ON audit (subject, number);

CREATE TABLE audit_head (
    id      INTEGER NOT NULL PRIMARY KEY CHECK (id = 1),
    entries INTEGER NOT NULL CHECK (entries > 0),
    link    BYTEA NOT NULL,
    body    BYTEA NOT NULL
);
