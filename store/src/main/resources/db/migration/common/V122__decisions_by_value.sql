-- The values of an advice that was signed, beside its text in dose_signed. A signature of before
-- has none.
create table dose_signed_decision (
  entry_id varchar(36) not null,
  decision varchar(10) not null,
  proposed_microlitres bigint,
  not_before timestamp with time zone,
  choice varchar(200) not null,
  protocol_key varchar(200) not null,
  engine varchar(20) not null,
  constraint dose_signed_decision_pk primary key (entry_id),
  constraint dose_signed_decision_of_a_dose foreign key (entry_id) references dose_signed (entry_id)
);

-- The rules that spoke, the deciding reason first. Of steps that follow each other and of which a
-- rule said the same, the first and the last.
create table dose_signed_spoken (
  entry_id varchar(36) not null,
  line integer not null,
  part varchar(6) not null,
  spoken_rule varchar(40) not null,
  from_microlitres bigint,
  to_microlitres bigint,
  constraint dose_signed_spoken_pk primary key (entry_id, line),
  constraint dose_signed_spoken_of_a_decision
    foreign key (entry_id) references dose_signed_decision (entry_id),
  constraint dose_signed_spoken_counts_from_1 check (line >= 1),
  constraint dose_signed_spoken_of_steps
    check ((from_microlitres is null) = (to_microlitres is null))
);
