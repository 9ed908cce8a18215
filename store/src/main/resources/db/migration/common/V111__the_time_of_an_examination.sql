-- When on its day an examination was, where somebody said so: only then is it known to be after
-- what happened on the same day.
alter table examination_recorded add column examined_at timestamp with time zone;
