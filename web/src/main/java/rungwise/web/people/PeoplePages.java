package rungwise.web.people;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import rungwise.clinic.ClinicTime;
import rungwise.web.access.ClinicSign;

/** The pages about the people who work here. */
@Configuration(proxyBeanMethods = false)
@Import({
  OpeningController.class,
  PasswordController.class,
  PeopleController.class,
  SessionsController.class
})
public class PeoplePages {

  @Bean
  ClinicTime clinicTime(ClinicSign clinic) {
    return new ClinicTime(clinic.zone());
  }
}
