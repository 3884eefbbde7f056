package org.stook.app.archive.bag;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.stook.app.audit.AuditTrail.Entry;

/**
 * All that is on record about one publication.
 *
 * @param files of the publication, the master first
 * @param frames of its stack, those set aside left out
 * @param acts on its run and its stack, oldest first
 */
record Dossier(Head head, List<Published> files, List<FrameFile> frames, List<Entry> acts) {
    /**
     * @param settings as JSON
     * @param score as JSON, null if the worker gave none
     */
    record Head(
            long run,
            long stack,
            String subject,
            @Nullable String view,
            String station,
            String settingsId,
            String settings,
            String engineVersion,
            @Nullable String worker,
            @Nullable String score,
            @Nullable String verdict,
            Instant publishedAt) {
        /** Of the folder that its files lie in where several are packed together. */
        String folder() {
            return "run-" + run;
        }

        String title() {
            return view == null ? subject : subject + ", " + view;
        }
    }

    /** @param path where it lies */
    record Published(String kind, Path path, long bytes, String sha256) {
        /** Its place in the bag. */
        String place() {
            String folder = switch (kind) {
                case "master" -> "master/";
                case "derivative", "preview", "thumbnail" -> "derivatives/";
                case "source-map", "depth-map" -> "maps/";
                case "record" -> "record/";
                default -> plain(kind) + "/";
            };
            return folder + plain(String.valueOf(path.getFileName()));
        }

        String mediaType() {
            String name = path.toString().toLowerCase(Locale.ROOT);
            if (name.endsWith(".tif")) return "image/tiff";
            if (name.endsWith(".jpg")) return "image/jpeg";
            if (name.endsWith(".png")) return "image/png";
            return name.endsWith(".json") ? "application/json" : "application/octet-stream";
        }
    }

    /**
     * @param share the share it lay on at arrival
     * @param name where it lay there
     * @param path the same as this service sees it
     * @param format as its reader calls it
     * @param capturedAt by the camera's clock
     * @param hashedAt when its hash was taken
     */
    record FrameFile(
            int ordinal,
            String role,
            String share,
            String name,
            Path path,
            long bytes,
            String sha256,
            String format,
            @Nullable LocalDateTime capturedAt,
            Instant hashedAt) {
        /** Its place in the bag. */
        String place() {
            return "frames/%04d-%s".formatted(ordinal + 1, plain(String.valueOf(path.getFileName())));
        }

        String mediaType() {
            String lower = format.toLowerCase(Locale.ROOT);
            return "image/" + (lower.equals("jpg") ? "jpeg" : lower);
        }
    }

    /** A bag needs no encoding of names, and has none. */
    private static String plain(String name) {
        return name.replaceAll("[^A-Za-z0-9._-]+", "-").replaceAll("^[.-]+", "");
    }
}
