package org.stook.imaging.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.imaging.composite.EngineVersion;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.file.BracketWriter;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.subject.Subjects;

class RepeatCommandTest {
    @TempDir
    static Path home;

    private static Path frames;
    private static Path record;

    @BeforeAll
    static void composeASmallStackWithAStrayAndAReference() throws Exception {
        frames = Files.createDirectory(home.resolve("frames"));
        new BracketWriter(
                        Bracket.of(Subjects.named("mineral", 2), BracketPlan.of(240, 160, 4, 2)),
                        FrameFormat.TIFF_16,
                        Camera.USUAL,
                        OffsetDateTime.parse("2026-03-02T10:15:30+01:00"))
                .writeFrames(frames);
        Files.writeString(frames.resolve("notes.jpg"), "no picture");
        record = home.resolve("record.json");
        String reference;
        try (var files = Files.list(frames)) {
            reference = files.map(f -> f.getFileName().toString())
                    .filter(f -> !f.equals("notes.jpg"))
                    .sorted()
                    .toList()
                    .get(2);
        }
        int code = Main.run(
                "compose",
                "--frames",
                frames.toString(),
                "--out",
                home.resolve("once.tif").toString(),
                "--report",
                record.toString(),
                "--reference",
                reference,
                "--threads",
                "1");
        assertThat(code).isZero();
    }

    private static int repeat(Path record, Path frames, String... more) {
        String[] line = new String[4 + more.length];
        System.arraycopy(new String[] {"repeat", record.toString(), "--frames", frames.toString()}, 0, line, 0, 4);
        System.arraycopy(more, 0, line, 4, more.length);
        return Main.run(line);
    }

    @Test
    void anotherThreadCountGivesTheSameBytes() throws IOException {
        Path again = home.resolve("again.tif");
        assertThat(repeat(record, frames, "--threads", "3", "--out", again.toString()))
                .isZero();
        assertThat(again).hasSameBinaryContentAs(home.resolve("once.tif"));
    }

    @Test
    void framesAreFoundUnderOtherNamesAndDeeper() throws IOException {
        Path kept = Files.createDirectories(home.resolve("kept/deeper"));
        try (var files = Files.list(frames)) {
            int n = 0;
            for (Path file : files.sorted().toList()) Files.copy(file, kept.resolve("f" + n++ + ".bin"));
        }
        assertThat(repeat(record, home.resolve("kept"))).isZero();
        Files.copy(record, home.resolve("kept/record.json"));
        assertThat(Main.run("repeat", home.resolve("kept").toString()))
                .as("a folder with record and frames, like a bag")
                .isZero();
    }

    @Test
    void saysWhatStandsInTheWayByItsExitCode() throws IOException {
        Path other = rewritten(
                "other.json", "\"engineVersion\" : \"" + EngineVersion.current(), "\"engineVersion\" : \"0.0.9");
        assertThat(repeat(other, frames)).as("another engine").isEqualTo(6);
        assertThat(repeat(other, frames, "--any-engine")).isZero();
        Path settings = rewritten("settings.json", "\"margin\" : 0", "\"margin\" : 4");
        assertThat(repeat(settings, frames)).as("other settings, other bytes").isEqualTo(7);
        Path changed = Files.createDirectory(home.resolve("changed"));
        assertThat(repeat(record, changed)).as("frames are not there").isEqualTo(5);
        assertThat(repeat(frames.resolve("notes.jpg"), frames)).as("no record").isEqualTo(5);
    }

    private static Path rewritten(String name, String from, String to) throws IOException {
        String text = Files.readString(record);
        assertThat(text).contains(from);
        return Files.writeString(home.resolve(name), text.replace(from, to));
    }
}
