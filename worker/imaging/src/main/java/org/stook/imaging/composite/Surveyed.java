package org.stook.imaging.composite;

import java.util.List;
import org.stook.imaging.survey.SweepSurvey;

/**
 * The stack after its first look.
 *
 * @param sweep the frames to use, in focus order
 * @param reference index into {@code sweep}
 * @param strays files set aside, in the order in which they came
 * @param misplaced file names of frames that came at another place than focus gives them
 * @param survey the sweep's own findings
 */
record Surveyed(
        List<Sighting> sweep, int reference, List<FrameRecord> strays, List<String> misplaced, SweepSurvey survey) {
    /** The frame of the sweep with this index in capture order. */
    Sighting captured(int index) {
        int[] order = survey.order();
        for (int rank = 0; rank < order.length; rank++) if (order[rank] == index) return sweep.get(rank);
        throw new IllegalArgumentException("frame " + index + " of the capture is not in the sweep");
    }

    /** Whether the frame at this rank of the sweep is softer than it should be. */
    boolean isShaken(int rank) {
        return survey.shaken().contains(survey.order()[rank]);
    }

    Sighting referenceFrame() {
        return sweep.get(reference);
    }
}
