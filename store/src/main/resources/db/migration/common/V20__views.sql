-- Pages that named men, each written down before it was shown. Their entries name no course, so
-- that a course is read as fast as if nobody had looked; the courses stand here.
create table page_viewed (
  entry_id varchar(36) not null,
  screen varchar(40) not null,
  outcome varchar(20) not null,
  constraint page_viewed_pk primary key (entry_id),
  constraint page_viewed_has_an_entry foreign key (entry_id) references entry (id),
  constraint page_viewed_has_an_outcome check (outcome in ('shown', 'refused'))
);

create table page_viewed_course (
  entry_id varchar(36) not null,
  line integer not null,
  course_id varchar(36) not null,
  constraint page_viewed_course_pk primary key (entry_id, line),
  constraint page_viewed_course_of_a_page foreign key (entry_id) references page_viewed (entry_id),
  constraint page_viewed_course_counts_from_1 check (line >= 1)
);

create index page_viewed_course_by_course on page_viewed_course (course_id);
