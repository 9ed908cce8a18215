-- What brings a course to a stand, and what lets it go on.
create table life_written (
  entry_id varchar(36) not null,
  word varchar(20) not null,
  why varchar(40),
  last_dose date,
  vials varchar(20),
  after_end varchar(20),
  referred_to varchar(200),
  constraint life_written_pk primary key (entry_id),
  constraint life_written_has_an_entry foreign key (entry_id) references entry (id)
);
