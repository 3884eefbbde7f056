package org.stook.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.List;
import org.junit.jupiter.api.Test;

class PortsTest {
    @Test
    void aTakenPortIsNamedWithTheProcessThatHoldsIt() throws IOException {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            assertThatThrownBy(() -> Ports.free("127.0.0.1", taken.getLocalPort()))
                    .isInstanceOf(LaunchFailure.class)
                    .hasMessageContaining("port " + taken.getLocalPort() + " on 127.0.0.1 is taken by process "
                            + ProcessHandle.current().pid())
                    .hasMessageContaining("--port");
        }
    }

    @Test
    void aFreePortIsFound() throws IOException {
        assertThat(Ports.free("127.0.0.1", 0)).isPositive();
    }

    /** The line is from the kernel's documentation, networking/proc_net_tcp, with state and port changed. */
    @Test
    void theKernelsTableIsReadByItsColumns() {
        String listening =
                "  46: 010310AC:1F90 00000000:0000 0A 00000150:00000000 01:00000019 00000000  1000        0 54165785 4";
        String connected = listening.replace(" 0A ", " 01 ");
        assertThat(Ports.inode(List.of("sl local_address", listening), 8080)).contains("54165785");
        assertThat(Ports.inode(List.of("sl local_address", connected), 8080)).isEmpty();
        assertThat(Ports.inode(List.of("sl local_address", listening), 8081)).isEmpty();
    }
}
