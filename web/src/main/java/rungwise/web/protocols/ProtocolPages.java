package rungwise.web.protocols;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The protocols. */
@Configuration(proxyBeanMethods = false)
@Import({ProtocolsController.class, WriteController.class})
public class ProtocolPages {}
