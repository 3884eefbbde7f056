package org.stook.trail.command;

import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.stook.trail.PublicHeadKey;
import org.stook.trail.check.KnownHeads;
import picocli.CommandLine.Option;

/** What the checker holds. */
final class HeadOptions {
    @Option(
            names = "--heads",
            paramLabel = "FILE",
            description = "heads.jsonl from a place that whoever may have changed the trail could not reach")
    @Nullable
    Path heads;

    @Option(names = "--key", paramLabel = "FILE", description = "the studio's public key (key.pem), got by another way")
    @Nullable
    Path key;

    @Nullable
    KnownHeads read() throws IOException {
        return heads == null ? null : KnownHeads.read(heads, key == null ? null : PublicHeadKey.read(key));
    }
}
