package rungwise.web.running;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The page of whether a man's treatment goes on. */
@Configuration(proxyBeanMethods = false)
@Import(RunningController.class)
public class RunningPages {}
