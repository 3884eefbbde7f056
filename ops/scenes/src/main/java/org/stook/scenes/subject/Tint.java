package org.stook.scenes.subject;

/**
 * A colour as shares of linear light reflected.
 *
 * @param red 0 to 1
 * @param green 0 to 1
 * @param blue 0 to 1
 */
public record Tint(double red, double green, double blue) {
    static final Tint WHITE = new Tint(1, 1, 1);

    Tint scaled(double by) {
        return new Tint(red * by, green * by, blue * by);
    }

    /** This colour with that share of another. */
    Tint mixed(Tint other, double share) {
        return new Tint(
                Edges.mix(red, other.red, share),
                Edges.mix(green, other.green, share),
                Edges.mix(blue, other.blue, share));
    }
}
