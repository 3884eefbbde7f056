package org.stook.app.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.stook.app.intake.Bench.half;
import static org.stook.app.intake.Bench.jpeg;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.app.stack.Sealed;
import org.stook.orders.WorkOrder;

/** The intake with its crank turned by hand, on a real database and real files. */
class IntakePollerTest {
    @TempDir
    Path folder;

    private Bench bench;

    @BeforeEach
    void setUp() {
        bench = new Bench(IntakePollerTest.class, folder);
    }

    @AfterEach
    void close() {
        bench.source.close();
    }

    @Test
    void aGrowingFileIsAcceptedOnlyOnceItIsWholeAndSettled() {
        byte[] whole = jpeg(1, 32);
        bench.put("agate/1.jpg", half(whole));
        bench.seconds(5);
        assertThat(bench.state("agate/1.jpg")).isEqualTo("STABLE");
        bench.put("agate/1.jpg", whole);
        bench.seconds(2);
        assertThat(bench.state("agate/1.jpg")).isEqualTo("SEEN");
        bench.seconds(2);
        assertThat(bench.state("agate/1.jpg")).isEqualTo("ACCEPTED");
    }

    @Test
    void aStackIsSealedOnceItsFolderIsQuietAndOneRunIsOrdered() {
        frames("agate", 3);
        bench.seconds(9);
        assertThat(bench.value("select state from stook.stack")).isEqualTo("COLLECTING");
        bench.seconds(4);
        assertThat(bench.value("select state || ' ' || subject from stook.stack"))
                .isEqualTo("SEALED agate");
        assertThat(bench.value("select count(*) from stook.stack_frame where role = 'SWEEP'"))
                .isEqualTo("3");
        assertThat(bench.value("select state from stook.run")).isEqualTo("READY");
        assertThat(bench.value("select count(*) from jobs.scheduled_tasks")).isEqualTo("1");
    }

    @Test
    void badFilesAreNamedWithAReasonWhileTheRestIsSealed() {
        frames("agate", 3);
        bench.put("agate/cut.jpg", half(jpeg(8, 32)));
        bench.put("agate/empty.jpg", new byte[0]);
        bench.put("agate/notes.txt", "light from the left\n".getBytes(StandardCharsets.UTF_8));
        bench.put("agate/wide.jpg", jpeg(9, 48));
        bench.put("agate/copy.jpg", jpeg(1, 32));
        bench.put("agate/.hidden.jpg", jpeg(5, 32));
        bench.put("agate/4.jpg.part", jpeg(6, 32));
        bench.seconds(75);
        assertThat(bench.state("agate/cut.jpg")).isEqualTo("INCOMPLETE");
        assertThat(bench.reason("agate/cut.jpg")).startsWith("cut.jpg: found");
        assertThat(bench.state("agate/empty.jpg")).isEqualTo("INCOMPLETE");
        assertThat(bench.reason("agate/empty.jpg")).isEqualTo("empty.jpg: found 0 bytes, expected a frame");
        assertThat(bench.state("agate/notes.txt")).isEqualTo("REJECTED");
        assertThat(bench.reason("agate/notes.txt")).contains("notes.txt", "expected");
        assertThat(bench.reason("agate/wide.jpg")).contains("48 x 24", "32 x 24");
        assertThat(bench.state("agate/copy.jpg")).isEqualTo("STRAY");
        assertThat(bench.value("select count(*) from stook.intake_file")).isEqualTo("8");
        assertThat(bench.value("select state from stook.stack")).isEqualTo("SEALED");
        assertThat(bench.value("select count(*) from stook.stack_frame where role = 'SWEEP'"))
                .isEqualTo("3");
        assertThat(bench.intake.resolve("agate/cut.jpg")).exists().hasBinaryContent(half(jpeg(8, 32)));
    }

    @Test
    void aRestartLosesAndDoublesNothing() {
        frames("agate", 2);
        bench.seconds(2);
        bench.restart();
        bench.seconds(6);
        bench.restart();
        bench.seconds(14);
        bench.restart();
        bench.seconds(14);
        assertThat(bench.value("select count(*) from stook.intake_file where state = 'ACCEPTED'"))
                .isEqualTo("2");
        assertThat(bench.value("select count(*) from stook.stack where state = 'SEALED'"))
                .isEqualTo("1");
        assertThat(bench.value("select count(*) from stook.stack")).isEqualTo("1");
        assertThat(bench.value("select count(*) from stook.run")).isEqualTo("1");
    }

    @Test
    void withoutItsSentinelAShareIsPausedAndNothingCountsAsDeleted() throws IOException {
        frames("agate", 2);
        bench.seconds(5);
        Path aside = folder.resolve("elsewhere");
        Files.move(bench.intake, aside);
        Files.createDirectories(bench.intake); // An empty mount point.
        bench.seconds(30);
        assertThat(bench.value("select state from stook.share where kind = 'INTAKE'"))
                .isEqualTo("GONE");
        assertThat(bench.value("select count(*) from stook.intake_file where missing_since is null"))
                .isEqualTo("2");
        bench.restart();
        assertThat(bench.intake.resolve(WorkOrder.Share.SENTINEL)).doesNotExist();
        Files.delete(bench.intake);
        Files.move(aside, bench.intake);
        bench.seconds(14);
        assertThat(bench.value("select state from stook.share where kind = 'INTAKE'"))
                .isEqualTo("OK");
        assertThat(bench.value("select state from stook.stack")).isEqualTo("SEALED");
    }

    @Test
    void sealingTwiceGivesOneStackAndOneRun() {
        frames("agate", 2);
        bench.seconds(4);
        assertThat(bench.sealing.seal(1, "ada")).isInstanceOf(Sealed.Done.class);
        assertThat(bench.sealing.seal(1, "ada")).isEqualTo(new Sealed.Over("SEALED"));
        frames("copy of agate", 2);
        bench.seconds(20);
        assertThat(bench.value("select reason from stook.stack where id = 2")).contains("frames of stack 1");
        assertThat(bench.value("select count(*) from stook.run")).isEqualTo("1");
    }

    @Test
    void aSingleFrameWaitsForItsSecondAndSaysSo() {
        frames("agate", 1);
        bench.seconds(15);
        assertThat(bench.value("select state || ': ' || reason from stook.stack"))
                .isEqualTo("COLLECTING: found 1 usable frame of one size, a stack needs at least 2");
        bench.put("agate/2.jpg", jpeg(2, 32));
        bench.seconds(15);
        assertThat(bench.value("select state from stook.stack")).isEqualTo("SEALED");
    }

    private void frames(String subject, int count) {
        for (int i = 1; i <= count; i++) bench.put(subject + "/" + i + ".jpg", jpeg(i, 32));
    }
}
