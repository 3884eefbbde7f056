package org.stook.trail.command;

import java.io.PrintWriter;
import java.util.List;
import org.stook.trail.check.Findings;

/** Says what was found, what it proves and what it cannot. */
final class Verdict {
    private static final List<String> NEVER = List.of(
            "what nobody ever wrote into the trail",
            "acts in the seconds between the last head and a change by someone who owns the database and the key",
            "that the clock was right and that a name stands for the person; a time stamp of a third party helps with the first");

    private Verdict() {}

    /** @return the exit code */
    static int say(Findings findings, PrintWriter out) {
        findings.proven().forEach(sentence -> out.println("proven      " + sentence));
        findings.unproven().forEach(sentence -> out.println("not proven  " + sentence));
        findings.bad().forEach(sentence -> out.println("BAD         " + sentence));
        out.println("This can never prove: " + String.join("; ", NEVER) + ".");
        out.println(
                findings.bad().isEmpty()
                        ? "Nothing bad was found."
                        : findings.bad().size() + " findings are bad.");
        out.flush();
        if (!findings.bad().isEmpty()) return Main.BAD;
        return 0;
    }
}
