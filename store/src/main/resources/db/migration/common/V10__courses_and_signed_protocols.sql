-- What was written into a course. The entry holds the course, the writer, what is corrected and
-- why. A withdrawn report and a reviewed emergency say nothing more, so they have no table: their
-- entry's kind is the fact. Volumes are whole microlitres, durations whole milliseconds.

-- The keys are the name and the number as namesakes share them, in one form for all spellings.
create table course_opened (
  entry_id varchar(36) not null,
  full_name varchar(100) not null,
  birth_date date not null,
  record_number varchar(40) not null,
  name_key varchar(300) not null,
  record_key varchar(120) not null,
  aetiology_group varchar(40) not null,
  constraint course_opened_pk primary key (entry_id),
  constraint course_opened_has_an_entry foreign key (entry_id) references entry (id)
);

create index course_opened_by_name on course_opened (name_key, birth_date);
create index course_opened_by_record on course_opened (record_key);

create table screening_answered (
  entry_id varchar(36) not null,
  contraindication varchar(20) not null,
  constraint screening_answered_pk primary key (entry_id),
  constraint screening_answered_has_an_entry foreign key (entry_id) references entry (id),
  constraint screening_answered_is_an_answer
    check (contraindication in ('yes', 'no', 'not_known'))
);

create table plan_chosen (
  entry_id varchar(36) not null,
  preparation varchar(100) not null,
  barrel varchar(40) not null,
  protocol varchar(100) not null,
  protocol_version integer not null,
  constraint plan_chosen_pk primary key (entry_id),
  constraint plan_chosen_has_an_entry foreign key (entry_id) references entry (id)
);

create table readiness_recorded (
  entry_id varchar(36) not null,
  item varchar(40) not null,
  constraint readiness_recorded_pk primary key (entry_id),
  constraint readiness_recorded_has_an_entry foreign key (entry_id) references entry (id)
);

-- Basis is the number of the last entry that the advice had read.
create table dose_signed (
  entry_id varchar(36) not null,
  preparation varchar(100) not null,
  barrel varchar(40) not null,
  protocol varchar(100) not null,
  protocol_version integer not null,
  volume_microlitres bigint not null,
  place varchar(20) not null,
  ceiling_microlitres bigint not null,
  change_reason varchar(40),
  basis bigint not null,
  asked_at timestamp with time zone not null,
  advice text not null,
  constraint dose_signed_pk primary key (entry_id),
  constraint dose_signed_has_an_entry foreign key (entry_id) references entry (id),
  constraint dose_signed_is_a_volume check (volume_microlitres > 0),
  constraint dose_signed_is_not_above_its_ceiling
    check (volume_microlitres <= ceiling_microlitres),
  constraint dose_signed_at_a_place check (place in ('clinic', 'home'))
);

-- The ladder that was signed with a dose, from the lowest rung up.
create table dose_signed_rung (
  entry_id varchar(36) not null,
  line integer not null,
  volume_microlitres bigint not null,
  constraint dose_signed_rung_pk primary key (entry_id, line),
  constraint dose_signed_rung_of_a_dose foreign key (entry_id) references dose_signed (entry_id),
  constraint dose_signed_rung_counts_from_1 check (line >= 1),
  constraint dose_signed_rung_is_a_volume check (volume_microlitres > 0)
);

-- The holds that were overridden.
create table dose_signed_override (
  entry_id varchar(36) not null,
  line integer not null,
  guard_rule varchar(40) not null,
  constraint dose_signed_override_pk primary key (entry_id, line),
  constraint dose_signed_override_of_a_dose
    foreign key (entry_id) references dose_signed (entry_id),
  constraint dose_signed_override_counts_from_1 check (line >= 1),
  constraint dose_signed_override_is_one unique (entry_id, guard_rule)
);

-- Exactly and at least have their duration in the first column, between has both, not known none.
create table injection_reported (
  entry_id varchar(36) not null,
  injected_at timestamp with time zone not null,
  preparation varchar(100) not null,
  barrel varchar(40) not null,
  drawn_microlitres bigint not null,
  ordered_microlitres bigint not null,
  grade smallint not null,
  soft_after varchar(20) not null,
  soft_from_milliseconds bigint,
  soft_before_milliseconds bigint,
  simple_causes varchar(40) not null,
  constraint injection_reported_pk primary key (entry_id),
  constraint injection_reported_has_an_entry foreign key (entry_id) references entry (id),
  constraint injection_reported_is_of_something
    check (drawn_microlitres > 0 and ordered_microlitres > 0),
  constraint injection_reported_has_a_grade check (grade between 0 and 4),
  constraint injection_reported_has_a_duration check (
    (soft_after in ('exactly', 'at_least')
      and soft_from_milliseconds is not null and soft_from_milliseconds >= 0
      and soft_before_milliseconds is null)
    or (soft_after = 'between'
      and soft_from_milliseconds is not null and soft_from_milliseconds >= 0
      and soft_before_milliseconds is not null
      and soft_before_milliseconds > soft_from_milliseconds)
    or (soft_after = 'not_known'
      and soft_from_milliseconds is null and soft_before_milliseconds is null))
);

create table volume_reopened (
  entry_id varchar(36) not null,
  preparation varchar(100) not null,
  up_to_microlitres bigint not null,
  constraint volume_reopened_pk primary key (entry_id),
  constraint volume_reopened_has_an_entry foreign key (entry_id) references entry (id),
  constraint volume_reopened_is_a_volume check (up_to_microlitres > 0)
);

-- A protocol's document as it was signed; the entry says by whom and when.
create table protocol_signed (
  entry_id varchar(36) not null,
  name varchar(100) not null,
  version integer not null,
  document text not null,
  constraint protocol_signed_pk primary key (entry_id),
  constraint protocol_signed_has_an_entry foreign key (entry_id) references entry (id),
  constraint protocol_signed_once unique (name, version),
  constraint protocol_signed_counts_from_1 check (version >= 1)
);
