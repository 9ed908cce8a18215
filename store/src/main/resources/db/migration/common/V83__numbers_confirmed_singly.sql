-- Which numbers of a protocol its signer confirmed singly: each goes past a published text, or is a
-- step that more than doubles the dose.
create table protocol_signed_confirmed (
  entry_id varchar(36) not null,
  line integer not null,
  number varchar(200) not null,
  constraint protocol_signed_confirmed_pk primary key (entry_id, line),
  constraint protocol_signed_confirmed_of_a_signature foreign key (entry_id)
    references protocol_signed (entry_id),
  constraint protocol_signed_confirmed_counts_from_1 check (line >= 1)
);
