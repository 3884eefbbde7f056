package org.stook.imaging.survey;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Assumptions;
import org.stook.imaging.frame.Plane;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.subject.Subject;

/** Surveyed frames, rendered ones and real ones. */
final class Surveys {
    private Surveys() {}

    static List<FrameSurvey> of(Subject subject, BracketPlan plan) {
        Bracket bracket = Bracket.of(subject, plan);
        return IntStream.range(0, plan.frames())
                .mapToObj(f -> FrameSurveyor.survey(luma(bracket.encoded(f)), 1))
                .toList();
    }

    static Plane luma(Picture picture) {
        Plane plane = new Plane(picture.width(), picture.height());
        float[][] p = picture.planes();
        for (int i = 0; i < plane.samples().length; i++) {
            plane.samples()[i] = 0.2126f * p[0][i] + 0.7152f * p[1][i] + 0.0722f * p[2][i];
        }
        return plane;
    }

    /** The frames of a published stack, in this order. */
    static List<FrameSurvey> published(String set, List<String> files) throws IOException {
        List<FrameSurvey> surveys = new ArrayList<>();
        for (String file : files) {
            BufferedImage image = ImageIO.read(folder(set).resolve(file).toFile());
            Plane plane = new Plane(image.getWidth(), image.getHeight());
            for (int i = 0; i < plane.samples().length; i++) {
                int rgb = image.getRGB(i % plane.width(), i / plane.width());
                plane.samples()[i] = ((rgb >> 16 & 255) + 2 * (rgb >> 8 & 255) + (rgb & 255)) / 1020f;
            }
            surveys.add(FrameSurveyor.survey(plane, 1));
        }
        return surveys;
    }

    static Path folder(String set) {
        Path folder = Path.of(System.getProperty("stook.published-data", "published-data-not-set"), set);
        if (!Files.isDirectory(folder)) {
            String loud = "PUBLISHED DATA ABSENT: " + folder + " does not exist; this check did not run";
            System.err.println(loud);
            Assumptions.abort(loud);
        }
        return folder;
    }

    /** All but some. */
    static List<FrameSurvey> without(List<FrameSurvey> all, int... gone) {
        return IntStream.range(0, all.size())
                .filter(i -> Arrays.stream(gone).noneMatch(g -> g == i))
                .mapToObj(all::get)
                .toList();
    }
}
