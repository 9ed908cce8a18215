-- A step of the clinic's signed protocol that was done in a call, with its words of then.
alter table rescue_written add column protocol_version integer;
alter table rescue_written add column step_line integer;
alter table rescue_written add column step_words varchar(300);
alter table rescue_written add column speaker varchar(20);
