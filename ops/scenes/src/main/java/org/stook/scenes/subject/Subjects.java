package org.stook.scenes.subject;

import java.util.List;
import java.util.stream.Stream;

/** The subjects there are; the one list that a new subject has to enter. */
public final class Subjects {
    private Subjects() {}

    /** The pieces of the collection, grown from this number. */
    public static List<Subject> pieces(long seed) {
        return List.of(mineral(seed), shell(seed), watch(seed), spray(seed));
    }

    /** The pieces and the cards. */
    public static List<Subject> all(long seed) {
        Stream<Subject> cards =
                Stream.of(slantedEdge(seed), patchCard(seed), labelCard(seed, "HARROW CABINET", "HC-0117"));
        return Stream.concat(pieces(seed).stream(), cards).toList();
    }

    /** Crystals on rock: flat faces, sharp silhouettes in front of each other. */
    public static Subject mineral(long seed) {
        return new Mineral(seed);
    }

    /** A ribbed spiral: one curved surface with a round outline. */
    public static Subject shell(long seed) {
        return new Shell(seed);
    }

    /** Flat parts at many heights, toothed edges, holes to see through, a hair spring. */
    public static Subject watch(long seed) {
        return new Watch(seed);
    }

    /** Needles that cross each other: hard for every method. */
    public static Subject spray(long seed) {
        return new Spray(seed);
    }

    /** A flat dark square turned by 5 degrees, for measuring resolution by its edges; half way through the depth. */
    public static Subject slantedEdge(long seed) {
        return new Card("edge", "Slanted edge", pixel -> Targets.slantedEdge(new Grain(seed), pixel));
    }

    /** A flat card of even patches between texture, half way through the depth. */
    public static Subject patchCard(long seed) {
        return new Card("patches", "Colour card", pixel -> Targets.patchCard(new Grain(seed), pixel));
    }

    /** The patches of {@link #patchCard}, the colours first. */
    public static List<Patch> patches() {
        return Targets.patches();
    }

    /** A white card with these lines of text in capitals. */
    public static Subject labelCard(long seed, String... lines) {
        List<String> text = List.of(lines);
        return new Card("label", "Label", pixel -> new Lettering(text, new Grain(seed), pixel)::paint);
    }

    /**
     * The subject of this name.
     *
     * @throws IllegalArgumentException if there is no subject of this name; the message lists those there are
     */
    public static Subject named(String name, long seed) {
        List<Subject> all = all(seed);
        return all.stream().filter(s -> s.name().equals(name)).findFirst().orElseThrow(() -> {
            List<String> names = all.stream().map(Subject::name).toList();
            return new IllegalArgumentException("no subject named " + name + "; there are " + names);
        });
    }
}
