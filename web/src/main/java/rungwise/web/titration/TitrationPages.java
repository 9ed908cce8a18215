package rungwise.web.titration;

import java.util.List;
import java.util.function.Supplier;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import rungwise.dosing.known.Barrel;

/** The course page and its forms. */
@Configuration(proxyBeanMethods = false)
@Import({CourseController.class, ReportController.class})
public class TitrationPages {

  /** The syringes that the clinic keeps. */
  @FunctionalInterface
  public interface Barrels extends Supplier<List<Barrel>> {}
}
