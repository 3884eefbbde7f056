package org.stook.app.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;
import static org.stook.app.intake.Bench.half;
import static org.stook.app.intake.Bench.jpeg;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.app.stack.Sealed;
import org.stook.app.stack.Stacks;
import org.stook.app.stack.Strays;
import org.stook.app.station.StationBook;
import org.stook.imaging.codec.raw.RawFiles;
import org.stook.orders.WorkOrder;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.Capture;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.file.FrameWriter;
import org.stook.scenes.optics.Lens;

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
    void theTableHearsOfASweepBeforeItsFilesHaveSettled() {
        bench.settings("{\"patience\": {\"settleSeconds\": 60}}");
        frames("HC-0009", 5);
        bench.seconds(8);
        assertThat(bench.value("select count(*) from stook.intake_file where state = 'ACCEPTED'"))
                .isEqualTo("0");
        assertThat(bench.value("select word_so_far->>'frames' from stook.stack"))
                .isEqualTo("5");

        bench.put("HC-0009/3.jpg", half(jpeg(3, 32)));
        bench.seconds(3);
        assertThat(bench.value("select word_so_far->>'frames' from stook.stack"))
                .as("what was seen of a file that changed is forgotten")
                .isEqualTo("4");
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

    @Test
    void aStrayTakenBackMakesTheNextVersionWithARunOfItsOwn() {
        frames("agate", 3);
        bench.put("agate/copy.jpg", jpeg(1, 32));
        bench.put("agate/wide.jpg", jpeg(9, 48));
        bench.seconds(20);
        long wide = Long.parseLong(bench.value("select id from stook.intake_file where rel_path like '%wide.jpg'"));
        assertThatThrownBy(() -> bench.strays.restore(wide, "ada")).hasMessageContaining("stays as it is");
        long file = Long.parseLong(bench.value("select id from stook.intake_file where rel_path like '%copy.jpg'"));
        Strays.Moved moved = bench.strays.restore(file, "ada").orElseThrow();
        assertThat(moved.sealed()).isInstanceOf(Sealed.Done.class);
        assertThat(bench.value("select state || ' ' || version from stook.stack where state = 'SEALED'"))
                .isEqualTo("SEALED 2");
        assertThat(bench.value("select state from stook.stack where id = 1")).isEqualTo("ASIDE");
        assertThat(bench.value("select string_agg(state, ' ' order by id) from stook.run"))
                .isEqualTo("CANCELLED READY");
        assertThat(
                        bench.value(
                                "select count(*) from stook.stack_frame where role = 'SWEEP' and stack_id = (select id from stook.stack where state = 'SEALED')"))
                .isEqualTo("4");
        assertThatThrownBy(() -> bench.strays.restore(file, "ada")).hasMessageContaining("is accepted");
    }

    @Test
    void aFrameThatComesAfterSealingMakesTheNextVersion() {
        frames("agate", 3);
        bench.seconds(20);
        bench.put("agate/4.jpg", jpeg(4, 32));
        bench.seconds(20);
        assertThat(bench.value("select string_agg(state || ' ' || version, ', ' order by id) from stook.stack"))
                .isEqualTo("ASIDE 1, SEALED 2");
        assertThat(bench.value("select count(*) from stook.stack_frame where stack_id = 2"))
                .isEqualTo("4");
    }

    @Test
    void aLateFileThatIsNoFrameLeavesTheSealedStackAlone() {
        frames("agate", 3);
        bench.seconds(20);
        bench.put("agate/notes.txt", "light from the left\n".getBytes(StandardCharsets.UTF_8));
        bench.seconds(80);
        assertThat(bench.state("agate/notes.txt")).isEqualTo("REJECTED");
        assertThat(bench.value("select count(*) from stook.stack")).isEqualTo("1");
    }

    @Test
    void aRawFileIsKeptBesideItsPictureAndRefusedAlone() {
        frames("agate", 3);
        byte[] raw = "FUJIFILMCCD-RAW and what the sensor gave".getBytes(StandardCharsets.US_ASCII);
        bench.put("agate/1.RAF", raw);
        bench.put("agate/9.raf", raw);
        bench.seconds(80);
        assertThat(bench.value("select state || ' ' || role from stook.intake_file where rel_path = 'agate/1.RAF'"))
                .isEqualTo("ACCEPTED RAW");
        assertThat(bench.reason("agate/9.raf"))
                .startsWith("9.raf: found ")
                .endsWith("The file is taken in when its picture arrives");
        assertThat(bench.value("select string_agg(role, ' ' order by ordinal) from stook.stack_frame"))
                .isEqualTo("SWEEP SWEEP SWEEP RAW");
        bench.put("agate/9.jpg", jpeg(9, 32));
        bench.seconds(30);
        assertThat(bench.state("agate/9.raf")).isEqualTo("ACCEPTED");
    }

    @Test
    void rawAloneIsTheFrameUntilItsPictureComes() throws IOException {
        assumeTrue(new RawFiles().hasLibrary(), "LibRaw is absent");
        for (int i = 1; i <= 2; i++) bench.put("agate/" + i + ".dng", shot(i, FrameFormat.DNG_12));
        bench.seconds(9);
        assertThat(bench.value("select string_agg(state || ' ' || role, ', ') from stook.intake_file"))
                .isEqualTo("ACCEPTED FRAME, ACCEPTED FRAME");
        assertThat(bench.value("select min(camera || ' ' || bits || ' bit') from (select meta ->> 'camera' camera, bits"
                        + " from stook.frame where survey is not null) f"))
                .isEqualTo("Tarnbeck Tarnbeck 45 TB4500117 16 bit");
        bench.put("agate/2.jpg", shot(2, FrameFormat.JPEG));
        bench.seconds(20);
        assertThat(bench.value(
                        "select string_agg(rel_path || ' ' || role, ', ' order by rel_path) from stook.stack_frame"))
                .isEqualTo("agate/1.dng SWEEP, agate/2.dng RAW, agate/2.jpg SWEEP");
        bench.put("agate/1.jpg", shot(1, FrameFormat.JPEG));
        bench.seconds(20);
        assertThat(bench.reason("agate/1.jpg")).contains("came when the raw file of the same capture");
        assertThat(bench.value("select count(*) from stook.stack")).isEqualTo("1");
    }

    @Test
    void twoBodiesAreInStepOnceOneClockIsSetRight() {
        bench.settings("{\"clocks\": {\"late\": -3600}}");
        for (int i = 1; i <= 4; i++) {
            boolean late = i % 2 == 0;
            Camera camera = late ? Camera.USUAL.withSerial("late") : Camera.USUAL;
            bench.put("agate/" + (9 - i) + ".jpg", shot(i, FrameFormat.JPEG, camera, i + (late ? 3600 : 0)));
        }
        bench.seconds(20);
        assertThat(bench.value("select string_agg(right(rel_path, 5), ' ' order by ordinal) from stook.stack_frame"))
                .isEqualTo("8.jpg 7.jpg 6.jpg 5.jpg");
        assertThat(bench.value("select max(captured_at) - min(captured_at) from stook.frame"))
                .contains("3 secs");
    }

    private static byte[] shot(int number, FrameFormat format) {
        return shot(number, format, Camera.USUAL, number);
    }

    private static byte[] shot(int number, FrameFormat format, Camera camera, int seconds) {
        Picture picture = Picture.black(96, 64);
        for (int i = 0; i < 96 * 64; i++) picture.planes()[1][i] = (i * number % 97) / 97f;
        OffsetDateTime taken = OffsetDateTime.parse("2026-03-02T09:00:00+01:00").plusSeconds(seconds);
        return FrameWriter.bytes(picture, format, new Capture(camera, new Lens(100, 4), taken));
    }

    @Test
    void settingsAreKeptInVersionsAndAWrongOneChangesNothing() {
        bench.settings("{\"priority\": 70}");
        bench.settings("{\"priority\": 70}");
        bench.settings("{\"priority\": 70, \"recipe\": {\"tone\": {\"contrast\": 0.1}}}");
        assertThatThrownBy(() -> bench.settings("{\"priority\": 700}")).hasMessageContaining("found 700");
        assertThat(bench.book.history(1))
                .extracting(StationBook.Version::version)
                .containsExactly(2, 1);
        frames("agate", 2);
        bench.seconds(20);
        assertThat(
                        bench.value(
                                "select r.priority || ' ' || t.body::text from stook.run r join stook.tone_settings t on t.id = r.settings_id"))
                .isEqualTo("70 {\"tone\": {\"contrast\": 0.1}}");
    }

    @Test
    void anOperatorsManifestGoesBeforeWhatSortingFinds() {
        for (int i = 1; i <= 6; i++) bench.put("A_%02d.jpg".formatted(i), jpeg(i, 32));
        bench.put(
                "day.stacks.csv",
                text("first,last,subject,view\nA_01.jpg,A_03.jpg,HC-0001,\nA_04.jpg,A_06.jpg,\"HC, 2\",dorsal\n"));
        bench.put("bad.stacks.csv", text("first,last,subject,view\nA_09.jpg,A_07.jpg,HC-3,\n"));
        bench.seconds(20);
        assertThat(bench.value(
                        "select string_agg(subject || '/' || coalesce(view_name, '') || '/' || state, ' ' order by id)"
                                + " from stook.stack where state <> 'ASIDE'"))
                .isEqualTo("HC-0001//SEALED HC, 2/dorsal/SEALED");
        assertThat(bench.reason("bad.stacks.csv"))
                .contains("line 2: found files 'A_09.jpg' to 'A_07.jpg', expected the first to come before the last");
        assertThat(bench.state("day.stacks.csv")).isEqualTo("STRAY");
    }

    private static byte[] text(String text) {
        return text.getBytes(java.nio.charset.StandardCharsets.UTF_8);
    }

    @Test
    void viewsOfOneSubjectAreFoundTogether() {
        frames("agate", 2);
        frames("beryl", 3);
        bench.seconds(14);
        bench.jdbc
                .sql("update stook.stack set subject = 'HC-7', view_name = folder")
                .update();
        long agate = Long.parseLong(bench.value("select id from stook.stack where folder = 'agate'"));
        assertThat(new Stacks(bench.jdbc).views(agate))
                .extracting(v -> v.standing().view())
                .containsExactly("beryl");
    }

    private void frames(String subject, int count) {
        for (int i = 1; i <= count; i++) bench.put(subject + "/" + i + ".jpg", jpeg(i, 32));
    }
}
