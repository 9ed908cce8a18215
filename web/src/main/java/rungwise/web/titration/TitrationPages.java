package rungwise.web.titration;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The course page and its forms. */
@Configuration(proxyBeanMethods = false)
@Import({CourseController.class, ReportController.class})
public class TitrationPages {}
