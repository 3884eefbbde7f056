package org.stook.scenes;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class MainTest {
    @TempDir
    private Path folder;

    private final StringWriter said = new StringWriter();

    private int run(String... args) {
        return new CommandLine(new Main()).setErr(new PrintWriter(said)).execute(args);
    }

    @Test
    void writesFramesAndTruth() {
        String[] args = {"--subject", "watch", "--width", "90", "--height", "60", "--frames", "3", "--out"};
        String[] all = java.util.Arrays.copyOf(args, args.length + 1);
        all[args.length] = folder.resolve("new").toString();
        assertThat(run(all)).isZero();
        assertThat(folder.resolve("new/HC_0003.jpg")).isNotEmptyFile();
        assertThat(folder.resolve("new/truth/truth.json")).isNotEmptyFile();
        assertThat(said.toString()).contains("frame 3 of 3");
    }

    @Test
    void unknownSubjectEndsWithTwoAndTheNames() {
        assertThat(run("--subject", "teapot", "--out", folder.toString())).isEqualTo(2);
        assertThat(said.toString()).contains("teapot").contains("spray");
    }

    @Test
    void unknownFormatEndsWithTwo() {
        assertThat(run("--format", "bitmap", "--out", folder.toString())).isEqualTo(2);
        assertThat(said.toString()).contains("bitmap").contains("tiff16");
    }

    @Test
    void folderThatCannotBeMadeEndsWithOneAndItsName() throws IOException {
        Path file = Files.writeString(folder.resolve("taken"), "");
        assertThat(run("--width", "60", "--height", "40", "--frames", "1", "--out", file.toString()))
                .isEqualTo(1);
        assertThat(said.toString()).contains(file.toString());
    }

    @Test
    void timeThatIsNoneEndsWithTwo() {
        assertThat(run("--taken", "yesterday", "--out", folder.toString())).isEqualTo(2);
        assertThat(said.toString()).contains("yesterday");
    }
}
