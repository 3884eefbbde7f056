package org.stook.drills.drill;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.stook.drills.stage.Material;
import org.stook.drills.stage.Slot;
import org.stook.drills.stage.Stage;
import org.stook.orders.Priorities;

/** What drills order, and what must come of it. */
final class Castings {
    private Castings() {}

    /** So many runs of whole stacks: each must be published. */
    static class EachPublished implements Drill.Casting {
        @Override
        public void order(Stage stage, int runs, Random random) throws Exception {
            stage.orderMinerals(runs);
        }

        @Override
        public List<String> verdict(Stage stage) {
            return others(stage, "state <> 'PUBLISHED' or " + wrong());
        }

        /** What else may be true of no run; SQL. */
        String wrong() {
            return "false";
        }
    }

    static List<String> others(Stage stage, String which) {
        return stage.jdbc()
                .sql(
                        "select 'run/' || id || ' is ' || state || ': ' || coalesce(reason_code || ': ' || reason_text, '')"
                                + " from stook.run where " + which + " order by id")
                .query(String.class)
                .list();
    }

    /** The same where the workers break by themselves and say so. */
    static final class Pointed extends EachPublished {
        @Override
        public int ownFaults(Stage stage) throws IOException {
            Map<String, Integer> points = points(stage);
            points.forEach((point, count) -> System.err.printf("%5d  %s%n", count, point));
            return points.values().stream().mapToInt(Integer::intValue).sum();
        }

        /** How often which point was it. */
        static Map<String, Integer> points(Stage stage) throws IOException {
            Map<String, Integer> points = new TreeMap<>();
            lines(stage)
                    .filter(l -> l.startsWith("dies at ") || l.startsWith("fails at "))
                    .forEach(l -> points.merge(l, 1, Integer::sum));
            return points;
        }

        static Stream<String> lines(Stage stage) throws IOException {
            List<String> lines = new ArrayList<>();
            for (Slot slot : stage.slots()) {
                lines.addAll(Files.readAllLines(stage.folder().resolve(slot.name() + ".log")));
            }
            return lines.stream();
        }
    }

    /** The same, and every point that the workers name must have been met. */
    static final class EachPointed extends EachPublished {
        private static final String NAMES = "points: ";

        @Override
        public int ownFaults(Stage stage) throws IOException {
            return new Pointed().ownFaults(stage);
        }

        @Override
        public List<String> verdict(Stage stage) {
            List<String> wrong = new ArrayList<>(super.verdict(stage));
            try {
                Set<String> met = Pointed.points(stage).keySet();
                Pointed.lines(stage)
                        .filter(l -> l.startsWith(NAMES))
                        .limit(1)
                        .flatMap(l -> Stream.of(l.substring(NAMES.length()).split(" ")))
                        .filter(point -> !met.contains("dies at " + point))
                        .forEach(point -> wrong.add("nobody died at " + point));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            return wrong;
        }
    }

    /** The same with a small disk as output share; nothing may be counted against a run. */
    static final class OnSmallDisk extends EachPublished {
        private static final int MEBIBYTES = 96;

        @Override
        public void order(Stage stage, int runs, Random random) throws Exception {
            stage.shrinkWall(MEBIBYTES);
            super.order(stage, runs, random);
        }

        @Override
        String wrong() {
            return "failures > 0 or deaths > 0";
        }
    }

    /** The same, but no attempt may be lost at all. */
    static final class NobodyLost extends EachPublished {
        @Override
        String wrong() {
            return "attempt <> 1";
        }
    }

    /** The same with an operator who cancels some. */
    static final class SomeCancelled extends EachPublished {
        @Override
        public List<String> verdict(Stage stage) {
            return others(stage, "state not in ('PUBLISHED', 'CANCELLED')");
        }
    }

    /** Two stacks whose frames are so large that any worker dies of them, among whole ones. */
    static final class Poisoned implements Drill.Casting {
        private static final String SUBJECT = "Poison";

        @Override
        public void order(Stage stage, int runs, Random random) throws Exception {
            List<String> paths = stage.material().lay("north/poison", Collections.nCopies(5, large()));
            stage.order(stage.material().stack(SUBJECT + " 1", paths), Priorities.ON_TABLE);
            stage.orderMinerals(runs - 2);
            stage.order(stage.material().stack(SUBJECT + " 2", paths), Priorities.NORMAL);
        }

        private static byte[] large() throws IOException {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            ImageIO.write(new BufferedImage(12_000, 9_000, BufferedImage.TYPE_BYTE_GRAY), "jpeg", bytes);
            return bytes.toByteArray();
        }

        @Override
        public int ownFaults(Stage stage) {
            return stage.jdbc()
                    .sql("select count(*) from stook.attempt where outcome = 'DIED'")
                    .query(Integer.class)
                    .single();
        }

        @Override
        public List<String> verdict(Stage stage) {
            return others(
                    stage,
                    "(stack_id in (select id from stook.stack where subject like '" + SUBJECT
                            + "%')) <> (state = 'QUARANTINED' and attempt = 3) or state not in ('QUARANTINED', 'PUBLISHED')");
        }
    }

    /** Stacks with a broken frame each, or with nothing but broken frames: published without it, or failed with a reason. */
    static final class Malformed implements Drill.Casting {
        @Override
        public void order(Stage stage, int runs, Random random) throws Exception {
            List<byte[]> whole = stage.material().mineral();
            for (int i = 1; i <= runs; i++) {
                List<byte[]> frames = new ArrayList<>(whole);
                boolean all = i % 5 == 0;
                for (int f = 0; f < frames.size(); f++) {
                    if (all || f == i % frames.size()) {
                        frames.set(f, broken(whole.get(f), random));
                    }
                }
                stage.order(
                        stage.material().stack("Broken " + i, stage.material().lay("north/broken-" + i, frames)),
                        Priorities.NORMAL);
            }
        }

        private static byte[] broken(byte[] frame, Random random) {
            return switch (random.nextInt(4)) {
                case 0 -> Material.cut(frame, random.nextDouble());
                case 1 -> "a note by the photographer".getBytes(StandardCharsets.US_ASCII);
                default -> {
                    byte[] flipped = frame.clone();
                    for (int n = 1 + random.nextInt(40); n > 0; n--) {
                        flipped[random.nextInt(flipped.length)] ^= (byte) (1 << random.nextInt(8));
                    }
                    yield flipped;
                }
            };
        }

        @Override
        public int ownFaults(Stage stage) {
            return stage.jdbc()
                    .sql("select count(*) from stook.run")
                    .query(Integer.class)
                    .single();
        }

        @Override
        public List<String> verdict(Stage stage) {
            return others(
                    stage,
                    "state not in ('PUBLISHED', 'FAILED') or attempt <> 1 or (state = 'FAILED' and reason_text is null)");
        }
    }
}
