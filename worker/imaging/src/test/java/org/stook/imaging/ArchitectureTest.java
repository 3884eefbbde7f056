package org.stook.imaging;

import static com.tngtech.archunit.base.DescribedPredicate.alwaysTrue;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Which way the arrows go between the packages of the imaging core. */
@AnalyzeClasses(packages = "org.stook.imaging", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    private static final String ROOT = "org.stook.imaging.";
    private static final String[] STAGES = {
        ROOT + "codec..",
        ROOT + "slate..",
        ROOT + "survey..",
        ROOT + "tone..",
        ROOT + "registration..",
        ROOT + "blend..",
        ROOT + "crop..",
        ROOT + "score.."
    };

    @ArchTest
    static final ArchRule stagesDoNotKnowEachOther = slices().matching(ROOT + "(*)..")
            .namingSlices("$1")
            .should()
            .notDependOnEachOther()
            .ignoreDependency(alwaysTrue(), resideInAPackage(ROOT + "frame.."))
            .ignoreDependency(resideInAnyPackage(ROOT + "composite..", ROOT + "command.."), alwaysTrue())
            .because("a stage that knows another cannot be replaced, reordered or tested by itself; what two stages"
                    + " share is a noun in frame, and only composite and command know the order");

    @ArchTest
    static final ArchRule nounsDependOnNoStage = noClasses()
            .that()
            .resideInAPackage(ROOT + "frame..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(STAGES)
            .because("frame holds the nouns that every stage shares; an arrow out of it would tie all stages together");

    @ArchTest
    static final ArchRule stagesDoNotKnowTheOrder = noClasses()
            .that()
            .resideInAnyPackage(STAGES)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(ROOT + "composite..", ROOT + "command..")
            .because("the order of the stages is composite's alone, and how a run is started is command's");

    @ArchTest
    static final ArchRule libraryKnowsNoServer = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "org.springframework..", "java.sql..", "jakarta..", "org.stook.app..", "org.stook.node..")
            .because("the imaging core is a library: usable from a command line without server, database or framework");

    @ArchTest
    static final ArchRule onlyCommandReadsArguments = noClasses()
            .that()
            .resideOutsideOfPackage(ROOT + "command..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("picocli..")
            .because("a stage is given what it needs; where that came from is the command line's business");
}
