-- How long an erection may last at a dose that was signed, where that is over an hour.
create table dose_signed_accepted (
  entry_id varchar(36) not null,
  up_to_milliseconds bigint not null,
  constraint dose_signed_accepted_pk primary key (entry_id),
  constraint dose_signed_accepted_of_a_dose foreign key (entry_id) references dose_signed (entry_id),
  constraint dose_signed_accepted_is_long check (up_to_milliseconds > 0)
);
