package rungwise.web.screening;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The screening of a man. */
@Configuration(proxyBeanMethods = false)
@Import(ScreeningController.class)
public class ScreeningPages {}
