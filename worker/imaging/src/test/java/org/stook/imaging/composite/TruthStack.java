package org.stook.imaging.composite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Truth;
import org.stook.scenes.file.BracketWriter;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.subject.Subjects;

/** A generated stack on disk, and what is known to be true of it. */
final class TruthStack {
    private final Path folder;
    private final BracketWriter writer;
    private final Truth truth;

    private TruthStack(Path folder, Bracket bracket) {
        this.folder = folder;
        this.truth = bracket.truth();
        this.writer = new BracketWriter(
                bracket, FrameFormat.JPEG, Camera.USUAL, OffsetDateTime.parse("2026-03-02T10:15:30+01:00"));
    }

    static TruthStack write(Path folder, String piece, BracketPlan plan) throws IOException {
        TruthStack stack = new TruthStack(folder, Bracket.of(Subjects.named(piece, plan.seed()), plan));
        stack.writer.writeFrames(folder);
        return stack;
    }

    BracketWriter writer() {
        return writer;
    }

    Truth truth() {
        return truth;
    }

    List<Path> files() throws IOException {
        try (var entries = Files.list(folder)) {
            return new ArrayList<>(entries.sorted().toList());
        }
    }

    String nameOf(int frame) {
        return writer.fileName(frame);
    }

    int frames() {
        return writer.files();
    }
}
