-- Of what an injection from before was, where the file says that and not also when and with which
-- syringe. A line that says all three has it in its own row.
create table past_injection_named (
  entry_id varchar(36) not null,
  line integer not null,
  preparation varchar(100) not null,
  constraint past_injection_named_pk primary key (entry_id, line),
  constraint past_injection_named_of_a_line foreign key (entry_id, line)
    references past_injection (entry_id, line)
);
