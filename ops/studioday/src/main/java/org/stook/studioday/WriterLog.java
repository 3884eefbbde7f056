package org.stook.studioday;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.AtomicInteger;

/** What was written: of every file all contents it ever had in full, and the last one. */
final class WriterLog {
    private final Map<String, String> last = new ConcurrentSkipListMap<>();
    private final Map<String, Set<String>> ever = new ConcurrentSkipListMap<>();
    private final AtomicInteger writes = new AtomicInteger();

    void wrote(String path, byte[] content) {
        String sha256 = sha256(content);
        last.put(path, sha256);
        ever.computeIfAbsent(path, p -> ConcurrentHashMap.newKeySet()).add(sha256);
        writes.incrementAndGet();
    }

    Map<String, String> last() {
        return new TreeMap<>(last);
    }

    boolean had(String path, String sha256) {
        return ever.getOrDefault(path, Set.of()).contains(sha256);
    }

    int files() {
        return last.size();
    }

    int writes() {
        return writes.get();
    }

    static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
