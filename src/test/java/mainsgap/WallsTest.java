package mainsgap;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static java.util.Map.entry;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;

/** The walls of the house: which room may know which. DEVELOPERS.md has the table. */
@AnalyzeClasses(packages = "mainsgap", importOptions = ImportOption.DoNotIncludeTests.class)
class WallsTest {
  private static final List<String> FLOOR_0 = List.of("waiting", "settings");

  /** Each room and the rooms above floor 0 that it may know. */
  private static final Map<String, List<String>> MAY_KNOW =
      Map.ofEntries(
          entry("waiting", List.of()),
          entry("settings", List.of()),
          entry("link", List.of()),
          entry("signal", List.of()),
          entry("statistics", List.of()),
          entry("scpi", List.of("link")),
          entry("transfer", List.of("signal", "statistics")),
          entry("scope", List.of("scpi", "link", "signal")),
          entry("session", List.of("transfer", "signal")),
          entry("simulation", List.of("scpi", "link", "signal")),
          entry("arming", List.of("scope", "session", "transfer", "signal", "scpi", "link")),
          entry("report", List.of("session", "transfer", "statistics", "signal")),
          entry(
              "bench",
              List.of(
                  "arming",
                  "scope",
                  "session",
                  "simulation",
                  "transfer",
                  "scpi",
                  "signal",
                  "link",
                  "statistics")),
          entry(
              "cli",
              List.of("bench", "arming", "report", "session", "transfer", "statistics", "signal")),
          entry(
              "desk",
              List.of("bench", "arming", "report", "session", "transfer", "statistics", "signal")));

  /** Each step of the measurement and those that it may know: never the whole of it. */
  private static final Map<String, List<String>> STEPS_OF_THE_MEASUREMENT =
      Map.ofEntries(
          entry("edge", List.of()),
          entry("outcome", List.of()),
          entry("supply", List.of("outcome")),
          entry("event", List.of("supply", "outcome")),
          entry("instant", List.of("event", "supply", "edge", "outcome")),
          entry("gap", List.of("instant", "event", "supply", "edge", "outcome")),
          entry("claim", List.of("outcome")),
          entry("tolerance", List.of("outcome")));

  @ArchTest
  static void roomsImportOnlyWhatTheTableAllows(JavaClasses house) {
    MAY_KNOW.forEach((room, allowed) -> wallOf(room, allowed).check(house));
  }

  @ArchTest
  static final ArchRule everyRoomIsInTheTable =
      classes()
          .that()
          .resideInAPackage("mainsgap..")
          .should()
          .resideInAnyPackage(
              Stream.concat(
                      Stream.of("mainsgap"), MAY_KNOW.keySet().stream().map(WallsTest::packageOf))
                  .toArray(String[]::new))
          .because("a room that the table does not name has no floor");

  @ArchTest
  static final ArchRule noCircles =
      slices()
          .matching("mainsgap.(*)..")
          .should()
          .beFreeOfCycles()
          .because("a circle of rooms can only be understood whole");

  @ArchTest
  static final ArchRule noCirclesInTheDesk =
      slices()
          .matching("mainsgap.desk.(*)..")
          .should()
          .beFreeOfCycles()
          .because("a page is understood without the others");

  @ArchTest
  static void stepsOfTheMeasurementKnowOnlyThoseThatTheyAreMadeOf(JavaClasses house) {
    STEPS_OF_THE_MEASUREMENT.forEach(
        (step, allowed) ->
            noClasses()
                .that()
                .resideInAPackage("mainsgap.transfer." + step + "..")
                .should()
                .dependOnClassesThat(
                    resideInAPackage("mainsgap.transfer..")
                        .and(
                            DescribedPredicate.not(
                                resideInAnyPackage(
                                    Stream.concat(Stream.of(step), allowed.stream())
                                        .map(known -> "mainsgap.transfer." + known + "..")
                                        .toArray(String[]::new)))))
                .because(step + " is read before what is made of it")
                .check(house));
  }

  @ArchTest
  static final ArchRule everyStepOfTheMeasurementIsInItsTable =
      classes()
          .that()
          .resideInAPackage("mainsgap.transfer..")
          .should()
          .resideInAnyPackage(
              Stream.concat(
                      Stream.of("mainsgap.transfer"),
                      STEPS_OF_THE_MEASUREMENT.keySet().stream()
                          .map(step -> "mainsgap.transfer." + step + ".."))
                  .toArray(String[]::new))
          .because("a step that the table does not name is open to all");

  @ArchTest
  static final ArchRule theStepsOfTheMeasurementAreItsOwn =
      noClasses()
          .that()
          .resideOutsideOfPackage("mainsgap.transfer..")
          .should()
          .dependOnClassesThat(
              resideInAPackage("mainsgap.transfer..")
                  .and(
                      DescribedPredicate.not(
                          resideInAnyPackage(
                              "mainsgap.transfer",
                              "mainsgap.transfer.outcome..",
                              "mainsgap.transfer.claim..",
                              "mainsgap.transfer.tolerance.."))))
          .because("others ask for outcomes, claims and curves");

  @ArchTest
  static void pagesDoNotKnowEachOther(JavaClasses house) {
    List<String> pages = List.of("rig", "trials", "findings");
    for (String page : pages) {
      noClasses()
          .that()
          .resideInAPackage("mainsgap.desk." + page + "..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              pages.stream()
                  .filter(other -> !other.equals(page))
                  .map(other -> "mainsgap.desk." + other + "..")
                  .toArray(String[]::new))
          .because("the window joins the pages, which stay apart")
          .check(house);
    }
  }

  @ArchTest
  static final ArchRule thePicturesKnowNoPage =
      noClasses()
          .that()
          .resideInAPackage("mainsgap.desk.pictures..")
          .should()
          .dependOnClassesThat(
              resideInAPackage("mainsgap.desk..")
                  .and(
                      DescribedPredicate.not(
                          resideInAPackage("mainsgap.desk.pictures..")
                              .or(resideInAPackage("mainsgap.desk.trace..")))))
          .because("every page may show the pictures of trials");

  @ArchTest
  static final ArchRule theEntryKnowsOnlyTheFaces =
      classes()
          .that()
          .resideInAPackage("mainsgap")
          .should()
          .onlyDependOnClassesThat(
              resideInAPackage("java..")
                  .or(resideInAPackage("mainsgap.cli.."))
                  .or(resideInAPackage("mainsgap.desk..")))
          .because("main only chooses the face");

  @ArchTest
  static final ArchRule standardStreamsOnlyInTheCommandLine =
      noClasses()
          .that()
          .resideOutsideOfPackage("mainsgap.cli..")
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .orShould()
          .accessField(System.class, "in")
          .because("what a person reads is the face's business");

  @ArchTest
  static final ArchRule waitsGoThroughWaiting =
      noClasses()
          .that()
          .resideOutsideOfPackage("mainsgap.waiting..")
          .should()
          .callMethod(Thread.class, "sleep", long.class)
          .orShould()
          .callMethod(Thread.class, "sleep", long.class, int.class)
          .orShould()
          .callMethod(TimeUnit.class, "sleep", long.class)
          .orShould()
          .callMethod(LockSupport.class, "parkNanos", long.class)
          .orShould()
          .callMethod(Object.class, "wait")
          .orShould()
          .callMethod(Object.class, "wait", long.class)
          .orShould()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(Instant.class, "now")
          .because("tests turn the clock, and every wait heeds the stop request");

  @ArchTest
  static final ArchRule truthStaysInTheSimulation =
      noClasses()
          .that()
          .resideOutsideOfPackage("mainsgap.simulation..")
          .should()
          .dependOnClassesThat()
          .haveFullyQualifiedName("mainsgap.simulation.TrialTruth")
          .because("what measures never sees what truly happened; only tests compare");

  @ArchTest static final ArchRule tomlHasOneHome = oneHome("org.tomlj..", "mainsgap.settings..");

  @ArchTest
  static final ArchRule multicastDnsHasOneHome = oneHome("javax.jmdns..", "mainsgap.link..");

  @ArchTest static final ArchRule rpcHasOneHome = oneHome("org.acplt..", "mainsgap.link..");

  @ArchTest static final ArchRule sqliteHasOneHome = oneHome("org.jdbi..", "mainsgap.session..");

  @ArchTest
  static final ArchRule serialPortsHaveOneHome = oneHome("com.fazecast..", "mainsgap.link..");

  @ArchTest
  static final ArchRule nativeCallsHaveOneHome = oneHome("com.sun.jna..", "mainsgap.link..");

  @ArchTest static final ArchRule javaFxHasOneHome = oneHome("javafx..", "mainsgap.desk..");

  @ArchTest static final ArchRule theThemeHasOneHome = oneHome("atlantafx..", "mainsgap.desk..");

  @ArchTest
  static final ArchRule iconsHaveOneHome = oneHome("org.kordamp.ikonli..", "mainsgap.desk..");

  @ArchTest static final ArchRule chartsHaveOneHome = oneHome("org.jfree..", "mainsgap.report..");

  @ArchTest
  static final ArchRule svgHasOneHome = oneHome("org.apache.batik..", "mainsgap.report..");

  @ArchTest
  static final ArchRule templatesHaveOneHome = oneHome("com.samskivert..", "mainsgap.report..");

  @ArchTest static final ArchRule picocliHasOneHome = oneHome("picocli..", "mainsgap.cli..");

  private static ArchRule oneHome(String library, String home) {
    return noClasses()
        .that()
        .resideOutsideOfPackage(home)
        .should()
        .dependOnClassesThat()
        .resideInAPackage(library)
        .allowEmptyShould(true)
        .because("a library has one home, so that it can be changed there");
  }

  private static ArchRule wallOf(String room, List<String> allowed) {
    DescribedPredicate<JavaClass> inside =
        resideInAPackage(packageOf(room))
            .or(DescribedPredicate.not(resideInAPackage("mainsgap..")));
    for (String known : FLOOR_0) {
      inside = inside.or(resideInAPackage(packageOf(known)));
    }
    for (String known : allowed) {
      inside = inside.or(resideInAPackage(packageOf(known)));
    }
    return classes()
        .that()
        .resideInAPackage(packageOf(room))
        .should()
        .onlyDependOnClassesThat(inside)
        .allowEmptyShould(true)
        .because(room + " may know only the floors below that the table names");
  }

  private static String packageOf(String room) {
    return "mainsgap." + room + "..";
  }
}
