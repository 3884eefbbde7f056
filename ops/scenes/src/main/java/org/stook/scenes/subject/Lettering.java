package org.stook.scenes.subject;

import java.util.List;
import java.util.Locale;

/** Lines of capitals and digits in dots, 5 across and 7 down, dark on white card. */
final class Lettering {
    private static final String LETTERS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-,.";
    /** Five columns a letter, two hexadecimal digits each, lowest bit on top. */
    private static final String DOTS = "3E5149453E" + "00427F4000" + "4261514946" + "2141454B31" + "1814127F10"
            + "2745454539"
            + "3C4A494930" + "0171090503" + "3649494936" + "064949291E" + "7E1111117E" + "7F49494936" + "3E41414122"
            + "7F4141221C" + "7F49494941" + "7F09090901" + "3E4149497A" + "7F0808087F" + "00417F4100" + "2040413F01"
            + "7F08142241" + "7F40404040" + "7F020C027F" + "7F0408107F" + "3E4141413E" + "7F09090906" + "3E4151215E"
            + "7F09192946" + "4649494931" + "01017F0101" + "3F4040403F" + "1F2040201F" + "3F4038403F" + "6314081463"
            + "0708700807" + "6151494543" + "0808080808" + "0050300000" + "0060600000";

    private static final int ADVANCE = 6;
    private static final int LINE = 11;
    private static final double PAPER = 0.75;
    private static final double INK = 0.03;
    private static final Tint CARD = new Tint(1, 0.99, 0.95);

    private final List<String> lines;
    private final double dot;
    private final double pixel;
    private final Texture fibre;

    /** @param lines text; what is no capital, digit, hyphen, comma or full stop stays blank */
    Lettering(List<String> lines, Grain grain, double pixel) {
        this.lines = lines.stream().map(l -> l.toUpperCase(Locale.ROOT)).toList();
        this.pixel = pixel;
        int longest = lines.stream().mapToInt(String::length).max().orElse(1);
        dot = Math.min(0.9 / (Math.max(1, longest) * ADVANCE), 0.8 / (Math.max(1, lines.size()) * LINE));
        fibre = new Texture(grain, Grain.FINEST * pixel, 0.02, 0.9, 3.1);
    }

    void paint(double x, double y, Hit hit) {
        double ink = inkAt(x + 0.45, y + lines.size() * LINE * dot / 2);
        hit.colour(CARD, Edges.mix(PAPER + 0.03 * fibre.at(x, y), INK, ink));
    }

    /** Share of ink, x and y from the top left corner of the text. */
    private double inkAt(double x, double y) {
        int column = (int) Math.floor(x / dot - 0.5);
        int row = (int) Math.floor(y / dot - 0.5);
        double right = Edges.step(-1, 1, (x - (column + 1) * dot) / pixel);
        double below = Edges.step(-1, 1, (y - (row + 1) * dot) / pixel);
        double upper = Edges.mix(dotAt(column, row), dotAt(column + 1, row), right);
        double lower = Edges.mix(dotAt(column, row + 1), dotAt(column + 1, row + 1), right);
        return Edges.mix(upper, lower, below);
    }

    private int dotAt(int column, int row) {
        int line = Math.floorDiv(row, LINE);
        int letter = Math.floorDiv(column, ADVANCE);
        int down = row - line * LINE;
        int across = column - letter * ADVANCE;
        if (line < 0 || line >= lines.size() || letter < 0 || down >= 7 || across >= 5) return 0;
        if (letter >= lines.get(line).length()) return 0;
        int at = LETTERS.indexOf(lines.get(line).charAt(letter));
        if (at < 0) return 0;
        int from = 2 * (5 * at + across);
        return Integer.parseInt(DOTS, from, from + 2, 16) >> down & 1;
    }
}
