-- What was written down in a call about an erection that does not go down.
create table call_written (
  entry_id varchar(36) not null,
  word varchar(20) not null,
  call_entry varchar(36),
  at_instant timestamp with time zone,
  speaker varchar(20),
  struck varchar(36),
  step varchar(40),
  to_account varchar(36),
  why varchar(20),
  place varchar(200),
  whom varchar(200),
  constraint call_written_pk primary key (entry_id),
  constraint call_written_has_an_entry foreign key (entry_id) references entry (id),
  constraint call_written_in_a_call foreign key (call_entry) references entry (id),
  constraint call_written_strikes_an_entry foreign key (struck) references entry (id)
);
