package rungwise.web.supply;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The vials of a man, and those of the clinic. */
@Configuration(proxyBeanMethods = false)
@Import({VialsController.class, ClinicVialsController.class})
public class SupplyPages {}
