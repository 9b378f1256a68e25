-- Version 5 of the store: what the session had given when a revision was made, as JSON; empty where nothing was, and for revisions made before.
ALTER TABLE revisions ADD COLUMN doses TEXT NOT NULL DEFAULT '';
