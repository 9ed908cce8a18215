-- Injections of which nobody had signed a dose. The column for the order then repeats what was
-- drawn, as it did before this table: whether an earlier row was ordered is told by the doses that
-- were signed before it.
create table injection_not_ordered (
  entry_id varchar(36) not null,
  constraint injection_not_ordered_pk primary key (entry_id),
  constraint injection_not_ordered_of_an_entry foreign key (entry_id) references entry (id)
);
