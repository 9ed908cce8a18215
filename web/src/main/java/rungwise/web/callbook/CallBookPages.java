package rungwise.web.callbook;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The pages of what the clinic keeps for calls. */
@Configuration(proxyBeanMethods = false)
@Import(CallBookController.class)
public class CallBookPages {}
