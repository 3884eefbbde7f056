package org.stook.app.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.DependsOn;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.app.station.StationBook;

/** The stations as configured, each with a row of its own and of its share. */
@Component
@DependsOn("migrated")
class Stations {
    /** A station and the share its frames arrive on; its stacks' folders lie at the share's root. */
    record Station(long id, String name, Shares.Share share) {}

    private final List<Station> all;
    private final Shares.@Nullable Share publish;

    Stations(IntakeSettings settings, Shares shares, StationBook book, TransactionOperations transaction) {
        Path root = settings.publish();
        this.publish = root == null
                ? null
                : transaction.execute(t -> shares.ensure("publish", "PUBLISH", root.toAbsolutePath()));
        Long publishId = publish == null ? null : publish.id();
        this.all = settings.stations().stream()
                .map(plan -> Objects.requireNonNull(transaction.execute(t -> {
                    Shares.Share share = shares.ensure(
                            "intake " + plan.name(), "INTAKE", plan.intake().toAbsolutePath());
                    return new Station(shares.station(plan.name(), share.id(), publishId), plan.name(), share);
                })))
                .toList();
        settings.stations().stream().filter(plan -> plan.settings() != null).forEach(plan -> take(plan, book));
    }

    private void take(IntakeSettings.StationPlan plan, StationBook book) {
        Path file = Objects.requireNonNull(plan.settings());
        long id = all.stream()
                .filter(s -> s.name().equals(plan.name()))
                .findFirst()
                .orElseThrow()
                .id();
        try {
            book.change(id, Files.readString(file), "from " + file.getFileName(), "the settings file");
        } catch (IOException | IllegalArgumentException e) {
            throw new IllegalStateException(
                    "the settings of station %s in %s cannot be taken: %s".formatted(plan.name(), file, e.getMessage()),
                    e);
        }
    }

    List<Station> all() {
        return all;
    }

    Shares.@Nullable Share publish() {
        return publish;
    }
}
