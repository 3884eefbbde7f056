package org.stook.app.queue;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.util.FileSystemUtils;
import org.stook.app.audit.AuditTrail;

/**
 * Clears away what lost attempts left where composites go: staged files that nobody will place any more are deleted, placed
 * files that never became official are moved to the folder {@value #ORPHANS}, where a person may look at them. It goes by
 * what the database knows of each run, never by the clock of a file, and touches nothing whose name no run ever announced.
 */
@Component
public class Janitor {
    static final String ORPHANS = ".orphans";
    private static final String STAGING = ".staging";
    private static final Logger LOG = LoggerFactory.getLogger(Janitor.class);
    private static final Pattern STAGED = Pattern.compile("(\\d{1,18})\\.(\\d{1,9})\\.part(\\..+)?");
    /** How long a run must have been left alone: a worker that wakes up late still cleans up by itself. */
    private static final int MINUTES_LEFT_ALONE = 60;

    private final JdbcClient jdbc;
    private final AuditTrail audit;

    Janitor(JdbcClient jdbc, AuditTrail audit) {
        this.jdbc = jdbc;
        this.audit = audit;
    }

    /** One round over all shares that are there. */
    public void step() {
        for (Outputs.Output output : Outputs.of(jdbc)) {
            if (output.isThere()) {
                output.folders().forEach(folder -> clearStaging(output, folder));
                unofficial(output.shareId()).forEach(name -> setAside(output, name));
            }
        }
    }

    private void clearStaging(Outputs.Output output, String folder) {
        Path staging = output.root().resolve(folder).resolve(STAGING);
        try (DirectoryStream<Path> files = Files.newDirectoryStream(staging)) {
            for (Path file : files) {
                Matcher name = STAGED.matcher(String.valueOf(file.getFileName()));
                if (name.matches() && isAbandoned(Long.parseLong(name.group(1)), Integer.parseInt(name.group(2)))) {
                    FileSystemUtils.deleteRecursively(file);
                    LOG.info("{}: left by a lost attempt, deleted", file);
                }
            }
        } catch (NoSuchFileException e) {
            LOG.debug("nothing was ever staged in {}", staging);
        } catch (IOException e) {
            LOG.warn("{} could not be cleared and is tried again: {}", staging, e.toString());
        }
    }

    /** Whether neither this attempt nor one that takes over its result will come for it. */
    private boolean isAbandoned(long run, int attempt) {
        return jdbc.sql("""
                        select not exists (select 1 from stook.run where id = :run and (
                          changed_at > now() - make_interval(mins => :minutes)
                          or (state = 'RUNNING' and attempt <= :attempt)
                          or (state = 'PUBLISHING' and '/' || staged_name like '%/' || :file)))""")
                .param("run", run)
                .param("attempt", attempt)
                .param("file", run + "." + attempt + ".part")
                .param("minutes", MINUTES_LEFT_ALONE)
                .query(Boolean.class)
                .single();
    }

    /** Names announced for publication on the share by runs that then went another way. */
    private List<String> unofficial(long shareId) {
        return jdbc.sql("""
                        select distinct e.body ->> 'name' as name
                        from stook.run r join stook.stack s on s.id = r.stack_id join stook.station st on st.id = s.station_id
                          join stook.audit_entry e on e.subject = 'run/' || r.id and e.kind = 'run.RUNNING-PUBLISHING'
                        where coalesce(st.publish_share_id, st.intake_share_id) = :share
                          and r.changed_at between now() - interval '30 days' and now() - make_interval(mins => :minutes)
                          and (r.attempt > 1 or r.state <> 'PUBLISHED')
                          and not (r.state = 'PUBLISHING' and r.result_name = e.body ->> 'name')
                          and not exists (select 1 from stook.publication p
                            where p.share_id = :share and p.name = e.body ->> 'name')
                        order by name""")
                .param("share", shareId)
                .param("minutes", MINUTES_LEFT_ALONE)
                .query(String.class)
                .list();
    }

    private void setAside(Outputs.Output output, String name) {
        Path master = output.root().resolve(name);
        Path folder = master.getParent();
        String file = String.valueOf(master.getFileName());
        String stem = file.substring(0, Math.max(0, file.lastIndexOf('.')));
        if (folder == null || stem.isEmpty()) {
            return;
        }
        try (DirectoryStream<Path> files = Files.newDirectoryStream(
                folder, f -> String.valueOf(f.getFileName()).startsWith(stem + "."))) {
            for (Path found : files) {
                move(found, output.root().resolve(ORPHANS).resolve(output.root().relativize(found)));
            }
        } catch (NoSuchFileException e) {
            LOG.debug("nothing was placed in {}", folder);
        } catch (IOException e) {
            LOG.warn("{} could not be set aside and is tried again: {}", master, e.toString());
        }
    }

    private void move(Path from, Path to) throws IOException {
        Path folder = to.getParent();
        if (folder != null) {
            Files.createDirectories(folder);
        }
        Files.move(from, to);
        audit.write("share.ORPHAN", "file/" + from.getFileName());
        LOG.warn("{}: no publication of this name, moved to {}", from, to);
    }
}
