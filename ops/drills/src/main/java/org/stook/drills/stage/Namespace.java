package org.stook.drills.stage;

import java.io.IOException;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.List;

/**
 * A network of its own for one worker, joined to this machine by a cable that can be pulled: the topology of separate hosts on
 * one. Needs root and the command ip.
 */
public final class Namespace implements AutoCloseable {
    private final String name;
    private final int number;

    private Namespace(int number) {
        this.name = "stook-drill-" + number;
        this.number = number;
    }

    static Namespace create(int number) throws IOException, InterruptedException {
        Namespace made = new Namespace(number);
        made.close();
        must("netns", "add", made.name);
        must("link", "add", made.cable(), "type", "veth", "peer", "name", "eth0", "netns", made.name);
        must("addr", "add", made.address(1) + "/24", "dev", made.cable());
        must("link", "set", made.cable(), "up");
        must("-n", made.name, "addr", "add", made.address(2) + "/24", "dev", "eth0");
        must("-n", made.name, "link", "set", "eth0", "up");
        must("-n", made.name, "link", "set", "lo", "up");
        return made;
    }

    private String cable() {
        return "drill" + number;
    }

    private String address(int end) {
        return "10.77." + number + "." + end;
    }

    /** This machine as the worker sees it. */
    InetAddress gateway() throws IOException {
        return InetAddress.getByName(address(1));
    }

    List<String> command(List<String> command) {
        List<String> inside = new ArrayList<>(List.of("ip", "netns", "exec", name));
        inside.addAll(command);
        return inside;
    }

    public void pull() throws IOException, InterruptedException {
        must("link", "set", cable(), "down");
    }

    public void plug() throws IOException, InterruptedException {
        must("link", "set", cable(), "up");
    }

    private static void must(String... words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("ip"));
        command.addAll(List.of(words));
        Processes.must(command);
    }

    @Override
    public void close() throws IOException {
        try {
            Processes.run("ip", "link", "del", cable());
            Processes.run("ip", "netns", "del", name);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
