package org.stook.imaging.tone;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stook.imaging.frame.IccProfile;

/**
 * Reads matrix/curve and grey profiles (ICC.1:2022 sections 7, 10.6, 10.18, 10.31; version 2 profiles have the same
 * elements). Not through {@code java.awt.color}, which refuses parametric curves and leaves the arithmetic to whatever
 * engine the runtime was built with.
 */
final class EmbeddedProfile {
    private static final int HEADER = 128;
    private static final int MOST_TAGS = 200;
    private static final int[] PARAMETERS = {1, 3, 4, 5, 7};

    private record Element(int offset, int size) {}

    private final ByteBuffer bytes;
    private final Map<String, Element> elements = new HashMap<>();

    private EmbeddedProfile(byte[] bytes) {
        this.bytes = ByteBuffer.wrap(bytes);
    }

    static ColourSpace read(IccProfile profile) throws UnusableProfile {
        EmbeddedProfile reading = new EmbeddedProfile(profile.bytes());
        reading.readElements();
        String space = reading.signature(16);
        if (!reading.signature(20).equals("XYZ ")) {
            throw new UnusableProfile("one that connects through " + reading.signature(20), "XYZ");
        }
        return switch (space) {
            case "RGB " -> reading.rgb(profile);
            case "GRAY" ->
                new ColourSpace("embedded grey profile", List.of(reading.curve("kTRC")), Matrix.IDENTITY, profile);
            default -> throw new UnusableProfile("colour space " + space, "RGB or GRAY");
        };
    }

    private ColourSpace rgb(IccProfile profile) throws UnusableProfile {
        if (!elements.containsKey("rXYZ") && elements.containsKey("A2B0")) {
            throw new UnusableProfile("a profile made of tables (A2B0)", "one made of a matrix and curves");
        }
        Matrix matrix = Matrix.ofColumns(xyz("rXYZ"), xyz("gXYZ"), xyz("bXYZ"));
        if (Math.abs(matrix.determinant()) < 1e-6)
            throw new UnusableProfile("primaries on one line", "three primaries");
        List<TransferCurve> curves = List.of(curve("rTRC"), curve("gTRC"), curve("bTRC"));
        return new ColourSpace("embedded RGB profile", curves, matrix, profile);
    }

    private void readElements() throws UnusableProfile {
        if (bytes.capacity() < HEADER + 4 || !signature(36).equals("acsp")) {
            throw new UnusableProfile("%d bytes that are no ICC profile".formatted(bytes.capacity()), "one (acsp)");
        }
        int count = bytes.getInt(HEADER);
        if (count < 1 || count > MOST_TAGS || HEADER + 4 + 12 * count > bytes.capacity()) {
            throw new UnusableProfile("a table of %d elements".formatted(count), "one that fits the profile");
        }
        for (int i = 0; i < count; i++) {
            int at = HEADER + 4 + 12 * i;
            long offset = Integer.toUnsignedLong(bytes.getInt(at + 4));
            long size = Integer.toUnsignedLong(bytes.getInt(at + 8));
            if (size < 8 || offset + size > bytes.capacity()) {
                throw new UnusableProfile("element %s outside the profile".formatted(signature(at)), "all inside");
            }
            elements.put(signature(at), new Element((int) offset, (int) size));
        }
    }

    private Element element(String tag, int least) throws UnusableProfile {
        Element element = elements.get(tag);
        if (element == null || element.size < least) throw new UnusableProfile("no element " + tag, "one");
        return element;
    }

    private double[] xyz(String tag) throws UnusableProfile {
        int at = element(tag, 20).offset + 8;
        return new double[] {fixed(at), fixed(at + 4), fixed(at + 8)};
    }

    private TransferCurve curve(String tag) throws UnusableProfile {
        Element element = element(tag, 12);
        String type = signature(element.offset);
        TransferCurve curve = switch (type) {
            case "curv" -> sampled(tag, element);
            case "para" -> parametric(tag, element);
            default -> throw new UnusableProfile("a curve of type " + type, "curv or para");
        };
        requireRising(tag, curve);
        return curve;
    }

    private TransferCurve sampled(String tag, Element element) throws UnusableProfile {
        long count = Integer.toUnsignedLong(bytes.getInt(element.offset + 8));
        if (count > (element.size - 12) / 2)
            throw new UnusableProfile("curve %s cut short".formatted(tag), "all of it");
        if (count == 0) return TransferCurve.Parametric.gamma(1);
        if (count == 1) return TransferCurve.Parametric.gamma((bytes.getShort(element.offset + 12) & 0xFFFF) / 256.0);
        int[] light = new int[(int) count];
        for (int i = 0; i < light.length; i++) light[i] = bytes.getShort(element.offset + 12 + 2 * i) & 0xFFFF;
        return new TransferCurve.Sampled(light);
    }

    private TransferCurve parametric(String tag, Element element) throws UnusableProfile {
        int form = bytes.getShort(element.offset + 8) & 0xFFFF;
        if (form >= PARAMETERS.length || element.size < 12 + 4 * PARAMETERS[form]) {
            throw new UnusableProfile("curve %s of form %d".formatted(tag, form), "a whole one of form 0 to 4");
        }
        double[] p = new double[7];
        for (int i = 0; i < PARAMETERS[form]; i++) p[i] = fixed(element.offset + 12 + 4 * i);
        return switch (form) {
            case 0 -> TransferCurve.Parametric.gamma(p[0]);
            case 1 -> new TransferCurve.Parametric(p[0], p[1], p[2], 0, -p[2] / p[1], 0, 0);
            case 2 -> new TransferCurve.Parametric(p[0], p[1], p[2], 0, -p[2] / p[1], p[3], p[3]);
            default -> new TransferCurve.Parametric(p[0], p[1], p[2], p[3], p[4], p[5], p[6]);
        };
    }

    /** A curve that falls, or never leaves black, has no way back from light to code values. */
    private static void requireRising(String tag, TransferCurve curve) throws UnusableProfile {
        int steps = 4096;
        double last = curve.toLight(0);
        for (int i = 1; i <= steps; i++) {
            double light = curve.toLight((double) i / steps);
            if (!(light >= last - 1e-9) || !Double.isFinite(light)) {
                throw new UnusableProfile(
                        "curve %s that falls at %.3f".formatted(tag, (double) i / steps), "a rising one");
            }
            last = light;
        }
        if (!(last > curve.toLight(0) + 0.01))
            throw new UnusableProfile("curve %s without a slope".formatted(tag), "one");
    }

    private double fixed(int at) {
        return bytes.getInt(at) / 65536.0;
    }

    private String signature(int at) {
        byte[] four = new byte[4];
        bytes.get(at, four);
        return new String(four, StandardCharsets.ISO_8859_1);
    }
}
