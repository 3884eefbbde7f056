package org.stook.drills.check;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.drills.stage.Material;

/**
 * Checks after a drill that the history is one that may be: from the audit entries, which the database wrote by itself, from
 * the tables, and from the files on the share. The checks know nothing of what the drill did.
 */
public final class History {
    private record Rule(String meaning, String offenders) {}

    /** Each query names the offenders. */
    private static final List<Rule> RULES = List.of(
            new Rule("a run is published more than once, by its audit entries", """
                    select subject from stook.audit_entry where kind = 'run.PUBLISHING-PUBLISHED'
                    group by subject having count(*) > 1"""),
            new Rule("a run says that it is published and has no publication, or the other way round", """
                    select 'run/' || r.id from stook.run r left join stook.publication p on p.run_id = r.id
                    where (r.state in ('PUBLISHED', 'SUPERSEDED')) <> (p.run_id is not null)"""),
            new Rule("a publication is not by the run's last attempt", """
                    select 'run/' || r.id from stook.run r join stook.publication p on p.run_id = r.id where p.attempt <> r.attempt"""),
            new Rule("a run is neither at an end nor waiting for a person", """
                    select 'run/' || id || ' ' || state from stook.run where state in ('READY', 'RUNNING', 'PUBLISHING')"""),
            new Rule("a run took a way that is none", """
                    select subject || ' ' || kind from (
                      select subject, kind, split_part(substr(kind, 5), '-', 1) as f, split_part(substr(kind, 5), '-', 2) as t,
                        lag(split_part(substr(kind, 5), '-', 2), 1, 'READY') over (partition by subject order by id) as before
                      from stook.audit_entry where kind ~ '^run[.][A-Z]+-[A-Z]+$' and kind <> 'run.CANCEL-REQUESTED') w
                    where f <> before or not exists (select 1 from stook.run_transition x where x.from_state = f and x.to_state = t)"""),
            new Rule("a run's state is not where its audit entries end", """
                    select 'run/' || r.id || ' ' || r.state from stook.run r where r.state <> coalesce(
                      (select split_part(substr(e.kind, 5), '-', 2) from stook.audit_entry e where e.subject = 'run/' || r.id
                        and e.kind ~ '^run[.][A-Z]+-[A-Z]+$' and e.kind <> 'run.CANCEL-REQUESTED' order by e.id desc limit 1), 'READY')"""),
            new Rule("attempts are missing or still open", """
                    select 'run/' || r.id from stook.run r
                    where (select count(*) filter (where a.ended_at is not null) from stook.attempt a where a.run_id = r.id)
                      <> r.attempt"""),
            new Rule("claims in the audit entries differ from the attempts", """
                    select 'run/' || r.id from stook.run r where r.attempt <> (select count(*) from stook.audit_entry e
                      where e.subject = 'run/' || r.id and e.kind in ('run.READY-RUNNING', 'run.PUBLISHING-PUBLISHING'))"""),
            new Rule("a run that is over is still in the queue", """
                    select 'run/' || r.id || ' ' || r.state from stook.run r join jobs.scheduled_tasks t on t.task_instance = r.id::text
                    where r.state not in ('READY', 'RUNNING', 'PUBLISHING')"""),
            new Rule("a person had to repair something", """
                    select subject || ' ' || kind || ' by ' || actor from stook.audit_entry
                    where kind in ('run.FAILED-READY', 'run.QUARANTINED-READY', 'run.HELD-READY') and actor not like 'operator%'"""));

    private final JdbcClient jdbc;
    private final Path wall;

    public History(JdbcClient jdbc, Path wall) {
        this.jdbc = jdbc;
        this.wall = wall;
    }

    /** Sentences on what may not be; empty if the history is sound. */
    public List<String> violations() {
        List<String> found = new ArrayList<>();
        for (Rule rule : RULES) {
            List<String> offenders =
                    jdbc.sql(rule.offenders()).query(String.class).list();
            if (!offenders.isEmpty()) {
                found.add(rule.meaning() + ": " + String.join(", ", offenders));
            }
        }
        found.addAll(files());
        return found;
    }

    private List<String> files() {
        record Official(String name, String sha256) {}
        List<Official> official = jdbc.sql("""
                        select name, sha256 from stook.publication
                        union all select f ->> 'name', f ->> 'sha256' from stook.publication, jsonb_array_elements(files) f""")
                .query((row, n) -> new Official(row.getString(1), row.getString(2)))
                .list();
        List<String> found = new ArrayList<>();
        Set<String> names = new TreeSet<>();
        Set<String> stems = new TreeSet<>();
        for (Official file : official) {
            names.add(file.name());
            if (file.name().endsWith(".tif")) {
                // Whole folders stand beside a master, such as its tiles; the publication names one file of each.
                stems.add(file.name().substring(0, file.name().length() - ".tif".length()) + ".");
            }
            String hash = hash(wall.resolve(file.name()));
            if (!hash.equals(file.sha256())) {
                found.add(file.name() + " is " + hash + ", published as " + file.sha256());
            }
        }
        lying().stream()
                .filter(name -> !names.contains(name) && stems.stream().noneMatch(name::startsWith))
                .forEach(name -> found.add(name + " is not official"));
        return found;
    }

    private static String hash(Path file) {
        try {
            return Files.exists(file) ? Material.sha256(Files.readAllBytes(file)) : "missing";
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Files under final names, relative to the share. */
    private List<String> lying() {
        Path done = wall.resolve("done");
        if (!Files.exists(done)) {
            return List.of();
        }
        try (Stream<Path> files = Files.walk(done)) {
            return files.filter(Files::isRegularFile)
                    .map(f -> wall.relativize(f).toString())
                    .filter(f -> !f.contains("/.staging/"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
