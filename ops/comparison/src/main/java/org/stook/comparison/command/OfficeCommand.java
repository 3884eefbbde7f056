package org.stook.comparison.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.stook.comparison.Pictures;
import org.stook.comparison.metrics.Planes;
import org.stook.comparison.metrics.Psnr;
import org.stook.comparison.metrics.StructuralSimilarity;
import org.stook.comparison.run.PlacedFrames;
import org.stook.comparison.stack.Fidelity;
import org.stook.comparison.stack.Oracle;
import org.stook.comparison.table.Row;
import org.stook.comparison.table.Table;
import org.stook.imaging.blend.BlendMethod;
import org.stook.imaging.blend.BlendMethods;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Two ray-traced pairs with true lens blur and an all-in-focus truth (F. Devernay et al., Proc. SPIE 8288, 2012). */
@Command(name = "office", description = "Blends of the ray-traced office pairs against their truth.")
public final class OfficeCommand implements Callable<Integer> {
    private static final int BORDER = 32;

    @Mixin
    private BenchOptions options = new BenchOptions();

    @Override
    public Integer call() throws IOException {
        Path folder = options.data("office_gt");
        Frame truth = Pictures.read(folder.resolve("office_stereo1_all.png"));
        Table table = Table.ofChecks("office pairs, given geometry");
        judge(table, "aperture 5", pair(folder, "near", "far"), truth, 30.7);
        judge(table, "aperture 10", pair(folder, "near2", "far2"), truth, 27.0);
        table.print(System.out);
        return 0;
    }

    private static List<Frame> pair(Path folder, String near, String far) throws IOException {
        return List.of(
                Pictures.read(folder.resolve("office_stereo1_" + near + ".png")),
                Pictures.read(folder.resolve("office_stereo1_" + far + ".png")));
    }

    private void judge(Table table, String name, List<Frame> pair, Frame truth, double bar) throws IOException {
        Oracle oracle = new Oracle(truth);
        pair.forEach(oracle::add);
        Frame best = oracle.composite();
        Frame theirs = PlacedFrames.of(pair).blendedByReference();
        for (BlendMethod method : BlendMethods.all()) {
            Frame ours = PlacedFrames.of(pair).blendedBy(method, options.threads());
            String what = method.name() + ", " + name;
            table.add(Row.of(what + ": PSNR less 32 px border, dB", 2)
                    .stook(inner(ours, truth))
                    .reference(inner(theirs, truth))
                    .oracle(inner(best, truth))
                    .atLeast(bar));
            table.add(Row.of(what + ": PSNR whole, dB", 2)
                    .stook(Psnr.of(ours, truth))
                    .reference(Psnr.of(theirs, truth))
                    .oracle(Psnr.of(best, truth)));
            table.add(Row.of(what + ": SSIM", 4)
                    .stook(similarity(ours, truth))
                    .reference(similarity(theirs, truth))
                    .oracle(similarity(best, truth)));
        }
    }

    /** The bars were set without the border, where the renderer's blur lacks light; there the oracle reaches 30.8 and 27.1 dB. */
    private static double inner(Frame frame, Frame truth) {
        Area area = new Area(BORDER, BORDER, truth.width() - 2 * BORDER, truth.height() - 2 * BORDER);
        return Psnr.of(Fidelity.cut(frame, area), Fidelity.cut(truth, area));
    }

    private static double similarity(Frame frame, Frame truth) {
        return StructuralSimilarity.of(Planes.luma(frame), Planes.luma(truth));
    }
}
