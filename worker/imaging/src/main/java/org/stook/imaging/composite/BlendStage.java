package org.stook.imaging.composite;

import java.io.IOException;
import java.util.Optional;
import org.stook.imaging.blend.Blend;
import org.stook.imaging.blend.BlendMethod;
import org.stook.imaging.blend.BlendMethods;
import org.stook.imaging.blend.BlendPlan;
import org.stook.imaging.blend.Blended;
import org.stook.imaging.composite.view.Proxies;
import org.stook.imaging.frame.Area;
import org.stook.imaging.score.SharpnessLedger;

/** Runs all frames through the blend, as often as it wants them. */
final class BlendStage {
    private final ComposeOrder order;
    private final Registered registered;
    private final Progress progress;
    private final SharpnessLedger ledger;

    BlendStage(ComposeOrder order, Registered registered, Progress progress) {
        this.order = order;
        this.registered = registered;
        this.progress = progress;
        this.ledger =
                new SharpnessLedger(registered.area().width(), registered.area().height(), order.threads());
    }

    /** @param proxies that the drawn frames are shown to, if they are wanted */
    Blended run(Toning toning, PlacedFrames frames, Optional<Proxies> proxies) throws CannotCompose, IOException {
        BlendMethod method = BlendMethods.byName(order.recipe().blend()).orElseThrow();
        int count = registered.frames().size();
        int channels = toning.of(0).outputChannels();
        Area area = registered.area();
        Blend blend = method.begin(new BlendPlan(area.width(), area.height(), channels, count, order.threads()));
        for (int pass = 0; pass < blend.passes(); pass++) {
            int now = pass;
            PlacedFrames.Use use = (rank, frame) -> {
                progress.at(Composition.BLEND, (now + (double) rank / count) / blend.passes());
                if (blend.draws(now)) ledger.nextFrame();
                blend.add(now, rank, new WatchedFrame(frame, ledger));
                if (now == blend.passes() - 1) proxies.ifPresent(p -> show(p, rank, frame));
            };
            blend.begin(now);
            if (blend.draws(now)) frames.each(use);
            else frames.eachUndrawn(use);
        }
        Blended blended = blend.finish();
        new OverrideStage(order, registered).run(blended, frames);
        return blended;
    }

    private void show(Proxies proxies, int rank, FrameInPlace frame) {
        Area area = registered.area();
        int reduction = Proxies.reduction(area.width(), area.height());
        proxies.add(rank, frame.drawing().orElseThrow().reduced(reduction, order.threads()));
    }

    SharpnessLedger ledger() {
        return ledger;
    }
}
