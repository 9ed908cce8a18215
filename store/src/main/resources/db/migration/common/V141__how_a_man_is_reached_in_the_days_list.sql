-- How he is called, in the row of the day's list; hours are minutes of the day. Every row is made
-- anew; until then it keeps its place.
alter table day_row add column call_number varchar(40);
alter table day_row add column call_whose varchar(20);
alter table day_row add column call_from integer;
alter table day_row add column call_until integer;
alter table day_row add column call_message varchar(20);
alter table day_row add column call_partner varchar(20);
alter table day_row add column call_tries integer;
alter table day_row add column call_tried_at bigint;
alter table day_row add column call_due bigint;

update day_row set holds_until = 0, row_check = '';
