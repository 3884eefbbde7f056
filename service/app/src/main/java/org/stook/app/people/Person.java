package org.stook.app.people;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Somebody who may sign in.
 *
 * @param roles at least one, in the order of {@link Role}
 * @param chosen whether a password was chosen; until then the one-time code is the only way in
 * @param codeUntil until when a one-time code holds, null if there is none
 * @param edition of the rights and the password; a session of an older one is over
 */
public record Person(
        long id,
        String name,
        List<Role> roles,
        boolean active,
        boolean chosen,
        @Nullable Instant codeUntil,
        @Nullable Instant signedInAt,
        int edition) {
    public boolean is(Role role) {
        return roles.contains(role);
    }
}
