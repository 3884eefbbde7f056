package org.stook.app.archive.bag;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.app.archive.bag.Dossier.FrameFile;
import org.stook.app.audit.AuditTrail;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Lays out the bags of packages that are ready. */
@Component
public class Bags {
    private final JdbcClient jdbc;
    private final Dossiers dossiers;
    private final Digests digests;

    Bags(JdbcClient jdbc, Dossiers dossiers, Digests digests) {
        this.jdbc = jdbc;
        this.dossiers = dossiers;
        this.digests = digests;
    }

    /** What is in a bag and under which name it is handed out. */
    public record Laid(String fileName, Tar tar) {}

    /**
     * @param order a package that is READY
     * @param address of this service, with scheme and port, for frames that are to be fetched
     */
    public Laid of(Packages.Package order, String address) {
        long until = jdbc.sql("select audit_until from stook.package where id = :id")
                .param("id", order.id())
                .query(Long.class)
                .single();
        boolean single = order.runs().size() == 1;
        String root = single ? "stook-run-" + order.runs().get(0) : "stook-package-" + order.id();
        Bag bag = new Bag(root);
        Instant newest = Instant.EPOCH;
        String title = order.runs().size() + " publications";
        for (long run : order.runs()) {
            Dossier dossier = dossiers.of(run, until).orElseThrow();
            pack(bag, dossier, single ? "" : dossier.head().folder() + "/", new Wish(order, until, address));
            if (dossier.head().publishedAt().isAfter(newest))
                newest = dossier.head().publishedAt();
            if (single) title = dossier.head().title() + ", run " + run;
        }
        List<Map.Entry<String, String>> info = List.of(
                Map.entry("Bag-Software-Agent", "Stook"),
                Map.entry(
                        "Bagging-Date",
                        LocalDate.ofInstant(order.createdAt(), ZoneOffset.UTC).toString()),
                Map.entry("External-Description", title + "; composites of focus brackets"),
                Map.entry("External-Identifier", root),
                Map.entry("Internal-Sender-Description", frames(order.frames())));
        return new Laid(root + ".tar", Tar.of(bag.entries(info), newest));
    }

    private static String frames(Frames frames) {
        return switch (frames) {
            case NAMED -> "the original frames are named with their hashes, they are not in the bag";
            case INCLUDED -> "the original frames are in the bag";
            case FETCH -> "the original frames are to be fetched as fetch.txt says";
        };
    }

    /** What is wanted of every publication. */
    private record Wish(Packages.Package order, long auditUntil, String address) {}

    private void pack(Bag bag, Dossier dossier, String folder, Wish wish) {
        Map<String, String> known = digests.known(Stream.concat(
                        dossier.files().stream().map(Dossier.Published::sha256),
                        dossier.frames().stream().map(FrameFile::sha256))
                .toList());
        dossier.files()
                .forEach(file -> bag.add(
                        folder + file.place(),
                        new Content.Stored(file.path(), file.bytes(), sure(known.get(file.sha256())))));
        long run = dossier.head().run();
        boolean inBag = wish.order().frames() != Frames.NAMED;
        String place = "data/" + folder;
        Premis.Places places = new Premis.Places(place, inBag, frames(dossier, inBag ? place : ""));
        bag.add(
                folder + "premis.xml",
                Content.Made.of(
                        () -> Premis.of(dossiers.of(run, wish.auditUntil()).orElseThrow(), places)));
        bag.add(folder + "audit.jsonl", Content.Made.of(() -> audit(run, wish.auditUntil())));
        additions(bag, folder, wish.order().id(), run);
        for (FrameFile frame : dossier.frames()) {
            if (wish.order().frames() == Frames.INCLUDED) {
                bag.add(
                        folder + frame.place(),
                        new Content.Stored(frame.path(), frame.bytes(), sure(known.get(frame.sha256()))));
            } else if (wish.order().frames() == Frames.FETCH) {
                String url = wish.address() + "/api/archive/frames/" + frame.sha256();
                bag.fetch(folder + frame.place(), url, frame.bytes(), sure(known.get(frame.sha256())));
            }
        }
    }

    /** @param folder of the frames in the bag; empty if they are not in it */
    private static UnaryOperator<String> frames(Dossier dossier, String folder) {
        Map<String, String> places = new TreeMap<>();
        for (FrameFile frame : dossier.frames()) {
            places.putIfAbsent(
                    frame.sha256(), folder.isEmpty() ? frame.share() + ": " + frame.name() : folder + frame.place());
        }
        return sha256 -> places.getOrDefault(sha256, "");
    }

    private void additions(Bag bag, String folder, long order, long run) {
        List<String> names = jdbc.sql(
                        "select name from stook.package_file where package_id = :id and run_id = :run order by name")
                .param("id", order)
                .param("run", run)
                .query(String.class)
                .list();
        for (String name : names) {
            bag.add(
                    folder + name,
                    Content.Made.of(() -> jdbc.sql(
                                    "select body from stook.package_file where package_id = :id and run_id = :run and name = :name")
                            .param("id", order)
                            .param("run", run)
                            .param("name", name)
                            .query(byte[].class)
                            .single()));
        }
    }

    private byte[] audit(long run, long until) {
        StringBuilder lines = new StringBuilder();
        for (AuditTrail.Entry act : dossiers.of(run, until).orElseThrow().acts()) {
            ObjectNode line = JsonMapper.shared().createObjectNode();
            line.put("id", act.id()).put("at", act.at().toString()).put("actor", act.actor());
            line.put("kind", act.kind()).put("subject", act.subject());
            line.set("body", JsonMapper.shared().readTree(act.body()));
            lines.append(line).append('\n');
        }
        return lines.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String sure(@Nullable String sha512) {
        if (sha512 == null)
            throw new IllegalStateException("the package is ready, but one of its files has no SHA-512");
        return sha512;
    }
}
