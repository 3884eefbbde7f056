package org.stook.tamper;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import org.stook.postgres.LocalPostgres;

/** An authority of another make, openssl, stamps the heads of a service and judges what it keeps of the stamps. */
final class Stamping {
    private static final String DATABASE = "stamped";
    private static final String TRUSTED = "--authority";

    private final Path home;
    private final Path kept;
    private final LocalPostgres postgres;
    private final Verify verify;

    Stamping(Path home, LocalPostgres postgres, Verify verify) {
        this.home = home;
        this.kept = Service.places(home, DATABASE);
        this.postgres = postgres;
        this.verify = verify;
    }

    void run(Path serviceJar, Report report) throws SQLException, IOException, InterruptedException {
        postgres.ensureDatabase(DATABASE);
        try (Authority authority = new Authority(home.resolve("authority"));
                Authority other = new Authority(home.resolve("other-authority"))) {
            Path token;
            try (Service service = new Service(
                    serviceJar, home, postgres, DATABASE, "--stook.audit.stamp.authority=" + authority.address())) {
                service.awaitSchema();
                Main.write(postgres, DATABASE, 10);
                token = firstStamp();
            }
            String head = headOf(token);
            report.check("openssl takes the stamp of a head", authority.takes(token, head));
            report.check("but for no other words", !authority.takes(token, head + " "));
            report.check("nor as another authority's", !other.takes(token, head));
            var theirs = verify.database(
                    DATABASE, kept, TRUSTED, authority.certificate().toString());
            report.say("nothing, stamped by openssl", theirs, List.of(), 0);
            report.check("verify says whose stamp it is", theirs.text().contains("by the clock of CN=Harrow-Time"));
            var others =
                    verify.database(DATABASE, kept, TRUSTED, other.certificate().toString());
            report.say("a stamp of another authority", others, List.of("not a stamp by the authority"), 3);
        }
    }

    private Path firstStamp() throws IOException, InterruptedException {
        Path folder = kept.resolve("stamps");
        while (true) {
            if (Files.isDirectory(folder)) {
                try (var files = Files.list(folder)) {
                    var stamp = files.filter(file -> file.toString().matches(".*/[0-9]+[.]tst"))
                            .min(Path::compareTo);
                    if (stamp.isPresent()) return stamp.get();
                }
            }
            Thread.sleep(200);
        }
    }

    /** The line of the head that it is of. */
    private String headOf(Path token) throws IOException {
        long size = Long.parseLong(String.valueOf(token.getFileName()).replace(".tst", ""));
        return Files.readAllLines(kept.resolve("heads.jsonl")).stream()
                .filter(line -> line.matches(".*\"size\":" + size + "[,}].*"))
                .findFirst()
                .orElseThrow(() -> new IOException("no head over " + size + " entries lies beside its stamp"));
    }
}
