package mainsgap;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Map;
import java.util.TreeMap;

/** The walls of the house: which room may know which. DEVELOPERS.md has the table. */
@AnalyzeClasses(packages = "mainsgap", importOptions = ImportOption.DoNotIncludeTests.class)
class WallsTest {
  private static final String[] FLOOR_0 = {"waiting", "settings"};

  /** Each room and the rooms above floor 0 that it may know. */
  private static final Map<String, String[]> MAY_KNOW = new TreeMap<>();

  static {
    MAY_KNOW.put("waiting", new String[] {});
    MAY_KNOW.put("settings", new String[] {});
    MAY_KNOW.put("link", new String[] {});
    MAY_KNOW.put("signal", new String[] {});
    MAY_KNOW.put("statistics", new String[] {});
    MAY_KNOW.put("scpi", new String[] {"link"});
    MAY_KNOW.put("transfer", new String[] {"signal", "statistics"});
    MAY_KNOW.put("scope", new String[] {"scpi", "link", "signal"});
    MAY_KNOW.put("session", new String[] {"transfer", "signal"});
    MAY_KNOW.put("simulation", new String[] {"scpi", "link", "signal"});
    MAY_KNOW.put("arming", new String[] {"scope", "session", "transfer", "signal", "scpi", "link"});
    MAY_KNOW.put(
        "bench",
        new String[] {
          "arming",
          "scope",
          "session",
          "simulation",
          "transfer",
          "scpi",
          "signal",
          "link",
          "statistics"
        });
    MAY_KNOW.put(
        "cli", new String[] {"bench", "arming", "session", "transfer", "statistics", "signal"});
  }

  @ArchTest
  static void roomsImportOnlyWhatTheTableAllows(
      com.tngtech.archunit.core.domain.JavaClasses houses) {
    MAY_KNOW.forEach((room, allowed) -> wallOf(room, allowed).check(houses));
  }

  @ArchTest
  static final ArchRule everyRoomIsInTheTable =
      classes()
          .that()
          .resideInAPackage("mainsgap..")
          .should()
          .resideInAnyPackage(
              java.util.stream.Stream.concat(
                      java.util.stream.Stream.of("mainsgap"),
                      MAY_KNOW.keySet().stream().map(WallsTest::packageOf))
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
  static final ArchRule theEntryKnowsOnlyTheFaces =
      classes()
          .that()
          .resideInAPackage("mainsgap")
          .should()
          .onlyDependOnClassesThat(
              resideInAPackage("java..").or(resideInAPackage("mainsgap.cli..")))
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
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(java.time.Instant.class, "now")
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

  @ArchTest static final ArchRule sqliteHasOneHome = oneHome("org.jdbi..", "mainsgap.session..");

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

  private static ArchRule wallOf(String room, String[] allowed) {
    DescribedPredicate<JavaClass> inside =
        resideInAPackage(packageOf(room))
            .or(com.tngtech.archunit.base.DescribedPredicate.not(resideInAPackage("mainsgap..")));
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
