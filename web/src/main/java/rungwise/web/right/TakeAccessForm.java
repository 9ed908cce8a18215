package rungwise.web.right;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.access.AccessReason;
import rungwise.clinic.access.CourseAccess;

/** Why somebody takes access, as sent. */
record TakeAccessForm(boolean isSent, Optional<AccessReason> reason, String words) {

  static final String SENT = "accessSent";
  static final Set<String> FIELDS = Set.of(CourseAccess.REASON, CourseAccess.WORDS, SENT);

  static TakeAccessForm of(HttpServletRequest request) {
    String token = Optional.ofNullable(request.getParameter(CourseAccess.REASON)).orElse("");
    return new TakeAccessForm(
        request.getParameter(SENT) != null,
        Arrays.stream(AccessReason.values())
            .filter(reason -> reason.name().equals(token))
            .findFirst(),
        Optional.ofNullable(request.getParameter(CourseAccess.WORDS)).orElse(""));
  }
}
