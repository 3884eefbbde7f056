package org.stook.comparison.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Runs a command and watches it through /proc (proc(5)), since a child's figures are gone once it has been waited for. */
final class MeasuredProcess {
    private static final int WATCH_MILLISECONDS = 10;
    /** Clock ticks a second in /proc/PID/stat: USER_HZ, 100 on every Linux of today. */
    private static final double TICKS = 100;

    private MeasuredProcess() {}

    /** @throws IOException if the command fails; the message ends with what it wrote to its log */
    static Usage run(List<String> command, Path log, Path collectorLog) throws IOException, InterruptedException {
        long start = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        double cpu = 0;
        double peak = 0;
        try {
            do {
                cpu = Math.max(cpu, cpuSeconds(process.pid()));
                peak = Math.max(peak, peakMebibytes(process.pid()));
            } while (!process.waitFor(WATCH_MILLISECONDS, TimeUnit.MILLISECONDS));
        } finally {
            process.destroy();
        }
        double wall = (System.nanoTime() - start) / 1e9;
        if (process.exitValue() != 0) {
            throw new IOException("%s ended with exit code %d: %s"
                    .formatted(String.join(" ", command), process.exitValue(), Files.readString(log)));
        }
        return new Usage(wall, cpu, peak, pauses(collectorLog));
    }

    /** Sum of the pauses in a log of -Xlog:gc, whose lines end like "Pause Young (Normal) 24M-&gt;4M(256M) 2.345ms". */
    private static double pauses(Path log) {
        double milliseconds = 0;
        for (String line : read(log).split("\n")) {
            if (!line.contains("Pause ") || !line.endsWith("ms")) continue;
            milliseconds += Double.parseDouble(line.substring(line.lastIndexOf(' ') + 1, line.length() - 2));
        }
        return milliseconds / 1000;
    }

    private static double cpuSeconds(long pid) {
        String stat = read(Path.of("/proc/" + pid + "/stat"));
        // The second field is the command in brackets and may hold blanks; utime and stime are fields 14 and 15.
        String[] fields = stat.substring(stat.lastIndexOf(')') + 1).trim().split(" ");
        return fields.length < 13 ? 0 : (Long.parseLong(fields[11]) + Long.parseLong(fields[12])) / TICKS;
    }

    private static double peakMebibytes(long pid) {
        for (String line : read(Path.of("/proc/" + pid + "/status")).split("\n")) {
            if (line.startsWith("VmHWM:")) return Long.parseLong(line.replaceAll("[^0-9]", "")) / 1024.0;
        }
        return 0;
    }

    /** Empty if the process has just gone. */
    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException gone) {
            return "";
        }
    }
}
