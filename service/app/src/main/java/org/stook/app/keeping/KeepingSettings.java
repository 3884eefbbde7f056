package org.stook.app.keeping;

import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.util.unit.DataSize;

/**
 * How hard the files are looked at.
 *
 * @param every how long after a check the next one of the same publication is due
 * @param perSecond how much is read on average, so that the share stays free for work
 */
@ConfigurationProperties("stook.keeping")
public record KeepingSettings(
        @DefaultValue("90d") Duration every,
        @DefaultValue("20MB") DataSize perSecond) {}
