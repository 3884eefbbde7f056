package org.stook.scenes.bracket;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.stook.scenes.optics.Sweep;
import org.stook.scenes.subject.Hit;
import org.stook.scenes.subject.Sheet;

/** What is true of a bracket, in the geometry of one of its frames: the reference frame of what follows. */
public final class Truth {
    /** A jump of the sweep position between neighbouring pixels that counts as a silhouette, in frames. */
    public static final double JUMP = 0.75;

    private final Bracket bracket;
    private final int reference;
    private final Picture linear;
    private final float[] position;
    private final boolean[] subject;

    private Truth(Bracket bracket, int reference) {
        this.bracket = bracket;
        this.reference = reference;
        int width = bracket.plan().width();
        int height = bracket.plan().height();
        linear = Picture.black(width, height);
        position = new float[width * height];
        subject = new boolean[width * height];
    }

    static Truth of(Bracket bracket, List<Sheet> sheets, int reference) {
        Truth truth = new Truth(bracket, reference);
        View view = new View(bracket.plan(), bracket.pose(reference), reference);
        IntStream.range(0, bracket.plan().height())
                .parallel()
                .forEach(y -> truth.row(y, sheets, view, bracket.gain(reference)));
        return truth;
    }

    private void row(int y, List<Sheet> sheets, View view, double gain) {
        Hit hit = new Hit();
        for (int x = 0; x < linear.width(); x++) {
            int p = y * linear.width() + x;
            for (Sheet sheet : sheets) {
                sheet.sample(view.subjectX(x, y), view.subjectY(x, y), hit);
                if (hit.cover > 0) lay(p, hit, gain);
            }
        }
    }

    private void lay(int p, Hit hit, double gain) {
        float[][] planes = linear.planes();
        planes[0][p] += (float) (hit.cover * (gain * hit.red - planes[0][p]));
        planes[1][p] += (float) (hit.cover * (gain * hit.green - planes[1][p]));
        planes[2][p] += (float) (hit.cover * (gain * hit.blue - planes[2][p]));
        if (hit.cover < 0.5) return;
        position[p] = (float) bracket.plan().span().position(hit.depth);
        subject[p] = hit.depth <= 1;
    }

    /** Everything in focus, linear light, exposure of the reference frame, no noise. */
    public Picture linear() {
        return linear;
    }

    /** Everything in focus, encoded by sRGB. */
    public Picture encoded() {
        return linear.encoded();
    }

    /** Sweep position of every pixel, in frames and fractions; the backdrop lies beyond the last frame. */
    public float[] position() {
        return position.clone();
    }

    /** Pixels of the subject, without the backdrop. */
    public boolean[] subject() {
        return subject.clone();
    }

    /** Pixels at most {@code reach} columns and rows from a jump in depth. */
    public boolean[] silhouette(int reach) {
        int width = linear.width();
        boolean[] band = new boolean[position.length];
        for (int p = 0; p < position.length; p++) {
            boolean right = (p + 1) % width != 0 && Math.abs(position[p] - position[p + 1]) > JUMP;
            boolean down = p + width < position.length && Math.abs(position[p] - position[p + width]) > JUMP;
            if (right) band[p + 1] = true;
            if (down) band[p + width] = true;
            band[p] |= right || down;
        }
        return Masks.dilated(band, width, reach);
    }

    /** The frame in which each pixel is least blurred, from 0. */
    public int[] bestFrame() {
        Sweep sweep = bracket.sweep();
        int last = bracket.plan().frames() - 1;
        return IntStream.range(0, position.length)
                .map(p -> {
                    int low = Math.max(0, Math.min(last, (int) Math.floor(position[p])));
                    int high = Math.min(last, low + 1);
                    return sweep.blurRadius(position[p], high) < sweep.blurRadius(position[p], low) ? high : low;
                })
                .toArray();
    }

    /** Reference pixels that every frame shows, at least {@code margin} pixels from its border. */
    public boolean[] seenByAll(double margin) {
        int width = linear.width();
        boolean[] seen = new boolean[position.length];
        Arrays.fill(seen, true);
        for (int i = 0; i < bracket.plan().frames(); i++) {
            double[] m = placement(i);
            for (int y = 0; y < linear.height(); y++) {
                for (int x = 0; x < width; x++) {
                    seen[y * width + x] &= inFrame(m[0] * x + m[1] * y + m[2], m[3] * x + m[4] * y + m[5], margin);
                }
            }
        }
        return seen;
    }

    private boolean inFrame(double x, double y, double margin) {
        return x >= margin && y >= margin && x <= linear.width() - 1 - margin && y <= linear.height() - 1 - margin;
    }

    /** Reference pixel to pixel of frame {@code index}: 3 x 3, row-major, exact. */
    public double[] placement(int index) {
        double[] m = bracket.pose(index).placement();
        return reference == bracket.plan().reference()
                ? m
                : after(m, bracket.pose(reference).inverse());
    }

    /** Exposure of a frame against the reference frame, as a factor of linear light. */
    public double gain(int index) {
        return bracket.gain(index) / bracket.gain(reference);
    }

    /** The affine map that does {@code first}, then {@code next}. */
    private static double[] after(double[] next, double[] first) {
        double[] both = new double[9];
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 3; j++) {
                both[3 * i + j] = next[3 * i] * first[j] + next[3 * i + 1] * first[3 + j];
            }
            both[3 * i + 2] += next[3 * i + 2];
        }
        both[8] = 1;
        return both;
    }
}
