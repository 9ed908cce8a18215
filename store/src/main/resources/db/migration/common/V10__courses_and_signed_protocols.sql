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

-- A screening replaces the one before it whole; each answer keeps the time at which it was last
-- said to be true.
create table screened (
  entry_id varchar(36) not null,
  answers integer not null,
  constraint screened_pk primary key (entry_id),
  constraint screened_has_an_entry foreign key (entry_id) references entry (id)
);

create table screened_answer (
  entry_id varchar(36) not null,
  line integer not null,
  condition_name varchar(60) not null,
  answer varchar(20) not null,
  answered_at timestamp with time zone not null,
  constraint screened_answer_pk primary key (entry_id, line),
  constraint screened_answer_of_a_screening foreign key (entry_id) references screened (entry_id),
  constraint screened_answer_counts_from_1 check (line >= 1),
  constraint screened_answer_once unique (entry_id, condition_name),
  constraint screened_answer_is_an_answer check (answer in ('yes', 'no', 'not_known'))
);

create table decision_written (
  entry_id varchar(36) not null,
  condition_name varchar(60) not null,
  constraint decision_written_pk primary key (entry_id),
  constraint decision_written_has_an_entry foreign key (entry_id) references entry (id)
);

create table baseline_recorded (
  entry_id varchar(36) not null,
  score smallint,
  hands varchar(20) not null,
  sight varchar(20) not null,
  injector varchar(20) not null,
  constraint baseline_recorded_pk primary key (entry_id),
  constraint baseline_recorded_has_an_entry foreign key (entry_id) references entry (id),
  constraint baseline_recorded_has_a_score check (score is null or score between 1 and 25)
);

create table examination_recorded (
  entry_id varchar(36) not null,
  examined_on date not null,
  scarring varchar(20) not null,
  constraint examination_recorded_pk primary key (entry_id),
  constraint examination_recorded_has_an_entry foreign key (entry_id) references entry (id),
  constraint examination_recorded_is_an_answer check (scarring in ('yes', 'no', 'not_known'))
);

-- A vial as its label says. The composition is in words, so that it can be compared.
create table vial_received (
  entry_id varchar(36) not null,
  lot varchar(60) not null,
  composition varchar(400) not null,
  made_on date,
  beyond_use_date date not null,
  opened_on date,
  days_in_use integer,
  device varchar(60) not null,
  constraint vial_received_pk primary key (entry_id),
  constraint vial_received_has_an_entry foreign key (entry_id) references entry (id),
  constraint vial_received_is_used_for_days check (days_in_use is null or days_in_use >= 1)
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
  done_on date not null,
  hospital varchar(120),
  after_hours_number varchar(120),
  transport varchar(120),
  note varchar(1000) not null,
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
  next_step_microlitres bigint,
  constraint dose_signed_pk primary key (entry_id),
  constraint dose_signed_has_an_entry foreign key (entry_id) references entry (id),
  constraint dose_signed_is_a_volume check (volume_microlitres > 0),
  constraint dose_signed_is_not_above_its_ceiling
    check (volume_microlitres <= ceiling_microlitres),
  constraint dose_signed_steps_up
    check (next_step_microlitres is null or next_step_microlitres > volume_microlitres),
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
  place varchar(20) not null,
  observation varchar(36),
  onset_milliseconds bigint,
  usable_milliseconds bigint,
  side varchar(20),
  clock_hour smallint,
  pain smallint,
  bruise varchar(20) not null,
  aroused varchar(20) not null,
  vial varchar(36),
  other_tablets varchar(200) not null,
  second_dose varchar(20) not null,
  constraint injection_reported_pk primary key (entry_id),
  constraint injection_reported_has_an_entry foreign key (entry_id) references entry (id),
  constraint injection_reported_is_of_something
    check (drawn_microlitres > 0 and ordered_microlitres > 0),
  constraint injection_reported_at_a_place check (place in ('clinic', 'home')),
  constraint injection_reported_ends_an_observation
    foreign key (observation) references entry (id),
  constraint injection_reported_from_a_vial foreign key (vial) references entry (id),
  constraint injection_reported_at_a_spot check (
    (side is null and clock_hour is null)
    or (side in ('his_left', 'his_right') and clock_hour between 1 and 12)),
  constraint injection_reported_has_pain check (pain is null or pain between 0 and 10),
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

-- What went wrong with an injection.
create table injection_reported_cause (
  entry_id varchar(36) not null,
  line integer not null,
  cause varchar(40) not null,
  constraint injection_reported_cause_pk primary key (entry_id, line),
  constraint injection_reported_cause_of_a_report
    foreign key (entry_id) references injection_reported (entry_id),
  constraint injection_reported_cause_counts_from_1 check (line >= 1),
  constraint injection_reported_cause_is_one unique (entry_id, cause)
);

-- An injection in the clinic, while it is not yet reported how it ended.
create table observation_started (
  entry_id varchar(36) not null,
  injected_at timestamp with time zone not null,
  preparation varchar(100) not null,
  barrel varchar(40) not null,
  drawn_microlitres bigint not null,
  ordered_microlitres bigint not null,
  side varchar(20),
  clock_hour smallint,
  systolic smallint,
  diastolic smallint,
  pulse smallint,
  vial varchar(36),
  constraint observation_started_pk primary key (entry_id),
  constraint observation_started_has_an_entry foreign key (entry_id) references entry (id),
  constraint observation_started_from_a_vial foreign key (vial) references entry (id),
  constraint observation_started_is_of_something
    check (drawn_microlitres > 0 and ordered_microlitres > 0)
);

create table observation_noted (
  entry_id varchar(36) not null,
  observation varchar(36) not null,
  moment varchar(20) not null,
  seen_at timestamp with time zone not null,
  grade smallint,
  systolic smallint,
  diastolic smallint,
  pulse smallint,
  constraint observation_noted_pk primary key (entry_id),
  constraint observation_noted_has_an_entry foreign key (entry_id) references entry (id),
  constraint observation_noted_of_an_observation foreign key (observation) references entry (id),
  constraint observation_noted_has_a_grade check (grade is null or grade between 0 and 4)
);

-- A day of the room that was closed, with nobody left under observation. It is of no one course.
create table room_day_closed (
  entry_id varchar(36) not null,
  closed_day date not null,
  constraint room_day_closed_pk primary key (entry_id),
  constraint room_day_closed_has_an_entry foreign key (entry_id) references entry (id),
  constraint room_day_closed_once unique (closed_day)
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
