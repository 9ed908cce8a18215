package rungwise.web.supply;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The vials of a man. */
@Configuration(proxyBeanMethods = false)
@Import(VialsController.class)
public class SupplyPages {}
