package rungwise.clinic.standing;

import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import rungwise.clinic.beside.JoinLog;
import rungwise.clinic.beside.JoinedAnswers;
import rungwise.clinic.beside.JoinedReading;
import rungwise.clinic.beside.TransferLog;
import rungwise.clinic.course.Answers;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.past.PastReading;
import rungwise.dosing.history.Before;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.protocol.CountedOption;
import rungwise.dosing.protocol.Protocol;
import rungwise.quantities.TimeSpan;

/** What the engine may look at of a course's injections, and of those that are known beside. */
final class HistoryReading {

  private final StandingPorts ports;

  HistoryReading(StandingPorts ports) {
    this.ports = ports;
  }

  /**
   * The history of a course, with what other courses of the same man say.
   *
   * @param limit the number of the last entry that is read of those
   */
  History of(CourseFile file, Protocol protocol, Instant now, long limit) {
    return JoinedReading.added(
        own(file, protocol, now),
        JoinLog.others(file, limit, ports.courses()::find),
        other -> own(other.file(), protocolOf(other.file()), now));
  }

  /** A course and every other one of the same man, as far as each is read. */
  List<CourseFile> all(CourseFile file, long limit) {
    return Stream.concat(
            Stream.of(file),
            JoinLog.others(file, limit, ports.courses()::find).stream().map(JoinLog.Read::file))
        .toList();
  }

  /** What he answered, with every yes of his other courses. */
  Answers answers(CourseFile file, long limit) {
    return JoinedAnswers.of(file, limit, ports.courses()::find);
  }

  private Protocol protocolOf(CourseFile file) {
    return ports
        .protocols()
        .find(file.plan().protocol(), file.plan().protocolVersion())
        .orElseThrow()
        .protocol();
  }

  private Preparation preparation(PreparationId id) {
    return ports.preparations().apply(id).orElseThrow();
  }

  private History own(CourseFile file, Protocol protocol, Instant now) {
    var known = new Remembered<PreparationId, Preparation>(this::preparation);
    History own =
        new CourseHistory(file, new Stocks(file, protocol, ports.time().zone(), known)::of, known)
            .read();
    History past = PastReading.added(own, file, ports.past(), known, now);
    History all =
        TransferLog.of(file).addTo(past, () -> percent(protocol, now), ports.time(), known);
    return file.acknowledged()
        .map(entry -> all.withPast(List.of(), List.of(), all.before().and(unknown(entry))))
        .orElse(all);
  }

  /** How much of a told dose a first one may be, by the strictest version of the protocol. */
  private int percent(Protocol protocol, Instant now) {
    return Stream.concat(
            Stream.of(protocol),
            ports.protocols().newerThan(protocol, now, ports.time().dayOf(now)).stream())
        .mapToInt(one -> one.limits().of(CountedOption.TAKEN_OVER_PERCENT).value())
        .min()
        .orElseThrow();
  }

  /** What a changed entry may have said: an injection of nobody knows what, as long as any. */
  private static Before.NobodyKnows unknown(CourseEntry acknowledged) {
    return new Before.NobodyKnows(
        acknowledged.number(),
        acknowledged.recordedAt(),
        Grade.FULLY_FIRM,
        new SoftAfter.AtLeast(TimeSpan.ofMinutes(0)));
  }
}
