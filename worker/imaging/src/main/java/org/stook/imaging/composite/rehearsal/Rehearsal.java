package org.stook.imaging.composite.rehearsal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.stook.imaging.composite.CannotCompose;
import org.stook.imaging.composite.ComposeOrder;
import org.stook.imaging.composite.Composition;
import org.stook.imaging.composite.Progress;
import org.stook.imaging.composite.Recipe;
import org.stook.imaging.composite.TemporaryFolder;

/**
 * Composes a small stack that shows nothing and throws it away. The runtime compiles what is used much, and by the time that
 * is done a first stack has taken twice as long as the next; after a rehearsal it does not.
 */
public final class Rehearsal {
    private static final MadeUpStack STACK = new MadeUpStack(3000, 800, 8);
    /** The second uses what the first made the runtime compile, and so has it compiled better. */
    private static final int ROUNDS = 2;

    private final MadeUpStack stack;
    private final int rounds;

    Rehearsal(MadeUpStack stack, int rounds) {
        this.stack = stack;
        this.rounds = rounds;
    }

    /**
     * Takes some seconds; leaves nothing behind, also if it is ended.
     *
     * @param home folder to work in
     * @param threads how many may be used
     * @param progress asked often; what it throws ends the rehearsal
     */
    public static void run(Path home, int threads, Progress progress) throws IOException, CannotCompose {
        new Rehearsal(STACK, ROUNDS).in(home, threads, progress);
    }

    void in(Path home, int threads, Progress progress) throws IOException, CannotCompose {
        try (TemporaryFolder temporary = TemporaryFolder.createIn(home, "rehearsal-")) {
            Path folder = temporary.path();
            List<Path> frames = stack.write(Files.createDirectory(folder.resolve("frames")));
            for (int round = 0; round < rounds; round++) {
                compose(frames, Files.createDirectory(folder.resolve("round-" + round)), threads, progress);
            }
        }
    }

    /** All that is done for a stack that is published. */
    private static void compose(List<Path> frames, Path folder, int threads, Progress progress)
            throws IOException, CannotCompose {
        try (Composition composition =
                new Composition(new ComposeOrder(frames, Recipe.standard(), threads), progress)) {
            composition.survey();
            composition.register();
            composition.keepProxies(folder.resolve("review"));
            composition.blend();
            composition.finish(folder.resolve("master.tif"), Optional.of(folder.resolve("preview.jpg")));
            composition.writeDerivatives(
                    Optional.of(folder.resolve("derivative.jpg")), Optional.of(folder.resolve("thumbnail.jpg")));
            composition.writeMaps(Optional.of(folder.resolve("source.tif")), Optional.of(folder.resolve("depth.tif")));
            composition.score();
            composition.writeView(folder.resolve("tiles"), folder.resolve("review"));
        }
    }
}
