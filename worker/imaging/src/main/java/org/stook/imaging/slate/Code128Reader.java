package org.stook.imaging.slate;

import java.util.Optional;

/**
 * Code 128, ISO/IEC 15417. Its own check is one symbol modulo 103, which noise passes now and then; so the upper and the lower
 * half of the bars have to say the same.
 */
final class Code128Reader implements SlateReader {
    private static final int SHORTEST_TEXT = 3;
    private static final int PARTS = 8;

    @Override
    public String symbology() {
        return "Code 128";
    }

    @Override
    public Optional<String> read(GreyPicture cut) {
        Optional<String> upright = agreed(cut);
        return upright.isPresent() ? upright : agreed(cut.turned());
    }

    private static Optional<String> agreed(GreyPicture cut) {
        Optional<String> text = bars(cut).filter(t -> t.strip().length() >= SHORTEST_TEXT);
        if (text.isEmpty() || cut.height() < PARTS) return Optional.empty();
        // Where the bars lie in the cut is not known: all eighths of it that hold bars have to agree, two at least.
        int agreeing = 0;
        for (int i = 0; i < PARTS; i++) {
            GreyPicture part = cut.rows(i * cut.height() / PARTS, (i + 1) * cut.height() / PARTS);
            Optional<String> again = bars(part);
            if (again.isPresent() && !again.equals(text)) return Optional.empty();
            if (again.isPresent()) agreeing++;
        }
        return agreeing >= 2 ? text : Optional.empty();
    }

    private static Optional<String> bars(GreyPicture cut) {
        return Zxing.decode(new com.google.zxing.oned.Code128Reader(), cut);
    }
}
