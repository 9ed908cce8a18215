-- One version of a preparation. Amounts are whole microlitres and picograms.
create table preparation (
  entry_id varchar(36) not null,
  preparation_id varchar(80) not null,
  replaces varchar(80),
  name varchar(100) not null,
  form varchar(20) not null,
  diluent_microlitres bigint,
  usable_milliseconds bigint,
  fill_microlitres bigint,
  ceiling_microlitres bigint not null,
  preservative varchar(100),
  in_use varchar(20) not null,
  in_use_days smallint,
  constraint preparation_pk primary key (entry_id),
  constraint preparation_has_an_entry foreign key (entry_id) references entry (id),
  constraint preparation_id_is_unique unique (preparation_id),
  constraint preparation_is_replaced_once unique (replaces),
  constraint preparation_replaces_another foreign key (replaces) references preparation (preparation_id),
  constraint preparation_form_is_known check (form in ('solution', 'powder', 'prefilled', 'cartridge')),
  constraint preparation_in_use_is_known check (in_use in ('single_use', 'days', 'not_stated')),
  constraint preparation_ceiling_is_more_than_0 check (ceiling_microlitres > 0)
);

-- What a version holds: one row for each component. The strength is that of the salt.
create table preparation_ingredient (
  entry_id varchar(36) not null,
  line smallint not null,
  component varchar(40) not null,
  picograms_per_microlitre bigint not null,
  limit_picograms bigint,
  constraint preparation_ingredient_pk primary key (entry_id, line),
  constraint preparation_ingredient_has_an_entry foreign key (entry_id) references entry (id),
  constraint preparation_ingredient_once unique (entry_id, component),
  constraint preparation_ingredient_is_more_than_0 check (picograms_per_microlitre > 0)
);

create table preparation_withdrawn (
  entry_id varchar(36) not null,
  preparation_id varchar(80) not null,
  constraint preparation_withdrawn_pk primary key (entry_id),
  constraint preparation_withdrawn_has_an_entry foreign key (entry_id) references entry (id),
  constraint preparation_withdrawn_once unique (preparation_id),
  constraint preparation_withdrawn_is_known foreign key (preparation_id) references preparation (preparation_id)
);

-- A type of syringe that the clinic keeps from an entry on, or no longer.
create table syringe (
  entry_id varchar(36) not null,
  barrel varchar(40) not null,
  is_kept boolean not null,
  constraint syringe_pk primary key (entry_id),
  constraint syringe_has_an_entry foreign key (entry_id) references entry (id)
);
