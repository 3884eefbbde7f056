package org.stook.launcher;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.jar.Attributes;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;

/** Stands in for the service (answers HTTP on --server.port) and for a worker (does nothing), as a jar of its own. */
final class TinyProgram {
    private TinyProgram() {}

    public static void main(String[] args) throws Exception {
        for (String arg : args) {
            if (arg.equals("--broken")) throw new IllegalStateException("the shutter is stuck");
            if (arg.startsWith("--server.port=")) answer(Integer.parseInt(arg.substring(arg.indexOf('=') + 1)));
        }
        System.out.println("arguments: " + String.join(" ", args));
        Thread.sleep(60_000);
    }

    private static void answer(int port) throws IOException {
        HttpServer server = HttpServer.create(new InetSocketAddress("127.0.0.1", port), 0);
        server.createContext("/", exchange -> {
            exchange.sendResponseHeaders(401, -1);
            exchange.close();
        });
        server.start();
    }

    static Path jar(Path folder) throws IOException {
        Manifest manifest = new Manifest();
        manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
        manifest.getMainAttributes().put(Attributes.Name.MAIN_CLASS, TinyProgram.class.getName());
        Path jar = folder.resolve("tiny.jar");
        String entry = TinyProgram.class.getName().replace('.', '/') + ".class";
        try (OutputStream file = Files.newOutputStream(jar);
                JarOutputStream out = new JarOutputStream(file, manifest);
                InputStream in = TinyProgram.class.getResourceAsStream("TinyProgram.class")) {
            out.putNextEntry(new JarEntry(entry));
            in.transferTo(out);
        }
        return jar;
    }
}
