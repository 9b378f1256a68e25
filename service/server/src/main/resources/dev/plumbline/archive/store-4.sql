-- Version 4 of the store: what a revision does to an earlier one, and what records are searched by. Texts are empty where there is nothing to say.
ALTER TABLE revisions ADD COLUMN predecessor TEXT NOT NULL DEFAULT '';
ALTER TABLE revisions ADD COLUMN reason TEXT NOT NULL DEFAULT '';
ALTER TABLE revisions ADD COLUMN words TEXT NOT NULL DEFAULT '';
ALTER TABLE revisions ADD COLUMN changed_by TEXT NOT NULL DEFAULT '';

CREATE TABLE record_rows (
  report_uid TEXT PRIMARY KEY REFERENCES revisions (report_uid),
  moment INTEGER NOT NULL,
  record_date TEXT NOT NULL,
  patient_id TEXT NOT NULL,
  block TEXT NOT NULL,
  laterality TEXT NOT NULL,
  operator TEXT NOT NULL,
  differs INTEGER NOT NULL CHECK (differs IN (0, 1)),
  content TEXT NOT NULL
) STRICT;
CREATE INDEX record_rows_by_moment ON record_rows (moment);
CREATE INDEX record_rows_by_patient ON record_rows (patient_id);
