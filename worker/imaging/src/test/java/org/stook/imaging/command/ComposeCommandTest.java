package org.stook.imaging.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.file.BracketWriter;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.subject.Subjects;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class ComposeCommandTest {
    @TempDir
    static Path home;

    private static Path frames;

    @BeforeAll
    static void shootASmallStack() throws Exception {
        frames = Files.createDirectory(home.resolve("frames"));
        new BracketWriter(
                        Bracket.of(Subjects.named("shell", 2), BracketPlan.of(300, 200, 4, 2)),
                        FrameFormat.TIFF_16,
                        Camera.USUAL,
                        OffsetDateTime.parse("2026-03-02T10:15:30+01:00"))
                .writeFrames(frames);
    }

    @Test
    void writesCompositeReportPreviewAndMaps() throws Exception {
        Path out = home.resolve("all.tif");
        Path report = home.resolve("all.json");
        int code = Main.run(
                "compose",
                "--frames",
                frames.toString(),
                "--out",
                out.toString(),
                "--report",
                report.toString(),
                "--preview",
                home.resolve("all.jpg").toString(),
                "--threads",
                "2",
                "--source-map",
                home.resolve("source.tif").toString(),
                "--depth-map",
                home.resolve("depth.tif").toString());
        assertThat(code).isZero();
        JsonNode json = JsonMapper.builder().build().readTree(Files.readString(report));
        assertThat(json.get("frames")).hasSize(4);
        assertThat(json.at("/frames/0/placement")).hasSize(9);
        assertThat(json.get("resultSha256").stringValue()).hasSize(64);
        assertThat(json.at("/commonArea/width").intValue()).isGreaterThan(200);
        assertThat(home.resolve("all.jpg")).isNotEmptyFile();
        assertThat(home.resolve("source.tif")).isNotEmptyFile();
        assertThat(home.resolve("depth.tif")).isNotEmptyFile();
    }

    @Test
    void saysWhatIsWrongByItsExitCode() throws Exception {
        String out = home.resolve("x.tif").toString();
        Path empty = Files.createDirectory(home.resolve("empty"));
        Path slip = Files.writeString(home.resolve("slip.json"), "{\"blend\": \"magic\"}");
        assertThat(Main.run("compose", "--frames", frames.toString())).isEqualTo(2);
        assertThat(Main.run("compose", "--frames", empty.toString(), "--out", out))
                .isEqualTo(3);
        assertThat(Main.run("compose", "--frames", frames.toString(), "--out", out, "--settings", slip.toString()))
                .isEqualTo(4);
        assertThat(Main.run("compose", "--frames", home.resolve("nowhere").toString(), "--out", out))
                .isEqualTo(5);
    }
}
