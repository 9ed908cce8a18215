package rungwise.web.call;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The pages of a call. */
@Configuration(proxyBeanMethods = false)
@Import({CallController.class, CourseCallController.class, CourseRescueController.class})
public class CallPages {}
