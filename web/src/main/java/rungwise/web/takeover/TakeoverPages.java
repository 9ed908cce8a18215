package rungwise.web.takeover;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The page of a man who is taken over from another clinic. */
@Configuration(proxyBeanMethods = false)
@Import(TakeoverController.class)
public class TakeoverPages {}
