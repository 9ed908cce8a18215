-- What a history file said of one patient, from before this record began. Its entry names no course:
-- a course of the same record number reads it. Withdrawn by an entry that corrects it and says no
-- more. Potency and strength are the shortest decimal text of what the file said.
create table past_history (
  entry_id varchar(36) not null,
  import_id varchar(36) not null,
  source_file varchar(200) not null,
  patient varchar(40) not null,
  record_key varchar(120) not null,
  aetiology_group varchar(60) not null,
  constraint past_history_pk primary key (entry_id),
  constraint past_history_has_an_entry foreign key (entry_id) references entry (id)
);

create index past_history_by_record on past_history (record_key);
create index past_history_by_import on past_history (import_id);

create table past_injection (
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
);

create index entry_by_correction on entry (corrects);
