package org.stook.comparison.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.stook.comparison.Pictures;
import org.stook.comparison.metrics.EdgePreservation;
import org.stook.comparison.metrics.FusionQuality;
import org.stook.comparison.metrics.Planes;
import org.stook.comparison.published.GuidedFilterFusion;
import org.stook.comparison.published.PublishedScores;
import org.stook.comparison.run.PlacedFrames;
import org.stook.comparison.table.Table;
import org.stook.imaging.blend.BlendMethod;
import org.stook.imaging.blend.BlendMethods;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** The ten light-field pairs on which 18 methods have published scores. */
@Command(name = "lytro", description = "Blends of the ten Lytro pairs beside 18 published methods.")
public final class LytroCommand implements Callable<Integer> {
    private static final List<String> PAIRS = List.of("01", "02", "03", "04", "05", "06", "07", "08", "09", "10");

    @Mixin
    private BenchOptions options = new BenchOptions();

    @Override
    public Integer call() throws IOException {
        Path folder = options.data("lytro_pairs_01-10");
        PublishedScores published = new PublishedScores(folder.resolve("published_scores_18_methods.csv"));
        List<Line> lines = new ArrayList<>();
        for (BlendMethod method : BlendMethods.all()) {
            lines.add(measure(folder, "Stook: " + method.name(), p -> p.blendedBy(method, options.threads())));
        }
        lines.add(measure(folder, "OpenCV reference", PlacedFrames::blendedByReference));
        Line guided = measure(
                folder, "GFF, written again here", p -> GuidedFilterFusion.fuse(List.of(p.frame(0), p.frame(1))));
        lines.add(guided);
        Map<String, Double> edges = published.means(PublishedScores.EDGE_PRESERVATION);
        Map<String, Double> dependent = published.means(PublishedScores.EDGE_DEPENDENT);
        edges.forEach(
                (m, q) -> lines.add(new Line(m + ", published", q, Double.NaN, dependent.getOrDefault(m, Double.NaN))));
        print(lines, Collections.max(edges.values()), guided);
        return 0;
    }

    private static void print(List<Line> lines, double best, Line guided) {
        Table table =
                Table.of("Lytro pairs 01-10, given geometry, means of ten", "method", "Q^AB/F", "Q_W", "Q_E", "bars");
        lines.sort(Comparator.comparingDouble(Line::edges).reversed());
        for (Line line : lines) {
            boolean judged = line.method.startsWith("Stook");
            String met = "Q^AB/F %s, Q_W %s"
                    .formatted(
                            line.edges > best ? "met" : "NOT MET",
                            line.weighted >= guided.weighted ? "met" : "NOT MET");
            table.add(line.method, cell(line.edges), cell(line.weighted), cell(line.dependent), judged ? met : "");
        }
        table.print(System.out);
        System.out.printf(
                "bars: Q^AB/F above the best published %.5f; Q_W, which nobody published here, not below GFF's %.5f%n",
                best, guided.weighted);
    }

    private static String cell(double value) {
        return Double.isNaN(value) ? "-" : "%.5f".formatted(value);
    }

    private static Line measure(Path folder, String name, Fusion fusion) throws IOException {
        double edges = 0;
        double weighted = 0;
        double dependent = 0;
        for (String pair : PAIRS) {
            List<Frame> sources = List.of(
                    Pictures.read(folder.resolve("color_lytro_" + pair + "_1.png")),
                    Pictures.read(folder.resolve("color_lytro_" + pair + "_2.png")));
            Plane a = Planes.grey8(sources.get(0));
            Plane b = Planes.grey8(sources.get(1));
            Plane fused = Planes.grey8(fusion.fuse(PlacedFrames.of(sources)));
            edges += EdgePreservation.of(a, b, fused) / PAIRS.size();
            weighted += FusionQuality.weighted(a, b, fused) / PAIRS.size();
            dependent += FusionQuality.edgeDependent(a, b, fused) / PAIRS.size();
        }
        return new Line(name, edges, weighted, dependent);
    }

    private record Line(String method, double edges, double weighted, double dependent) {}

    private interface Fusion {
        Frame fuse(PlacedFrames pair) throws IOException;
    }
}
