package org.stook.app.intake;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.springframework.stereotype.Component;
import org.stook.app.sorting.Group;
import org.stook.app.sorting.Shot;
import org.stook.app.sorting.Sorter;
import org.stook.app.station.StationBook;
import org.stook.app.station.StationSettings;

/**
 * Sorts frames that lie among those of other stacks. All that is not sealed is sorted anew whenever there is something new, so
 * that a frame that comes late or out of order finds its stack, and nothing but the database is needed after a restart.
 */
@Component
class Streams {
    private final StreamShots shots;
    private final GroupStacks stacks;
    private final StationBook book;
    private final TableTalk talk;
    private final OperatorManifests manifests;

    Streams(StreamShots shots, GroupStacks stacks, StationBook book, TableTalk talk, OperatorManifests manifests) {
        this.shots = shots;
        this.stacks = stacks;
        this.book = book;
        this.talk = talk;
        this.manifests = manifests;
    }

    /**
     * @param quiet whether nothing has come for so long that the last stack is over
     * @return whether nothing more is to be done before something comes
     */
    boolean sort(Stations.Station station, String folder, boolean quiet) {
        StationSettings settings = book.settings(station.id());
        StreamShots.Pending pending = shots.pending(station, folder);
        boolean ended = quiet && pending.unseen().isEmpty();
        Map<String, List<Shot>> cameras = new LinkedHashMap<>();
        Set<Long> taken = new HashSet<>();
        unlisted(station, folder, pending, ended, taken)
                .forEach(shot -> cameras.computeIfAbsent(shot.setting().camera(), c -> new ArrayList<>())
                        .add(shot));
        cameras.forEach((camera, all) -> {
            LocalDateTime limit = pending.unseen().get(camera);
            List<Shot> known = all.stream()
                    .filter(shot -> limit == null || shot.time().isBefore(limit))
                    .sorted(Shot.BY_TIME)
                    .toList();
            for (Iterator<List<Shot>> parts = Sorter.parts(known).iterator(); parts.hasNext(); ) {
                List<Shot> part = parts.next();
                boolean over = ended || parts.hasNext();
                for (Group group : sorted(station, part, settings, over)) {
                    stacks.write(new GroupStacks.Wanted(station, settings, group, over, null), pending, taken)
                            .ifPresent(talk::judge);
                }
            }
        });
        stacks.clear(station);
        shots.forget();
        return ended;
    }

    /** Makes the stacks of the operator's manifests. @return the other shots */
    private List<Shot> unlisted(
            Stations.Station station, String folder, StreamShots.Pending pending, boolean ended, Set<Long> taken) {
        List<Shot> rest = new ArrayList<>(pending.shots());
        StationSettings settings = book.settings(station.id());
        for (ManifestFile.Line line : manifests.of(station, folder)) {
            List<Shot> listed = rest.stream()
                    .filter(shot -> shot.name().compareTo(line.first()) >= 0
                            && shot.name().compareTo(line.last()) <= 0)
                    .toList();
            rest.removeAll(listed);
            if (!listed.isEmpty()) {
                Group group = Sorter.together(listed, settings.splitting());
                stacks.write(new GroupStacks.Wanted(station, settings, group, ended, line), pending, taken)
                        .ifPresent(talk::judge);
            }
        }
        return rest;
    }

    private List<Group> sorted(Stations.Station station, List<Shot> part, StationSettings settings, boolean over) {
        Shot first = part.get(0);
        Shot last = part.get(part.size() - 1);
        List<Sorter.Sealed> sealed = shots.sealed(
                station,
                first.setting().camera(),
                first.time().minus(Sorter.MOUNTED),
                last.time().plus(Sorter.MOUNTED));
        return Sorter.sort(sealed, part, settings.splitting(), over).groups();
    }
}
