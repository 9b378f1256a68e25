-- Version 1 of the store. Times are ISO 8601, ages of answers seconds since 1970. Attributes that an object lacks are empty texts.
CREATE TABLE installation (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  device_observer_uid TEXT NOT NULL
) STRICT;

CREATE TABLE objects (
  id INTEGER PRIMARY KEY,
  digest TEXT NOT NULL UNIQUE,
  size INTEGER NOT NULL,
  transfer_syntax_uid TEXT NOT NULL,
  attributes TEXT NOT NULL,
  study_date TEXT NOT NULL,
  study_time TEXT NOT NULL,
  accession_number TEXT NOT NULL,
  referring_physician_name TEXT NOT NULL,
  study_description TEXT NOT NULL,
  patient_name TEXT NOT NULL,
  patient_id TEXT NOT NULL,
  patient_birth_date TEXT NOT NULL,
  study_instance_uid TEXT NOT NULL,
  study_id TEXT NOT NULL,
  modality TEXT NOT NULL,
  series_date TEXT NOT NULL,
  series_time TEXT NOT NULL,
  series_description TEXT NOT NULL,
  series_instance_uid TEXT NOT NULL,
  series_number TEXT NOT NULL,
  performed_procedure_step_start_date TEXT NOT NULL,
  performed_procedure_step_start_time TEXT NOT NULL,
  sop_class_uid TEXT NOT NULL,
  sop_instance_uid TEXT NOT NULL UNIQUE,
  content_date TEXT NOT NULL,
  content_time TEXT NOT NULL,
  instance_number TEXT NOT NULL
) STRICT;
CREATE INDEX objects_by_series ON objects (study_instance_uid, series_instance_uid);
CREATE INDEX objects_by_date ON objects (study_date, study_time, study_instance_uid);
CREATE INDEX objects_by_patient ON objects (patient_id);

CREATE TABLE cases (
  case_id TEXT PRIMARY KEY,
  document TEXT NOT NULL,
  created TEXT NOT NULL
) STRICT;

CREATE TABLE revisions (
  case_id TEXT NOT NULL REFERENCES cases (case_id),
  revision INTEGER NOT NULL CHECK (revision >= 1),
  time TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('DRAFT', 'SIGNED', 'WITHDRAWN')),
  document TEXT NOT NULL,
  report_uid TEXT NOT NULL UNIQUE,
  PRIMARY KEY (case_id, revision)
) STRICT;

CREATE TABLE revision_objects (
  case_id TEXT NOT NULL,
  revision INTEGER NOT NULL,
  position INTEGER NOT NULL,
  sop_instance_uid TEXT NOT NULL REFERENCES objects (sop_instance_uid),
  PRIMARY KEY (case_id, revision, position),
  FOREIGN KEY (case_id, revision) REFERENCES revisions (case_id, revision)
) STRICT;

CREATE TABLE answers (
  key TEXT PRIMARY KEY,
  request_digest TEXT NOT NULL,
  status INTEGER NOT NULL,
  body TEXT NOT NULL,
  created INTEGER NOT NULL
) STRICT;
CREATE INDEX answers_by_age ON answers (created);
