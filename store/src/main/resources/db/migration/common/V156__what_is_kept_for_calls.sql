-- What the clinic does in a call about a long erection, as a prescriber signed it.
create table call_protocol_signed (
  entry_id varchar(36) not null,
  version integer not null,
  night_number varchar(200) not null,
  in_an_hour_picograms bigint not null,
  interval_milliseconds bigint not null,
  constraint call_protocol_signed_pk primary key (entry_id),
  constraint call_protocol_signed_has_an_entry foreign key (entry_id) references entry (id),
  constraint call_protocol_signed_once unique (version)
);

create table call_protocol_signed_step (
  entry_id varchar(36) not null,
  line integer not null,
  asks varchar(20) not null,
  shown varchar(20) not null,
  words varchar(300) not null,
  constraint call_protocol_signed_step_pk primary key (entry_id, line),
  constraint call_protocol_signed_step_of_a_protocol
    foreign key (entry_id) references call_protocol_signed (entry_id),
  constraint call_protocol_signed_step_counts_from_1 check (line >= 1)
);

-- An emergency department on the clinic's list. One that corrects an earlier entry stands in its
-- place; an entry of the kind department_gone, which has no fact, takes it off.
create table department_kept (
  entry_id varchar(36) not null,
  name varchar(200) not null,
  town varchar(200) not null,
  telephone varchar(40) not null,
  can varchar(200) not null,
  note varchar(200) not null,
  constraint department_kept_pk primary key (entry_id),
  constraint department_kept_has_an_entry foreign key (entry_id) references entry (id)
);

-- Somebody printed the page for when the server is down; the edition is the number of the last
-- entry that it was made of.
create table call_page_printed (
  entry_id varchar(36) not null,
  edition bigint not null,
  constraint call_page_printed_pk primary key (entry_id),
  constraint call_page_printed_has_an_entry foreign key (entry_id) references entry (id)
);
