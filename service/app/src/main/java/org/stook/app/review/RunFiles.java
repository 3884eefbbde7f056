package org.stook.app.review;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import org.springframework.stereotype.Component;
import org.stook.app.publish.Publications;

/** The files of published runs that a review reads. */
@Component
public class RunFiles {
    /** "x,y,w,h/w,h/0/default.jpg" or "full/w,h/0/default.jpg" (IIIF Image API 3.0), as tiles are named. */
    private static final Pattern TILE =
            Pattern.compile("(full|\\d{1,6},\\d{1,6},\\d{1,6},\\d{1,6})/\\d{1,6},\\d{1,6}/0/default\\.jpg");

    private final Publications publications;

    RunFiles(Publications publications) {
        this.publications = publications;
    }

    Optional<Path> record(long run) {
        return publications.file(run, "record");
    }

    /** Folder of maps and placed frames. */
    Optional<Path> review(long run) {
        return folder(run, "review");
    }

    /** One tile of the composite, or its {@code info.json}. */
    public Optional<Path> tile(long run, String name) {
        if (!TILE.matcher(name).matches() && !name.equals("info.json")) {
            return Optional.empty();
        }
        return folder(run, "tiles").map(tiles -> tiles.resolve(name)).filter(Files::isRegularFile);
    }

    /** A frame as it lies in the composite, at reduced size. @param rank among the blended ones */
    public Optional<Path> frame(long run, int rank) {
        return picture(run, "frames", rank);
    }

    public Optional<Path> thumbnail(long run, int rank) {
        return picture(run, "thumbnails", rank);
    }

    private Optional<Path> picture(long run, String folder, int rank) {
        return review(run)
                .map(review -> review.resolve(folder).resolve("%03d.jpg".formatted(rank)))
                .filter(Files::isRegularFile);
    }

    private Optional<Path> folder(long run, String kind) {
        return publications.file(run, kind).map(contents -> Objects.requireNonNull(contents.getParent()));
    }
}
