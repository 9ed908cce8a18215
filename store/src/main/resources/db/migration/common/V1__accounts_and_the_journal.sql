-- Everything that happened, in one chain. An entry says who, when and on whose behalf; what it says
-- stands in fact tables, which carry its id. A seal covers the seal before it, the entry and its
-- facts. A fact table has no default values, so that what was sealed is what was written.
create table entry (
  seq bigint not null,
  id varchar(36) not null,
  kind varchar(40) not null,
  course_id varchar(36),
  recorded_at timestamp with time zone not null,
  recorded_by varchar(36) not null,
  on_behalf_of varchar(36),
  corrects varchar(36),
  reason varchar(2000),
  previous_seal varchar(64) not null,
  seal varchar(64) not null,
  constraint entry_pk primary key (seq),
  constraint entry_id_is_unique unique (id),
  constraint entry_counts_from_1 check (seq >= 1),
  constraint entry_corrects_an_entry foreign key (corrects) references entry (id)
);

create index entry_by_course on entry (course_id, seq);

-- Where the chain ends, sealed by itself, so that a cut end is found. The one row is replaced.
create table journal_head (
  id smallint not null,
  seq bigint not null,
  seal varchar(64) not null,
  head_seal varchar(64) not null,
  constraint journal_head_pk primary key (id),
  constraint journal_head_is_one check (id = 1)
);

-- What never changes about an account. Written with its first entry.
create table account (
  entry_id varchar(36) not null,
  account_id varchar(36) not null,
  sign_in_name varchar(40) not null,
  constraint account_pk primary key (entry_id),
  constraint account_has_an_entry foreign key (entry_id) references entry (id),
  constraint account_id_is_unique unique (account_id),
  constraint account_sign_in_name_is_unique unique (sign_in_name)
);

-- What an account is from an entry on. Roles are tokens with a space between.
create table account_standing (
  entry_id varchar(36) not null,
  account_id varchar(36) not null,
  full_name varchar(100) not null,
  roles varchar(200) not null,
  state varchar(20) not null,
  constraint account_standing_pk primary key (entry_id),
  constraint account_standing_has_an_entry foreign key (entry_id) references entry (id),
  constraint account_standing_of_an_account foreign key (account_id) references account (account_id)
);

create index account_standing_by_account on account_standing (account_id);

-- A try at signing in; no account if nobody has the name that was given.
create table sign_in (
  entry_id varchar(36) not null,
  account_id varchar(36),
  outcome varchar(20) not null,
  constraint sign_in_pk primary key (entry_id),
  constraint sign_in_has_an_entry foreign key (entry_id) references entry (id),
  constraint sign_in_of_an_account foreign key (account_id) references account (account_id)
);

-- Hashes of secrets. No records: they are replaced and removed. The holder is an account, or the
-- nil id for the first administrator's code.
create table credential (
  holder_id varchar(36) not null,
  kind varchar(20) not null,
  hash varchar(500) not null,
  good_until timestamp with time zone,
  constraint credential_pk primary key (holder_id, kind)
);
