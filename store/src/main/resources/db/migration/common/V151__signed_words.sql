-- A prescriber signed a version of what is said to patients.
create table words_signed (
  entry_id varchar(36) not null,
  version integer not null,
  constraint words_signed_pk primary key (entry_id),
  constraint words_signed_has_an_entry foreign key (entry_id) references entry (id)
);
