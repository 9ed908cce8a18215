package rungwise.web.titration;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.sheet.CourseView;
import rungwise.web.page.DoseLines;
import rungwise.web.page.DosePicture;
import rungwise.web.page.VerdictLine;

/**
 * The signed dose, to be read out or printed. The guards were asked again before it was made.
 *
 * @param picture the drawn syringe; none of a suspended dose, so that no page that is carried away
 *     shows a mark to draw to
 * @param blocks what stops him now
 */
public record OrderPage(
    String path,
    CourseView view,
    CourseView.SignedLine signed,
    DoseLines dose,
    Optional<String> picture,
    List<VerdictLine> blocks) {

  public OrderPage {
    blocks = List.copyOf(blocks);
  }

  static OrderPage of(CourseView view) {
    CourseView.SignedLine signed = view.signed().orElseThrow();
    return new OrderPage(
        "/courses/" + view.id(),
        view,
        signed,
        DoseLines.of(signed.dose()),
        signed.isSuspended() ? Optional.empty() : DosePicture.svg(signed.dose(), "order"),
        view.blocks().stream().map(CourseWords::line).toList());
  }
}
