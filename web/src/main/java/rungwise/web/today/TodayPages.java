package rungwise.web.today;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The day's list. */
@Configuration(proxyBeanMethods = false)
@Import({FoundController.class, OwnPages.class, TodayController.class})
public class TodayPages {}
