package org.stook.node.publish;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.util.FileSystemUtils;
import org.stook.orders.WorkOrder;
import org.stook.orders.attempt.Attempt;
import org.stook.orders.attempt.Outcome;
import org.stook.orders.attempt.PublishedResult;
import org.stook.orders.attempt.StagedResult;
import org.stook.orders.attempt.Standing;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Publishes a composite exactly once, whatever dies on the way: copy to the staging folder, force, read back and hash, pass
 * the fence, rename, read back again, make official. Before the fence nothing anyone looks at has changed; after it, this
 * attempt or the next one finishes without computing again.
 */
public final class Publisher {
    private static final Logger LOG = LoggerFactory.getLogger(Publisher.class);
    private static final JsonMapper JSON = JsonMapper.builder().build();

    /** @param folder on the local disk, with everything that was composed */
    public record Finished(Path folder) {
        public Path file(Part part) {
            return folder.resolve(part.kind() + part.ending());
        }
    }

    private final Shares shares;

    public Publisher(Shares shares) {
        this.shares = shares;
    }

    /** Publishes what this attempt composed. */
    public Outcome publish(Attempt attempt, Finished finished) throws IOException {
        WorkOrder order = attempt.order();
        String sha256 = Durable.sha256(finished.file(Part.MASTER));
        Bundle bundle = bundle(
                order, new StagedResult(order.stagedName(), order.finalName(sha256, Part.MASTER.ending()), sha256));
        stageAll(bundle, finished);
        Failpoint.hit("after-staged");
        Standing standing = attempt.publishing(bundle.names());
        if (standing != Standing.VALID) {
            discard(bundle);
            return standing == Standing.CANCEL ? new Outcome.Cancelled() : new Outcome.LeaseLost();
        }
        Failpoint.hit("after-fence");
        return place(attempt, bundle);
    }

    /**
     * Publishes what an earlier attempt staged.
     *
     * @return empty if it is not all there any more: compute again
     */
    public Optional<Outcome> takeOver(Attempt attempt, StagedResult staged) throws IOException {
        Bundle bundle = bundle(attempt.order(), staged);
        for (Part part : Part.values()) {
            if (!Files.exists(bundle.found(part))) {
                return Optional.empty();
            }
        }
        if (!Durable.sha256(bundle.found(Part.MASTER)).equals(staged.sha256())) {
            return Optional.empty();
        }
        LOG.info(
                "run {}: publishing what an earlier attempt staged",
                attempt.order().run());
        return Optional.of(place(attempt, bundle));
    }

    private Bundle bundle(WorkOrder order, StagedResult names) {
        return new Bundle(shares.root(order.share(order.output().shareId())), names);
    }

    private static void stageAll(Bundle bundle, Finished finished) throws IOException {
        try {
            stage(bundle, finished);
        } catch (IOException e) {
            discard(bundle);
            throw e;
        }
    }

    private static void stage(Bundle bundle, Finished finished) throws IOException {
        for (Part part : Part.values()) {
            Path from = finished.file(part);
            Path to = bundle.staged(part);
            if (part.contents().isPresent()) {
                Durable.copyFolder(from, to);
                continue;
            }
            Durable.copy(from, to);
            String expected = part == Part.MASTER ? bundle.names().sha256() : Durable.sha256(from);
            if (!Durable.sha256(to).equals(expected)) {
                throw new IOException(to + " reads back other than it was written");
            }
        }
        Durable.forceFolder(Durable.parent(bundle.staged(Part.MASTER)));
    }

    private Outcome place(Attempt attempt, Bundle bundle) throws IOException {
        for (Part part : Part.values()) {
            place(bundle.staged(part), bundle.placed(part));
        }
        // Unmounted on the way, the share's mount point took it all without a word. The reading below is of the share
        // again.
        WorkOrder order = attempt.order();
        Optional<Shares.Trouble> gone =
                shares.absence(order.share(order.output().shareId()));
        if (gone.isPresent()) {
            throw new IOException(gone.get().sentence());
        }
        String found = Durable.sha256(bundle.placed(Part.MASTER));
        if (!found.equals(bundle.names().sha256())) {
            throw new IOException(bundle.placed(Part.MASTER) + " has hash " + found + ", expected "
                    + bundle.names().sha256());
        }
        Failpoint.hit("after-moved");
        return attempt.published(result(bundle)) == Standing.VALID ? new Outcome.Published() : new Outcome.LeaseLost();
    }

    private static void place(Path staged, Path placed) throws IOException {
        try {
            Durable.rename(staged, placed);
        } catch (IOException e) {
            // A network file system may have renamed and lost the answer, or another attempt was here before.
            if (!Files.exists(placed)) {
                throw e;
            }
            if (Files.isDirectory(staged)) {
                FileSystemUtils.deleteRecursively(staged);
            }
        }
    }

    private static PublishedResult result(Bundle bundle) throws IOException {
        ArrayNode files = JSON.createArrayNode();
        for (Part part : Part.values()) {
            if (part == Part.MASTER) continue;
            ObjectNode file = files.addObject();
            Path recorded = part.recorded(bundle.placed(part));
            file.put(
                    "name", part.recorded(Path.of(bundle.name(part))).toString().replace('\\', '/'));
            file.put("sha256", Durable.sha256(recorded));
            file.put("bytes", Files.size(recorded));
            file.put("kind", part.kind());
        }
        JsonNode score =
                JSON.readTree(Files.readString(bundle.placed(Part.RECORD))).path("score");
        return new PublishedResult(
                Files.size(bundle.placed(Part.MASTER)),
                files.toString(),
                score.isObject() ? score.toString() : null,
                score.path("verdict").isString() ? score.path("verdict").stringValue() : null);
    }

    /** Before the fence nobody else knows of these files. */
    private static void discard(Bundle bundle) {
        for (Part part : Part.values()) {
            try {
                FileSystemUtils.deleteRecursively(bundle.staged(part));
            } catch (IOException e) {
                LOG.warn("{} stays behind: {}", bundle.staged(part), e.toString());
            }
        }
    }
}
