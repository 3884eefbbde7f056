package org.stook.trail.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stook.trail.check.BagCheck;
import org.stook.trail.check.Findings;
import org.stook.trail.check.KnownHeads;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code verify bag}. */
@Command(
        name = "bag",
        mixinStandardHelpOptions = true,
        description = "Checks an unpacked bag: files, proofs of its audit entries, published files, frames.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:nothing bad was found; what is not proven is said",
            "2:wrong command line",
            "3:something is bad, see the lines BAD",
            "5:a file cannot be read"
        })
final class VerifyBag implements Callable<Integer> {
    @Spec
    @Nullable
    CommandSpec spec;

    @Parameters(paramLabel = "BAG", description = "folder of an unpacked bag")
    Path bag = Path.of("");

    @Mixin
    HeadOptions options = new HeadOptions();

    @Override
    public Integer call() throws IOException {
        Findings findings = new Findings();
        KnownHeads heads = options.read();
        if (heads != null) {
            heads.check(findings);
            options.checkStamps(heads, findings);
        }
        new BagCheck(bag, heads, findings).run();
        return Verdict.say(
                findings, java.util.Objects.requireNonNull(spec).commandLine().getOut());
    }
}
