-- What was given and measured where a long erection is treated. Masses are picograms, a strength is
-- picograms in a microlitre, pressures of gases are picopascals, a pH is thousandths.
create table rescue_written (
  entry_id varchar(36) not null,
  call_entry varchar(36) not null,
  word varchar(20) not null,
  at_instant timestamp with time zone,
  dose_picograms bigint,
  strength bigint,
  volume_microlitres bigint,
  side varchar(20),
  systolic smallint,
  diastolic smallint,
  pulse smallint,
  given_by varchar(200),
  second_person varchar(200),
  oxygen bigint,
  carbon_dioxide bigint,
  acidity bigint,
  constraint rescue_written_pk primary key (entry_id),
  constraint rescue_written_has_an_entry foreign key (entry_id) references entry (id),
  constraint rescue_written_in_a_call foreign key (call_entry) references entry (id)
);

-- Why a dose was held that was prepared all the same.
create table rescue_written_overridden (
  entry_id varchar(36) not null,
  line integer not null,
  reason varchar(40) not null,
  constraint rescue_written_overridden_pk primary key (entry_id, line),
  constraint rescue_written_overridden_of_a_rescue
    foreign key (entry_id) references rescue_written (entry_id),
  constraint rescue_written_overridden_counts_from_1 check (line >= 1)
);
