package rungwise.web.reach;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** How a man is reached. */
@Configuration(proxyBeanMethods = false)
@Import(ReachController.class)
public class ReachPages {}
