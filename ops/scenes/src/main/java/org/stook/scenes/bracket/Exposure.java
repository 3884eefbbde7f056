package org.stook.scenes.bracket;

import java.util.stream.IntStream;

/** What happens to a rendered picture on the sensor. */
final class Exposure {
    private Exposure() {}

    static void amplify(Picture picture, double gain) {
        float factor = (float) gain;
        for (float[] plane : picture.planes()) {
            for (int i = 0; i < plane.length; i++) plane[i] *= factor;
        }
    }

    /** Every row of every frame has noise of its own, whichever thread adds it. */
    static void addNoise(Picture picture, BracketPlan plan, int frame) {
        int width = picture.width();
        IntStream.range(0, picture.height()).parallel().forEach(y -> {
            for (int c = 0; c < 3; c++) {
                long number = plan.seed() * 1_000_003L + (frame * 3L + c) * 100_003L + y;
                plan.noise().addTo(picture.planes()[c], y * width, (y + 1) * width, number);
            }
        });
    }
}
