package org.stook.imaging.tone;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** How encoded values and linear light of one channel belong together, both 0 to 1. Never falls. */
sealed interface TransferCurve {
    double toLight(double encoded);

    double fromLight(double light);

    /** The curve as an element of an ICC profile. */
    byte[] iccElement();

    /**
     * The parametric curve of ICC.1:2022 section 10.18 in its widest form:
     * {@code light = (a v + b)^g + e} from {@code v = d} on, {@code c v + f} below.
     */
    record Parametric(double g, double a, double b, double c, double d, double e, double f) implements TransferCurve {
        private static final int WIDEST_FORM = 4;

        static Parametric gamma(double g) {
            return new Parametric(g, 1, 0, 0, 0, 0, 0);
        }

        @Override
        public double toLight(double v) {
            return v >= d ? StrictMath.pow(Math.max(0, a * v + b), g) + e : c * v + f;
        }

        @Override
        public double fromLight(double light) {
            double atBreak = StrictMath.pow(Math.max(0, a * d + b), g) + e;
            if (light >= atBreak) return (StrictMath.pow(Math.max(0, light - e), 1 / g) - b) / a;
            // Without a slope below the break everything there is as dark as the break itself.
            return c > 0 ? Math.min(d, (light - f) / c) : d;
        }

        @Override
        public byte[] iccElement() {
            ByteBuffer out = ByteBuffer.allocate(12 + 7 * 4);
            out.put("para".getBytes(StandardCharsets.US_ASCII))
                    .putInt(0)
                    .putShort((short) WIDEST_FORM)
                    .putShort((short) 0);
            for (double value : new double[] {g, a, b, c, d, e, f}) out.putInt((int) Math.round(value * 65536));
            return out.array();
        }
    }

    /** A sampled curve (ICC.1:2022 section 10.6): equally spaced light values, linear between them. */
    final class Sampled implements TransferCurve {
        private final int[] light;

        /** @param light at least two values of 0 to 65535 that never fall */
        Sampled(int[] light) {
            this.light = light.clone();
        }

        @Override
        public double toLight(double encoded) {
            double at = Math.max(0, Math.min(1, encoded)) * (light.length - 1);
            int i = Math.min((int) at, light.length - 2);
            return (light[i] + (at - i) * (light[i + 1] - light[i])) / 65535;
        }

        @Override
        public double fromLight(double wanted) {
            double target = wanted * 65535;
            int low = 0;
            int high = light.length - 1;
            if (target <= light[0]) return 0;
            if (target >= light[high]) return 1;
            while (high - low > 1) { // light[low] < target <= light[high]
                int middle = (low + high) >>> 1;
                if (light[middle] < target) low = middle;
                else high = middle;
            }
            return (low + (target - light[low]) / (light[high] - light[low])) / (light.length - 1);
        }

        @Override
        public byte[] iccElement() {
            ByteBuffer out = ByteBuffer.allocate(12 + 2 * light.length);
            out.put("curv".getBytes(StandardCharsets.US_ASCII)).putInt(0).putInt(light.length);
            for (int value : light) out.putShort((short) value);
            return out.array();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Sampled s && Arrays.equals(light, s.light);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(light);
        }
    }
}
