package rungwise.web.dose;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The dose page. */
@Configuration(proxyBeanMethods = false)
@Import(DoseController.class)
public class DosePages {}
