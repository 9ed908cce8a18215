-- No row of the journal or of a fact table is changed or removed. Each fact table has its two
-- triggers here; a test goes through all of them.
create trigger if not exists entry_is_not_changed before update on entry
begin select raise(abort, 'entries are never changed'); end;
create trigger if not exists entry_is_not_removed before delete on entry
begin select raise(abort, 'entries are never removed'); end;

create trigger if not exists entry_leaves_no_gap before insert on entry
when new.seq <> (select coalesce(max(seq), 0) + 1 from entry)
begin select raise(abort, 'entries are counted without a gap'); end;

create trigger if not exists account_is_not_changed before update on account
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists account_is_not_removed before delete on account
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists account_standing_is_not_changed before update on account_standing
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists account_standing_is_not_removed before delete on account_standing
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists sign_in_is_not_changed before update on sign_in
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists sign_in_is_not_removed before delete on sign_in
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists preparation_is_not_changed before update on preparation
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists preparation_is_not_removed before delete on preparation
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists preparation_ingredient_is_not_changed before update on preparation_ingredient
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists preparation_ingredient_is_not_removed before delete on preparation_ingredient
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists preparation_withdrawn_is_not_changed before update on preparation_withdrawn
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists preparation_withdrawn_is_not_removed before delete on preparation_withdrawn
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists syringe_is_not_changed before update on syringe
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists syringe_is_not_removed before delete on syringe
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists course_opened_is_not_changed before update on course_opened
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists course_opened_is_not_removed before delete on course_opened
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists screened_is_not_changed before update on screened
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists screened_is_not_removed before delete on screened
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists screened_answer_is_not_changed before update on screened_answer
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists screened_answer_is_not_removed before delete on screened_answer
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists decision_written_is_not_changed before update on decision_written
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists decision_written_is_not_removed before delete on decision_written
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists baseline_recorded_is_not_changed before update on baseline_recorded
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists baseline_recorded_is_not_removed before delete on baseline_recorded
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists examination_recorded_is_not_changed before update on examination_recorded
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists examination_recorded_is_not_removed before delete on examination_recorded
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists vial_received_is_not_changed before update on vial_received
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists vial_received_is_not_removed before delete on vial_received
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists injection_reported_cause_is_not_changed before update on injection_reported_cause
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists injection_reported_cause_is_not_removed before delete on injection_reported_cause
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists observation_started_is_not_changed before update on observation_started
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists observation_started_is_not_removed before delete on observation_started
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists observation_noted_is_not_changed before update on observation_noted
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists observation_noted_is_not_removed before delete on observation_noted
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists room_day_closed_is_not_changed before update on room_day_closed
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists room_day_closed_is_not_removed before delete on room_day_closed
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists plan_chosen_is_not_changed before update on plan_chosen
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists plan_chosen_is_not_removed before delete on plan_chosen
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists injection_not_ordered_is_not_changed before update on injection_not_ordered
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists injection_not_ordered_is_not_removed before delete on injection_not_ordered
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists readiness_recorded_line_is_not_changed before update on readiness_recorded_line
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists readiness_recorded_line_is_not_removed before delete on readiness_recorded_line
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists readiness_recorded_is_not_changed before update on readiness_recorded
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists readiness_recorded_is_not_removed before delete on readiness_recorded
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists dose_signed_is_not_changed before update on dose_signed
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists dose_signed_is_not_removed before delete on dose_signed
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists dose_signed_rung_is_not_changed before update on dose_signed_rung
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists dose_signed_rung_is_not_removed before delete on dose_signed_rung
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists dose_signed_override_is_not_changed before update on dose_signed_override
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists dose_signed_override_is_not_removed before delete on dose_signed_override
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists dose_signed_hold_is_not_changed before update on dose_signed_hold
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists dose_signed_hold_is_not_removed before delete on dose_signed_hold
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists dose_signed_hold_fact_is_not_changed before update on dose_signed_hold_fact
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists dose_signed_hold_fact_is_not_removed before delete on dose_signed_hold_fact
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists answer_overturned_is_not_changed before update on answer_overturned
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists answer_overturned_is_not_removed before delete on answer_overturned
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists injection_reported_is_not_changed before update on injection_reported
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists injection_reported_is_not_removed before delete on injection_reported
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists volume_reopened_is_not_changed before update on volume_reopened
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists volume_reopened_is_not_removed before delete on volume_reopened
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists protocol_signed_is_not_changed before update on protocol_signed
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists protocol_signed_is_not_removed before delete on protocol_signed
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists page_viewed_is_not_changed before update on page_viewed
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists page_viewed_is_not_removed before delete on page_viewed
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists page_viewed_course_is_not_changed before update on page_viewed_course
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists page_viewed_course_is_not_removed before delete on page_viewed_course
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists past_history_is_not_changed before update on past_history
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists past_history_is_not_removed before delete on past_history
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists past_injection_named_is_not_changed before update on past_injection_named
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists past_injection_named_is_not_removed before delete on past_injection_named
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists past_injection_is_not_changed before update on past_injection
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists past_injection_is_not_removed before delete on past_injection
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists factor_changed_is_not_changed before update on factor_changed
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists factor_changed_is_not_removed before delete on factor_changed
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists access_taken_is_not_changed before update on access_taken
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists access_taken_is_not_removed before delete on access_taken
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists population_signed_is_not_changed before update on population_signed
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists population_signed_is_not_removed before delete on population_signed
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists population_signed_preparation_is_not_changed before update on population_signed_preparation
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists population_signed_preparation_is_not_removed before delete on population_signed_preparation
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists population_withdrawn_is_not_changed before update on population_withdrawn
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists population_withdrawn_is_not_removed before delete on population_withdrawn
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists handed_over_is_not_changed before update on handed_over
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists handed_over_is_not_removed before delete on handed_over
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists emergency_reviewed_end_is_not_changed before update on emergency_reviewed_end
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists emergency_reviewed_end_is_not_removed before delete on emergency_reviewed_end
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists correction_confirmed_is_not_changed before update on correction_confirmed
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists correction_confirmed_is_not_removed before delete on correction_confirmed
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists fault_acknowledged_is_not_changed before update on fault_acknowledged
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists fault_acknowledged_is_not_removed before delete on fault_acknowledged
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists past_reviewed_is_not_changed before update on past_reviewed
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists past_reviewed_is_not_removed before delete on past_reviewed
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists dose_signed_accepted_is_not_changed before update on dose_signed_accepted
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists dose_signed_accepted_is_not_removed before delete on dose_signed_accepted
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists protocol_signed_confirmed_is_not_changed before update on protocol_signed_confirmed
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists protocol_signed_confirmed_is_not_removed before delete on protocol_signed_confirmed
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists tablet_taken_is_not_changed before update on tablet_taken
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists tablet_taken_is_not_removed before delete on tablet_taken
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists daily_tablet_decided_is_not_changed before update on daily_tablet_decided
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists daily_tablet_decided_is_not_removed before delete on daily_tablet_decided
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists report_unfinished_is_not_changed before update on report_unfinished
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists report_unfinished_is_not_removed before delete on report_unfinished
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists report_unfinished_line_is_not_changed before update on report_unfinished_line
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists report_unfinished_line_is_not_removed before delete on report_unfinished_line
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists dose_signed_decision_is_not_changed before update on dose_signed_decision
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists dose_signed_decision_is_not_removed before delete on dose_signed_decision
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists dose_signed_spoken_is_not_changed before update on dose_signed_spoken
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists dose_signed_spoken_is_not_removed before delete on dose_signed_spoken
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists call_written_is_not_changed before update on call_written
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists call_written_is_not_removed before delete on call_written
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists reach_written_is_not_changed before update on reach_written
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists reach_written_is_not_removed before delete on reach_written
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists elsewhere_written_is_not_changed before update on elsewhere_written
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists elsewhere_written_is_not_removed before delete on elsewhere_written
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists elsewhere_joined_is_not_changed before update on elsewhere_joined
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists elsewhere_joined_is_not_removed before delete on elsewhere_joined
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists life_written_is_not_changed before update on life_written
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists life_written_is_not_removed before delete on life_written
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists rescue_written_is_not_changed before update on rescue_written
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists rescue_written_is_not_removed before delete on rescue_written
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists rescue_written_overridden_is_not_changed before update on rescue_written_overridden
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists rescue_written_overridden_is_not_removed before delete on rescue_written_overridden
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists sheet_made_is_not_changed before update on sheet_made
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists sheet_made_is_not_removed before delete on sheet_made
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists words_signed_is_not_changed before update on words_signed
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists words_signed_is_not_removed before delete on words_signed
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists call_protocol_signed_is_not_changed before update on call_protocol_signed
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists call_protocol_signed_is_not_removed before delete on call_protocol_signed
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists call_protocol_signed_step_is_not_changed before update on call_protocol_signed_step
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists call_protocol_signed_step_is_not_removed before delete on call_protocol_signed_step
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists department_kept_is_not_changed before update on department_kept
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists department_kept_is_not_removed before delete on department_kept
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists call_page_printed_is_not_changed before update on call_page_printed
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists call_page_printed_is_not_removed before delete on call_page_printed
begin select raise(abort, 'facts are never removed'); end;

create trigger if not exists vial_befell_is_not_changed before update on vial_befell
begin select raise(abort, 'facts are never changed'); end;
create trigger if not exists vial_befell_is_not_removed before delete on vial_befell
begin select raise(abort, 'facts are never removed'); end;
