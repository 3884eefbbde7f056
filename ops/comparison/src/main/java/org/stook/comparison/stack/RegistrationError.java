package org.stook.comparison.stack;

import java.util.Map;
import org.stook.imaging.frame.Placement;
import org.stook.scenes.bracket.Truth;

/**
 * How far found placements lie from the exact ones.
 *
 * @param rms root mean square over all frames but the reference and over a grid of 25 x 25 points of the reference frame, pixels
 * @param worstCorner greatest distance at any corner of any frame, pixels
 */
public record RegistrationError(double rms, double worstCorner) {
    private static final int GRID = 25;

    /**
     * @param found placement by file name
     * @param truth in the geometry of the found placements' reference frame
     */
    public static RegistrationError of(Map<String, Placement> found, SceneStack stack, Truth truth) {
        double right = stack.bracket().plan().width() - 1;
        double bottom = stack.bracket().plan().height() - 1;
        double sum = 0;
        double worst = 0;
        int frames = 0;
        for (Map.Entry<String, Placement> entry : found.entrySet()) {
            Placement exact = Placement.of(truth.placement(stack.rank(entry.getKey())));
            if (distance(exact, Placement.identity(), right, bottom) < 1e-9
                    && distance(exact, Placement.identity(), 0, 0) < 1e-9) continue;
            frames++;
            for (int j = 0; j < GRID; j++) {
                for (int i = 0; i < GRID; i++) {
                    double d = distance(entry.getValue(), exact, right * i / (GRID - 1), bottom * j / (GRID - 1));
                    sum += d * d;
                    boolean corner = (i == 0 || i == GRID - 1) && (j == 0 || j == GRID - 1);
                    if (corner) worst = Math.max(worst, d);
                }
            }
        }
        return new RegistrationError(Math.sqrt(sum / (frames * (double) GRID * GRID)), worst);
    }

    private static double distance(Placement a, Placement b, double x, double y) {
        return Math.hypot(a.x(x, y) - b.x(x, y), a.y(x, y) - b.y(x, y));
    }
}
