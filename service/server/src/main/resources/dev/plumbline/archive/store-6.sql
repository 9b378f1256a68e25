-- Version 6 of the store: a revision and a dispatch name objects that are composed later; which revisions wait for that, with what failed so far.
CREATE TABLE companions_due (
  id INTEGER PRIMARY KEY,
  case_id TEXT NOT NULL,
  revision INTEGER NOT NULL,
  study_instance_uid TEXT NOT NULL,
  since TEXT NOT NULL,
  words TEXT NOT NULL,
  UNIQUE (case_id, revision),
  FOREIGN KEY (case_id, revision) REFERENCES revisions (case_id, revision)
) STRICT;
CREATE INDEX companions_due_by_study ON companions_due (study_instance_uid);

CREATE TABLE revision_objects_6 (
  case_id TEXT NOT NULL,
  revision INTEGER NOT NULL,
  position INTEGER NOT NULL,
  sop_instance_uid TEXT NOT NULL,
  PRIMARY KEY (case_id, revision, position),
  FOREIGN KEY (case_id, revision) REFERENCES revisions (case_id, revision)
) STRICT;
INSERT INTO revision_objects_6 SELECT case_id, revision, position, sop_instance_uid FROM revision_objects;
DROP TABLE revision_objects;
ALTER TABLE revision_objects_6 RENAME TO revision_objects;

CREATE TABLE dispatch_parts_6 (
  dispatch_id INTEGER NOT NULL REFERENCES dispatches (id),
  position INTEGER NOT NULL,
  sop_instance_uid TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('QUEUED', 'SENT', 'PROVED', 'HELD')),
  code TEXT NOT NULL,
  words TEXT NOT NULL,
  changed TEXT NOT NULL,
  transaction_uid TEXT NOT NULL,
  PRIMARY KEY (dispatch_id, position)
) STRICT;
INSERT INTO dispatch_parts_6 SELECT dispatch_id, position, sop_instance_uid, state, code, words, changed, transaction_uid FROM dispatch_parts;
DROP TABLE dispatch_parts;
ALTER TABLE dispatch_parts_6 RENAME TO dispatch_parts;
CREATE INDEX dispatch_parts_by_transaction ON dispatch_parts (transaction_uid);
