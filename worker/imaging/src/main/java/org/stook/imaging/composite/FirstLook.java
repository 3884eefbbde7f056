package org.stook.imaging.composite;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.stook.imaging.codec.FrameHeader;
import org.stook.imaging.codec.FrameReaders;
import org.stook.imaging.codec.UnreadableFrame;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.frame.Samples;
import org.stook.imaging.survey.FrameSurvey;
import org.stook.imaging.survey.FrameSurveyor;
import org.stook.imaging.tone.ColourSpace;
import org.stook.imaging.tone.LightGrid;
import org.stook.imaging.tone.UnusableProfile;

/** The first look at one file. */
final class FirstLook {
    /** Survey pictures have at most this many pixels on their long side. */
    private static final int SURVEYED = 2000;

    private final DecodedFrames frames;
    private final FrameMaps maps;

    FirstLook(DecodedFrames frames, FrameMaps maps) {
        this.frames = frames;
        this.maps = maps;
    }

    /** Either a frame or a stray. */
    record Result(Optional<Sighting> frame, Optional<FrameRecord> stray) {}

    Result at(Path file) throws IOException {
        String name = String.valueOf(file.getFileName());
        String sha256 = Sha256.of(file);
        try {
            FrameHeader header = FrameReaders.header(file);
            ColourSpace space = space(header);
            // Decoded here once for good: a file whose data are damaged must not stop a later stage.
            Samples samples = frames.readOrRefuse(file);
            FrameSurvey survey = survey(file, samples);
            LightGrid light = LightGrid.of(samples);
            frames.done(file, samples);
            Sighting frame = new Sighting(file, sha256, header, space, survey, light);
            return new Result(Optional.of(frame), Optional.empty());
        } catch (UnreadableFrame e) {
            return stray(name, sha256, e.getMessage());
        } catch (UnusableProfile e) {
            return stray(name, sha256, name + ": " + e.getMessage());
        }
    }

    private static Result stray(String name, String sha256, String reason) {
        return new Result(Optional.empty(), Optional.of(FrameRecord.stray(name, sha256, reason + "; set aside.")));
    }

    private FrameSurvey survey(Path file, Samples samples) throws IOException {
        Plane small = maps.make(file, samples);
        int reduced = FrameMaps.reduction(samples.width(), samples.height());
        int further = 1;
        while (Math.max(small.width(), small.height()) / further > SURVEYED) further *= 2;
        return FrameSurveyor.survey(ReducedLuma.mean(small, further), reduced * further);
    }

    private static ColourSpace space(FrameHeader header) throws UnusableProfile {
        FrameHeader.Colour colour = header.colour();
        return ColourSpace.of(colour.profile(), colour.exif() == FrameHeader.Declared.ADOBE_RGB, header.channels());
    }
}
