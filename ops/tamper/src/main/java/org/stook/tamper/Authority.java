package org.stook.tamper;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;

/** A time stamp authority (RFC 3161) on this machine: {@code openssl ts} makes its answers and judges its tokens. */
final class Authority implements AutoCloseable {
    private static final String CONFIGURATION = """
            [tsa]
            default_tsa = own
            [own]
            serial = serial
            signer_cert = own.pem
            signer_key = own-key.pem
            signer_digest = sha256
            default_policy = 1.3.6.1.4.1.99999.1
            digests = sha256, sha512
            accuracy = secs:1
            [vouched]
            basicConstraints = critical, CA:false
            keyUsage = critical, digitalSignature
            extendedKeyUsage = critical, timeStamping
            """;

    private final Path folder;
    private final HttpServer server;

    Authority(Path folder) throws IOException, InterruptedException {
        this.folder = Files.createDirectories(folder);
        Files.writeString(folder.resolve("tsa.cnf"), CONFIGURATION);
        Files.writeString(folder.resolve("serial"), "01\n");
        openssl("req -x509 -newkey rsa:2048 -nodes -keyout root-key.pem -out root.pem -days 30 -subj /CN=Harrow-Root");
        openssl("req -newkey rsa:2048 -nodes -keyout own-key.pem -out own.csr -subj /CN=Harrow-Time");
        openssl(
                "x509 -req -in own.csr -CA root.pem -CAkey root-key.pem -CAcreateserial -days 30 -extfile tsa.cnf -extensions vouched"
                        + " -out own.pem");
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", this::answer);
        server.start();
    }

    String address() {
        return "http://127.0.0.1:" + server.getAddress().getPort() + "/";
    }

    /** Of the one above it. */
    Path certificate() {
        return folder.resolve("root.pem");
    }

    /** Whether {@code openssl ts -verify} takes the token as a stamp of these words by this authority. */
    boolean takes(Path token, String words) throws IOException, InterruptedException {
        Files.writeString(folder.resolve("words"), words);
        Files.copy(token, folder.resolve("token"), StandardCopyOption.REPLACE_EXISTING);
        return run("ts -verify -data words -in token -token_in -CAfile root.pem") == 0;
    }

    private void answer(HttpExchange exchange) throws IOException {
        try (exchange) {
            Files.write(folder.resolve("query"), exchange.getRequestBody().readAllBytes());
            openssl("ts -reply -config tsa.cnf -section own -queryfile query -out reply");
            byte[] reply = Files.readAllBytes(folder.resolve("reply"));
            exchange.getResponseHeaders().set("Content-Type", "application/timestamp-reply");
            exchange.sendResponseHeaders(200, reply.length);
            exchange.getResponseBody().write(reply);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void openssl(String words) throws IOException, InterruptedException {
        if (run(words) != 0) {
            String log = Files.readString(folder.resolve("openssl.log"), StandardCharsets.UTF_8);
            throw new IOException("openssl " + words + " failed: " + log);
        }
    }

    private int run(String words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("openssl"));
        command.addAll(List.of(words.split(" ")));
        return new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("openssl.log").toFile())
                .start()
                .waitFor();
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
