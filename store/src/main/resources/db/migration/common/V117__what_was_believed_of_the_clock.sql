-- What was believed of the clock when an entry was written: that something independent agreed with
-- it, that a person had confirmed date and time, that nothing answered, or that it was wrong. Empty
-- in entries of before this column, and in those of verbs of the command line. It is sealed.
alter table entry add column clock_believed varchar(20)
  check (clock_believed in ('compared', 'confirmed', 'not_compared', 'wrong'));
