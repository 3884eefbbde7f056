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
import org.jspecify.annotations.Nullable;

/**
 * Whom the server runs as. PostgreSQL refuses uid 0, so root either enters a user namespace, where it is nobody in
 * particular while the files stay its own, or, where that is refused (many containers), becomes {@code nobody} for good.
 * A folder that belongs to somebody else already is served as that user.
 */
final class Account {
    private final List<String> prefix;
    private final @Nullable String user;

    private Account(List<String> prefix, @Nullable String user) {
        this.prefix = prefix;
        this.user = user;
    }

    /** Finds the way that works here; {@code -Dstook.postgres.account=nobody} forces the second one for root. */
    static Account detect(Path home) throws IOException {
        if (!"0".equals(Command.outputOf("id", "-u"))) {
            return new Account(List.of(), null);
        }
        String owner = Files.getOwner(home).getName();
        if (!owner.equals("root")) {
            return user(owner);
        }
        boolean forced = "nobody".equals(System.getProperty("stook.postgres.account"));
        return !forced && Command.exitOf("unshare", "-U", "true") == 0
                ? new Account(List.of("unshare", "-U"), null)
                : user("nobody");
    }

    static Account user(String name) throws IOException {
        String group = Command.outputOf("id", "-g", name);
        return new Account(List.of("setpriv", "--reuid=" + name, "--regid=" + group, "--clear-groups"), name);
    }

    /**
     * Where the programs are unpacked: in the folder that the environment's {@code STOOK_POSTGRES_PROGRAMS} names for all servers
     * here, else in {@code home}; always there for another user, who might not get to the common folder.
     */
    Path programs(Path home) throws IOException {
        String common = System.getenv("STOOK_POSTGRES_PROGRAMS");
        return common == null || user != null ? home : Files.createDirectories(Path.of(common));
    }

    /** What to put before a command. */
    List<String> prefix() {
        return prefix;
    }

    /** Gives {@code home} and what is in it to the account, and checks that the account can get there. */
    void own(Path home) throws IOException {
        if (user == null) {
            return;
        }
        checkWay(home, user);
        UserPrincipal owner =
                home.getFileSystem().getUserPrincipalLookupService().lookupPrincipalByName(user);
        try (Stream<Path> all = Files.walk(home)) {
            for (Path p : (Iterable<Path>) all::iterator) {
                Files.getFileAttributeView(p, FileOwnerAttributeView.class, LinkOption.NOFOLLOW_LINKS)
                        .setOwner(owner);
            }
        }
    }

    private static void checkWay(Path home, String user) throws IOException {
        for (Path p = home.toRealPath().getParent(); p != null; p = p.getParent()) {
            boolean passes = Files.getPosixFilePermissions(p).contains(PosixFilePermission.OTHERS_EXECUTE)
                    || Files.getOwner(p).getName().equals(user);
            if (!passes) {
                throw new PostgresUnavailable("PostgreSQL must not run as root, and user " + user + " cannot enter " + p
                        + " on the way to " + home + "; run as an ordinary user, or choose a data folder such as one"
                        + " below /var/lib or /srv");
            }
        }
    }
}
