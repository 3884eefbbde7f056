package org.stook.drills.archive;

import java.io.IOException;
import java.io.InputStream;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32C;
import org.stook.drills.stage.Service;

/**
 * One fetch of a bag, whole or from a byte to its end, of which only checksums are kept.
 *
 * @param length bytes that came
 * @param firstByte seconds until the first one
 * @param seconds until the last one
 * @param sums of every stretch between marks, which lie at the same places of the bag in each transfer
 */
record Transfer(long from, long length, double firstByte, double seconds, List<Long> sums) {
    private static final int STRETCH = 1 << 20;
    private static final int LOOK_EVERY = 1 << 25;

    static Transfer of(Service service, String place, long from, Memory memory)
            throws IOException, InterruptedException {
        long began = System.nanoTime();
        HttpResponse<InputStream> answer = service.client()
                .send(
                        service.request(place)
                                .header("Range", "bytes=" + from + "-")
                                .build(),
                        HttpResponse.BodyHandlers.ofInputStream());
        if (answer.statusCode() != 206) throw new IOException("the service says " + answer.statusCode());
        List<Long> sums = new ArrayList<>();
        double first = 0;
        long at = from;
        long look = 0;
        CRC32C sum = new CRC32C();
        try (InputStream in = answer.body()) {
            byte[] buffer = new byte[1 << 16];
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                if (at == from) first = (System.nanoTime() - began) / 1e9;
                for (int done = 0; done < n; ) {
                    int part = (int) Math.min(n - done, STRETCH - at % STRETCH);
                    sum.update(buffer, done, part);
                    done += part;
                    at += part;
                    if (at % STRETCH == 0) {
                        sums.add(sum.getValue());
                        sum.reset();
                    }
                }
                if (at - look > LOOK_EVERY) {
                    memory.look();
                    look = at;
                }
            }
        }
        sums.add(sum.getValue());
        return new Transfer(from, at - from, first, (System.nanoTime() - began) / 1e9, sums);
    }

    /** Checksums of all whole stretches; the first one may be cut by where the transfer began. */
    List<Long> digest() {
        return sums.subList(1, sums.size());
    }

    /** The same of this whole transfer as of one that began at a byte. */
    List<Long> digestFrom(long byteNumber) {
        return sums.subList((int) (byteNumber / STRETCH) + 1, sums.size());
    }
}
