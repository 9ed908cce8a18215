package rungwise.web.clock;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The page of the clock. */
@Configuration(proxyBeanMethods = false)
@Import(ClockController.class)
public class ClockPages {}
