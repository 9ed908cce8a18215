package rungwise.web.fitting;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** Fits of the response model to the clinic's own courses. */
@Configuration(proxyBeanMethods = false)
@Import({ChooseController.class, RunController.class})
public class FittingPages {}
