-- Version 8 of the store: how many bytes each sender that has a quota has added today.
CREATE TABLE received (
  sender TEXT NOT NULL,
  day TEXT NOT NULL,
  bytes INTEGER NOT NULL,
  PRIMARY KEY (sender, day)
) STRICT;
