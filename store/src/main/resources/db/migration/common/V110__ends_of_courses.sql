-- How many entries a course has and which is its last, sealed, so that one that was removed is
-- missed when the course is read. The row is replaced with every entry of the course.
create table course_end (
  course_id varchar(36) not null,
  first_seq bigint not null,
  entries bigint not null,
  last_seq bigint not null,
  last_seal varchar(64) not null,
  end_seal varchar(64) not null,
  constraint course_end_pk primary key (course_id)
);
