package org.stook.node.job;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.stook.imaging.frame.Parallel;
import org.stook.node.publish.Durable;
import org.stook.node.publish.Shares;
import org.stook.orders.WorkOrder;
import org.stook.orders.WorkOrder.FrameFile;
import org.stook.orders.attempt.Outcome;

/** The frames of a work order on this machine's disks. */
final class Frames {
    private final WorkOrder order;
    private final Shares shares;

    Frames(WorkOrder order, Shares shares) {
        this.order = order;
        this.shares = shares;
    }

    /** In sweep order. */
    List<Path> files() {
        List<Path> files = new ArrayList<>();
        order.sweep().forEach(frame -> files.add(file(frame)));
        return files;
    }

    /**
     * Reads every frame and compares it with what it was at intake.
     *
     * @throws Ended if one differs or is not there
     */
    void verify(int threads, Reporting reporting) throws IOException {
        List<FrameFile> sweep = order.sweep();
        try {
            Parallel.forEach(sweep.size(), threads, i -> {
                reporting.at(Stage.SURVEY, 1);
                verify(sweep.get(i));
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private void verify(FrameFile frame) {
        try {
            compare(frame);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void compare(FrameFile frame) throws IOException {
        String found;
        try {
            found = Durable.sha256(file(frame));
        } catch (NoSuchFileException e) {
            throw new Ended(
                    new Outcome.Failed("FRAME_MISSING", frame.path() + ": frame not found where it was at intake"));
        }
        if (!found.equals(frame.sha256())) {
            throw new Ended(new Outcome.Failed(
                    "FRAME_CHANGED",
                    "%s: frame changed since intake (%d bytes with SHA-256 %s, expected %s)"
                            .formatted(frame.path(), Files.size(file(frame)), found, frame.sha256())));
        }
    }

    private Path file(FrameFile frame) {
        return shares.root(order.share(frame.shareId())).resolve(frame.path());
    }
}
