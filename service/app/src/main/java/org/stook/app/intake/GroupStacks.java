package org.stook.app.intake;

import java.sql.Types;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.app.sorting.Group;
import org.stook.app.sorting.Label;
import org.stook.app.sorting.Shot;
import org.stook.app.stack.Versions;
import org.stook.app.station.StationSettings;
import org.stook.orders.Actor;
import tools.jackson.databind.json.JsonMapper;

/** Writes groups of shots as stacks, and seals those that are complete. */
@Component
class GroupStacks {
    private static final String ACTOR = "intake";
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("uuuu-MM-dd HH.mm.ss", Locale.ROOT);
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    /**
     * @param ended whether nothing more will come
     * @param title whose it is, by an operator's manifest; null if its slates tell
     */
    record Wanted(
            Stations.Station station,
            StationSettings settings,
            Group group,
            boolean ended,
            ManifestFile.@Nullable Line title) {
        boolean complete() {
            return ended || group.closed();
        }
    }

    private final JdbcClient jdbc;
    private final TransactionOperations transaction;
    private final Versions versions;
    private final Completion completion;

    GroupStacks(JdbcClient jdbc, TransactionOperations transaction, Versions versions, Completion completion) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.versions = versions;
        this.completion = completion;
    }

    /**
     * @param taken stacks that earlier groups of this round have
     * @return the stack, if it still takes frames
     */
    Optional<Long> write(Wanted wanted, StreamShots.Pending pending, Set<Long> taken) {
        Long sealed = wanted.group().stack();
        if (sealed != null && wanted.group().isUnchanged()) {
            beside(sealed, wanted.group(), pending);
            return Optional.empty();
        }
        long stack = Objects.requireNonNull(transaction.execute(t -> {
            Actor.acts(jdbc, ACTOR);
            long id = stack(wanted, pending, taken);
            taken.add(id);
            name(wanted, id);
            assign(wanted.group(), id, pending);
            return id;
        }));
        if (wanted.complete()) {
            completion.complete(stack, wanted.group());
            return Optional.empty();
        }
        return Optional.of(stack);
    }

    /** Strays of a sealed stack change nothing of it; they are kept with it. */
    private void beside(long sealed, Group group, StreamShots.Pending pending) {
        boolean settled = group.fresh().stream()
                .map(shot -> pending.rows().get(shot.file()))
                .allMatch(row -> row != null && row.accepted());
        if (!settled) {
            return;
        }
        transaction.executeWithoutResult(t -> {
            Actor.acts(jdbc, ACTOR);
            assign(group, sealed, pending);
        });
        completion.setAside(group);
    }

    /** The stack that most of its shots are in already, unless an earlier group has it. */
    private long stack(Wanted wanted, StreamShots.Pending pending, Set<Long> taken) {
        Long sealed = wanted.group().stack();
        if (sealed != null) {
            return versions.open(sealed);
        }
        Map<Long, Integer> counts = new HashMap<>();
        Long most = null;
        for (Shot shot : wanted.group().fresh()) {
            StreamShots.Row row = pending.rows().get(shot.file());
            Long in = row == null ? null : row.stack();
            if (in == null || taken.contains(in)) continue;
            int count = counts.merge(in, 1, Integer::sum);
            if (most == null || count > counts.getOrDefault(most, 0)) most = in;
        }
        return most != null ? most : begin(wanted);
    }

    private long begin(Wanted wanted) {
        return jdbc.sql("insert into stook.stack (station_id, subject) values (:station, :subject) returning id")
                .param("station", wanted.station().id())
                .param("subject", provisional(wanted))
                .query(Long.class)
                .single();
    }

    private static String provisional(Wanted wanted) {
        Group group = wanted.group();
        Shot first = Stream.concat(group.slates().stream(), group.sweep().stream())
                .findFirst()
                .orElseGet(() -> group.strays().get(0).shot());
        return wanted.station().name() + " " + WHEN.format(first.time());
    }

    private void name(Wanted wanted, long stack) {
        ManifestFile.Line title = wanted.title();
        if (title != null) {
            jdbc.sql("""
                            update stook.stack set subject = :subject, view_name = nullif(:view, ''), named = true, question = null
                            where id = :stack and not named""")
                    .param("subject", title.subject())
                    .param("view", title.view())
                    .param("stack", stack)
                    .update();
            return;
        }
        StationSettings.Slates slates = wanted.settings().splitting().slates();
        boolean due =
                slates == StationSettings.Slates.FIRST || slates == StationSettings.Slates.LAST && wanted.complete();
        Group group = wanted.group();
        List<Shot> labelled = group.slates().isEmpty() ? group.sweep() : group.slates();
        Label label = Label.of(labelled, wanted.settings().roles(), due);
        String question = group.slates().isEmpty() && label.codes().isEmpty() && !due ? null : label.question();
        jdbc.sql("""
                        update stook.stack set subject = case when named then subject else :subject end,
                          view_name = case when named then view_name else cast(:view as text) end,
                          question = case when named then null else cast(:question as text) end,
                          codes = case when :codes = '[]' then codes else cast(:codes as jsonb) end
                        where id = :stack and (not named or :codes <> '[]')
                          and (subject, view_name, question, codes::text) is distinct from
                            (cast(:subject as text), cast(:view as text), cast(:question as text), cast(:codes as jsonb)::text)""")
                .param("subject", label.subject() == null ? provisional(wanted) : label.subject())
                .param("view", label.view(), Types.VARCHAR)
                .param("question", question, Types.VARCHAR)
                .param(
                        "codes",
                        MAPPER.writeValueAsString(
                                label.codes().stream().distinct().toList()))
                .param("stack", stack)
                .update();
    }

    private void assign(Group group, long stack, StreamShots.Pending pending) {
        group.slates().forEach(shot -> assign(shot, stack, "SLATE", pending));
        Set<Long> slates = new java.util.HashSet<>();
        group.slates().forEach(shot -> slates.add(shot.file()));
        group.fresh().stream()
                .filter(shot -> !slates.contains(shot.file()))
                .forEach(shot -> assign(shot, stack, "FRAME", pending));
    }

    private void assign(Shot shot, long stack, String role, StreamShots.Pending pending) {
        StreamShots.Row row = pending.rows().get(shot.file());
        if (row != null && row.role().equals(role) && Objects.equals(row.stack(), stack)) {
            return;
        }
        jdbc.sql("update stook.intake_file set stack_id = :stack, role = :role where id = :id")
                .param("stack", stack)
                .param("role", role)
                .param("id", shot.file())
                .update();
        jdbc.sql("update stook.stack set reason = null where id = :stack and reason is not null")
                .param("stack", stack)
                .update();
    }

    /** Stacks whose shots all turned out to belong elsewhere. */
    void clear(Stations.Station station) {
        transaction.executeWithoutResult(t -> {
            Actor.acts(jdbc, ACTOR);
            jdbc.sql("""
                            update stook.stack s set state = 'ASIDE', reason = 'its frames turned out to belong to other stacks'
                            where station_id = :station and state = 'COLLECTING' and folder is null
                              and not exists (select 1 from stook.intake_file f where f.stack_id = s.id)""").param("station", station.id()).update();
        });
    }
}
