package rungwise.web.audit;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** Who has seen which course, and the search over everything that was recorded. */
@Configuration(proxyBeanMethods = false)
@Import({TrailController.class, ViewsController.class})
public class AuditPages {}
