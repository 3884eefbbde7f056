/**
 * Packs publications as bags: BagIt 1.0 (RFC 8493) in a tar file, with the originals, what was done in PREMIS 3, and hashes that
 * {@code sha512sum -c} checks. A bag is laid out first, every byte's place known, and then streamed from where the files lie: no
 * copy is made, and any range can be asked for again.
 *
 * <p><b>How to add one:</b> what shall go into every bag besides is a {@link org.stook.app.archive.bag.BagAddition}, a bean.
 */
@NullMarked
package org.stook.app.archive.bag;

import org.jspecify.annotations.NullMarked;
