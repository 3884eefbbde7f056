package org.stook.imaging.composite.view;

import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Parallel;
import org.stook.imaging.tone.ColourSpace;
import org.stook.imaging.tone.Tone;
import org.stook.imaging.tone.ToneSettings;

/** Turns encoded values of the composite's space into 8-bit sRGB codes (or grey with the same curve). */
final class Screen {
    /** Rows a thread tones in one go. */
    private static final int STRIP = 16;

    private final Tone tone;
    private final int threads;

    Screen(ColourSpace space, int threads) {
        ColourSpace screen = space.isGrey() ? ColourSpace.srgb().grey() : ColourSpace.srgb();
        this.tone = Tone.prepare(ToneSettings.none(), space, screen, 1);
        this.threads = threads;
    }

    int channels() {
        return tone.outputChannels();
    }

    /** Interleaved codes of all rows of {@code frame}. */
    byte[] codes(Frame frame) {
        Frame shown = tone.blank(frame.width(), frame.height());
        int channels = shown.channels();
        byte[] codes = new byte[frame.width() * frame.height() * channels];
        Parallel.forEach((frame.height() + STRIP - 1) / STRIP, threads, strip -> {
            int from = strip * STRIP;
            int to = Math.min(frame.height(), from + STRIP);
            tone.applyRows(frame, from, to, shown);
            for (int c = 0; c < channels; c++) {
                float[] samples = shown.plane(c).samples();
                for (int i = from * frame.width(); i < to * frame.width(); i++) {
                    codes[i * channels + c] = (byte) Math.max(0, Math.min(255, (int) (samples[i] * 255 + 0.5f)));
                }
            }
        });
        return codes;
    }
}
