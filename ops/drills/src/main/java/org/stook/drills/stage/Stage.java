package org.stook.drills.stage;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.stook.migrations.Schema;
import org.stook.orders.NewRun;
import org.stook.orders.Priorities;
import org.stook.orders.RunId;
import org.stook.orders.Runs;
import org.stook.orders.Upkeep;
import org.stook.orders.WorkOrder;

/** A studio for drills: a database, two shares on disk, one station, and slots for real worker processes. */
public final class Stage implements AutoCloseable {
    /**
     * @param width of the frames
     * @param height of the frames
     * @param durable whether the database waits for the disk
     * @param schema newest migration of the database
     */
    public record Plan(int width, int height, boolean durable, int schema) {
        public Plan(int width, int height, boolean durable) {
            this(width, height, durable, Schema.NEWEST);
        }
    }

    private static final String SETTINGS = "cd".repeat(32);

    private final Path folder;
    private final Database database;
    private final JdbcClient jdbc;
    private final Path wall;
    private final Material material;
    private final Runs runs;
    private final Upkeep upkeep;
    private final List<Slot> slots = new ArrayList<>();
    private @Nullable SmallDisk smallDisk;

    private Stage(Path folder, Database database, Plan plan) throws IOException {
        this.folder = folder;
        this.database = database;
        this.jdbc = JdbcClient.create(database.source());
        DataSourceTransactionManager transactions = new DataSourceTransactionManager(database.source());
        this.runs = new Runs(database.source(), transactions);
        this.upkeep = new Upkeep(database.source(), transactions);
        Path card = share("card", "INTAKE");
        this.wall = share("wall", "PUBLISH");
        this.material = new Material(card, jdbc, plan.width(), plan.height());
        jdbc.sql("insert into stook.tone_settings (id, body) values (?, '{}')")
                .param(SETTINGS)
                .update();
        jdbc.sql("insert into stook.station (name, intake_share_id, intake_folder, publish_share_id, publish_folder)"
                        + " values ('north', 1, 'north', 2, 'done')")
                .update();
    }

    /** @param folder is emptied first */
    public static Stage open(Path folder, Plan plan) throws IOException, SQLException, InterruptedException {
        Processes.must(List.of("rm", "-rf", folder.toString()));
        Files.createDirectories(folder);
        return new Stage(folder, Database.open(folder.resolve("postgres"), plan.durable(), plan.schema()), plan);
    }

    private Path share(String name, String kind) throws IOException {
        Path root = Files.createDirectories(folder.resolve(name));
        UUID sentinel = jdbc.sql("insert into stook.share (name, kind, root) values (?, ?, ?) returning sentinel")
                .params(name, kind, root.toString())
                .query(UUID.class)
                .single();
        mark(root, sentinel.toString());
        return root;
    }

    private static void mark(Path root, String sentinel) throws IOException {
        Files.writeString(root.resolve(WorkOrder.Share.SENTINEL), sentinel + "\n");
    }

    /** Puts the output share on a small disk of its own, which can be filled, locked and taken away. */
    public SmallDisk shrinkWall(int mebibytes) throws IOException, InterruptedException {
        String sentinel = Files.readString(wall.resolve(WorkOrder.Share.SENTINEL));
        // A true mount point has no mark of its own below what is mounted there.
        Files.delete(wall.resolve(WorkOrder.Share.SENTINEL));
        SmallDisk disk = SmallDisk.mount(folder.resolve("disk"), wall, mebibytes);
        smallDisk = disk;
        mark(wall, sentinel.strip());
        return disk;
    }

    /** What {@link #shrinkWall} made. */
    public SmallDisk smallDisk() {
        return Objects.requireNonNull(smallDisk, "the output share is not on a small disk");
    }

    /** Starts a worker in a slot of its own. */
    public Slot hire(Program program, Slot.Setup setup) throws IOException, InterruptedException {
        String name = "w" + (slots.size() + 1);
        Namespace host = setup.ownHost() ? Namespace.create(slots.size() + 1) : null;
        Wire wire = Wire.to(database.port(), host == null ? InetAddress.getLoopbackAddress() : host.gateway());
        List<String> settings = new ArrayList<>(List.of(
                "spring.datasource.url=" + Database.url(wire.host(), wire.port()),
                "spring.datasource.username=" + database.username(),
                "spring.datasource.password=" + database.password(),
                "stook.worker.id=" + name,
                "stook.worker.threads=1",
                "stook.worker.rehearse=false",
                "stook.worker.scratch=" + folder.resolve("scratch")));
        settings.addAll(setup.settings());
        MemoryLimit limit = setup.memory() == 0 ? null : MemoryLimit.of(slots.size() + 1, setup.memory());
        Slot slot = new Slot(
                name,
                wire,
                confined(limit, host, program.command(setup.javaOptions(), settings)),
                Skew.environment(setup.environment(), folder),
                folder.resolve(name + ".log"));
        slots.add(slot);
        if (host != null) {
            slot.on(host);
        }
        if (limit != null) {
            slot.under(limit);
        }
        slot.open();
        return slot;
    }

    private static List<String> confined(@Nullable MemoryLimit limit, @Nullable Namespace host, List<String> command) {
        List<String> hosted = host == null ? command : host.command(command);
        return limit == null ? hosted : limit.command(hosted);
    }

    public List<Slot> slots() {
        return List.copyOf(slots);
    }

    /** Orders a run of a sealed stack. */
    public RunId order(long stack, int priority) {
        return runs.create(new NewRun(stack, SETTINGS, priority, "photographer"));
    }

    /** Orders runs of that many stacks of the same five frames. */
    public List<RunId> orderMinerals(int count) throws IOException {
        List<String> paths = material.lay("north/mineral", material.mineral());
        List<RunId> ordered = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            ordered.add(order(material.stack("Mineral " + i, paths), Priorities.NORMAL));
        }
        return ordered;
    }

    /** How many runs are neither published nor at any other end. */
    public int open() {
        return jdbc.sql("select count(*) from stook.run where state in ('READY', 'RUNNING', 'PUBLISHING')")
                .query(Integer.class)
                .single();
    }

    /** How many tasks are in the queue, of whatever runs. */
    public int queued() {
        return jdbc.sql("select count(*) from jobs.scheduled_tasks")
                .query(Integer.class)
                .single();
    }

    public Material material() {
        return material;
    }

    public JdbcClient jdbc() {
        return jdbc;
    }

    public Database database() {
        return database;
    }

    public Runs runs() {
        return runs;
    }

    /** What the service does every minute. */
    public Upkeep upkeep() {
        return upkeep;
    }

    /** Root of the share that composites go to. */
    public Path wall() {
        return wall;
    }

    public Path folder() {
        return folder;
    }

    @Override
    public void close() throws IOException {
        for (Slot slot : slots) {
            slot.close();
        }
        database.close();
        if (smallDisk != null) {
            smallDisk.close();
        }
    }
}
