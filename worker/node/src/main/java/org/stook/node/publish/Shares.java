package org.stook.node.publish;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentSkipListMap;
import org.stook.orders.WorkOrder.Share;

/**
 * The shares as this machine mounts them. An unmounted share is an empty folder that takes every file silently, so nothing
 * is read or written below a root whose sentinel is not there. The sentinel is the service's to write, never ours.
 */
public final class Shares {
    private final Map<String, Path> mounts;
    private final Map<Long, Share> known = new ConcurrentSkipListMap<>();

    /** @param mounts by a share's name: where it is mounted here, if elsewhere than for the service */
    public Shares(Map<String, Path> mounts) {
        this.mounts = Map.copyOf(mounts);
    }

    public Path root(Share share) {
        Path here = mounts.get(share.name());
        return here == null ? Path.of(share.root()) : here;
    }

    /** A sentence on what is wrong with the share as it is mounted here. */
    public Optional<String> trouble(Share share) {
        known.put(share.id(), share);
        Path file = root(share).resolve(Share.SENTINEL);
        try {
            String found = Files.readString(file).strip();
            return found.equalsIgnoreCase(share.sentinel().toString())
                    ? Optional.empty()
                    : Optional.of("share " + share.name() + ": " + file + " holds '" + found + "', expected "
                            + share.sentinel() + "; another share is mounted here");
        } catch (NoSuchFileException e) {
            return Optional.of("share " + share.name() + " is not mounted here: no " + file);
        } catch (IOException e) {
            return Optional.of("share " + share.name() + ": " + file + " cannot be read (" + e + ")");
        }
    }

    /** What is wrong with any share that this process has worked with. */
    public Optional<String> trouble() {
        return trouble(known.values());
    }

    public Optional<String> trouble(Iterable<Share> shares) {
        for (Share share : shares) {
            Optional<String> trouble = trouble(share);
            if (trouble.isPresent()) {
                return trouble;
            }
        }
        return Optional.empty();
    }
}
