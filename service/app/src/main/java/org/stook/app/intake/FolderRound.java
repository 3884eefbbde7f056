package org.stook.app.intake;

import java.io.IOException;
import org.springframework.stereotype.Component;
import org.stook.app.station.StationBook;
import org.stook.app.station.StationSettings;

/** One look at one folder: its files brought forward, its stacks made and sealed. */
@Component
class FolderRound {
    private final FolderIntake intake;
    private final FolderStacks folders;
    private final Streams streams;
    private final Rules rules;

    FolderRound(FolderIntake intake, FolderStacks folders, Streams streams, Rules rules) {
        this.intake = intake;
        this.folders = folders;
        this.streams = streams;
        this.rules = rules;
    }

    /** What a station's settings say, and what is done with a complete stack. */
    @Component
    record Rules(StationBook book, Completion completion, TableTalk talk) {}

    boolean foldersAreStacks(Stations.Station station) {
        return rules.book().settings(station.id()).splitting().folders() == StationSettings.Folders.STACK;
    }

    /** @return whether nothing more is to be done in this folder before something comes */
    boolean look(FolderIntake.Folder folder, FolderWatch watch, long now) throws IOException {
        StationSettings settings = rules.book().settings(folder.station().id());
        boolean open = intake.look(folder, watch, now, settings);
        boolean quiet = !open && watch.quiet(now, settings.patience().quiet());
        if (!folder.isStack()) {
            return streams.sort(folder.station(), folder.name(), quiet) && !open;
        }
        folders.collecting(folder.station(), folder.name()).ifPresent(rules.talk()::judge);
        Long stack = folders.ripe(folder.station(), folder.name());
        if (stack == null) {
            return !open;
        }
        if (!quiet || folders.unseen(stack)) {
            return false;
        }
        rules.completion().complete(stack, null);
        return true;
    }
}
