package rungwise.web.urgent;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The pages for the clinician who treats a long erection. */
@Configuration(proxyBeanMethods = false)
@Import(RescueController.class)
public class UrgentPages {}
