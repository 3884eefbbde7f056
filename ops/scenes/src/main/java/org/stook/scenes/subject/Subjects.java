package org.stook.scenes.subject;

import java.util.List;

/** The subjects there are; the one list that a new subject has to enter. */
public final class Subjects {
    private Subjects() {}

    /** Every subject, grown from this number. */
    public static List<Subject> all(long seed) {
        return List.of(mineral(seed), shell(seed));
    }

    /** Crystals on rock: flat faces, sharp silhouettes in front of each other. */
    public static Subject mineral(long seed) {
        return new Mineral(seed);
    }

    /** A ribbed spiral: one curved surface with a round outline. */
    public static Subject shell(long seed) {
        return new Shell(seed);
    }

    /** @throws IllegalArgumentException if there is no subject of this name; the message lists those there are */
    public static Subject named(String name, long seed) {
        List<Subject> all = all(seed);
        return all.stream().filter(s -> s.name().equals(name)).findFirst().orElseThrow(() -> {
            List<String> names = all.stream().map(Subject::name).toList();
            return new IllegalArgumentException("no subject named " + name + "; there are " + names);
        });
    }
}
