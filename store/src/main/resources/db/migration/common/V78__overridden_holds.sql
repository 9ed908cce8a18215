-- The holds that a signature overrode, each with what it had read. A hold in dose_signed_override
-- was written before that was kept: it has no facts.
create table dose_signed_hold (
  entry_id varchar(36) not null,
  line integer not null,
  guard_rule varchar(40) not null,
  until_at timestamp with time zone,
  constraint dose_signed_hold_pk primary key (entry_id, line),
  constraint dose_signed_hold_of_a_dose foreign key (entry_id) references dose_signed (entry_id),
  constraint dose_signed_hold_counts_from_1 check (line >= 1)
);

-- What a hold had read: something said, something that happened, or which thing of the record.
create table dose_signed_hold_fact (
  entry_id varchar(36) not null,
  line integer not null,
  hold integer not null,
  what varchar(120) not null,
  said text,
  happened_at timestamp with time zone,
  which varchar(120),
  constraint dose_signed_hold_fact_pk primary key (entry_id, line),
  constraint dose_signed_hold_fact_of_a_hold
    foreign key (entry_id, hold) references dose_signed_hold (entry_id, line),
  constraint dose_signed_hold_fact_counts_from_1 check (line >= 1),
  constraint dose_signed_hold_fact_is_one
    check ((said is null) + (happened_at is null) + (which is null) = 2)
);
