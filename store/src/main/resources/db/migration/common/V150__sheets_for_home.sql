-- A sheet that was made for a man to take home: of which order, vial and plan, and all it says.
create table sheet_made (
  entry_id varchar(36) not null,
  order_entry varchar(36) not null,
  vial_entry varchar(36) not null,
  plan_entry varchar(36) not null,
  sheet_id varchar(36) not null,
  code varchar(12) not null,
  language varchar(10) not null,
  paper varchar(10) not null,
  words_version integer not null,
  address varchar(200) not null,
  said varchar(20000) not null,
  constraint sheet_made_pk primary key (entry_id),
  constraint sheet_made_has_an_entry foreign key (entry_id) references entry (id),
  constraint sheet_made_of_an_order foreign key (order_entry) references entry (id),
  constraint sheet_made_of_a_vial foreign key (vial_entry) references entry (id),
  constraint sheet_made_of_a_plan foreign key (plan_entry) references entry (id)
);

create index sheet_made_by_code on sheet_made (code);
