package rungwise.web.populations;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The populations of the response model. */
@Configuration(proxyBeanMethods = false)
@Import({PopulationsController.class, BringInController.class})
public class PopulationPages {}
