package org.stook.app.intake;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;

/**
 * How long the files of one folder have looked the same, on the monotonic counter. Kept in memory only: after a restart the
 * waiting starts over, which is safe.
 */
final class FolderWatch {
    private static final int FEWEST_POLLS = 3;
    /** A folder in which all is decided is looked through again this seldom, for files changed in place. */
    private static final Duration REST = Duration.ofSeconds(30);

    private record Same(Sighting seen, long since, int polls) {}

    private final Map<String, Same> files = new HashMap<>();
    private long activity;
    private long looked;
    private long thorough = Long.MIN_VALUE;
    private boolean isThorough;
    private long folderTime = Long.MIN_VALUE;
    private boolean atRest;

    FolderWatch(long now) {
        this.activity = now;
    }

    /** Whether there may be something new. */
    boolean isDue(long now, long folderModified) {
        return !atRest || folderModified != folderTime || now - looked >= REST.toNanos();
    }

    void look(long now, long folderModified) {
        isThorough = thorough == Long.MIN_VALUE || now - thorough >= REST.toNanos();
        if (isThorough) {
            thorough = now;
        }
        looked = now;
        folderTime = folderModified;
    }

    /** Whether decided files are looked at again, too; with thousands of them that is not for every poll. */
    boolean isThorough() {
        return isThorough;
    }

    void rest(boolean nothingOpen) {
        atRest = nothingOpen;
    }

    /** Something is new or changing. */
    void active(long now) {
        activity = now;
    }

    boolean quiet(long now, Duration quiet) {
        return now - activity >= quiet.toNanos();
    }

    /** Takes in how a file looks at this poll. */
    void see(String path, Sighting seen, long now) {
        Same before = files.get(path);
        files.put(
                path,
                before != null && before.seen().equals(seen)
                        ? new Same(seen, before.since(), before.polls() + 1)
                        : new Same(seen, now, 1));
    }

    int polls(String path) {
        Same same = files.get(path);
        return same == null ? 0 : same.polls();
    }

    /** Whether the file has looked the same often and long enough. */
    boolean settled(String path, long now, Duration settle) {
        return polls(path) >= FEWEST_POLLS && unchanged(path, now, settle);
    }

    boolean unchanged(String path, long now, Duration atLeast) {
        Same same = files.get(path);
        return same != null && now - same.since() >= atLeast.toNanos();
    }

    /** A decided file needs no watching. */
    void forget(String path) {
        files.remove(path);
    }
}
