-- The key ring of a sealed file and what belongs to it: the ring and its second
-- copy, work on the seals that is not finished, the count of wrong passphrases.
-- Nothing here is readable without the passphrase or the recovery code, but the
-- count.

-- +goose Up
CREATE TABLE vault (
    name TEXT NOT NULL PRIMARY KEY,
    body BYTEA NOT NULL
);
