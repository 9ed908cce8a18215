-- What the day's list says of each course. It is no record: it is made anew from the course whenever
-- it no longer holds, and each row has a keyed check over itself. Instants are whole milliseconds.
create table day_row (
  course_id varchar(36) not null,
  need_rank integer not null,
  since bigint not null,
  made_at bigint not null,
  holds_until bigint not null,
  emergency_at bigint,
  last_seq bigint not null,
  versions varchar(200) not null,
  man varchar(100) not null,
  record_number varchar(40) not null,
  advice text not null,
  because text not null,
  sign varchar(20) not null,
  answer text not null,
  row_check varchar(64) not null,
  constraint day_row_pk primary key (course_id)
);

create index day_row_by_rank on day_row (need_rank, since, man);
create index day_row_by_making on day_row (made_at);
create index day_row_by_end on day_row (holds_until);
create index day_row_by_emergency on day_row (emergency_at);
create index day_row_by_versions on day_row (versions);

-- Every course of before waits for its first row.
insert into day_row
  select distinct course_id, 3, 0, 0, 0, null, 0, '', '', '', '', '', '', '', ''
  from entry where course_id is not null;

-- The words by which a man is found, made with the row of his course.
create table man_word (
  word varchar(100) not null,
  course_id varchar(36) not null,
  constraint man_word_pk primary key (word, course_id)
);

create index man_word_by_course on man_word (course_id);
