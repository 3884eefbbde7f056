package org.stook.app.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import org.stook.app.stack.Sealed;
import org.stook.app.stack.Sealing;

/**
 * Looks at every station's folder once a step. Polling, because no file system tells of changes that another machine made.
 * Where a file stands is in the database; a new poller goes on from there.
 */
@Component
public class IntakePoller {
    private static final Logger LOG = LoggerFactory.getLogger(IntakePoller.class);
    private static final String ACTOR = "intake";

    private final Stations stations;
    private final Shares shares;
    private final FolderIntake intake;
    private final Sealing sealing;
    private final LongSupplier ticker;
    private final Map<Path, FolderWatch> watches = new HashMap<>();

    IntakePoller(Stations stations, Shares shares, FolderIntake intake, Sealing sealing, LongSupplier ticker) {
        this.stations = stations;
        this.shares = shares;
        this.intake = intake;
        this.sealing = sealing;
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

    private void look(Stations.Station station) throws IOException {
        List<Path> folders = Listing.folders(station.share().root());
        Set<Path> present = new HashSet<>(folders);
        watches.keySet().removeIf(p -> station.share().root().equals(p.getParent()) && !present.contains(p));
        for (Path folder : folders) {
            try {
                look(station, folder);
            } catch (IOException e) {
                LOG.warn("{} cannot be listed and is tried again: {}", folder, e.toString());
            } catch (RuntimeException e) {
                LOG.error("{} could not be taken in and is tried again", folder, e);
            }
        }
    }

    private void look(Stations.Station station, Path folder) throws IOException {
        long now = ticker.getAsLong();
        FolderWatch watch = watches.computeIfAbsent(folder, f -> new FolderWatch(now));
        long modified = Files.getLastModifiedTime(folder).to(TimeUnit.NANOSECONDS);
        if (!watch.isDue(now, modified)) {
            return;
        }
        watch.look(now, modified);
        boolean open = intake.look(station, folder, watch, now);
        watch.rest(!open && sealed(station, folder, watch, now));
    }

    /** Seals the folder's stack when its time has come; true when there is nothing more to wait for. */
    private boolean sealed(Stations.Station station, Path folder, FolderWatch watch, long now) {
        Long stack = intake.ripe(station, folder);
        if (stack == null) {
            return true;
        }
        if (!watch.quiet(now, intake.patience().quiet())) {
            return false;
        }
        Sealed outcome = sealing.seal(stack, ACTOR);
        LOG.info("stack {} ({}): {}", stack, folder.getFileName(), outcome);
        return true;
    }
}
