package org.stook.app.intake;

import java.io.IOException;
import java.nio.file.Path;
import org.stook.imaging.codec.FrameReaders;
import org.stook.imaging.codec.UnreadableFrame;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.frame.Samples;
import org.stook.imaging.slate.GreyPicture;
import org.stook.imaging.slate.SlateReading;
import org.stook.imaging.slate.Slates;
import org.stook.imaging.survey.BorderDetail;
import org.stook.imaging.survey.FrameSurvey;
import org.stook.imaging.survey.FrameSurveyor;

/** What one look at a frame tells: sharpness, levels, a thumbnail, what lies along its border, and what its labels say. */
record Look(FrameSurvey survey, BorderDetail border, SlateReading reading) {
    /** Long side at which frames are surveyed. */
    private static final int SURVEYED = 1600;

    private static final double BLANK = 0.98;

    static Look at(Path file) throws IOException, UnreadableFrame {
        Samples samples = FrameReaders.read(file);
        GreyPicture grey = GreyPicture.of(samples);
        int reduction = Math.max(1, (Math.max(grey.width(), grey.height()) + SURVEYED - 1) / SURVEYED);
        Plane luma = reduced(grey, reduction);
        FrameSurvey survey = FrameSurveyor.survey(luma, reduction);
        return new Look(survey, BorderDetail.of(luma, survey.exposure().noise()), Slates.read(grey));
    }

    private static Plane reduced(GreyPicture grey, int n) {
        Plane plane = new Plane(grey.width() / n, grey.height() / n);
        float scale = 1f / (255 * n * n);
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                int sum = 0;
                for (int j = 0; j < n; j++) for (int i = 0; i < n; i++) sum += grey.at(x * n + i, y * n + j);
                plane.set(x, y, sum * scale);
            }
        }
        return plane;
    }

    /** What it is instead of a picture, in words; empty for a picture. */
    static String blank(FrameSurvey.Exposure exposure) {
        if (exposure.black() > BLANK) {
            return "is black";
        }
        return exposure.white() > BLANK ? "is blown out" : "";
    }
}
