package rungwise.web.teaching;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** What comes before home use. */
@Configuration(proxyBeanMethods = false)
@Import(ReadinessController.class)
public class TeachingPages {}
