-- A prescriber wrote that a yes of the screening was wrong, and what shows it.
create table answer_overturned (
  entry_id varchar(36) not null,
  condition_name varchar(60) not null,
  shown_by varchar(40) not null,
  constraint answer_overturned_pk primary key (entry_id),
  constraint answer_overturned_has_an_entry foreign key (entry_id) references entry (id)
);
