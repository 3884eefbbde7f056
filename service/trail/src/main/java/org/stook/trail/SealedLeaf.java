package org.stook.trail;

import org.stook.trail.merkle.Hash;

/**
 * A leaf of the tree; its place is its position in a list.
 *
 * @param entryId of the audit entry
 * @param hash of the entry as it was when it was sealed
 */
public record SealedLeaf(long entryId, Hash hash) {}
