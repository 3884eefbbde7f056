package org.stook.app.archive.bag;

import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import org.stook.app.archive.bag.Dossier.FrameFile;
import org.stook.app.archive.bag.Dossier.Published;
import org.stook.app.audit.AuditTrail.Entry;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * What was done, in PREMIS 3.0 (Library of Congress, schema of 18 January 2016): the composite as intellectual entity, its files
 * and its frames as objects; capture, hashing, making and judging as events for the package as a whole, then every audit entry;
 * the software and the people as agents.
 */
final class Premis {
    private static final String SHA256 = "SHA-256";

    /**
     * Where things lie.
     *
     * @param folder of the publication in the bag, with a slash at its end
     * @param framesInBag whether the frames are in the bag
     * @param frames from the SHA-256 of a frame to where in the bag it is, or else to its share and name
     */
    record Places(String folder, boolean framesInBag, UnaryOperator<String> frames) {}

    private final Dossier dossier;
    private final Places places;
    private final PremisWriter xml = new PremisWriter();

    private Premis(Dossier dossier, Places places) {
        this.dossier = dossier;
        this.places = places;
    }

    static byte[] of(Dossier dossier, Places places) {
        return new Premis(dossier, places).write();
    }

    private byte[] write() {
        entity();
        dossier.files().forEach(this::published);
        dossier.frames().forEach(this::frame);
        capture();
        hashing();
        creation();
        judgement();
        dossier.acts().forEach(this::act);
        agents();
        return xml.finish();
    }

    private void entity() {
        xml.object("intellectualEntity", () -> {
            xml.pair("objectIdentifier", "Stook run", "run/" + dossier.head().run());
            xml.significant("subject", dossier.head().title());
            xml.significant("station", dossier.head().station());
            xml.text("originalName", dossier.head().title());
        });
    }

    private void published(Published file) {
        xml.object("file", () -> {
            xml.pair("objectIdentifier", SHA256, file.sha256());
            xml.significant("kind", file.kind());
            xml.characteristics(
                    new PremisWriter.Fixed(file.sha256(), file.bytes(), file.mediaType()),
                    dossier.head().engineVersion());
            xml.text("originalName", String.valueOf(file.path().getFileName()));
            xml.storage("bag", places.folder() + file.place());
            xml.relation(
                    "structural",
                    "is part of",
                    "Stook run",
                    List.of("run/" + dossier.head().run()));
            if (file.kind().equals("master")) xml.relation("derivation", "has source", SHA256, swept());
        });
    }

    private void frame(FrameFile frame) {
        xml.object("file", () -> {
            xml.pair("objectIdentifier", SHA256, frame.sha256());
            xml.significant("role", frame.role().toLowerCase(java.util.Locale.ROOT));
            xml.characteristics(new PremisWriter.Fixed(frame.sha256(), frame.bytes(), frame.mediaType()), null);
            xml.text("originalName", frame.name());
            xml.storage(
                    places.framesInBag() ? "bag" : "share and name",
                    places.frames().apply(frame.sha256()));
        });
    }

    private List<String> swept() {
        return dossier.frames().stream()
                .filter(f -> f.role().equals("SWEEP"))
                .map(FrameFile::sha256)
                .distinct()
                .toList();
    }

    private List<String> frames() {
        return dossier.frames().stream().map(FrameFile::sha256).distinct().toList();
    }

    private void capture() {
        List<String> times = dossier.frames().stream()
                .map(FrameFile::capturedAt)
                .filter(Objects::nonNull)
                .sorted()
                .map(t -> DateTimeFormatter.ISO_LOCAL_DATE_TIME.format(t.truncatedTo(ChronoUnit.SECONDS)))
                .toList();
        if (times.isEmpty()) return;
        // An EDTF interval, in the camera's own time, which has no zone.
        String when = times.get(0) + "/" + times.get(times.size() - 1);
        event("capture", "capture", when, "by the camera's own clock; the zone is not on record", () -> {
            xml.linkObjects(SHA256, frames(), "outcome");
        });
    }

    private void hashing() {
        dossier.frames().stream()
                .map(FrameFile::hashedAt)
                .max(java.util.Comparator.naturalOrder())
                .ifPresent(last -> {
                    event(
                            "hashing",
                            "message digest calculation",
                            last.toString(),
                            "SHA-256 of every frame on arrival",
                            () -> {
                                xml.linkAgent("Stook", "executing program");
                                xml.linkObjects(SHA256, frames(), "source");
                            });
                });
    }

    private void creation() {
        Dossier.Head head = dossier.head();
        String detail = "composite of %d frames with the settings %s: %s"
                .formatted(swept().size(), head.settingsId(), head.settings());
        event("creation", "creation", head.publishedAt().toString(), detail, () -> {
            xml.linkAgent("Stook", "executing program");
            if (head.worker() != null) xml.linkAgent("worker:" + head.worker(), "implementer");
            xml.linkObjects(SHA256, swept(), "source");
            xml.linkObjects(
                    SHA256,
                    dossier.files().stream().map(Published::sha256).distinct().toList(),
                    "outcome");
        });
    }

    private void judgement() {
        Dossier.Head head = dossier.head();
        if (head.score() == null) return;
        JsonNode score = JsonMapper.shared().readTree(head.score());
        xml.event(
                "run/" + head.run() + "/validation",
                "validation",
                head.publishedAt().toString(),
                () -> {
                    xml.detail("the composite was measured against its own frames");
                    StringBuilder note =
                            new StringBuilder("score " + score.path("total").asInt() + " of 100");
                    score.path("parts")
                            .forEach(part -> note.append("; ")
                                    .append(part.path("sentence").asString("")));
                    xml.outcome(String.valueOf(head.verdict()), note.toString());
                    xml.linkAgent("Stook", "executing program");
                    xml.linkObjects(SHA256, List.of(dossier.files().get(0).sha256()), "source");
                });
    }

    private void act(Entry act) {
        xml.event("audit/" + act.id(), act.kind(), act.at().toString(), () -> {
            xml.detail(act.subject() + " " + act.body());
            xml.linkAgent(act.actor(), "implementer");
            xml.linkObjects("Stook run", List.of("run/" + dossier.head().run()), "source");
        });
    }

    private void event(String id, String type, String time, String detail, Runnable links) {
        xml.event("run/" + dossier.head().run() + "/" + id, type, time, () -> {
            xml.detail(detail);
            links.run();
        });
    }

    private void agents() {
        xml.agent("Stook", "software", dossier.head().engineVersion());
        TreeSet<String> actors = new TreeSet<>();
        dossier.acts().forEach(act -> actors.add(act.actor()));
        if (dossier.head().worker() != null)
            actors.add("worker:" + dossier.head().worker());
        actors.remove("Stook");
        for (String actor : actors) {
            boolean program = actor.matches("(worker|database|service):?.*|intake|upkeep|queue");
            xml.agent(actor, program ? "software" : "person", null);
        }
    }
}
