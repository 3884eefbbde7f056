package org.stook.imaging.tone;

import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.frame.Samples;

/**
 * Tone settings made ready for the frames of one stack: from code values of the input space to encoded values of the
 * output space. Immutable; any number of threads may use one.
 */
public final class Tone {
    /** A change of luminance of white this small is rounding in two matrices, not a colour out of gamut. */
    private static final double GAMUT_SLACK = 1e-4;

    private final ColourSpace in;
    private final ColourSpace out;
    private final ToneCurve[] curves;
    private final Optional<ChannelMix> mix;
    private final boolean unchanged;
    private final EncodingTable[] encodings;
    private @Nullable ChannelTables eightBit;
    private @Nullable ChannelTables sixteenBit;

    private Tone(ToneSettings settings, ColourSpace in, ColourSpace out, double[] gains) {
        this.in = in;
        this.mix = ChannelMix.of(settings, in, out);
        this.out = in.isGrey() || settings.monochrome().isPresent() ? out.grey() : out;
        this.curves = new ToneCurve[in.isGrey() ? 1 : 3];
        for (int c = 0; c < curves.length; c++) {
            curves[c] = ToneCurve.of(settings, in.isGrey() ? -1 : c, gains[Math.min(c, gains.length - 1)]);
        }
        boolean neutral = settings.isNone() && Arrays.stream(gains).allMatch(gain -> gain == 1);
        this.unchanged = neutral && mix.isEmpty() && sameCurves();
        this.encodings = mix.isEmpty() ? new EncodingTable[0] : encodings();
    }

    /**
     * Compiles settings for frames of one kind.
     *
     * @param in space of the code values; a grey space for grey frames
     * @param out space of the result; its grey companion is used where the result is grey
     * @param gains flicker gain on light, for all channels or for each of three; 1 for the reference frame
     * @throws IllegalArgumentException unless one or three positive finite gains are given
     */
    public static Tone prepare(ToneSettings settings, ColourSpace in, ColourSpace out, double... gains) {
        boolean usable = (gains.length == 1 || gains.length == 3)
                && Arrays.stream(gains).allMatch(gain -> gain > 0 && Double.isFinite(gain));
        if (!usable) {
            throw new IllegalArgumentException(
                    "flicker gains are one or three positive numbers, got " + Arrays.toString(gains));
        }
        return new Tone(settings, in, out, gains);
    }

    /** The space of the result, with the profile to embed. */
    public ColourSpace outputSpace() {
        return out;
    }

    /** 1 or 3. */
    public int outputChannels() {
        return out.isGrey() ? 1 : 3;
    }

    /** A frame that can take the result for samples of this size. */
    public Frame blank(int width, int height) {
        return Frame.blank(width, height, outputChannels());
    }

    /** Tones all rows. */
    public Clipping apply(Samples samples, Frame target) {
        return applyRows(samples, 0, samples.height(), target);
    }

    /**
     * Tones rows {@code fromRow} to {@code toRow - 1} into the same rows of {@code target}; other rows are not touched, so
     * that threads can share a frame.
     *
     * @param samples as many channels as the input space has
     * @param target size of the samples, {@link #outputChannels()} channels
     */
    public Clipping applyRows(Samples samples, int fromRow, int toRow, Frame target) {
        check(samples.width(), samples.height(), samples.channels(), target);
        ChannelTables tables = tables(samples.bitsPerSample());
        ToneRows rows = new ToneRows(tables, mix, encodings);
        float[][] out = arrays(target);
        int[] codes = new int[samples.width() * samples.channels()];
        for (int y = fromRow; y < toRow; y++) {
            samples.row(y, codes);
            rows.countAndTone(codes, out, y * samples.width());
        }
        return rows.clipping();
    }

    /** Tones rows of a finished frame, encoded in the input space, rounded to 16-bit codes on the way. */
    public Clipping applyRows(Frame frame, int fromRow, int toRow, Frame target) {
        check(frame.width(), frame.height(), frame.channels(), target);
        ToneRows rows = new ToneRows(tables(16), mix, encodings);
        float[][] out = arrays(target);
        int channels = frame.channels();
        int[] codes = new int[frame.width() * channels];
        for (int y = fromRow; y < toRow; y++) {
            for (int c = 0; c < channels; c++) {
                Plane plane = frame.plane(c);
                for (int x = 0, i = c; x < frame.width(); x++, i += channels) {
                    codes[i] = Math.max(0, Math.min(65535, (int) (plane.at(x, y) * 65535.0 + 0.5)));
                }
            }
            rows.countAndTone(codes, out, y * frame.width());
        }
        return rows.clipping();
    }

    /** The toned rows of a frame, one at a time: for whoever does not want them all at once. */
    public TonedRows rowsOf(Samples samples) {
        if (samples.channels() != curves.length) {
            throw new IllegalArgumentException(
                    "%s has %d channels, the frame has %d".formatted(in, curves.length, samples.channels()));
        }
        return new TonedRows(samples, new ToneRows(tables(samples.bitsPerSample()), mix, encodings), outputChannels());
    }

    private static float[][] arrays(Frame target) {
        return target.planes().stream().map(Plane::samples).toArray(float[][]::new);
    }

    private void check(int width, int height, int channels, Frame target) {
        if (channels != curves.length) {
            throw new IllegalArgumentException(
                    "%s has %d channels, the frame has %d".formatted(in, curves.length, channels));
        }
        if (target.width() != width || target.height() != height || target.channels() != outputChannels()) {
            throw new IllegalArgumentException("target must be %d x %d x %d, got %d x %d x %d"
                    .formatted(width, height, outputChannels(), target.width(), target.height(), target.channels()));
        }
    }

    /** The table of one channel, for tests of exactness. */
    float[] table(int bitsPerSample, int channel) {
        return tables(bitsPerSample).values()[channel].clone();
    }

    private synchronized ChannelTables tables(int bitsPerSample) {
        if (bitsPerSample == 8) {
            if (eightBit == null) eightBit = build(255);
            return eightBit;
        }
        if (sixteenBit == null) sixteenBit = build(65535);
        return sixteenBit;
    }

    private ChannelTables build(int maxCode) {
        if (unchanged) return ChannelTables.unchanged(curves.length, maxCode);
        return ChannelTables.of(curves, in, mix.isPresent() ? null : out, maxCode);
    }

    private boolean sameCurves() {
        for (int c = 0; c < curves.length; c++) {
            if (!in.curve(c).equals(out.curve(c))) return false;
        }
        return true;
    }

    private EncodingTable[] encodings() {
        EncodingTable[] tables = new EncodingTable[outputChannels()];
        for (int c = 0; c < tables.length; c++) {
            boolean shared = c > 0 && out.curve(c).equals(out.curve(c - 1));
            tables[c] = shared ? tables[c - 1] : new EncodingTable(out.curve(c));
        }
        return tables;
    }

    static boolean isOutOfGamut(double light) {
        return light < -GAMUT_SLACK || light > 1 + GAMUT_SLACK;
    }
}
