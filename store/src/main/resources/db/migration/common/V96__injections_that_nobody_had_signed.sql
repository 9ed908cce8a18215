-- An injection of which no dose had been signed: the volume beside it under "ordered" is what was
-- drawn. An entry of before this table has no row here, whether or not a dose had been signed.
create table injection_not_ordered (
  entry_id varchar(36) not null,
  constraint injection_not_ordered_pk primary key (entry_id),
  constraint injection_not_ordered_of_an_entry foreign key (entry_id) references entry (id)
);
