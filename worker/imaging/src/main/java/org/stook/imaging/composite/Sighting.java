package org.stook.imaging.composite;

import java.nio.file.Path;
import org.stook.imaging.codec.FrameHeader;
import org.stook.imaging.survey.FrameSurvey;
import org.stook.imaging.tone.ColourSpace;
import org.stook.imaging.tone.LightGrid;

/** A readable frame of the right kind and what its first look told. */
record Sighting(Path file, String sha256, FrameHeader header, ColourSpace space, FrameSurvey survey, LightGrid light) {
    String name() {
        return String.valueOf(file.getFileName());
    }
}
