-- What belongs to the practice and to the program rather than to a client.

-- +goose Up
CREATE TABLE setting (
    name     TEXT NOT NULL PRIMARY KEY,
    version  INTEGER NOT NULL CHECK (version > 0),
    saved_at TEXT NOT NULL,
    body     BYTEA NOT NULL
);

CREATE TABLE meta (
    name  TEXT NOT NULL PRIMARY KEY,
    value TEXT NOT NULL
);
