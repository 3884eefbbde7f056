package org.stook.node;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.node.publish.Room;
import org.stook.node.publish.Shares.Trouble;

class RoomTest {
    @TempDir
    private Path folder;

    @Test
    void aFolderWithRoomIsNoTrouble() {
        assertThat(new Room(1).trouble("share wall", folder)).isEmpty();
    }

    @Test
    void aFullDiskIsSaidToBeFullWithWhatIsFreeAndWanted() {
        Trouble trouble = new Room(Long.MAX_VALUE).trouble("share wall", folder).orElseThrow();
        assertThat(trouble.code()).isEqualTo("DISK_FULL");
        assertThat(trouble.sentence())
                .startsWith("share wall is full: ")
                .contains(" MiB are free, 8796093022207 are wanted")
                .contains(folder.toString());
    }

    @Test
    void aFolderThatRefusesWritingIsSaidToRefuse() {
        assertThat(new Room(1)
                        .trouble("share wall", folder.resolve("absent"))
                        .orElseThrow()
                        .code())
                .isEqualTo("READ_ONLY");
    }
}
