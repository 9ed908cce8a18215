package rungwise.web.beside;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** Injections, plan and record of a course, each with an address of its own. */
@Configuration(proxyBeanMethods = false)
@Import({BesideController.class, PlanController.class})
public class BesidePages {}
