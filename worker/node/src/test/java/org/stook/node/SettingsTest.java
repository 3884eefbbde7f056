package org.stook.node;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SettingsTest {
    @TempDir
    private Path folder;

    @Test
    void aWorkerWithoutSettingsHasAnIdOfItsOwnAndUsesEveryProcessor() {
        WorkerProperties one = new WorkerProperties(null, null, null, null);
        assertThat(one.id())
                .hasSizeLessThanOrEqualTo(50)
                .isNotEqualTo(new WorkerProperties(null, null, null, null).id());
        assertThat(one.threads()).isEqualTo(Runtime.getRuntime().availableProcessors());
    }

    @Test
    void aWrongSettingIsNamedWithWhatWasFoundAndExpected() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new WorkerProperties("north pc", null, null, null))
                .withMessage("stook.worker.id is 'north pc', expected 1 to 50 of letters, digits, '.', '-' and '_'");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new WorkerProperties("w", 0, null, null))
                .withMessageContaining("stook.worker.threads is '0', expected 1 or more");
    }

    @Test
    void whatADeadProcessLeftInScratchIsCleared() throws IOException {
        Files.createDirectories(folder.resolve("dead"));
        Files.writeString(folder.resolve("dead/master.tif"), "half");
        Files.createFile(folder.resolve("dead.lock"));
        try (Scratch scratch = Scratch.open(folder, "alive")) {
            assertThat(folder.resolve("dead")).doesNotExist();
            assertThat(scratch.folder()).isEmptyDirectory();
        }
        assertThat(folder.resolve("alive")).doesNotExist();
    }

    @Test
    void twoProcessesNeverShareAScratchFolder() throws IOException {
        try (Scratch scratch = Scratch.open(folder, "w1")) {
            assertThatThrownBy(() -> Scratch.open(folder, "w1")).hasMessageContaining("w1");
            assertThat(scratch.folder()).exists();
        }
    }
}
