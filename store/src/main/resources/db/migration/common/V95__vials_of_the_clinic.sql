-- Of which vial of the clinic's a dose for a man was drawn: the entry, of no course, that wrote that
-- vial down first. A vial of the clinic's is itself a row without one, of an entry of no course.
alter table vial_received add column of_clinic varchar(36) references entry (id);
