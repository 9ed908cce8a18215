package rungwise.web.room;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.room.RoomViews;

/** The pages of the clinic room. */
@Configuration(proxyBeanMethods = false)
@Import({RoomController.class, VisitController.class, HandOverController.class})
public class RoomPages {

  @Bean
  RoomViews roomViews(ClinicTime time) {
    return new RoomViews(time);
  }
}
