package org.stook.trail.command;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stook.trail.Entry;
import org.stook.trail.check.DatabaseTrail;
import org.stook.trail.check.EntrySource;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code verify export}. */
@Command(
        name = "export",
        mixinStandardHelpOptions = true,
        description = "Writes the whole trail of a database into a file, one entry a line, for keeping.")
final class ExportTrail implements Callable<Integer> {
    @Spec
    @Nullable
    CommandSpec spec;

    @Mixin
    DatabaseOption database = new DatabaseOption();

    @Option(names = "--out", required = true, paramLabel = "FILE", description = "where the entries go; must not exist")
    Path out = Path.of("");

    @Override
    public Integer call() throws IOException, SQLException {
        CommandSpec line = Objects.requireNonNull(spec);
        if (database.url == null) throw new ParameterException(line.commandLine(), "--database is missing");
        if (Files.exists(out)) throw new IOException(out + " exists; nothing is overwritten");
        long count = 0;
        try (Connection connection = database.connect();
                EntrySource entries = new DatabaseTrail(connection).entries();
                BufferedWriter lines = Files.newBufferedWriter(out)) {
            for (Entry entry = entries.next(); entry != null; entry = entries.next()) {
                lines.write(entry.canonical());
                lines.newLine();
                count++;
            }
        }
        line.commandLine().getOut().println(out + ": " + count + " entries");
        line.commandLine().getOut().flush();
        return 0;
    }
}
