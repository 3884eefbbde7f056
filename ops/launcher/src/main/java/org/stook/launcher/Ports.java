package org.stook.launcher;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** TCP ports of this machine. */
final class Ports {
    private static final Path PROC = Path.of("/proc");
    private static final String LISTENS = "0A";
    /** Columns of /proc/net/tcp, see proc_net_tcp in the kernel's documentation. */
    private static final int LOCAL = 1;

    private static final int STATE = 3;
    private static final int INODE = 9;

    private Ports() {}

    /**
     * The port itself, or a free one for 0.
     *
     * @throws LaunchFailure if it is taken, by which process if that can be seen
     */
    static int free(String address, int port) throws IOException {
        try (ServerSocket socket = new ServerSocket()) {
            socket.setReuseAddress(true);
            socket.bind(new InetSocketAddress(InetAddress.getByName(address), port));
            return socket.getLocalPort();
        } catch (IOException e) {
            String by = holder(port).map(h -> " by " + h).orElse("");
            throw by.isEmpty() && !String.valueOf(e.getMessage()).contains("in use")
                    ? new LaunchFailure("cannot listen on " + address + " port " + port + ": " + e.getMessage(), e)
                    : new LaunchFailure(
                            "port " + port + " on " + address + " is taken" + by
                                    + "; stop it or choose another one with --port",
                            e);
        }
    }

    /** "process 4711 (java)" for the process that listens on the port, as far as this user may see it. */
    static Optional<String> holder(int port) {
        try {
            for (String table : List.of("net/tcp", "net/tcp6")) {
                Optional<String> inode = inode(Files.readAllLines(PROC.resolve(table)), port);
                if (inode.isPresent()) return owner("socket:[" + inode.get() + "]");
            }
        } catch (IOException e) {
            // A system without these tables: the port is taken all the same, only nobody can say by whom.
        }
        return Optional.empty();
    }

    static Optional<String> inode(List<String> table, int port) {
        String end = String.format(Locale.ROOT, ":%04X", port);
        return table.stream()
                .map(line -> line.trim().split("\\s+"))
                .filter(c -> c.length > INODE && c[LOCAL].endsWith(end) && c[STATE].equals(LISTENS))
                .map(c -> c[INODE])
                .findFirst();
    }

    private static Optional<String> owner(String socket) throws IOException {
        try (DirectoryStream<Path> processes = Files.newDirectoryStream(PROC, "[0-9]*")) {
            for (Path process : processes) {
                if (holds(process, socket)) {
                    String name = Files.readString(process.resolve("comm")).trim();
                    return Optional.of("process " + process.getFileName() + " (" + name + ")");
                }
            }
        }
        return Optional.empty();
    }

    private static boolean holds(Path process, String socket) {
        try (DirectoryStream<Path> open = Files.newDirectoryStream(process.resolve("fd"))) {
            for (Path fd : open) {
                if (Files.readSymbolicLink(fd).toString().equals(socket)) return true;
            }
        } catch (IOException e) {
            // Another user's process, or one that has just ended.
        }
        return false;
    }
}
