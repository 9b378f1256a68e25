-- Version 3 of the store: records on their way to other archives. Times are ISO 8601, texts empty where there is nothing to say.
CREATE TABLE dispatches (
  id INTEGER PRIMARY KEY,
  destination TEXT NOT NULL,
  case_id TEXT NOT NULL,
  revision INTEGER NOT NULL,
  study_instance_uid TEXT NOT NULL,
  created TEXT NOT NULL,
  attempts INTEGER NOT NULL,
  next_attempt TEXT NOT NULL,
  released TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('QUEUED', 'SENT', 'PROVED', 'HELD')),
  UNIQUE (destination, case_id, revision),
  FOREIGN KEY (case_id, revision) REFERENCES revisions (case_id, revision)
) STRICT;
CREATE INDEX dispatches_by_state ON dispatches (state, destination, id);

CREATE TABLE dispatch_parts (
  dispatch_id INTEGER NOT NULL REFERENCES dispatches (id),
  position INTEGER NOT NULL,
  sop_instance_uid TEXT NOT NULL REFERENCES objects (sop_instance_uid),
  state TEXT NOT NULL CHECK (state IN ('QUEUED', 'SENT', 'PROVED', 'HELD')),
  code TEXT NOT NULL,
  words TEXT NOT NULL,
  changed TEXT NOT NULL,
  transaction_uid TEXT NOT NULL,
  PRIMARY KEY (dispatch_id, position)
) STRICT;
CREATE INDEX dispatch_parts_by_transaction ON dispatch_parts (transaction_uid);
