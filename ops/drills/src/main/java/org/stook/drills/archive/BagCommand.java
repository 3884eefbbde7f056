package org.stook.drills.archive;

import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.LongStream;
import org.stook.drills.stage.Service;
import org.stook.drills.stage.Stage;
import org.stook.orders.RunId;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Fetches a very large bag and watches the service's memory meanwhile. */
@Command(
        name = "bag",
        mixinStandardHelpOptions = true,
        description =
                "Publishes large files, has them packed as one bag, fetches it, and watches the memory of the service:"
                        + " it may not grow with the bag. A second fetch begins in the middle and has to end with the same bytes.")
public final class BagCommand implements Callable<Integer> {
    private static final long MIB = 1L << 20;
    private static final long ALLOWED = 64 * MIB;

    @Option(names = "--gigabytes", defaultValue = "10", description = "size of the bag (${DEFAULT-VALUE})")
    private int gigabytes;

    @Option(names = "--files", defaultValue = "20", description = "publications in it (${DEFAULT-VALUE})")
    private int files;

    @Option(names = "--port", defaultValue = "18472", description = "of the service (${DEFAULT-VALUE})")
    private int port;

    @Override
    public Integer call() throws Exception {
        Path work = Path.of(System.getProperty("stook.drills.work")).resolve("bag");
        try (Stage stage = Stage.open(work, new Stage.Plan(240, 160, false))) {
            publish(stage, gigabytes * 1_000_000_000L / files);
            System.err.println("the files are laid out; the service starts");
            // A small heap, so that what is held would show soon.
            List<String> options = List.of("-Xmx192m", "-XX:+UseSerialGC");
            try (Service service = new Service(stage, port, options, true)) {
                return fetch(stage, service);
            }
        }
    }

    /** Masters with holes: as many bytes as wanted, next to no disk. Each differs at its end. */
    private void publish(Stage stage, long bytes) throws Exception {
        for (RunId run : stage.orderMinerals(files)) {
            Path master = stage.wall().resolve("f/" + run + ".tif");
            Files.createDirectories(master.getParent());
            try (RandomAccessFile file = new RandomAccessFile(master.toFile(), "rw")) {
                file.setLength(bytes);
                file.seek(bytes - 8);
                file.writeLong(run.value());
            }
            Published.note(stage, run, "f/" + run + ".tif", bytes, sha256(master));
        }
    }

    private static String sha256(Path file) throws Exception {
        MessageDigest digest = MessageDigest.getInstance("SHA-256");
        try (InputStream in = Files.newInputStream(file)) {
            byte[] buffer = new byte[1 << 20];
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) digest.update(buffer, 0, n);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private int fetch(Stage stage, Service service) throws Exception {
        String order = order(service);
        Memory memory = new Memory(service.pid());
        long quiet = memory.settled();
        Transfer whole = Transfer.of(service, order + "/bag.tar", 0, memory);
        long middle = whole.length() / 2 + 12345;
        Transfer half = Transfer.of(service, order + "/bag.tar", middle, memory);
        boolean same = half.digest().equals(whole.digestFrom(middle));
        long grown = memory.highest() - quiet;
        System.out.printf(
                "bag of %.2f GB with %d masters; first byte after %.1f s, whole in %.0f s, %.0f MB/s%n",
                whole.length() / 1e9,
                files,
                whole.firstByte(),
                whole.seconds(),
                whole.length() / 1e6 / whole.seconds());
        System.out.printf(
                "service: %.0f MiB resident before, at most %.0f MiB while it sent (%+.0f MiB, allowed +%d)%n",
                quiet / (double) MIB, memory.highest() / (double) MIB, grown / (double) MIB, ALLOWED / MIB);
        System.out.printf("fetched again from byte %d: the same bytes: %s%n", middle, same ? "yes" : "NO");
        return same && grown < ALLOWED ? 0 : 2;
    }

    private String order(Service service) throws IOException, InterruptedException {
        StringBuilder query = new StringBuilder("/api/archive/packages?frames=named");
        LongStream.rangeClosed(1, files).forEach(run -> query.append("&run=").append(run));
        HttpResponse<String> answer = service.client()
                .send(
                        service.request(query.toString())
                                .POST(java.net.http.HttpRequest.BodyPublishers.noBody())
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
        String place = answer.headers().firstValue("Location").orElseThrow(() -> new IOException(answer.body()));
        while (true) {
            HttpResponse<String> state =
                    service.client().send(service.request(place).build(), HttpResponse.BodyHandlers.ofString());
            if (state.body().contains("\"READY\"")) return place;
            if (state.body().contains("\"FAILED\"")) throw new IOException(state.body());
            Thread.sleep(500);
        }
    }
}
