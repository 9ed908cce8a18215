-- What was said that may mean 4 hours or still firm, while the report is not complete.
create table report_unfinished (
  entry_id varchar(36) not null,
  injected_at timestamp with time zone,
  about varchar(36),
  constraint report_unfinished_pk primary key (entry_id),
  constraint report_unfinished_has_an_entry foreign key (entry_id) references entry (id),
  constraint report_unfinished_about_an_entry foreign key (about) references entry (id)
);

-- What stood in the parts of its form.
create table report_unfinished_line (
  entry_id varchar(36) not null,
  line integer not null,
  part varchar(40) not null,
  said varchar(200) not null,
  constraint report_unfinished_line_pk primary key (entry_id, line),
  constraint report_unfinished_line_of_a_report
    foreign key (entry_id) references report_unfinished (entry_id),
  constraint report_unfinished_line_counts_from_1 check (line >= 1)
);
