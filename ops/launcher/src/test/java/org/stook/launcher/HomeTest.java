package org.stook.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.postgres.FolderLock;

class HomeTest {
    @TempDir
    private Path folder;

    @Test
    void theFoldersAreMadeAndAnotherInstanceIsRefused() throws IOException {
        StudioPlan plan = plan(folder.resolve("home"));
        try (FolderLock lock = Home.open(plan)) {
            assertThat(lock).isNotNull();
            assertThat(plan.logs()).isDirectory();
            assertThat(plan.published()).isDirectory();
            assertThat(plan.home().resolve("intake/a")).isDirectory();
            assertThatThrownBy(() -> Home.open(plan)).hasMessageContaining("already in use");
        }
        Home.open(plan).close();
    }

    @Test
    void aFullDiskIsToldInBytes() {
        assertThatThrownBy(() -> Home.checkRoom(folder, 12_345_678))
                .isInstanceOf(LaunchFailure.class)
                .hasMessageContaining("the disk of " + folder + " is full: 12345678 bytes are free")
                .hasMessageContaining(Home.ROOM + " bytes");
    }

    @Test
    void aHomeThatIsAFileIsRefused() throws IOException {
        Path file = Files.createFile(folder.resolve("file"));
        assertThatThrownBy(() -> Home.open(plan(file)))
                .isInstanceOf(LaunchFailure.class)
                .hasMessageContaining("the folder " + file + " cannot be used");
    }

    private static StudioPlan plan(Path home) {
        Map<String, Path> stations = Map.of("a", home.resolve("intake/a"));
        return new StudioPlan(home, "127.0.0.1", 0, 1, "64m", "64m", stations, List.of(), new Jars(home, home));
    }
}
