package rungwise.web.start;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** Opening a course. */
@Configuration(proxyBeanMethods = false)
@Import(StartController.class)
public class StartPages {}
