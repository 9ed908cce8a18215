package rungwise.web.tablet;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** Tablets for erections. */
@Configuration(proxyBeanMethods = false)
@Import(TabletController.class)
public class TabletPages {}
