package org.stook.imaging.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.command.RecordedWork.Frame;
import org.stook.imaging.composite.Sha256;

/**
 * Finds recorded frames among the files of a folder by their hashes, for in an archive they may have got other names, and gives
 * them their recorded names back: settings name frames.
 */
final class KeptFrames {
    private final Deque<Path> unread = new ArrayDeque<>();
    private final Map<String, Path> byHash = new HashMap<>();

    /** @param names files called so are looked at first */
    KeptFrames(Path folder, Set<String> names) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            files.filter(Files::isRegularFile)
                    .sorted(Comparator.comparing((Path f) -> !names.contains(String.valueOf(f.getFileName())))
                            .thenComparing(Comparator.naturalOrder()))
                    .forEach(unread::add);
        }
    }

    /**
     * Links to all frames, in order, under their recorded names.
     *
     * @param scratch an empty folder
     * @throws IOException names every frame that is not there
     */
    static List<Path> lay(List<Frame> frames, Path folder, Path scratch) throws IOException {
        KeptFrames kept =
                new KeptFrames(folder, frames.stream().map(Frame::file).collect(Collectors.toSet()));
        List<String> missing = new ArrayList<>();
        List<Path> laid = new ArrayList<>();
        for (Frame frame : frames) {
            Path file = kept.find(frame.sha256());
            if (file == null) {
                missing.add(frame.file() + " (SHA-256 " + frame.sha256() + ")");
                continue;
            }
            // A folder each: two cameras may have given two frames one name.
            Path place = Files.createDirectory(scratch.resolve(Integer.toString(laid.size())));
            laid.add(Files.createSymbolicLink(place.resolve(frame.file()), file.toAbsolutePath()));
        }
        if (!missing.isEmpty()) {
            throw new IOException("%s: %d of %d frames are not there: %s"
                    .formatted(folder, missing.size(), frames.size(), String.join(", ", missing)));
        }
        return laid;
    }

    private @Nullable Path find(String sha256) throws IOException {
        while (!byHash.containsKey(sha256) && !unread.isEmpty()) {
            Path file = unread.remove();
            byHash.putIfAbsent(Sha256.of(file), file);
        }
        return byHash.get(sha256);
    }
}
