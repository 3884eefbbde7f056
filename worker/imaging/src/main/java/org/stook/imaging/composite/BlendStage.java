package org.stook.imaging.composite;

import java.io.IOException;
import java.util.Optional;
import org.stook.imaging.blend.Blend;
import org.stook.imaging.blend.BlendMethod;
import org.stook.imaging.blend.BlendMethods;
import org.stook.imaging.blend.BlendPlan;
import org.stook.imaging.blend.Blended;
import org.stook.imaging.composite.view.Proxies;
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
        this.ledger = new SharpnessLedger(order.threads());
    }

    /** @param proxies that the placed frames are shown to, if they are wanted */
    Blended run(Toning toning, DecodedFrames decoded, Optional<Proxies> proxies) throws CannotCompose, IOException {
        BlendMethod method = BlendMethods.byName(order.recipe().blend()).orElseThrow();
        int count = registered.frames().size();
        int channels = toning.of(0).outputChannels();
        Blend blend = method.begin(
                new BlendPlan(registered.area().width(), registered.area().height(), channels, count, order.threads()));
        try (PlacedFrames frames = new PlacedFrames(registered, toning, decoded, order.threads())) {
            for (int pass = 0; pass < blend.passes(); pass++) {
                int now = pass;
                frames.each(blend.needsColour(now), (rank, placed) -> {
                    progress.at(Composition.BLEND, (now + (double) rank / count) / blend.passes());
                    if (now == 0) ledger.add(placed);
                    blend.add(now, rank, placed);
                    if (now == blend.passes() - 1) proxies.ifPresent(p -> p.add(rank, placed));
                });
            }
        }
        Blended blended = blend.finish();
        new OverrideStage(order, registered).run(blended, toning, decoded);
        return blended;
    }

    SharpnessLedger ledger() {
        return ledger;
    }
}
