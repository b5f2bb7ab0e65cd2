package inkground;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.Architectures;
import org.junit.jupiter.api.Test;

/** The shape of the program: which package may know which, and why. */
@AnalyzeClasses(packages = "inkground", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    @ArchTest
    static final ArchRule packagesOnlyLookInward = Architectures.layeredArchitecture()
            .consideringOnlyDependenciesInAnyPackage("inkground..")
            .withOptionalLayers(true)
            .layer("base")
            .definedBy("inkground.base..")
            .layer("geometry")
            .definedBy("inkground.geometry..")
            .layer("colour")
            .definedBy("inkground.colour..")
            .layer("ink")
            .definedBy("inkground.ink..")
            .layer("substrate")
            .definedBy("inkground.substrate..")
            .layer("artwork")
            .definedBy("inkground.artwork")
            .layer("readers")
            .definedBy("inkground.artwork.pdf..", "inkground.artwork.svg..", "inkground.artwork.image..")
            .layer("plate")
            .definedBy("inkground.plate..")
            .layer("appearance")
            .definedBy("inkground.appearance..")
            .layer("garment")
            .definedBy("inkground.garment..")
            .layer("findings")
            .definedBy("inkground.findings..")
            .layer("proof")
            .definedBy("inkground.proof..")
            .layer("handoff")
            .definedBy("inkground.handoff..")
            .layer("app")
            .definedBy("inkground.app..")
            .layer("cli")
            .definedBy("inkground.cli..")
            .layer("viewer")
            .definedBy("inkground.viewer..")
            .layer("demo")
            .definedBy("inkground.demo..")
            .whereLayer("base")
            .mayNotAccessAnyLayer()
            .whereLayer("geometry")
            .mayOnlyAccessLayers("base")
            .whereLayer("colour")
            .mayOnlyAccessLayers("base", "geometry")
            .whereLayer("ink")
            .mayOnlyAccessLayers("base", "geometry", "colour")
            .whereLayer("substrate")
            .mayOnlyAccessLayers("base", "geometry", "colour")
            .whereLayer("artwork")
            .mayOnlyAccessLayers("base", "geometry", "colour", "ink", "substrate")
            .whereLayer("readers")
            .mayOnlyAccessLayers("base", "geometry", "colour", "ink", "artwork")
            .whereLayer("plate")
            .mayOnlyAccessLayers("base", "geometry", "colour", "ink", "substrate", "artwork")
            .whereLayer("appearance")
            .mayOnlyAccessLayers("base", "geometry", "colour", "ink", "substrate", "artwork", "plate")
            .whereLayer("garment")
            .mayOnlyAccessLayers("base", "geometry", "colour", "ink", "substrate", "artwork", "plate", "appearance")
            .whereLayer("findings")
            .mayOnlyAccessLayers("base", "geometry", "colour", "ink", "substrate", "artwork", "plate", "appearance")
            .whereLayer("proof")
            .mayOnlyAccessLayers("base", "geometry", "colour", "ink", "substrate", "artwork", "plate", "appearance")
            .whereLayer("handoff")
            .mayOnlyAccessLayers("base", "geometry", "colour", "ink", "artwork", "readers", "plate")
            .whereLayer("app")
            .mayOnlyBeAccessedByLayers("cli", "viewer")
            .whereLayer("viewer")
            .mayOnlyBeAccessedByLayers("cli")
            .whereLayer("cli")
            .mayNotBeAccessedByAnyLayer()
            .whereLayer("demo")
            .mayNotAccessAnyLayer()
            .because("data flows one way, from file to proof; a stage that knew a later one could not be tested, cached"
                    + " or reused on its own");

    @ArchTest
    static final ArchRule packagesHaveNoCycles = slices().matching("inkground.(*)..")
            .should()
            .beFreeOfCycles()
            .because("two packages that need each other are one package with a false name");

    @ArchTest
    static final ArchRule theViewersPackagesHaveNoCycles = slices().matching("inkground.viewer.(*)..")
            .should()
            .beFreeOfCycles()
            .because("a view that needs another view's insides cannot be changed, tested or shown without it");

    @ArchTest
    static final ArchRule theStateKnowsNoControls = noClasses()
            .that(resideInAnyPackage("inkground.viewer.state..", "inkground.viewer.task..", "inkground.viewer.desk.."))
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("javafx.scene..", "javafx.stage..")
            .because("what is shown must be testable, and kept, without the controls that show it");

    @ArchTest
    static final ArchRule onlyTheViewerKnowsJavaFx = noClasses()
            .that()
            .resideOutsideOfPackage("inkground.viewer..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("javafx..", "org.kordamp.ikonli..")
            .because(
                    "everything but the viewer runs on machines without a screen, and the command line must not pay for"
                            + " loading a toolkit");

    @ArchTest
    static final ArchRule oneClassOfTheCommandLineOpensTheViewer = noClasses()
            .that(resideInAPackage("inkground.cli.."))
            .and()
            .doNotHaveSimpleName("Screen")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("inkground.viewer..")
            .because("a command that needs no window must start without the toolkit");

    @ArchTest
    static final ArchRule onlyReadersWritersAndTheDemoKnowPdfBox = noClasses()
            .that(not(resideInAnyPackage("inkground.artwork.pdf..", "inkground.handoff..", "inkground.demo..")))
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.apache.pdfbox..")
            .because(
                    "after the display list nothing may depend on the file format, or a second format would be a second"
                            + " program; only a file handed off in the format it came in has to know that format");

    @ArchTest
    static final ArchRule onlyTheReadersKnowTheirLibraries = noClasses()
            .that(not(resideInAnyPackage("inkground.artwork.svg..", "inkground.artwork.image..")))
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.apache.batik..", "org.apache.xmlgraphics..", "com.twelvemonkeys..")
            .because("after the display list nothing may depend on the file format");

    @ArchTest
    static final ArchRule onlyTheCommandLineEndsTheProgram = noClasses()
            .that(not(resideInAPackage("inkground.cli..")))
            .should()
            .callMethod(System.class, "exit", int.class)
            .orShould()
            .callMethod(Runtime.class, "halt", int.class)
            .because("a library call that ends the process takes the user's open work with it");

    @ArchTest
    static final ArchRule onlyTheCommandLineWritesToTheConsole = noClasses()
            .that(not(resideInAPackage("inkground.cli..")))
            .should()
            .accessField(System.class, "out")
            .orShould()
            .accessField(System.class, "err")
            .orShould()
            .callMethod(Throwable.class, "printStackTrace")
            .because(
                    "what the user reads is decided in one place; everything else throws a Refusal or returns a result");

    @ArchTest
    static final ArchRule onlyTheCommandLineParsesArguments = noClasses()
            .that(not(resideInAPackage("inkground.cli..")))
            .should()
            .dependOnClassesThat()
            .resideInAPackage("picocli..")
            .because("the use cases serve the viewer as well");

    @ArchTest
    static final ArchRule nothingOpensTheNetwork = noClasses()
            .should()
            .dependOnClassesThat()
            .haveNameMatching("java\\.net\\.(Socket|ServerSocket|DatagramSocket|HttpURLConnection|http\\..*)")
            .orShould()
            .dependOnClassesThat()
            .resideInAnyPackage("javax.net..", "java.nio.channels.spi..")
            .because("artwork is confidential and files are hostile: nothing is ever fetched or sent");

    @ArchTest
    static final ArchRule nothingDeserialisesObjectsOrRunsScripts = noClasses()
            .should()
            .dependOnClassesThat()
            .haveFullyQualifiedName("java.io.ObjectInputStream")
            .orShould()
            .dependOnClassesThat()
            .resideInAPackage("javax.script..")
            .because("no byte of an opened file may become code");

    @Test
    void theRulesSeeTheProgram() {
        JavaClasses classes = new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests())
                .importPackages("inkground");
        assertThat(classes.stream().map(c -> c.getPackageName()).distinct())
                .contains("inkground.base", "inkground.artwork", "inkground.plate", "inkground.demo");
    }
}
