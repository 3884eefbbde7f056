package org.stook.app;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/**
 * Which way the arrows go between the packages of the service: audit, people, stack, station, sorting <- intake, queue,
 * publish <- review <- desk; signin stands before them all.
 */
@AnalyzeClasses(packages = "org.stook.app", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    private static final String ROOT = "org.stook.app.";
    private static final String[] ROOMS = {
        ROOT + "intake..", ROOT + "queue..", ROOT + "publish..", ROOT + "review..", ROOT + "desk..", ROOT + "signin.."
    };

    @ArchTest
    static final ArchRule groundDependsOnNoRoom = noClasses()
            .that()
            .resideInAnyPackage(
                    ROOT + "audit..", ROOT + "people..", ROOT + "stack..", ROOT + "station..", ROOT + "sorting..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(ROOMS)
            .because("audit, people, stack, station and sorting are what all others stand on");

    @ArchTest
    static final ArchRule intakeKnowsNoNeighbour = neighbours("intake", "queue", "publish");

    @ArchTest
    static final ArchRule queueKnowsNoNeighbour = neighbours("queue", "intake", "publish");

    @ArchTest
    static final ArchRule publishKnowsNoNeighbour = neighbours("publish", "intake", "queue");

    @ArchTest
    static final ArchRule reviewKnowsWhatWasPublishedAndNoOtherNeighbour = neighbours("review", "intake", "queue");

    @ArchTest
    static final ArchRule theDoorKnowsNoRoom = noClasses()
            .that()
            .resideInAPackage(ROOT + "signin..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(ROOT + "intake..", ROOT + "queue..", ROOT + "publish..", ROOT + "desk..")
            .because("who comes in is settled before it matters what for");

    @ArchTest
    static final ArchRule onlyIntakeAndReviewKnowPixels = noClasses()
            .that()
            .resideOutsideOfPackages(ROOT + "intake..", ROOT + "station..", ROOT + "review..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.stook.imaging..")
            .because(
                    "pixels are the workers' business; the intake has to tell a whole frame from a broken one, a review"
                            + " shows frames as the workers see them, and the station's settings are read by the very"
                            + " reader that the workers read them with");

    @ArchTest
    static final ArchRule serviceKnowsNoWorker = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.stook.node..", "org.stook.orders.attempt..")
            .because("service and worker meet in the database only");

    @ArchTest
    static final ArchRule archiveTakesFromPublishOnly = noClasses()
            .that()
            .resideInAPackage(ROOT + "archive..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(ROOT + "intake..", ROOT + "queue..", ROOT + "desk..")
            .because("what is handed out years later hangs on what was published, on nothing else of the day's work");

    private static ArchRule neighbours(String room, String first, String second) {
        return noClasses()
                .that()
                .resideInAPackage(ROOT + room + "..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(ROOT + first + "..", ROOT + second + "..", ROOT + "desk..")
                .because("neighbours meet in the database or on the desk, so that each can be changed by itself");
    }
}
