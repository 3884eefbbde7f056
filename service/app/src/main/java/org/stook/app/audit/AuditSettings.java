package org.stook.app.audit;

import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * How the trail is sealed.
 *
 * @param key file with the key that signs heads, made if absent; without it heads are not signed. Kept where the database's
 *     administrator has no access
 * @param places folders that get the heads beside the shares with publications; best on another machine
 */
@ConfigurationProperties("stook.audit")
public record AuditSettings(
        @Nullable Path key, @DefaultValue List<Path> places) {
    public AuditSettings {
        places = List.copyOf(places);
    }
}
