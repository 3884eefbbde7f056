package org.stook.app.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * Looks at every station's folder once a step. Polling, because no file system tells of changes that another machine made.
 * Where a file stands is in the database; a new poller goes on from there.
 */
@Component
public class IntakePoller {
    /** So long after the last change the next frame of a sweep may still come. */
    private static final Duration LIVELY = Duration.ofSeconds(15);

    private static final long PAUSE = 100;
    private static final long LONG_PAUSE = 700;
    private static final long LONG_STEP = Duration.ofSeconds(1).toNanos();
    private static final Logger LOG = LoggerFactory.getLogger(IntakePoller.class);

    private final Stations stations;
    private final Shares shares;
    private final FolderRound round;
    private final LongSupplier ticker;
    private final Map<Path, FolderWatch> watches = new HashMap<>();

    IntakePoller(Stations stations, Shares shares, FolderRound round, LongSupplier ticker) {
        this.stations = stations;
        this.shares = shares;
        this.round = round;
        this.ticker = ticker;
    }

    /** One look at everything. A station that cannot be read does not keep the others waiting. */
    public synchronized void step() {
        Shares.Share publish = stations.publish();
        if (publish != null) {
            shares.present(publish);
        }
        for (Stations.Station station : stations.all()) {
            try {
                if (shares.present(station.share())) {
                    look(station);
                }
            } catch (IOException e) {
                LOG.warn(
                        "station {}: its folder cannot be listed and is tried again: {}", station.name(), e.toString());
            }
        }
    }

    /** Steps on as long as something is shot, so that the table hears of every frame at once; one step if nothing is. */
    public void watch(BooleanSupplier goOn) {
        try {
            long begun;
            do {
                begun = System.nanoTime();
                step();
                pause(System.nanoTime() - begun);
            } while (goOn.getAsBoolean() && isLively());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** A step that takes long has a crowd of files before it, which is in no hurry and must leave room for others. */
    private static void pause(long looked) throws InterruptedException {
        Thread.sleep(looked < LONG_STEP ? PAUSE : LONG_PAUSE);
    }

    private synchronized boolean isLively() {
        long now = ticker.getAsLong();
        return watches.values().stream().anyMatch(watch -> !watch.quiet(now, LIVELY));
    }

    private void look(Stations.Station station) throws IOException {
        Path root = station.share().root();
        List<Path> folders = Listing.folders(root);
        Set<Path> present = new HashSet<>(folders);
        watches.keySet().removeIf(p -> root.equals(p.getParent()) && !present.contains(p));
        boolean stacks = round.foldersAreStacks(station);
        for (Path path : folders) {
            look(new FolderIntake.Folder(station, path, String.valueOf(path.getFileName()), stacks));
        }
        look(new FolderIntake.Folder(station, root, "", false));
    }

    private void look(FolderIntake.Folder folder) {
        try {
            long now = ticker.getAsLong();
            FolderWatch watch = watches.computeIfAbsent(folder.path(), f -> new FolderWatch(now));
            long modified = Files.getLastModifiedTime(folder.path()).to(TimeUnit.NANOSECONDS);
            if (watch.isDue(now, modified)) {
                watch.look(now, modified);
                watch.rest(round.look(folder, watch, now));
            }
        } catch (IOException e) {
            LOG.warn("{} cannot be listed and is tried again: {}", folder.path(), e.toString());
        } catch (RuntimeException e) {
            LOG.error("{} could not be taken in and is tried again", folder.path(), e);
        }
    }
}
