-- One thing that was written of how a man is reached: a number, that it is no longer his, what he
-- asked for, a call that did not reach him, or that he was reached. Hours are minutes of the day.
create table reach_written (
  entry_id varchar(36) not null,
  word varchar(20) not null,
  number varchar(40),
  whose varchar(20),
  from_minute integer,
  until_minute integer,
  message varchar(20),
  partner varchar(20),
  post varchar(20),
  language varchar(60),
  interpreter varchar(20),
  next_try timestamp with time zone,
  constraint reach_written_pk primary key (entry_id),
  constraint reach_written_has_an_entry foreign key (entry_id) references entry (id)
);
