package rungwise.web.audit;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** Who has seen which course. */
@Configuration(proxyBeanMethods = false)
@Import(ViewsController.class)
public class AuditPages {}
