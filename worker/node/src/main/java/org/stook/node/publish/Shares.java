package org.stook.node.publish;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListMap;
import org.stook.orders.WorkOrder;
import org.stook.orders.WorkOrder.Share;

/**
 * The shares as this machine mounts them. An unmounted share is an empty folder that takes every file silently, so nothing
 * is read or written below a root whose sentinel is not there. The sentinel is the service's to write, never ours. Where
 * composites go there must be room, too, and leave to write.
 */
public final class Shares {
    /** What is wrong: a code for the run's reason, and a sentence for people. */
    public record Trouble(String code, String sentence) {}

    private final Map<String, Path> mounts;
    private final Room room;
    private final Map<Long, Share> known = new ConcurrentSkipListMap<>();
    private final Set<Long> written = ConcurrentHashMap.newKeySet();

    /**
     * @param mounts by a share's name: where it is mounted here, if elsewhere than for the service
     * @param room that an output share must have
     */
    public Shares(Map<String, Path> mounts, Room room) {
        this.mounts = Map.copyOf(mounts);
        this.room = room;
    }

    public Path root(Share share) {
        Path here = mounts.get(share.name());
        return here == null ? Path.of(share.root()) : here;
    }

    /** What is wrong with the shares of a work order. */
    public Optional<Trouble> trouble(WorkOrder order) {
        order.shares().forEach(share -> known.put(share.id(), share));
        written.add(order.output().shareId());
        return trouble(order.shares());
    }

    /** What is wrong with any share that this process has worked with. */
    public Optional<Trouble> trouble() {
        return trouble(known.values());
    }

    private Optional<Trouble> trouble(Iterable<Share> shares) {
        for (Share share : shares) {
            Optional<Trouble> trouble = trouble(share);
            if (trouble.isPresent()) {
                return trouble;
            }
        }
        return Optional.empty();
    }

    private Optional<Trouble> trouble(Share share) {
        Optional<Trouble> absent = absence(share);
        return absent.isPresent() || !written.contains(share.id())
                ? absent
                : room.trouble("share " + share.name(), root(share));
    }

    /** Why the share counts as not mounted here; empty if it is there. */
    Optional<Trouble> absence(Share share) {
        Path file = root(share).resolve(Share.SENTINEL);
        try {
            String found = Files.readString(file).strip();
            return found.equalsIgnoreCase(share.sentinel().toString())
                    ? Optional.empty()
                    : gone(
                            share,
                            file + " holds '" + found + "', expected " + share.sentinel()
                                    + "; another share is mounted here");
        } catch (NoSuchFileException e) {
            return Optional.of(new Trouble("SHARE_GONE", "share " + share.name() + " is not mounted here: no " + file));
        } catch (IOException e) {
            return gone(share, file + " cannot be read (" + e + ")");
        }
    }

    private static Optional<Trouble> gone(Share share, String what) {
        return Optional.of(new Trouble("SHARE_GONE", "share " + share.name() + ": " + what));
    }
}
