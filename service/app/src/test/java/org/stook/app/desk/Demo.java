package org.stook.app.desk;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.app.stack.Sealing;

/** An invented studio's queue: one published, one waiting, one running, one failed. */
final class Demo {
    private static final String HASH = "ab".repeat(32);
    private static final String SCORE = """
            {"total": 96, "verdict": "ACCEPT", "parts": [{"name": "sharpness", "value": 0.93, "unit": "of the subject",
             "points": 48, "verdict": "ACCEPT", "sentence": "Sharp from front to back."}]}""";

    private Demo() {}

    static void fill(JdbcClient jdbc, Sealing sealing) {
        for (String subject : new String[] {"Banded agate", "Balance wheel 12", "Pyrite cube", "Fluorite"}) {
            arrive(jdbc, subject);
        }
        for (long stack = 1; stack <= 4; stack++) sealing.seal(stack, "intake");
        jdbc.sql("insert into stook.worker (id, host, pid, version, schema_min, schema_max)"
                        + " values ('w1', 'north-pc', 7, '0.1.0', 7, 7)")
                .update();
        claim(jdbc, 1);
        publish(jdbc, 1, HASH);
        claim(jdbc, 3);
        at(jdbc, 3, "register", 0.42);
        claim(jdbc, 4);
        jdbc.sql("update stook.run set state = 'FAILED', reason_code = 'CANNOT_REGISTER',"
                        + " reason_text = 'frame 3 is out of line' where id = 4")
                .update();
    }

    /** Four frames of a stack that is still open. */
    static void arrive(JdbcClient jdbc, String subject) {
        jdbc.sql("insert into stook.stack (station_id, subject, folder) values (1, ?, ?)")
                .params(subject, subject)
                .update();
        for (int i = 0; i < 4; i++) frame(jdbc, subject, i);
    }

    /** What a worker says of its progress. */
    static void at(JdbcClient jdbc, long run, String stage, double fraction) {
        jdbc.sql("update stook.run set stage = ?, fraction = ? where id = ?")
                .params(stage, fraction, run)
                .update();
    }

    /** A claimed run ends well; its preview is that of the first. */
    static void publish(JdbcClient jdbc, long run, String hash) {
        String name = "agate/" + run + ".tif";
        jdbc.sql("update stook.run set state = 'PUBLISHING', result_sha256 = ?, result_name = ? where id = ?")
                .params(hash, name, run)
                .update();
        jdbc.sql("update stook.run set state = 'PUBLISHED', score = cast(? as jsonb), verdict = 'ACCEPT' where id = ?")
                .params(SCORE, run)
                .update();
        jdbc.sql(
                        "insert into stook.publication (run_id, attempt, stack_id, share_id, name, sha256, bytes, engine_version, files)"
                                + " select r.id, 1, r.stack_id, h.id, ?, ?, 12345678, '0.1.0', cast(? as jsonb)"
                                + " from stook.share h, stook.run r where h.kind = 'PUBLISH' and r.id = ?")
                .params(
                        name,
                        hash,
                        "[{\"name\": \"agate/1.preview.jpg\", \"kind\": \"preview\"},"
                                + " {\"name\": \"agate/1.json\", \"kind\": \"record\"}]",
                        run)
                .update();
    }

    private static void frame(JdbcClient jdbc, String subject, int number) {
        String hash = "%064x".formatted(subject.hashCode() * 31L + number & Long.MAX_VALUE);
        jdbc.sql(
                        "insert into stook.frame (sha256, bytes, format, width, height, bits) values (?, 900000, 'tiff', 1200, 900, 16)")
                .param(hash)
                .update();
        long file = jdbc.sql(
                        "insert into stook.intake_file (share_id, station_id, rel_path, size_bytes, mtime_ns, stack_id)"
                                + " select intake_share_id, id, ?, 900000, 1, (select id from stook.stack where subject = ?)"
                                + " from stook.station returning id")
                .params(subject + "/" + number + ".tif", subject)
                .query(Long.class)
                .single();
        jdbc.sql("update stook.intake_file set state = 'STABLE' where id = ?")
                .param(file)
                .update();
        jdbc.sql("update stook.intake_file set state = 'ACCEPTED', sha256 = ? where id = ?")
                .params(hash, file)
                .update();
    }

    static void claim(JdbcClient jdbc, long run) {
        jdbc.sql("update stook.run set state = 'RUNNING', attempt = attempt + 1, worker_id = 'w1' where id = ?")
                .param(run)
                .update();
        jdbc.sql("insert into stook.attempt (run_id, n, worker_id, engine_version) values (?, 1, 'w1', '0.1.0')")
                .param(run)
                .update();
    }
}
