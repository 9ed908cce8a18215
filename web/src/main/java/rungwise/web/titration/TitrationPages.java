package rungwise.web.titration;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import rungwise.clinic.titration.Titration;

/** The course page and its forms. */
@Configuration(proxyBeanMethods = false)
@Import({CourseController.class, ForecastController.class, ReportController.class})
public class TitrationPages {

  @Bean
  OpenCourses openCourses(Titration titration) {
    return new OpenCourses(titration);
  }
}
