-- Version 7 of the store: how the archive took an object, how often and when it was asked to commit to it and whether nothing more is asked by itself; every transaction in which that was done, as a report on any of them may come late.
ALTER TABLE dispatch_parts ADD COLUMN taken TEXT NOT NULL DEFAULT 'AS_SENT' CHECK (taken IN ('AS_SENT', 'ALTERED', 'BEFORE'));
ALTER TABLE dispatch_parts ADD COLUMN asked_times INTEGER NOT NULL DEFAULT 0;
ALTER TABLE dispatch_parts ADD COLUMN asked_last TEXT NOT NULL DEFAULT '';
ALTER TABLE dispatch_parts ADD COLUMN settled INTEGER NOT NULL DEFAULT 0 CHECK (settled IN (0, 1));
CREATE INDEX dispatch_parts_remarked ON dispatch_parts (dispatch_id) WHERE taken = 'ALTERED' OR settled = 1;

CREATE TABLE commitment_transactions (
  transaction_uid TEXT NOT NULL,
  dispatch_id INTEGER NOT NULL REFERENCES dispatches (id),
  PRIMARY KEY (transaction_uid, dispatch_id)
) STRICT;
INSERT OR IGNORE INTO commitment_transactions SELECT transaction_uid, dispatch_id FROM dispatch_parts WHERE transaction_uid <> '';
DROP INDEX dispatch_parts_by_transaction;
