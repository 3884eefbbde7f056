package org.stook.node.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.util.FileSystemUtils;
import org.stook.imaging.composite.CannotCompose;
import org.stook.imaging.composite.ComposeOrder;
import org.stook.imaging.composite.Composition;
import org.stook.imaging.composite.Recipe;
import org.stook.node.publish.Part;
import org.stook.node.publish.Publisher;
import org.stook.node.publish.Shares.Trouble;
import org.stook.orders.WorkOrder;
import org.stook.orders.attempt.Attempt;
import org.stook.orders.attempt.Outcome;

/** What the steps of one attempt's job do, with all that they hand on to each other. */
final class Steps implements AutoCloseable {
    private final Attempt attempt;
    private final Workshop workshop;
    private final Costs costs = new Costs();
    private final Reporting reporting;
    private final Path folder;
    private final Composition composition;
    private @Nullable Outcome outcome;

    /** @throws Ended if the settings make no sense */
    Steps(Attempt attempt, Workshop workshop) {
        this.attempt = attempt;
        this.workshop = workshop;
        this.reporting = new Reporting(attempt, costs);
        WorkOrder order = attempt.order();
        this.folder = workshop.scratch().resolve(order.run() + "." + order.attempt());
        List<Path> frames = new Frames(order, workshop.shares()).files();
        this.composition = new Composition(
                new ComposeOrder(frames, recipe(order), workshop.means().threads()), this::progress);
    }

    Attempt attempt() {
        return attempt;
    }

    void survey() throws IOException, CannotCompose {
        Files.createDirectories(folder);
        try {
            costs.imaging(composition::survey);
        } catch (IOException | CannotCompose e) {
            // A frame that is not what it was at intake is the better reason.
            costs.comparing(this::compare);
            throw e;
        }
        costs.comparing(this::compare);
    }

    private void compare() throws IOException {
        new Frames(attempt.order(), workshop.shares()).verify(workshop.means().threads(), reporting);
    }

    void register() throws IOException, CannotCompose {
        Optional<String> saved = attempt.savedPlacements();
        if (saved.isPresent() && composition.register(saved.get())) {
            attempt.tookPlacements();
        } else {
            costs.imaging(composition::register);
            attempt.savePlacements(composition.placements());
        }
    }

    void blend() throws IOException, CannotCompose {
        composition.keepProxies(finished().file(Part.REVIEW));
        costs.imaging(composition::blend);
    }

    void finish() throws IOException, CannotCompose {
        costs.imaging(this::write);
    }

    /** Called off between any two files: each takes up to a second, and all together longer than anyone wants to wait. */
    private void write() throws IOException, CannotCompose {
        Publisher.Finished files = finished();
        composition.finish(files.file(Part.MASTER), Optional.of(files.file(Part.PREVIEW)));
        reporting.at(Stage.FINISH, 0.4);
        composition.writeDerivatives(Optional.of(files.file(Part.DERIVATIVE)), Optional.of(files.file(Part.THUMBNAIL)));
        reporting.at(Stage.FINISH, 0.7);
        composition.writeMaps(Optional.of(files.file(Part.SOURCE_MAP)), Optional.empty());
        reporting.at(Stage.FINISH, 0.85);
        composition.writeMaps(Optional.empty(), Optional.of(files.file(Part.DEPTH_MAP)));
    }

    void score() throws IOException, CannotCompose {
        costs.imaging(this::judge);
        new PublicationRecord(attempt.order(), finished()).write(composition.report());
    }

    private void judge() throws IOException, CannotCompose {
        composition.score();
        reporting.at(Stage.SCORE, 0.3);
        composition.writeView(finished().file(Part.TILES), finished().file(Part.REVIEW));
    }

    void publish() throws IOException {
        Optional<Trouble> trouble = workshop.shares().trouble(attempt.order());
        if (trouble.isPresent()) {
            throw new Ended(Endings.handedBack(trouble.get()));
        }
        outcome = workshop.publisher().publish(attempt, finished());
    }

    void ended(Outcome how) {
        outcome = how;
    }

    Costs costs() {
        return costs;
    }

    /** How publishing ended, or how the attempt was called off; null if it did not come to either. */
    @Nullable
    Outcome outcome() {
        return outcome;
    }

    private Publisher.Finished finished() {
        return new Publisher.Finished(folder);
    }

    private void progress(String stage, double part) {
        reporting.at(Stage.valueOf(stage.toUpperCase(Locale.ROOT)), part);
    }

    private static Recipe recipe(WorkOrder order) {
        try {
            Recipe recipe = captioned(Recipe.parse(order.settings().json()), order.stack());
            Integer reference = order.stack().reference();
            return order.sweep().stream()
                    .filter(f -> reference != null && f.ordinal() == reference)
                    .findFirst()
                    .map(f ->
                            recipe.withReference(Path.of(f.path()).getFileName().toString()))
                    .orElse(recipe);
        } catch (IllegalArgumentException e) {
            throw new Ended(new Outcome.Failed(
                    "SETTINGS", "settings " + order.settings().id() + ": " + e.getMessage()));
        }
    }

    /** The subject is the picture's title, unless the settings say otherwise. */
    private static Recipe captioned(Recipe recipe, WorkOrder.Stack stack) {
        if (recipe.caption().title().isPresent()) return recipe;
        String title = stack.view() == null ? stack.subject() : stack.subject() + ", " + stack.view();
        return recipe.withCaption(recipe.caption().titled(title));
    }

    @Override
    public void close() {
        try {
            composition.close();
            FileSystemUtils.deleteRecursively(folder);
        } catch (IOException e) {
            // Cleared when the process ends or, failing that, when the next one starts.
        }
    }
}
