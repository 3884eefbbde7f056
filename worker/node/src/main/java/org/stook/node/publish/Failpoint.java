package org.stook.node.publish;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;

/**
 * Named points at which drills end the process as a power cut would (no shutdown hook, no finally), or let a call fail.
 * System property {@code stook.failpoint} says where; without it nothing happens:
 *
 * <ul>
 *   <li>{@code NAME}: dies whenever it comes to the point of that name;
 *   <li>{@code each}: dies in the first attempt at each run, at the first point of one name; the names go through all there
 *       are from run to run, and are printed at the start;
 *   <li>{@code die/N}: dies in the first attempt at each run, at its n-th point; n goes through 1 to N in strides from run
 *       to run;
 *   <li>{@code fail/N}: throws an {@link IOException} there instead.
 * </ul>
 *
 * <p>A process works on one attempt at a time, so what is counted is kept for the process. Where several files are written
 * at a time, which of them is at a point is left to chance; how many points there are is not.
 */
public final class Failpoint {
    /** As after SIGKILL. */
    private static final int KILLED = 137;

    /** A prime, so that some dozen runs come to early and late points alike, and N runs to each. */
    private static final long STRIDE = 37;

    private static final String EACH = "each";
    private static final String DIE = "die/";
    private static final String FAIL = "fail/";

    /** Every boundary of a step and every point of publishing, in the order in which a run comes to them first. */
    private static final List<String> NAMES = List.of(
            "after-claim",
            "before-survey",
            "read",
            "after-survey",
            "before-register",
            "after-register",
            "before-blend",
            "after-blend",
            "before-finish",
            "after-finish",
            "before-score",
            "after-score",
            "before-publish",
            "write",
            "force",
            "closed",
            "force-folder",
            "after-staged",
            "after-fence",
            "rename",
            "renamed",
            "after-moved",
            "after-publish");

    private static final @Nullable String SPEC = System.getProperty("stook.failpoint");
    private static volatile String name = "";
    private static volatile long target;
    private static final AtomicLong PASSED = new AtomicLong();

    static {
        if (EACH.equals(SPEC)) System.err.println("points: " + String.join(" ", NAMES));
    }

    private Failpoint() {}

    /** From here on it is this attempt that comes to the points. */
    public static void enter(long run, int attempt) {
        if (EACH.equals(SPEC)) {
            name = attempt == 1 ? NAMES.get((int) (run % NAMES.size())) : "";
        } else if (SPEC != null && SPEC.indexOf('/') > 0) {
            long of = Long.parseLong(SPEC.substring(SPEC.indexOf('/') + 1));
            target = attempt == 1 ? run * STRIDE % of + 1 : 0;
            PASSED.set(0);
        }
    }

    public static void hit(String point) throws IOException {
        if (SPEC == null) {
            return;
        }
        boolean reached = target > 0 && PASSED.incrementAndGet() == target;
        if (SPEC.equals(point) || name.equals(point) || reached && SPEC.startsWith(DIE)) {
            die(point);
        } else if (reached && SPEC.startsWith(FAIL)) {
            System.err.println("fails at " + point);
            throw new IOException("injected at " + point);
        }
    }

    /** One thread alone, so that a death is told once. */
    private static synchronized void die(String point) {
        System.err.println("dies at " + point);
        Runtime.getRuntime().halt(KILLED);
    }
}
