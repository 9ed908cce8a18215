-- What a clinic's protocol asks an emergency plan for, beside hospital, number and transport.
create table readiness_recorded_line (
  entry_id varchar(36) not null,
  line integer not null,
  asked varchar(80) not null,
  answer varchar(120) not null,
  constraint readiness_recorded_line_pk primary key (entry_id, line),
  constraint readiness_recorded_line_of_a_record foreign key (entry_id)
    references readiness_recorded (entry_id),
  constraint readiness_recorded_line_counts_from_1 check (line >= 1)
);
