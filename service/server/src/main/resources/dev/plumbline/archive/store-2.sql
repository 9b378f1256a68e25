-- What was appended to a case after it was opened, in the order received; and which cases belong to one sitting.
CREATE TABLE case_items (
  id INTEGER PRIMARY KEY,
  case_id TEXT NOT NULL REFERENCES cases (case_id),
  part TEXT NOT NULL,
  item_id TEXT NOT NULL,
  content TEXT NOT NULL,
  received TEXT NOT NULL,
  UNIQUE (case_id, part, item_id)
) STRICT;
ALTER TABLE cases ADD COLUMN session TEXT NOT NULL DEFAULT '';
CREATE INDEX cases_by_session ON cases (session);
