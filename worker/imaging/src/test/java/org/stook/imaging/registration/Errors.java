package org.stook.imaging.registration;

import org.stook.imaging.frame.Placement;

/**
 * How far placements lie from the truth.
 *
 * @param rms over all frames and a 9 x 9 grid of the reference frame, pixels
 * @param worst over all frames and the four corners, pixels
 */
record Errors(double rms, double worst) {
    static Errors of(Registration found, BracketSource source) {
        double squares = 0;
        double worst = 0;
        for (int f = 0; f < source.frames(); f++) {
            for (int i = 0; i < 81; i++) {
                double x = (source.width() - 1) * (i % 9) / 8.0;
                double y = (source.height() - 1) * (i / 9) / 8.0;
                double e = error(found, source, f, x, y);
                squares += e * e;
                if (i % 8 == 0 && (i / 9) % 8 == 0) worst = Math.max(worst, e);
            }
        }
        return new Errors(Math.sqrt(squares / (81.0 * source.frames())), worst);
    }

    private static double error(Registration found, BracketSource source, int frame, double x, double y) {
        Placement expected = source.truth()
                .get(found.reference())
                .inverse()
                .then(source.truth().get(frame));
        Placement actual = found.frames().get(frame).placement();
        return Math.hypot(actual.x(x, y) - expected.x(x, y), actual.y(x, y) - expected.y(x, y));
    }
}
