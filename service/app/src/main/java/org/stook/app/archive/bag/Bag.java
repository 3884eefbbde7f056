package org.stook.app.archive.bag;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/**
 * A bag (RFC 8493, BagIt 1.0) with SHA-512 manifests. Paths hold letters, digits, dots, dashes, underscores and slashes only, so
 * nothing of section 2.1.3 needs encoding.
 */
final class Bag {
    /** A file that is listed but has to be fetched (section 2.2.3). */
    record Fetched(String path, String url, long length, String sha512) {}

    private static final String DECLARATION = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";

    private final String root;
    private final List<Tar.Entry> payload = new ArrayList<>();
    private final List<Fetched> fetched = new ArrayList<>();

    /** @param root the one folder that everything lies in (section 4) */
    Bag(String root) {
        this.root = root;
    }

    /** @param path below the payload folder */
    void add(String path, Content content) {
        payload.add(new Tar.Entry("data/" + path, content));
    }

    /** @param path below the payload folder */
    void fetch(String path, String url, long length, String sha512) {
        fetched.add(new Fetched("data/" + path, url, length, sha512));
    }

    /**
     * Tag files first, so that a reader knows what comes.
     *
     * @param info labels and values of bag-info.txt, in order; the payload's size is added
     */
    List<Tar.Entry> entries(List<Map.Entry<String, String>> info) {
        List<Tar.Entry> tags = new ArrayList<>();
        tags.add(text("bagit.txt", DECLARATION));
        tags.add(text("bag-info.txt", info(info)));
        tags.add(text("manifest-sha512.txt", manifest()));
        if (!fetched.isEmpty()) tags.add(text("fetch.txt", fetchList()));
        tags.add(text("tagmanifest-sha512.txt", manifest(tags)));
        List<Tar.Entry> all = new ArrayList<>();
        tags.forEach(tag -> all.add(new Tar.Entry(root + "/" + tag.path(), tag.content())));
        payload.forEach(file -> all.add(new Tar.Entry(root + "/" + file.path(), file.content())));
        return all;
    }

    private String info(List<Map.Entry<String, String>> info) {
        long bytes = payload.stream().mapToLong(e -> e.content().length()).sum()
                + fetched.stream().mapToLong(Fetched::length).sum();
        StringBuilder lines = new StringBuilder();
        info.forEach(line -> lines.append(line.getKey())
                .append(": ")
                .append(line.getValue().replaceAll("\\s+", " "))
                .append('\n'));
        lines.append("Payload-Oxum: ").append(bytes).append('.').append(payload.size() + fetched.size());
        return lines.append('\n').toString();
    }

    private String manifest() {
        List<Tar.Entry> all = new ArrayList<>(payload);
        String listed = manifest(all);
        StringBuilder lines = new StringBuilder(listed);
        fetched.forEach(file ->
                lines.append(file.sha512()).append("  ").append(file.path()).append('\n'));
        return lines.toString();
    }

    private static String manifest(List<Tar.Entry> files) {
        StringBuilder lines = new StringBuilder();
        files.forEach(file -> lines.append(file.content().sha512())
                .append("  ")
                .append(file.path())
                .append('\n'));
        return lines.toString();
    }

    private String fetchList() {
        StringBuilder lines = new StringBuilder();
        fetched.stream()
                .sorted(Comparator.comparing(Fetched::path))
                .forEach(file -> lines.append(file.url())
                        .append(' ')
                        .append(file.length())
                        .append(' ')
                        .append(file.path())
                        .append('\n'));
        return lines.toString();
    }

    private static Tar.Entry text(String path, String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        return new Tar.Entry(path, Content.Made.of(() -> bytes));
    }
}
