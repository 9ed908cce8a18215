package rungwise.app.server;

import java.time.InstantSource;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.tomcat.autoconfigure.servlet.TomcatServletWebServerAutoConfiguration;
import org.springframework.boot.webmvc.autoconfigure.DispatcherServletAutoConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.web.servlet.config.annotation.EnableWebMvc;
import rungwise.clinic.people.People;
import rungwise.web.access.AccessRules;
import rungwise.web.access.ClinicSign;
import rungwise.web.access.SessionLimits;
import rungwise.web.fault.FaultPages;
import rungwise.web.page.PageParts;
import rungwise.web.people.PeoplePages;
import rungwise.web.today.TodayPages;

/** Everything a server consists of, named one by one: nothing is found by scanning. */
@Configuration(proxyBeanMethods = false)
@EnableWebMvc
@ImportAutoConfiguration({
  TomcatServletWebServerAutoConfiguration.class,
  DispatcherServletAutoConfiguration.class
})
@Import({AccessRules.class, FaultPages.class, PageParts.class, PeoplePages.class, TodayPages.class})
class ServerWiring {

  @Bean
  ClinicSign clinicSign(ServerSettings settings) {
    return settings.clinic();
  }

  @Bean
  SessionLimits sessionLimits(ServerSettings settings) {
    return settings.sessions();
  }

  @Bean
  InstantSource clock(OpenClinic clinic) {
    return clinic.clock();
  }

  @Bean
  People people(OpenClinic clinic) {
    return clinic.people();
  }
}
