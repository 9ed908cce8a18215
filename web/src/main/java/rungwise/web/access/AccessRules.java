package rungwise.web.access;

import jakarta.servlet.DispatcherType;
import jakarta.servlet.Filter;
import java.nio.charset.StandardCharsets;
import java.time.InstantSource;
import java.util.EnumSet;
import org.springframework.boot.web.servlet.DelegatingFilterProxyRegistrationBean;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpMethod;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configuration.EnableWebSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.annotation.web.configurers.AuthorizeHttpRequestsConfigurer;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.util.matcher.OrRequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcher;
import org.springframework.web.filter.CharacterEncodingFilter;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.audit.Viewing;
import rungwise.clinic.clock.ClockCheck;
import rungwise.clinic.factor.FactorRule;
import rungwise.clinic.people.People;
import rungwise.clinic.people.Role;
import rungwise.clinic.soundness.Doubts;
import rungwise.web.clock.ClockWords;
import rungwise.web.page.Assets;
import rungwise.web.page.Frames;
import rungwise.web.page.Templates;
import rungwise.web.secrets.CodeLimiter;
import rungwise.web.secrets.SteadyTime;
import rungwise.web.secrets.TryLimiter;
import rungwise.web.session.Endings;
import rungwise.web.session.SessionLimits;
import rungwise.web.session.Sessions;
import rungwise.web.session.Shifts;

/** The door: every request passes here, and only the routes of {@link Routes} lead further. */
@Configuration(proxyBeanMethods = false)
@EnableWebSecurity
@Import(SignInController.class)
public class AccessRules {

  private static final int AFTER_HEADERS = -200;
  private static final int SECURITY = -100;
  private static final int AFTER_DOOR = -60;
  private static final int AFTER_SECURITY = -50;

  @Bean
  Sessions sessions(People people, SessionLimits limits, InstantSource clock, SteadyTime steady) {
    return new Sessions(people, limits, clock, steady);
  }

  @Bean
  Shifts shifts(FactorRule rule, SteadyTime steady) {
    return new Shifts(rule, steady);
  }

  @Bean
  Endings endings(Sessions sessions, Shifts shifts) {
    return new Endings(sessions, shifts);
  }

  @Bean
  CodeLimiter codeLimiter(SteadyTime time) {
    return new CodeLimiter(time);
  }

  @Bean
  TryLimiter tryLimiter(SteadyTime time, People people) {
    return new TryLimiter(
        time, name -> people.list().stream().anyMatch(one -> one.signInName().text().equals(name)));
  }

  @Bean
  Frames frames(
      ClinicSign clinic,
      Assets assets,
      ClockCheck check,
      InstantSource clock,
      ClinicTime time,
      Doubts doubts) {
    return new PageFrames(clinic, assets, new ClockWords(check, clock, time), doubts);
  }

  @Bean
  ViewRecorder viewRecorder(Viewing viewing, Templates templates, Doubts doubts) {
    return new ViewRecorder(viewing, templates, doubts);
  }

  /** The last of all that is asked before a handler: what was refused was not seen. */
  @Bean
  @Order
  WebMvcConfigurer viewsAreRecorded(ViewRecorder recorder) {
    return new WebMvcConfigurer() {
      @Override
      public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(recorder);
      }
    };
  }

  @Bean
  SecurityFilterChain securityFilterChain(
      HttpSecurity http, Sessions sessions, Templates templates, ViewRecorder views) {
    var refusals = new Refusals(templates, views);
    return http.authorizeHttpRequests(AccessRules::admit)
        .securityContext(context -> context.securityContextRepository(sessions))
        .exceptionHandling(
            faults -> faults.accessDeniedHandler(refusals).authenticationEntryPoint(refusals))
        .headers(AbstractHttpConfigurer::disable)
        .requestCache(AbstractHttpConfigurer::disable)
        .sessionManagement(AbstractHttpConfigurer::disable)
        .logout(AbstractHttpConfigurer::disable)
        .build();
  }

  private static void admit(
      AuthorizeHttpRequestsConfigurer<HttpSecurity>.AuthorizationManagerRequestMatcherRegistry
          registry) {
    registry.dispatcherTypeMatchers(DispatcherType.ERROR).permitAll();
    for (Route route : Routes.TABLE) {
      var matched = registry.requestMatchers(matcherOf(route));
      switch (route.access()) {
        case Access.Anyone anyone -> matched.permitAll();
        case Access.SignedIn signedIn -> matched.authenticated();
        case Access.AnyOf anyOf ->
            matched.hasAnyAuthority(anyOf.roles().stream().map(Role::token).toArray(String[]::new));
      }
    }
    registry.anyRequest().denyAll();
  }

  /** A browser may ask for the headers alone of whatever it may read. */
  private static RequestMatcher matcherOf(Route route) {
    var paths = PathPatternRequestMatcher.withDefaults();
    RequestMatcher exact = paths.matcher(route.method(), route.path());
    return route.method().equals(HttpMethod.GET)
        ? new OrRequestMatcher(exact, paths.matcher(HttpMethod.HEAD, route.path()))
        : exact;
  }

  @Bean
  FilterRegistrationBean<Filter> pageHeaders() {
    var registration = new FilterRegistrationBean<Filter>(new PageHeaders());
    registration.setOrder(Ordered.HIGHEST_PRECEDENCE);
    registration.setDispatcherTypes(EnumSet.of(DispatcherType.REQUEST, DispatcherType.ERROR));
    return registration;
  }

  @Bean
  FilterRegistrationBean<Filter> utf8() {
    var filter = new CharacterEncodingFilter(StandardCharsets.UTF_8.name(), true);
    var registration = new FilterRegistrationBean<Filter>(filter);
    registration.setOrder(AFTER_HEADERS);
    return registration;
  }

  /** After the door: it is asked who somebody is. */
  @Bean
  FilterRegistrationBean<Filter> fairShare(Templates templates) {
    var shares = new Shares(System::nanoTime);
    var registration = new FilterRegistrationBean<Filter>(new FairShare(shares, templates));
    registration.setOrder(AFTER_DOOR);
    return registration;
  }

  /** After the door: what is answered again is open to whoever asks again. */
  @Bean
  FilterRegistrationBean<Filter> sendOnce() {
    var registration = new FilterRegistrationBean<Filter>(new SendOnce());
    registration.setOrder(AFTER_SECURITY);
    return registration;
  }

  @Bean
  DelegatingFilterProxyRegistrationBean securityFilter() {
    var registration = new DelegatingFilterProxyRegistrationBean("springSecurityFilterChain");
    registration.setOrder(SECURITY);
    registration.setDispatcherTypes(EnumSet.of(DispatcherType.REQUEST, DispatcherType.ERROR));
    return registration;
  }
}
