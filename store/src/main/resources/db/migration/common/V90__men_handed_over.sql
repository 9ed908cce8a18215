-- A man who left the clinic while it was firm was handed by name to somebody on call.
create table handed_over (
  entry_id varchar(36) not null,
  erection varchar(36) not null,
  to_account varchar(36) not null,
  tries smallint not null,
  last_try timestamp with time zone not null,
  constraint handed_over_pk primary key (entry_id),
  constraint handed_over_has_an_entry foreign key (entry_id) references entry (id),
  constraint handed_over_of_a_report foreign key (erection) references entry (id),
  constraint handed_over_after_a_try check (tries >= 1)
);
