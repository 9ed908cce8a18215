-- Somebody acknowledged that an entry was changed after it was written, and what was read of it.
create table fault_acknowledged (
  entry_id varchar(36) not null,
  faulty_seq bigint not null,
  was_read varchar(64) not null,
  side varchar(10) not null,
  constraint fault_acknowledged_pk primary key (entry_id),
  constraint fault_acknowledged_has_an_entry foreign key (entry_id) references entry (id)
);
