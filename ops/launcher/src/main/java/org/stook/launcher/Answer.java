package org.stook.launcher;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;

/** Waits until a service answers. */
final class Answer {
    private static final Duration PATIENCE = Duration.ofSeconds(180);
    private static final Duration BETWEEN = Duration.ofMillis(200);

    private Answer() {}

    /** @throws LaunchFailure with the end of the log if the child ends or stays silent */
    static void await(URI page, Child child, ChildPlan plan) throws IOException {
        HttpClient client =
                HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(2)).build();
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!answers(client, page)) {
            if (!child.alive()) throw failure(plan, "ended while it started");
            if (System.nanoTime() > end) {
                throw failure(plan, "did not answer at " + page + " within " + PATIENCE.toSeconds() + " s");
            }
            pause();
        }
    }

    /** Any answer will do, a demand to sign in as well. */
    private static boolean answers(HttpClient client, URI page) {
        try {
            HttpRequest request =
                    HttpRequest.newBuilder(page).timeout(Duration.ofSeconds(5)).build();
            return client.send(request, HttpResponse.BodyHandlers.discarding()).statusCode() < 500;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private static LaunchFailure failure(ChildPlan plan, String what) {
        return new LaunchFailure(
                "the " + plan.name() + " " + what + "; its log " + plan.log() + " ends:\n  " + plan.logEnd());
    }

    private static void pause() throws LaunchFailure {
        try {
            Thread.sleep(BETWEEN.toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new LaunchFailure("interrupted while the service was starting", e);
        }
    }
}
