package org.stook.drills.stage;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * The line between one worker and the database, as a relay that can be cut. Cut means silence, as of a pulled cable: nothing
 * is refused or closed, no byte passes, new connections are taken and never answered.
 */
public final class Wire implements AutoCloseable {
    private final ServerSocket listening;
    private final int target;
    private final List<Socket> open = new CopyOnWriteArrayList<>();
    private volatile boolean cut;
    private volatile boolean closed;

    private Wire(int target, InetAddress near) throws IOException {
        this.listening = new ServerSocket(0, 50, near);
        this.target = target;
    }

    /**
     * @param target port of the database on this machine
     * @param near address of this machine that the worker sees
     */
    static Wire to(int target, InetAddress near) throws IOException {
        Wire wire = new Wire(target, near);
        daemon(wire::accept, "wire-" + wire.port());
        return wire;
    }

    private void accept() {
        while (!closed) {
            try {
                Socket near = listening.accept();
                open.add(near);
                daemon(() -> connect(near), "wire-connection");
            } catch (IOException e) {
                return; // Closed.
            }
        }
    }

    private void connect(Socket near) {
        try {
            awaitMended();
            Socket far = new Socket(InetAddress.getLoopbackAddress(), target);
            open.add(far);
            // Or each statement of several packets would wait 40 ms for an acknowledgement.
            near.setTcpNoDelay(true);
            far.setTcpNoDelay(true);
            daemon(() -> pass(near, far), "wire-out");
            pass(far, near);
        } catch (IOException e) {
            close(near);
        }
    }

    private void pass(Socket from, Socket to) {
        byte[] bytes = new byte[1 << 14];
        try (from;
                to;
                InputStream in = from.getInputStream();
                OutputStream out = to.getOutputStream()) {
            for (int n = in.read(bytes); n >= 0; n = in.read(bytes)) {
                awaitMended();
                out.write(bytes, 0, n);
            }
        } catch (IOException e) {
            // One side is gone, and so is the other now.
        }
        open.remove(from);
        open.remove(to);
    }

    private synchronized void awaitMended() throws IOException {
        try {
            while (cut && !closed) {
                wait();
            }
        } catch (InterruptedException e) {
            throw new IOException(e);
        }
    }

    private static void daemon(Runnable work, String name) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.start();
    }

    String host() {
        return listening.getInetAddress().getHostAddress();
    }

    int port() {
        return listening.getLocalPort();
    }

    public void cut() {
        cut = true;
    }

    public boolean isCut() {
        return cut;
    }

    /** Bytes pass again; what was in flight meanwhile is lost with its connection. */
    public synchronized void mend() {
        open.forEach(Wire::close);
        open.clear();
        cut = false;
        notifyAll();
    }

    @Override
    public void close() throws IOException {
        closed = true;
        listening.close();
        mend();
    }

    private static void close(Socket socket) {
        try {
            socket.close();
        } catch (IOException e) {
            // It is to be gone, and it is.
        }
    }
}
