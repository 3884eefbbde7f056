package org.stook.app.intake;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.orders.Actor;

/** Brings the files of one folder forward: seen, settled, decided. Each file in a transaction of its own. */
@Component
class FolderIntake {
    private static final Logger LOG = LoggerFactory.getLogger(FolderIntake.class);

    /** One look at one folder. */
    private record Look(Stations.Station station, String folder, FolderWatch watch, long now) {}

    private final IntakeFiles files;
    private final IntakeSettings.Patience patience;
    private final JdbcClient jdbc;
    private final TransactionOperations transaction;

    FolderIntake(IntakeFiles files, IntakeSettings settings, JdbcClient jdbc, TransactionOperations transaction) {
        this.files = files;
        this.patience = settings.intake();
        this.jdbc = jdbc;
        this.transaction = transaction;
    }

    IntakeSettings.Patience patience() {
        return patience;
    }

    @Nullable
    Long ripe(Stations.Station station, Path folder) {
        return files.ripe(station, String.valueOf(folder.getFileName()));
    }

    /** @return whether a file is not decided yet */
    boolean look(Stations.Station station, Path folder, FolderWatch watch, long now) throws IOException {
        Look look = new Look(station, String.valueOf(folder.getFileName()), watch, now);
        Map<String, FileRow> known = new HashMap<>(files.of(station.share().id(), look.folder()));
        boolean open = false;
        for (Path file : Listing.files(folder)) {
            String path = look.folder() + "/" + file.getFileName();
            open |= file(look, file, path, known.remove(path));
        }
        known.values().stream().filter(row -> !row.missing()).forEach(row -> files.missing(row, true));
        return open;
    }

    private boolean file(Look look, Path file, String path, @Nullable FileRow row) {
        Sighting seen;
        try {
            seen = Sighting.of(file);
        } catch (IOException e) {
            // Refused while another program writes it, or gone since the listing: not ready, no error.
            LOG.debug("{} cannot be looked at yet", file, e);
            look.watch().active(look.now());
            return true;
        }
        if (row == null || !row.seen().equals(seen)) {
            arrived(look, path, row, seen);
            return true;
        }
        if (row.missing()) {
            files.missing(row, false);
        }
        return row.isOpen() && stillOpen(look, file, row);
    }

    private void arrived(Look look, String path, @Nullable FileRow row, Sighting seen) {
        look.watch().see(path, seen, look.now());
        look.watch().active(look.now());
        act(() -> {
            if (row == null) {
                files.add(look.station(), path, seen);
            } else {
                files.changed(row, seen);
            }
            files.collect(look.station(), look.folder());
        });
    }

    private boolean stillOpen(Look look, Path file, FileRow row) {
        FolderWatch watch = look.watch();
        watch.see(row.path(), row.seen(), look.now());
        if (!watch.settled(row.path(), look.now(), patience.settle())) {
            return true;
        }
        if (row.state().equals("SEEN")) {
            act(() -> files.settled(row, watch.polls(row.path())));
        }
        boolean open = !decided(look, row, Examination.of(file, row.seen()));
        if (!open) {
            watch.forget(row.path());
        }
        return open;
    }

    private boolean decided(Look look, FileRow row, Finding finding) {
        if (finding instanceof Finding.Whole whole) {
            act(() -> files.accept(row, whole));
            return true;
        }
        if (finding instanceof Finding.Refused refused) {
            act(() -> files.setAside(row, "REJECTED", refused.code(), refused.reason()));
            return true;
        }
        boolean patienceOver = look.watch().unchanged(row.path(), look.now(), patience.grace());
        if (finding instanceof Finding.Incomplete incomplete && patienceOver) {
            act(() -> files.setAside(row, "INCOMPLETE", "INCOMPLETE", incomplete.reason()));
            return true;
        }
        return false;
    }

    private void act(Runnable change) {
        transaction.executeWithoutResult(t -> {
            Actor.acts(jdbc, "intake");
            change.run();
        });
    }
}
