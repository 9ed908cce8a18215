package rungwise.web.soundness;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The page of what is not as it was written. */
@Configuration(proxyBeanMethods = false)
@Import(FaultsController.class)
public class SoundnessPages {}
