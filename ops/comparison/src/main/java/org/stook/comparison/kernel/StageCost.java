package org.stook.comparison.kernel;

import java.util.List;
import org.stook.imaging.composite.Composition;

/**
 * What a stage of the default blend has to move and to calculate, by the pixel of a frame, counted by hand from the loops.
 * What stays in the processor's caches is not counted as moved; a sample that is changed in place is moved twice. A JPEG of
 * a quarter of a byte a pixel is taken for granted. What the decoder calculates is left out: it is the runtime's, and what it
 * takes is measured.
 *
 * @param bytes by pixel and frame
 * @param operations by pixel and frame
 * @param perFrame whether the stage works on every frame, or on the composite alone
 * @param decodes whether it decodes the frames
 */
public record StageCost(String stage, double bytes, double operations, boolean perFrame, boolean decodes) {
    /** Share of a frame that is drawn: a sweep's frames are sharp in parts, and those overlap. */
    private static final double DRAWN = 0.27;

    /** Of a decoded pixel. */
    private static final int CODES = 3;
    /** For a tap of the resampling: a weight by a parabola, multiplied and added. */
    private static final int TAP = 6;

    /** Of a composition with the standard settings. */
    public static List<StageCost> all() {
        return List.of(survey(), register(), blend(), finish(), score());
    }

    private static StageCost survey() {
        // Hashed; decoded; codes read; detail of two bytes at half size written, and copied by the system; codes read
        // once more and copied twice on their way to the spool.
        double bytes = 0.25 + 0.25 + CODES + CODES + 2 * 0.5 + 5 * CODES;
        // Luminance; halved twice (3.5 down, 1.75 across), enlarged and squared (5 and 2), added up.
        double operations = 2 + 2 * 5.25 + 7 + 1;
        return new StageCost(Composition.SURVEY, bytes, operations, true, true);
    }

    private static StageCost register() {
        // Luminance at a quarter of the size and all smaller: linearised, smoothed, halved, textured, each read and
        // written.
        double bytes = 4.0 / 3 / 16 * 4 * 8;
        // 176 tiles of 33 x 33 at each of three sizes, against three frames, in four steps of 90 operations a pixel.
        double operations = 176.0 * 33 * 33 * 3 * 3 * 4 * 90 / 24e6;
        return new StageCost(Composition.REGISTER, bytes, operations, true, false);
    }

    private static StageCost blend() {
        // Detail, at half size, from the spool into a plane, and from there into its place; then read.
        double place = 0.5 + 1 + 1 + 1 + 1;
        // The strongest so far, the last frame's, those beside the strongest, and its rank.
        double learn = place + 6.5;
        // Of the strongest and the frame: how near; at a quarter of the size some twelve planes.
        double claims = place + 1 + 1 + 1 + 12.0 * 4 / 16;
        // Codes, with what lies around a tile; nearness; four sums at full size and four at half size, read and
        // written.
        double tiles = 1.5 * 3 + 1 + 4 * 8 + 4 * 8 / 4.0;
        // Tones by table; two passes of ten taps for three channels and of two for luminance, with their halo; all
        // filters.
        double drawing = 1.5 * 12 + 1.3 * 2 * TAP * (3 * 10 + 2) + 110;
        // From the spool, copied twice.
        double fetched = 4 * CODES;
        return new StageCost(
                Composition.BLEND, learn + fetched + claims + DRAWN * tiles, 5 + 20 + DRAWN * drawing, true, false);
    }

    private static StageCost finish() {
        // Three planes read, three codes of two bytes written, hashed, and copied by the system.
        return new StageCost(Composition.FINISH, 12 + 3 * 6, 3 * 4 + 30, false, false);
    }

    private static StageCost score() {
        // Three planes read twice: for detail and for what clips.
        return new StageCost(Composition.SCORE, 2 * 12, 25, false, false);
    }

    /** Of a whole stack, by the pixel of a frame, in bytes. */
    public double bytes(int frames) {
        return perFrame ? bytes * frames : bytes;
    }

    /** Of a whole stack, by the pixel of a frame. */
    public double operations(int frames) {
        return perFrame ? operations * frames : operations;
    }
}
