package org.stook.postgres;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileOwnerAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.UserPrincipal;
import java.util.List;
import java.util.stream.Stream;

/**
 * Whom the server runs as. PostgreSQL refuses uid 0, so root either enters a user namespace, where it is nobody in
 * particular while the files stay its own, or, where that is refused (many containers), becomes {@code nobody} for good.
 */
enum Account {
    /** Not root: nothing to do. */
    OWN(List.of()),
    /** Root in a user namespace of its own. */
    NAMESPACE(List.of("unshare", "-U")),
    /** Root that gives the folder and the processes to {@code nobody}. */
    NOBODY(List.of("setpriv", "--reuid=nobody", "--regid=nogroup", "--clear-groups"));

    private final List<String> prefix;

    Account(List<String> prefix) {
        this.prefix = prefix;
    }

    /** Finds the way that works here; {@code -Dstook.postgres.account=nobody} forces the second one for root. */
    static Account detect() throws IOException {
        if (!"0".equals(Command.outputOf("id", "-u"))) {
            return OWN;
        }
        boolean forced = "nobody".equalsIgnoreCase(System.getProperty("stook.postgres.account"));
        return !forced && Command.exitOf("unshare", "-U", "true") == 0 ? NAMESPACE : NOBODY;
    }

    List<String> prefix() {
        return prefix;
    }

    /** Gives {@code home} and what is in it to the account, and checks that the account can get there. */
    void own(Path home) throws IOException {
        if (this != NOBODY) {
            return;
        }
        for (Path p = home.toRealPath().getParent(); p != null; p = p.getParent()) {
            if (!Files.getPosixFilePermissions(p).contains(PosixFilePermission.OTHERS_EXECUTE)) {
                throw new PostgresUnavailable("PostgreSQL must not run as root, and user nobody cannot enter " + p
                        + " on the way to " + home
                        + "; run as an ordinary user, or choose a data folder such as one below"
                        + " /var/lib or /srv");
            }
        }
        UserPrincipal nobody =
                home.getFileSystem().getUserPrincipalLookupService().lookupPrincipalByName("nobody");
        try (Stream<Path> all = Files.walk(home)) {
            for (Path p : (Iterable<Path>) all::iterator) {
                Files.getFileAttributeView(p, FileOwnerAttributeView.class, LinkOption.NOFOLLOW_LINKS)
                        .setOwner(nobody);
            }
        }
    }
}
