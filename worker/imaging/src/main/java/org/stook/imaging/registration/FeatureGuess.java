package org.stook.imaging.registration;

import boofcv.abst.feature.associate.AssociateDescription;
import boofcv.abst.feature.detdesc.DetectDescribePoint;
import boofcv.abst.feature.detect.interest.ConfigFastHessian;
import boofcv.factory.feature.associate.ConfigAssociateGreedy;
import boofcv.factory.feature.associate.FactoryAssociation;
import boofcv.factory.feature.detdesc.FactoryDetectDescribe;
import boofcv.factory.geo.ConfigHomography;
import boofcv.factory.geo.ConfigRansac;
import boofcv.factory.geo.FactoryMultiViewRobust;
import boofcv.struct.feature.AssociatedIndex;
import boofcv.struct.feature.TupleDesc_F64;
import boofcv.struct.geo.AssociatedPair;
import boofcv.struct.image.GrayF32;
import georegression.struct.homography.Homography2D_F64;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.ddogleg.fitting.modelset.ransac.Ransac;
import org.ddogleg.struct.DogArray;
import org.ddogleg.struct.FastAccess;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;

/**
 * A rough map between two frames of which nothing is known, for when a camera was moved or turned: SURF features (Bay, Ess,
 * Tuytelaars and Van Gool 2008, Speeded-up robust features) and RANSAC (Fischler and Bolles 1981) of BoofCV, on small planes.
 */
final class FeatureGuess {
    private static final int LONG_SIDE = 800;
    private static final int ITERATIONS = 500;
    /** Pixels of the small plane. */
    private static final double INLIER = 2;

    /** Chance alone hardly ever brings so many features into line. */
    private static final int FEWEST_INLIERS = 12;

    private static final long SEED = 20081109;

    private final Coordinates coordinates;

    FeatureGuess(Coordinates coordinates) {
        this.coordinates = coordinates;
    }

    /** First to second, normal coordinates; empty when too few features agree. */
    Optional<Placement> between(FrameLevels first, FrameLevels second) {
        int level = 0;
        while (level < first.levels().size() - 1 && longSide(first.levels().get(level)) > LONG_SIDE) level++;
        Level a = first.levels().get(level);
        Level b = second.levels().get(level);
        List<AssociatedPair> pairs = associated(Features.of(a.plane()), Features.of(b.plane()));
        if (pairs.size() < FEWEST_INLIERS) return Optional.empty();
        ConfigRansac config = new ConfigRansac(ITERATIONS, INLIER);
        config.randSeed = SEED;
        Ransac<Homography2D_F64, AssociatedPair> ransac =
                FactoryMultiViewRobust.homographyRansac(new ConfigHomography(), config);
        if (!ransac.process(pairs) || ransac.getMatchSet().size() < FEWEST_INLIERS) return Optional.empty();
        return Optional.of(similarity(ransac.getMatchSet(), a.reduction()));
    }

    private static int longSide(Level level) {
        return Math.max(level.plane().width(), level.plane().height());
    }

    /** The inliers fix no more than a similarity well; the tiles find the rest. */
    private Placement similarity(List<AssociatedPair> inliers, int reduction) {
        double unit = coordinates.unit() / reduction;
        Match.Information pixel = new Match.Information(unit * unit, 0, unit * unit);
        List<Match> matches = inliers.stream()
                .map(p -> new Match(
                        coordinates.normalX(p.p1.x, reduction),
                        coordinates.normalY(p.p1.y, reduction),
                        coordinates.normalX(p.p2.x, reduction),
                        coordinates.normalY(p.p2.y, reduction),
                        pixel,
                        1))
                .toList();
        return PairAligner.fit(List.of(new Pair(0, 1, matches)), SimilarityFit.of(matches), Model.SIMILARITY);
    }

    private static List<AssociatedPair> associated(Features a, Features b) {
        ConfigAssociateGreedy config = new ConfigAssociateGreedy(true);
        config.scoreRatioThreshold = 0.85;
        AssociateDescription<TupleDesc_F64> association =
                FactoryAssociation.greedy(config, FactoryAssociation.scoreEuclidean(TupleDesc_F64.class, true));
        association.setSource(a.descriptions);
        association.setDestination(b.descriptions);
        association.associate();
        FastAccess<AssociatedIndex> matches = association.getMatches();
        List<AssociatedPair> pairs = new ArrayList<>();
        for (int i = 0; i < matches.size; i++) {
            double[] p = a.places.get(matches.get(i).src);
            double[] q = b.places.get(matches.get(i).dst);
            pairs.add(new AssociatedPair(p[0], p[1], q[0], q[1]));
        }
        return pairs;
    }

    /** Where the features of a plane are and what they look like. */
    private record Features(List<double[]> places, DogArray<TupleDesc_F64> descriptions) {
        /** In order of place, whatever order the detector's threads leave them in. */
        static Features of(Plane plane) {
            ConfigFastHessian config = new ConfigFastHessian();
            config.extract.threshold = 0.5f;
            config.maxFeaturesAll = 800;
            DetectDescribePoint<GrayF32, TupleDesc_F64> detector =
                    FactoryDetectDescribe.surfStable(config, null, null, GrayF32.class);
            detector.detect(encoded(plane));
            List<Integer> order = IntStream.range(0, detector.getNumberOfFeatures())
                    .boxed()
                    .sorted(Comparator.comparingDouble((Integer i) -> detector.getLocation(i).y)
                            .thenComparingDouble(i -> detector.getLocation(i).x))
                    .toList();
            List<double[]> places = new ArrayList<>();
            DogArray<TupleDesc_F64> descriptions = new DogArray<>(detector::createDescription);
            for (int i : order) {
                places.add(new double[] {detector.getLocation(i).x, detector.getLocation(i).y});
                descriptions.grow().setTo(detector.getDescription(i));
            }
            return new Features(places, descriptions);
        }

        /** 0 to 255 and about evenly spaced to the eye, as the detector's thresholds are meant. */
        private static GrayF32 encoded(Plane plane) {
            GrayF32 image = new GrayF32(plane.width(), plane.height());
            for (int i = 0; i < image.data.length; i++) {
                image.data[i] = (float) (255 * Math.sqrt(Math.max(0, plane.samples()[i])));
            }
            return image;
        }
    }
}
