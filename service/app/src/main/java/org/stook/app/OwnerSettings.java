package org.stook.app;

import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * The login that owns the tables, as {@code stook.owner.*}. It only migrates, at the start. Without it the service migrates
 * with its own login, which then is the owner and could change the audit trail.
 *
 * @param username of the owner, who logs in to the same database as the service
 * @param password of the owner
 */
@ConfigurationProperties("stook.owner")
record OwnerSettings(@Nullable String username, @Nullable String password) {}
