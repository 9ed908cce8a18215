-- Where a prescriber's review of an emergency says that the end cannot be known: when the man was
-- seen or told to be soft. A review without a row says nothing of the end.
create table emergency_reviewed_end (
  entry_id varchar(36) not null,
  soft_when_seen timestamp with time zone not null,
  constraint emergency_reviewed_end_pk primary key (entry_id),
  constraint emergency_reviewed_end_has_an_entry foreign key (entry_id) references entry (id)
);

-- A prescriber wrote that what a report said was wrong.
create table correction_confirmed (
  entry_id varchar(36) not null,
  correction varchar(36) not null,
  constraint correction_confirmed_pk primary key (entry_id),
  constraint correction_confirmed_has_an_entry foreign key (entry_id) references entry (id),
  constraint correction_confirmed_names_an_entry foreign key (correction) references entry (id)
);

-- A prescriber wrote what long erections from before the record followed; no preparation where
-- nobody can tell.
create table past_reviewed (
  entry_id varchar(36) not null,
  reference_preparation varchar(100),
  constraint past_reviewed_pk primary key (entry_id),
  constraint past_reviewed_has_an_entry foreign key (entry_id) references entry (id)
);
