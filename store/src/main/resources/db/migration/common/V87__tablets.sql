-- A tablet for erections that he took.
create table tablet_taken (
  entry_id varchar(36) not null,
  tablet varchar(40) not null,
  taken_at timestamp with time zone not null,
  constraint tablet_taken_pk primary key (entry_id),
  constraint tablet_taken_has_an_entry foreign key (entry_id) references entry (id)
);

-- A prescriber's decision on a daily low dose of one.
create table daily_tablet_decided (
  entry_id varchar(36) not null,
  is_allowed smallint not null,
  constraint daily_tablet_decided_pk primary key (entry_id),
  constraint daily_tablet_decided_has_an_entry foreign key (entry_id) references entry (id),
  constraint daily_tablet_decided_is_yes_or_no check (is_allowed in (0, 1))
);
