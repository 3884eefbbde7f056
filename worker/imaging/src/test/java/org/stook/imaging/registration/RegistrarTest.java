package org.stook.imaging.registration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Bump;
import org.stook.scenes.bracket.Motion;
import org.stook.scenes.subject.Subjects;

/** On small rendered brackets; the large ones that the accuracy goals name are the bench's. */
class RegistrarTest {
    private static final BracketSource MINERAL =
            BracketSource.of(Subjects.mineral(11), BracketPlan.of(480, 320, 9, 11));
    private static final BracketSource SHELL =
            BracketSource.of(Subjects.shell(12), BracketPlan.of(480, 320, 9, 12).withTotalBreathing(0.06));

    @Test
    void findsAMineralToATwentiethOfAPixel() throws Exception {
        Registration found = new Registrar(2).register(MINERAL, 4);
        assertThat(found.model()).isEqualTo(Model.SIMILARITY);
        assertThat(Errors.of(found, MINERAL).rms()).isLessThan(0.05);
        assertThat(Errors.of(found, MINERAL).worst()).isLessThan(0.15);
        assertThat(found.frames()).allMatch(p -> p.doubt().isEmpty());
    }

    @Test
    void findsStrongBreathingOfARoundSubject() throws Exception {
        Registration found = new Registrar(2).register(SHELL, 8);
        assertThat(found.model()).isEqualTo(Model.SIMILARITY);
        assertThat(Errors.of(found, SHELL).rms()).isLessThan(0.1);
        assertThat(Errors.of(found, SHELL).worst()).isLessThan(0.3);
    }

    @Test
    void saysHowFarOffACornerMayBe() throws Exception {
        Registration found = new Registrar(2).register(MINERAL, 0);
        double said = found.frames().get(8).cornerErrorPx();
        assertThat(said).isBetween(0.01, 0.5);
        assertThat(Errors.of(found, MINERAL).worst()).isLessThan(3 * said);
        assertThat(found.frames().get(0).placement()).isEqualTo(Placement.identity());
        assertThat(found.frames().get(8).confidence()).isGreaterThan(0.8);
    }

    @Test
    void givesTheSameNumbersWhateverTheThreads() throws Exception {
        BracketSource three = MINERAL.arranged(2, 3, 4);
        Registration one = new Registrar(1).register(three, 1);
        assertThat(new Registrar(3).register(three, 1)).isEqualTo(one);
    }

    @Test
    void choosesProjectiveOnlyWhenTheCameraTurned() throws Exception {
        List<Placement> turned = IntStream.range(0, 5)
                .mapToObj(f -> Placement.of(1, 0, 0, 0, 1, 0, f * 8e-6, f * -5e-6, 1))
                .toList();
        BracketSource source = MINERAL.arranged(2, 3, 4, 5, 6).warped(turned);
        Registration found = new Registrar(2).register(source, 2);
        assertThat(found.model()).isEqualTo(Model.PROJECTIVE);
        assertThat(Errors.of(found, source).rms()).isLessThan(0.1);
    }

    @Test
    void choosesAffineWhenTheSensorShears() throws Exception {
        List<Placement> sheared = IntStream.range(0, 5)
                .mapToObj(f -> Placement.affine(1 + 0.002 * f, 0.001 * f, 0, 0, 1, 0))
                .toList();
        BracketSource source = MINERAL.arranged(2, 3, 4, 5, 6).warped(sheared);
        assertThat(new Registrar(2).register(source, 2).model()).isEqualTo(Model.AFFINE);
    }

    @Test
    void saysWhatOneTransformAFrameLeavesOverOnARail() throws Exception {
        BracketSource still = BracketSource.of(
                Subjects.mineral(11), BracketPlan.of(480, 320, 9, 11).still());
        Registration onRail = new Registrar(2).register(still.onRail(0.3), 4);
        // Four frames from the reference: up to 1.2 px of the shift, of which a transform can take a part.
        assertThat(onRail.parallaxPx()).isBetween(0.5, 1.5);
    }

    @Test
    void findsNoParallaxWhereThereIsNone() throws Exception {
        assertThat(new Registrar(2).register(MINERAL, 4).parallaxPx()).isLessThan(0.2);
        assertThat(new Registrar(2).register(SHELL, 8).parallaxPx()).isLessThan(0.4);
    }

    @Test
    void namesAFrameThatCannotBeRegisteredAndPlacesTheOthers() throws Exception {
        BracketSource source = MINERAL.with(5, SHELL.read(4, 1));
        Registration found = new Registrar(2).register(source, 4);
        Placed stranger = found.frames().get(5);
        assertThat(stranger.registered()).isFalse();
        assertThat(stranger.confidence()).isZero();
        assertThat(stranger.doubt().orElseThrow().sentence())
                .isEqualTo("could not be registered: too little in it matches its neighbours");
        for (int f : new int[] {0, 3, 6, 8}) {
            assertThat(found.frames().get(f).cornerErrorPx()).isLessThan(0.5);
        }
    }

    @Test
    void saysWhyAFrameWithoutDetailCannotBeRegistered() throws Exception {
        Registration found = new Registrar(2).register(MINERAL.with(5, evenGrey()), 4);
        assertThat(found.frames().get(5).registered()).isFalse();
        assertThat(found.frames().get(5).doubt().orElseThrow().sentence())
                .isEqualTo("could not be registered: it shows nothing but evenness or noise");
        assertThat(found.frames().get(6).registered()).isTrue();
    }

    @Test
    void findsFramesAgainAfterTheCameraWasMovedFar() throws Exception {
        Placement far = Placement.similarity(1.0, 0.17, 60, -30, 239.5, 159.5);
        BracketSource source = MINERAL.warped(IntStream.range(0, 9)
                .mapToObj(f -> f < 5 ? Placement.identity() : far)
                .toList());
        Registration found = new Registrar(1).register(source, 4);
        assertThat(Errors.of(found, source).rms()).isLessThan(0.05);
        assertThat(Errors.of(found, source).worst()).isLessThan(0.15);
        assertThat(doubtful(found)).containsExactly("6 MOVED");
        assertThat(new Registrar(7).register(source, 4)).isEqualTo(found);
    }

    @Test
    void doesNotTakeTheTremblingOfAHandForBumps() throws Exception {
        BracketPlan plan = BracketPlan.of(480, 320, 9, 11).withMotion(new Motion(0.003, 4, 0.06));
        BracketSource trembling = BracketSource.of(Subjects.mineral(11), plan);
        Registration found = new Registrar(2).register(trembling, 4);
        assertThat(Errors.of(found, trembling).rms()).isLessThan(0.05);
        assertThat(doubtful(found)).isEmpty();
    }

    @Test
    void registersOneFrameAndTwo() throws Exception {
        Registration one = new Registrar(2).register(MINERAL.arranged(3), 0);
        assertThat(one.frames().get(0).placement()).isEqualTo(Placement.identity());
        BracketSource pair = MINERAL.arranged(3, 4);
        assertThat(Errors.of(new Registrar(2).register(pair, 1), pair).rms()).isLessThan(0.05);
    }

    @Test
    void placesABumpedFrameAndNamesIt() throws Exception {
        BracketPlan plan = BracketPlan.of(480, 320, 9, 11).withBumps(new Bump(3, 5, -6, false));
        BracketSource bumped = BracketSource.of(Subjects.mineral(11), plan);
        Registration found = new Registrar(2).register(bumped, 4);
        assertThat(Errors.of(found, bumped).rms()).isLessThan(0.05);
        assertThat(doubtful(found)).containsExactly("4 BUMPED");
    }

    @Test
    void namesAFrameOutOfOrderAndWhereItBelongs() throws Exception {
        Registration found = new Registrar(2).register(SHELL.arranged(0, 1, 6, 2, 3, 4, 5, 7, 8), 4);
        assertThat(doubtful(found)).containsExactly("3 OUT_OF_ORDER");
        assertThat(found.frames().get(2).doubt().orElseThrow().sentence())
                .endsWith("it belongs 4 places later in the sweep");
    }

    @Test
    void refusesAReferenceThatIsNotThere() {
        assertThatThrownBy(() -> new Registrar(1).register(MINERAL, 9))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("0 to 8, got 9");
    }

    private static List<String> doubtful(Registration found) {
        return IntStream.range(0, found.frames().size())
                .filter(f -> found.frames().get(f).doubt().isPresent())
                .mapToObj(f -> (f + 1) + " "
                        + found.frames().get(f).doubt().orElseThrow().reason())
                .toList();
    }

    private static Plane evenGrey() {
        Random random = new Random(1);
        Plane plane = new Plane(480, 320);
        for (int i = 0; i < plane.samples().length; i++) {
            plane.samples()[i] = (float) (0.5 + 0.01 * random.nextGaussian());
        }
        return plane;
    }
}
