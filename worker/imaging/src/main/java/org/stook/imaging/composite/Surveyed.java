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
    Sighting referenceFrame() {
        return sweep.get(reference);
    }
}
