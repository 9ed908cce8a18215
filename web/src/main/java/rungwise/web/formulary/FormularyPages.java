package rungwise.web.formulary;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** Preparations and syringes. */
@Configuration(proxyBeanMethods = false)
@Import({PreparationsController.class, SamplesController.class, SyringesController.class})
public class FormularyPages {}
