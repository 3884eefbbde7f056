package org.stook.app.people;

import java.util.Locale;

/** What somebody is in the studio. Everybody who is signed in may look; these say who may act. */
public enum Role {
    /** Works at a table: names, seals and marks stacks there. */
    PHOTOGRAPHER,
    /** Sees to the queue: all orders for stacks, frames and runs, and the settings. */
    OPERATOR,
    /** Finds what is finished and pulls it as packages. */
    ARCHIVIST,
    /** May do all of it, and says who else may. */
    ADMINISTRATOR;

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** @throws IllegalArgumentException with a sentence if there is no such role */
    public static Role of(String word) {
        for (Role role : values()) {
            if (role.word().equalsIgnoreCase(word.strip())) {
                return role;
            }
        }
        throw new IllegalArgumentException(
                "there is no role '" + word + "', only photographer, operator, archivist and administrator");
    }
}
