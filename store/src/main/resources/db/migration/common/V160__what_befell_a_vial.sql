-- What befell a vial after it was handed out.
create table vial_befell (
  entry_id varchar(36) not null,
  vial varchar(36) not null,
  word varchar(20) not null,
  since_day date,
  celsius integer,
  least_hours integer,
  most_hours integer,
  place varchar(20),
  how varchar(20),
  constraint vial_befell_pk primary key (entry_id),
  constraint vial_befell_has_an_entry foreign key (entry_id) references entry (id),
  constraint vial_befell_of_a_vial foreign key (vial) references entry (id)
);
