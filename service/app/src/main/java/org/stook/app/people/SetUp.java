package org.stook.app.people;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.DependsOn;
import org.springframework.stereotype.Component;

/**
 * The first start: as long as there is no administrator, a code that is new with every start makes one. It is in the log and
 * in a file that only the service's own user can read; the file goes when it is used.
 */
@Component
@DependsOn("migrated")
public class SetUp {
    private static final Logger LOG = LoggerFactory.getLogger(SetUp.class);

    private final People people;
    private final Entry entry;
    private final Path file;
    private @Nullable String sha256;

    public SetUp(People people, Entry entry, @Value("${stook.setup-file:setup-code}") Path file) {
        this.people = people;
        this.entry = entry;
        this.file = file.toAbsolutePath();
        if (people.administered()) {
            remove();
        } else {
            offer();
        }
    }

    /** Whether an administrator is still missing. */
    public synchronized boolean open() {
        return sha256 != null && !people.administered();
    }

    /**
     * Makes the first administrator and ends the set-up.
     *
     * @return false if the code is not the one, or there is an administrator already
     * @throws IllegalArgumentException if the name or the password will not do; the code still holds then
     */
    public synchronized boolean accept(String code, String name, String password) {
        if (sha256 == null || !OneTimeCode.matches(code, sha256) || !entry.first(name, password)) {
            return false;
        }
        sha256 = null;
        remove();
        return true;
    }

    private void offer() {
        String code = OneTimeCode.fresh();
        sha256 = OneTimeCode.sha256(code);
        LOG.warn("There is no administrator yet. Open /setup and enter the code {} (it is in {} too).", code, file);
        try {
            Files.deleteIfExists(file);
            Set<StandardOpenOption> options = EnumSet.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            try (var channel = Files.newByteChannel(file, options, ownerOnly())) {
                channel.write(java.nio.ByteBuffer.wrap((code + "\n").getBytes(StandardCharsets.US_ASCII)));
            }
        } catch (IOException e) {
            LOG.warn("The set-up code could not be written to {} ({}); it is in this log only.", file, e.toString());
        }
    }

    private static FileAttribute<?>[] ownerOnly() {
        return FileSystems.getDefault().supportedFileAttributeViews().contains("posix")
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                }
                : new FileAttribute<?>[0];
    }

    private void remove() {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            LOG.warn("The used set-up code in {} could not be removed: {}", file, e.toString());
        }
    }
}
