package rungwise.web.joining;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The page of other courses of the same man. */
@Configuration(proxyBeanMethods = false)
@Import(JoiningController.class)
public class JoiningPages {}
