package rungwise.store.course;

import rungwise.clinic.course.CourseFact;
import rungwise.store.words.Tokens;

/** The kinds of facts, as the entries name them. A kind with columns of its own has a table. */
enum FactKind {
  COURSE_OPENED,
  SCREENED,
  DECISION_WRITTEN,
  ANSWER_OVERTURNED,
  BASELINE_RECORDED,
  EXAMINATION_RECORDED,
  VIAL_RECEIVED,
  OBSERVATION_STARTED,
  OBSERVATION_NOTED,
  PLAN_CHOSEN,
  READINESS_RECORDED,
  DOSE_SIGNED,
  INJECTION_REPORTED,
  HANDED_OVER,
  REPORT_UNFINISHED,
  CALL_WRITTEN,
  RESCUE_WRITTEN,
  REACH_WRITTEN,
  LIFE_WRITTEN,
  ELSEWHERE_WRITTEN,
  SHEET_MADE,
  FLAGS_SEEN,
  VIAL_BEFELL,
  TABLET_TAKEN,
  DAILY_TABLET_DECIDED,
  REPORT_WITHDRAWN,
  VOLUME_REOPENED,
  EMERGENCY_REVIEWED,
  CORRECTION_CONFIRMED,
  PAST_REVIEWED,
  FAULT_ACKNOWLEDGED;

  static FactKind of(CourseFact fact) {
    return switch (fact) {
      case CourseFact.CourseOpened opened -> COURSE_OPENED;
      case CourseFact.Screened screened -> SCREENED;
      case CourseFact.DecisionWritten decision -> DECISION_WRITTEN;
      case CourseFact.AnswerOverturned overturned -> ANSWER_OVERTURNED;
      case CourseFact.BaselineRecorded baseline -> BASELINE_RECORDED;
      case CourseFact.ExaminationRecorded examination -> EXAMINATION_RECORDED;
      case CourseFact.VialReceived vial -> VIAL_RECEIVED;
      case CourseFact.ObservationStarted started -> OBSERVATION_STARTED;
      case CourseFact.ObservationNoted noted -> OBSERVATION_NOTED;
      case CourseFact.PlanChosen chosen -> PLAN_CHOSEN;
      case CourseFact.ReadinessRecorded recorded -> READINESS_RECORDED;
      case CourseFact.DoseSigned signed -> DOSE_SIGNED;
      case CourseFact.InjectionReported reported -> INJECTION_REPORTED;
      case CourseFact.HandedOver handed -> HANDED_OVER;
      case CourseFact.ReportUnfinished unfinished -> REPORT_UNFINISHED;
      case CourseFact.CallWritten written -> CALL_WRITTEN;
      case CourseFact.RescueWritten written -> RESCUE_WRITTEN;
      case CourseFact.ReachWritten written -> REACH_WRITTEN;
      case CourseFact.LifeWritten written -> LIFE_WRITTEN;
      case CourseFact.VialBefell befell -> VIAL_BEFELL;
      case CourseFact.ElsewhereWritten written -> ELSEWHERE_WRITTEN;
      case CourseFact.SheetMade made -> SHEET_MADE;
      case CourseFact.FlagsSeen seen -> FLAGS_SEEN;
      case CourseFact.TabletTaken taken -> TABLET_TAKEN;
      case CourseFact.DailyTabletDecided decided -> DAILY_TABLET_DECIDED;
      case CourseFact.ReportWithdrawn withdrawn -> REPORT_WITHDRAWN;
      case CourseFact.VolumeReopened reopened -> VOLUME_REOPENED;
      case CourseFact.EmergencyReviewed reviewed -> EMERGENCY_REVIEWED;
      case CourseFact.CorrectionConfirmed confirmed -> CORRECTION_CONFIRMED;
      case CourseFact.PastReviewed reviewed -> PAST_REVIEWED;
      case CourseFact.FaultAcknowledged acknowledged -> FAULT_ACKNOWLEDGED;
    };
  }

  String token() {
    return Tokens.of(this);
  }
}
