package org.stook.tamper;

import java.util.List;

/**
 * One way to change the trail as the owner of the database, and what verify must say to it.
 *
 * @param sql run with every trigger switched off
 * @param named what the bad lines must name
 */
record Deed(String name, String sql, List<String> named) {
    private static final String COPY_OF =
            "update stook.audit_entry a set xid = b.xid, at = b.at, actor = b.actor, kind = b.kind, subject = b.subject, body = b.body"
                    + " from stook.audit_entry b where (a.id, b.id) in ((301, 333), (333, 301))";

    /** Entries 1 to 1600 are sealed but for 800, which was rolled back. An older copy has those to 1000. */
    static List<Deed> all() {
        return List.of(
                edit("actor", "'eve'", 101),
                edit("kind", "'run.HELD'", 102),
                edit("subject", "'run/9'", 103),
                edit("body", "'{\"n\": 0}'", 104),
                edit("at", "at - interval '1 microsecond'", 105),
                edit("xid", "'1'", 106),
                new Deed(
                        "give an entry another number",
                        "alter table stook.audit_entry alter id drop identity; update stook.audit_entry set id = 800 where id = 107",
                        List.of("entry 107: sealed, but not there", "entry 800: there, but never sealed")),
                new Deed(
                        "delete one",
                        "delete from stook.audit_entry where id = 201",
                        List.of("entry 201: sealed, but not")),
                new Deed(
                        "delete several",
                        "delete from stook.audit_entry where id in (7, 8, 9, 1600)",
                        List.of("entries 7 to 9, 1600 (4): sealed, but not there")),
                new Deed(
                        "insert one in between",
                        "insert into stook.audit_entry (id, actor, kind, subject) overriding system value"
                                + " values (800, 'ada', 'stack.NAMED', 'stack/4')",
                        List.of("entry 800: there, but never sealed")),
                new Deed(
                        "put two in each other's places",
                        COPY_OF,
                        List.of("entry 301: holds what was entry 333", "entry 333: holds what was entry 301")),
                new Deed(
                        "put two leaves of the tree in another order",
                        "alter table stook.audit_leaf drop constraint audit_leaf_position_check;"
                                + " update stook.audit_leaf set position = -position where position in (400, 410);"
                                + " update stook.audit_leaf set position = 810 + position where position < 0",
                        List.of("leaf 400 of the database's tree", "leaf 410 of the database's tree")),
                new Deed(
                        "truncate all",
                        "truncate stook.audit_entry",
                        List.of("entries 1 to 799, 801 to 1600 (1599): sealed")),
                new Deed(
                        "cut off the end, tree and heads too",
                        "delete from stook.audit_entry where id > 1500; delete from stook.audit_leaf where entry_id > 1500;"
                                + " delete from stook.audit_seal where tree_size > 1499",
                        List.of("entries 1501 to 1600 (100): sealed", "the database's tree ends at leaf 1499")),
                new Deed(
                        "edit, and adjust the tree's leaf",
                        "update stook.audit_entry set actor = 'eve' where id = 555;"
                                + " update stook.audit_leaf set hash = pg_catalog.sha256(cast('eve' as bytea)) where entry_id = 555",
                        List.of("entry 555: not what was sealed", "leaf 554 of the database's tree")));
    }

    private static Deed edit(String column, String value, int id) {
        return new Deed(
                "edit " + column,
                "update stook.audit_entry set %s = %s where id = %d".formatted(column, value, id),
                List.of("entry " + id + ": not what was sealed (edited)"));
    }
}
