package rungwise.app.server;

import java.time.InstantSource;
import org.apache.tomcat.util.net.SSLHostConfig;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.tomcat.autoconfigure.servlet.TomcatServletWebServerAutoConfiguration;
import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.boot.webmvc.autoconfigure.DispatcherServletAutoConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.web.servlet.config.annotation.EnableWebMvc;
import rungwise.app.clock.ClockRounds;
import rungwise.app.clock.ClockSettings;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.access.CourseAccess;
import rungwise.clinic.audit.Trail;
import rungwise.clinic.audit.Viewing;
import rungwise.clinic.call.Calls;
import rungwise.clinic.call.Rescues;
import rungwise.clinic.callbook.CallBooks;
import rungwise.clinic.clock.ClockCheck;
import rungwise.clinic.clock.ClockConfirming;
import rungwise.clinic.clock.ClockWatch;
import rungwise.clinic.factor.FactorRule;
import rungwise.clinic.factor.PasskeyUse;
import rungwise.clinic.factor.SecondFactors;
import rungwise.clinic.fitting.FitRuns;
import rungwise.clinic.forecast.CourseForecasts;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.formulary.Formulary;
import rungwise.clinic.handout.Sheets;
import rungwise.clinic.joining.Joining;
import rungwise.clinic.people.People;
import rungwise.clinic.populations.Populations;
import rungwise.clinic.protocols.Protocols;
import rungwise.clinic.reaching.Reaching;
import rungwise.clinic.room.Room;
import rungwise.clinic.running.Running;
import rungwise.clinic.screening.Screenings;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.Acknowledging;
import rungwise.clinic.start.Correcting;
import rungwise.clinic.start.Starting;
import rungwise.clinic.supply.ClinicVials;
import rungwise.clinic.supply.Vials;
import rungwise.clinic.takeover.TakingOver;
import rungwise.clinic.teaching.Teaching;
import rungwise.clinic.titration.Lifting;
import rungwise.clinic.titration.Titration;
import rungwise.clinic.today.DayList;
import rungwise.web.access.AccessRules;
import rungwise.web.access.ClinicSign;
import rungwise.web.access.PublicAddress;
import rungwise.web.audit.AuditPages;
import rungwise.web.beside.BesidePages;
import rungwise.web.call.CallPages;
import rungwise.web.callbook.CallBookPages;
import rungwise.web.clock.ClockPages;
import rungwise.web.dose.DosePages;
import rungwise.web.factor.FactorPages;
import rungwise.web.fault.FaultPages;
import rungwise.web.fitting.FittingPages;
import rungwise.web.formulary.FormularyPages;
import rungwise.web.handout.HandoutPages;
import rungwise.web.joining.JoiningPages;
import rungwise.web.page.PageParts;
import rungwise.web.people.PeoplePages;
import rungwise.web.populations.PopulationPages;
import rungwise.web.protocols.ProtocolPages;
import rungwise.web.provider.ProviderPages;
import rungwise.web.reach.ReachPages;
import rungwise.web.right.RightPages;
import rungwise.web.room.RoomPages;
import rungwise.web.running.RunningPages;
import rungwise.web.screening.ScreeningPages;
import rungwise.web.secrets.KnownDevices;
import rungwise.web.secrets.SteadyTime;
import rungwise.web.session.SessionLimits;
import rungwise.web.soundness.SoundnessPages;
import rungwise.web.start.StartChoices;
import rungwise.web.start.StartPages;
import rungwise.web.supply.SupplyPages;
import rungwise.web.tablet.TabletPages;
import rungwise.web.takeover.TakeoverPages;
import rungwise.web.teaching.TeachingPages;
import rungwise.web.text.TextPages;
import rungwise.web.titration.TitrationPages;
import rungwise.web.today.TodayPages;
import rungwise.web.urgent.UrgentPages;

/** Everything a server consists of, named one by one: nothing is found by scanning. */
@Configuration(proxyBeanMethods = false)
@EnableWebMvc
@ImportAutoConfiguration({
  TomcatServletWebServerAutoConfiguration.class,
  DispatcherServletAutoConfiguration.class
})
@Import({
  AccessRules.class,
  AuditPages.class,
  CallBookPages.class,
  CallPages.class,
  ClockPages.class,
  DosePages.class,
  FactorPages.class,
  FaultPages.class,
  FittingPages.class,
  FormularyPages.class,
  HandoutPages.class,
  JoiningPages.class,
  PageParts.class,
  PeoplePages.class,
  PopulationPages.class,
  ProtocolPages.class,
  ProviderPages.class,
  ReachPages.class,
  RightPages.class,
  RoomPages.class,
  RunningPages.class,
  ScreeningPages.class,
  SoundnessPages.class,
  StartPages.class,
  SupplyPages.class,
  TabletPages.class,
  TakeoverPages.class,
  TeachingPages.class,
  TextPages.class,
  TitrationPages.class,
  BesidePages.class,
  TodayPages.class,
  UrgentPages.class
})
class ServerWiring {

  @Bean
  WebServerFactoryCustomizer<TomcatServletWebServerFactory> departures() {
    return factory -> factory.addEngineValves(new Departures());
  }

  /** Under TLS our order of cipher suites counts, whatever a browser would rather have. */
  @Bean
  WebServerFactoryCustomizer<TomcatServletWebServerFactory> ownCipherOrder() {
    return factory ->
        factory.addConnectorCustomizers(
            connector -> {
              for (SSLHostConfig host : connector.findSslHostConfigs()) {
                host.setHonorCipherOrder(true);
              }
            });
  }

  @Bean
  ClinicSign clinicSign(ServerSettings settings) {
    return settings.clinic();
  }

  @Bean
  SessionLimits sessionLimits(ServerSettings settings) {
    return settings.sessions();
  }

  @Bean
  FactorRule factorRule(ServerSettings settings) {
    return settings.factors();
  }

  @Bean
  PublicAddress publicAddress(ServerSettings settings) {
    return settings.publicAddress();
  }

  @Bean
  SecondFactors secondFactors(OpenClinic clinic) {
    return clinic.secondFactors();
  }

  @Bean
  PasskeyUse passkeyUse(OpenClinic clinic) {
    return clinic.passkeyUse();
  }

  @Bean
  CourseAccess courseAccess(OpenClinic clinic) {
    return clinic.courseAccess();
  }

  @Bean
  RecordRounds recordRounds(OpenClinic clinic) {
    return RecordRounds.begin(clinic.watch());
  }

  @Bean
  Trail trail(OpenClinic clinic) {
    return clinic.trail();
  }

  @Bean
  InstantSource clock(OpenClinic clinic) {
    return clinic.clock();
  }

  @Bean
  ClockWatch clockWatch(OpenClinic clinic) {
    return clinic.clockWatch();
  }

  @Bean
  ClockCheck clockCheck(OpenClinic clinic, ServerSettings settings, ClockWatch watch) {
    return switch (settings.clock()) {
      case ClockSettings.Given given -> ClockCheck.GIVEN;
      case ClockSettings.Watched watched -> {
        clinic.keepClock(watch::belief);
        yield watch::belief;
      }
    };
  }

  @Bean
  ClockRounds clockRounds(ClockWatch watch, ServerSettings settings) {
    return ClockRounds.begin(watch, settings.clock());
  }

  @Bean
  ClockConfirming clockConfirming(OpenClinic clinic, ClockWatch watch, ClinicTime time) {
    return clinic.clockConfirming(watch, time);
  }

  @Bean
  SteadyTime steadyTime(OpenClinic clinic) {
    return SteadyTime.beside(clinic.clock());
  }

  @Bean
  KnownDevices knownDevices(OpenClinic clinic) {
    return new KnownDevices(clinic.deviceKey());
  }

  @Bean
  People people(OpenClinic clinic, ClinicSign sign) {
    return clinic.people().in(sign.name());
  }

  @Bean
  Viewing viewing(OpenClinic clinic) {
    return clinic.viewing();
  }

  @Bean
  CourseCases courseCases(OpenClinic clinic, ClockCheck check, ClinicTime time) {
    return clinic.courseCases(time, check);
  }

  @Bean
  Titration titration(CourseCases cases) {
    return cases.titration();
  }

  @Bean
  DayList dayList(CourseCases cases) {
    return cases.dayList();
  }

  @Bean
  DayRounds dayRounds(DayList list) {
    return DayRounds.begin(list);
  }

  @Bean
  Lifting lifting(CourseCases cases) {
    return cases.lifting();
  }

  @Bean
  Calls calls(CourseCases cases) {
    return cases.calls();
  }

  @Bean
  CallBooks callBooks(OpenClinic clinic) {
    return clinic.callBooks();
  }

  @Bean
  Rescues rescues(CourseCases cases) {
    return cases.rescues();
  }

  @Bean
  Correcting correcting(CourseCases cases) {
    return cases.correcting();
  }

  @Bean
  Reaching reaching(CourseCases cases) {
    return cases.reaching();
  }

  @Bean
  Running running(CourseCases cases) {
    return cases.running();
  }

  @Bean
  Joining joining(CourseCases cases) {
    return cases.joining();
  }

  @Bean
  TakingOver takingOver(CourseCases cases) {
    return cases.takingOver();
  }

  @Bean
  Acknowledging acknowledging(CourseCases cases) {
    return cases.acknowledging();
  }

  @Bean
  Sheets sheets(CourseCases cases) {
    return cases.sheets();
  }

  @Bean
  Starting starting(CourseCases cases) {
    return cases.starting();
  }

  @Bean
  Screenings screenings(CourseCases cases) {
    return cases.screenings();
  }

  @Bean
  Vials vials(CourseCases cases) {
    return cases.vials();
  }

  @Bean
  ClinicVials clinicVials(CourseCases cases) {
    return cases.clinicVials();
  }

  @Bean
  Room room(CourseCases cases) {
    return cases.room();
  }

  @Bean
  Teaching teaching(CourseCases cases) {
    return cases.teaching();
  }

  @Bean
  CourseViews courseViews(OpenClinic clinic, ClinicTime time) {
    return clinic.courseViews(time);
  }

  @Bean
  CourseForecasts courseForecasts(Populations populations, ClinicTime time) {
    return new CourseForecasts(populations, time.zone());
  }

  @Bean
  FitRuns fitRuns(OpenClinic clinic, Titration titration, ClinicTime time) {
    return clinic.fitRuns(titration, time);
  }

  @Bean
  Protocols protocols(OpenClinic clinic) {
    return clinic.protocols();
  }

  @Bean
  Populations populations(OpenClinic clinic) {
    return clinic.populations();
  }

  @Bean
  Formulary formulary(OpenClinic clinic) {
    return clinic.formulary();
  }

  @Bean
  StartChoices startChoices(OpenClinic clinic, ClinicTime time) {
    return new StartChoices(
        () -> clinic.formulary().list().stream().map(ClinicPreparation::preparation).toList(),
        clinic.formulary()::syringes,
        () -> clinic.protocols().holdingOn(time.today(clinic.clock())),
        clinic.formulary()::isInUse,
        clinic.populations()::choiceFor);
  }
}
