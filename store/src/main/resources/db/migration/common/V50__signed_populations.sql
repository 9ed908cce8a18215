-- A population of the response model as it was signed; the entry says by whom and when. The version
-- counts the signatures of a name.
create table population_signed (
  entry_id varchar(36) not null,
  name varchar(60) not null,
  version integer not null,
  document text not null,
  constraint population_signed_pk primary key (entry_id),
  constraint population_signed_has_an_entry foreign key (entry_id) references entry (id),
  constraint population_signed_once unique (name, version),
  constraint population_signed_counts_from_1 check (version >= 1)
);

-- The preparations that it was signed for.
create table population_signed_preparation (
  entry_id varchar(36) not null,
  line integer not null,
  preparation varchar(100) not null,
  constraint population_signed_preparation_pk primary key (entry_id, line),
  constraint population_signed_preparation_of_one foreign key (entry_id)
    references population_signed (entry_id)
);

-- The entry says why.
create table population_withdrawn (
  entry_id varchar(36) not null,
  name varchar(60) not null,
  version integer not null,
  constraint population_withdrawn_pk primary key (entry_id),
  constraint population_withdrawn_has_an_entry foreign key (entry_id) references entry (id),
  constraint population_withdrawn_once unique (name, version)
);
