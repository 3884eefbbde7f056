package org.stook.tamper;

import java.io.PrintStream;
import java.util.List;
import org.stook.tamper.Verify.Said;

/** Says of each deed whether it was found, and counts those that were not. */
final class Report {
    private static final int LINES = 8;
    private static final int LONGEST = 150;

    private final PrintStream out;
    private int failed;

    Report(PrintStream out) {
        this.out = out;
    }

    /**
     * @param named what the bad lines must name
     * @param exit what verify must end with
     */
    void say(String deed, Said said, List<String> named, int exit) {
        boolean right = said.exit() == exit && named.stream().allMatch(said::names);
        if (!right) failed++;
        out.printf("%-50s %-6s %5.1f s%n", deed, right ? "named" : "WRONG", said.seconds());
        (right ? said.bad() : said.text().lines().toList())
                .stream()
                        .limit(LINES)
                        .forEach(line -> out.println("    " + line.substring(0, Math.min(LONGEST, line.length()))));
        out.flush();
    }

    void check(String what, boolean right) {
        if (!right) failed++;
        out.printf("%-50s %s%n", what, right ? "yes" : "NO");
    }

    /** @return what the process ends with */
    int end() {
        out.println(failed == 0 ? "all named" : failed + " not as they should be");
        return failed == 0 ? 0 : 1;
    }
}
