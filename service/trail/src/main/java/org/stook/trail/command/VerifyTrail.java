package org.stook.trail.command;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stook.trail.check.DatabaseTrail;
import org.stook.trail.check.EntrySource;
import org.stook.trail.check.Findings;
import org.stook.trail.check.KnownHeads;
import org.stook.trail.check.LeafSource;
import org.stook.trail.check.TrailCheck;
import org.stook.trail.check.TreeCheck;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code verify trail}. */
@Command(
        name = "trail",
        mixinStandardHelpOptions = true,
        description = "Checks every entry of an exported trail, or of a database, and names each bad one.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:nothing bad was found; what is not proven is said",
            "2:wrong command line",
            "3:something is bad, see the lines BAD",
            "5:a file or the database cannot be read"
        })
final class VerifyTrail implements Callable<Integer> {
    @Spec
    @Nullable
    CommandSpec spec;

    @Option(names = "--entries", paramLabel = "FILE", description = "exported trail (verify export)")
    @Nullable
    Path entries;

    @Option(
            names = "--leaves",
            paramLabel = "FILE",
            description = "leaves.txt from the place of the heads; without it the database's own leaves serve")
    @Nullable
    Path leaves;

    @Mixin
    DatabaseOption database = new DatabaseOption();

    @Mixin
    HeadOptions options = new HeadOptions();

    @Override
    public Integer call() throws IOException, SQLException {
        CommandSpec line = Objects.requireNonNull(spec);
        KnownHeads heads = options.read();
        if (heads == null) throw new ParameterException(line.commandLine(), "--heads is missing");
        if ((entries == null) == (database.url == null)) {
            throw new ParameterException(line.commandLine(), "give either --entries or --database");
        }
        Findings findings = new Findings();
        if (entries != null) {
            if (leaves == null) throw new ParameterException(line.commandLine(), "--leaves is missing");
            try (LeafSource kept = LeafSource.of(leaves);
                    EntrySource source = EntrySource.of(entries)) {
                new TrailCheck(heads, findings).run(kept, source);
            }
        } else {
            checkDatabase(heads, findings);
        }
        options.checkStamps(heads, findings);
        return Verdict.say(findings, line.commandLine().getOut());
    }

    private void checkDatabase(KnownHeads heads, Findings findings) throws IOException, SQLException {
        try (Connection connection = database.connect()) {
            DatabaseTrail trail = new DatabaseTrail(connection);
            try (LeafSource kept = leaves == null ? trail.leaves() : LeafSource.of(leaves);
                    EntrySource source = trail.entries()) {
                new TrailCheck(heads, findings).run(kept, source);
            }
            if (leaves == null) return;
            try (LeafSource kept = LeafSource.of(leaves);
                    LeafSource stored = trail.leaves()) {
                new TreeCheck(findings).run(kept, stored);
            }
        }
    }
}
