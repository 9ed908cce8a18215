-- Another course of the same man, and that it is so no more.
create table elsewhere_joined (
  entry_id varchar(36) not null,
  word varchar(20) not null,
  course varchar(36) not null,
  leads boolean not null,
  constraint elsewhere_joined_pk primary key (entry_id),
  constraint elsewhere_joined_has_an_entry foreign key (entry_id) references entry (id)
);
