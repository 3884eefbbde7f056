package org.stook.app.audit;

import java.net.URI;
import java.time.Duration;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Whose time stamps the heads get.
 *
 * @param authority address of a time stamp authority (RFC 3161 over HTTP); without it none is asked
 * @param every at most so often, and only if there is a new head
 */
@ConfigurationProperties("stook.audit.stamp")
public record StampSettings(
        @Nullable URI authority, @DefaultValue("1h") Duration every) {}
