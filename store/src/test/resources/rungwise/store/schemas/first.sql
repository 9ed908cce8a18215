-- key 2a7747b5e35e9863c16983ea534c0468000eadeadc98e6e1836860a2a8795e1f
-- next
CREATE TABLE "flyway_schema_history" (
    "installed_rank" INT NOT NULL PRIMARY KEY,
    "version" VARCHAR(50),
    "description" VARCHAR(200) NOT NULL,
    "type" VARCHAR(20) NOT NULL,
    "script" VARCHAR(1000) NOT NULL,
    "checksum" INT,
    "installed_by" VARCHAR(100) NOT NULL,
    "installed_on" TEXT NOT NULL DEFAULT (strftime('%Y-%m-%d %H:%M:%f','now')),
    "execution_time" INT NOT NULL,
    "success" BOOLEAN NOT NULL
)
-- next
CREATE TABLE entry (
  seq bigint not null,
  id varchar(36) not null,
  kind varchar(40) not null,
  course_id varchar(36),
  recorded_at timestamp with time zone not null,
  recorded_by varchar(36) not null,
  on_behalf_of varchar(36),
  corrects varchar(36),
  reason varchar(2000),
  previous_seal varchar(64) not null,
  seal varchar(64) not null,
  constraint entry_pk primary key (seq),
  constraint entry_id_is_unique unique (id),
  constraint entry_counts_from_1 check (seq >= 1),
  constraint entry_corrects_an_entry foreign key (corrects) references entry (id)
)
-- next
CREATE TABLE journal_head (
  id smallint not null,
  seq bigint not null,
  seal varchar(64) not null,
  head_seal varchar(64) not null,
  constraint journal_head_pk primary key (id),
  constraint journal_head_is_one check (id = 1)
)
-- next
CREATE TABLE account (
  entry_id varchar(36) not null,
  account_id varchar(36) not null,
  sign_in_name varchar(40) not null,
  constraint account_pk primary key (entry_id),
  constraint account_has_an_entry foreign key (entry_id) references entry (id),
  constraint account_id_is_unique unique (account_id),
  constraint account_sign_in_name_is_unique unique (sign_in_name)
)
-- next
CREATE TABLE account_standing (
  entry_id varchar(36) not null,
  account_id varchar(36) not null,
  full_name varchar(100) not null,
  roles varchar(200) not null,
  state varchar(20) not null,
  constraint account_standing_pk primary key (entry_id),
  constraint account_standing_has_an_entry foreign key (entry_id) references entry (id),
  constraint account_standing_of_an_account foreign key (account_id) references account (account_id)
)
-- next
CREATE TABLE sign_in (
  entry_id varchar(36) not null,
  account_id varchar(36),
  outcome varchar(20) not null,
  constraint sign_in_pk primary key (entry_id),
  constraint sign_in_has_an_entry foreign key (entry_id) references entry (id),
  constraint sign_in_of_an_account foreign key (account_id) references account (account_id)
)
-- next
CREATE TABLE credential (
  holder_id varchar(36) not null,
  kind varchar(20) not null,
  hash varchar(500) not null,
  good_until timestamp with time zone,
  constraint credential_pk primary key (holder_id, kind)
)
-- next
CREATE TABLE preparation (
  entry_id varchar(36) not null,
  preparation_id varchar(80) not null,
  replaces varchar(80),
  name varchar(100) not null,
  form varchar(20) not null,
  diluent_microlitres bigint,
  usable_milliseconds bigint,
  fill_microlitres bigint,
  ceiling_microlitres bigint not null,
  preservative varchar(100),
  in_use varchar(20) not null,
  in_use_days smallint,
  constraint preparation_pk primary key (entry_id),
  constraint preparation_has_an_entry foreign key (entry_id) references entry (id),
  constraint preparation_id_is_unique unique (preparation_id),
  constraint preparation_is_replaced_once unique (replaces),
  constraint preparation_replaces_another foreign key (replaces) references preparation (preparation_id),
  constraint preparation_form_is_known check (form in ('solution', 'powder', 'prefilled', 'cartridge')),
  constraint preparation_in_use_is_known check (in_use in ('single_use', 'days', 'not_stated')),
  constraint preparation_ceiling_is_more_than_0 check (ceiling_microlitres > 0)
)
-- next
CREATE TABLE preparation_ingredient (
  entry_id varchar(36) not null,
  line smallint not null,
  component varchar(40) not null,
  picograms_per_microlitre bigint not null,
  limit_picograms bigint,
  constraint preparation_ingredient_pk primary key (entry_id, line),
  constraint preparation_ingredient_has_an_entry foreign key (entry_id) references entry (id),
  constraint preparation_ingredient_once unique (entry_id, component),
  constraint preparation_ingredient_is_more_than_0 check (picograms_per_microlitre > 0)
)
-- next
CREATE TABLE preparation_withdrawn (
  entry_id varchar(36) not null,
  preparation_id varchar(80) not null,
  constraint preparation_withdrawn_pk primary key (entry_id),
  constraint preparation_withdrawn_has_an_entry foreign key (entry_id) references entry (id),
  constraint preparation_withdrawn_once unique (preparation_id),
  constraint preparation_withdrawn_is_known foreign key (preparation_id) references preparation (preparation_id)
)
-- next
CREATE TABLE syringe (
  entry_id varchar(36) not null,
  barrel varchar(40) not null,
  is_kept boolean not null,
  constraint syringe_pk primary key (entry_id),
  constraint syringe_has_an_entry foreign key (entry_id) references entry (id)
)
-- next
CREATE TABLE course_opened (
  entry_id varchar(36) not null,
  full_name varchar(100) not null,
  birth_date date not null,
  record_number varchar(40) not null,
  name_key varchar(300) not null,
  record_key varchar(120) not null,
  aetiology_group varchar(40) not null,
  constraint course_opened_pk primary key (entry_id),
  constraint course_opened_has_an_entry foreign key (entry_id) references entry (id)
)
-- next
CREATE TABLE screened (
  entry_id varchar(36) not null,
  answers integer not null,
  constraint screened_pk primary key (entry_id),
  constraint screened_has_an_entry foreign key (entry_id) references entry (id)
)
-- next
CREATE TABLE screened_answer (
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
)
-- next
CREATE TABLE decision_written (
  entry_id varchar(36) not null,
  condition_name varchar(60) not null,
  constraint decision_written_pk primary key (entry_id),
  constraint decision_written_has_an_entry foreign key (entry_id) references entry (id)
)
-- next
CREATE TABLE baseline_recorded (
  entry_id varchar(36) not null,
  score smallint,
  hands varchar(20) not null,
  sight varchar(20) not null,
  injector varchar(20) not null,
  constraint baseline_recorded_pk primary key (entry_id),
  constraint baseline_recorded_has_an_entry foreign key (entry_id) references entry (id),
  constraint baseline_recorded_has_a_score check (score is null or score between 1 and 25)
)
-- next
CREATE TABLE examination_recorded (
  entry_id varchar(36) not null,
  examined_on date not null,
  scarring varchar(20) not null,
  constraint examination_recorded_pk primary key (entry_id),
  constraint examination_recorded_has_an_entry foreign key (entry_id) references entry (id),
  constraint examination_recorded_is_an_answer check (scarring in ('yes', 'no', 'not_known'))
)
-- next
CREATE TABLE vial_received (
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
)
-- next
CREATE TABLE plan_chosen (
  entry_id varchar(36) not null,
  preparation varchar(100) not null,
  barrel varchar(40) not null,
  protocol varchar(100) not null,
  protocol_version integer not null,
  constraint plan_chosen_pk primary key (entry_id),
  constraint plan_chosen_has_an_entry foreign key (entry_id) references entry (id)
)
-- next
CREATE TABLE readiness_recorded (
  entry_id varchar(36) not null,
  item varchar(40) not null,
  done_on date not null,
  hospital varchar(120),
  after_hours_number varchar(120),
  transport varchar(120),
  note varchar(1000) not null,
  constraint readiness_recorded_pk primary key (entry_id),
  constraint readiness_recorded_has_an_entry foreign key (entry_id) references entry (id)
)
-- next
CREATE TABLE dose_signed (
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
)
-- next
CREATE TABLE dose_signed_rung (
  entry_id varchar(36) not null,
  line integer not null,
  volume_microlitres bigint not null,
  constraint dose_signed_rung_pk primary key (entry_id, line),
  constraint dose_signed_rung_of_a_dose foreign key (entry_id) references dose_signed (entry_id),
  constraint dose_signed_rung_counts_from_1 check (line >= 1),
  constraint dose_signed_rung_is_a_volume check (volume_microlitres > 0)
)
-- next
CREATE TABLE dose_signed_override (
  entry_id varchar(36) not null,
  line integer not null,
  guard_rule varchar(40) not null,
  constraint dose_signed_override_pk primary key (entry_id, line),
  constraint dose_signed_override_of_a_dose
    foreign key (entry_id) references dose_signed (entry_id),
  constraint dose_signed_override_counts_from_1 check (line >= 1),
  constraint dose_signed_override_is_one unique (entry_id, guard_rule)
)
-- next
CREATE TABLE injection_reported (
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
)
-- next
CREATE TABLE injection_reported_cause (
  entry_id varchar(36) not null,
  line integer not null,
  cause varchar(40) not null,
  constraint injection_reported_cause_pk primary key (entry_id, line),
  constraint injection_reported_cause_of_a_report
    foreign key (entry_id) references injection_reported (entry_id),
  constraint injection_reported_cause_counts_from_1 check (line >= 1),
  constraint injection_reported_cause_is_one unique (entry_id, cause)
)
-- next
CREATE TABLE observation_started (
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
)
-- next
CREATE TABLE observation_noted (
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
)
-- next
CREATE TABLE room_day_closed (
  entry_id varchar(36) not null,
  closed_day date not null,
  constraint room_day_closed_pk primary key (entry_id),
  constraint room_day_closed_has_an_entry foreign key (entry_id) references entry (id),
  constraint room_day_closed_once unique (closed_day)
)
-- next
CREATE TABLE volume_reopened (
  entry_id varchar(36) not null,
  preparation varchar(100) not null,
  up_to_microlitres bigint not null,
  constraint volume_reopened_pk primary key (entry_id),
  constraint volume_reopened_has_an_entry foreign key (entry_id) references entry (id),
  constraint volume_reopened_is_a_volume check (up_to_microlitres > 0)
)
-- next
CREATE TABLE protocol_signed (
  entry_id varchar(36) not null,
  name varchar(100) not null,
  version integer not null,
  document text not null,
  constraint protocol_signed_pk primary key (entry_id),
  constraint protocol_signed_has_an_entry foreign key (entry_id) references entry (id),
  constraint protocol_signed_once unique (name, version),
  constraint protocol_signed_counts_from_1 check (version >= 1)
)
-- next
CREATE TABLE page_viewed (
  entry_id varchar(36) not null,
  screen varchar(40) not null,
  outcome varchar(20) not null,
  constraint page_viewed_pk primary key (entry_id),
  constraint page_viewed_has_an_entry foreign key (entry_id) references entry (id),
  constraint page_viewed_has_an_outcome check (outcome in ('shown', 'refused'))
)
-- next
CREATE TABLE page_viewed_course (
  entry_id varchar(36) not null,
  line integer not null,
  course_id varchar(36) not null,
  constraint page_viewed_course_pk primary key (entry_id, line),
  constraint page_viewed_course_of_a_page foreign key (entry_id) references page_viewed (entry_id),
  constraint page_viewed_course_counts_from_1 check (line >= 1)
)
-- next
CREATE TABLE past_history (
  entry_id varchar(36) not null,
  import_id varchar(36) not null,
  source_file varchar(200) not null,
  patient varchar(40) not null,
  record_key varchar(120) not null,
  aetiology_group varchar(60) not null,
  constraint past_history_pk primary key (entry_id),
  constraint past_history_has_an_entry foreign key (entry_id) references entry (id)
)
-- next
CREATE TABLE past_injection (
  entry_id varchar(36) not null,
  line integer not null,
  file_line bigint not null,
  injection integer not null,
  volume_microlitres bigint not null,
  potency varchar(30) not null,
  strength varchar(30) not null,
  grade smallint not null,
  soft_after varchar(20) not null,
  soft_from_milliseconds bigint,
  soft_before_milliseconds bigint,
  injected_at timestamp with time zone,
  preparation varchar(100),
  barrel varchar(40),
  constraint past_injection_pk primary key (entry_id, line),
  constraint past_injection_of_a_history foreign key (entry_id) references past_history (entry_id),
  constraint past_injection_counts_from_1 check (line >= 1),
  constraint past_injection_is_a_volume check (volume_microlitres > 0),
  constraint past_injection_has_a_grade check (grade between 0 and 4),
  constraint past_injection_is_dated_whole_or_not check (
    (injected_at is null and preparation is null and barrel is null)
    or (injected_at is not null and preparation is not null and barrel is not null))
)
-- next
CREATE INDEX "flyway_schema_history_s_idx" ON "flyway_schema_history" ("success")
-- next
CREATE INDEX entry_by_course on entry (course_id, seq)
-- next
CREATE INDEX account_standing_by_account on account_standing (account_id)
-- next
CREATE INDEX course_opened_by_name on course_opened (name_key, birth_date)
-- next
CREATE INDEX course_opened_by_record on course_opened (record_key)
-- next
CREATE INDEX page_viewed_course_by_course on page_viewed_course (course_id)
-- next
CREATE INDEX past_history_by_record on past_history (record_key)
-- next
CREATE INDEX past_history_by_import on past_history (import_id)
-- next
CREATE INDEX entry_by_correction on entry (corrects)
-- next
insert into "flyway_schema_history" values (1, '1', 'accounts and the journal', 'SQL', 'V1__accounts_and_the_journal.sql', 986254419, '', '2026-11-25 19:34:37.856', 1, 1)
-- next
insert into "flyway_schema_history" values (2, '2', 'preparations and syringes', 'SQL', 'V2__preparations_and_syringes.sql', -1724480081, '', '2026-11-25 19:34:37.863', 1, 1)
-- next
insert into "flyway_schema_history" values (3, '10', 'courses and signed protocols', 'SQL', 'V10__courses_and_signed_protocols.sql', 613449243, '', '2026-11-25 19:34:37.875', 2, 1)
-- next
insert into "flyway_schema_history" values (4, '20', 'views', 'SQL', 'V20__views.sql', 770409927, '', '2026-11-25 19:34:37.885', 1, 1)
-- next
insert into "flyway_schema_history" values (5, '30', 'past histories', 'SQL', 'V30__past_histories.sql', -1814108563, '', '2026-11-25 19:34:37.895', 0, 1)
-- next
insert into "flyway_schema_history" values (6, NULL, 'what is written stays', 'SQL', 'R__what_is_written_stays.sql', 1310971689, '', '2026-11-25 19:34:37.912', 2, 1)
-- next
insert into "entry" values (1, '5858cb6a-688e-45e5-876d-c13a09d62260', 'account_invited', NULL, '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '0000000000000000000000000000000000000000000000000000000000000000', '8bfda20fc89859f3bef208df0560b78d2972ede49f2d81469fe5cab53df3dcde')
-- next
insert into "entry" values (2, 'c417ab82-6540-4671-9d1c-142ae55db2e0', 'account_invited', NULL, '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '8bfda20fc89859f3bef208df0560b78d2972ede49f2d81469fe5cab53df3dcde', 'cf35194140703573db78ea2364aac2a288fc0c1886c5e80d454e0123c5cb9339')
-- next
insert into "entry" values (3, '4105fef5-040f-4146-93bd-5d6d909b70c0', 'roles_changed', NULL, '2026-03-02 09:00:00.123+00:00', '00000000-0000-0001-0000-000000000002', NULL, NULL, NULL, 'cf35194140703573db78ea2364aac2a288fc0c1886c5e80d454e0123c5cb9339', '1911a5835f18f6b2e1829bcaf4a67febc2856b496653c8a7ae41ee7c60a8e136')
-- next
insert into "entry" values (4, 'f572b677-ba74-4f9f-8efb-f3f536285512', 'signed_in', NULL, '2026-03-02 09:00:00.123+00:00', '00000000-0000-0001-0000-000000000001', NULL, NULL, NULL, '1911a5835f18f6b2e1829bcaf4a67febc2856b496653c8a7ae41ee7c60a8e136', '187ee290c40b96136f5d8e1ce943582b8524f0f5ca640d259dd2d265ec6462fc')
-- next
insert into "entry" values (5, 'd1d2e301-baba-4546-ae7a-d1c789161500', 'sign_in_refused', NULL, '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '187ee290c40b96136f5d8e1ce943582b8524f0f5ca640d259dd2d265ec6462fc', '4fbc56f5f69fc6e0d48e1235eb5e6ee733d5fa725a2c00ebd4b94f53d50dbe76')
-- next
insert into "entry" values (6, '1a39e3cf-9b16-4c5d-aa37-4299f0cb23bb', 'preparation_added', NULL, '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '4fbc56f5f69fc6e0d48e1235eb5e6ee733d5fa725a2c00ebd4b94f53d50dbe76', 'aa0c6a425d5e548f6448ef2b6d0ef0aa71aa6587ee5f4dc18ab0414315948fbe')
-- next
insert into "entry" values (7, '0c34262c-0245-4a99-a838-fd8a99e71622', 'preparation_withdrawn', NULL, '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, 'out of supply', 'aa0c6a425d5e548f6448ef2b6d0ef0aa71aa6587ee5f4dc18ab0414315948fbe', 'cef368be86190ca1aa017189ef6682987c70eb6c5be28d7bad767a8d92580a79')
-- next
insert into "entry" values (8, 'ff28bae1-f180-4006-8fc7-c3b4828beeb3', 'syringe_added', NULL, '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, 'cef368be86190ca1aa017189ef6682987c70eb6c5be28d7bad767a8d92580a79', 'd8a7c1769c96b700b511b8f93b158f3a3a0948a111c644195f771284bcdc56b1')
-- next
insert into "entry" values (9, '783bdd59-403c-47d9-a09a-2547bbbc823a', 'course_opened', '00000000-0000-0003-0000-000000000001', '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, 'd8a7c1769c96b700b511b8f93b158f3a3a0948a111c644195f771284bcdc56b1', '70141c3eb0f1b311882a122df2bda1c43d5344b02bc4faadf49d6c647d5be0ef')
-- next
insert into "entry" values (10, 'dd9315ce-f076-45e0-a55e-26eead28ec86', 'screened', '00000000-0000-0003-0000-000000000001', '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '70141c3eb0f1b311882a122df2bda1c43d5344b02bc4faadf49d6c647d5be0ef', '99bc7a9dfe22ec87301b8b1a051c5c4ef62f13d3525832271713e5dc267f8036')
-- next
insert into "entry" values (11, '6d278a2e-6154-4056-84ea-b976ccba9877', 'plan_chosen', '00000000-0000-0003-0000-000000000001', '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '99bc7a9dfe22ec87301b8b1a051c5c4ef62f13d3525832271713e5dc267f8036', '62be1297cb64134928880f46b3d76fdb9a0aab45a36a0ac02b64bb21585390fc')
-- next
insert into "entry" values (12, 'ac7560c2-0f2e-467c-8747-78493e8917f9', 'readiness_recorded', '00000000-0000-0003-0000-000000000001', '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '62be1297cb64134928880f46b3d76fdb9a0aab45a36a0ac02b64bb21585390fc', '597b05930e8b0c5bf92260e512657e81e078601af538662cecbfa901d7bb8a97')
-- next
insert into "entry" values (13, 'e74cd2ec-9976-4693-99a6-faa5d4cfdff2', 'dose_signed', '00000000-0000-0003-0000-000000000001', '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '597b05930e8b0c5bf92260e512657e81e078601af538662cecbfa901d7bb8a97', '2c04b882ad559845427de9f4cac65740bce6d1a96e151c392e97db8899115b69')
-- next
insert into "entry" values (14, 'f450e5c8-8519-4c6d-9e19-98b23a5fff90', 'decision_written', '00000000-0000-0003-0000-000000000001', '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '2c04b882ad559845427de9f4cac65740bce6d1a96e151c392e97db8899115b69', '00f678fd2f4c38330315dc16da3bb5f47480237b25b709a17bd505fafe41f2cb')
-- next
insert into "entry" values (15, '18c4549e-40d1-41a8-956e-4f4625f3b466', 'baseline_recorded', '00000000-0000-0003-0000-000000000001', '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '00f678fd2f4c38330315dc16da3bb5f47480237b25b709a17bd505fafe41f2cb', '52a93d6b1b70d464a703e47dd8ba1b022b6e1502cc3d6d66ac46355c3add5721')
-- next
insert into "entry" values (16, 'ccee3120-24d3-40b5-90e7-e4e53440e885', 'examination_recorded', '00000000-0000-0003-0000-000000000001', '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '52a93d6b1b70d464a703e47dd8ba1b022b6e1502cc3d6d66ac46355c3add5721', 'bb34732f19413069a81ac5f26c5417ce06baf5289442f674a356eb72d8b8fe1f')
-- next
insert into "entry" values (17, '72e408ba-140c-473b-b9b0-7a8b6facf6cf', 'vial_received', '00000000-0000-0003-0000-000000000001', '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, 'bb34732f19413069a81ac5f26c5417ce06baf5289442f674a356eb72d8b8fe1f', 'ca03568365a26af628582ad5bbcab4943768cd4c8f6eb04e2ad91e7973452105')
-- next
insert into "entry" values (18, 'c69fd669-4259-444a-a90e-afc8d16a71bb', 'observation_started', '00000000-0000-0003-0000-000000000001', '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, 'ca03568365a26af628582ad5bbcab4943768cd4c8f6eb04e2ad91e7973452105', 'b53f6620b7697baad15ccf4d852fdf56b04159f9a832511a0e305726191e643d')
-- next
insert into "entry" values (19, '719a49ea-b2c9-4b09-a554-ea2ebaad61c8', 'observation_noted', '00000000-0000-0003-0000-000000000001', '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, 'b53f6620b7697baad15ccf4d852fdf56b04159f9a832511a0e305726191e643d', '9d3688cd22b0aa0bfa9d39e585ceaf6cc41f363861579b94889b8273b4e9ce6e')
-- next
insert into "entry" values (20, '34e669ba-5cb1-4971-8f94-dcb59c5c7878', 'injection_reported', '00000000-0000-0003-0000-000000000001', '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '9d3688cd22b0aa0bfa9d39e585ceaf6cc41f363861579b94889b8273b4e9ce6e', 'f1790eb441f8432bf97b5076a06bb2c24b56889866cb522fb1489ccfb6dd7cce')
-- next
insert into "entry" values (21, '5a3dc964-01fc-45dd-9c69-ac92fe6c8839', 'volume_reopened', '00000000-0000-0003-0000-000000000001', '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, 'f1790eb441f8432bf97b5076a06bb2c24b56889866cb522fb1489ccfb6dd7cce', '2fad9c7370f2ffa35883296f10eabed7a29e11e6c1da4ad8a03f5758e12f0f52')
-- next
insert into "entry" values (22, 'a03bd251-37c2-4400-a446-10ebbfd62314', 'room_day_closed', NULL, '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '2fad9c7370f2ffa35883296f10eabed7a29e11e6c1da4ad8a03f5758e12f0f52', 'cf13322e27738a8e9435fbf2b54294e3a6af613869b7877b645cbc00a46e0f72')
-- next
insert into "entry" values (23, '78861580-c185-4bd7-99ca-7ce2036aaa06', 'protocol_signed', NULL, '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, 'cf13322e27738a8e9435fbf2b54294e3a6af613869b7877b645cbc00a46e0f72', '2cfac079f15f799b32c64e12c5ffcdbe75f142b80b44749e3211ad4f988e24dd')
-- next
insert into "entry" values (24, '85fe4f98-9ead-443b-a157-88ca2efd0c59', 'past_history_brought_in', NULL, '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '2cfac079f15f799b32c64e12c5ffcdbe75f142b80b44749e3211ad4f988e24dd', '558e4b49e46eb3aa0dfaae4aca7294890cc35529c401a380d9d5918dbe61e075')
-- next
insert into "entry" values (25, 'd037e7ed-4090-4c7e-823f-b4e51101d7d9', 'page_viewed', NULL, '2026-03-02 09:00:00.123+00:00', '00000000-0000-0000-0000-000000000000', NULL, NULL, NULL, '558e4b49e46eb3aa0dfaae4aca7294890cc35529c401a380d9d5918dbe61e075', '84d1b84bae185b66272d20edd6db60eaebcca2f30c607ba29fbd0353087170d7')
-- next
insert into "journal_head" values (1, 25, '84d1b84bae185b66272d20edd6db60eaebcca2f30c607ba29fbd0353087170d7', '200782b358c3e0a3af226886219edd4afaa424c837ade199fefd14309c66538d')
-- next
insert into "account" values ('5858cb6a-688e-45e5-876d-c13a09d62260', '00000000-0000-0001-0000-000000000001', 'ana.ruiz')
-- next
insert into "account" values ('c417ab82-6540-4671-9d1c-142ae55db2e0', '00000000-0000-0001-0000-000000000002', 'zoe')
-- next
insert into "account_standing" values ('5858cb6a-688e-45e5-876d-c13a09d62260', '00000000-0000-0001-0000-000000000001', 'Name of ana.ruiz', 'prescriber administrator', 'active')
-- next
insert into "account_standing" values ('c417ab82-6540-4671-9d1c-142ae55db2e0', '00000000-0000-0001-0000-000000000002', 'Name of zoe', 'prescriber administrator', 'active')
-- next
insert into "account_standing" values ('4105fef5-040f-4146-93bd-5d6d909b70c0', '00000000-0000-0001-0000-000000000001', 'Name of ana.ruiz', 'auditor', 'active')
-- next
insert into "sign_in" values ('f572b677-ba74-4f9f-8efb-f3f536285512', '00000000-0000-0001-0000-000000000001', 'signed_in')
-- next
insert into "sign_in" values ('d1d2e301-baba-4546-ae7a-d1c789161500', NULL, 'refused')
-- next
insert into "preparation" values ('1a39e3cf-9b16-4c5d-aa37-4299f0cb23bb', 'alprostadil-20', NULL, 'Alprostadil 20', 'powder', 1000, 86400000, NULL, 1000, NULL, 'days', 1)
-- next
insert into "preparation_ingredient" values ('1a39e3cf-9b16-4c5d-aa37-4299f0cb23bb', 0, 'alprostadil', 20000, 60000000)
-- next
insert into "preparation_withdrawn" values ('0c34262c-0245-4a99-a838-fd8a99e71622', 'alprostadil-20')
-- next
insert into "syringe" values ('ff28bae1-f180-4006-8fc7-c3b4828beeb3', 'u100-1', 1)
-- next
insert into "course_opened" values ('783bdd59-403c-47d9-a09a-2547bbbc823a', 'Sample Man', '1961-04-30', 'S-1', 'sample man', 's-1', 'unknown')
-- next
insert into "screened" values ('dd9315ce-f076-45e0-a55e-26eead28ec86', 2)
-- next
insert into "screened_answer" values ('dd9315ce-f076-45e0-a55e-26eead28ec86', 1, 'venous_leak', 'yes', '2026-03-02 09:00:00.123+00:00')
-- next
insert into "screened_answer" values ('dd9315ce-f076-45e0-a55e-26eead28ec86', 2, 'trazodone', 'no', '2026-03-02 09:00:00.123+00:00')
-- next
insert into "decision_written" values ('f450e5c8-8519-4c6d-9e19-98b23a5fff90', 'venous_leak')
-- next
insert into "baseline_recorded" values ('18c4549e-40d1-41a8-956e-4f4625f3b466', 9, 'good', 'limited', 'himself')
-- next
insert into "examination_recorded" values ('ccee3120-24d3-40b5-90e7-e4e53440e885', '2026-03-01', 'no')
-- next
insert into "vial_received" values ('72e408ba-140c-473b-b9b0-7a8b6facf6cf', 'lot', 'alprostadil 20 mcg per mL', '2026-02-01', '2026-05-01', '2026-02-02', 28, 'syringe')
-- next
insert into "plan_chosen" values ('6d278a2e-6154-4056-84ea-b976ccba9877', 'alprostadil-20', 'u100-0.5', 'sample', 1)
-- next
insert into "readiness_recorded" values ('ac7560c2-0f2e-467c-8747-78493e8917f9', 'emergency_plan', '2026-03-01', 'hospital', '555 0100', 'a taxi', 'agreed')
-- next
insert into "dose_signed" values ('e74cd2ec-9976-4693-99a6-faa5d4cfdff2', 'alprostadil-20', 'u100-0.5', 'sample', 1, 100, 'home', 200, 'more_caution', 4, '2026-03-02 09:00:00.123+00:00', 'advice
in two lines', 200)
-- next
insert into "dose_signed_rung" values ('e74cd2ec-9976-4693-99a6-faa5d4cfdff2', 1, 100)
-- next
insert into "dose_signed_rung" values ('e74cd2ec-9976-4693-99a6-faa5d4cfdff2', 2, 200)
-- next
insert into "dose_signed_override" values ('e74cd2ec-9976-4693-99a6-faa5d4cfdff2', 1, 'home_not_ready')
-- next
insert into "injection_reported" values ('34e669ba-5cb1-4971-8f94-dcb59c5c7878', '2026-03-02 09:00:00.123+00:00', 'alprostadil-20', 'u100-0.5', 100, 100, 3, 'between', 1800000, 3600000, 'one_found', 'clinic', 'c69fd669-4259-444a-a90e-afc8d16a71bb', 480000, 1800000, 'his_left', 2, 3, 'no', 'yes', '72e408ba-140c-473b-b9b0-7a8b6facf6cf', 'none', 'no')
-- next
insert into "injection_reported_cause" values ('34e669ba-5cb1-4971-8f94-dcb59c5c7878', 1, 'leak')
-- next
insert into "injection_reported_cause" values ('34e669ba-5cb1-4971-8f94-dcb59c5c7878', 2, 'bubble')
-- next
insert into "observation_started" values ('c69fd669-4259-444a-a90e-afc8d16a71bb', '2026-03-02 09:00:00.123+00:00', 'alprostadil-20', 'u100-0.5', 100, 100, 'his_left', 2, 130, 80, 70, '72e408ba-140c-473b-b9b0-7a8b6facf6cf')
-- next
insert into "observation_noted" values ('719a49ea-b2c9-4b09-a554-ea2ebaad61c8', 'c69fd669-4259-444a-a90e-afc8d16a71bb', 'usable', '2026-03-02 09:00:00.123+00:00', 3, 128, 76, 72)
-- next
insert into "room_day_closed" values ('a03bd251-37c2-4400-a446-10ebbfd62314', '2026-03-02')
-- next
insert into "volume_reopened" values ('5a3dc964-01fc-45dd-9c69-ac92fe6c8839', 'alprostadil-20', 100)
-- next
insert into "protocol_signed" values ('78861580-c185-4bd7-99ca-7ce2036aaa06', 'sample', 1, 'two
lines')
-- next
insert into "page_viewed" values ('d037e7ed-4090-4c7e-823f-b4e51101d7d9', 'course', 'shown')
-- next
insert into "page_viewed_course" values ('d037e7ed-4090-4c7e-823f-b4e51101d7d9', 1, '00000000-0000-0003-0000-000000000001')
-- next
insert into "past_history" values ('85fe4f98-9ead-443b-a157-88ca2efd0c59', '00000000-0000-0004-0000-000000000001', 'history.csv', 'S-2', 's-2', 'vasculogenic')
-- next
insert into "past_injection" values ('85fe4f98-9ead-443b-a157-88ca2efd0c59', 1, 2, 1, 100, '0.95', '1.0', 3, 'between', 1800000, 3600000, '2026-03-02 09:00:00.123+00:00', 'alprostadil-20', 'u100-0.5')
-- next
insert into "past_injection" values ('85fe4f98-9ead-443b-a157-88ca2efd0c59', 2, 3, 2, 100, '1.0', '1.0', 0, 'not_known', NULL, NULL, NULL, NULL, NULL)
-- next
CREATE TRIGGER entry_is_not_changed before update on entry
begin select raise(abort, 'entries are never changed'); end
-- next
CREATE TRIGGER entry_is_not_removed before delete on entry
begin select raise(abort, 'entries are never removed'); end
-- next
CREATE TRIGGER entry_leaves_no_gap before insert on entry
when new.seq <> (select coalesce(max(seq), 0) + 1 from entry)
begin select raise(abort, 'entries are counted without a gap'); end
-- next
CREATE TRIGGER account_is_not_changed before update on account
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER account_is_not_removed before delete on account
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER account_standing_is_not_changed before update on account_standing
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER account_standing_is_not_removed before delete on account_standing
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER sign_in_is_not_changed before update on sign_in
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER sign_in_is_not_removed before delete on sign_in
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER preparation_is_not_changed before update on preparation
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER preparation_is_not_removed before delete on preparation
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER preparation_ingredient_is_not_changed before update on preparation_ingredient
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER preparation_ingredient_is_not_removed before delete on preparation_ingredient
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER preparation_withdrawn_is_not_changed before update on preparation_withdrawn
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER preparation_withdrawn_is_not_removed before delete on preparation_withdrawn
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER syringe_is_not_changed before update on syringe
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER syringe_is_not_removed before delete on syringe
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER course_opened_is_not_changed before update on course_opened
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER course_opened_is_not_removed before delete on course_opened
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER screened_is_not_changed before update on screened
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER screened_is_not_removed before delete on screened
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER screened_answer_is_not_changed before update on screened_answer
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER screened_answer_is_not_removed before delete on screened_answer
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER decision_written_is_not_changed before update on decision_written
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER decision_written_is_not_removed before delete on decision_written
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER baseline_recorded_is_not_changed before update on baseline_recorded
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER baseline_recorded_is_not_removed before delete on baseline_recorded
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER examination_recorded_is_not_changed before update on examination_recorded
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER examination_recorded_is_not_removed before delete on examination_recorded
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER vial_received_is_not_changed before update on vial_received
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER vial_received_is_not_removed before delete on vial_received
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER injection_reported_cause_is_not_changed before update on injection_reported_cause
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER injection_reported_cause_is_not_removed before delete on injection_reported_cause
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER observation_started_is_not_changed before update on observation_started
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER observation_started_is_not_removed before delete on observation_started
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER observation_noted_is_not_changed before update on observation_noted
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER observation_noted_is_not_removed before delete on observation_noted
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER room_day_closed_is_not_changed before update on room_day_closed
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER room_day_closed_is_not_removed before delete on room_day_closed
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER plan_chosen_is_not_changed before update on plan_chosen
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER plan_chosen_is_not_removed before delete on plan_chosen
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER readiness_recorded_is_not_changed before update on readiness_recorded
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER readiness_recorded_is_not_removed before delete on readiness_recorded
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER dose_signed_is_not_changed before update on dose_signed
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER dose_signed_is_not_removed before delete on dose_signed
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER dose_signed_rung_is_not_changed before update on dose_signed_rung
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER dose_signed_rung_is_not_removed before delete on dose_signed_rung
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER dose_signed_override_is_not_changed before update on dose_signed_override
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER dose_signed_override_is_not_removed before delete on dose_signed_override
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER injection_reported_is_not_changed before update on injection_reported
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER injection_reported_is_not_removed before delete on injection_reported
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER volume_reopened_is_not_changed before update on volume_reopened
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER volume_reopened_is_not_removed before delete on volume_reopened
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER protocol_signed_is_not_changed before update on protocol_signed
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER protocol_signed_is_not_removed before delete on protocol_signed
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER page_viewed_is_not_changed before update on page_viewed
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER page_viewed_is_not_removed before delete on page_viewed
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER page_viewed_course_is_not_changed before update on page_viewed_course
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER page_viewed_course_is_not_removed before delete on page_viewed_course
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER past_history_is_not_changed before update on past_history
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER past_history_is_not_removed before delete on past_history
begin select raise(abort, 'facts are never removed'); end
-- next
CREATE TRIGGER past_injection_is_not_changed before update on past_injection
begin select raise(abort, 'facts are never changed'); end
-- next
CREATE TRIGGER past_injection_is_not_removed before delete on past_injection
begin select raise(abort, 'facts are never removed'); end
