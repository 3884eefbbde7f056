package org.stook.app.intake;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.app.station.StationSettings;
import org.stook.app.station.StationSettings.Patience;
import org.stook.orders.Actor;

/** Brings the files of one folder forward: seen, settled, decided. Each file in a transaction of its own. */
@Component
class FolderIntake {
    private static final Logger LOG = LoggerFactory.getLogger(FolderIntake.class);
    private static final String RAW_ALONE = "RAW_ALONE";
    /** Cameras write both files of a capture within seconds; what comes later is sorted out then. */
    private static final Duration PICTURE_COMES_WITHIN = Duration.ofSeconds(5);

    /**
     * One folder of a station.
     *
     * @param name empty for the station's own folder
     * @param isStack whether all that lies in it is one stack
     */
    record Folder(Stations.Station station, Path path, String name, boolean isStack) {
        String pathOf(Path file) {
            return name.isEmpty() ? String.valueOf(file.getFileName()) : name + "/" + file.getFileName();
        }
    }

    /** The stacks that files join, and what is seen of files before they are accepted. */
    @Component
    record Beside(FolderStacks stacks, EarlyLooks early, OperatorManifests manifests) {}

    /** One look at one folder. */
    private record Look(
            Folder folder, FolderWatch watch, long now, StationSettings settings, Map<String, FileRow> known) {
        Patience patience() {
            return settings.patience();
        }
    }

    private final IntakeFiles files;
    private final Beside beside;
    private final JdbcClient jdbc;
    private final TransactionOperations transaction;

    FolderIntake(IntakeFiles files, Beside beside, JdbcClient jdbc, TransactionOperations transaction) {
        this.files = files;
        this.beside = beside;
        this.jdbc = jdbc;
        this.transaction = transaction;
    }

    /** @return whether a file is not decided yet */
    boolean look(Folder folder, FolderWatch watch, long now, StationSettings settings) throws IOException {
        Map<String, FileRow> known = files.of(folder.station().share().id(), folder.name());
        Look look = new Look(folder, watch, now, settings, known);
        Map<String, FileRow> gone = new HashMap<>(known);
        boolean open = false;
        beside.early().begin(known.values().stream().filter(FileRow::isOpen).count());
        for (Path file : Listing.files(folder.path())) {
            String path = folder.pathOf(file);
            FileRow row = gone.remove(path);
            if (row == null || row.isOpen() || row.isMissing() || watch.isThorough()) {
                open |= file(look, file, path, row);
            }
        }
        gone.values().stream().filter(row -> !row.isMissing()).forEach(row -> files.missing(row, true));
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
        if (row.isMissing()) {
            files.missing(row, false);
        }
        return row.isOpen() && stillOpen(look, file, row);
    }

    private void arrived(Look look, String path, @Nullable FileRow row, Sighting seen) {
        look.watch().see(path, seen, look.now());
        look.watch().active(look.now());
        Folder folder = look.folder();
        act(() -> {
            Long stack = folder.isStack() ? (Long) beside.stacks().of(folder.station(), folder.name()) : null;
            if (row == null) {
                files.add(folder.station(), path, seen, stack);
            } else {
                files.changed(row, seen);
            }
        });
    }

    private boolean stillOpen(Look look, Path file, FileRow row) {
        FolderWatch watch = look.watch();
        watch.see(row.path(), row.seen(), look.now());
        if (!watch.settled(row.path(), look.now(), look.patience().settle())) {
            beside.early().look(row, file, look.settings().clocks());
            return true;
        }
        boolean open = !decided(look, file, row);
        if (!open) {
            watch.forget(row.path());
        } else if (row.isState("SEEN")) {
            act(() -> settled(look, row));
        }
        return open;
    }

    private void settled(Look look, FileRow row) {
        if (row.isState("SEEN")) {
            files.settled(row, look.watch().polls(row.path()));
        }
    }

    /** That it has settled and what it is are one change: in a burst the commits are what takes time. */
    private void decide(Look look, FileRow row, Runnable change) {
        act(() -> {
            settled(look, row);
            change.run();
        });
    }

    private boolean decided(Look look, Path file, FileRow row) {
        if (ManifestFile.is(file)) {
            return manifest(look, file, row);
        }
        Finding finding = Examination.of(file, row.seen());
        if (finding instanceof Finding.Whole whole) {
            accepted(look, row, whole);
            return true;
        }
        if (finding instanceof Finding.Refused refused) {
            decide(look, row, () -> files.setAside(row, "REJECTED", refused));
            return true;
        }
        boolean patienceOver =
                look.watch().unchanged(row.path(), look.now(), look.patience().grace());
        if (finding instanceof Finding.Incomplete incomplete && patienceOver) {
            decide(
                    look,
                    row,
                    () -> files.setAside(row, "INCOMPLETE", new Finding.Refused("INCOMPLETE", incomplete.reason())));
            return true;
        }
        return finding instanceof Finding.Raw && raw(look, file, row, patienceOver);
    }

    private boolean manifest(Look look, Path file, FileRow row) {
        Folder folder = look.folder();
        try {
            Runnable change = beside.manifests().change(file, row, folder.name(), !folder.isStack());
            decide(look, row, change);
            look.watch().active(look.now());
            return true;
        } catch (IOException e) {
            LOG.debug("{} cannot be read yet", file, e);
            return false;
        }
    }

    /** A raw file is kept beside the picture of the same capture; alone, once the picture had time to come, it is the frame. */
    private boolean raw(Look look, Path file, FileRow row, boolean patienceOver) {
        Optional<FileRow> picture = sibling(look, row, "");
        if (picture.isPresent()) {
            Optional<String> sha256 = Examination.hash(file, row.seen());
            sha256.ifPresent(hash -> decide(look, row, () -> files.keepRaw(row, hash, picture.get())));
            return sha256.isPresent();
        }
        return look.watch().unchanged(row.path(), look.now(), PICTURE_COMES_WITHIN)
                && rawAlone(look, row, Examination.ofRaw(file, row.seen()), patienceOver);
    }

    private boolean rawAlone(Look look, FileRow row, Finding finding, boolean patienceOver) {
        if (finding instanceof Finding.Whole whole) {
            accepted(look, row, whole);
            return true;
        }
        if (finding instanceof Finding.Refused refused) {
            rawRefused(look, row, refused.reason());
            return true;
        }
        if (finding instanceof Finding.Incomplete incomplete && patienceOver) {
            rawRefused(look, row, incomplete.reason());
            return true;
        }
        return false;
    }

    private void rawRefused(Look look, FileRow row, String why) {
        String reason = why + ". The file is taken in when its picture arrives";
        decide(look, row, () -> files.setAside(row, "REJECTED", new Finding.Refused(RAW_ALONE, reason)));
    }

    private void accepted(Look look, FileRow row, Finding.Whole whole) {
        decide(look, row, () -> {
            files.accept(row, whole, look.settings().clocks());
            sibling(look, row, RAW_ALONE).ifPresent(files::again);
            if (sibling(look, row, "")
                    .map(other -> files.preferPicture(row, other))
                    .orElse(true)) {
                beside.stacks().joined(row);
            }
        });
        look.watch().active(look.now());
    }

    /** @param code empty for an accepted picture, else the reason for which the other file was set aside */
    private static Optional<FileRow> sibling(Look look, FileRow row, String code) {
        return look.known().values().stream()
                .filter(other -> code.isEmpty()
                        ? other.isState("ACCEPTED") || other.isState("STRAY")
                        : other.standing().code().equals(code))
                .filter(other -> other.id() != row.id() && other.stem().equals(row.stem()))
                .findFirst();
    }

    private void act(Runnable change) {
        transaction.executeWithoutResult(t -> {
            Actor.acts(jdbc, "intake");
            change.run();
        });
    }
}
