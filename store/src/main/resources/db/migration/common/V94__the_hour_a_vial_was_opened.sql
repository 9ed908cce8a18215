-- The time of day at which a vial was opened, as a clock shows it: "09:30". A powder that was
-- dissolved is used for hours, not for days.
alter table vial_received add column opened_clock varchar(5);
