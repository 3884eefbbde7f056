package org.stook.comparison.table;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The machine that figures were taken on. */
final class Machine {
    private Machine() {}

    static String describe() {
        return "%s, %d cores, %d GiB; Java %s (%s)"
                .formatted(
                        field("/proc/cpuinfo", "model name", "unknown processor"),
                        Runtime.getRuntime().availableProcessors(),
                        gibibytes(),
                        Runtime.version().feature(),
                        System.getProperty("java.vendor"));
    }

    private static long gibibytes() {
        return Long.parseLong(field("/proc/meminfo", "MemTotal", "0").replaceAll("[^0-9]", "")) >> 20;
    }

    private static String field(String file, String name, String otherwise) {
        try {
            return Files.readAllLines(Path.of(file)).stream()
                    .filter(line -> line.startsWith(name))
                    .map(line -> line.substring(line.indexOf(':') + 1).trim())
                    .findFirst()
                    .orElse(otherwise);
        } catch (IOException absent) {
            return otherwise;
        }
    }
}
