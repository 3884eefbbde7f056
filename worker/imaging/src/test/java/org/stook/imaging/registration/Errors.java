package org.stook.imaging.registration;

import java.util.List;
import org.stook.imaging.frame.Placement;

/**
 * How far placements lie from the truth.
 *
 * @param rms over all frames and a 9 x 9 grid of the reference frame, pixels
 * @param worst over all frames and the four corners, pixels
 */
record Errors(double rms, double worst) {
    static Errors of(List<Placement> truth, Registration found, int reference, int width, int height) {
        Placement toReference = truth.get(reference).inverse();
        double squares = 0;
        double worst = 0;
        for (int f = 0; f < truth.size(); f++) {
            Placement expected = toReference.then(truth.get(f));
            Placement actual = found.frames().get(f).placement();
            for (int i = 0; i < 81; i++) {
                double x = (width - 1) * (i % 9) / 8.0;
                double y = (height - 1) * (i / 9) / 8.0;
                double e = Math.hypot(actual.x(x, y) - expected.x(x, y), actual.y(x, y) - expected.y(x, y));
                squares += e * e;
                if (i % 8 == 0 && (i / 9) % 8 == 0) worst = Math.max(worst, e);
            }
        }
        return new Errors(Math.sqrt(squares / (81.0 * truth.size())), worst);
    }
}
