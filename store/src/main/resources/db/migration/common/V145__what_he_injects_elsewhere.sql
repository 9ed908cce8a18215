-- What a man injects elsewhere, as it was told, and at what part of it the schedule was opened.
create table elsewhere_written (
  entry_id varchar(36) not null,
  word varchar(20) not null,
  preparation varchar(100) not null,
  microlitres bigint not null,
  barrel varchar(40),
  from_where varchar(200),
  last_day date,
  grade smallint,
  soft_after varchar(20),
  soft_from_milliseconds bigint,
  soft_before_milliseconds bigint,
  told_by varchar(20),
  constraint elsewhere_written_pk primary key (entry_id),
  constraint elsewhere_written_has_an_entry foreign key (entry_id) references entry (id),
  constraint elsewhere_written_of_something check (microlitres > 0)
);
