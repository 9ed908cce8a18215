package rungwise.web.fault;

import jakarta.servlet.DispatcherType;
import jakarta.servlet.Filter;
import java.util.EnumSet;
import org.springframework.boot.web.error.ErrorPage;
import org.springframework.boot.web.error.ErrorPageRegistrar;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.core.Ordered;
import rungwise.clinic.soundness.Doubts;
import rungwise.web.page.Templates;

/** Puts the fault pages in place of the server's own. */
@Configuration(proxyBeanMethods = false)
@Import(FaultController.class)
public class FaultPages {

  /** The largest form that is taken. */
  public static final int MOST_KIB_OF_A_FORM = 256;

  /** The largest that is read at all, so that what was typed can be shown again. */
  public static final int MOST_KIB_READ = 1024;

  @Bean
  ErrorPageRegistrar faultPage() {
    return registry -> registry.addErrorPages(new ErrorPage(FaultController.PATH));
  }

  @Bean
  FilterRegistrationBean<Filter> incidents(Templates templates, Doubts doubts) {
    var registration = new FilterRegistrationBean<Filter>(new Incidents(templates, doubts));
    registration.setOrder(Ordered.HIGHEST_PRECEDENCE + 1);
    registration.setDispatcherTypes(EnumSet.of(DispatcherType.REQUEST, DispatcherType.ERROR));
    return registration;
  }
}
