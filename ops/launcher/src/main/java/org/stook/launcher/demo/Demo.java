package org.stook.launcher.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import org.stook.launcher.LaunchFailure;
import org.stook.launcher.Studio;
import org.stook.scenes.file.CameraDrop;

/** Shoots the pieces, then waits for their composites and tells about them. */
final class Demo {
    private static final long LOOK_EVERY_MS = 500;

    private final Studio studio;
    private final List<Shoot> shoots;
    private final Consumer<String> say;
    private final Map<String, String> told = new LinkedHashMap<>();

    Demo(Studio studio, List<Shoot> shoots, Consumer<String> say) {
        this.studio = studio;
        this.shoots = shoots;
        this.say = say;
    }

    /**
     * @param pace from frame to frame
     * @param limit from the last frame to the last composite
     * @return whether all were published
     */
    boolean run(Duration pace, Duration limit) throws IOException, InterruptedException {
        ExecutorService renderer = Executors.newSingleThreadExecutor(Demo::daemon);
        List<Future<List<CameraDrop>>> rendered =
                shoots.stream().map(shoot -> renderer.submit(shoot::drops)).toList();
        renderer.shutdown();
        try (Connection connection = studio.connect()) {
            Results results = new Results(connection);
            say.accept("the frames are rendered, which takes the most of the time on a small machine");
            for (int i = 0; i < shoots.size(); i++) {
                drop(shoots.get(i), rendered.get(i).get(), pace);
                tellProgress(results);
            }
            boolean all = await(results, limit);
            for (Shoot shoot : shoots) tell(results, subject(shoot));
            return all;
        } catch (ExecutionException e) {
            throw new IllegalStateException("a frame could not be rendered", e.getCause());
        } catch (SQLException e) {
            throw new LaunchFailure("the database could not be asked: " + e.getMessage());
        }
    }

    private void drop(Shoot shoot, List<CameraDrop> drops, Duration pace) throws IOException, InterruptedException {
        Files.createDirectories(shoot.folder());
        say.accept("the camera drops " + subject(shoot) + ", " + drops.size() + " files");
        for (CameraDrop drop : drops) {
            long end = System.nanoTime() + pace.toNanos();
            while (!drop.step()) Thread.sleep(pace.toMillis() / 8);
            Thread.sleep(Math.max(0, (end - System.nanoTime()) / 1_000_000));
        }
    }

    private boolean await(Results results, Duration limit) throws SQLException, IOException, InterruptedException {
        long end = System.nanoTime() + limit.toNanos();
        while (missing(results).size() > 0) {
            tellProgress(results);
            if (System.nanoTime() > end) return false;
            Thread.sleep(LOOK_EVERY_MS);
        }
        return true;
    }

    private List<String> missing(Results results) throws SQLException, IOException {
        List<String> missing = new ArrayList<>();
        for (Shoot shoot : shoots) {
            if (results.composite(subject(shoot)).isEmpty()) missing.add(subject(shoot));
        }
        return missing;
    }

    private void tellProgress(Results results) throws SQLException {
        for (Shoot shoot : shoots) {
            String subject = subject(shoot);
            String state = results.state(subject);
            if (!state.equals(told.put(subject, state))) say.accept(subject + ": " + state);
        }
    }

    private void tell(Results results, String subject) throws SQLException, IOException {
        say.accept("");
        Optional<Composite> composite = results.composite(subject);
        if (composite.isPresent()) tell(subject, composite.get());
        else say.accept(subject + ": NOT PUBLISHED, " + results.state(subject));
        results.setAside(subject).forEach(this::tell);
        composite.ifPresent(c -> c.strays().forEach(this::tell));
    }

    private void tell(String subject, Composite composite) {
        say.accept(subject + ": score " + composite.score() + " of 100, verdict " + composite.verdict());
        composite.sentences().forEach(sentence -> say.accept("  because    " + sentence));
        say.accept("  composite  " + composite.file());
    }

    private void tell(Composite.SetAside aside) {
        String name = aside.file().substring(aside.file().lastIndexOf('/') + 1);
        String reason = aside.reason();
        say.accept("  set aside  " + (reason.startsWith(name) ? reason : name + ": " + reason));
    }

    private static Thread daemon(Runnable work) {
        Thread thread = new Thread(work, "renderer");
        thread.setDaemon(true);
        return thread;
    }

    private static String subject(Shoot shoot) {
        return shoot.folder().getFileName().toString();
    }
}
