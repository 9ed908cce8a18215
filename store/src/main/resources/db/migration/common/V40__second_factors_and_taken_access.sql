-- Something that happened to the second factor of an account; what, is the kind of the entry.
create table factor_changed (
  entry_id varchar(36) not null,
  account_id varchar(36) not null,
  constraint factor_changed_pk primary key (entry_id),
  constraint factor_changed_has_an_entry foreign key (entry_id) references entry (id),
  constraint factor_changed_of_an_account foreign key (account_id) references account (account_id)
);

create index factor_changed_by_account on factor_changed (account_id);

-- Access to one course that somebody without a standing right to it has taken. The entry holds the
-- reason. As with a view, the entry names no course itself, so that advice is not moved by it.
create table access_taken (
  entry_id varchar(36) not null,
  account_id varchar(36) not null,
  course_id varchar(36) not null,
  good_until timestamp with time zone not null,
  constraint access_taken_pk primary key (entry_id),
  constraint access_taken_has_an_entry foreign key (entry_id) references entry (id),
  constraint access_taken_by_an_account foreign key (account_id) references account (account_id)
);

create index access_taken_by_account on access_taken (account_id, course_id);
create index access_taken_by_course on access_taken (course_id);

-- Secrets of authenticator apps, encrypted. No records: they are replaced and removed, as are the
-- two tables below. The last step is that of the last code that was accepted.
create table time_secret (
  holder_id varchar(36) not null,
  sealed_secret varchar(200) not null,
  last_step bigint not null,
  constraint time_secret_pk primary key (holder_id)
);

-- Hashes of the recovery codes that are still good.
create table recovery_code (
  holder_id varchar(36) not null,
  line integer not null,
  hash varchar(500) not null,
  constraint recovery_code_pk primary key (holder_id, line)
);

-- Passkeys: public halves only.
create table passkey (
  passkey_id varchar(1400) not null,
  holder_id varchar(36) not null,
  name varchar(40) not null,
  public_part varchar(4000) not null,
  sign_count bigint not null,
  added_at timestamp with time zone not null,
  constraint passkey_pk primary key (passkey_id)
);

create index passkey_by_holder on passkey (holder_id);

-- What an auditor searches the entries by.
create index entry_by_recorder on entry (recorded_by, seq);
create index entry_by_kind on entry (kind, seq);
create index entry_by_time on entry (recorded_at);
