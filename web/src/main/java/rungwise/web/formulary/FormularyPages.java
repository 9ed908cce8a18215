package rungwise.web.formulary;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** Preparations and syringes. */
@Configuration(proxyBeanMethods = false)
@Import(FormularyController.class)
public class FormularyPages {}
